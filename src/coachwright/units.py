"""Quantities at the edge: read "24 kg" into a float, show a float as "24 kg" or "53 lb".

Inside the program every float's name ends with its unit (`SUFFIXES`).  Values are converted once
when a file is read (`parse`) and once when they are shown (`shown`).
"""

import re
from dataclasses import dataclass
from decimal import Context, Decimal
from functools import cache

from coachwright.unit_table import INCH, KINDS, LB, PSI_KPA, US_GAL

SUFFIXES: dict[str, str] = {
    "mm": "mm",
    "m": "m",
    "m2": "m2",
    "mm2": "mm2",
    "kg": "kg",
    "kg_mm": "kg mm",
    "n": "N",
    "n_m": "N m",
    "s": "s",
    "h": "h",
    "d": "d",
    "h_per_day": "h/day",
    "w": "W",
    "wh": "Wh",
    "wh_per_day": "Wh/day",
    "wh_per_m2_day": "Wh/m2/day",
    "v": "V",
    "a": "A",
    "ah": "Ah",
    "ohm": "ohm",
    "degc": "degC",
    "k": "K",
    "l": "L",
    "l_per_min": "L/min",
    "l_per_day": "L/day",
    "l_per_h": "L/h",
    "kg_per_h": "kg/h",
    "kg_per_day": "kg/day",
    "kg_per_l": "kg/L",
    "w_per_k": "W/K",
    "w_per_m_k": "W/m/K",
    "pa": "Pa",
    "kpa": "kPa",
    "deg": "deg",
    "km_per_h": "km/h",
    "per_km": "1/km",
    "frac": "frac",
    "frac_per_k": "frac/K",
    "btu_per_wh": "BTU/Wh",
    "ratio": "1",
    "factor": "1",
    "exponent": "1",
    "m_per_s": "m/s",
    "mg_per_l": "mg/L",
    "g_per_l": "g/L",
    "ml": "mL",
    "min": "min",
    "m_head": "m",
    "w_per_m2": "W/m2",
    "per_v": "1/V",
    "per_w": "1/W",
    "s_per_m": "s/m",
    "count": "count",
}
"""Unit suffix of a name → the unit it means."""

_WORDS = {
    "days": "number of days",
    "fraction": "share in per cent",
    "water_use": "water use",
    "charge": "battery capacity",
}
_FIELD_SUFFIXES = tuple(sorted(SUFFIXES, key=len, reverse=True))
_NUMBER = r"[+-]?\d+(?:\.\d+)?(?:[eE][+-]?\d{1,3})?"
_FRACTION = r"(?:\d+\s+)?\d+/\d+"
_UNIT = r"[A-Za-z%][A-Za-z0-9%/]*(?: [A-Za-z][A-Za-z0-9%/]*)*"
_TERM = re.compile(rf"\s*(?P<number>{_FRACTION}|{_NUMBER})\s*(?P<unit>{_UNIT})?")
_EXACT = Context(prec=60)
"""Decimal arithmetic that keeps every digit of a product of two floats, so that "55 %" is 0.55."""
_MOST_EXPONENT = 300
"""Larger powers of ten cannot be held."""
_MOST_PLAIN_DIGITS = 15
"""Numbers with more digits before or zeros behind the point are written with an exponent."""


@dataclass(frozen=True, slots=True)
class QuantityFault:
    """Why a string is not a quantity of the kind that was wanted."""

    found: str
    allowed: str
    action: str


def allowed_units(kind: str) -> tuple[str, ...]:
    """Return the unit symbols that may be written for a kind of quantity."""
    return tuple(unit.symbol for unit in KINDS[kind].units)


def parse(text: object, kind: str) -> float | QuantityFault:
    """Read one quantity as a person writes it.

    Parameters
    ----------
    text
        Such as ``"24 kg"``, ``"2 ft 6 in"``, ``"3/8 in"``; anything else is a fault.
    kind
        A key of `unit_table.KINDS`.

    Returns
    -------
    float or QuantityFault
        The value in the kind's internal unit, or what is wrong with it.

    Examples
    --------
    >>> parse("2 ft 6 in", "length")
    762.0
    >>> parse("24 kg", "length").action
    'kg is a unit of mass; write a length, such as "650 mm"'
    """
    example = KINDS[kind].example
    words = _WORDS.get(kind, kind.replace("_", " "))
    form = f'write {_an(words)}, such as "{example}"'
    allowed = f"a number with one of: {', '.join(allowed_units(kind))}"
    if isinstance(text, bool) or not isinstance(text, (str, int, float)):
        return QuantityFault(f"{_kind_of(text)}", allowed, form)
    if not isinstance(text, str):
        return QuantityFault(
            f"the bare number {text}",
            allowed,
            f"a number needs its unit in quotes: {form}",
        )
    terms = _split(text)
    if terms is None:
        hint = "use a point, not a comma, for decimals; " if "," in text else ""
        return QuantityFault(f'"{text}"', allowed, hint + form)
    return _sum_terms(text, terms, kind, allowed, form)


def _sum_terms(
    text: str, terms: list[tuple[Decimal, str]], kind: str, allowed: str, form: str
) -> float | QuantityFault:
    by_symbol = {unit.symbol: unit for unit in KINDS[kind].units}
    total = Decimal(0)
    last = float("inf")
    for value, symbol in terms:
        unit = by_symbol.get(symbol)
        if unit is None:
            return QuantityFault(f'"{text}"', allowed, _unit_hint(symbol) + form)
        if len(terms) > 1 and (unit.factor >= last or unit.offset or value < 0):
            return QuantityFault(
                f'"{text}"', allowed, f"compound values go from large to small units; {form}"
            )
        last = unit.factor
        scaled = _EXACT.multiply(value, _decimal(unit.factor))
        total = _EXACT.add(total, _EXACT.add(scaled, _decimal(unit.offset)))
    return float(total)


@cache
def _decimal(number: float) -> Decimal:
    return Decimal(repr(number))


def _split(text: str) -> list[tuple[Decimal, str]] | None:
    terms: list[tuple[Decimal, str]] = []
    position = 0
    stripped = text.strip()
    while position < len(stripped):
        match = _TERM.match(stripped, position)
        number = None if match is None else _number(match.group("number"))
        if match is None or number is None:
            return None
        terms.append((number, (match.group("unit") or "").strip()))
        position = match.end()
    return terms or None


def _number(text: str) -> Decimal | None:
    if "/" not in text:
        number = Decimal(text)
        return number if number.adjusted() <= _MOST_EXPONENT else None
    whole, _, fraction = text.rpartition(" ")
    above, below = (Decimal(part) for part in fraction.split("/"))
    if not below:
        return None
    return _EXACT.add(Decimal(whole.strip() or 0), _EXACT.divide(above, below))


def _unit_hint(symbol: str) -> str:
    if not symbol:
        return "the unit is missing; "
    for other, kind in KINDS.items():
        if any(unit.symbol == symbol for unit in kind.units):
            return f"{symbol} is a unit of {other.replace('_', ' ')}; "
    return f"the unit {symbol!r} is not known; "


def _an(words: str) -> str:
    return f"an {words}" if words[0] in "aeiou" else f"a {words}"


def _kind_of(value: object) -> str:
    if isinstance(value, bool):
        return f"the truth value {str(value).lower()}"
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, list):
        return "a list"
    return f"{value!r}"


def written(value: float, kind: str) -> str:
    """Return a value in its internal unit as a file holds it, exact to the last bit.

    Examples
    --------
    >>> written(24.0, "mass")
    '24 kg'
    >>> written(0.25, "fraction")
    '25 %'
    """
    unit = KINDS[kind].units[0]
    number = _EXACT.divide(Decimal(repr(value)), _decimal(unit.factor)).normalize(
        _EXACT
    ) or Decimal(0)
    plain = abs(number.adjusted()) <= _MOST_PLAIN_DIGITS
    return f"{number:{'f' if plain else 'e'}} {unit.symbol}"


def strip_unit(name: str) -> str:
    """Return a field's name as files spell it: without the unit at its end.

    Examples
    --------
    >>> strip_unit("standing_load_kg"), strip_unit("use_h_per_day"), strip_unit("plan")
    ('standing_load', 'use', 'plan')
    """
    for suffix in _FIELD_SUFFIXES:
        if name.endswith("_" + suffix):
            return name[: -len(suffix) - 1]
    return name


def unit_of(name: str) -> str | None:
    """Return the unit that a name states at its end, or None."""
    for suffix in _FIELD_SUFFIXES:
        if name == suffix or name.endswith("_" + suffix):
            return SUFFIXES[suffix]
    return None


@dataclass(frozen=True, slots=True)
class _Display:
    symbol: str
    factor: float
    offset: float
    digits: int
    below: float = 0.0
    """Numbers smaller than this are shown with one digit more."""


_METRIC: dict[str, _Display] = {
    "mm": _Display("mm", 1, 0, 0),
    "kg": _Display("kg", 1, 0, 0, below=100),
    "frac": _Display("%", 100, 0, 1),
    "frac/K": _Display("%/K", 100, 0, 2),
    "degC": _Display("°C", 1, 0, 1),
    "K": _Display("K", 1, 0, 1),
    "deg": _Display("°", 1, 0, 1),
    "V": _Display("V", 1, 0, 2),
    "A": _Display("A", 1, 0, 1),
    "Ah": _Display("Ah", 1, 0, 0),
    "W": _Display("W", 1, 0, 0, below=10),
    "Wh": _Display("Wh", 1, 0, 0),
    "Wh/day": _Display("Wh/day", 1, 0, 0),
    "L": _Display("L", 1, 0, 1),
    "L/min": _Display("L/min", 1, 0, 1),
    "L/day": _Display("L/day", 1, 0, 1),
    "d": _Display("days", 1, 0, 1),
    "h": _Display("h", 1, 0, 1),
    "min": _Display("min", 1, 0, 0),
    "h/day": _Display("h/day", 1, 0, 1),
    "km/h": _Display("km/h", 1, 0, 0),
    "1/km": _Display("rev/km", 1, 0, 0),
    "kPa": _Display("kPa", 1, 0, 0),
    "1": _Display("", 1, 0, 2),
    "count": _Display("", 1, 0, 0),
    "money": _Display("", 0.01, 0, 2),  # minor units; the currency is said beside it
    "m": _Display("m", 1, 0, 2),
    "m2": _Display("m²", 1, 0, 2),
    "mm2": _Display("mm²", 1, 0, 0),
    "N": _Display("N", 1, 0, 0),
    "N m": _Display("N·m", 1, 0, 0),
    "W/K": _Display("W/K", 1, 0, 1),
    "W/m/K": _Display("W/(m·K)", 1, 0, 3),
    "Wh/m2/day": _Display("Wh/(m²·day)", 1, 0, 0),
    "kg/L": _Display("kg/L", 1, 0, 3),
    "kg/h": _Display("kg/h", 1, 0, 3),
    "kg/day": _Display("kg/day", 1, 0, 2),
    "L/h": _Display("L/h", 1, 0, 2),
    "m/s": _Display("m/s", 1, 0, 2),
    "ohm": _Display("mΩ", 1000, 0, 2),
    "mg/L": _Display("mg/L", 1, 0, 0),
    "g/L": _Display("g/L", 1, 0, 1),
    "mL": _Display("mL", 1, 0, 0),
    "s": _Display("s", 1, 0, 0),
    "kg mm": _Display("kg·m", 0.001, 0, 0),
    "Pa": _Display("Pa", 1, 0, 0),
    "BTU/Wh": _Display("BTU/Wh", 1, 0, 1),
    "W/m2": _Display("W/m²", 1, 0, 0),
    "1/V": _Display("1/V", 1, 0, 3),
    "1/W": _Display("1/W", 1, 0, 6),
    "s/m": _Display("s/m", 1, 0, 3),
}
_US: dict[str, _Display] = _METRIC | {
    "mm": _Display("in", 1 / INCH, 0, 1),
    "m": _Display("ft", 1000 / 304.8, 0, 1),
    "kg": _Display("lb", 1 / LB, 0, 0, below=100),
    "kg/h": _Display("lb/h", 1 / LB, 0, 2),
    "kg/day": _Display("lb/day", 1 / LB, 0, 1),
    "L": _Display("US gal", 1 / US_GAL, 0, 1),
    "L/min": _Display("US gal/min", 1 / US_GAL, 0, 2),
    "L/day": _Display("US gal/day", 1 / US_GAL, 0, 1),
    "L/h": _Display("US gal/h", 1 / US_GAL, 0, 3),
    "degC": _Display("°F", 1.8, 32, 0),
    "K": _Display("°F difference", 1.8, 0, 0),
    "km/h": _Display("mph", 1 / 1.609344, 0, 0),
    "1/km": _Display("rev/mile", 1.609344, 0, 0),
    "kPa": _Display("psi", 1 / PSI_KPA, 0, 1),
    "mm2": _Display("in²", 1 / INCH**2, 0, 1),
    "m2": _Display("ft²", 1e6 / 304.8**2, 0, 1),
    "N": _Display("lbf", 1 / 4.4482216152605, 0, 0),
    "N m": _Display("lbf·ft", 1 / (4.4482216152605 * 0.3048), 0, 0),
}

SYSTEMS = ("metric", "us")


def shown_number(value: float, unit: str, system: str = "metric") -> tuple[str, str]:
    """Return a value as the digits and the unit symbol that a person reads.

    Parameters
    ----------
    value
        In `unit`.
    unit
        An internal unit, such as ``"kg"``.
    system
        ``"metric"`` or ``"us"``.

    Examples
    --------
    >>> shown_number(1133.98, "kg", "us")
    ('2,500', 'lb')
    """
    display = (_US if system == "us" else _METRIC)[unit]
    number = value * display.factor + display.offset
    digits = display.digits
    if abs(number) < display.below:
        digits += 1
    text = f"{number:,.{digits}f}"
    if float(text.replace(",", "")) == 0:
        text = f"{0:.{digits}f}"
    return text, display.symbol


def shown(value: float | None, unit: str, system: str = "metric") -> str:
    """Return a value with its unit for a person; "unknown" where there is none.

    Examples
    --------
    >>> shown(24.0, "kg"), shown(0.25, "frac"), shown(None, "kg")
    ('24.0 kg', '25.0 %', 'unknown')
    """
    if value is None:
        return "unknown"
    number, symbol = shown_number(value, unit, system)
    joint = "" if symbol == "°" else " "
    return f"{number}{joint}{symbol}".strip()


_TOLD = re.compile(r"⟦([^ ⟧]+) ([^⟧]+)⟧")


def told(value: float, unit: str) -> str:
    """Return a quantity to stand in a sentence, in no system of units yet.

    Whoever shows the sentence turns it into words with `worded`.

    Examples
    --------
    >>> worded(f"weighed {told(2480.0, 'kg')}", "us")
    'weighed 5,467 lb'
    """
    return f"⟦{value!r} {unit}⟧"


def worded(text: str, system: str = "metric") -> str:
    """Return a sentence with every quantity told in it shown in a system of units."""
    return _TOLD.sub(lambda match: shown(float(match[1]), match[2], system), text)
