"""What is picked: where it stands, what it is fixed to, and what can be done with it."""

from collections.abc import Callable

from nicegui import ui

from coachwright.actions.benching import OnBench
from coachwright.actions.exchanging import of_one_part
from coachwright.actions.following import built_into
from coachwright.actions.shelving import shelf_part
from coachwright.actions.stocking import remove
from coachwright.actions.together import all_pinned, mirror, pin, shift_as_typed, turn
from coachwright.model.build import Fitted
from coachwright.web.parts import exchanging
from coachwright.web.parts.deeds import Deed, done, to_picked
from coachwright.web.parts.fixed_to import FixedTo
from coachwright.web.parts.place_field import AXES, PlaceField
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.state import Here, on_change, on_pick, pick

Fill = Callable[[ui.dialog], None]
_NOTHING = (
    "Nothing is picked. Press a fitting in the drawing; what is built into another is picked by a "
    "second press. Press with Shift, or draw a band, for several."
)


def create(here: Here) -> None:
    """Show what is picked."""
    _Picked(here).create()


async def pin_or_let_go(here: Here) -> bool:
    """Pin what is picked; let go of it where all of it is pinned."""
    pinned = not all_pinned(here.work.build, here.all_picked)
    return await to_picked(
        here, lambda sheet, build, names: pin(sheet, build, names, pinned=pinned)
    )


class _Picked:
    def __init__(self, here: Here) -> None:
        self._here = here
        self._filling = False
        self._shown: tuple[str, ...] | None = None
        self._fields: list[PlaceField | FixedTo] = []

    def create(self) -> None:
        with box("pickedpart card", tag="section", label="Picked fitting"):
            with box("rowline"):
                words("Fitting", tag="h2")
                self._choice = self._list("Pick a fitting", self._chosen)
            self._inside = box("stack")
        with ui.dialog() as self._dialog, box("sheet card"):
            self._asked = box("stack")
        on_change(self._here, self._changed)
        on_pick(self._here, self._show)

    def _list(self, label: str, deed: Callable[[str], None]) -> ui.select:
        made = ui.select({}, with_input=True, label=label)
        made.props("outlined dense options-dense clearable")

        def chosen(name: str | None) -> None:
            if not self._filling:
                deed(name or "")

        made.on_value_change(lambda event: chosen(event.value))
        return made

    def _chosen(self, name: str) -> None:
        if name != self._here.picked:
            pick(self._here, name)

    def _changed(self, work: OnBench) -> None:
        names = _names(work)
        self._filling = True
        if self._choice.options != names:
            self._choice.set_options(names, value=None)
        self._filling = False
        left = [name for name in self._here.all_picked if name in names]
        self._here.picked = left[-1] if left else ""
        self._here.also = tuple(left[:-1])
        self._show(self._here.picked)

    def _show(self, name: str) -> None:
        self._filling = True
        self._choice.value = name or None
        self._filling = False
        work, picked = self._here.work, self._here.all_picked
        if picked == self._shown and picked:
            self._renew(work)
            return
        self._shown, self._fields = picked, []
        fitted = work.build.fitted(name)
        with self._inside.clear():
            if fitted is None:
                words(_NOTHING, "quiet", tag="p")
            elif self._here.also:
                self._several()
            else:
                self._one(fitted)

    def _renew(self, work: OnBench) -> None:
        fitted = work.build.fitted(self._here.picked)
        if fitted is not None and not self._here.also:
            self._say(fitted)
        for field in self._fields:
            field.renew(work)
        self._say_pinned()

    def _one(self, fitted: Fitted) -> None:
        self._name = words("", "strong")
        self._facts = words("", "small quiet")
        self._say(fitted)
        with box("places"):
            axes = range(len(AXES))
            self._fields += [PlaceField(self._here, fitted.name, axis) for axis in axes]
            self._fields.append(FixedTo(self._here, fitted.name))
        with box("rowline"):
            self._tools()
            tool("Exchange …", self._exchange)
            tool("Take out …", lambda: ask_to_remove(self._here, self._ask))

    def _say(self, fitted: Fitted) -> None:
        shown = shelf_part(fitted.part, self._here.system, "")
        self._name.set_text(fitted.part.name)
        self._facts.set_text(f"{shown.mass} · {shown.size}")

    def _several(self) -> None:
        names = self._here.all_picked
        listed = ", ".join(name.replace("-", " ") for name in names)
        words(f"{len(names)} fittings: {listed}", "strong")
        with box("places"):
            fields = [
                ui.input(f"{label} by").props("outlined dense autocomplete=off")
                for label in ("Rearwards", "To the right", "Up")
            ]
        with box("rowline"):
            tool("Move them", lambda: self._move([f.value or "" for f in fields]), classes="main")
            self._tools()
            if of_one_part(self._here.work.build, names):
                tool("Exchange …", self._exchange)
            tool("Take out …", lambda: ask_to_remove(self._here, self._ask))
        words("What is done to them is one edit, and undone as one.", "small quiet", tag="p")

    def _tools(self) -> None:
        tool("Turn ↺", lambda: self._do(turn), label="Turn by a quarter")
        tool("Mirror ⇋", lambda: self._do(mirror), label="Swap left and right")
        self._pin = tool("Pin", lambda: pin_or_let_go(self._here), label="Pin where it stands")
        self._say_pinned()

    def _say_pinned(self) -> None:
        picked = self._here.all_picked
        if picked:
            pinned = all_pinned(self._here.work.build, picked)
            if self._pin.props.get("aria-pressed") == ("true" if pinned else "false"):
                return
            self._pin.set_text("Pinned" if pinned else "Pin")
            self._pin.props["aria-pressed"] = "true" if pinned else "false"
            self._pin.update()

    async def _move(self, texts: list[str]) -> None:
        await self._do(lambda sheet, build, names: shift_as_typed(sheet, build, names, texts))

    async def _do(self, deed: Deed) -> None:
        await to_picked(self._here, deed)

    def _ask(self, fill: Fill) -> None:
        with self._asked.clear():
            fill(self._dialog)
        self._dialog.open()

    def _exchange(self) -> None:
        exchanging.ask(self._here, self._ask)


def ask_to_remove(here: Here, ask: Callable[[Fill], None]) -> None:
    """Ask before what is picked is taken out with what is built into it."""
    seen, names = here.work, here.all_picked
    if not names:
        return
    inside = dict.fromkeys(each for name in names for each in built_into(seen.build, name))
    along = [each for each in inside if each not in names]

    async def take_out(dialog: ui.dialog) -> None:
        dialog.close()
        await done(here, lambda work: remove(work.sheet, work.build, names), seen=seen)

    def fill(dialog: ui.dialog) -> None:
        words(f"Take out {_listed(names)}?", tag="h2")
        if along:
            words(f"What is built in or stands on it goes too: {_listed(along)}.", tag="p")
        words("What stands against it stays where it is. It can be undone.", "quiet", tag="p")
        with box("rowline"):
            tool("Take out", lambda: take_out(dialog), classes="main")
            tool("Leave it", dialog.close)

    ask(fill)


def _listed(names: tuple[str, ...] | list[str]) -> str:
    return ", ".join(name.replace("-", " ") for name in names)


def _names(work: OnBench) -> dict[str, str]:
    found = {f.name: f"{f.name.replace('-', ' ')} — {f.part.name}" for f in work.build.fittings}
    return dict(sorted(found.items()))
