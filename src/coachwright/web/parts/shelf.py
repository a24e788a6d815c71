"""The shelf of parts: looked through by boards and words, dragged or put onto the drawing."""

from collections.abc import Awaitable, Callable

from nicegui import ui

from coachwright.actions.fixing import MOUNTINGS
from coachwright.actions.shelving import GROUPS, ShelfPart, shelf
from coachwright.model.build import Mounting
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.state import Here

_MOST = 60
_ALL = "All boards"
_DRAG = "(event) => event.dataTransfer.setData('text/x-part', event.currentTarget.dataset.part)"


def create(here: Here, put: Callable[[str], Awaitable[None]]) -> "Shelf":
    """Show the shelf, and return it.

    Parameters
    ----------
    here
        The page.
    put
        Puts the part of an id into the build.
    """
    made = Shelf(here, put)
    made.create()
    return made


class Shelf:
    """The shelf of one page."""

    def __init__(self, here: Here, put: Callable[[str], Awaitable[None]]) -> None:
        self._here = here
        self._put = put
        self._compared: list[ShelfPart] = []

    @property
    def mounting(self) -> Mounting | None:
        """What the next part is fixed to; None for what it usually is."""
        chosen = self._fixed.value
        return Mounting(chosen) if chosen else None

    def create(self) -> None:
        """Show it."""
        with box("shelf card", tag="section", label="Shelf of parts"):
            words("Shelf", tag="h2")
            self._words = ui.input("Find a part", on_change=self._fill).props(
                "outlined dense clearable"
            )
            self._board = ui.select(
                [_ALL, *(name for name, _ in GROUPS)],
                value=GROUPS[0][0],
                label="Board",
                on_change=self._fill,
            ).props("outlined dense options-dense")
            self._fixed = ui.select(
                {"": "what is usual for it", **MOUNTINGS}, value="", label="Fix it to"
            ).props("outlined dense options-dense")
            self._tray = box("tray")
            self._list = box("parts", tag="ul")
        with ui.dialog() as self._dialog, box("sheet card"):
            self._inside = box("stack")
        self._fill()

    def _fill(self) -> None:
        search = self._words.value or ""
        group = "" if self._board.value == _ALL or search else str(self._board.value)
        currency = self._here.work.assessment.wishes.price.currency
        found = shelf(
            self._here.bench.catalogue,
            self._here.system,
            group=group,
            search=search,
            currency=currency,
        )
        with self._list.clear():
            for part in found[:_MOST]:
                self._part(part)
            if not found:
                words("No part holds these words.", "quiet", tag="li")
            elif len(found) > _MOST:
                words("More parts hold these words; write more of them.", "quiet", tag="li")

    def _part(self, part: ShelfPart) -> None:
        with box("part", tag="li") as row:
            row.props["draggable"] = "true"
            row.props["data-part"] = part.id
            row.on("dragstart", js_handler=_DRAG)
            words(part.name, "strong")
            facts = (part.gives, part.mass, part.draw and f"draws {part.draw}", part.price)
            words(" · ".join(each for each in facts if each), "small")
            words(part.size, "small quiet")
            with box("rowline"):
                tool("Put in", lambda: self._put(part.id), label=f"Put in: {part.name}")
                tool("Compare", lambda: self._compare(part), label=f"Compare: {part.name}")

    def _compare(self, part: ShelfPart) -> None:
        if part in self._compared:
            self._compared.remove(part)
        else:
            self._compared = [*self._compared[-2:], part]
        with self._tray.clear():
            if not self._compared:
                return
            words(", ".join(each.name for each in self._compared), "small")
            with box("rowline"):
                if self._compared[1:]:
                    tool("Compare side by side", self._side_by_side, classes="main")
                tool("Clear", self._forget)

    def _forget(self) -> None:
        self._compared = []
        self._tray.clear()

    def _side_by_side(self) -> None:
        with self._inside.clear():
            words("Parts side by side", tag="h2")
            with box("plain", tag="table"):
                with box(tag="tr"):
                    words("", tag="th")
                    for part in self._compared:
                        words(part.name, tag="th").props("scope=col")
                for name, values in _rows(self._compared):
                    with box(tag="tr"):
                        words(name, tag="th").props("scope=row")
                        for value in values:
                            words(value or "—", tag="td")
            tool("Close", self._dialog.close)
        self._dialog.open()


def _rows(parts: list[ShelfPart]) -> list[tuple[str, list[str]]]:
    return [
        ("Gives", [part.gives for part in parts]),
        ("Mass", [part.mass for part in parts]),
        ("Draws at most", [part.draw for part in parts]),
        ("Price", [part.price for part in parts]),
        ("Size", [part.size for part in parts]),
        ("Usually fixed to", [part.mounting for part in parts]),
    ]
