"""The calculation appendix: every figure with its working."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby

from coachwright.model.build import Build
from coachwright.model.working import Figure, Given, Working
from coachwright.papers.frame import FrameView, SourceLine, frame, source_lines
from coachwright.papers.sharing import Shape, Shared, shared
from coachwright.papers.view_shared import (
    SharedColumns,
    SharedLines,
    again,
    shared_columns,
    shared_lines,
)
from coachwright.papers.wording import (
    DISCIPLINE_WORDS,
    SourceNumbers,
    bounds_of,
    ended,
    sentence,
    show,
    spoken,
    symbol_of,
)

_INSIDE = "metric"


@dataclass(frozen=True, kw_only=True, slots=True)
class GivenRow:
    """One number put into a working."""

    symbol: str
    meaning: str
    value: str
    again: str
    """In the formula's own units, where the sheet shows others."""
    source: str


@dataclass(frozen=True, kw_only=True, slots=True)
class FigureBlock:
    """One figure, and how it was reached."""

    label: str
    value: str
    again: str
    bounds: str
    missing: str
    expression: str
    given: tuple[GivenRow, ...]
    result: str
    sources: str
    note: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Entry:
    """One figure alone, or several that share their formula; the other two are None."""

    alone: FigureBlock | None = None
    lines: SharedLines | None = None
    columns: SharedColumns | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class FigureGroup:
    """The figures of one discipline."""

    heading: str
    entries: tuple[Entry, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class AppendixView:
    """Everything in the calculation appendix."""

    frame: FrameView
    intro: str
    two_units: bool
    groups: tuple[FigureGroup, ...]
    sources: tuple[SourceLine, ...]


def appendix_view(build: Build, figures: Iterable[Figure]) -> AppendixView:
    """Return the calculation appendix of a build.

    Parameters
    ----------
    build
        For names and units.
    figures
        Those of the build's jurisdiction; those of one discipline together.
    """
    numbers = SourceNumbers()
    groups = tuple(
        FigureGroup(
            heading=DISCIPLINE_WORDS[discipline],
            entries=tuple(_entry(build, one, numbers) for one in shared(grouped)),
        )
        for discipline, grouped in groupby(figures, key=_discipline)
    )
    two_units = build.brief.units != _INSIDE
    more = (
        " Formulas hold in the metric units that stand beside or under a value."
        if two_units
        else ""
    )
    return AppendixView(
        frame=frame(build, title="Calculation appendix", cautions=("certification",)),
        intro="Each figure of the job pack with its formula, the numbers put in, where each of "
        "them comes from, and the published sources by number; figures with one formula stand in "
        f"one table. Figures are rounded for show; the formula was evaluated unrounded.{more}",
        two_units=two_units,
        groups=groups,
        sources=source_lines(numbers),
    )


def _discipline(figure: Figure) -> str:
    return figure.name.split(".")[0]


def _entry(build: Build, one: Shared, numbers: SourceNumbers) -> Entry:
    if one.shape is Shape.LINES:
        return Entry(lines=shared_lines(build, one.figures, numbers))
    if one.shape is Shape.COLUMNS:
        return Entry(columns=shared_columns(build, one.figures, numbers))
    return Entry(alone=_block(build, one.figures[0], numbers))


def _block(build: Build, figure: Figure, numbers: SourceNumbers) -> FigureBlock:
    working, system = figure.working, build.brief.units
    return FigureBlock(
        label=spoken(build, figure.label),
        value=show(figure.value, figure.unit, system),
        again=again(figure.value, figure.unit, system),
        bounds=bounds_of(figure, system),
        missing=f"Missing: {ended(spoken(build, figure.missing))}" if figure.missing else "",
        expression=working.expression if working else "",
        given=tuple(_given(build, given) for given in working.given) if working else (),
        result=_result(working, system) if working else "",
        sources=numbers.of_all(working.references) if working else "",
        note=sentence(spoken(build, working.note)) if working else "",
    )


def _given(build: Build, given: Given) -> GivenRow:
    system = build.brief.units
    return GivenRow(
        symbol=symbol_of(build, given.symbol),
        meaning=spoken(build, given.meaning),
        value=show(given.value, given.unit, system),
        again=again(given.value, given.unit, system),
        source=spoken(build, given.source),
    )


def _result(working: Working, system: str) -> str:
    inside = again(working.result, working.unit, system)
    value = show(working.result, working.unit, system)
    return f"{value} ({inside})" if inside else value
