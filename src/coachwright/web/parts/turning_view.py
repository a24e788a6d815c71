"""The view that turns: the build all round, drawn in the browser with what the page has."""

import dataclasses
from collections.abc import Sequence

from nicegui.element import Element

from coachwright.actions.turning import Solids


class TurningView(Element, component="turning_view.js"):
    """The view as an element of the page; it shows nothing until it is given something.

    Parameters
    ----------
    picked
        Reference names of the fittings that are picked.
    """

    def __init__(self, picked: Sequence[str]) -> None:
        super().__init__()
        self._props["model"] = None
        self._props["picked"] = list(picked)

    def draw(self, solids: Solids) -> None:
        """Show a build; from where it is looked at stays as it is."""
        self._props["model"] = dataclasses.asdict(solids)
        self.update()

    def pick(self, names: Sequence[str]) -> None:
        """Show which fittings are picked."""
        self._props["picked"] = list(names)
        self.run_method("show_picked", list(names))
