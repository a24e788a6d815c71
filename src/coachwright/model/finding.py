"""One rule applied: the rule, its cases, and the findings made from them in one place.

A rule says what is compared with what.  `apply_rules` makes the comparison, the margin and the
outcome; whoever shows a finding writes the sentence.
"""

import operator
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from coachwright.errors import OutOfRange
from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.working import Working

EVERYWHERE: tuple[Jurisdiction, ...] = tuple(Jurisdiction)


class Severity(StrEnum):
    """How much a broken rule matters."""

    STOP = "stop"
    CAUTION = "caution"
    NOTE = "note"


class Outcome(StrEnum):
    """What came of a rule; unknown is never shown as met."""

    MET = "met"
    BROKEN = "broken"
    UNKNOWN = "unknown"
    NOT_APPLICABLE = "not applicable"


class Status(StrEnum):
    """How well the source of a limit is known.

    ``read``: the wording or figure was seen.  ``memory``: recalled, not seen.  ``practice``:
    common practice, no published source.
    """

    READ = "read"
    MEMORY = "memory"
    PRACTICE = "practice"


@dataclass(frozen=True, kw_only=True, slots=True)
class Source:
    """Where a rule comes from.

    Attributes
    ----------
    key
        A key of ``docs/references.toml``.
    clause
        As printed, such as ``"S9.3"``; empty where the source has none.
    edition
        Edition or date of the text that the rule follows.
    """

    key: str
    clause: str = ""
    edition: str = ""
    status: Status = Status.READ


@dataclass(frozen=True, kw_only=True, slots=True)
class Acceptance:
    """Who accepted a broken rule and why; a stop stays broken all the same."""

    role: str
    reason: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Case:
    """One thing that a rule is applied to.

    Attributes
    ----------
    subject
        The fitting's reference name, or what else is judged ("rear axle").
    value, limit
        In `unit`; compared as the rule's `holds` says.
    missing
        What is missing; makes the outcome unknown.
    working
        How the value was reached.
    detail
        A few words more on what was compared, for people.
    not_applicable
        Why this one is not judged although the rule applies to others; shown in place of `detail`.
    accepted
        Who gave up on it beforehand and why; it is judged all the same.
    """

    subject: str
    value: float | None
    limit: float | None
    unit: str
    missing: str = ""
    working: Working | None = None
    detail: str = ""
    not_applicable: str = ""
    accepted: Acceptance | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Rule:
    """One rule over a build and a discipline's result.

    Attributes
    ----------
    id
        Words, never numbers; never reused; starts with the discipline's folder.
    title
        What must hold, as a sentence.
    cases
        Yields a `Case` for each thing judged; none means not applicable.
    holds
        How value and limit must stand: ``"<="``, ``">="``, ``"<"``, ``">"`` or ``"=="``.
    remedy
        What a designer can do where it is broken.
    jurisdictions
        Where the rule applies.
    """

    id: str
    title: str
    source: Source
    severity: Severity
    cases: Callable[[Build, Any], Iterable[Case]]
    holds: str = "<="
    remedy: str = ""
    jurisdictions: tuple[Jurisdiction, ...] = EVERYWHERE

    def __post_init__(self) -> None:
        """Refuse a stop that rests on something nobody has read."""
        if self.severity is Severity.STOP and self.source.status is not Status.READ:
            raise OutOfRange(
                "severity", "stop", "caution or note where the source's status is not read"
            )
        if self.holds not in _HOLDS:
            raise OutOfRange("holds", self.holds, ", ".join(_HOLDS))


@dataclass(frozen=True, kw_only=True, slots=True)
class Finding:
    """One rule applied to one subject.

    Attributes
    ----------
    margin
        In `unit`: how far the value is on the good side of the limit; negative where broken.
    """

    rule: str
    discipline: str
    title: str
    severity: Severity
    outcome: Outcome
    subject: str
    value: float | None
    limit: float | None
    unit: str
    holds: str
    margin: float | None
    missing: str
    detail: str
    remedy: str
    source: Source
    working: Working | None = None
    accepted: Acceptance | None = None


_HOLDS: dict[str, Callable[[float, float], bool]] = {
    "<=": operator.le,
    ">=": operator.ge,
    "<": operator.lt,
    ">": operator.gt,
    "==": operator.eq,
}


def apply_rules(rules: Iterable[Rule], build: Build, result: Any) -> tuple[Finding, ...]:
    """Return the findings of the rules that belong to the build's jurisdiction.

    Parameters
    ----------
    rules
        Of one discipline.
    build
        The build that is judged.
    result
        The discipline's result, handed to each rule's `cases`.

    Returns
    -------
    tuple of Finding
        At least one for each rule: a rule without cases is not applicable.
    """
    findings: list[Finding] = []
    for rule in rules:
        if build.brief.jurisdiction not in rule.jurisdictions:
            continue
        made = [_finding(rule, case, build) for case in rule.cases(build, result)]
        findings.extend(made or [_not_applicable(rule)])
    return tuple(findings)


def broken_stops(findings: Iterable[Finding]) -> Iterator[Finding]:
    """Yield the findings that stop the build."""
    for finding in findings:
        if finding.severity is Severity.STOP and finding.outcome is Outcome.BROKEN:
            yield finding


def _finding(rule: Rule, case: Case, build: Build) -> Finding:
    outcome, margin = _judge(rule.holds, case)
    missing = case.missing or ("the value" if outcome is Outcome.UNKNOWN else "")
    return Finding(
        rule=rule.id,
        discipline=rule.id.split(".")[0],
        title=rule.title,
        severity=rule.severity,
        outcome=outcome,
        subject=case.subject,
        value=case.value,
        limit=case.limit,
        unit=case.unit,
        holds=rule.holds,
        margin=margin,
        missing=missing,
        detail=case.not_applicable or case.detail,
        remedy=rule.remedy,
        source=rule.source,
        working=case.working,
        accepted=_acceptance(rule, case, build) or case.accepted,
    )


def _judge(holds: str, case: Case) -> tuple[Outcome, float | None]:
    if case.not_applicable:
        return Outcome.NOT_APPLICABLE, None
    if case.missing or case.value is None or case.limit is None:
        return Outcome.UNKNOWN, None
    if holds in ("<=", "<"):
        margin = case.limit - case.value
    elif holds == "==":
        margin = -abs(case.limit - case.value)
    else:
        margin = case.value - case.limit
    met = _HOLDS[holds](case.value, case.limit)
    return (Outcome.MET if met else Outcome.BROKEN), margin


def _acceptance(rule: Rule, case: Case, build: Build) -> Acceptance | None:
    for decision in build.decisions:
        if decision.rule == rule.id and decision.subject in ("", case.subject):
            return Acceptance(role=decision.role, reason=decision.reason)
    return None


def _not_applicable(rule: Rule) -> Finding:
    return Finding(
        rule=rule.id,
        discipline=rule.id.split(".")[0],
        title=rule.title,
        severity=rule.severity,
        outcome=Outcome.NOT_APPLICABLE,
        subject="",
        value=None,
        limit=None,
        unit="1",
        holds=rule.holds,
        margin=None,
        missing="",
        detail="",
        remedy=rule.remedy,
        source=rule.source,
    )
