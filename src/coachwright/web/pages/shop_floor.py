"""The shop floor: what is to be fitted and where; who ticked that it is here, and fitted."""

from collections.abc import Callable
from datetime import UTC, datetime
from functools import partial
from typing import Any

from nicegui import events, run, ui
from nicegui.elements.mixins.text_element import TextElement

from coachwright.actions.benching import OnBench
from coachwright.actions.shop_floor import GROUPS, FloorList, Mark, Thing, floor_list, tick
from coachwright.errors import CoachwrightError
from coachwright.store.records import Step, Tick
from coachwright.units import worded
from coachwright.web.parts import grid, sheet
from coachwright.web.parts.plain import box, link, tool, words
from coachwright.web.parts.styled import styled
from coachwright.web.state import Here, on_change, refuse
from coachwright.web.ticking import follow, tell

_STEPS = {Step.HERE: "Here", Step.FITTED: "Fitted"}
_FILTERS: dict[str, tuple[str, Callable[[Thing], bool]]] = {
    "all": ("Everything", lambda _: True),
    "to-come": ("Not here yet", lambda each: not each.here.done and not each.fitted.done),
    "to-fit": ("Here, to be fitted", lambda each: each.here.done and not each.fitted.done),
    "changed": (
        "Changed since",
        lambda each: bool(each.here.changed or each.fitted.changed),
    ),
    "fitted": ("Fitted", lambda each: each.fitted.done),
}
_LATEST = 30
_PRESSED = "event => emit(event.currentTarget.getAttribute('aria-pressed') !== 'true')"
"""What somebody wants is told by what they saw: two who press at once mean the same."""


def create(here: Here) -> None:
    """Fill the page."""
    sheet.styled()
    styled("floor")
    with box("stack"):
        _Floor(here)


class _Line:
    """One thing on the list; it keeps its elements, so that the keyboard stays where it is."""

    def __init__(self, thing: Thing, system: str, pressed: Callable[..., Any]) -> None:
        self.buttons: dict[Step, ui.button] = {}
        self.said: dict[Step, TextElement] = {}
        with box("thing", tag="li") as self.line:
            with box("what"):
                words(thing.name, "strong", tag="h4")
                words(thing.key, "quiet small")
                for sentence in thing.where:
                    words(worded(sentence, system), "small", tag="p")
            with box("ticks"):
                for step, title in _STEPS.items():
                    with box("tick"):
                        made = tool(title, None).mark(f"{step}-{thing.key.replace(' ', '-')}")
                        made.on("click", partial(pressed, thing.key, step), js_handler=_PRESSED)
                        made.props["aria-label"] = f"{title}: {thing.name}, {thing.key}"
                        self.buttons[step] = made
                        self.said[step] = words("", "small")

    def show(self, thing: Thing, wanted: bool) -> None:
        """Show what was ticked."""
        self.line.set_visibility(wanted)
        for step, title in _STEPS.items():
            mark, button = thing.mark(step), self.buttons[step]
            button.set_text(f"{'☑' if mark.done else '☐'} {title}")
            button.props["aria-pressed"] = "true" if mark.done else "false"
            button.update()
            said = self.said[step]
            said.set_text(_said(mark))
            said.classes(add="changed" if mark.changed else "", remove="changed")


class _Floor:
    """The page."""

    def __init__(self, here: Here) -> None:
        self.here = here
        self.shown = "all"
        self.lines: dict[str, _Line] = {}
        self.groups: dict[str, ui.element] = {}
        self.laid: tuple[tuple[str, tuple[str, ...]], ...] = ()
        self.signs: dict[str, ui.button] = {}
        sheet.heading(
            "Shop floor",
            "What is to be fitted, and where. Tick a thing when it lies ready and when it is "
            "fitted; everybody sees it at once, with your name. Ticks change no figure.",
        )
        with box("rowline no-print", label="Which things to show").props("role=group"):
            for name, (title, _) in _FILTERS.items():
                self.signs[name] = tool(title, partial(self.filter, name)).mark(f"show-{name}")
        self.count = words("", "strong", tag="p").props("role=status")
        self.room = box("stack floorlist")
        self.latest = box("stack")
        link("The drawings and papers of this build", f"/build/{here.work.build_id}/papers")
        on_change(here, lambda _work: self.draw())
        follow(here, self.draw)

    def filter(self, name: str) -> None:
        """Show other things."""
        self.shown = name
        self.draw()

    def draw(self) -> None:
        """Show the list as it is now."""
        work = self.here.work
        found = floor_list(self.here.bench, work)
        self._lay(found)
        for name, sign in self.signs.items():
            sign.props["aria-pressed"] = "true" if name == self.shown else "false"
            sign.update()
        wanted = _FILTERS[self.shown][1]
        seen: set[str] = set()
        for thing in found.things:
            fits = wanted(thing)
            self.lines[thing.key].show(thing, fits)
            if fits:
                seen.add(thing.group)
        for name, group in self.groups.items():
            group.set_visibility(name in seen)
        self.count.set_text(
            f"{found.here} of {len(found.things)} here, {found.fitted} fitted"
            + ("" if seen else "; nothing of this kind")
        )
        self._show_latest(found.ticks[:_LATEST])

    def _lay(self, found: FloorList) -> None:
        """Lay the lines anew where the build has other things than before."""
        laid = tuple((each.key, (each.name, *each.where)) for each in found.things)
        if laid == self.laid:
            return
        self.laid = laid
        self.lines.clear()
        self.groups.clear()
        self.room.clear()
        with self.room:
            for name in GROUPS:
                things = [each for each in found.things if each.group == name]
                if not things:
                    continue
                with sheet.section(name) as self.groups[name], box("things", tag="ul"):
                    for thing in things:
                        self.lines[thing.key] = _Line(thing, self.here.system, self.press)

    async def press(self, key: str, step: Step, event: events.GenericEventArguments) -> None:
        """Tick a thing off, or take the tick back."""
        done = event.args
        if not isinstance(done, bool):
            done = self.lines[key].buttons[step].props["aria-pressed"] != "true"
        here, work, actor = self.here, self.here.work, self.here.actor
        try:
            await run.io_bound(_keep, here, work, key, step, done=done, actor=actor)
        except CoachwrightError as error:
            refuse(here, str(error))
            return
        tell(work.build_id)

    def _show_latest(self, ticks: tuple[Tick, ...]) -> None:
        self.latest.clear()
        if not ticks:
            return
        with self.latest, sheet.section("Latest ticks"):
            grid.create(
                ("when (UTC)", "who", "what"),
                [(f"{each.at:%Y-%m-%d %H:%M}", each.actor, _told(each)) for each in ticks],
                label="Latest ticks",
            )


def _keep(here: Here, work: OnBench, key: str, step: Step, *, done: bool, actor: str) -> None:
    tick(here.bench, work, key, step, done=done, actor=actor, at=datetime.now(UTC))


def _said(mark: Mark) -> str:
    """Return in words who ticked something, and whether it still holds."""
    if mark.at is None:
        return ""
    who = f"{mark.by}, {mark.at:%d %b %H:%M}"
    if mark.changed:
        return f"▲ ticked by {who}; {mark.changed}: look again"
    return who if mark.done else f"taken back by {who}"


def _told(each: Tick) -> str:
    return f"{each.thing}: {each.step}" if each.done else f"{each.thing}: {each.step} taken back"
