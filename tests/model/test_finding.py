"""Comparison, margin and outcome are made in one place; unknown is never met."""

from collections.abc import Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import (
    Acceptance,
    Case,
    Finding,
    Outcome,
    Rule,
    Severity,
    Source,
    Status,
    apply_rules,
    broken_stops,
)
from tests.support.builds import build

READ = Source(key="a-standard", clause="1.2", edition="2020")
BUILD = build()


def _rule(
    *cases: Case,
    holds: str = "<=",
    severity: Severity = Severity.STOP,
    jurisdictions: tuple[Jurisdiction, ...] = tuple(Jurisdiction),
) -> Rule:
    def made(_build: Build, _result: object) -> Iterator[Case]:
        yield from cases

    return Rule(
        id="weights.axle-within-rating",
        title="An axle carries no more than its rating",
        source=READ,
        severity=severity,
        cases=made,
        holds=holds,
        remedy="move mass to the other axle",
        jurisdictions=jurisdictions,
    )


def _case(value: float | None, limit: float | None, missing: str = "") -> Case:
    return Case(subject="rear axle", value=value, limit=limit, unit="kg", missing=missing)


def _one(rule: Rule, on: Build = BUILD) -> Finding:
    (finding,) = apply_rules((rule,), on, None)
    return finding


JUDGED = (
    # holds, value, limit, outcome, margin: positive on the good side
    ("<=", 1900.0, 2000.0, Outcome.MET, 100.0),
    ("<=", 2000.0, 2000.0, Outcome.MET, 0.0),
    ("<=", 2010.0, 2000.0, Outcome.BROKEN, -10.0),
    ("<", 2000.0, 2000.0, Outcome.BROKEN, 0.0),
    ("<", 1999.0, 2000.0, Outcome.MET, 1.0),
    (">=", 2000.0, 2000.0, Outcome.MET, 0.0),
    (">=", 1990.0, 2000.0, Outcome.BROKEN, -10.0),
    (">", 2000.0, 2000.0, Outcome.BROKEN, 0.0),
    (">", 2001.0, 2000.0, Outcome.MET, 1.0),
    ("==", 2.0, 2.0, Outcome.MET, 0.0),
    ("==", 3.0, 2.0, Outcome.BROKEN, -1.0),
    ("==", 1.0, 2.0, Outcome.BROKEN, -1.0),
)


@pytest.mark.parametrize(("holds", "value", "limit", "outcome", "margin"), JUDGED)
def test_value_and_limit_are_compared_as_the_rule_says(
    holds: str, value: float, limit: float, outcome: Outcome, margin: float
) -> None:
    finding = _one(_rule(_case(value, limit), holds=holds))
    assert (finding.outcome, finding.margin) == (outcome, margin)
    assert finding.missing == ""


@pytest.mark.parametrize(
    ("case", "missing"),
    [
        (_case(1.0, 2.0, "the load index"), "the load index"),
        (_case(None, 2.0), "the value"),
        (_case(1.0, None), "the value"),
        (_case(None, None, "the axle rating"), "the axle rating"),
    ],
)
def test_what_is_missing_makes_it_unknown_and_never_met(case: Case, missing: str) -> None:
    finding = _one(_rule(case))
    assert finding.outcome is Outcome.UNKNOWN
    assert finding.margin is None
    assert finding.missing == missing


def test_a_rule_without_cases_is_not_applicable() -> None:
    finding = _one(_rule())
    assert finding.outcome is Outcome.NOT_APPLICABLE
    assert (finding.value, finding.limit, finding.margin) == (None, None, None)


def test_a_finding_carries_all_that_is_needed_to_show_it() -> None:
    finding = _one(_rule(_case(2010.0, 2000.0)))
    assert finding.rule == "weights.axle-within-rating"
    assert finding.discipline == "weights"
    assert finding.title == "An axle carries no more than its rating"
    assert finding.subject == "rear axle"
    assert finding.source == READ
    assert finding.remedy == "move mass to the other axle"
    assert (finding.unit, finding.holds) == ("kg", "<=")


def test_a_rule_of_elsewhere_gives_no_finding() -> None:
    rule = _rule(_case(2.0, 1.0), jurisdictions=(Jurisdiction.US,))
    assert apply_rules((rule,), BUILD, None) == ()
    here = build({"brief.jurisdiction": "us"})
    assert _one(rule, here).outcome is Outcome.BROKEN


DECISION = {"rule": "weights.axle-within-rating", "role": "lead fitter", "reason": "tested"}


@pytest.mark.parametrize(
    ("decision", "accepted"),
    [
        (DECISION, True),
        (DECISION | {"subject": "rear axle"}, True),
        (DECISION | {"subject": "front axle"}, False),
        (DECISION | {"rule": "weights.other"}, False),
    ],
)
def test_a_decision_explains_a_stop_and_leaves_it_broken(
    decision: dict[str, str], accepted: bool
) -> None:
    finding = _one(_rule(_case(2010.0, 2000.0)), build({"decisions": [decision]}))
    assert finding.outcome is Outcome.BROKEN
    assert list(broken_stops([finding])) == [finding]
    expected = Acceptance(role="lead fitter", reason="tested") if accepted else None
    assert finding.accepted == expected


def test_one_thing_may_be_not_applicable_with_its_reason() -> None:
    case = Case(
        subject="galley",
        value=120.0,
        limit=1.0,
        unit="mm",
        detail="drawer: blocked by fridge",
        not_applicable="drawer: given up by designer: opens half",
    )
    finding = _one(_rule(case))
    assert (finding.outcome, finding.margin) == (Outcome.NOT_APPLICABLE, None)
    assert finding.detail == "drawer: given up by designer: opens half"
    assert (finding.subject, finding.value) == ("galley", 120.0)


def test_a_case_may_say_who_accepted_it_beforehand() -> None:
    waived = Acceptance(role="designer", reason="one exit is enough")
    finding = _one(_rule(Case(subject="door", value=2.0, limit=1.0, unit="mm", accepted=waived)))
    assert (finding.outcome, finding.accepted) == (Outcome.BROKEN, waived)


def test_only_broken_stops_stop() -> None:
    findings = apply_rules(
        (
            _rule(_case(2.0, 1.0)),
            _rule(_case(1.0, 2.0)),
            _rule(_case(None, 1.0)),
            _rule(),
            _rule(_case(2.0, 1.0), severity=Severity.CAUTION),
            _rule(_case(2.0, 1.0), severity=Severity.NOTE),
        ),
        BUILD,
        None,
    )
    assert list(broken_stops(findings)) == [findings[0]]


@pytest.mark.parametrize("status", [Status.MEMORY, Status.PRACTICE])
def test_a_stop_cannot_rest_on_what_nobody_has_read(status: Status) -> None:
    source = Source(key="a-standard", status=status)
    with pytest.raises(OutOfRange, match="caution or note where the source's status is not read"):
        Rule(id="a.b", title="t", source=source, severity=Severity.STOP, cases=lambda *_: ())
    for severity in (Severity.CAUTION, Severity.NOTE):
        Rule(id="a.b", title="t", source=source, severity=severity, cases=lambda *_: ())


def test_a_rule_cannot_compare_in_a_way_that_does_not_exist() -> None:
    with pytest.raises(OutOfRange, match="holds is =<"):
        _rule(holds="=<")


@given(st.floats(-1e6, 1e6), st.floats(-1e6, 1e6), st.sampled_from(["<=", ">=", "<", ">", "=="]))
def test_the_margin_is_negative_only_where_the_rule_is_broken(
    value: float, limit: float, holds: str
) -> None:
    finding = _one(_rule(_case(value, limit), holds=holds))
    assert finding.margin is not None
    if finding.margin > 0:
        assert finding.outcome is Outcome.MET
    if finding.margin < 0:
        assert finding.outcome is Outcome.BROKEN
    assert finding.outcome in (Outcome.MET, Outcome.BROKEN)
