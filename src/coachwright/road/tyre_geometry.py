"""What the size on the sidewall says: diameter, circumference, revolutions; and a change of it."""

import math
from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working

MM_PER_KM = 1e6
"""Millimetres in a kilometre; exact by definition."""


@dataclass(frozen=True, kw_only=True, slots=True)
class TyreDimensions:
    """A tyre's nominal dimensions.

    Attributes
    ----------
    circumference_mm, revolutions_per_km
        Geometric: pi times the overall diameter.
    rolling_circumference_mm, rolling_revolutions_per_km
        As it rolls under load: the rolling factor times the overall diameter.
    """

    diameter_mm: float
    section_height_mm: float
    circumference_mm: float
    revolutions_per_km: float
    rolling_circumference_mm: float
    rolling_revolutions_per_km: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class TyreChange:
    """What another tyre diameter does.

    Attributes
    ----------
    ratio
        New over old diameter.
    ride_change_mm
        By which everything on the vehicle stands higher.
    gearing_ratio
        Engine speed at the same road speed, new over old.
    """

    ratio: float
    diameter_change_mm: float
    ride_change_mm: float
    gearing_ratio: float
    working: Working


def tyre_dimensions(
    *, width_mm: float, aspect_frac: float, rim_mm: float, rolling_factor: float
) -> TyreDimensions:
    """Return the nominal dimensions of a tyre from its size.

    Parameters
    ----------
    width_mm
        Nominal section width. [mm]
    aspect_frac
        Section height over section width, such as 0.75. [frac]
    rim_mm
        Rim diameter: the rim's inches times 25.4. [mm]
    rolling_factor
        Rolling circumference over overall diameter. [1]

    Returns
    -------
    TyreDimensions
        Diameter, circumferences and revolutions, with the diameter's working.

    Raises
    ------
    OutOfRange
        Where a length is not positive.

    Notes
    -----
    D = d + 2·H with H = b·a; U = π·D, or U = k·D for the loaded tyre.  Nominal figures of a
    metric size: a real tyre differs by a few per cent.

    References
    ----------
    [un-r30], [un-r54], [etrto-manual]

    Examples
    --------
    >>> tyre = tyre_dimensions(width_mm=245, aspect_frac=0.75, rim_mm=406.4, rolling_factor=3.05)
    >>> round(tyre.diameter_mm, 1), round(tyre.rolling_revolutions_per_km, 2)
    (773.9, 423.66)
    """
    for name, value in (("width_mm", width_mm), ("aspect_frac", aspect_frac), ("rim_mm", rim_mm)):
        if value <= 0:
            raise OutOfRange(name, value, "more than 0")
    height = width_mm * aspect_frac
    diameter = rim_mm + 2 * height
    working = Working(
        expression="D = d + 2·b·a",
        given=(
            Given(symbol="d", meaning="rim diameter", value=rim_mm, unit="mm"),
            Given(symbol="b", meaning="section width", value=width_mm, unit="mm"),
            Given(symbol="a", meaning="height over width", value=aspect_frac, unit="frac"),
        ),
        result=diameter,
        unit="mm",
        references=("un-r30", "un-r54"),
        note="nominal; a real tyre differs by a few per cent",
    )
    return TyreDimensions(
        diameter_mm=diameter,
        section_height_mm=height,
        circumference_mm=math.pi * diameter,
        revolutions_per_km=MM_PER_KM / (math.pi * diameter),
        rolling_circumference_mm=rolling_factor * diameter,
        rolling_revolutions_per_km=MM_PER_KM / (rolling_factor * diameter),
        working=working,
    )


def tyre_change(*, old_diameter_mm: float, new_diameter_mm: float) -> TyreChange:
    """Return what another tyre diameter does to speed, height and gearing.

    Parameters
    ----------
    old_diameter_mm
        Overall diameter of the tyre that the vehicle was made with. [mm]
    new_diameter_mm
        Overall diameter of the tyre that is fitted. [mm]

    Returns
    -------
    TyreChange
        The ratio with its working, the change of diameter, of height and of gearing.

    Raises
    ------
    OutOfRange
        Where a diameter is not positive.

    Notes
    -----
    q = D_new / D_old; the vehicle rises by (D_new - D_old) / 2; at the same road speed the
    engine turns at 1/q of its speed.  Both tyres are taken to flatten alike under load.

    References
    ----------
    [un-r30]

    Examples
    --------
    >>> round(tyre_change(old_diameter_mm=743.9, new_diameter_mm=773.9).ratio, 5)
    1.04033
    """
    for name, value in (
        ("old_diameter_mm", old_diameter_mm),
        ("new_diameter_mm", new_diameter_mm),
    ):
        if value <= 0:
            raise OutOfRange(name, value, "more than 0")
    ratio = new_diameter_mm / old_diameter_mm
    change = new_diameter_mm - old_diameter_mm
    return TyreChange(
        ratio=ratio,
        diameter_change_mm=change,
        ride_change_mm=change / 2,
        gearing_ratio=1 / ratio,
        working=Working(
            expression="q = D_new / D_old",
            given=(
                Given(symbol="D_new", meaning="fitted tyre", value=new_diameter_mm, unit="mm"),
                Given(symbol="D_old", meaning="placard tyre", value=old_diameter_mm, unit="mm"),
            ),
            result=ratio,
            unit="1",
            references=("un-r30",),
        ),
    )
