"""Accept a finding: someone named by role gives a reason, and the build file keeps it."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from coachwright.actions.files import write_text
from coachwright.actions.opening import open_build
from coachwright.actions.writing import text_with_decision
from coachwright.assess import RULES, Almanac, assess
from coachwright.catalogue.loading import Catalogue, parse_toml
from coachwright.errors import BuildFileError, CallError, CannotWrite, UnknownName
from coachwright.model.build import BuildSheet, Decision
from coachwright.model.finding import Finding, Outcome
from coachwright.model.reading import read_record


def accept(
    path: Path,
    catalogue: Catalogue,
    words: Mapping[str, Any],
    almanac: Almanac | None = None,
) -> tuple[Finding, ...]:
    """Add a decision to a build file, whose comments stay; return the findings it is about.

    Parameters
    ----------
    path
        The build file.
    catalogue
        Where its vehicle and parts are.
    words
        The decision's fields as a file spells them: rule, subject, role, reason, date.
    almanac
        Of the weather; without one there are no years.

    Raises
    ------
    BuildFileError
        Where the file or the decision has faults.
    UnknownName
        Where there is no such rule, or none of its findings is about the subject.
    CallError
        Where the rule is not broken there, or was accepted already.
    CannotWrite
        Where the file cannot be written; it is then as it was.
    """
    decision, faults = read_record(Decision, words, "the decision")
    if decision is None:
        raise BuildFileError(faults)
    opened = open_build(path, catalogue)
    findings = acceptable(assess(opened.build, almanac=almanac).findings, decision)
    edited = text_with_decision(path.read_text(encoding="utf-8-sig"), decision)
    wanted = opened.sheet.model_copy(update={"decisions": (*opened.sheet.decisions, decision)})
    data, _ = parse_toml(edited, str(path))
    read, _ = (None, ()) if data is None else read_record(BuildSheet, data, str(path))
    if read != wanted:
        raise CannotWrite(f"{path}: the decision does not fit into the file; write it by hand")
    write_text(path, edited)
    return findings


def acceptable(findings: tuple[Finding, ...], decision: Decision) -> tuple[Finding, ...]:
    """Return the findings that a decision accepts.

    Raises
    ------
    UnknownName
        Where there is no such rule, or none of its findings is about the subject.
    CallError
        Where the rule is not broken there, or was accepted already.
    """
    of_rule = [finding for finding in findings if finding.rule == decision.rule]
    if not of_rule:
        known = [rule.id for rules in RULES.values() for rule in rules]
        raise UnknownName("rule", decision.rule, known)
    subjects = [finding.subject for finding in of_rule]
    if decision.subject and decision.subject not in subjects:
        raise UnknownName(f"subject of {decision.rule}", decision.subject, subjects)
    broken = tuple(
        finding
        for finding in of_rule
        if finding.outcome in (Outcome.BROKEN, Outcome.UNKNOWN)
        and decision.subject in ("", finding.subject)
    )
    if not broken:
        raise CallError(f"{decision.rule} is neither broken nor unknown; nothing to accept")
    if all(finding.accepted is not None for finding in broken):
        raise CallError(f"{decision.rule} is accepted already: {broken[0].accepted}")
    return broken
