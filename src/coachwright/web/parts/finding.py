"""One finding: what was judged, against what, from which clause, and what can be done."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime

from nicegui import ui

from coachwright.actions.deciding import acceptance, open_to_accept, withdrawal
from coachwright.errors import BadInput, CoachwrightError
from coachwright.model.build import Build
from coachwright.model.finding import Finding, Outcome, Status
from coachwright.model.grouping import FindingGroup
from coachwright.model.telling import compared
from coachwright.papers.wording import (
    HARD_SPACE,
    RELATION_SIGNS,
    clause_of,
    ended,
    sentence,
    spoken,
    subject_of,
)
from coachwright.store.records import Change
from coachwright.units import worded
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.parts.working import source_text, working
from coachwright.web.state import Here, change

SHAPES = {
    "stop": "■",
    "caution": "▲",
    "note": "●",
    "unknown": "?",
    "met": "✓",
    "not applicable": "–",
}
"""Beside the word, so that no colour has to be seen."""


def mark(kind: str, text: str = "") -> ui.element:
    """Return the shape and the word of a severity or an outcome."""
    made = box(f"severity {kind.replace(' ', '-')}")
    with made:
        words(SHAPES[kind]).props('aria-hidden="true"')
        words(text or kind)
    return made


def kind_of(finding: Finding) -> str:
    """Return what a finding is marked as: its severity where it is broken, else its outcome."""
    return str(finding.severity if finding.outcome is Outcome.BROKEN else finding.outcome)


def fitting_of(build: Build, finding: Finding) -> str:
    """Return the first fitting that a finding is about; empty where it is about none."""
    subject = finding.subject
    if build.fitted(subject) is not None:
        return subject
    for sign in (",", ":", "."):
        subject = subject.replace(sign, " ")
    return next((word for word in subject.split() if build.fitted(word) is not None), "")


def create(here: Here, group: FindingGroup) -> None:
    """Show a finding, and how many others of its rule were met with more to spare."""
    _Shown(here=here, finding=group.nearest, others=group.others).create()


@dataclass(frozen=True, kw_only=True, slots=True)
class _Shown:
    """One finding as it is shown to one person."""

    here: Here
    finding: Finding
    others: tuple[Finding, ...]

    def _said(self, text: str) -> str:
        return worded(spoken(self.here.work.build, text), self.here.system)

    def _about(self, finding: Finding) -> str:
        detail = self._said(finding.detail)
        subject = subject_of(self.here.work.build, finding.subject) if finding.subject else ""
        return " · ".join(each for each in (subject, detail) if each)

    def create(self) -> None:
        finding = self.finding
        with box(f"finding {kind_of(finding).replace(' ', '-')}", tag="article"):
            with box("head"):
                kind = kind_of(finding)
                aside = f" {finding.severity}" if kind in ("unknown", "met") else ""
                mark(kind, f"{kind}{aside}")
                words(self._said(finding.title), tag="h4")
            words(sentence(self._about(finding)).rstrip("."), "about", tag="p")
            self._figures()
            self._remarks()
            self._tools()

    def _figures(self) -> None:
        finding = self.finding
        if finding.outcome is Outcome.NOT_APPLICABLE:
            return
        said = compared(finding, self.here.system)
        limit = f"{RELATION_SIGNS[finding.holds]}{HARD_SPACE}{_signed(said.limit)}"
        with box("measure", tag="dl"):
            for name, text in (
                ("Value", _signed(said.value)),
                ("Limit", limit),
                ("Margin", "–" if finding.margin is None else _signed(said.margin)),
            ):
                with box():
                    words(name, tag="dt")
                    words(text, tag="dd")

    def _remarks(self) -> None:
        finding = self.finding
        if finding.missing:
            words(f"Missing: {ended(self._said(finding.missing))}", tag="p")
        if finding.outcome is Outcome.BROKEN and finding.remedy:
            words(f"What can be done: {ended(self._said(finding.remedy))}", tag="p")
        if finding.accepted is not None:
            by = f"Accepted by the {finding.accepted.role}: {ended(finding.accepted.reason)}"
            words(by, "accepted", tag="p")
        found = finding.source
        where = " in the source" if found.status is Status.READ else ""
        said = f"{source_text(found.key).rstrip('.')}, {clause_of(found)}{where}"
        words(said, "quiet small", tag="p")

    def _tools(self) -> None:
        finding, build = self.finding, self.here.work.build
        named = f"{self._said(finding.title)}, {self._said(finding.subject)}"
        with box("rowline no-print"):
            fitting = fitting_of(build, finding)
            if fitting:
                to = f"/build/{self.here.work.build_id}/board?pick={fitting}"
                shown = tool("Show me", lambda: ui.navigate.to(to))
                shown.props["aria-label"] = f"Show me on the drawing board: {fitting}"
            found = finding.working
            if found is not None:
                self._opener(
                    "Working",
                    f"Working of: {named}",
                    lambda: working(build, found, self.here.system),
                )
            if open_to_accept(finding):
                self._opener("Accept …", f"Accept: {named}", self._form)
            elif finding.accepted is not None and finding.outcome is not Outcome.MET:
                tool("No longer accept", self._withdraw, label=f"No longer accept: {named}")
            if self.others:
                self._opener(
                    f"{len(self.others)} more of this rule",
                    f"More of this rule: {named}",
                    self._rest,
                )

    def _opener(self, text: str, label: str, fill: Callable[[], None]) -> None:
        """Show a button that opens and closes something under the row of buttons."""

        def turn() -> None:
            place.set_visibility(not place.visible)
            button.props["aria-expanded"] = "true" if place.visible else "false"
            button.update()
            if place.visible and not place.default_slot.children:
                with place:
                    fill()

        button = tool(text, turn)
        button.props["aria-label"] = label
        button.props["aria-expanded"] = "false"
        button.mark(f"{text.split(maxsplit=1)[0].lower()}-{self.finding.rule}")
        place = box("opened")
        place.set_visibility(False)

    def _rest(self) -> None:
        with box("rest", tag="ul"):
            for each in self.others:
                said = compared(each, self.here.system)
                margin = "" if each.margin is None else f", margin {_signed(said.margin)}"
                words(f"{self._about(each)}{margin}", tag="li")

    def _form(self) -> None:
        with box("acceptform"):
            words(
                "It stays as it is found and is printed with your reason; a stop stays a stop.",
                "quiet",
                tag="p",
            )
            role = ui.input("Your role in the shop").props("outlined dense")
            reason = ui.textarea("Why it may stay so").props("outlined dense autogrow")

            async def accept() -> None:
                await self._decide(
                    lambda: acceptance(
                        self.here.work,
                        self.finding,
                        role=role.value or "",
                        reason=reason.value or "",
                        date=datetime.now(UTC).date(),
                    )
                )

            tool("Accept", accept, classes="main").mark("accept-it")

    async def _withdraw(self) -> None:
        await self._decide(lambda: withdrawal(self.here.work, self.finding))

    async def _decide(self, made: Callable[[], Change]) -> None:
        try:
            wanted = made()
        except BadInput as error:
            said = "; ".join(f"{fault.field}: {fault.action}" for fault in error.faults)
            ui.notify(said, type="warning", timeout=8000, close_button="Close")
        except CoachwrightError as error:
            ui.notify(str(error), type="warning", timeout=8000, close_button="Close")
        else:
            await change(self.here, wanted)


def _signed(text: str) -> str:
    """Return a number's text with a true minus sign."""
    return f"−{text[1:]}" if text.startswith("-") else text
