"""Check a proposal without the solver: the layout of the build as it would be."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from coachwright.layout import stage as layout_stage
from coachwright.layout.model import Layout
from coachwright.layout.rules import RULES
from coachwright.model.build import Build
from coachwright.model.finding import Finding, Outcome, Severity, apply_rules
from coachwright.reference import limit
from coachwright.units import told

Together = Callable[[str, str], bool]
"""Whether two fittings keep their places to each other."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Checked:
    """What the layout says of a proposal.

    Attributes
    ----------
    faults
        Why it may not be shown; empty where it may.
    cautions
        What it breaks that the build as it is does not, but that stops nothing.
    """

    layout: Layout
    faults: tuple[str, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Judge:
    """Judges proposals against the build as it is.

    Attributes
    ----------
    before
        Layout of that build.
    broken
        Rule and subject of everything that it breaks itself.
    """

    before: Layout
    broken: frozenset[tuple[str, str]]


def judge_of(build: Build) -> Judge:
    """Return the judge of proposals for a build."""
    before = layout_stage.stage(build)
    return Judge(
        before=before,
        broken=frozenset((found.rule, found.subject) for found in _broken(build, before)),
    )


def checked(judge: Judge, build: Build, moved: Iterable[str], together: Together) -> Checked:
    """Return what the layout says of a proposal.

    Parameters
    ----------
    judge
        Knows the build as it is.
    build
        As it would be.
    moved
        Names of what moved or is new.
    together
        Pairs that keep their places to each other; what was between them stays as it was.
    """
    layout = layout_stage.stage(build)
    names = frozenset(moved)
    faults = [
        *_out_of_shell(layout, names),
        *_clashing(layout, names, together),
        *_blocked(layout, names, together),
        *_overlapping_zones(layout, names, together),
        *_floating(judge.before, layout, names),
    ]
    new = [f for f in _broken(build, layout) if (f.rule, f.subject) not in judge.broken]
    faults += [_sentence(found) for found in new if found.severity is Severity.STOP]
    cautions = tuple(_sentence(found) for found in new if found.severity is Severity.CAUTION)
    return Checked(layout=layout, faults=tuple(dict.fromkeys(faults)), cautions=cautions)


def _broken(build: Build, layout: Layout) -> Iterator[Finding]:
    for found in apply_rules(RULES, build, layout):
        if found.outcome is Outcome.BROKEN and found.accepted is None:
            yield found


def _sentence(found: Finding) -> str:
    return f"{found.title}: {found.subject}"


def _out_of_shell(layout: Layout, names: frozenset[str]) -> Iterator[str]:
    slack_mm = limit("layout.judged-to").value
    for fit in layout.shell_fits:
        if fit.name in names and fit.spare_mm < -slack_mm:
            yield f"{fit.name} stands {told(-fit.spare_mm, 'mm')} through the {fit.face}"


def _clashing(layout: Layout, names: frozenset[str], together: Together) -> Iterator[str]:
    for clash in layout.clashes:
        if names & {clash.one, clash.other} and not together(clash.one, clash.other):
            yield f"{clash.one} and {clash.other} stand in one place"


def _blocked(layout: Layout, names: frozenset[str], together: Together) -> Iterator[str]:
    for zone in layout.zones:
        if zone.waived is not None:
            continue
        for blocker in zone.blocked_by:
            if names & {zone.fitting, blocker} and not together(zone.fitting, blocker):
                yield f"{zone.purpose} of {zone.fitting} is blocked by {blocker}"


def _overlapping_zones(layout: Layout, names: frozenset[str], together: Together) -> Iterator[str]:
    for pair in layout.zone_pairs:
        one, other = pair.one, pair.other
        if names & {one.fitting, other.fitting} and not together(one.fitting, other.fitting):
            yield (
                f"{one.purpose} of {one.fitting} and {other.purpose} of {other.fitting} overlap"
            )


def _floating(before: Layout, layout: Layout, names: frozenset[str]) -> Iterator[str]:
    gaps_mm = {held.name: held.gap_mm or 0.0 for held in before.supports}
    slack_mm = limit("layout.judged-to").value
    for held in layout.supports:
        allowed_mm = limit("layout.bracket-reach" if held.outside else "layout.gap").value
        most_mm = max(allowed_mm, gaps_mm.get(held.name, 0.0)) + slack_mm
        if held.name in names and (held.gap_mm is None or held.gap_mm > most_mm):
            yield f"{held.name} is not held by the {held.carrier}"
