"""What is left under a limit, and the side share of a vehicle."""

from coachwright.weights.model import MarginLeft, MassBand


def margin_left(*, subject: str, case: str, limit_kg: float, load: MassBand) -> MarginLeft:
    """Return what is left under a limit.

    Parameters
    ----------
    subject, case
        What is judged, and in which load case.
    limit_kg
        The rating. [kg]
    load
        With its bounds.

    Returns
    -------
    MarginLeft
        Its lower bound belongs to the load's upper bound.

    Notes
    -----
    left = limit - load.

    Examples
    --------
    >>> load = MassBand(nominal_kg=3000.0, low_kg=2900.0, high_kg=3100.0)
    >>> margin_left(subject="vehicle", case="travelling", limit_kg=3500.0, load=load).left
    MassBand(nominal_kg=500.0, low_kg=400.0, high_kg=600.0)
    """
    return MarginLeft(
        subject=subject,
        case=case,
        limit_kg=limit_kg,
        left=MassBand(
            nominal_kg=limit_kg - load.nominal_kg,
            low_kg=limit_kg - load.high_kg,
            high_kg=limit_kg - load.low_kg,
        ),
    )


def right_side_frac(
    *,
    front_kg: float,
    rear_kg: float,
    cg_y_mm: float,
    track_front_mm: float,
    track_rear_mm: float,
) -> float:
    """Return the share of the vehicle's mass on its right wheels.

    Parameters
    ----------
    front_kg, rear_kg
        Axle loads. [kg]
    cg_y_mm
        Of the vehicle's centre of gravity, to the right. [mm]
    track_front_mm, track_rear_mm
        Of the axles. [mm]

    Notes
    -----
    s = 0.5 + y · (F / T_f + R / T_r) / W.

    Examples
    --------
    >>> right_side_frac(front_kg=1000, rear_kg=1000, cg_y_mm=18, track_front_mm=1800,
    ...     track_rear_mm=1800)
    0.51
    """
    per_mm = front_kg / track_front_mm + rear_kg / track_rear_mm
    return 0.5 + cg_y_mm * per_mm / (front_kg + rear_kg)


def side_difference_frac(*, left_kg: float, right_kg: float) -> float:
    """Return the difference of an axle's sides as a share of its load.

    Parameters
    ----------
    left_kg, right_kg
        The two sides. [kg]

    Notes
    -----
    d = abs(right - left) / (right + left).

    Examples
    --------
    >>> side_difference_frac(left_kg=475, right_kg=525)
    0.05
    """
    return abs(right_kg - left_kg) / (right_kg + left_kg)
