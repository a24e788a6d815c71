"""The figures that a designer keeps in view: how each moved with the last edit, and its bar."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.assess import Assessment
from coachwright.model.money import Money
from coachwright.model.working import Figure
from coachwright.units import difference_unit, shown, worded
from coachwright.weights.model import MarginLeft

_BARS = {
    "weights.payload-left": "vehicle",
    "weights.front-axle-left": "front axle",
    "weights.rear-axle-left": "rear axle",
}
"""Figure that says what is left → what the limit is one of."""
_IN_A_BAR = "weights.total-travelling"
"""Stands in the bar of the payload."""
_TRAVELLING = "travelling"
_BEYOND_FACTOR = 1.08
"""A bar goes on a little behind its limit, so that what is too much is seen."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Bar:
    """A load under its limit, as shares of the bar's whole length.

    Attributes
    ----------
    load_frac
        The load.
    low_frac, high_frac
        Its one-sided 95 % bounds.
    limit_frac
        The limit.
    state
        ``"within"``, ``"at its bound"`` where only the upper bound is over the limit, ``"over"``.
    words
        Load and limit for a reader.
    """

    load_frac: float
    low_frac: float
    high_frac: float
    limit_frac: float
    state: str
    words: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Line:
    """One figure in the column, as it is shown.

    Attributes
    ----------
    value, bounds
        With their unit; `bounds` is empty where there are none.
    moved
        How the last edit moved it, with a sign; empty where it did not.
    direction
        ``"up"``, ``"down"`` or empty.
    figure
        With its working.
    """

    name: str
    label: str
    value: str
    bounds: str
    moved: str
    direction: str
    missing: str
    bar: Bar | None
    figure: Figure


@dataclass(frozen=True, kw_only=True, slots=True)
class PriceLine:
    """What the parts cost together, and how the last edit moved it; empty where unknown."""

    price: str
    budget: str
    moved: str
    missing: str


def lines(assessment: Assessment, before: Assessment | None, system: str) -> tuple[Line, ...]:
    """Return the headline figures, those with bars first.

    Parameters
    ----------
    assessment
        Now.
    before
        Before the last edit; None where there was none.
    system
        ``"metric"`` or ``"us"``.
    """
    found = [line for line in _lines(assessment, before, system) if line.name != _IN_A_BAR]
    return tuple(sorted(found, key=lambda line: line.bar is None))


def price_line(assessment: Assessment, before: Assessment | None) -> PriceLine:
    """Return what the parts of a build cost together."""
    price = assessment.wishes.price
    known = _money(price.known_minor, price.currency)
    without = len(price.without_price)
    moved = ""
    if before is not None and before.wishes.price.currency == price.currency:
        change_minor = price.known_minor - before.wishes.price.known_minor
        sign = "−" if change_minor < 0 else "+"
        moved = f"{sign}{_money(abs(change_minor), price.currency)}" if change_minor else ""
    return PriceLine(
        price=known,
        budget="" if price.budget_minor is None else _money(price.budget_minor, price.currency),
        moved=moved,
        missing=f"{without} without a price" if without else "",
    )


def _lines(assessment: Assessment, before: Assessment | None, system: str) -> Iterator[Line]:
    old = {figure.name: figure for figure in before.figures} if before else {}
    limits = {
        margin.subject: margin for margin in assessment.weights.left if margin.case == _TRAVELLING
    }
    for figure in assessment.headline:
        moved = _moved(figure, old.get(figure.name), system)
        margin = limits.get(_BARS.get(figure.name, ""))
        yield Line(
            name=figure.name,
            label=worded(figure.label, system),
            value=_minus(shown(figure.value, figure.unit, system)),
            bounds=_bounds(figure, system),
            moved=moved,
            direction="" if not moved else ("down" if moved.startswith("−") else "up"),
            missing=worded(figure.missing, system),
            bar=None if margin is None else _bar(margin, system),
            figure=figure,
        )


def _moved(figure: Figure, old: Figure | None, system: str) -> str:
    """Return by how much a figure moved, with its sign; empty where nobody would see it."""
    if old is None or old.value is None or figure.value is None:
        return ""
    text = shown(figure.value - old.value, difference_unit(figure.unit), system)
    if not any(digit in text for digit in "123456789"):
        return ""
    return f"−{text[1:]}" if text.startswith("-") else f"+{text}"


def _bounds(figure: Figure, system: str) -> str:
    if figure.low is None or figure.high is None:
        return ""
    low, high = (_minus(shown(each, figure.unit, system)) for each in (figure.low, figure.high))
    return f"{low.rpartition(' ')[0]} to {high}"


def _bar(margin: MarginLeft, system: str) -> Bar:
    limit_kg, left = margin.limit_kg, margin.left
    load_kg, low_kg, high_kg = (
        limit_kg - each for each in (left.nominal_kg, left.high_kg, left.low_kg)
    )
    whole_kg = max(limit_kg, high_kg) * _BEYOND_FACTOR
    state = "within"
    if left.low_kg < 0:
        state = "over" if left.nominal_kg < 0 else "at its bound"
    return Bar(
        load_frac=load_kg / whole_kg,
        low_frac=low_kg / whole_kg,
        high_frac=high_kg / whole_kg,
        limit_frac=limit_kg / whole_kg,
        state=state,
        words=f"{shown(load_kg, 'kg', system)} of {shown(limit_kg, 'kg', system)}",
    )


def _money(amount_minor: int, currency: str) -> str:
    return Money(amount_minor=amount_minor, currency=currency).shown()


def _minus(text: str) -> str:
    return f"−{text[1:]}" if text.startswith("-") else text
