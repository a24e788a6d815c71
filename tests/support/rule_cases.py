"""Rule cases as data: for each rule and outcome, a change to the small build that brings it."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from coachwright.model.build import Build, OptionConflict
from coachwright.model.finding import Finding, Outcome, Rule, apply_rules
from tests.support.builds import Data
from tests.support.builds import build as build_with


@dataclass(frozen=True, kw_only=True)
class RuleCase:
    """One rule, one change to the small build, and the outcome that must come of it.

    Attributes
    ----------
    changes
        For `tests.support.builds.build`; the jurisdiction is among them where it matters.
    conflicts
        Of the options that were chosen.
    subject
        The finding's subject, where the rule has several cases.
    value, limit
        Checked to 1e-6 relative where given: a hand calculation, said in `why`.
    result
        The discipline's result, instead of what the stage makes of the build.
    """

    rule: str
    outcome: Outcome
    changes: Data = field(default_factory=dict)
    conflicts: tuple[OptionConflict, ...] = ()
    subject: str = ""
    value: float | None = None
    limit: float | None = None
    why: str = ""
    result: Any = None


def finding_of(case: RuleCase, rules: tuple[Rule, ...], stage: Callable[[Build], Any]) -> Finding:
    """Return the finding that a case is about."""
    made = build_with(case.changes, case.conflicts)
    result = stage(made) if case.result is None else case.result
    findings = [
        finding
        for finding in apply_rules(rules, made, result)
        if finding.rule == case.rule and case.subject in ("", finding.subject)
    ]
    assert findings, f"{case.rule} gave no finding for {case.subject!r}"
    matching = [finding for finding in findings if finding.outcome is case.outcome]
    assert matching, f"{case.rule}: {[(f.subject, f.outcome, f.value, f.limit) for f in findings]}"
    return matching[0]
