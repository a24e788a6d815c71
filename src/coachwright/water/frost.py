"""How long water withstands frost."""

import math
from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working
from coachwright.water.properties import DENSITY_KG_PER_L, HEAT_J_PER_KG_K, LATENT_J_PER_KG


@dataclass(frozen=True, kw_only=True, slots=True)
class FreezingTime:
    """Hours from nightfall to the first ice, and to ice throughout."""

    to_zero_h: float
    to_solid_h: float
    working: Working


def freezing_time(
    *, volume_l: float, start_degc: float, around_degc: float, loss_w_per_k: float
) -> FreezingTime:
    """Return how long a tank stands in frost before it freezes.

    Parameters
    ----------
    volume_l
        Water in it. [L]
    start_degc
        Water at nightfall. [degC]
    around_degc
        Air round the tank, below freezing. [degC]
    loss_w_per_k
        Heat lost for each kelvin. [W/K]

    Returns
    -------
    FreezingTime
        To 0 degC, and to ice throughout (both from nightfall).

    Raises
    ------
    OutOfRange
        Where the air is not below freezing, the water not above it, or there is no loss.

    Notes
    -----
    t0 = m·c/UA · ln((Ts - Ta)/(0 - Ta)); then m · 334 kJ/kg / (UA · (0 - Ta)) more.  One
    temperature throughout the water, no supercooling, air steady all night, the insulation of
    the growing ice left out: an outlet, valve or hose on the tank freezes long before.

    References
    ----------
    [energy-balance], [coolprop-water]

    Examples
    --------
    >>> hours = freezing_time(volume_l=75, start_degc=5, around_degc=-10, loss_w_per_k=3)
    >>> round(hours.to_zero_h, 1), round(hours.to_solid_h)
    (11.8, 243)
    """
    if around_degc >= 0:
        raise OutOfRange("around_degc", around_degc, "below 0 degC")
    if start_degc <= 0:
        raise OutOfRange("start_degc", start_degc, "above 0 degC")
    if loss_w_per_k <= 0:
        raise OutOfRange("loss_w_per_k", loss_w_per_k, "more than 0 W/K")
    mass_kg = volume_l * DENSITY_KG_PER_L
    stored_h = mass_kg * HEAT_J_PER_KG_K / loss_w_per_k / 3600
    to_zero_h = stored_h * math.log((start_degc - around_degc) / -around_degc)
    freezing_h = mass_kg * LATENT_J_PER_KG / (loss_w_per_k * -around_degc) / 3600
    working = Working(
        expression="t = V · 0.9982 kg/L · 4186 J/(kg·K) / UA · ln((Ts - Ta) / (0 - Ta)) / 3600",
        given=(
            Given(symbol="V", meaning="water, tank full", value=volume_l, unit="L"),
            Given(symbol="UA", meaning="heat lost", value=loss_w_per_k, unit="W/K"),
            Given(
                symbol="Ts", meaning="water at nightfall, assumed", value=start_degc, unit="degC"
            ),
            Given(symbol="Ta", meaning="air round the tank", value=around_degc, unit="degC"),
        ),
        result=to_zero_h,
        unit="h",
        references=("energy-balance", "coolprop-water"),
        note="one temperature throughout; a half-full tank takes half as long; outlets and "
        "valves freeze sooner",
    )
    return FreezingTime(to_zero_h=to_zero_h, to_solid_h=to_zero_h + freezing_h, working=working)


def below_freezing_k(*, around_degc: float, protected: bool) -> float:
    """Return how far below freezing the air round unprotected water is [K].

    Parameters
    ----------
    around_degc
        Air round it. [degC]
    protected
        Heated, or drained in frost.

    Returns
    -------
    float
        0 where it is protected, or where there is no frost.

    Notes
    -----
    max(0, -Ta).

    References
    ----------
    [shop-practice-water]

    Examples
    --------
    >>> below_freezing_k(around_degc=-8.0, protected=False)
    8.0
    """
    return 0.0 if protected else max(-around_degc, 0.0)
