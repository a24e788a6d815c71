"""The drawing board: the drawing in the middle, figures and the shelf of parts beside it."""

from collections import deque

from nicegui import ui
from nicegui.events import GenericEventArguments, KeyEventArguments

from coachwright.actions.benching import OnBench
from coachwright.actions.boarding import Board, board, view_named, view_showing, views_of
from coachwright.actions.stocking import add
from coachwright.actions.together import mirror, shift, turn
from coachwright.actions.turning import solids
from coachwright.model.build import Mounting
from coachwright.web.parts import headline, picked, shelf, short_findings
from coachwright.web.parts.deeds import done, to_picked
from coachwright.web.parts.drawing_board import DrawingBoard
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.parts.turning_view import TurningView
from coachwright.web.state import (
    Here,
    change,
    do_again,
    on_pick,
    pick,
    refuse,
    take_back,
)

_STYLE = '<link rel="stylesheet" href="/coachwright/static/board.css">'
_HELP = (
    "Drag, or arrow keys for 10 mm, with Shift 1 mm; R turns, M mirrors, P pins, Delete takes "
    "out. Page Up and Page Down go from fitting to fitting. Shift with a press or with Page Down "
    "picks several, and so does drawing a band beside them. While dragging, Shift keeps to one "
    "direction and Alt lets go of edges."
)
_HELP_ROUND = (
    "Drag, or arrow keys, to look from elsewhere; + and − for larger and smaller; Home for the "
    "view at the beginning. A press picks a fitting, a second one what lies behind it."
)
_ALL_ROUND = "3-D"
_MOST_SEEN = 12
"""So many edits of others a drag may outlast."""


def create(here: Here) -> None:
    """Fill the page."""
    ui.add_head_html(_STYLE)
    page = _BoardPage(here)
    with box("boardpage"):  # the drawing is the first that the Tab key reaches
        with box("middle stack"):
            page.create()
            with box("below"):
                picked.create(here)
                short_findings.create(here)
        with box("side figures"):
            headline.create(here)
        with box("side stockroom"):
            page.shelf = shelf.create(here, page.put)
    ui.keyboard(on_key=page.key)


class _BoardPage:
    """The drawing of one page, and what is done on it."""

    def __init__(self, here: Here) -> None:
        self._here = here
        self._view = view_named("")
        self._round = False
        self._seen: deque[OnBench] = deque([here.work], maxlen=_MOST_SEEN)
        self._told_by: DrawingBoard | TurningView | None = None
        self.shelf: shelf.Shelf | None = None

    def create(self) -> None:
        with box("boardcard card", tag="section", label="Drawing"):
            self._tools()
            self._board = DrawingBoard(
                self._drawn(),
                event=self._here.work.event,
                picked=self._here.all_picked,
                system=self._here.system,
            )
            self._model = TurningView(self._here.all_picked)
            self._model.set_visibility(False)
            self._help = words(_HELP, "small quiet boardhelp no-print", tag="p")
        with ui.dialog() as self._dialog, box("sheet card"):
            self._asked = box("stack")
        self._board.on("pick", lambda event: self._pick(event, self._board))
        self._model.on("pick", lambda event: self._pick(event, self._model))
        self._board.when("move", self._move)
        self._board.when("turn", lambda _event: to_picked(self._here, turn))
        self._board.when("mirror", lambda _event: to_picked(self._here, mirror))
        self._board.when("pin", lambda _event: picked.pin_or_let_go(self._here))
        self._board.when("remove", lambda _event: picked.ask_to_remove(self._here, self._ask))
        self._board.when("place", self._place)
        self._press()
        self._here.draws.append(self._draw)
        on_pick(self._here, self._show_picked)

    def _tools(self) -> None:
        with box("rowline views"):
            with box("rowline", label="Views").props('role="group"'):
                self._views = {
                    view.name: tool(view.title, lambda name=view.name: self._look(name))
                    for view in views_of(self._here.work.build)
                }
                self._views[_ALL_ROUND] = tool(_ALL_ROUND, self._look_round)
            words("", "grow")
            self._several = tool(
                "Several", self._gather, label="Several: each press adds a fitting to those picked"
            )
            self._several.props["aria-pressed"] = "false"
            tool("−", lambda: self._shown().run_method("closer", -1), label="Smaller")
            tool("+", lambda: self._shown().run_method("closer", 1), label="Larger")

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
        self._on_board = board(self._here.work.assessment, self._view, self._here.system)
        return self._on_board

    def _shown(self) -> DrawingBoard | TurningView:
        return self._model if self._round else self._board

    def _draw(self, work: OnBench) -> None:
        self._seen.append(work)
        self._board.draw(self._drawn(), work.event)
        if self._round:
            self._model.draw(solids(work.assessment))

    def _look(self, name: str) -> None:
        self._view = view_named(name)
        self._round = False
        self._board.draw(self._drawn(), self._here.work.event)
        self._press()

    def _look_round(self) -> None:
        self._round = True
        self._model.draw(solids(self._here.work.assessment))
        self._press()

    def _press(self) -> None:
        shown = _ALL_ROUND if self._round else self._view.name
        for name, button in self._views.items():
            button.props["aria-pressed"] = "true" if name == shown else "false"
            button.update()
        self._board.set_visibility(not self._round)
        self._model.set_visibility(self._round)
        self._several.set_visibility(not self._round)
        self._help.set_text(_HELP_ROUND if self._round else _HELP)

    def _gather(self) -> None:
        several = self._several.props["aria-pressed"] == "false"
        self._several.props["aria-pressed"] = "true" if several else "false"
        self._several.update()
        self._board.gather(several=several)

    def _pick(self, event: GenericEventArguments, shown: DrawingBoard | TurningView) -> None:
        names = [str(name) for name in event.args]
        self._told_by = shown
        pick(self._here, names[-1] if names else "", names[:-1])
        self._told_by = None

    def _show_picked(self, name: str) -> None:
        if self._told_by is None and name and not self._round:
            self._turn_to(name)
        for shown in (self._board, self._model):
            if shown is not self._told_by:  # the person may have picked on meanwhile
                shown.pick(self._here.all_picked)

    def _turn_to(self, name: str) -> None:
        """Show the first view that draws a fitting, where the present one does not."""
        if any(piece.name == name and piece.shown for piece in self._on_board.pieces):
            return
        view = view_showing(self._here.work.assessment, name)
        if view is not None and view is not self._view:
            self._look(view.name)

    async def _move(self, event: GenericEventArguments) -> None:
        names = [str(name) for name in event.args["names"]]
        by_mm = [float(length) for length in event.args["by"]]
        number = int(event.args["event"])
        seen = next((work for work in self._seen if work.event == number), None)
        if seen is None:
            refuse(self._here, "others have changed much meanwhile; look at it again and move it")
        elif await done(
            self._here, lambda work: shift(work.sheet, work.build, names, by_mm), seen=seen
        ):
            self._board.land(self._here.work.event)
            return
        self._board.settle()

    def _ask(self, fill: picked.Fill) -> None:
        with self._asked.clear():
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
        mounting: Mounting | None = self.shelf.mounting if self.shelf else None
        name, edits = add(work.sheet, work.build, part, middle_mm=middle_mm, mounting=mounting)
        if await change(self._here, edits):
            pick(self._here, name)
