"""Strings of panels: cold voltage, circuit current, reverse current."""

from dataclasses import dataclass
from math import ceil, floor

from coachwright import reference
from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working
from coachwright.units import told

TEST_DEGC = 25.0
"""Cell temperature at which the open-circuit voltage is rated. [degC] [nec-690]"""
_SLACK = 1e-9


@dataclass(frozen=True, kw_only=True, slots=True)
class ColdVoltage:
    """Open-circuit voltage of a string in the cold."""

    voltage_v: float
    factor: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class CircuitCurrent:
    """Currents of a panel circuit.

    Attributes
    ----------
    most_a
        Maximum circuit current.
    device_a
        Least rating of conductor and device before correction.
    """

    most_a: float
    device_a: float
    working: Working


def cold_voltage_by_coefficient(
    *, open_circuit_v: float, series_count: int, coefficient_frac_per_k: float, cold_degc: float
) -> ColdVoltage:
    """Return a string's cold voltage by the maker's coefficient.

    Parameters
    ----------
    open_circuit_v
        Of one panel at 25 °C. [V]
    series_count
        Panels in the string.
    coefficient_frac_per_k
        Of the open-circuit voltage; negative. [frac/K]
    cold_degc
        Lowest temperature. [degC]

    Returns
    -------
    ColdVoltage
        With its working.

    Notes
    -----
    U = n · U_oc · (1 + β (T − 25)).  A coefficient in V/K is divided by U_oc first.  No credit for
    warmth above 25 °C.

    References
    ----------
    [nec-690]

    Examples
    --------
    >>> round(cold_voltage_by_coefficient(open_circuit_v=49.5, series_count=1,
    ...     coefficient_frac_per_k=-0.0027, cold_degc=-10).voltage_v, 2)
    54.18
    """
    factor = max(1.0, 1.0 + coefficient_frac_per_k * (cold_degc - TEST_DEGC))
    return _cold(
        open_circuit_v,
        series_count,
        factor,
        "U = n·U_oc·(1 + β·(T − 25))",
        (
            Given(
                symbol="β",
                meaning="maker's coefficient of the open-circuit voltage",
                value=coefficient_frac_per_k,
                unit="frac/K",
                source="panel",
            ),
            Given(
                symbol="T",
                meaning="design cold night",
                value=cold_degc,
                unit="degC",
                source="brief.climate",
            ),
        ),
    )


def cold_voltage_by_table(
    *, open_circuit_v: float, series_count: int, cold_degc: float
) -> ColdVoltage:
    """Return a string's cold voltage by the code's table, for want of the maker's coefficient.

    Parameters
    ----------
    open_circuit_v
        Of one panel at 25 °C. [V]
    series_count
        Panels in the string.
    cold_degc
        Lowest temperature, from −40 up. [degC]

    Returns
    -------
    ColdVoltage
        With its working.

    Raises
    ------
    OutOfRange
        Where it is colder than the table.

    Notes
    -----
    U = n · U_oc · f; crystalline silicon.  Between two rows the colder one is taken.

    References
    ----------
    [nec-690]

    Examples
    --------
    >>> cold = cold_voltage_by_table(open_circuit_v=49.5, series_count=1, cold_degc=-10)
    >>> round(cold.voltage_v, 2)
    56.43
    """
    rows = reference.table("pv_cold_voltage_factors")
    whole = floor(cold_degc + _SLACK)
    factor = 1.0
    if whole <= max(float(row["to_degc"]) for row in rows):
        found = [
            float(row["factor"])
            for row in rows
            if float(row["from_degc"]) <= whole <= float(row["to_degc"])
        ]
        if not found:
            raise OutOfRange("cold_degc", cold_degc, "-40 degC or warmer for the table")
        factor = found[0]
    return _cold(
        open_circuit_v,
        series_count,
        factor,
        "U = n·U_oc·f",
        (
            Given(
                symbol="f",
                meaning=f"factor at {told(cold_degc, 'degC')}",
                value=factor,
                unit="1",
                source="Table 690.7(A)",
            ),
        ),
    )


def _cold(
    open_circuit_v: float,
    series_count: int,
    factor: float,
    expression: str,
    more: tuple[Given, ...],
) -> ColdVoltage:
    voltage = series_count * open_circuit_v * factor
    return ColdVoltage(
        voltage_v=voltage,
        factor=factor,
        working=Working(
            expression=expression,
            given=(
                Given(
                    symbol="n", meaning="panels in one string", value=series_count, unit="count"
                ),
                Given(
                    symbol="U_oc",
                    meaning=f"open-circuit voltage of one panel at {told(25, 'degC')}",
                    value=open_circuit_v,
                    unit="V",
                    source="panel",
                ),
                *more,
            ),
            result=voltage,
            unit="V",
            references=("nec-690",),
        ),
    )


def series_count(*, rated_v: float, charge_v: float) -> int:
    """Return how many panels one string needs so that the controller can charge.

    Parameters
    ----------
    rated_v
        Of one panel at its best point. [V]
    charge_v
        Of the bank when nearly full. [V]

    Notes
    -----
    n = ⌈U_charge / U_rated⌉: as few as will do, so all panels side by side on a 12 V bank.

    Examples
    --------
    >>> series_count(rated_v=20, charge_v=14.6), series_count(rated_v=20, charge_v=29.2)
    (1, 2)
    """
    return max(1, ceil(charge_v / rated_v - _SLACK))


def circuit_current(
    *, short_circuit_a: float, parallel_count: int, factor: float
) -> CircuitCurrent:
    """Return the current that a panel circuit is laid out for.

    Parameters
    ----------
    short_circuit_a
        Of one string. [A]
    parallel_count
        Strings side by side.
    factor
        1.25 of the code.

    Returns
    -------
    CircuitCurrent
        Maximum circuit current, and the least rating of conductor and device.

    Notes
    -----
    I = 1.25 · m · I_sc; device and conductor 1.25 times that, before correction.

    References
    ----------
    [nec-690]

    Examples
    --------
    >>> found = circuit_current(short_circuit_a=11.2, parallel_count=1, factor=1.25)
    >>> found.most_a, found.device_a
    (14.0, 17.5)
    """
    most = short_circuit_a * parallel_count * factor
    return CircuitCurrent(
        most_a=most,
        device_a=most * factor,
        working=Working(
            expression="I = f·m·I_sc",
            given=(
                Given(symbol="f", meaning="factor of the code", value=factor, unit="1"),
                Given(
                    symbol="m", meaning="strings side by side", value=parallel_count, unit="count"
                ),
                Given(
                    symbol="I_sc",
                    meaning="short-circuit current of one string",
                    value=short_circuit_a,
                    unit="A",
                    source="panel",
                ),
            ),
            result=most,
            unit="A",
            references=("nec-690",),
        ),
    )


def reverse_current_a(*, short_circuit_a: float, parallel_count: int, factor: float) -> float:
    """Return what all other strings can drive backwards into a faulty one [A].

    Parameters
    ----------
    short_circuit_a
        Of one string. [A]
    parallel_count
        Strings side by side.
    factor
        1.25 of the code.

    Notes
    -----
    I = (m − 1) · 1.25 · I_sc.

    References
    ----------
    [nec-690]

    Examples
    --------
    >>> reverse_current_a(short_circuit_a=10, parallel_count=3, factor=1.25)
    25.0
    """
    return max(0, parallel_count - 1) * factor * short_circuit_a
