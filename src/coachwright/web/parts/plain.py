"""Plain elements with words in them; nothing in the words is taken for markup."""

from collections.abc import Callable
from typing import Any

from nicegui import ui
from nicegui.elements.mixins.text_element import TextElement


def words(text: str, classes: str = "", *, tag: str = "span") -> TextElement:
    """Return an element of any kind with words in it."""
    made = TextElement(tag=tag, text=text)
    if classes:
        made.classes(classes)
    return made


def box(classes: str = "", *, tag: str = "div", label: str = "") -> ui.element:
    """Return an element that holds others, with a name for screen readers."""
    made = ui.element(tag)
    if classes:
        made.classes(classes)
    if label:
        made.props["aria-label"] = label
    return made


def tool(
    text: str, deed: Callable[..., Any] | None, *, label: str = "", classes: str = ""
) -> ui.button:
    """Return a button.

    Parameters
    ----------
    text
        On it.
    deed
        What it does; nothing where the browser alone acts.
    label
        What it says to a screen reader and beside the pointer, where the text is a mere sign.
    classes
        ``"main"`` for the one that matters most, ``"bare"`` for one without a frame.
    """
    made = ui.button(text, on_click=deed, color=None)
    made.props("flat no-caps").classes(f"tool {classes}")
    if label:
        made.props["aria-label"] = label
        made.props["title"] = label
    return made


def link(text: str, to: str, classes: str = "") -> ui.link:
    """Return a link to another page."""
    made = ui.link(text, to)
    if classes:
        made.classes(classes)
    return made
