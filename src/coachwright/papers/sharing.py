"""Figures that are reached by one formula, told in one table with the formula once.

Two shapes: a line for each figure where all put the same symbols in; a column for each figure
where they add up terms of the same kinds.
"""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum

from coachwright.model.working import Figure, Given

_FORMULA_SYMBOLS = frozenset({"WB", "W"})
"""Stand in every working of their kind and do not make two of them alike."""


class Shape(Enum):
    """How the figures of a table stand."""

    ALONE = "alone"
    LINES = "lines"
    COLUMNS = "columns"


@dataclass(frozen=True, kw_only=True, slots=True)
class Shared:
    """Figures with the same formula and the same sources.

    Attributes
    ----------
    shape
        `Shape.ALONE` for a single figure.
    """

    shape: Shape
    figures: tuple[Figure, ...]


@dataclass(frozen=True, slots=True)
class Term:
    """What makes two numbers put in the same one: what it stands for, whatever its value."""

    symbol: str
    meaning: str


def term_of(given: Given) -> Term:
    """Return what a number put in stands for; how many items are behind it does not count.

    Examples
    --------
    >>> term_of(Given(symbol="m", meaning="fittings, 60 items", value=1.0, unit="kg"))
    Term(symbol='m', meaning='fittings')
    """
    meaning, comma, count = given.meaning.rpartition(", ")
    counted = comma and count.endswith(" items")
    return Term(given.symbol, meaning if counted else given.meaning)


def shared(figures: Iterable[Figure]) -> tuple[Shared, ...]:
    """Return figures gathered by formula; each gathering stands where its first figure stood.

    Parameters
    ----------
    figures
        Of one discipline.

    Returns
    -------
    tuple of Shared
        Every figure is in exactly one of them.
    """
    gathered: dict[tuple[object, ...], list[Figure]] = {}
    for number, figure in enumerate(figures):
        gathered.setdefault(_formula(figure, number), []).append(figure)
    return tuple(made for found in gathered.values() for made in _shapes(found))


def _formula(figure: Figure, number: int) -> tuple[object, ...]:
    working = figure.working
    if working is None or figure.value is None or not working.given:
        return ("alone", number)
    return (working.expression, working.references, working.unit)


def _given(figure: Figure) -> tuple[Given, ...]:
    return figure.working.given if figure.working else ()


def _shapes(found: list[Figure]) -> Iterable[Shared]:
    if len(found) == 1:
        return (_alone(found[0]),)
    symbols = [tuple(given.symbol for given in _given(figure)) for figure in found]
    if len(set(symbols)) == 1 and len(set(symbols[0])) == len(symbols[0]):
        return (Shared(shape=Shape.LINES, figures=tuple(found)),)
    return _columns(found)


def _columns(found: list[Figure]) -> Iterable[Shared]:
    """Return one table of the figures that have terms in common, and the others alone."""
    terms = [{term_of(given) for given in _given(figure) if _is_own(given)} for figure in found]
    seen = Counter(term for own in terms for term in own)
    alike = [any(seen[term] > 1 for term in own) for own in terms]
    together = tuple(figure for figure, joins in zip(found, alike, strict=True) if joins)
    alone = [_alone(figure) for figure, joins in zip(found, alike, strict=True) if not joins]
    if not together:
        return alone
    return (Shared(shape=Shape.COLUMNS, figures=together), *alone)


def _is_own(given: Given) -> bool:
    return given.symbol not in _FORMULA_SYMBOLS


def _alone(figure: Figure) -> Shared:
    return Shared(shape=Shape.ALONE, figures=(figure,))
