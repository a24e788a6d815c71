"""What tyres carry: load index, axle capacity, speed symbol."""

from dataclasses import dataclass

from coachwright import reference
from coachwright.errors import OutOfRange, UnknownName
from coachwright.model.working import Given, Working

P_METRIC_CONSTANT = 6.67e-5
"""Of the passenger-tyre load formula, 50 to 80 series [kg, kPa, mm]; [tra-year-book]."""


@dataclass(frozen=True, kw_only=True, slots=True)
class AxleCapacity:
    """What the tyres of one axle may carry.

    Attributes
    ----------
    usable_kg
        Of one tyre, after the divisor.
    capacity_kg
        Of all tyres of the axle.
    """

    usable_kg: float
    capacity_kg: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class SymbolSpeed:
    """The highest speed of a speed symbol, and how well that is known."""

    top_km_per_h: float
    status: str


def load_index_kg(*, load_index: int) -> float:
    """Return the load of one tyre for a load index.

    Parameters
    ----------
    load_index
        As on the sidewall, 60 to 130.

    Returns
    -------
    float
        Largest load at the speed of the speed symbol and the rated pressure. [kg]

    Raises
    ------
    UnknownName
        Where the table has no such index.

    Notes
    -----
    A table; close to 45·10^(LI/80) kg, but the table rules.

    References
    ----------
    [un-r30], [un-r54]

    Examples
    --------
    >>> load_index_kg(load_index=107), load_index_kg(load_index=105)
    (975.0, 925.0)
    """
    for row in reference.table("tyre_load_index"):
        if row["load_index"] == str(load_index):
            return float(row["max_load_kg"])
    raise UnknownName("load index", str(load_index), ("60 to 130",))


def symbol_speed(*, symbol: str) -> SymbolSpeed:
    """Return the highest speed of a speed symbol.

    Parameters
    ----------
    symbol
        As on the sidewall.

    Returns
    -------
    SymbolSpeed
        Speed and status of the row.

    Raises
    ------
    UnknownName
        Where the table has no such symbol.

    Notes
    -----
    A table; the alphabet's order does not hold for H, which stands between U and V.

    References
    ----------
    [un-r54]

    Examples
    --------
    >>> symbol_speed(symbol="H").top_km_per_h
    210.0
    """
    rows = reference.table("tyre_speed_symbols")
    for row in rows:
        if row["symbol"] == symbol:
            return SymbolSpeed(top_km_per_h=float(row["max_speed_km_per_h"]), status=row["status"])
    raise UnknownName("speed symbol", symbol, tuple(row["symbol"] for row in rows))


def axle_capacity(*, rating_kg: float, tyres: int, divisor_factor: float) -> AxleCapacity:
    """Return what the tyres of one axle carry together.

    Parameters
    ----------
    rating_kg
        Of one tyre as it is fitted: single or dual. [kg]
    tyres
        On the axle: 2, or 4 for a dual axle.
    divisor_factor
        By which the rating is divided: 1 where it counts in full. [1]

    Returns
    -------
    AxleCapacity
        Of one tyre and of the axle, with its working.

    Raises
    ------
    OutOfRange
        Where the rating is not positive, the number not 2 or 4, or the divisor below 1.

    Notes
    -----
    C = n·W/k.  At the rated pressure and up to the speed of the speed symbol.

    References
    ----------
    [un-r54], [us-49cfr571-110], [us-49cfr571-120]

    Examples
    --------
    >>> round(axle_capacity(rating_kg=1250, tyres=2, divisor_factor=1.10).capacity_kg, 2)
    2272.73
    """
    if rating_kg <= 0:
        raise OutOfRange("rating_kg", rating_kg, "more than 0")
    if tyres not in (2, 4):
        raise OutOfRange("tyres", tyres, "2 or 4")
    if divisor_factor < 1:
        raise OutOfRange("divisor_factor", divisor_factor, "at least 1")
    usable = rating_kg / divisor_factor
    capacity = tyres * usable
    return AxleCapacity(
        usable_kg=usable,
        capacity_kg=capacity,
        working=Working(
            expression="C = n·W/k",
            given=(
                Given(symbol="n", meaning="tyres on the axle", value=tyres, unit="count"),
                Given(
                    symbol="W",
                    meaning="rating of one tyre",
                    value=rating_kg,
                    unit="kg",
                    source="load index table",
                ),
                Given(symbol="k", meaning="divisor of its kind", value=divisor_factor, unit="1"),
            ),
            result=capacity,
            unit="kg",
            references=("un-r54", "us-49cfr571-110", "us-49cfr571-120"),
            note="at the tyre's rated pressure",
        ),
    )


def passenger_tyre_kg(
    *,
    width_mm: float,
    aspect_frac: float,
    rim_mm: float,
    pressure_kpa: float,
) -> float:
    """Return the load of a passenger-car tyre at one pressure.

    Parameters
    ----------
    width_mm
        Nominal section width. [mm]
    aspect_frac
        Section height over width. [frac]
    rim_mm
        Rim diameter. [mm]
    pressure_kpa
        Cold pressure. [kPa]

    Returns
    -------
    float
        Load of one tyre, to be rounded to the nearest load index. [kg]

    Raises
    ------
    OutOfRange
        Where a value is not positive.

    Notes
    -----
    L = K·P^0.5·S^1.39·(D_r + S) with S = (0.34848 + 0.6497·a)·S_70, S_70 the width.  P-metric
    tyres of the 50 to 80 series, before 2005; a check of a size, not a rating.

    References
    ----------
    [tra-year-book]

    Examples
    --------
    >>> round(passenger_tyre_kg(width_mm=235, aspect_frac=0.75, rim_mm=381, pressure_kpa=240), 1)
    918.7
    """
    for name, value in (
        ("width_mm", width_mm),
        ("aspect_frac", aspect_frac),
        ("rim_mm", rim_mm),
        ("pressure_kpa", pressure_kpa),
    ):
        if value <= 0:
            raise OutOfRange(name, value, "more than 0")
    section = (0.34848 + 0.6497 * aspect_frac) * width_mm
    return float(P_METRIC_CONSTANT * pressure_kpa**0.5 * section**1.39 * (rim_mm + section))
