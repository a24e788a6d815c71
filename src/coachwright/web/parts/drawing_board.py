"""The drawing board: one view of the build, in which fittings are picked, dragged and nudged."""

import dataclasses
from collections.abc import Awaitable, Callable, Sequence

from nicegui.element import Element
from nicegui.events import GenericEventArguments

from coachwright.actions.boarding import Board

Deed = Callable[[GenericEventArguments], Awaitable[object] | None]


class DrawingBoard(Element, component="drawing_board.js"):
    """The board as an element of the page.

    Parameters
    ----------
    board
        What is drawn.
    event
        After which event; a drag tells it, so that nobody's edit is written over.
    picked
        Reference names of the fittings that are picked, the leading one last.
    system
        Units of what it says while something is moved.
    """

    def __init__(self, board: Board, *, event: int, picked: Sequence[str], system: str) -> None:
        super().__init__()
        self._props["board"] = dataclasses.asdict(board)
        self._props["event"] = event
        self._props["picked"] = list(picked)
        self._props["system"] = system

    def draw(self, board: Board, event: int) -> None:
        """Show another drawing, or the same build after an edit."""
        self._props["board"] = dataclasses.asdict(board)
        self._props["event"] = event
        self.update()

    def pick(self, names: Sequence[str]) -> None:
        """Show which fittings are picked; the drawing itself is not sent again."""
        self.run_method("show_picked", list(names))

    def gather(self, *, several: bool) -> None:
        """Let each press add to what is picked, or pick one alone."""
        self.run_method("gather", several)

    def land(self, event: int) -> None:
        """Let go of what was moved as soon as the drawing after an event is there."""
        self.run_method("landed", event)

    def settle(self) -> None:
        """Put back what was moved and not kept."""
        self.run_method("settle")

    def when(self, event: str, deed: Deed) -> None:
        """Do something when the person has done something on the board."""
        self.on(event, deed)
