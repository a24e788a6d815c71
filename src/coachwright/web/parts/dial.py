"""A dial: a slider that says at once in words where it stands, and asks the server meanwhile."""

from collections.abc import Awaitable, Callable
from dataclasses import dataclass

from nicegui import ui
from nicegui.events import GenericEventArguments

from coachwright.web.parts.plain import box, words

_BETWEEN_S = 0.12
"""Between two questions while it is dragged."""
_BETWEEN_WORDS = "|"
_MOVED = """(event) => {
  const dial = event.target, said = dial.dataset.words.split("|")[dial.value];
  dial.setAttribute("aria-valuetext", said);
  dial.closest(".dial").querySelector(".said").textContent = said;
  emit(dial.value);
}"""
_SET = """const dial = getHtmlElement({id}), said = dial.dataset.words.split("|")[{at}];
dial.value = {at};
dial.setAttribute("aria-valuetext", said);
dial.closest(".dial").querySelector(".said").textContent = said;"""


@dataclass(frozen=True, kw_only=True, slots=True)
class Turned:
    """A dial on a page."""

    made: ui.element

    def set(self, at: int) -> None:
        """Let it stand somewhere else."""
        ui.run_javascript(_SET.format(id=self.made.id, at=at))


def dial(
    label: str, said: tuple[str, ...], at: int, turned: Callable[[int], Awaitable[None]]
) -> Turned:
    """Return a dial with a place for each of its words.

    Parameters
    ----------
    label
        What it turns.
    said
        What each place means.
    at
        Where it stands.
    turned
        Called with the place, a few times a second at most.
    """

    async def moved(event: GenericEventArguments) -> None:
        await turned(int(event.args))

    with box("dial", tag="label"):
        with box("rowline"):
            words(label, "small")
            words(said[at], "strong said")
        made = ui.element("input").mark(f"dial {label}")
        made.props["type"] = "range"
        made.props["min"], made.props["max"], made.props["step"] = 0, max(range(len(said))), 1
        made.props["defaultValue"] = at  # its value is its own: a redrawn page never sets it back
        made.props["aria-label"] = label
        made.props["aria-valuetext"] = said[at]
        made.props["data-words"] = _BETWEEN_WORDS.join(said)
        made.on("input", moved, throttle=_BETWEEN_S, leading_events=False, js_handler=_MOVED)
    return Turned(made=made)
