"""Days on the tanks, and the mass of the water."""

from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working
from coachwright.units import told
from coachwright.water.properties import DENSITY_KG_PER_L


@dataclass(frozen=True, kw_only=True, slots=True)
class TankDays:
    """How long the tanks of one kind last."""

    days_d: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class WaterMass:
    """Mass of water, and of the tank with it."""

    water_kg: float
    total_kg: float
    working: Working


def tank_days(
    *, usable_l: float, travellers: int, use_l_per_day: float, what: str = "tank"
) -> TankDays:
    """Return the days that a store of water, or room for waste, lasts.

    Parameters
    ----------
    usable_l
        What can be drawn, or taken in. [L]
    travellers
        People who use it.
    use_l_per_day
        Of one person. [L/day]
    what
        Whose volume it is, for the working.

    Returns
    -------
    TankDays
        Days until it is empty, or full.

    Raises
    ------
    OutOfRange
        Where there is nobody, or no use.

    Notes
    -----
    d = V / (n · q).  Every day alike; nothing is filled up or emptied in between; every litre
    drawn is taken to reach the grey tank.

    References
    ----------
    [shop-practice-water]

    Examples
    --------
    >>> tank_days(usable_l=75, travellers=2, use_l_per_day=10).days_d
    3.75
    """
    if travellers < 1:
        raise OutOfRange("travellers", travellers, "at least 1")
    if use_l_per_day <= 0:
        raise OutOfRange("use_l_per_day", use_l_per_day, "more than 0 L/day")
    if usable_l < 0:
        raise OutOfRange("usable_l", usable_l, "0 L or more")
    days_d = usable_l / (travellers * use_l_per_day)
    working = Working(
        expression="d = V / (n · q)",
        given=(
            Given(symbol="V", meaning=f"usable volume, {what}", value=usable_l, unit="L"),
            Given(symbol="n", meaning="travellers", value=travellers, unit="count"),
            Given(symbol="q", meaning="use of one person", value=use_l_per_day, unit="L/day"),
        ),
        result=days_d,
        unit="d",
        references=("shop-practice-water",),
        note="every day alike; nothing filled up or emptied in between",
    )
    return TankDays(days_d=days_d, working=working)


def usable_l(*, volume_l: float, unusable_l: float) -> float:
    """Return what can be drawn from a tank, or let into it [L].

    Parameters
    ----------
    volume_l
        Of the tank. [L]
    unusable_l
        What the pump or drain leaves behind. [L]

    Returns
    -------
    float
        Never below 0.

    Notes
    -----
    V - V0.  Vehicle level.

    References
    ----------
    [geometry]

    Examples
    --------
    >>> usable_l(volume_l=90, unusable_l=5)
    85
    """
    return max(volume_l - unusable_l, 0.0)


def water_mass(*, volume_l: float, shell_kg: float = 0.0) -> WaterMass:
    """Return the mass of a volume of water, and of the tank that holds it.

    Parameters
    ----------
    volume_l
        Volume of water. [L]
    shell_kg
        Mass of the empty tank. [kg]

    Returns
    -------
    WaterMass
        Water alone, and both.

    Notes
    -----
    m = V · ρ + m0 with ρ = 998.2 kg/m3, water at 20 degC.

    References
    ----------
    [coolprop-water]

    Examples
    --------
    >>> round(water_mass(volume_l=75, shell_kg=8).total_kg, 2)
    82.86
    """
    water_kg = volume_l * DENSITY_KG_PER_L
    total_kg = water_kg + shell_kg
    working = Working(
        expression="m = V · 0.9982 kg/L + m0",
        given=(
            Given(symbol="V", meaning="volume when full", value=volume_l, unit="L"),
            Given(symbol="m0", meaning="empty tank", value=shell_kg, unit="kg"),
        ),
        result=total_kg,
        unit="kg",
        references=("coolprop-water",),
        note=f"water at {told(20, 'degC')}",
    )
    return WaterMass(water_kg=water_kg, total_kg=total_kg, working=working)


def grey_needed_l(*, fresh_l: float, heater_l: float) -> float:
    """Return the grey volume that takes all the fresh water aboard [L].

    Parameters
    ----------
    fresh_l
        Volume of the fresh tanks. [L]
    heater_l
        Contents of the water heaters. [L]

    Returns
    -------
    float
        Fresh and heater volume together.

    Notes
    -----
    Drained for frost, a water heater empties into the grey tank too.

    References
    ----------
    [shop-practice-water]

    Examples
    --------
    >>> grey_needed_l(fresh_l=75, heater_l=6)
    81
    """
    return fresh_l + heater_l


def waste_l_per_day(*, waste_alone_l_per_day: float, flush_l: float, flushes: int) -> float:
    """Return what one person puts into a toilet in a day [L/day].

    Parameters
    ----------
    waste_alone_l_per_day
        Without flush water. [L/day]
    flush_l
        Water of one flush. [L]
    flushes
        In a day.

    Returns
    -------
    float
        Waste and flush water.

    Notes
    -----
    q = w + k · f.  Paper and chemicals not counted.

    References
    ----------
    [shop-practice-water]

    Examples
    --------
    >>> round(waste_l_per_day(waste_alone_l_per_day=1.7, flush_l=0.25, flushes=5), 2)
    2.95
    """
    return waste_alone_l_per_day + flush_l * flushes
