"""The drawing board: the drawing in the middle, figures and the shelf of parts beside it."""

from nicegui import ui
from nicegui.events import GenericEventArguments, KeyEventArguments

from coachwright.actions.benching import OnBench
from coachwright.actions.boarding import Board, board, view_named, views_of
from coachwright.actions.placing import mirror, shift, turn
from coachwright.actions.stocking import add
from coachwright.web.parts import headline, picked, shelf, short_findings
from coachwright.web.parts.drawing_board import DrawingBoard
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.state import (
    Here,
    change,
    do_again,
    on_pick,
    pick,
    take_back,
)

_STYLE = '<link rel="stylesheet" href="/coachwright/static/board.css">'


def create(here: Here) -> None:
    """Fill the page."""
    ui.add_head_html(_STYLE)
    page = _BoardPage(here)
    with box("boardpage"):
        with box("side"):
            shelf.create(here, page.put)
        with box("middle stack"):
            page.create()
            with box("below"):
                picked.create(here)
                short_findings.create(here)
        with box("side"):
            headline.create(here)
    ui.keyboard(on_key=page.key)


class _BoardPage:
    """The drawing of one page, and what is done on it."""

    def __init__(self, here: Here) -> None:
        self._here = here
        self._view = view_named("")

    def create(self) -> None:
        with box("boardcard card", tag="section", label="Drawing"):
            with box("rowline views", label="Views").props('role="group"'):
                self._views = {
                    view.name: tool(view.title, lambda name=view.name: self._look(name))
                    for view in views_of(self._here.work.build)
                }
                words("", "grow")
                tool("−", lambda: self._board.run_method("closer", -1), label="Smaller")
                tool(
                    "+",
                    lambda: self._board.run_method("closer", 1),
                    label="Larger, about the picked fitting",
                )
            self._board = DrawingBoard(
                self._drawn(), picked=self._here.picked, system=self._here.system
            )
            words(
                "Drag, or arrow keys for 10 mm, with Shift 1 mm; R turns, M mirrors, Delete takes "
                "out; Page Up and Page Down go from fitting to fitting. While dragging, Shift "
                "keeps to one direction and Alt lets go of edges.",
                "small quiet boardhelp no-print",
                tag="p",
            )
        with ui.dialog() as self._dialog, box("sheet card"):
            self._asked = box("stack")
        self._board.when("pick", lambda event: pick(self._here, str(event.args)))
        self._board.when("move", self._move)
        self._board.when("turn", lambda _event: self._do_turn())
        self._board.when("mirror", lambda _event: self._do_mirror())
        self._board.when("remove", lambda _event: self._remove())
        self._board.when("place", self._place)
        self._press()
        self._here.draws.append(self._draw)
        on_pick(self._here, self._board.pick)

    async def put(self, part_id: str) -> None:
        """Put a part into the build, in the middle of the living space."""
        await self._add(part_id, None)

    async def key(self, event: KeyEventArguments) -> None:
        """Undo and redo by keyboard."""
        if not event.action.keydown or not (event.modifiers.ctrl or event.modifiers.meta):
            return
        if event.key == "z" and not event.modifiers.shift:
            await take_back(self._here)
        elif event.key == "y" or (event.key == "Z" and event.modifiers.shift):
            await do_again(self._here)

    def _drawn(self) -> Board:
        return board(self._here.work.assessment, self._view, self._here.system)

    def _draw(self, _work: OnBench) -> None:
        self._board.draw(self._drawn())

    def _look(self, name: str) -> None:
        self._view = view_named(name)
        self._board.draw(self._drawn())
        self._press()

    def _press(self) -> None:
        for name, button in self._views.items():
            button.props["aria-pressed"] = "true" if name == self._view.name else "false"
            button.update()

    async def _move(self, event: GenericEventArguments) -> None:
        name, by = str(event.args["name"]), event.args["by"]
        work = self._here.work
        by_mm = [float(length) for length in by]
        if not await change(self._here, shift(work.sheet, work.build, name, by_mm)):
            self._board.settle()

    async def _do_turn(self) -> None:
        work = self._here.work
        await change(self._here, turn(work.sheet, work.build, self._here.picked))

    async def _do_mirror(self) -> None:
        work = self._here.work
        await change(self._here, mirror(work.sheet, work.build, self._here.picked))

    def _remove(self) -> None:
        picked.ask_to_remove(self._here, self._ask)

    def _ask(self, fill: object) -> None:
        with self._asked.clear():
            assert callable(fill)
            fill(self._dialog)
        self._dialog.open()

    async def _place(self, event: GenericEventArguments) -> None:
        at = event.args["at"]
        flat = 1 in event.args["axes"] and 0 in event.args["axes"]
        middle_mm = (float(at[0]), float(at[1])) if flat else None
        await self._add(str(event.args["part"]), middle_mm)

    async def _add(self, part_id: str, middle_mm: tuple[float, float] | None) -> None:
        work = self._here.work
        part = self._here.bench.catalogue.part(part_id)
        name, edits = add(work.sheet, work.build, part, middle_mm=middle_mm)
        if await change(self._here, edits):
            pick(self._here, name)
