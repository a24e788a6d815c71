"""What a sheet is made of on the screen: tables, labels with values, drawings, cautions."""

from collections.abc import Iterable

from nicegui import ui

from coachwright.papers.frame import FrameView, SourceLine
from coachwright.papers.table import Pair, Table
from coachwright.web.parts.plain import box, words

_POSITION = "Pos."
"""Heads a column of numbers, before the one that names the row."""
_HEAD = '<link rel="stylesheet" href="/coachwright/static/sheets.css">'


def styled() -> None:
    """Let the page have the style of sheets; once on each page that shows one."""
    ui.add_head_html(_HEAD)


def heading(text: str, note: str = "") -> None:
    """Show the name of a page and what it is about."""
    words(text, tag="h2", classes="pagename")
    if note:
        words(note, "quiet lead", tag="p")


def section(text: str) -> ui.element:
    """Return a part of a page under a heading of its own."""
    made = box("card sheetpart", tag="section", label=text)
    with made:
        words(text, tag="h3")
    return made


def table(shown: Table, *, empty: str = "") -> None:
    """Show a table; on a narrow screen each row stands for itself, with its labels.

    Parameters
    ----------
    shown
        Ready strings; the first column names the row.
    empty
        Said in place of a table without rows; without it nothing is shown.
    """
    if not shown.rows and not empty:
        return
    with section(shown.heading):
        if not shown.rows:
            words(empty, "quiet", tag="p")
            return
        rows_of(shown)
        if shown.note:
            words(shown.note, "quiet small", tag="p")


def rows_of(shown: Table) -> None:
    """Show a table's rows alone."""
    with box("plain stacked", tag="table").props('role="table"'):
        with box(tag="thead").props('role="rowgroup"'), box(tag="tr").props('role="row"'):
            for name in shown.names:
                _cell(name or "\N{NO-BREAK SPACE}", "th", "columnheader")
        with box(tag="tbody").props('role="rowgroup"'):
            for row in shown.rows:
                with box(tag="tr").props('role="row"'):
                    _row(shown.names, row)


def _row(names: tuple[str, ...], row: tuple[str, ...]) -> None:
    head = names[1] if names[0] == _POSITION else names[0]
    for name, text in zip(names, row, strict=True):
        if name == head:
            _cell(text, "th", "rowheader")
        else:
            made = _cell(text, "td", "cell")
            made.props["data-name"] = name
            if not text:
                made.classes("without")


def _cell(text: str, tag: str, role: str) -> ui.element:
    made = words(text, tag=tag)
    made.props["role"] = role
    return made


def pairs(shown: Iterable[Pair]) -> None:
    """Show labels with their values."""
    with box("pairs", tag="dl"):
        for each in shown:
            with box("pair"):
                words(each.label, tag="dt")
                with box(tag="dd"):
                    words(each.value, "strong")
                    if each.note:
                        words(each.note, "quiet small")


def drawing(picture: str, said: str) -> None:
    """Show a drawing on a sheet of white paper.

    Parameters
    ----------
    picture
        SVG made by the drawing office of this program; every text in it is escaped there.
    said
        What it shows, for those who do not see it.
    """
    with box("drawing", label=said).props('role="img" tabindex="0"'):
        ui.html(picture, sanitize=False)


def bring_into_view(made: ui.element) -> None:
    """Scroll to something that was just made, and put the keyboard there."""
    ui.run_javascript(
        f"const made = getHtmlElement({made.id}); made.scrollIntoView(); made.focus();"
    )


def notes(shown: Iterable[str]) -> None:
    """Show what was assumed."""
    listed = tuple(shown)
    if listed:
        with section("Assumed for want of data"), box(tag="ul"):
            for each in listed:
                words(each, tag="li")


def sources(shown: Iterable[SourceLine]) -> None:
    """Show a list of sources by their numbers."""
    listed = tuple(shown)
    if listed:
        with section("Sources"), box("sources", tag="ol"):
            for each in listed:
                words(each.text, tag="li")


def cautions(frame: FrameView) -> None:
    """Show the cautions that belong to what stands above."""
    with box("card cautions", tag="section", label=frame.caution_title):
        words(frame.caution_title, tag="h3")
        for each in frame.cautions:
            words(each, tag="p")
        words(frame.foot, "quiet small", tag="p")
