"""Sizing forwards: from what is wanted to the size of array, bank, controller and inverter."""

from dataclasses import dataclass
from math import ceil

_SLACK = 1e-9


@dataclass(frozen=True, kw_only=True, slots=True)
class Wanted:
    """An amount that is wanted, and how many whole units make it."""

    energy_wh_per_day: float
    power_w: float
    units: int


@dataclass(frozen=True, kw_only=True, slots=True)
class BankWanted:
    """Capacity that is wanted, and how many strings make it."""

    capacity_ah: float
    strings: int


@dataclass(frozen=True, kw_only=True, slots=True)
class Clipping:
    """What a controller lets through of an array."""

    wanted_a: float
    power_w: float
    lost_frac: float


def inverter_wanted_w(*, load_w: float, margin_factor: float) -> float:
    """Return the continuous rating wanted of an inverter [W].

    Parameters
    ----------
    load_w
        Sum of its loads. [W]
    margin_factor
        1.3 in the worked examples.

    Notes
    -----
    P = m · ΣP.

    References
    ----------
    [off-grid-examples]

    Examples
    --------
    >>> round(inverter_wanted_w(load_w=153, margin_factor=1.3), 1)
    198.9
    """
    return load_w * margin_factor


def surge_wanted_w(
    *, running_w: tuple[float, ...], motors: tuple[bool, ...], start_factor: float
) -> float:
    """Return the surge wanted of an inverter where only running powers are known [W].

    Parameters
    ----------
    running_w
        Of each load. [W]
    motors
        Whether each load starts as a motor does.
    start_factor
        Starting over running power of a motor: 4 in the worked examples, 3 to 7 measured.

    Notes
    -----
    S = Σ P_i, motors times their factor: all of them start in the same instant.

    References
    ----------
    [off-grid-examples]

    Examples
    --------
    >>> surge_wanted_w(running_w=(18, 60, 75), motors=(False, False, True), start_factor=4)
    378
    """
    return sum(
        power * (start_factor if motor else 1)
        for power, motor in zip(running_w, motors, strict=True)
    )


def array_wanted(
    *, use_wh_per_day: float, margin_factor: float, sun_h_per_day: float, panel_w: float
) -> Wanted:
    """Return the array wanted for a day's use.

    Parameters
    ----------
    use_wh_per_day
        Of the loads. [Wh/day]
    margin_factor
        On the energy: 1.3 in the worked examples.
    sun_h_per_day
        Peak-sun hours. [h/day]
    panel_w
        Of one panel. [W]

    Returns
    -------
    Wanted
        Energy, power and whole panels.

    Notes
    -----
    E = m · E_use; P = E / h; n = ⌈P / P_panel⌉.

    References
    ----------
    [off-grid-examples]

    Examples
    --------
    >>> array_wanted(use_wh_per_day=1092, margin_factor=1.3, sun_h_per_day=2, panel_w=200).units
    4
    """
    energy = use_wh_per_day * margin_factor
    power = energy / sun_h_per_day
    return Wanted(energy_wh_per_day=energy, power_w=power, units=ceil(power / panel_w - _SLACK))


def bank_wanted(
    *,
    energy_wh_per_day: float,
    days_d: float,
    depth_frac: float,
    system_v: float,
    cold_factor: float,
    battery_ah: float,
) -> BankWanted:
    """Return the bank wanted for some days.

    Parameters
    ----------
    energy_wh_per_day
        Out of the bank, margin included. [Wh/day]
    days_d
        Without charging. [d]
    depth_frac
        Share of the capacity that may be used.
    system_v
        Of the bank. [V]
    cold_factor
        Share of the capacity that is left at its temperature.
    battery_ah
        Of one string. [Ah]

    Returns
    -------
    BankWanted
        Capacity and whole strings.

    Notes
    -----
    C = E · N / (D · U · f).

    References
    ----------
    [off-grid-examples]

    Examples
    --------
    >>> round(bank_wanted(energy_wh_per_day=1419.6, days_d=2, depth_frac=0.8, system_v=12,
    ...     cold_factor=0.48, battery_ah=330).capacity_ah, 2)
    616.15
    """
    capacity = energy_wh_per_day * days_d / (depth_frac * system_v * cold_factor)
    return BankWanted(capacity_ah=capacity, strings=ceil(capacity / battery_ah - _SLACK))


def clipping(*, array_w: float, system_v: float, limit_a: float) -> Clipping:
    """Return what a controller lets through of an array's rated power.

    Parameters
    ----------
    array_w
        Rated. [W]
    system_v
        Of the bank. [V]
    limit_a
        The controller's charge current. [A]

    Returns
    -------
    Clipping
        Current wanted, power kept, share lost in full sun.

    Notes
    -----
    I = P / U; kept = min(P, U · I_limit).

    References
    ----------
    [off-grid-examples]

    Examples
    --------
    >>> round(clipping(array_w=1800, system_v=24, limit_a=70).lost_frac, 4)
    0.0667
    """
    kept = min(array_w, system_v * limit_a)
    return Clipping(
        wanted_a=array_w / system_v,
        power_w=kept,
        lost_frac=1.0 - kept / array_w if array_w > 0.0 else 0.0,
    )
