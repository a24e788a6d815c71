"""The calculation appendix: every figure with its working."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby

from coachwright.model.build import Build
from coachwright.model.working import Figure, Given, Working
from coachwright.papers.frame import FrameView, SourceLine, frame, source_lines
from coachwright.papers.wording import (
    DISCIPLINE_WORDS,
    SourceNumbers,
    bounds_of,
    ended,
    sentence,
    show,
    spoken,
)

_INSIDE = "metric"
_IN_THE_FORMULA = " Formulas hold in the metric units of the column “In the formula”."


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
class FigureGroup:
    """The figures of one discipline."""

    heading: str
    blocks: tuple[FigureBlock, ...]


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
        Every figure; those of one discipline together.
    """
    system = build.brief.units
    numbers = SourceNumbers()
    groups = tuple(
        FigureGroup(
            heading=DISCIPLINE_WORDS[discipline],
            blocks=tuple(_block(build, figure, numbers) for figure in grouped),
        )
        for discipline, grouped in groupby(figures, key=_discipline)
    )
    two_units = system != _INSIDE
    return AppendixView(
        frame=frame(build, title="Calculation appendix", cautions=("certification",)),
        intro="Each figure of the job pack with the formula, the numbers put in, where each of "
        "them comes from, and the published sources by number. Figures are rounded for show; "
        "the formula was evaluated unrounded."
        + (
            " Formulas hold in the metric units of the column “In the formula”."
            if two_units
            else ""
        ),
        two_units=two_units,
        groups=groups,
        sources=source_lines(numbers),
    )


def _discipline(figure: Figure) -> str:
    return figure.name.split(".")[0]


def _block(build: Build, figure: Figure, numbers: SourceNumbers) -> FigureBlock:
    working, system = figure.working, build.brief.units
    return FigureBlock(
        label=spoken(build, figure.label),
        value=show(figure.value, figure.unit, system),
        again=_again(figure.value, figure.unit, system),
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
        symbol=given.symbol,
        meaning=spoken(build, given.meaning),
        value=show(given.value, given.unit, system),
        again=_again(given.value, given.unit, system),
        source=spoken(build, given.source),
    )


def _result(working: Working, system: str) -> str:
    again = _again(working.result, working.unit, system)
    value = show(working.result, working.unit, system)
    return f"{value} ({again})" if again else value


def _again(value: float | None, unit: str, system: str) -> str:
    if value is None:
        return ""
    inside = show(value, unit, _INSIDE)
    return "" if inside == show(value, unit, system) else inside
