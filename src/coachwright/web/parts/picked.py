"""The fitting that is picked: where it stands, and what can be done with it."""

from collections.abc import Callable

from nicegui import ui

from coachwright.actions.benching import OnBench
from coachwright.actions.following import built_into
from coachwright.actions.placing import mirror, move_as_written, place_texts, turn
from coachwright.actions.shelving import alike, shelf_part
from coachwright.actions.stocking import exchange, remove
from coachwright.store.edits import Edit
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.state import Here, change, on_change, on_pick, pick, refuse

_AXES = (
    ("x", "Rearwards (x)"),
    ("y", "To the right (y)"),
    ("z", "Up (z)"),
)


def create(here: Here) -> None:
    """Show the picked fitting."""
    _Picked(here).create()


class _Picked:
    def __init__(self, here: Here) -> None:
        self._here = here
        self._filling = False

    def create(self) -> None:
        with box("pickedpart card", tag="section", label="Picked fitting"):
            with box("rowline"):
                words("Fitting", tag="h2")
                self._choice = ui.select({}, with_input=True, label="Pick a fitting").props(
                    "outlined dense options-dense clearable"
                )
                self._choice.on_value_change(lambda event: self._chosen(event.value))
            self._inside = box("stack")
        with ui.dialog() as self._dialog, box("sheet card"):
            self._asked = box("stack")
        on_change(self._here, self._changed)
        on_pick(self._here, self._show)

    def _chosen(self, name: str | None) -> None:
        if not self._filling and (name or "") != self._here.picked:
            pick(self._here, name or "")

    def _changed(self, work: OnBench) -> None:
        names = {
            f.name: f"{f.name.replace('-', ' ')} — {f.part.name}" for f in work.build.fittings
        }
        self._filling = True
        self._choice.set_options(dict(sorted(names.items())), value=None)
        self._filling = False
        if self._here.picked not in names:
            self._here.picked = ""
        self._show(self._here.picked)

    def _show(self, name: str) -> None:
        self._filling = True
        self._choice.value = name or None
        self._filling = False
        fitted = self._here.work.build.fitted(name)
        with self._inside.clear():
            if fitted is None:
                words(
                    "Nothing is picked. Press a fitting in the drawing; what is built into "
                    "another is picked by a second press.",
                    "quiet",
                    tag="p",
                )
                return
            shown = shelf_part(fitted.part, self._here.system, "")
            words(fitted.part.name, "strong")
            words(f"{shown.mass} · {shown.size} · on {fitted.fitting.mounting}", "small quiet")
            with box("places"):
                for axis, text in enumerate(place_texts(fitted, self._here.system)):
                    self._place(name, axis, text)
            with box("rowline"):
                tool("Turn ↺", lambda: self._do(turn), label="Turn by a quarter")
                tool("Mirror ⇋", lambda: self._do(mirror), label="Swap left and right")
                tool("Exchange …", lambda: self._exchange(name))
                tool("Take out …", lambda: ask_to_remove(self._here, self._ask))

    def _place(self, name: str, axis: int, text: str) -> None:
        field = ui.input(_AXES[axis][1], value=text).props("outlined dense")
        field.mark(f"place {_AXES[axis][0]}")

        async def typed() -> None:
            wanted = field.value or ""
            if wanted.strip() != text:
                work = self._here.work
                edits = move_as_written(work.sheet, work.build, name, axis, wanted)
                if not await change(self._here, edits):
                    field.value = text

        field.on("keydown.enter", typed)
        field.on("blur", typed)

    async def _do(self, deed: Callable[..., tuple[Edit, ...]]) -> None:
        work = self._here.work
        await change(self._here, deed(work.sheet, work.build, self._here.picked))

    def _ask(self, fill: Callable[[ui.dialog], None]) -> None:
        with self._asked.clear():
            fill(self._dialog)
        self._dialog.open()

    def _exchange(self, name: str) -> None:
        fitted = self._here.work.build.fitted(name)
        if fitted is None:
            return
        found = alike(self._here.bench.catalogue, fitted.part, self._here.system)
        if not found:
            refuse(self._here, f"the catalogue has nothing that could stand for {name}")
            return

        async def take(part_id: str) -> None:
            self._dialog.close()
            part = self._here.bench.catalogue.part(part_id)
            work = self._here.work
            await change(self._here, exchange(work.sheet, work.build, name, part))

        def fill(dialog: ui.dialog) -> None:
            words(f"Exchange {name.replace('-', ' ')}", tag="h2")
            words(f"Now: {fitted.part.name}", "quiet", tag="p")
            with box("plain", tag="table"):
                for part in found:
                    with box(tag="tr"):
                        words(part.name, tag="th").props("scope=row")
                        for text in (part.gives, part.mass, part.size, part.price):
                            words(text, tag="td")
                        with box(tag="td"):
                            label = f"Take {part.name}"
                            tool("Take", lambda part=part: take(part.id), label=label)
            tool("Leave it", dialog.close)

        self._ask(fill)


def ask_to_remove(here: Here, ask: Callable[[Callable[[ui.dialog], None]], None]) -> None:
    """Ask before the picked fitting is taken out with what is built into it."""
    name = here.picked
    work = here.work
    if work.build.fitted(name) is None:
        return
    along = built_into(work.build, name)

    async def take_out(dialog: ui.dialog) -> None:
        dialog.close()
        now = here.work
        await change(here, remove(now.sheet, now.build, name))

    def fill(dialog: ui.dialog) -> None:
        words(f"Take out {name.replace('-', ' ')}?", tag="h2")
        if along:
            listed = ", ".join(each.replace("-", " ") for each in along)
            words(f"What is built into it or stands on it goes too: {listed}.", tag="p")
        words("What stands against it stays where it is. It can be undone.", "quiet", tag="p")
        with box("rowline"):
            tool("Take out", lambda: take_out(dialog), classes="main")
            tool("Leave it", dialog.close)

    ask(fill)
