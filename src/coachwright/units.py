"""Quantities at the edge: read "24 kg" into a float, show a float as "24 kg" or "53 lb".

Inside the program every float's name ends with its unit (`SUFFIXES`).  Values are converted once
when a file is read (`parse`) and once when they are shown (`shown`).
"""

import re
from dataclasses import dataclass
from decimal import Context, Decimal
from functools import cache

from coachwright.unit_display import METRIC, MONEY, US, Display
from coachwright.unit_table import KINDS

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
    "w_per_m2k": "W/m2/K",
    "m2k_per_w": "m2 K/W",
    "m3": "m3",
    "m3_per_h": "m3/h",
    "g_per_h": "g/h",
    "kg_per_m3": "kg/m3",
    "j_per_k": "J/K",
    "j_per_kg_k": "J/kg/K",
    "wh_per_k": "Wh/K",
    "mj_per_l": "MJ/L",
    "per_h": "1/h",
    "frac_per_km": "frac/km",
    "ppm": "ppm",
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


SYSTEMS = ("metric", "us")
_MONEY = "money "


def shown_number(
    value: float, unit: str, system: str = "metric", *, more_digits: int = 0
) -> tuple[str, str]:
    """Return a value as the digits and the unit symbol that a person reads.

    Parameters
    ----------
    value
        In `unit`.
    unit
        An internal unit, such as ``"kg"``; minor units of a currency are ``"money EUR"``.
    system
        ``"metric"`` or ``"us"``.
    more_digits
        Behind the point, more than usual.

    Examples
    --------
    >>> shown_number(1133.98, "kg", "us"), shown_number(125050, "money EUR")
    (('2,500', 'lb'), ('1,250.50', 'EUR'))
    """
    display = _display(unit, system)
    number = value * display.factor + display.offset
    digits = display.digits + (0 < abs(number) < display.fine_below) + more_digits
    text = f"{number:,.{digits}f}"
    if float(text.replace(",", "")) == 0:
        text = f"{0:.{digits}f}"
    return text, display.symbol


def _display(unit: str, system: str) -> Display:
    if unit.startswith(_MONEY):
        return MONEY._replace(symbol=unit.removeprefix(_MONEY))
    return (US if system == "us" else METRIC)[unit]


def shown(value: float | None, unit: str, system: str = "metric", *, more_digits: int = 0) -> str:
    """Return a value with its unit for a person; "unknown" where there is none.

    Examples
    --------
    >>> shown(24.0, "kg"), shown(0.25, "frac"), shown(None, "kg")
    ('24.0 kg', '25.0 %', 'unknown')
    """
    if value is None:
        return "unknown"
    number, symbol = shown_number(value, unit, system, more_digits=more_digits)
    return f"{number}{_joint(symbol)}{symbol}".strip()


def difference_unit(unit: str) -> str:
    """Return the unit of the difference of two values: one of temperatures has no zero point.

    Examples
    --------
    >>> shown(10.0, difference_unit("degC"), "us"), difference_unit("kg")
    ('18 °F difference', 'kg')
    """
    return "K" if unit == "degC" else unit


def _joint(symbol: str) -> str:
    return "" if symbol == "°" else " "


_TOLD = re.compile(r"⟦([^ ⟧]+) ([^⟧]+)⟧")
_WHOLE = 1e-9
"""Nearer than this to a whole number, a value is said without zeros behind the point."""


def told(value: float, unit: str) -> str:
    """Return a quantity to stand in a sentence, in no system of units yet.

    Whoever shows the sentence turns it into words with `worded`.

    Examples
    --------
    >>> worded(f"weighed {told(2480.0, 'kg')}", "us")
    'weighed 5,467 lb'
    """
    return f"⟦{value!r} {unit}⟧"


def worded(text: str, system: str = "metric", *, space: str = " ") -> str:
    """Return a sentence with every quantity told in it shown in a system of units.

    Parameters
    ----------
    text
        With what `told` put into it, or without.
    system
        ``"metric"`` or ``"us"``.
    space
        Stands between a number and its unit.

    Examples
    --------
    >>> worded(f"frost, {told(-8.0, 'degC')} round it"), worded("nothing is told")
    ('frost, −8 °C round it', 'nothing is told')
    """
    return _TOLD.sub(lambda match: _said(float(match[1]), match[2], system, space), text)


def _said(value: float, unit: str, system: str, space: str) -> str:
    number, symbol = shown_number(value, unit, system)
    display = _display(unit, system)
    exact = value * display.factor + display.offset
    if abs(exact - round(exact)) < _WHOLE and not unit.startswith(_MONEY):
        number = number.partition(".")[0]
    said = f"{number}{_joint(symbol)}{symbol}".strip().replace(" ", space)
    return f"−{said[1:]}" if said.startswith("-") else said
