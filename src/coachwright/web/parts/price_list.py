"""Take over a supplier's price list: hand it in, look at every row, then keep the parts."""

from nicegui import events, run, ui

from coachwright.actions.price_list import MOST_BYTES
from coachwright.actions.taking_over import (
    ENDINGS,
    EXAMPLE_MAP,
    MOST_SHOWN,
    HandedIn,
    Preview,
    preview,
    take_over,
)
from coachwright.errors import CoachwrightError
from coachwright.web.parts import grid
from coachwright.web.parts.entry import catalogue_changed
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.state import Here

_SIGN = {"new": "+ new", "changed": "Δ changed", "overrides": "! in place of a shipped part"}


def create(here: Here) -> None:
    """Show the desk for price lists.

    Parameters
    ----------
    here
        The page.
    """
    _Desk(here)


class _Desk:
    """A list that was handed in, its map, and what taking it over would do."""

    def __init__(self, here: Here) -> None:
        self.here = here
        self.handed: HandedIn | None = None
        self.found: Preview | None = None
        self.turn = 0
        with box("card stack", tag="section", label="A supplier's price list"):
            words("A supplier's price list", tag="h3")
            words(
                "CSV or XLSX. The map says which column is which field; "
                "nothing is kept before you have seen every row.",
                "quiet",
                tag="p",
            )
            self.list_name = words("no list yet", "quiet")
            upload = ui.upload(
                on_upload=self._handed_in,
                on_rejected=self._refused,
                max_file_size=MOST_BYTES,
                auto_upload=True,
            )
            upload.props(f'accept="{",".join(ENDINGS)}"').classes("handing")
            choose = tool("Choose a list (.csv, .xlsx)", None).mark("choose")
            choose.on("click", js_handler=f"() => getElement({upload.id}).$refs.qRef.pickFiles()")
            self.map = ui.textarea("Map", value=EXAMPLE_MAP).props("outlined autogrow")
            self.map.classes("whole-file")
            with box("rowline"):
                tool("Look at the rows", self.look, classes="main").mark("look")
                self.leave = tool("Stop looking", self._leave)
                self.leave.set_visibility(False)
            self.shown = box("stack").props("aria-live=polite")

    async def _handed_in(self, event: events.UploadEventArguments) -> None:
        content = await event.file.read()
        self.hand_in(HandedIn(name=event.file.name, content=content))

    def hand_in(self, handed: HandedIn) -> None:
        """Take a list to be looked at."""
        self.handed = handed
        self.list_name.set_text(handed.name)

    def _refused(self) -> None:
        ui.notify(f"only .csv and .xlsx up to {MOST_BYTES:,} bytes", type="warning")

    def _leave(self) -> None:
        self.turn = id(object())
        self.leave.set_visibility(False)
        self.shown.clear()

    async def look(self) -> None:
        """Read the list and show what taking it over would do."""
        if self.handed is None:
            ui.notify("hand in a list first", type="warning")
            return
        mine = self.turn = id(object())
        self.shown.clear()
        self.leave.set_visibility(True)
        with self.shown:
            words("Reading every row …", "quiet")
            ui.linear_progress(show_value=False).props("indeterminate aria-label=Reading")
        try:
            found = await run.io_bound(
                preview, self.here.bench, self.handed, str(self.map.value or "")
            )
        except CoachwrightError as error:
            self._say(str(error))
            return
        if self.turn != mine or found is None:
            return
        self.found = found
        self.leave.set_visibility(False)
        self.shown.clear()
        with self.shown:
            self._rows(found)

    def _say(self, said: str) -> None:
        self.leave.set_visibility(False)
        self.shown.clear()
        with self.shown:
            words(said, "wrong", tag="p")

    def _rows(self, found: Preview) -> None:
        words(
            f"{found.name}: {found.rows} rows; {len(found.parts)} parts new or changed, "
            f"{found.unchanged} as they are, {len(found.faults)} faults",
            "strong",
            tag="p",
        )
        if found.faults:
            words("Faults; these rows are left out", tag="h4")
            grid.create(
                ("where", "found", "allowed", "what to do"),
                [
                    (fault.field, fault.found, fault.allowed, fault.action)
                    for fault in found.faults[:MOST_SHOWN]
                ],
                label="Faults",
            )
        if not found.parts:
            return
        words("Parts", tag="h4")
        grid.create(
            ("row", "part", "name", "", "changes"),
            [
                (
                    f"{part.row}",
                    part.id,
                    part.name,
                    _SIGN[part.action],
                    "; ".join(f"{c.field}: {c.before} → {c.after}" for c in part.changes) or "—",
                )
                for part in found.parts[:MOST_SHOWN]
            ],
            label="Parts",
        )
        good = "the good rows" if found.faults else "all of them"
        tool(f"Take over {good}", self.keep, classes="main").mark("take-over")

    async def keep(self) -> None:
        """Keep the parts that were looked at."""
        if self.found is None:
            return
        try:
            kept = await run.io_bound(take_over, self.here.bench, self.found)
        except CoachwrightError as error:
            self._say(str(error))
            return
        await catalogue_changed(self.here)
        self.found = None
        self._say("")
        with self.shown:
            words(f"{len(kept or ())} parts are the shop's own now.", "strong", tag="p")
