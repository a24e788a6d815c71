"""A small sheet that asks a few things before something is added."""

from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass

from nicegui import ui

from coachwright.errors import BadInput
from coachwright.web.parts.plain import box, tool, words

Asked = Mapping[str, str]
"""What was answered, by the id of the field."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Field:
    """One thing that is asked; with `choices` one of them is chosen."""

    id: str
    label: str
    value: str = ""
    hint: str = ""
    choices: tuple[str, ...] = ()
    secret: bool = False


def ask(
    title: str,
    fields: tuple[Field, ...],
    done: Callable[[Asked], Awaitable[bool]],
    *,
    button: str = "Add",
    intro: str = "",
) -> None:
    """Open the sheet; it closes when `done` says that all is well.

    Parameters
    ----------
    title
        Over it.
    fields
        What is asked.
    done
        Does it; what it finds wrong is said on the sheet.
    button
        What the doing is called.
    intro
        Under the title.
    """
    with ui.dialog() as dialog, ui.card().classes("sheet stack"):
        dialog.props["aria-label"] = title
        words(title, tag="h2")
        if intro:
            words(intro, "quiet", tag="p")
        inputs = {field.id: _input(field) for field in fields}
        wrong = words("", "wrong", tag="p").props("role=alert")

        async def go() -> None:
            given = {name: str(each.value or "") for name, each in inputs.items()}
            try:
                fine = await done(given)
            except BadInput as error:
                wrong.set_text(" ".join(_said(each.sentence()) for each in error.faults))
                return
            if fine:
                dialog.close()

        with box("rowline"):
            tool(button, go, classes="main").mark("do-it")
            tool("Leave it", dialog.close)
    dialog.on("hide", dialog.delete)
    dialog.open()


def _input(field: Field) -> ui.input | ui.select:
    if field.choices:
        choice = ui.select(list(field.choices), label=field.label, value=field.value)
        choice.props("outlined dense options-dense")
        return choice
    line = ui.input(field.label, value=field.value, password=field.secret)
    line.props("outlined dense autocomplete=off bottom-slots")
    if field.hint:
        line.props["hint"] = field.hint
    return line


def _said(sentence: str) -> str:
    """Return a fault's sentence without the name of a file that nobody has."""
    return sentence.removeprefix("the sheet: ").removeprefix("the brief: ")
