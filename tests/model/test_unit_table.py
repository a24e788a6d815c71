"""Each unit that may stand in a file, against the general-purpose units library pint.

pint's definitions follow the international yard and pound (1959), the SI brochure (9th edition,
2019) and NIST SP 811 (2008, Appendix B) for the British thermal unit (International Table).
"""

import pint
import pytest

from coachwright.unit_table import KINDS, Unit
from coachwright.units import SUFFIXES, SYSTEMS, shown_number

REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry()

RELATIVE = 1e-12
"""Far below what any instrument reads; leaves room for the order of multiplication alone."""

EXPRESSIONS = {
    "%": "percent",
    "%/K": "percent/delta_degree_Celsius",
    "1/km": "1/km",
    "BTU": "Btu_it",
    "BTU/Wh": "Btu_it/watt_hour",
    "BTU/h": "Btu_it/hour",
    "BTU/h/degF": "Btu_it/hour/delta_degree_Fahrenheit",
    "K": "delta_degree_Celsius",
    "L": "liter",
    "L/day": "liter/day",
    "L/h": "liter/hour",
    "L/min": "liter/minute",
    "N m": "newton*meter",
    "US gal": "US_liquid_gallon",
    "US gal/day": "US_liquid_gallon/day",
    "US gal/h": "US_liquid_gallon/hour",
    "US gal/min": "US_liquid_gallon/minute",
    "W/K": "watt/delta_degree_Celsius",
    "W/m/K": "watt/meter/delta_degree_Celsius",
    "cfm": "foot**3/minute",
    "cm2": "cm**2",
    "degC": "degree_Celsius",
    "degF": "degree_Fahrenheit",
    "delta degF": "delta_degree_Fahrenheit",
    "frac": "dimensionless",
    "frac/K": "1/delta_degree_Celsius",
    "ft2": "foot**2",
    "h": "hour",
    "h/day": "hour/day",
    "hp": "horsepower",
    "imp gal": "imperial_gallon",
    "in": "inch",
    "in2": "inch**2",
    "kN m": "kilonewton*meter",
    "kVA": "kilovolt_ampere",
    "VA": "volt_ampere",
    "lb": "pound",
    "lb/US gal": "pound/US_liquid_gallon",
    "lb/h": "pound/hour",
    "lbf ft": "pound_force*foot",
    "m2": "meter**2",
    "m2 K/W": "meter**2*delta_degree_Celsius/watt",
    "m3": "meter**3",
    "m3/h": "meter**3/hour",
    "kg/m3": "kg/meter**3",
    "mm2": "mm**2",
    "min/day": "minute/day",
    "mph": "mile/hour",
    "weeks": "week",
    "d": "day",
}
"""Our symbol → the library's; where missing, the two are the same."""

UNITS = [(kind, unit) for kind, each in KINDS.items() for unit in each.units]
each_unit = pytest.mark.parametrize(("kind", "unit"), UNITS, ids=[f"{k}-{u[0]}" for k, u in UNITS])


def _converted(value: float, symbol: str, kind: str) -> float:
    internal = KINDS[kind].internal
    quantity = REGISTRY.Quantity(value, EXPRESSIONS.get(symbol, symbol))
    return float(quantity.to(EXPRESSIONS.get(internal, internal)).magnitude)


@each_unit
def test_a_unit_means_what_the_units_library_says(kind: str, unit: Unit) -> None:
    zero = _converted(0.0, unit.symbol, kind)
    assert unit.offset == pytest.approx(zero, rel=RELATIVE, abs=RELATIVE)
    for value in (1.0, 37.5, -40.0):
        ours = value * unit.factor + unit.offset
        assert ours == pytest.approx(
            _converted(value, unit.symbol, kind), rel=RELATIVE, abs=RELATIVE
        )


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_the_first_unit_is_the_internal_one(kind: str) -> None:
    first = KINDS[kind].units[0]
    assert _converted(1.0, first.symbol, kind) == pytest.approx(first.factor, rel=RELATIVE)
    assert KINDS[kind].internal in SUFFIXES.values()


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_no_symbol_stands_twice_in_a_kind(kind: str) -> None:
    symbols = [unit.symbol for unit in KINDS[kind].units]
    assert len(symbols) == len(set(symbols))


SHOWN = {
    "W/(m·K)": "watt/meter/delta_degree_Celsius",
    "W/m²": "watt/meter**2",
    "Wh/(m²·day)": "watt_hour/meter**2/day",
    "kg·m": "kg*meter",
    "N·m": "newton*meter",
    "lbf·ft": "pound_force*foot",
    "lb·ft": "pound*foot",
    "in²": "inch**2",
    "ft²": "foot**2",
    "m²": "meter**2",
    "mm²": "mm**2",
    "mΩ": "milliohm",
    "°": "degree",
    "°C": "degree_Celsius",
    "°F": "degree_Fahrenheit",
    "°F difference": "delta_degree_Fahrenheit",
    "days": "day",
    "rev/km": "1/km",
    "rev/mile": "1/mile",
    "L/min": "liter/minute",
    "lb/day": "pound/day",
    "US fl oz": "US_fluid_ounce",
    "": "dimensionless",
    "W/(m²·K)": "watt/meter**2/delta_degree_Celsius",
    "m²·K/W": "meter**2*delta_degree_Celsius/watt",
    "m³": "meter**3",
    "m³/h": "meter**3/hour",
    "ft³": "foot**3",
    "cfm": "foot**3/minute",
    "kg/m³": "kg/meter**3",
    "kJ/K": "kilojoule/delta_degree_Celsius",
    "J/(kg·K)": "joule/kg/delta_degree_Celsius",
    "Wh/K": "watt_hour/delta_degree_Celsius",
    "per hour": "1/hour",
    "% per km": "percent/kilometer",
}
"""A symbol for people → the library's."""

INTERNAL = {
    "1": "dimensionless",
    "count": "dimensionless",
    "W/m2": "watt/meter**2",
    "Wh/m2/day": "watt_hour/meter**2/day",
    "1/V": "1/volt",
    "1/W": "1/watt",
    "s/m": "second/meter",
    "kg mm": "kg*mm",
    "deg": "degree",
    "d": "day",
    "h": "hour",
    "min": "minute",
    "kg/L": "kg/liter",
    "g/L": "g/liter",
    "mg/L": "mg/liter",
    "mL": "milliliter",
    "W/m2/K": "watt/meter**2/delta_degree_Celsius",
    "m2 K/W": "meter**2*delta_degree_Celsius/watt",
    "m3": "meter**3",
    "m3/h": "meter**3/hour",
    "kg/m3": "kg/meter**3",
    "J/K": "joule/delta_degree_Celsius",
    "J/kg/K": "joule/kg/delta_degree_Celsius",
    "Wh/K": "watt_hour/delta_degree_Celsius",
    "1/h": "1/hour",
    "frac/km": "1/kilometer",
}


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("unit", sorted(set(SUFFIXES.values())))
def test_a_value_is_shown_in_a_unit_of_the_same_worth(unit: str, system: str) -> None:
    _, symbol = shown_number(1.0, unit, system)
    inside = INTERNAL.get(unit, EXPRESSIONS.get(unit, unit))
    outside = SHOWN.get(symbol, INTERNAL.get(symbol, EXPRESSIONS.get(symbol, symbol)))
    value = 123456.0
    text, _ = shown_number(value, unit, system)
    expected = REGISTRY.Quantity(value, inside).to(outside).magnitude
    decimals = len(text.partition(".")[2])
    assert float(text.replace(",", "")) == pytest.approx(expected, abs=0.5001 * 10**-decimals)
