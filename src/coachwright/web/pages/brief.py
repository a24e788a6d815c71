"""The brief: the customer's side as a form, and what each answer drives."""

from collections.abc import Callable
from functools import partial

from nicegui import ui

from coachwright.actions.benching import OnBench
from coachwright.actions.brief_questions import CHAPTERS, MUST_HAVE, Chapter
from coachwright.actions.briefing import Answer, Sheaf, answer_edit, must_have_edit, sheaves
from coachwright.actions.paths import Steps
from coachwright.actions.plain_habits import (
    NewLoad,
    NewTraveller,
    WordSet,
    device_edits,
    habit_edits,
    habit_words,
    load_edits,
    traveller_edits,
    usual_place,
    without,
)
from coachwright.errors import BadInput
from coachwright.web.parts import answer as one
from coachwright.web.parts.asking import Asked, Field, ask
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.parts.styled import styled
from coachwright.web.state import Here, change, on_change

_COUNTS = ("1", "2", "3", "4", "5", "6", "8", "10")


def create(here: Here) -> None:
    """Fill the page."""
    styled("forms")
    words("Brief", tag="h2")
    words(
        "What the customer wants, in their own words and figures. Every answer is used at once; "
        "under it stands what it drives.",
        "quiet lead",
        tag="p",
    )
    form = _Form(here)
    on_change(here, form.show)


class _Form:
    """The form as it stands on the page; built anew only when people or things come or go."""

    def __init__(self, here: Here) -> None:
        self.here = here
        self.room = box("brief")
        self.built: tuple[tuple[str, str], ...] = ()
        self.fields: dict[Steps, one.Shown] = {}
        self.driven: dict[Steps, ui.element] = {}
        self.musts: dict[str, ui.checkbox] = {}

    def show(self, work: OnBench) -> None:
        """Show the answers of a build."""
        found = sheaves(work, self.here.system)
        names = tuple((sheaf.chapter.id, sheaf.name) for sheaf in found)
        if names != self.built:
            self._build(found)
            self.built = names
        for sheaf in found:
            for answer in sheaf.answers:
                self.fields[answer.path].update(answer, work.event)
            self._drives(sheaf, frozenset())
        wanted = {wanted.facet: wanted.count for wanted in work.assessment.wishes.must_have}
        for facet, mark in self.musts.items():
            mark.value = facet in wanted
            mark.set_text(_must_words(facet, wanted))

    def _drives(self, sheaf: Sheaf, marked: frozenset[str]) -> None:
        drives = tuple(each for answer in sheaf.answers for each in answer.drives)
        one.drives(drives, self.driven[(*sheaf.path, sheaf.chapter.id)], marked)

    def _mark(self, sheaf: Sheaf, answer: Answer) -> None:
        """Mark what the answer drives that somebody is at."""
        for each in sheaves(self.here.work, self.here.system):
            if (each.chapter.id, each.name) == (sheaf.chapter.id, sheaf.name):
                self._drives(each, frozenset(driven.name for driven in answer.drives))

    def _build(self, found: tuple[Sheaf, ...]) -> None:
        self.room.clear()
        self.fields, self.driven, self.musts = {}, {}, {}
        chapters = tuple(dict.fromkeys(sheaf.chapter for sheaf in found))
        listed = {each.id for each in chapters}
        with self.room:
            for chapter in _all(chapters, listed):
                mine = tuple(sheaf for sheaf in found if sheaf.chapter is chapter)
                self._chapter(chapter, mine)
            self._musts()

    def _chapter(self, chapter: Chapter, mine: tuple[Sheaf, ...]) -> None:
        with box("card stack", tag="section", label=chapter.title):
            words(chapter.title, tag="h3")
            if chapter.intro:
                words(chapter.intro, "quiet small", tag="p")
            for sheaf in mine:
                self._sheaf(sheaf)
            adding = _ADDING.get(chapter.id)
            if adding is not None:
                with box("rowline"):
                    tool(adding[0], partial(adding[1], self.here))
            if chapter.id == "day":
                self._plain_words()

    def _sheaf(self, sheaf: Sheaf) -> None:
        with box("entry" if sheaf.name else "", tag="fieldset", label=sheaf.name):
            if sheaf.name:
                with box("rowline entry-head"):
                    words(sheaf.name, "strong", tag="legend")
                    tool(
                        "Take out",
                        partial(change, self.here, without(sheaf.path)),
                        label=f"Take out {sheaf.name}",
                        classes="bare",
                    )
            event = self.here.work.event
            with box("answers"):
                for answer in sheaf.answers:
                    self.fields[answer.path] = one.create(
                        answer, event, self._give, partial(self._mark, sheaf)
                    )
            self.driven[(*sheaf.path, sheaf.chapter.id)] = box("drives", tag="dl")

    async def _give(self, answer: Answer, typed: str, began_with: int) -> str:
        try:
            edits = answer_edit(answer.question, answer.path, typed, self.here.work.text)
        except BadInput as error:
            return " ".join(f"{fault.found} does not do; {fault.action}" for fault in error.faults)
        if edits and await change(self.here, edits, began_with=began_with):
            self._settle(answer)
        return ""

    def _settle(self, given: Answer) -> None:
        """Show the answer that was kept, as the sheet has it now."""
        work = self.here.work
        for sheaf in sheaves(work, self.here.system):
            for answer in sheaf.answers:
                if answer.path == given.path:
                    self.fields[answer.path].again(answer, work.event)

    def _plain_words(self) -> None:
        with box("plain-words"):
            words("Or in plain words", "quiet small", tag="p")
            sets: tuple[tuple[WordSet, str], ...] = (
                ("cooking", "They cook"),
                ("water", "They use water"),
                ("warm", "Warm water"),
            )
            for wanted, label in sets:
                choice = ui.select(list(habit_words(wanted)), label=label)
                choice.props("outlined dense options-dense")
                choice.on_value_change(partial(self._in_words, wanted, choice))

    async def _in_words(self, wanted: WordSet, choice: ui.select) -> None:
        if choice.value:
            await change(self.here, habit_edits(self.here.work, wanted, str(choice.value)))

    def _musts(self) -> None:
        with box("card stack", tag="section", label="Must be there"):
            words("Must be there", tag="h3")
            words("Each is a rule of this build from then on.", "quiet small", tag="p")
            with box("musts"):
                for facet, asked in MUST_HAVE:
                    mark = ui.checkbox(asked)
                    mark.on("click", partial(self._must, facet, mark))
                    self.musts[facet] = mark

    async def _must(self, facet: str, mark: ui.checkbox) -> None:
        edits = must_have_edit(facet, bool(mark.value), self.here.work.text)
        if edits:
            await change(self.here, edits)


def _must_words(facet: str, wanted: dict[str, int]) -> str:
    asked = dict(MUST_HAVE)[facet]
    if facet not in wanted:
        return asked
    return f"{asked} ✓ there" if wanted[facet] else f"{asked} ✗ not there yet"


def _all(chapters: tuple[Chapter, ...], listed: set[str]) -> tuple[Chapter, ...]:
    """Return every chapter in its order, those of empty lists too."""
    return tuple(each for each in CHAPTERS if each in chapters or each.id not in listed)


def _add_traveller(here: Here) -> None:
    async def done(given: Asked) -> bool:
        new = NewTraveller(name=given["name"], mass=given["mass"], stature=given["stature"])
        return await change(here, traveller_edits(here.work, new))

    fields = (
        Field(id="name", label="Name in this build", hint="such as anna"),
        Field(id="mass", label="Weight, dressed", hint="such as 78 kg or 172 lb"),
        Field(id="stature", label="Height", hint="such as 1.76 m or 69 in"),
    )
    ask("Somebody who travels", fields, done)


def _add_device(here: Here) -> None:
    async def done(given: Asked) -> bool:
        count = int(given["count"])
        return await change(here, device_edits(here.work, given["device"], given["hours"], count))

    devices, hours = habit_words("device"), habit_words("hours")
    fields = (
        Field(id="count", label="How many", value="1", choices=_COUNTS),
        Field(id="device", label="Of what", value=devices[0], choices=devices),
        Field(id="hours", label="Used", value=hours[0], choices=hours),
    )
    ask(
        "Something that draws power",
        fields,
        done,
        intro="Draw and hours come from common practice; correct them when the label is known.",
    )


def _add_load(here: Here) -> None:
    async def done(given: Asked) -> bool:
        new = NewLoad(
            name=given["name"],
            mass=given["mass"],
            behind_axle=given["x"],
            right=given["y"],
            above_floor=given["z"],
        )
        return await change(here, load_edits(here.work, new))

    fields = (
        Field(id="name", label="What is it", hint="such as two bicycles"),
        Field(id="mass", label="Weight", hint="such as 34 kg or 75 lb"),
        Field(
            id="x",
            label="Centre behind the front axle",
            value=usual_place(here.work),
            hint="over the rear axle unless you say otherwise",
        ),
        Field(id="y", label="Centre right of the middle", value="0 mm", hint="minus: left"),
        Field(id="z", label="Centre above the load floor", value="400 mm"),
    )
    ask("Something heavy", fields, done)


_ADDING: dict[str, tuple[str, Callable[[Here], None]]] = {
    "people": ("Add somebody", _add_traveller),
    "devices": ("Add a device", _add_device),
    "cargo": ("Add something heavy", _add_load),
}
