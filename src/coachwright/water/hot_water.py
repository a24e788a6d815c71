"""Heat for warm water, and the time to make it."""

from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working
from coachwright.water.properties import (
    DENSITY_KG_PER_L,
    HEAT_J_PER_KG_K,
)


@dataclass(frozen=True, kw_only=True, slots=True)
class WarmUp:
    """How long water takes to get hot; None where the source only feeds the loss."""

    warm_up_min: float | None
    working: Working | None


@dataclass(frozen=True, kw_only=True, slots=True)
class DayHeat:
    """Heat that warm water takes in a day."""

    tap_wh_per_day: float
    heat_wh_per_day: float
    working: Working


def heat_wh(*, mass_kg: float, from_degc: float, to_degc: float) -> float:
    """Return the heat that warms water [Wh].

    Parameters
    ----------
    mass_kg
        Of the water. [kg]
    from_degc
        Cold. [degC]
    to_degc
        Warm. [degC]

    Returns
    -------
    float
        m · c · ΔT; 0 where it is warm already.

    Notes
    -----
    c = 4186 J/(kg·K), between 0 and 100 degC within 0.7 %.

    References
    ----------
    [coolprop-water]

    Examples
    --------
    >>> round(heat_wh(mass_kg=6, from_degc=10, to_degc=60), 1)
    348.8
    """
    return mass_kg * HEAT_J_PER_KG_K * max(to_degc - from_degc, 0.0) / 3600


def warm_up(
    *,
    mass_kg: float,
    from_degc: float,
    to_degc: float,
    into_water_w: float,
    loss_w: float = 0.0,
) -> WarmUp:
    """Return how long one source takes to heat a full vessel.

    Parameters
    ----------
    mass_kg
        Of the water. [kg]
    from_degc
        Cold inlet. [degC]
    to_degc
        Set temperature. [degC]
    into_water_w
        Heat that the source brings into the water. [W]
    loss_w
        Standing loss at the set temperature. [W]

    Returns
    -------
    WarmUp
        Minutes; None where the loss is as large as the source.

    Raises
    ------
    OutOfRange
        Where the source brings no heat.

    Notes
    -----
    t = m · c · ΔT / (P - P_loss).  The full loss is counted from the start, so the time is on the
    long side; the metal of the vessel is not counted.

    References
    ----------
    [energy-balance], [coolprop-water]

    Examples
    --------
    >>> warmed = warm_up(mass_kg=6, from_degc=10, to_degc=60, into_water_w=800)
    >>> warmed.warm_up_min is not None and round(warmed.warm_up_min, 1)
    26.2
    """
    if into_water_w <= 0:
        raise OutOfRange("into_water_w", into_water_w, "more than 0 W")
    if loss_w >= into_water_w:
        return WarmUp(warm_up_min=None, working=None)
    heat = heat_wh(mass_kg=mass_kg, from_degc=from_degc, to_degc=to_degc)
    warm_up_min = heat / (into_water_w - loss_w) * 60
    working = Working(
        expression="t = m · 4186 J/(kg·K) · (Ts - Tc) / (P - Pl) / 60",
        given=(
            Given(symbol="m", meaning="water in the heater", value=mass_kg, unit="kg"),
            Given(symbol="Ts", meaning="set temperature", value=to_degc, unit="degC"),
            Given(symbol="Tc", meaning="cold inlet, assumed", value=from_degc, unit="degC"),
            Given(symbol="P", meaning="heat into the water", value=into_water_w, unit="W"),
            Given(symbol="Pl", meaning="standing loss", value=loss_w, unit="W"),
        ),
        result=warm_up_min,
        unit="min",
        references=("energy-balance", "coolprop-water"),
        note="full loss counted from the start; the vessel's own metal not counted",
    )
    return WarmUp(warm_up_min=warm_up_min, working=working)


def mixed_l(*, volume_l: float, hot_degc: float, cold_degc: float, tap_degc: float) -> float:
    """Return what a volume of hot water gives at the tap, mixed with cold [L].

    Parameters
    ----------
    volume_l
        Hot water. [L]
    hot_degc
        Its temperature. [degC]
    cold_degc
        Of the cold water. [degC]
    tap_degc
        Of the mixed water. [degC]

    Returns
    -------
    float
        Volume at the tap; the volume itself where it is no warmer than the tap.

    Raises
    ------
    OutOfRange
        Where the tap is not warmer than the cold water.

    Notes
    -----
    V · (Th - Tc) / (Tm - Tc).  As if it were drawn without the cold water that follows it
    stirring the vessel: a vessel really gives less.

    References
    ----------
    [energy-balance]

    Examples
    --------
    >>> round(mixed_l(volume_l=6, hot_degc=60, cold_degc=10, tap_degc=38), 2)
    10.71
    """
    if tap_degc <= cold_degc:
        raise OutOfRange("tap_degc", tap_degc, f"warmer than the cold water, {cold_degc} degC")
    if hot_degc <= tap_degc:
        return volume_l
    return volume_l * (hot_degc - cold_degc) / (tap_degc - cold_degc)


def day_heat(
    *,
    travellers: int,
    tap_l_per_day: float,
    tap_degc: float,
    cold_degc: float,
    loss_w: float = 0.0,
) -> DayHeat:
    """Return the heat that a day's warm water takes.

    Parameters
    ----------
    travellers
        People.
    tap_l_per_day
        Warm water of one person, mixed. [L/day]
    tap_degc
        Mixed, at the tap. [degC]
    cold_degc
        Cold inlet. [degC]
    loss_w
        Standing loss of the water heaters. [W]

    Returns
    -------
    DayHeat
        Heat in the water at the tap, and that with a whole day's loss.

    Notes
    -----
    E = n · q · ρ · c · (Tm - Tc) / 3600 + 24 h · Pl.  The heaters are taken to be kept hot all
    day; switched on only when wanted they lose less.

    References
    ----------
    [energy-balance], [coolprop-water]

    Examples
    --------
    >>> day = day_heat(travellers=2, tap_l_per_day=4, tap_degc=38, cold_degc=10)
    >>> round(day.heat_wh_per_day)
    260
    """
    tap_wh_per_day = heat_wh(
        mass_kg=travellers * tap_l_per_day * DENSITY_KG_PER_L,
        from_degc=cold_degc,
        to_degc=tap_degc,
    )
    heat_wh_per_day = tap_wh_per_day + 24 * loss_w
    working = Working(
        expression="E = n · q · 0.9982 kg/L · 4186 J/(kg·K) · (Tm - Tc) / 3600 + 24 h · Pl",
        given=(
            Given(symbol="n", meaning="travellers", value=travellers, unit="count"),
            Given(
                symbol="q", meaning="warm water of one person", value=tap_l_per_day, unit="L/day"
            ),
            Given(symbol="Tm", meaning="at the tap, assumed", value=tap_degc, unit="degC"),
            Given(symbol="Tc", meaning="cold inlet, assumed", value=cold_degc, unit="degC"),
            Given(symbol="Pl", meaning="standing loss of the heaters", value=loss_w, unit="W"),
        ),
        result=heat_wh_per_day,
        unit="Wh/day",
        references=("energy-balance", "coolprop-water"),
        note="heaters kept hot all day",
    )
    return DayHeat(tap_wh_per_day=tap_wh_per_day, heat_wh_per_day=heat_wh_per_day, working=working)
