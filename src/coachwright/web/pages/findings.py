"""Findings: every rule with its outcome, by discipline; show it, see its working, accept it."""

from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field

from nicegui import ui

from coachwright.model.finding import Finding, Outcome, Severity
from coachwright.model.grouping import grouped
from coachwright.papers.frame import frame
from coachwright.papers.wording import DISCIPLINE_WORDS
from coachwright.web.parts import finding as one
from coachwright.web.parts import sheet
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.state import Here, on_change

_MOST = 40
"""Findings of one discipline shown before more are asked for."""
_OUTCOMES = (Outcome.BROKEN, Outcome.UNKNOWN, Outcome.MET, Outcome.NOT_APPLICABLE)
_CAUTIONS = ("certification", "electricity", "gas", "seats", "load")


@dataclass(slots=True)
class _Wanted:
    """What somebody wants to see."""

    severities: set[str] = field(default_factory=lambda: {str(each) for each in Severity})
    outcomes: set[str] = field(default_factory=lambda: {"broken", "unknown"})
    whole: set[str] = field(default_factory=set)

    def has(self, finding: Finding) -> bool:
        return str(finding.severity) in self.severities and str(finding.outcome) in self.outcomes


def create(here: Here) -> None:
    """Fill the page."""
    sheet.styled()
    wanted = _Wanted()
    with box("stack"):
        sheet.heading("Findings", "What every rule says of this build, worst first.")
        counts = box("rowline verdict")
        filters = box("filters no-print")
        room = box("stack").props('aria-live="polite"')
        _show_cautions(here)

    def draw(_work: object = None) -> None:
        _count(here, counts)
        room.clear()
        with room:
            _fill(here, wanted, draw)

    with filters:
        _choice("Severity", [str(each) for each in Severity], wanted.severities, draw)
        _choice("Outcome", [str(each) for each in _OUTCOMES], wanted.outcomes, draw)
    on_change(here, draw)


def _choice(
    title: str, kinds: Iterable[str], chosen: set[str], draw: Callable[[], object]
) -> None:
    with box("rowline", label=f"{title} shown").props('role="group"'):
        words(title, "quiet")
        for kind in kinds:
            _switch(kind, chosen, draw)


def _switch(kind: str, chosen: set[str], draw: Callable[[], object]) -> None:
    def turn() -> None:
        chosen.symmetric_difference_update({kind})
        show()
        draw()

    def show() -> None:
        made.props["aria-pressed"] = "true" if kind in chosen else "false"
        made.update()

    shape = one.SHAPES.get(kind)
    made = tool(f"{shape} {kind}" if shape else kind, turn)
    show()


def _count(here: Here, room: ui.element) -> None:
    found = here.work.verdict
    room.clear()
    with room:
        for kind, count, said in (
            ("stop", found.stops, "stops broken"),
            ("caution", found.cautions, "cautions broken"),
            ("note", found.notes, "notes broken"),
            ("unknown", found.unknown, "unknown, not shown to be met"),
            ("met", found.met, "met"),
        ):
            one.mark(kind, f"{count} {said}")
        if found.accepted:
            words(f"{found.accepted} of the broken accepted with a reason", "quiet")


def _fill(here: Here, wanted: _Wanted, draw: Callable[[], object]) -> None:
    shown = [each for each in here.work.assessment.findings if wanted.has(each)]
    if not shown:
        words("Nothing of this kind.", "quiet card", tag="p")
    counts = Counter(each.discipline for each in shown)
    for discipline, title in DISCIPLINE_WORDS.items():
        if counts[discipline]:
            of_it = [each for each in shown if each.discipline == discipline]
            _discipline(here, wanted, draw, title, of_it)


def _discipline(
    here: Here,
    wanted: _Wanted,
    draw: Callable[[], object],
    title: str,
    found: list[Finding],
) -> None:
    def whole() -> None:
        wanted.whole.add(title)
        draw()

    groups = grouped(found)
    many = len(groups) > _MOST and title not in wanted.whole
    with sheet.section(title):
        for group in groups[:_MOST] if many else groups:
            one.create(here, group)
        if many:
            tool(f"Show all {len(groups)}", whole, label=f"Show all {len(groups)} of {title}")


def _show_cautions(here: Here) -> None:
    sheet.cautions(frame(here.work.build, title="Findings", cautions=_CAUTIONS))
