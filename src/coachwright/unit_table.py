"""The units that may stand in a file, by kind of quantity.

Every factor is exact by definition unless its note says otherwise; the test
``tests/model/test_unit_table.py`` compares each with an independent units library.
"""

from typing import NamedTuple


class Unit(NamedTuple):
    """One unit: ``internal = value * factor + offset``."""

    symbol: str
    factor: float
    offset: float = 0.0
    note: str = ""


class Kind(NamedTuple):
    """A kind of quantity: the unit used inside, an example, and what may be written."""

    internal: str
    example: str
    units: tuple[Unit, ...]


LB = 0.45359237
INCH = 25.4
FOOT = 304.8
US_GAL = 3.785411784
BTU_PER_H = 1055.05585262 / 3600
PSI_KPA = 6.894757293168361
LBF = 4.4482216152605

KINDS: dict[str, Kind] = {
    "length": Kind(
        "mm",
        "650 mm",
        (
            Unit("mm", 1.0),
            Unit("cm", 10.0),
            Unit("m", 1000.0),
            Unit("in", INCH),
            Unit("ft", FOOT),
        ),
    ),
    "mass": Kind(
        "kg",
        "24 kg",
        (
            Unit("kg", 1.0),
            Unit("g", 0.001),
            Unit("t", 1000.0),
            Unit("lb", LB),
            Unit("oz", LB / 16),
        ),
    ),
    "area": Kind(
        "m2",
        "0.6 m2",
        (
            Unit("m2", 1.0),
            Unit("cm2", 1e-4),
            Unit("mm2", 1e-6),
            Unit("ft2", FOOT**2 * 1e-6),
            Unit("in2", INCH**2 * 1e-6),
        ),
    ),
    "volume": Kind(
        "L",
        "90 L",
        (
            Unit("L", 1.0),
            Unit("mL", 0.001),
            Unit("m3", 1000.0),
            Unit("US gal", US_GAL),
            Unit("imp gal", 4.54609),
        ),
    ),
    "flow": Kind(
        "L/min",
        "10 L/min",
        (
            Unit("L/min", 1.0),
            Unit("L/h", 1 / 60),
            Unit("m3/h", 1000 / 60),
            Unit("US gal/min", US_GAL),
            Unit("cfm", FOOT**3 * 1e-6),
        ),
    ),
    "water_use": Kind(
        "L/day",
        "12 L/day",
        (Unit("L/day", 1.0), Unit("US gal/day", US_GAL)),
    ),
    "fuel_use": Kind(
        "L/h",
        "0.24 L/h",
        (Unit("L/h", 1.0), Unit("mL/h", 0.001), Unit("US gal/h", US_GAL)),
    ),
    "gas_use": Kind(
        "kg/h",
        "0.16 kg/h",
        (Unit("kg/h", 1.0), Unit("g/h", 0.001), Unit("lb/h", LB)),
    ),
    "power": Kind(
        "W",
        "60 W",
        (
            Unit("W", 1.0),
            Unit("kW", 1000.0),
            Unit("VA", 1.0, note="counted as watts: the power factor is taken as 1"),
            Unit("kVA", 1000.0, note="counted as watts: the power factor is taken as 1"),
            Unit("BTU/h", BTU_PER_H),
            Unit("hp", 745.6998715822702),
        ),
    ),
    "energy": Kind(
        "Wh",
        "2560 Wh",
        (
            Unit("Wh", 1.0),
            Unit("kWh", 1000.0),
            Unit("MJ", 1e6 / 3600),
            Unit("BTU", BTU_PER_H),
        ),
    ),
    "energy_use": Kind(
        "Wh/day",
        "1.2 kWh/day",
        (Unit("Wh/day", 1.0), Unit("kWh/day", 1000.0)),
    ),
    "time_use": Kind(
        "h/day",
        "3 h/day",
        (Unit("h/day", 1.0), Unit("min/day", 1 / 60)),
    ),
    "voltage": Kind("V", "12.8 V", (Unit("V", 1.0), Unit("mV", 0.001), Unit("kV", 1000.0))),
    "current": Kind("A", "30 A", (Unit("A", 1.0), Unit("mA", 0.001), Unit("kA", 1000.0))),
    "charge": Kind("Ah", "180 Ah", (Unit("Ah", 1.0), Unit("mAh", 0.001))),
    "resistance": Kind(
        "ohm",
        "3 mohm",
        (Unit("ohm", 1.0), Unit("mohm", 0.001), Unit("uohm", 1e-6)),
    ),
    "time": Kind(
        "h",
        "4 h",
        (
            Unit("h", 1.0),
            Unit("min", 1 / 60),
            Unit("s", 1 / 3600),
        ),
    ),
    "days": Kind("d", "10 d", (Unit("d", 1.0), Unit("weeks", 7.0))),
    "temperature": Kind(
        "degC",
        "-12 degC",
        (Unit("degC", 1.0), Unit("degF", 5 / 9, -160 / 9)),
    ),
    "temperature_difference": Kind(
        "K",
        "10 K",
        (Unit("K", 1.0), Unit("delta degF", 5 / 9)),
    ),
    "fraction": Kind("frac", "25 %", (Unit("%", 0.01),)),
    "temperature_coefficient": Kind("frac/K", "-0.35 %/K", (Unit("%/K", 0.01),)),
    "pressure": Kind(
        "kPa",
        "250 kPa",
        (
            Unit("kPa", 1.0),
            Unit("Pa", 0.001),
            Unit("MPa", 1000.0),
            Unit("bar", 100.0),
            Unit("mbar", 0.1),
            Unit("psi", PSI_KPA),
        ),
    ),
    "speed": Kind("km/h", "120 km/h", (Unit("km/h", 1.0), Unit("mph", 1.609344))),
    "angle": Kind("deg", "90 deg", (Unit("deg", 1.0),)),
    "force": Kind("N", "500 N", (Unit("N", 1.0), Unit("kN", 1000.0), Unit("lbf", LBF))),
    "moment": Kind(
        "N m",
        "400 N m",
        (Unit("N m", 1.0), Unit("kN m", 1000.0), Unit("lbf ft", LBF * 0.3048)),
    ),
    "conductance": Kind("W/K", "3 W/K", (Unit("W/K", 1.0), Unit("BTU/h/degF", BTU_PER_H * 1.8))),
    "conductivity": Kind("W/m/K", "0.036 W/m/K", (Unit("W/m/K", 1.0),)),
    "insulance": Kind("m2 K/W", "0.3 m2 K/W", (Unit("m2 K/W", 1.0),)),
    "density": Kind(
        "kg/L",
        "0.84 kg/L",
        (Unit("kg/L", 1.0), Unit("kg/m3", 0.001), Unit("lb/US gal", LB / US_GAL)),
    ),
    "efficacy": Kind("BTU/Wh", "9.0 BTU/Wh", (Unit("BTU/Wh", 1.0),)),
}
"""Kinds of quantity by name; the first unit of each is the one used inside the program."""
