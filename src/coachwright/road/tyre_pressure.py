"""The cold pressure that a load asks for, and the one to advise."""

from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working


@dataclass(frozen=True, kw_only=True, slots=True)
class PressureForLoad:
    """The cold pressure that a load asks for by one formula; never go below the placard's."""

    pressure_kpa: float
    working: Working


def pressure_for_load(
    *,
    axle_load_kg: float,
    rating_kg: float,
    tyres: int,
    rated_pressure_kpa: float,
    pressure_exponent: float,
) -> PressureForLoad:
    """Return the cold pressure that an axle load asks for.

    Parameters
    ----------
    axle_load_kg
        On the axle. [kg]
    rating_kg
        Of one tyre at its rated pressure. [kg]
    tyres
        On the axle.
    rated_pressure_kpa
        At which the tyre carries its rating. [kPa]
    pressure_exponent
        1.25 for the European commercial formula; 1 for the stiffness model. [1]

    Returns
    -------
    PressureForLoad
        With its working.

    Raises
    ------
    OutOfRange
        Where a value is not positive, or the load is above what the tyres carry.

    Notes
    -----
    P = P_max·(A/(n·W))^e.  Commercial tyres; advice only: never below the placard or the tyre
    maker's table.  With e = 1 it is the linear stiffness model, which asks for more air.

    References
    ----------
    [etrto-manual], [daws-2009]

    Examples
    --------
    >>> advice = pressure_for_load(
    ...     axle_load_kg=1100,
    ...     rating_kg=750,
    ...     tyres=2,
    ...     rated_pressure_kpa=50,
    ...     pressure_exponent=1.25,
    ... )
    >>> round(advice.pressure_kpa, 2)
    33.93
    """
    for name, value in (
        ("axle_load_kg", axle_load_kg),
        ("rating_kg", rating_kg),
        ("tyres", tyres),
        ("rated_pressure_kpa", rated_pressure_kpa),
    ):
        if value <= 0:
            raise OutOfRange(name, value, "more than 0")
    if axle_load_kg > tyres * rating_kg:
        raise OutOfRange("axle_load_kg", axle_load_kg, f"at most {tyres * rating_kg:g} kg")
    pressure = rated_pressure_kpa * (axle_load_kg / (tyres * rating_kg)) ** pressure_exponent
    return PressureForLoad(
        pressure_kpa=pressure,
        working=Working(
            expression="P = P_max·(A/(n·W))^e",
            given=(
                Given(
                    symbol="P_max", meaning="rated pressure", value=rated_pressure_kpa, unit="kPa"
                ),
                Given(symbol="A", meaning="axle load", value=axle_load_kg, unit="kg"),
                Given(symbol="n", meaning="tyres on the axle", value=tyres, unit="count"),
                Given(symbol="W", meaning="rating of one tyre", value=rating_kg, unit="kg"),
                Given(symbol="e", meaning="exponent", value=pressure_exponent, unit="1"),
            ),
            result=pressure,
            unit="kPa",
            references=("etrto-manual",),
            note="advice; never below the placard or the tyre maker's table",
        ),
    )


def advised_pressure(*, needed_kpa: float, placard_kpa: float) -> PressureForLoad:
    """Return the cold pressure to advise: what the load needs, never below the placard.

    Parameters
    ----------
    needed_kpa
        What the load asks for by a formula. [kPa]
    placard_kpa
        What the vehicle's maker asks for. [kPa]

    Returns
    -------
    PressureForLoad
        With its working.

    Raises
    ------
    OutOfRange
        Where a pressure is not positive.

    Notes
    -----
    P = max(P_load, P_placard).  A light load asks for little air by the formula; the placard
    also looks to steering, heat and the unladen axle.

    References
    ----------
    [etrto-manual], [vehicle-maker-data]

    Examples
    --------
    >>> advised_pressure(needed_kpa=136, placard_kpa=450).pressure_kpa
    450
    """
    for name, value in (("needed_kpa", needed_kpa), ("placard_kpa", placard_kpa)):
        if value <= 0:
            raise OutOfRange(name, value, "more than 0")
    pressure = max(needed_kpa, placard_kpa)
    return PressureForLoad(
        pressure_kpa=pressure,
        working=Working(
            expression="P = max(P_load, P_placard)",
            given=(
                Given(
                    symbol="P_load",
                    meaning="for the heaviest load, P_max·(A/(n·W))^1.25",
                    value=needed_kpa,
                    unit="kPa",
                ),
                Given(symbol="P_placard", meaning="placard", value=placard_kpa, unit="kPa"),
            ),
            result=pressure,
            unit="kPa",
            references=("etrto-manual", "vehicle-maker-data"),
            note="advice; never below the placard or the tyre maker's table, never above what "
            "tyre, wheel and valve are made for",
        ),
    )
