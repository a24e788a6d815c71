"""Revisions: named states of a build, two of them side by side, and the way back."""

from datetime import UTC, datetime
from functools import partial

from nicegui import run, ui

from coachwright.actions.benching import OnBench
from coachwright.actions.revising import (
    Side,
    history,
    name_revision,
    points,
    revisions,
    side_by_side,
)
from coachwright.errors import CoachwrightError
from coachwright.units import worded
from coachwright.web.parts import grid
from coachwright.web.parts.asking import Asked, Field, ask
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.parts.styled import styled
from coachwright.web.state import Here, go_back, on_change

_LATELY = 40
"""Edits that are listed and may be compared."""
_FIGURES = frozenset({1, 2, 3})
_SIGN = {"broken": "✗", "met": "✓", "unknown": "?"}
_CLASS = {"broken": "stop", "met": "met", "unknown": "unknown"}


def create(here: Here) -> None:
    """Fill the page."""
    styled("forms")
    words("Revisions", tag="h2")
    with box("rowline page-tools"):
        tool("Name this state", partial(_name, here), classes="main").mark("name-state")
    shelf = _Shelf(here)
    on_change(here, shelf.show)


class _Shelf:
    """What the page shows: revisions, two states side by side, and the history."""

    def __init__(self, here: Here) -> None:
        self.here = here
        with box("stack revisions"):
            self.named = box("card stack", tag="section", label="Named revisions")
            with box("card stack", tag="section", label="Side by side"):
                words("Side by side", tag="h3")
                with box("rowline"):
                    self.before = _choice("From")
                    self.after = _choice("To")
                    tool("Compare", self.compare, classes="main").mark("compare")
                self.side = box("stack").props("aria-live=polite")
            self.edits = box("card stack", tag="section", label="History")

    def show(self, work: OnBench) -> None:
        """Show revisions and history of a build as it is now."""
        bench, build_id = self.here.bench, work.build_id
        offered = points(bench, build_id, most=_LATELY)
        events = list(offered)
        named = [each.event for each in revisions(bench, build_id)]
        first = next((each for each in named if each != events[0]), events[-1])
        _offer(self.before, offered, first)
        _offer(self.after, offered, events[0])
        self.named.clear()
        with self.named:
            self._named()
        self.edits.clear()
        with self.edits:
            self._edits()

    def _named(self) -> None:
        words("Named revisions", tag="h3")
        listed = revisions(self.here.bench, self.here.work.build_id)
        if not listed:
            words(
                "None yet. Name a state before the customer sees it, and it can be found, "
                "compared and gone back to for ever.",
                "quiet",
                tag="p",
            )
            return
        rows = [
            (
                each.name,
                each.note,
                f"{each.at:%Y-%m-%d %H:%M}",
                each.actor,
                f"{each.event}",
                partial(self._back, each.event, each.name),
            )
            for each in listed
        ]
        names = ("revision", "note", "named at", "by", "edit", "")
        grid.create(names, rows, label="Named revisions")

    def _edits(self) -> None:
        words("History", tag="h3")
        lines = history(self.here.bench, self.here.work.build_id, most=_LATELY)
        rows = [
            (
                f"{line.event}",
                f"{line.at:%Y-%m-%d %H:%M}",
                line.actor,
                line.said,
                partial(self._back, line.event, f"edit {line.event}"),
            )
            for line in lines
        ]
        grid.create(("edit", "at", "by", "what", ""), rows, label="History")

    def _back(self, event: int, name: str) -> None:
        if event == self.here.work.event:
            words("now", "quiet")
            return
        tool(
            "Go back",
            partial(go_back, self.here, event),
            label=f"Go back to {name}; this can be undone",
        )

    async def compare(self) -> None:
        """Show two states side by side."""
        here = self.here
        work, system = here.work, here.system
        chosen = int(self.before.value), int(self.after.value)
        self.side.clear()
        with self.side:
            words("Comparing …", "quiet")
        try:
            found = await run.io_bound(side_by_side, here.bench, work.build_id, *chosen, system)
        except CoachwrightError as error:
            self.side.clear()
            with self.side:
                words(str(error), "wrong", tag="p")
            return
        self.side.clear()
        with self.side:
            if found is not None:
                _show(found, system)


def _choice(label: str) -> ui.select:
    made = ui.select({}, label=label)
    made.props("outlined dense options-dense").classes("state")
    return made


def _offer(choice: ui.select, offered: dict[int, str], usual: int) -> None:
    kept = choice.value if choice.value in offered else usual
    newest = next(iter(offered))
    if choice.value is not None and choice.value != usual and usual == newest:
        kept = newest
    choice.set_options(dict(offered), value=kept)


def _show(side: Side, system: str) -> None:
    found = side.found
    with box("overlay", label="Both states in plan").props("role=img tabindex=0"):
        ui.html(side.picture, sanitize=False)  # made here; every name in it is escaped
    words("Figures", tag="h4")
    names = ("figure", "before", "after", "change")
    rows = [(row.label, row.before, row.after, row.change) for row in side.figures]
    grid.create(names, rows, label="Figures", right=_FIGURES)
    if side.more_figures:
        with ui.expansion(f"{len(side.more_figures)} more figures changed").classes("more"):
            rows = [(row.label, row.before, row.after, row.change) for row in side.more_figures]
            grid.create(names, rows, label="More figures", right=_FIGURES)
    words("Parts", tag="h4")
    if found.fittings:
        grid.create(
            ("fitting", "what", "before", "after"),
            [
                (
                    each.fitting,
                    each.change,
                    worded(each.before, system) or "—",
                    worded(each.after, system) or "—",
                )
                for each in found.fittings
            ],
            label="Parts",
        )
    else:
        words("No fitting differs.", "quiet", tag="p")
    words("Findings", tag="h4")
    if side.findings:
        _findings(side, system)
    else:
        words("No finding became broken, unknown or mended.", "quiet", tag="p")


def _findings(side: Side, system: str) -> None:
    rows = [
        (
            worded(f"{each.title} ({each.subject})" if each.subject else each.title, system),
            each.severity,
            partial(_outcome, each.before),
            partial(_outcome, each.after),
        )
        for each in side.findings
    ]
    grid.create(("finding", "severity", "before", "after"), rows, label="Findings")


def _outcome(outcome: str) -> None:
    with box(f"severity {_CLASS.get(outcome, 'note')}", tag="span"):
        words(_SIGN.get(outcome, "–"))
        words(outcome)


def _name(here: Here) -> None:
    work = here.work

    async def done(given: Asked) -> bool:
        try:
            await run.io_bound(
                partial(
                    name_revision,
                    here.bench,
                    work.build_id,
                    work.event,
                    given["name"],
                    note=given["note"],
                    actor=here.actor,
                    at=datetime.now(UTC),
                )
            )
        except CoachwrightError as error:
            ui.notify(str(error), type="warning")
            return False
        for draw in tuple(here.draws):
            draw(here.work)
        return True

    fields = (
        Field(id="name", label="Name", hint="such as B, or order of 4 May"),
        Field(id="note", label="Note", hint="what was agreed"),
    )
    ask("Name this state", fields, done, button="Name it")
