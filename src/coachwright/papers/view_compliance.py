"""The compliance sheet: every rule with its outcome, stops first."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from coachwright.model.build import Build
from coachwright.model.finding import Finding, Outcome, Severity
from coachwright.model.grouping import FindingGroup, grouped
from coachwright.model.telling import compared
from coachwright.papers.frame import FrameView, SourceLine, frame, source_lines
from coachwright.papers.wording import (
    DISCIPLINE_WORDS,
    HARD_SPACE,
    JURISDICTION_WORDS,
    NONE,
    RELATION_SIGNS,
    SourceNumbers,
    clause_of,
    ended,
    hard,
    mark_of,
    spoken,
    subject_of,
)

_OUTCOMES = (Outcome.BROKEN, Outcome.UNKNOWN, Outcome.MET)
_HEADINGS = {
    Outcome.BROKEN: "Broken",
    Outcome.UNKNOWN: "Unknown: not shown to be met",
    Outcome.MET: "Met",
}
_COLUMNS = dict.fromkeys(_OUTCOMES, "Rule; under it what it was applied to, and its source") | {
    Outcome.MET: "Rule; under it the case nearest its limit, and the rule's source"
}


@dataclass(frozen=True, kw_only=True, slots=True)
class FindingRow:
    """One rule applied to one subject, as strings.

    Attributes
    ----------
    more
        How many other cases of the rule this one stands for; empty where there is none.
    """

    mark: str
    outcome: str
    severity: str
    title: str
    applied_to: str
    value: str
    limit: str
    margin: str
    source: str
    place: str
    more: str
    remarks: tuple[str, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class OutcomeGroup:
    """The findings of one outcome.

    Attributes
    ----------
    column
        Head of the column that holds the rules.
    """

    heading: str
    column: str
    rows: tuple[FindingRow, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class CountRow:
    """How many findings of one severity had each outcome."""

    severity: str
    broken: str
    unknown: str
    met: str


@dataclass(frozen=True, kw_only=True, slots=True)
class UnusedRule:
    """A rule that found nothing to judge.

    Attributes
    ----------
    why
        Why one thing is not judged, where the rule found things at all.
    """

    discipline: str
    title: str
    why: str
    source: str


@dataclass(frozen=True, kw_only=True, slots=True)
class DecisionRow:
    """A finding that someone accepted."""

    rule: str
    subject: str
    role: str
    reason: str
    date: str


@dataclass(frozen=True, kw_only=True, slots=True)
class ComplianceView:
    """Everything on the compliance sheet."""

    frame: FrameView
    verdict: str
    verdict_mark: str
    basis: str
    counts: tuple[CountRow, ...]
    groups: tuple[OutcomeGroup, ...]
    unused: tuple[UnusedRule, ...]
    decisions: tuple[DecisionRow, ...]
    sources: tuple[SourceLine, ...]


def compliance_view(build: Build, findings: Iterable[Finding]) -> ComplianceView:
    """Return the compliance sheet of a build.

    Parameters
    ----------
    build
        For names, units and decisions.
    findings
        Every finding, in the order of the rules.
    """
    listed = tuple(findings)
    numbers = SourceNumbers()
    told = grouped(listed)
    groups = tuple(_group(build, told, outcome, numbers) for outcome in _OUTCOMES)
    unused = tuple(
        _unused(build, group, numbers)
        for group in told
        if group.nearest.outcome is Outcome.NOT_APPLICABLE
    )
    verdict, mark = _verdict(listed)
    return ComplianceView(
        frame=frame(
            build,
            title="Compliance sheet",
            cautions=("certification", "electricity", "gas", "seats", "load"),
        ),
        verdict=verdict,
        verdict_mark=mark,
        basis=f"Rules of: {JURISDICTION_WORDS[build.brief.jurisdiction]}. Each rule is named with "
        "its source, clause and edition, and with how the limit is known: read in the source, "
        "recalled from memory, or common practice without a published source. Of a rule that is "
        "met, the case nearest its limit stands for all.",
        counts=_counts(listed),
        groups=tuple(group for group in groups if group.rows),
        unused=unused,
        decisions=_decisions(build, listed),
        sources=source_lines(numbers),
    )


def _verdict(findings: tuple[Finding, ...]) -> tuple[str, str]:
    tally = Counter((finding.severity, finding.outcome) for finding in findings)
    stops = tally[Severity.STOP, Outcome.BROKEN]
    unknown = tally[Severity.STOP, Outcome.UNKNOWN]
    if stops:
        return f"{_number_of(stops, 'stop')} broken: the build cannot go ahead.", "broken"
    if unknown:
        return f"No stop is broken, but {_number_of(unknown, 'stop')} cannot be judged.", "unknown"
    return "No stop is broken among the rules examined here.", "met"


def _number_of(count: int, word: str) -> str:
    return f"{count} {word}" if count == 1 else f"{count} {word}s"


def _counts(findings: tuple[Finding, ...]) -> tuple[CountRow, ...]:
    tally = Counter((finding.severity, finding.outcome) for finding in findings)
    return tuple(
        CountRow(
            severity=str(severity).capitalize(),
            broken=str(tally[severity, Outcome.BROKEN]),
            unknown=str(tally[severity, Outcome.UNKNOWN]),
            met=str(tally[severity, Outcome.MET]),
        )
        for severity in Severity
    )


def _group(
    build: Build, told: tuple[FindingGroup, ...], outcome: Outcome, numbers: SourceNumbers
) -> OutcomeGroup:
    rows = tuple(
        _row(build, group, numbers)
        for severity in Severity
        for group in told
        if group.nearest.outcome is outcome and group.nearest.severity is severity
    )
    return OutcomeGroup(heading=_HEADINGS[outcome], column=_COLUMNS[outcome], rows=rows)


def _applied_to(build: Build, finding: Finding) -> str:
    said = (subject_of(build, finding.subject), spoken(build, finding.detail))
    return " · ".join(words for words in said if words)


def _unused(build: Build, group: FindingGroup, numbers: SourceNumbers) -> UnusedRule:
    finding = group.nearest
    words = (_applied_to(build, finding), _more(group, "none judged"))
    return UnusedRule(
        discipline=DISCIPLINE_WORDS[finding.discipline],
        title=finding.title,
        why="; ".join(word for word in words if word),
        source=_cited(finding, numbers),
    )


def _more(group: FindingGroup, others: str) -> str:
    return f"and {group.more} more, {others}" if group.more else ""


def _row(build: Build, group: FindingGroup, numbers: SourceNumbers) -> FindingRow:
    finding = group.nearest
    figures = compared(finding, build.brief.units)
    sign = RELATION_SIGNS[finding.holds]
    return FindingRow(
        mark=mark_of(finding),
        outcome=str(finding.outcome),
        severity=str(finding.severity),
        title=finding.title,
        applied_to=_applied_to(build, finding),
        value=hard(figures.value),
        limit=f"{sign}{HARD_SPACE}{hard(figures.limit)}",
        margin=NONE if finding.margin is None else hard(figures.margin),
        source=numbers.of(finding.source.key),
        place=clause_of(finding.source),
        more=_more(group, "all met"),
        remarks=tuple(_remarks(build, finding)),
    )


def _remarks(build: Build, finding: Finding) -> Iterable[str]:
    if finding.missing:
        yield f"Missing: {ended(spoken(build, finding.missing))}"
    if finding.outcome is Outcome.BROKEN and finding.remedy:
        yield f"What can be done: {ended(finding.remedy)}"
    if finding.accepted is not None:
        yield f"Accepted by the {finding.accepted.role}: {ended(finding.accepted.reason)}"


def _cited(finding: Finding, numbers: SourceNumbers) -> str:
    return f"{numbers.of(finding.source.key)} {clause_of(finding.source)}"


def _decisions(build: Build, findings: tuple[Finding, ...]) -> tuple[DecisionRow, ...]:
    titles = {finding.rule: finding.title for finding in findings}
    return tuple(
        DecisionRow(
            rule=titles.get(decision.rule, "a rule that was not applied to this build"),
            subject=subject_of(build, decision.subject) if decision.subject else "every subject",
            role=decision.role,
            reason=decision.reason,
            date=decision.date.isoformat() if decision.date else "no date",
        )
        for decision in build.decisions
    )
