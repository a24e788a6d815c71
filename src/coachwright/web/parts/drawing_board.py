"""The drawing board: one view of the build, in which fittings are picked, dragged and nudged."""

import dataclasses
from collections.abc import Awaitable, Callable

from nicegui.element import Element
from nicegui.events import GenericEventArguments

from coachwright.actions.boarding import Board

Deed = Callable[[GenericEventArguments], Awaitable[None] | None]


class DrawingBoard(Element, component="drawing_board.js"):
    """The board as an element of the page.

    Parameters
    ----------
    board
        What is drawn.
    picked
        Reference name of the fitting that is picked.
    system
        Units of what it says while something is moved.
    """

    def __init__(self, board: Board, *, picked: str, system: str) -> None:
        super().__init__()
        self._props["board"] = dataclasses.asdict(board)
        self._props["picked"] = picked
        self._props["system"] = system

    def draw(self, board: Board) -> None:
        """Show another drawing, or the same build after an edit."""
        self._props["board"] = dataclasses.asdict(board)
        self.update()

    def pick(self, name: str) -> None:
        """Show which fitting is picked; the drawing itself is not sent again."""
        self.run_method("show_picked", name)

    def settle(self) -> None:
        """Put back what was moved and not kept."""
        self.run_method("settle")

    def when(self, event: str, deed: Deed) -> None:
        """Do something when the person has done something on the board."""
        self.on(event, deed)
