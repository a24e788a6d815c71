"""Decide on a finding of a build that lies on the bench: accept it with a reason, or no longer."""

import datetime

from coachwright.actions.accepting import acceptable
from coachwright.actions.benching import OnBench
from coachwright.errors import BuildFileError, CallError, Fault
from coachwright.model.build import Decision
from coachwright.model.finding import Finding, Outcome
from coachwright.store.edits import Put, Take
from coachwright.store.records import Change

_LIST = "decisions"


def open_to_accept(finding: Finding) -> bool:
    """Return whether somebody may accept a finding: it is broken or unknown, and nobody has."""
    return finding.accepted is None and finding.outcome in (Outcome.BROKEN, Outcome.UNKNOWN)


def acceptance(
    work: OnBench, finding: Finding, *, role: str, reason: str, date: datetime.date
) -> Change:
    """Return the edit that accepts a finding; the stop or caution stays broken all the same.

    Parameters
    ----------
    work
        The build.
    finding
        One of its findings.
    role
        Who accepts: what they are in the shop, not their name.
    reason
        Why.
    date
        The day.

    Raises
    ------
    BuildFileError
        Where role or reason is empty.
    CallError
        Where the finding is neither broken nor unknown, or was accepted already.
    """
    said = {"your role": role.strip(), "the reason": reason.strip()}
    faults = tuple(_empty(field) for field, text in said.items() if not text)
    if faults:
        raise BuildFileError(faults)
    decision = Decision(
        rule=finding.rule,
        subject=finding.subject,
        role=role.strip(),
        reason=reason.strip(),
        date=date,
    )
    acceptable(work.assessment.findings, decision)
    value = decision.model_dump(by_alias=True, exclude_none=True, exclude_defaults=True)
    return (Put(path=(_LIST, len(work.sheet.decisions)), value=value),)


def withdrawal(work: OnBench, finding: Finding) -> Change:
    """Return the edit that takes an acceptance of a finding out of the sheet again.

    Raises
    ------
    CallError
        Where no decision of the sheet is about this finding alone.
    """
    for place, decision in enumerate(work.sheet.decisions):
        if (decision.rule, decision.subject) == (finding.rule, finding.subject):
            return (Take(path=(_LIST, place)),)
    raise CallError("this was not accepted by a decision about this alone; edit the build sheet")


def _empty(field: str) -> Fault:
    return Fault(
        file="the decision",
        field=field,
        found="nothing",
        allowed="words",
        action="say who accepts this, and why it may stay so",
    )
