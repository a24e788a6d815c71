"""The drawing set: every view to look at, and to take as a file of each kind."""

from nicegui import run, ui

from coachwright.actions.drawing import drawn
from coachwright.actions.packing import file_name
from coachwright.drawing.atlas import ALL
from coachwright.errors import CoachwrightError
from coachwright.papers.view_drawings import content_of
from coachwright.web.parts import sheet
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.state import Here

_VIEWS = {
    "plan@floor": "Plan at the floor",
    "plan@hip": "Plan at hip height",
    "plan@bed": "Plan at bed height",
    "left": "Left wall, seen from inside",
    "right": "Right wall, seen from inside",
    "rear": "Rear, doors closed",
    "rear-open": "Rear, doors open",
    "side": "Left side, outside",
    "side@right": "Right side, outside",
    "roof": "Roof",
    "under": "Underbody",
    "iso": "Seen from above and behind",
    "setting-out": "Setting-out table",
    "findings": "Findings with their numbers",
}
_SHEET_ENDINGS = ("svg", "dxf", "pdf")


def drawings(here: Here) -> None:
    """Show the views with what can be done with each."""
    with sheet.section("Drawings"):
        words("Drawn anew from the build as it is now, on the sheet of its country.", "quiet")
        with box("rowline"):
            _taker(here, ALL, "pdf", "All sheets as one PDF", "all sheets")
            _taker(here, "plan", "glb", "Solid model (glTF)", "the build")
        look = box("stack")
        with box("paperlist", tag="ul"):
            for view, title in _VIEWS.items():
                with box("paper", tag="li"):
                    words(title, "strong grow")
                    with box("rowline"):
                        _looker(here, view, title, look)
                        for ending in _SHEET_ENDINGS:
                            _taker(here, view, ending, ending.upper(), title)


def _looker(here: Here, view: str, title: str, look: ui.element) -> None:
    async def show() -> None:
        look.clear()
        made = await _made(here, view, "svg")
        if made is None:
            return
        with look:
            with box("rowline"):
                words(title, "strong")
                closing = tool("Close", look.clear, label=f"Close: {title}")
            sheet.drawing(made.decode(), title)
        sheet.bring_into_view(closing)

    tool("Look", show, label=f"Look at: {title}")


def _taker(here: Here, view: str, ending: str, text: str, title: str) -> None:
    async def take() -> None:
        made = await _made(here, view, ending)
        if made is not None:
            ui.download.content(made, file_name(here.work, ending, view))

    tool(text, take).props["aria-label"] = f"{text}: {title}"


async def _made(here: Here, view: str, ending: str) -> bytes | None:
    work = here.work
    try:
        return await run.io_bound(lambda: drawn(content_of(work.assessment), view, ending))
    except CoachwrightError as error:
        ui.notify(str(error), type="warning", timeout=8000, close_button="Close")
        return None
