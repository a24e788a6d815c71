"""How each unit is shown to people, in metric and in US customary units."""

from typing import NamedTuple

from coachwright.unit_table import FOOT, INCH, LB, LBF, PSI_KPA, US_GAL


class Display(NamedTuple):
    """What a value in an internal unit is shown as: ``value * factor + offset`` and a symbol.

    Attributes
    ----------
    digits
        Behind the point.
    fine_below
        Numbers smaller than this are shown with one digit more.
    """

    symbol: str
    factor: float
    offset: float
    digits: int
    fine_below: float = 0.0


METRIC: dict[str, Display] = {
    "mm": Display("mm", 1, 0, 0),
    "kg": Display("kg", 1, 0, 0, fine_below=100),
    "frac": Display("%", 100, 0, 1),
    "frac/K": Display("%/K", 100, 0, 2),
    "degC": Display("°C", 1, 0, 1),
    "K": Display("K", 1, 0, 1),
    "deg": Display("°", 1, 0, 1),
    "V": Display("V", 1, 0, 2),
    "A": Display("A", 1, 0, 1),
    "Ah": Display("Ah", 1, 0, 0),
    "W": Display("W", 1, 0, 0, fine_below=10),
    "Wh": Display("Wh", 1, 0, 0),
    "Wh/day": Display("Wh/day", 1, 0, 0),
    "Wh/month": Display("kWh", 0.001, 0, 1),
    "Wh/year": Display("kWh", 0.001, 0, 1),
    "L": Display("L", 1, 0, 1),
    "L/min": Display("L/min", 1, 0, 1),
    "L/day": Display("L/day", 1, 0, 1),
    "d": Display("days", 1, 0, 1),
    "h": Display("h", 1, 0, 1, fine_below=1),
    "min": Display("min", 1, 0, 0),
    "h/day": Display("h/day", 1, 0, 1, fine_below=1),
    "km/h": Display("km/h", 1, 0, 0),
    "1/km": Display("rev/km", 1, 0, 0),
    "kPa": Display("kPa", 1, 0, 0),
    "1": Display("", 1, 0, 2),
    "count": Display("", 1, 0, 0),
    "m": Display("m", 1, 0, 2),
    "m2": Display("m²", 1, 0, 2),
    "mm2": Display("mm²", 1, 0, 0),
    "N": Display("N", 1, 0, 0),
    "N m": Display("N·m", 1, 0, 0),
    "W/K": Display("W/K", 1, 0, 1),
    "W/m/K": Display("W/(m·K)", 1, 0, 3),
    "Wh/m2/day": Display("Wh/(m²·day)", 1, 0, 0),
    "kg/L": Display("kg/L", 1, 0, 3),
    "kg/h": Display("kg/h", 1, 0, 3),
    "kg/day": Display("kg/day", 1, 0, 2),
    "L/h": Display("L/h", 1, 0, 2),
    "m/s": Display("m/s", 1, 0, 2),
    "ohm": Display("mΩ", 1000, 0, 2),
    "mg/L": Display("mg/L", 1, 0, 0),
    "g/L": Display("g/L", 1, 0, 1),
    "mL": Display("mL", 1, 0, 0),
    "s": Display("s", 1, 0, 0),
    "kg mm": Display("kg·m", 0.001, 0, 0),
    "Pa": Display("Pa", 1, 0, 0),
    "BTU/Wh": Display("BTU/Wh", 1, 0, 1),
    "W/m2": Display("W/m²", 1, 0, 0),
    "1/V": Display("1/V", 1, 0, 3),
    "1/W": Display("1/W", 1, 0, 6),
    "s/m": Display("s/m", 1, 0, 3),
    "W/m2/K": Display("W/(m²·K)", 1, 0, 2),
    "m2 K/W": Display("m²·K/W", 1, 0, 2),
    "m3": Display("m³", 1, 0, 1),
    "m3/h": Display("m³/h", 1, 0, 0),
    "g/h": Display("g/h", 1, 0, 0),
    "kg/m3": Display("kg/m³", 1, 0, 0),
    "Wh/m3/K": Display("Wh/(m³·K)", 1, 0, 2),
    "J/K": Display("kJ/K", 0.001, 0, 0),
    "J/kg/K": Display("J/(kg·K)", 1, 0, 0),
    "Wh/K": Display("Wh/K", 1, 0, 0),
    "MJ/L": Display("MJ/L", 1, 0, 1),
    "1/h": Display("per hour", 1, 0, 1),
    "frac/km": Display("% per km", 100, 0, 1),
    "ppm": Display("ppm", 1, 0, 0),
}
"""Internal unit → how it is shown where metric units are read."""

US: dict[str, Display] = METRIC | {
    "mm": Display("in", 1 / INCH, 0, 1),
    "m": Display("ft", 1000 / FOOT, 0, 1),
    "kg": Display("lb", 1 / LB, 0, 0, fine_below=100),
    "kg/h": Display("lb/h", 1 / LB, 0, 2),
    "kg/day": Display("lb/day", 1 / LB, 0, 1),
    "L": Display("US gal", 1 / US_GAL, 0, 1),
    "L/min": Display("US gal/min", 1 / US_GAL, 0, 2),
    "L/day": Display("US gal/day", 1 / US_GAL, 0, 1),
    "L/h": Display("US gal/h", 1 / US_GAL, 0, 3),
    "degC": Display("°F", 1.8, 32, 0),
    "K": Display("°F difference", 1.8, 0, 0),
    "km/h": Display("mph", 1 / 1.609344, 0, 0),
    "1/km": Display("rev/mile", 1.609344, 0, 0),
    "kPa": Display("psi", 1 / PSI_KPA, 0, 1),
    "mm2": Display("in²", 1 / INCH**2, 0, 1),
    "m2": Display("ft²", 1e6 / FOOT**2, 0, 1),
    "N": Display("lbf", 1 / LBF, 0, 0),
    "N m": Display("lbf·ft", 1 / (LBF * 0.3048), 0, 0),
    "kg mm": Display("lb·ft", 1 / (LB * FOOT), 0, 0),
    "m/s": Display("ft/s", 1000 / FOOT, 0, 1),
    "kg/L": Display("lb/US gal", US_GAL / LB, 0, 2),
    "mL": Display("US fl oz", 128 / (1000 * US_GAL), 0, 1, fine_below=1),
    "m3": Display("ft³", 1e9 / FOOT**3, 0, 0),
    "m3/h": Display("cfm", 1e9 / FOOT**3 / 60, 0, 0),
}
"""The same where US customary units are read."""

MONEY = Display("", 0.01, 0, 2)
"""Minor units of the currency that the unit names, such as ``"money EUR"``."""
