"""LP gas: vents of the locker, and days from the cylinders."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working
from coachwright.water.fuel import drawn_wh_per_day
from coachwright.water.properties import PROPANE_MJ_PER_KG


@dataclass(frozen=True, kw_only=True, slots=True)
class GasLoad:
    """A use of gas on one day."""

    what: str
    heat_wh_per_day: float
    efficiency_frac: float


@dataclass(frozen=True, kw_only=True, slots=True)
class GasDays:
    """How long the cylinders last."""

    stored_wh: float
    days_d: float
    working: Working


def vent_mm2(*, floor_m2: float, share_frac: float, least_mm2: float = 0.0) -> float:
    """Return the free area that a vent of a gas locker needs [mm2].

    Parameters
    ----------
    floor_m2
        Floor of the locker. [m2]
    share_frac
        Vent over floor.
    least_mm2
        Smallest vent. [mm2]

    Returns
    -------
    float
        The larger of the two.

    Raises
    ------
    OutOfRange
        Where there is no floor.

    Notes
    -----
    Free area: a mesh or louvre takes its share off.  The low vent stands at the locker's floor,
    as LP gas is heavier than air.

    References
    ----------
    [en-1949], [us-675iac15-2-74]

    Examples
    --------
    >>> vent_mm2(floor_m2=0.14, share_frac=0.02, least_mm2=10_000)
    10000
    """
    if floor_m2 <= 0:
        raise OutOfRange("floor_m2", floor_m2, "more than 0 m2")
    return max(floor_m2 * 1e6 * share_frac, least_mm2)


def round_hole_mm(*, area_mm2: float) -> float:
    """Return the diameter of the round hole that has an area [mm].

    Parameters
    ----------
    area_mm2
        Free area. [mm2]

    Returns
    -------
    float
        √(4 · A / π).

    Raises
    ------
    OutOfRange
        Where the area is negative.

    Notes
    -----
    A 100 mm hole has 78.5 cm2 and fails where 100 cm2 are asked for.

    References
    ----------
    [geometry]

    Examples
    --------
    >>> round(round_hole_mm(area_mm2=10_000), 1)
    112.8
    """
    if area_mm2 < 0:
        raise OutOfRange("area_mm2", area_mm2, "0 mm2 or more")
    return math.sqrt(4 * area_mm2 / math.pi)


@dataclass(frozen=True, kw_only=True, slots=True)
class HeatingRange:
    """Heat of a day within what a heater can give in its hours."""

    least_wh_per_day: float
    most_wh_per_day: float


def heating_range(
    *, output_w: float, least_output_w: float, full_h_per_day: float, other_h_per_day: float
) -> HeatingRange:
    """Return the least and the most heat of a heater that runs some hours.

    Parameters
    ----------
    output_w
        Full output. [W]
    least_output_w
        Smallest output. [W]
    full_h_per_day
        Hours in the mode that draws most, taken for full output. [h/day]
    other_h_per_day
        Hours in its other modes. [h/day]

    Returns
    -------
    HeatingRange
        For at most 24 h in all.

    Notes
    -----
    Most: P · (tf + to); least: P · tf + Pl · to.  What the modes of the fan say about the burner
    is not known better than that.

    References
    ----------
    [energy-balance]

    Examples
    --------
    >>> heat = heating_range(
    ...     output_w=2000, least_output_w=1000, full_h_per_day=2, other_h_per_day=9
    ... )
    >>> heat.least_wh_per_day, heat.most_wh_per_day
    (13000, 22000)
    """
    full_h = min(full_h_per_day, 24)
    other_h = min(other_h_per_day, 24 - full_h)
    return HeatingRange(
        least_wh_per_day=output_w * full_h + min(least_output_w, output_w) * other_h,
        most_wh_per_day=output_w * (full_h + other_h),
    )


def burned_wh_per_day(*, input_w: float, running_h_per_day: float) -> float:
    """Return the heat that a burner releases in a day [Wh/day].

    Parameters
    ----------
    input_w
        Heat released at full use. [W]
    running_h_per_day
        At full use. [h/day]

    Returns
    -------
    float
        P · t.

    Notes
    -----
    A thermostat's share is in the hours.

    References
    ----------
    [energy-balance]

    Examples
    --------
    >>> burned_wh_per_day(input_w=300, running_h_per_day=12)
    3600
    """
    return input_w * running_h_per_day


def gas_days(*, gas_kg: float, loads: Sequence[GasLoad]) -> GasDays:
    """Return the days that the gas aboard lasts.

    Parameters
    ----------
    gas_kg
        In full cylinders. [kg]
    loads
        What burns it.

    Returns
    -------
    GasDays
        Heat stored and days.

    Raises
    ------
    OutOfRange
        Where nothing burns gas.

    Notes
    -----
    d = m · H / Σ(E/η), H = 46.35 MJ/kg.  Cylinders emptied to the last gram; below about
    -40 degC propane, and below 0 degC butane, gives no gas at all.

    References
    ----------
    [energy-balance], [afdc-fuel-properties]

    Examples
    --------
    >>> cooking = GasLoad(what="cooking", heat_wh_per_day=1200, efficiency_frac=1)
    >>> heating = GasLoad(what="heating", heat_wh_per_day=6000, efficiency_frac=0.85)
    >>> round(gas_days(gas_kg=11, loads=(cooking, heating)).days_d, 2)
    17.15
    """
    stored_wh = gas_kg * PROPANE_MJ_PER_KG * 1000 / 3.6
    all_wh_per_day = sum(
        drawn_wh_per_day(
            heat_wh_per_day=load.heat_wh_per_day, efficiency_frac=load.efficiency_frac
        )
        for load in loads
    )
    if all_wh_per_day <= 0:
        raise OutOfRange("loads", all_wh_per_day, "something that burns gas")
    days_d = stored_wh / all_wh_per_day
    given = [Given(symbol="m", meaning="gas in full cylinders", value=gas_kg, unit="kg")]
    for index, load in enumerate(loads, start=1):
        given += [
            Given(
                symbol=f"E{index}",
                meaning=f"heat for {load.what}",
                value=load.heat_wh_per_day,
                unit="Wh/day",
            ),
            Given(
                symbol=f"η{index}",
                meaning=f"of {load.what}",
                value=load.efficiency_frac,
                unit="frac",
            ),
        ]
    terms = " + ".join(f"E{index}/η{index}" for index in range(1, len(loads) + 1))
    working = Working(
        expression=f"d = m · 46 350 kJ/kg / 3.6 / ({terms})",
        given=tuple(given),
        result=days_d,
        unit="d",
        references=("energy-balance", "afdc-fuel-properties"),
        note="a winter's day, air heaters at full output in all their hours; cylinders emptied "
        "to the last gram",
    )
    return GasDays(stored_wh=stored_wh, days_d=days_d, working=working)
