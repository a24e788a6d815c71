"""How a figure was reached, opened under it."""

from collections.abc import Callable, Iterable

from nicegui import ui

from coachwright.model.build import Build
from coachwright.model.working import Figure, Working
from coachwright.papers.table import Table
from coachwright.papers.wording import bounds_of, show, spoken
from coachwright.reference.sources import references
from coachwright.units import worded
from coachwright.web.parts.plain import box, words
from coachwright.web.parts.sheet import rows_of, section

_INSIDE = "metric"
"""Formulas hold in these units."""
_TOLD = 3
"""Columns of a working that says of no number where it comes from."""


def working(build: Build, made: Working, system: str) -> None:
    """Show a working: formula, numbers put in, result, sources.

    Parameters
    ----------
    build
        For its names as words.
    made
        The working.
    system
        ``"metric"`` or ``"us"``.
    """

    def said(text: str) -> str:
        return worded(spoken(build, text), system)

    with box("working"):
        words(said(made.expression), "formula", tag="p")
        if made.given:
            rows_of(_given(made, said, system))
        words(f"Result: {_twice(made.result, made.unit, system)}", "strong", tag="p")
        if made.note:
            words(said(made.note), "quiet", tag="p")
        for key in made.references:
            words(source_text(key), "quiet small", tag="p")


def _given(made: Working, said: Callable[[str], str], system: str) -> Table:
    """Return the numbers put in; where they come from only if any of them says so."""
    names = ("Symbol", "Meaning", "Value", "From")
    told = len(names) if any(given.source for given in made.given) else _TOLD
    rows = (
        (
            given.symbol,
            said(given.meaning),
            _twice(given.value, given.unit, system),
            said(given.source),
        )
        for given in made.given
    )
    return Table(heading="", names=names[:told], rows=tuple(row[:told] for row in rows))


def source_text(key: str) -> str:
    """Return the full title of a source."""
    known = references()
    return known[key].text() if key in known else key


def _twice(value: float, unit: str, system: str) -> str:
    """Return a value as the person reads it and, where that differs, as the formula has it."""
    here, inside = show(value, unit, system), show(value, unit, _INSIDE)
    return here if here == inside else f"{here} ({inside})"


def unfolding(line: ui.element, fill: ui.element, deed: Callable[[], None]) -> None:
    """Fill something the first time that it is unfolded."""

    def once() -> None:
        if not fill.default_slot.children:
            with fill:
                deed()

    line.on("toggle", once)


def figures(build: Build, shown: Iterable[Figure], system: str, title: str = "Figures") -> None:
    """Show figures, each of which opens its working.

    Parameters
    ----------
    build
        For its names as words.
    shown
        In the order of the list.
    system
        ``"metric"`` or ``"us"``.
    title
        Over the list.
    """
    with section(title), box("figures"):
        for each in shown:
            _figure(build, each, system)


def _figure(build: Build, figure: Figure, system: str) -> None:
    label = worded(spoken(build, figure.label), system)
    value = show(figure.value, figure.unit, system)
    with box("figure", tag="details") as line:
        with box(tag="summary"):
            words(label, "label")
            words(value, "strong value")
            words(_beside(build, figure, system), "quiet small bounds")
        fill = box("inside")
    found = figure.working
    if found is None:
        with fill:
            words("No working is kept of it.", "quiet")
    else:
        unfolding(line, fill, lambda: working(build, found, system))


def _beside(build: Build, figure: Figure, system: str) -> str:
    if figure.missing:
        return f"missing: {worded(spoken(build, figure.missing), system)}"
    return bounds_of(figure, system)
