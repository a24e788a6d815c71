"""One part or base vehicle: what is known of it, who uses it, and the shop's own in hand."""

from collections.abc import Callable
from functools import partial

from nicegui import run, ui

from coachwright.actions.benching import look_again
from coachwright.actions.shopkeeping import (
    Entry,
    FieldLine,
    Kind,
    entry,
    new_entry,
    remove_entry,
    save_entry,
    uses,
    with_value,
)
from coachwright.errors import BadInput, CoachwrightError
from coachwright.web.parts import grid
from coachwright.web.parts.asking import Asked, Field, ask
from coachwright.web.parts.plain import box, link, tool, words
from coachwright.web.state import Here, show_everybody


async def create(here: Here, kind: Kind, entry_id: str, changed: Callable[[], object]) -> None:
    """Open an entry on a sheet of its own.

    Parameters
    ----------
    here
        The page.
    kind, entry_id
        Which entry.
    changed
        Called when the catalogue is another than before.
    """
    try:
        found = entry(here.bench.catalogue, kind, entry_id)
    except CoachwrightError as error:
        ui.notify(str(error), type="warning")
        return
    with ui.dialog() as dialog, ui.card().classes("sheet broad stack"):
        dialog.props["aria-label"] = found.name
        desk = _Desk(here, found, dialog, changed)
        desk.head()
        used = box("rowline uses", tag="section", label="Used in")
        desk.body()
    dialog.on("hide", dialog.delete)
    dialog.open()
    await _show_uses(here, kind, entry_id, used)


class _Desk:
    """The sheet of one entry."""

    def __init__(
        self, here: Here, found: Entry, dialog: ui.dialog, changed: Callable[[], object]
    ) -> None:
        self.here, self.found, self.dialog, self.changed = here, found, dialog, changed

    def head(self) -> None:
        """Show what it is and what can be done with it."""
        found = self.found
        with box("rowline entry-head"):
            words(found.name, tag="h2")
            tool("Close", self.dialog.close)
        words(f"{found.id} · {found.origin}", "quiet")
        with box("rowline"):
            if not found.own:
                tool(
                    "Make it the shop's own",
                    partial(self._done, partial(self._copied, found.id)),
                    classes="main",
                )
            tool("Copy under another id", self._copy)
            if found.own:
                tool("Take it away", partial(self._done, self._removed))

    def body(self) -> None:
        """Show its values."""
        if self.found.own:
            self._editor()
        else:
            rows = [(line.label, line.text) for line in self.found.lines]
            grid.create(("field", "value"), rows, label="Values")

    def _editor(self) -> None:
        found = self.found
        fields: list[tuple[FieldLine, ui.input]] = []
        with box("answers"):
            for line in found.lines:
                made = ui.input(line.label, value=line.text)
                made.props("outlined dense autocomplete=off")
                if line.label == "id":
                    made.props("readonly")
                fields.append((line, made))
        wrong = words("", "wrong", tag="p").props("role=alert")
        with ui.expansion("The whole file, to add and take out what it does"):
            whole = ui.textarea("File", value=found.text).props("outlined autogrow")
            whole.classes("whole-file")

        def text() -> str:
            made = str(whole.value or "")
            for line, field in fields:
                if str(field.value or "") != line.text:
                    made = with_value(made, line, str(field.value or ""))
            return made

        async def save() -> None:
            try:
                saved = text()
            except BadInput as error:
                wrong.set_text(_said(error))
                return
            await self._done(
                lambda: save_entry(self.here.bench, found.kind, saved, expected_id=found.id),
                wrong.set_text,
            )

        tool("Save", save, classes="main").mark("save-entry")

    def _copied(self, new_id: str) -> str:
        return new_entry(self.here.bench, self.found.kind, self.found.id, new_id)

    def _removed(self) -> None:
        remove_entry(self.here.bench, self.found.kind, self.found.id)

    def _copy(self) -> None:
        async def done(given: Asked) -> bool:
            return await self._done(partial(self._copied, given["id"].strip()))

        field = Field(
            id="id", label="Its id", value=f"{self.found.id}-2", hint="such as north-fan"
        )
        ask("Copy under another id", (field,), done, button="Copy")

    async def _done(
        self, deed: Callable[[], object], say: Callable[[str], object] = ui.notify
    ) -> bool:
        try:
            await run.io_bound(deed)
        except BadInput as error:
            say(_said(error))
            return False
        except CoachwrightError as error:
            say(str(error))
            return False
        await catalogue_changed(self.here)
        self.dialog.close()
        self.changed()
        return True


async def catalogue_changed(here: Here) -> None:
    """Show every open build anew, because the catalogue is another."""
    for made in await run.io_bound(look_again, here.bench) or ():
        show_everybody(made)


async def _show_uses(here: Here, kind: Kind, entry_id: str, into: ui.element) -> None:
    with into:
        words("used in", "quiet")
        waiting = words("looking …", "quiet")
    found = await run.io_bound(uses, here.bench, kind, entry_id) or ()
    if into.is_deleted:
        return
    with into:
        waiting.set_text("" if found else "no build")
        for use in found:
            with box("rowline", tag="span"):
                link(use.build, f"/build/{use.build_id}/board")
                words(", ".join(use.fittings), "quiet small")


def _said(error: BadInput) -> str:
    return " ".join(
        f"{fault.field}: found {fault.found}; allowed: {fault.allowed}; {fault.action}."
        for fault in error.faults
    )
