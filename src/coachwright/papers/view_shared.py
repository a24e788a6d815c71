"""Strings of the tables of figures that share their formula."""

from dataclasses import dataclass

from coachwright.model.build import Build
from coachwright.model.working import Figure, Given, Working
from coachwright.papers.sharing import Term, term_of
from coachwright.papers.wording import (
    NONE,
    SourceNumbers,
    bounds_of,
    sentence,
    show,
    spoken,
    symbol_of,
)

_INSIDE = "metric"
_BELOW = "below"


@dataclass(frozen=True, kw_only=True, slots=True)
class Cell:
    """One value of a table.

    Attributes
    ----------
    again
        In the formula's own units, where the sheet shows others.
    note
        What it stands for, where that differs from figure to figure; or its bounds.
    """

    value: str
    again: str = ""
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class SymbolRow:
    """One symbol of the shared formula; its value is "below" where the figures differ in it."""

    symbol: str
    meaning: str
    value: str
    again: str
    source: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Line:
    """One figure: its name, what was put in for it alone, and the result."""

    label: str
    cells: tuple[Cell, ...]
    result: Cell


@dataclass(frozen=True, kw_only=True, slots=True)
class SharedLines:
    """Figures that put the same symbols in, a line for each."""

    expression: str
    symbols: tuple[SymbolRow, ...]
    names: tuple[str, ...]
    lines: tuple[Line, ...]
    sources: str
    notes: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class TermRow:
    """One kind of term, with its value for each figure."""

    symbol: str
    meaning: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class SharedColumns:
    """Figures that add up terms of the same kinds, a column for each."""

    expression: str
    heads: tuple[str, ...]
    rows: tuple[TermRow, ...]
    results: tuple[Cell, ...]
    given_from: str
    sources: str
    notes: tuple[str, ...]


def again(value: float | None, unit: str, system: str) -> str:
    """Return a value in the formula's own units, where the sheet shows others."""
    if value is None:
        return ""
    inside = show(value, unit, _INSIDE)
    return "" if inside == show(value, unit, system) else inside


def shared_lines(build: Build, figures: tuple[Figure, ...], numbers: SourceNumbers) -> SharedLines:
    """Return the table of figures that put the same symbols in.

    Parameters
    ----------
    build
        For names and units.
    figures
        With one formula; each has the same symbols in the same order.
    numbers
        Of the sheet's sources.
    """
    workings = [figure.working for figure in figures if figure.working is not None]
    places = list(zip(*(working.given for working in workings), strict=True))
    differing = [place for place in places if len({_number(given) for given in place}) > 1]
    return SharedLines(
        expression=workings[0].expression,
        symbols=tuple(_symbol(build, place) for place in places if _is_told_above(place)),
        names=tuple(symbol_of(build, place[0].symbol) for place in differing),
        lines=tuple(
            Line(
                label=spoken(build, figure.label),
                cells=tuple(
                    _cell(build, place[number], told=len({g.meaning for g in place}) > 1)
                    for place in differing
                ),
                result=_result(figure, build.brief.units),
            )
            for number, figure in enumerate(figures)
        ),
        sources=numbers.of_all(workings[0].references),
        notes=_notes(build, figures, workings),
    )


def _is_told_above(place: tuple[Given, ...]) -> bool:
    """Whether there is something to say of a symbol that holds for all figures."""
    return len({given.meaning for given in place}) == 1 or any(given.source for given in place)


def _number(given: Given) -> tuple[str, float, str]:
    return given.meaning, given.value, given.unit


def _symbol(build: Build, place: tuple[Given, ...]) -> SymbolRow:
    """Return a symbol with what is the same of it for all figures."""
    system, first = build.brief.units, place[0]
    same = len({_number(given) for given in place}) == 1
    meanings = dict.fromkeys(spoken(build, given.meaning) for given in place)
    sources = dict.fromkeys(spoken(build, given.source) for given in place if given.source)
    return SymbolRow(
        symbol=symbol_of(build, first.symbol),
        meaning="; ".join(meanings) if len(meanings) == 1 else "see each figure",
        value=show(first.value, first.unit, system) if same else _BELOW,
        again=again(first.value, first.unit, system) if same else "",
        source="; ".join(sources),
    )


def _cell(build: Build, given: Given, *, told: bool) -> Cell:
    system = build.brief.units
    return Cell(
        value=show(given.value, given.unit, system),
        again=again(given.value, given.unit, system),
        note=spoken(build, given.meaning) if told else "",
    )


def _result(figure: Figure, system: str) -> Cell:
    return Cell(
        value=show(figure.value, figure.unit, system),
        again=again(figure.value, figure.unit, system),
        note=bounds_of(figure, system),
    )


def shared_columns(
    build: Build, figures: tuple[Figure, ...], numbers: SourceNumbers
) -> SharedColumns:
    """Return the table of figures that add up terms of the same kinds.

    Parameters
    ----------
    build
        For names and units.
    figures
        With one formula.
    numbers
        Of the sheet's sources.
    """
    workings = [figure.working for figure in figures if figure.working is not None]
    terms = dict.fromkeys(_keys_in_order(workings))
    sources = dict.fromkeys(given.source for w in workings for given in w.given if given.source)
    return SharedColumns(
        expression=workings[0].expression,
        heads=tuple(spoken(build, figure.label) for figure in figures),
        rows=tuple(_term_row(build, term, number, workings) for term, number in terms),
        results=tuple(_result(figure, build.brief.units) for figure in figures),
        given_from="; ".join(spoken(build, source) for source in sources),
        sources=numbers.of_all(workings[0].references),
        notes=_notes(build, figures, workings),
    )


def _numbered(working: Working) -> dict[tuple[Term, int], Given]:
    """Return the numbers put in by what they stand for; the second of a kind has the number 1."""
    found: dict[tuple[Term, int], Given] = {}
    for given in working.given:
        term = term_of(given)
        number = len([1 for known, _ in found if known == term])
        found[term, number] = given
    return found


def _keys_in_order(workings: list[Working]) -> list[tuple[Term, int]]:
    """Return every term once: in the order of the longest working, then what it lacks."""
    longest_first = sorted(workings, key=lambda working: len(working.given), reverse=True)
    keys = list(dict.fromkeys(key for working in longest_first for key in _numbered(working)))
    last = list(_numbered(longest_first[0]))[-1]  # such as the wheelbase that divides the sum
    return [*(key for key in keys if key != last), last]


def _term_row(build: Build, term: Term, number: int, workings: list[Working]) -> TermRow:
    given = [_numbered(working).get((term, number)) for working in workings]
    return TermRow(
        symbol=symbol_of(build, term.symbol),
        meaning=spoken(build, term.meaning),
        cells=tuple(Cell(value=NONE) if g is None else _cell(build, g, told=False) for g in given),
    )


def _notes(build: Build, figures: tuple[Figure, ...], workings: list[Working]) -> tuple[str, ...]:
    """Return the workings' notes: once where they are the same, else with the figures' names."""
    by_note: dict[str, list[str]] = {}
    for figure, working in zip(figures, workings, strict=True):
        if working.note and working.note.rstrip(".").lower() not in figure.label.lower():
            by_note.setdefault(working.note, []).append(spoken(build, figure.label))
    if len(by_note) == 1:
        return tuple(sentence(spoken(build, note)) for note in by_note)
    return tuple(
        f"{' / '.join(labels)}: {sentence(spoken(build, note))}"
        for note, labels in by_note.items()
    )
