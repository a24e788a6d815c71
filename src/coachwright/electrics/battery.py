"""The bank: how batteries are joined, what cold leaves of them, what may be used."""

from bisect import bisect_right
from dataclasses import dataclass
from math import ceil, inf

from coachwright import reference
from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working

RATED_DEGC = 25.0
"""Temperature at which capacities are stated. [degC] [lfp-cold-sheet]"""
_SLACK = 1e-9

Points = tuple[tuple[float, float], ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class SystemVoltage:
    """The voltages of one class of system."""

    class_v: float
    nominal_v: float
    charge_v: float
    cut_off_v: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Arrangement:
    """How a number of batteries is joined."""

    series_count: int
    parallel_count: int
    spare_count: int


@dataclass(frozen=True, kw_only=True, slots=True)
class UsableEnergy:
    """What may be taken out of a full bank."""

    energy_wh: float
    depth_frac: float
    working: Working


def system_voltage(*, stated_v: float, lithium: bool) -> SystemVoltage:
    """Return the class of a stated voltage (12.8 V is a 12 V system) and its voltages.

    Parameters
    ----------
    stated_v
        On a battery, a charger or a load. [V]
    lithium
        Lithium iron phosphate; lead-acid otherwise.

    Notes
    -----
    The nearest class by either chemistry's nominal voltage.

    References
    ----------
    [battery-voltages]

    Examples
    --------
    >>> system_voltage(stated_v=25.6, lithium=True).class_v
    24.0
    """
    rows = reference.table("system_voltages")
    row = min(
        rows,
        key=lambda row: min(
            abs(stated_v - float(row["lead_v"])), abs(stated_v - float(row["lfp_v"]))
        ),
    )
    kind = "lfp" if lithium else "lead"
    return SystemVoltage(
        class_v=float(row["class_v"]),
        nominal_v=float(row[f"{kind}_v"]),
        charge_v=float(row[f"{kind}_charge_v"]),
        cut_off_v=float(row["cut_off_v"]),
    )


def arrangement(*, count: int, battery_v: float, system_v: float) -> Arrangement:
    """Return how batteries are joined to reach a system's voltage.

    Parameters
    ----------
    count
        Batteries there are.
    battery_v
        Nominal, of one. [V]
    system_v
        Class of the system. [V]

    Notes
    -----
    Series = ⌈system / battery⌉, parallel = ⌊count / series⌋; what is left over fills no string.

    References
    ----------
    [off-grid-examples]

    Examples
    --------
    >>> arrangement(count=6, battery_v=6.0, system_v=12.0)
    Arrangement(series_count=2, parallel_count=3, spare_count=0)
    """
    series = max(1, ceil(system_v / battery_v - _SLACK))
    return Arrangement(
        series_count=series, parallel_count=count // series, spare_count=count % series
    )


def battery_degc(
    *,
    night_degc: float,
    cabin_degc: float,
    in_heated_space: bool,
    heated: bool,
    charge_from_degc: float,
) -> float:
    """Return the temperature taken for a battery in the design cold night [degC].

    Parameters
    ----------
    night_degc
        Outside air. [degC]
    cabin_degc
        Kept in the living space at night. [degC]
    in_heated_space
        The battery stands in heated air.
    heated
        It has heating pads.
    charge_from_degc
        Temperature that the pads keep. [degC]

    Notes
    -----
    In heated air the cabin's night temperature, else the outside air (long enough parked); pads
    keep it at least at the temperature from which it may be charged.  The cold of a van that
    stands unheated for days, and what the pads take, are left out.

    Examples
    --------
    >>> battery_degc(night_degc=-15, cabin_degc=16, in_heated_space=False, heated=True,
    ...     charge_from_degc=0)
    0
    """
    around = max(cabin_degc, night_degc) if in_heated_space else night_degc
    return max(around, charge_from_degc) if heated else around


def cold_factor(*, at_degc: float, points: Points) -> float:
    """Return the share of the rated capacity that is left at a battery temperature.

    Parameters
    ----------
    at_degc
        Of the battery. [degC]
    points
        Pairs of temperature [degC] and share, in any order.

    Raises
    ------
    OutOfRange
        Where there are no points.

    Notes
    -----
    Linear between the points.  Above the warmest the warmest point holds; below the coldest the
    line of the last two goes on, to no less than 0.  A share never grows as it gets colder.

    References
    ----------
    [lfp-cold-sheet], [lead-acid-temperature]

    Examples
    --------
    >>> round(cold_factor(at_degc=-10.0, points=((25, 1.0), (0, 0.7879), (-20, 0.4821))), 4)
    0.635
    """
    if not points:
        raise OutOfRange("points", "empty", "at least one temperature and share")
    ordered = _falling(points)
    if at_degc >= ordered[-1][0]:
        return ordered[-1][1]
    if len(ordered) == 1:
        return ordered[0][1]
    at = max(1, bisect_right([degc for degc, _ in ordered], at_degc))
    (low_degc, low), (high_degc, high) = ordered[at - 1], ordered[at]
    return max(0.0, low + (high - low) * (at_degc - low_degc) / (high_degc - low_degc))


def _falling(points: Points) -> Points:
    """Return the points from cold to warm, each share no larger than those of warmer points."""
    kept: list[tuple[float, float]] = []
    most = inf
    for degc, share in sorted(dict(points).items(), reverse=True):
        most = min(most, share)
        kept.append((degc, most))
    return tuple(kept[::-1])


def usual_cold_points(*, chemistry: str) -> Points:
    """Return the shares of capacity taken where a battery's own sheet gives none.

    Parameters
    ----------
    chemistry
        ``"LFP"``, ``"AGM"`` or ``"flooded"``.

    Notes
    -----
    LFP from one data sheet (read); lead-acid from a vendor's table from 0 °C up (read, over one
    hour), its point at −20 °C from memory.

    References
    ----------
    [lfp-cold-sheet], [lead-acid-temperature]

    Examples
    --------
    >>> usual_cold_points(chemistry="LFP")[0]
    (25.0, 1.0)
    """
    return tuple(
        (float(row["battery_degc"]), float(row["capacity_frac"]))
        for row in reference.table("battery_cold_capacity")
        if row["chemistry"] == chemistry
    )


def usable_energy(
    *,
    capacity_ah: float,
    nominal_v: float,
    reserve_frac: float,
    usable_frac: float,
    cold_factor: float = 1.0,
) -> UsableEnergy:
    """Return what may be taken out of a full bank.

    Parameters
    ----------
    capacity_ah
        As rated. [Ah]
    nominal_v
        Of the bank. [V]
    reserve_frac
        Share that is never used.
    usable_frac
        Depth of discharge that the battery's life is stated for.
    cold_factor
        Share of the capacity that is left at its temperature.

    Returns
    -------
    UsableEnergy
        At the bank's terminals, with its working.

    Notes
    -----
    E = C · U · f · min(1 − R, D).  The reserve is a share of what the cold leaves.

    References
    ----------
    [off-grid-examples]

    Examples
    --------
    >>> usable_energy(capacity_ah=200, nominal_v=12.8, reserve_frac=0.2, usable_frac=0.8).energy_wh
    2048.0
    """
    depth = min(1.0 - reserve_frac, usable_frac)
    energy = capacity_ah * nominal_v * cold_factor * depth
    return UsableEnergy(
        energy_wh=energy,
        depth_frac=depth,
        working=Working(
            expression="E = C·U·f·min(1 − R, D)",
            given=(
                Given(symbol="C", meaning="rated capacity", value=capacity_ah, unit="Ah"),
                Given(symbol="U", meaning="nominal voltage", value=nominal_v, unit="V"),
                Given(
                    symbol="f", meaning="share left in the cold", value=cold_factor, unit="frac"
                ),
                Given(
                    symbol="R",
                    meaning="reserve",
                    value=reserve_frac,
                    unit="frac",
                    source="brief.reserve",
                ),
                Given(
                    symbol="D",
                    meaning="depth that its life is stated for",
                    value=usable_frac,
                    unit="frac",
                    source="battery",
                ),
            ),
            result=energy,
            unit="Wh",
            references=("off-grid-examples", "lfp-cold-sheet", "lead-acid-temperature"),
            note="New batteries; ageing is not counted.",
        ),
    )
