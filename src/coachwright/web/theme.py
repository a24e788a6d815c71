"""The frame round every page: title block above, pages on the left, colours and letters."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from nicegui import app, ui

import coachwright
from coachwright import papers
from coachwright.web.navigation import PAGES, Page
from coachwright.web.parts import presence
from coachwright.web.parts.plain import box, link, tool, words
from coachwright.web.state import Here, do_again, on_change, remember, take_back

STATIC = Path(__file__).parent / "static"
FONTS = Path(papers.__file__).parent / "fonts"
_INTO_VIEW = "getHtmlElement({id}).scrollIntoView({{block: 'nearest', inline: 'center'}})"
"""On a phone the list of pages is wider than the screen."""
_HEAD = '<link rel="stylesheet" href="/coachwright/static/bench.css?v={version}">'


def declare() -> None:
    """Let the browser have the style sheet and the letters."""
    app.add_static_files("/coachwright/static", STATIC)
    app.add_static_files("/coachwright/fonts", FONTS)
    stamp = int((STATIC / "bench.css").stat().st_mtime)
    ui.add_head_html(_HEAD.format(version=f"{coachwright.__version__}-{stamp}"), shared=True)


_CAUTION = (
    "Computed from the build as written. This is no certificate, approval or inspection: local "
    "codes and licensed practice govern electricity, gas, seats, structure and loads, and only a "
    "weighbridge shows the true axle loads."
)


@contextmanager
def frame(here: Here, page: Page) -> Iterator[None]:
    """Give the room for a page's own content, inside the frame.

    Parameters
    ----------
    here
        The page that is open.
    page
        Which one it is.
    """
    night = ui.dark_mode(value=here.dark)
    ui.page_title(_title(here, page))
    link("To the content", "#content", "skip")
    with box("bench"):
        with box(tag="header"):
            _title_block(here, night)
        with box(tag="nav", label="Pages"), box("inner"):
            _pages(here, page)
        with box("work", tag="div").props('id="content" tabindex="-1"'):
            yield
        if here.now is not None:
            words(_CAUTION, "foot small quiet", tag="p")


def _title(here: Here, page: Page) -> str:
    name = f"{here.now.build.name} · " if here.now else ""
    return f"{name}{page.title} · Coachwright"


def _title_block(here: Here, night: ui.dark_mode) -> None:
    with box("cell mark"):
        link("Coachwright", "/", "mark")
    if here.now is not None:
        with box("cell"):
            words("build", "name")
            title = words("", "value strong", tag="h1")
        cells = {}
        for name in ("customer", "vehicle", "revision"):
            with box("cell wide-only"):
                words(name, "name")
                cells[name] = words("", "value")

        def show(_work: object) -> None:
            summary = here.work.assessment.summary
            title.set_text(summary.name)
            cells["customer"].set_text(summary.customer or "—")
            cells["vehicle"].set_text(summary.vehicle_name)
            cells["revision"].set_text(f"{summary.revision}, edit {here.work.event}")

        on_change(here, show)
    with box("tools no-print"):
        if here.now is not None:
            tool("↶ Undo", lambda: take_back(here), classes="bare").mark("undo")
            tool("↷ Redo", lambda: do_again(here), classes="bare").mark("redo")
        presence.create(here)
        _units(here)
        tool("◐", lambda: _turn(night), label="Day or night colours", classes="bare")


def _units(here: Here) -> None:
    other = {"metric": "us", "us": "metric"}[here.system]
    said = {"metric": "mm kg", "us": "in lb"}

    def swap() -> None:
        remember(units=other)
        ui.navigate.reload()

    tool(
        said[here.system],
        swap,
        label=f"Units: {said[here.system]}; change to {said[other]}",
        classes="bare",
    ).mark("units")


def _turn(night: ui.dark_mode) -> None:
    night.value = not night.value
    remember(dark=night.value)


def _pages(here: Here, page: Page) -> None:
    for each in PAGES:
        if each.of_build and here.now is None:
            continue
        if each.owners and not here.who.may_manage:
            continue
        made = link(each.title, each.address(here.now.build_id if here.now else 0))
        if each is page:
            made.props('aria-current="page"')
            ui.run_javascript(_INTO_VIEW.format(id=made.id))
