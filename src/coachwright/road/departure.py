"""Angles under the vehicle by the tangent method."""

import math
from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working


@dataclass(frozen=True, kw_only=True, slots=True)
class TangentAngle:
    """An angle between the ground and a line that touches the tyre and one point.

    Attributes
    ----------
    exact_deg
        Tangent to the static loaded radius arc.
    simple_deg
        From the tyre's lowest point; conservative: never larger than `exact_deg`.
    """

    exact_deg: float
    simple_deg: float
    working: Working


def static_loaded_radius_mm(*, diameter_mm: float, radius_factor: float) -> float:
    """Return the height of the axle's centre over the ground of a loaded tyre.

    Parameters
    ----------
    diameter_mm
        Nominal overall diameter. [mm]
    radius_factor
        Static loaded radius over half the diameter. [1]

    Returns
    -------
    float
        The static loaded radius. [mm]

    Raises
    ------
    OutOfRange
        Where the diameter is not positive or the factor not between 0 and 1.

    Notes
    -----
    r = f·D/2.  The factor is from memory; between 0.94 and 1.00 a departure angle changes by a
    few hundredths of a degree.

    References
    ----------
    [shop-practice-road]

    Examples
    --------
    >>> static_loaded_radius_mm(diameter_mm=750, radius_factor=0.96)
    360.0
    """
    if diameter_mm <= 0:
        raise OutOfRange("diameter_mm", diameter_mm, "more than 0")
    if not 0 < radius_factor <= 1:
        raise OutOfRange("radius_factor", radius_factor, "more than 0 and at most 1")
    return radius_factor * diameter_mm / 2


def inside_wheel(*, beyond_axle_mm: float, height_mm: float, wheel_radius_mm: float) -> bool:
    """Return whether a point cannot limit an angle: not beyond the axle, or in the tyre's circle.

    Parameters
    ----------
    beyond_axle_mm
        Horizontal distance beyond the axle's centre. [mm]
    height_mm
        Above the ground. [mm]
    wheel_radius_mm
        Static loaded radius. [mm]

    Returns
    -------
    bool
        True where no tangent through the point limits the angle.

    Notes
    -----
    d <= 0, or d² + (r - p)² < r².

    References
    ----------
    [us-49cfr523]

    Examples
    --------
    >>> inside_wheel(beyond_axle_mm=200, height_mm=350, wheel_radius_mm=360)
    True
    """
    if beyond_axle_mm <= 0:
        return True
    return math.hypot(beyond_axle_mm, wheel_radius_mm - height_mm) < wheel_radius_mm


def departure_angle(
    *, behind_axle_mm: float, height_mm: float, wheel_radius_mm: float
) -> TangentAngle:
    """Return the angle at which a point behind the rear wheels meets a ramp.

    Parameters
    ----------
    behind_axle_mm
        Horizontal distance of the point behind the axle's centre. [mm]
    height_mm
        Of the point above the ground. [mm]
    wheel_radius_mm
        Static loaded radius. [mm]

    Returns
    -------
    TangentAngle
        By the tangent, and by the simple form, with the working of the tangent.

    Raises
    ------
    OutOfRange
        Where the radius is not positive or the point lies in the tyre or ahead of the axle.

    Notes
    -----
    a = asin(r / sqrt(d² + (r-p)²)) - atan2(r-p, d); the simple form is atan(p/d).  Level ground,
    rigid suspension; negative where the point is below the ground.

    References
    ----------
    [us-49cfr523]

    Examples
    --------
    >>> angle = departure_angle(behind_axle_mm=1000, height_mm=350, wheel_radius_mm=360)
    >>> round(angle.exact_deg, 3), round(angle.simple_deg, 3)
    (20.526, 19.29)
    """
    if wheel_radius_mm <= 0:
        raise OutOfRange("wheel_radius_mm", wheel_radius_mm, "more than 0")
    if inside_wheel(
        beyond_axle_mm=behind_axle_mm, height_mm=height_mm, wheel_radius_mm=wheel_radius_mm
    ):
        raise OutOfRange("behind_axle_mm", behind_axle_mm, "a point behind the tyre")
    below = wheel_radius_mm - height_mm
    distance = math.hypot(behind_axle_mm, below)
    exact = math.degrees(math.asin(wheel_radius_mm / distance) - math.atan2(below, behind_axle_mm))
    return TangentAngle(
        exact_deg=exact,
        simple_deg=math.degrees(math.atan2(height_mm, behind_axle_mm)),
        working=_working(exact, behind_axle_mm, height_mm, wheel_radius_mm),
    )


def _working(
    exact_deg: float, behind_axle_mm: float, height_mm: float, wheel_radius_mm: float
) -> Working:
    return Working(
        expression="a = asin(r / sqrt(d² + (r-p)²)) - atan2(r-p, d)",
        given=(
            Given(symbol="r", meaning="static loaded radius", value=wheel_radius_mm, unit="mm"),
            Given(symbol="d", meaning="point behind the axle", value=behind_axle_mm, unit="mm"),
            Given(symbol="p", meaning="point above the ground", value=height_mm, unit="mm"),
        ),
        result=exact_deg,
        unit="deg",
        references=("us-49cfr523",),
        note="level ground, rigid suspension; the static loaded radius is taken as a share of "
        "half the nominal diameter, from memory",
    )


def breakover_angle(
    *, behind_front_mm: float, wheelbase_mm: float, height_mm: float, wheel_radius_mm: float
) -> TangentAngle:
    """Return the ramp angle over which a point between the axles just clears.

    Parameters
    ----------
    behind_front_mm
        Of the point behind the front axle's centre. [mm]
    wheelbase_mm
        Between the axles' centres. [mm]
    height_mm
        Of the point above the ground. [mm]
    wheel_radius_mm
        Static loaded radius, the same at both axles. [mm]

    Returns
    -------
    TangentAngle
        The sum of the angles towards each axle.

    Raises
    ------
    OutOfRange
        Where the point lies in a tyre or not between the axles.

    Notes
    -----
    The supplement of the largest angle between the lines that touch both tyres and meet at the
    point: the sum of the two departure angles of the point, one towards each axle.

    References
    ----------
    [us-49cfr523]

    Examples
    --------
    >>> angle = breakover_angle(
    ...     behind_front_mm=1750, wheelbase_mm=3500, height_mm=200, wheel_radius_mm=360
    ... )
    >>> round(angle.exact_deg, 3)
    13.195
    """
    front = departure_angle(
        behind_axle_mm=behind_front_mm, height_mm=height_mm, wheel_radius_mm=wheel_radius_mm
    )
    rear = departure_angle(
        behind_axle_mm=wheelbase_mm - behind_front_mm,
        height_mm=height_mm,
        wheel_radius_mm=wheel_radius_mm,
    )
    exact = front.exact_deg + rear.exact_deg
    return TangentAngle(
        exact_deg=exact,
        simple_deg=front.simple_deg + rear.simple_deg,
        working=Working(
            expression="b = a_front + a_rear",
            given=(
                Given(symbol="a_front", meaning="front", value=front.exact_deg, unit="deg"),
                Given(symbol="a_rear", meaning="rear", value=rear.exact_deg, unit="deg"),
            ),
            result=exact,
            unit="deg",
            references=("us-49cfr523",),
            note="each a is the departure angle of the point towards that axle",
        ),
    )
