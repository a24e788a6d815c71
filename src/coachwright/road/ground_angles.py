"""Which point limits the departure angle and the ramp angle."""

from collections.abc import Iterable
from dataclasses import dataclass

from coachwright.road.departure import (
    TangentAngle,
    breakover_angle,
    departure_angle,
    inside_wheel,
)


@dataclass(frozen=True, kw_only=True, slots=True)
class LowPoint:
    """A low point of the vehicle or of something under or behind it.

    Attributes
    ----------
    of
        The fitting's reference name, ``vehicle`` or ``hitch``.
    x_mm, height_mm
        From the front axle, and above the ground.
    """

    of: str
    x_mm: float
    height_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class LimitingPoint:
    """The point with the smallest angle."""

    point: LowPoint
    angle: TangentAngle


def departure_limit(
    *, points: Iterable[LowPoint], wheelbase_mm: float, wheel_radius_mm: float
) -> LimitingPoint | None:
    """Return the point behind the rear wheels with the smallest departure angle.

    Parameters
    ----------
    points
        Lowest rear corners.
    wheelbase_mm
        The rear axle's distance from the front axle. [mm]
    wheel_radius_mm
        Static loaded radius. [mm]

    Returns
    -------
    LimitingPoint or None
        None where no point lies behind the rear tyres.

    Notes
    -----
    Of a box the lower rear corner counts: a line that rises rearwards meets it first.  Points in
    the tyre's side view are left out: the tyre itself clears the ramp there.

    References
    ----------
    [us-49cfr523]

    Examples
    --------
    >>> found = departure_limit(
    ...     points=(
    ...         LowPoint(of="vehicle", x_mm=5000, height_mm=420),
    ...         LowPoint(of="box", x_mm=5400, height_mm=400),
    ...     ),
    ...     wheelbase_mm=4000,
    ...     wheel_radius_mm=360,
    ... )
    >>> found.point.of
    'box'
    """
    found = [
        LimitingPoint(
            point=point,
            angle=departure_angle(
                behind_axle_mm=point.x_mm - wheelbase_mm,
                height_mm=point.height_mm,
                wheel_radius_mm=wheel_radius_mm,
            ),
        )
        for point in points
        if not inside_wheel(
            beyond_axle_mm=point.x_mm - wheelbase_mm,
            height_mm=point.height_mm,
            wheel_radius_mm=wheel_radius_mm,
        )
    ]
    return min(found, key=lambda limit: limit.angle.exact_deg, default=None)


def breakover_limit(
    *, points: Iterable[LowPoint], wheelbase_mm: float, wheel_radius_mm: float
) -> LimitingPoint | None:
    """Return the point between the axles with the smallest ramp angle.

    Parameters
    ----------
    points
        Lowest corners, front and rear.
    wheelbase_mm
        Between the axles. [mm]
    wheel_radius_mm
        Static loaded radius. [mm]

    Returns
    -------
    LimitingPoint or None
        None where no point lies between the tyres.

    Notes
    -----
    As `breakover_angle`, for the points given; both corners of a box's underside count.

    References
    ----------
    [us-49cfr523]

    Examples
    --------
    >>> found = breakover_limit(
    ...     points=(LowPoint(of="tank", x_mm=1750, height_mm=200),),
    ...     wheelbase_mm=3500,
    ...     wheel_radius_mm=360,
    ... )
    >>> round(found.angle.exact_deg, 3)
    13.195
    """
    found = [
        LimitingPoint(
            point=point,
            angle=breakover_angle(
                behind_front_mm=point.x_mm,
                wheelbase_mm=wheelbase_mm,
                height_mm=point.height_mm,
                wheel_radius_mm=wheel_radius_mm,
            ),
        )
        for point in points
        if not any(
            inside_wheel(
                beyond_axle_mm=distance, height_mm=point.height_mm, wheel_radius_mm=wheel_radius_mm
            )
            for distance in (point.x_mm, wheelbase_mm - point.x_mm)
        )
    ]
    return min(found, key=lambda limit: limit.angle.exact_deg, default=None)
