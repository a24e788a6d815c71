"""Static stability: half the track over the height of the centre of gravity."""

import math
from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working


@dataclass(frozen=True, kw_only=True, slots=True)
class StaticStability:
    """A static stability factor.

    Attributes
    ----------
    stability_ratio
        Half the mean track over the height of the centre of gravity.
    tip_angle_deg
        Side slope on which the standing vehicle would tip, as a rigid body.
    """

    stability_ratio: float
    tip_angle_deg: float
    working: Working


def static_stability_factor(
    *, track_front_mm: float, track_rear_mm: float, cg_height_mm: float
) -> StaticStability:
    """Return the static stability factor.

    Parameters
    ----------
    track_front_mm
        Between the centres of the front tyres. [mm]
    track_rear_mm
        Between the centres of the rear tyres. [mm]
    cg_height_mm
        Centre of gravity above the ground. [mm]

    Returns
    -------
    StaticStability
        The factor with its working, and the angle of a side slope.

    Raises
    ------
    OutOfRange
        Where a length is not positive.

    Notes
    -----
    SSF = T/(2·h), T the mean of both tracks; slope = atan(SSF).  A rigid vehicle: springs, tyres
    and moving water make the real one tip earlier.  Not a limit for a conversion.

    References
    ----------
    [nhtsa-rollover]

    Examples
    --------
    >>> factor = static_stability_factor(track_front_mm=1750, track_rear_mm=1750, cg_height_mm=720)
    >>> round(factor.stability_ratio, 4)
    1.2153
    """
    for name, value in (
        ("track_front_mm", track_front_mm),
        ("track_rear_mm", track_rear_mm),
        ("cg_height_mm", cg_height_mm),
    ):
        if value <= 0:
            raise OutOfRange(name, value, "more than 0")
    ratio = (track_front_mm + track_rear_mm) / 2 / (2 * cg_height_mm)
    return StaticStability(
        stability_ratio=ratio,
        tip_angle_deg=math.degrees(math.atan(ratio)),
        working=Working(
            expression="SSF = (T_f + T_r)/2 / (2·h)",
            given=(
                Given(symbol="T_f", meaning="front track", value=track_front_mm, unit="mm"),
                Given(symbol="T_r", meaning="rear track", value=track_rear_mm, unit="mm"),
                Given(symbol="h", meaning="height of CG", value=cg_height_mm, unit="mm"),
            ),
            result=ratio,
            unit="1",
            references=("nhtsa-rollover",),
            note="rigid vehicle; springs, tyres and moving water make the real one tip earlier; "
            "no limit for a conversion",
        ),
    )
