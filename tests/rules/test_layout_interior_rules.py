"""Each rule about people inside, with every outcome that it can have; all figures by hand."""

import pytest

from coachwright.layout.rules_interior import INTERIOR_RULES
from coachwright.layout.stage import stage
from coachwright.model.finding import Outcome, Rule
from tests.rules.layout_interior_cases import PEOPLE_CASES
from tests.rules.layout_safety_cases import SAFETY_CASES
from tests.support.rule_cases import RuleCase, finding_of

CASES: tuple[RuleCase, ...] = (*PEOPLE_CASES, *SAFETY_CASES)


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.rule} {case.outcome}")
def test_a_rule_comes_out_as_it_should(case: RuleCase) -> None:
    finding = finding_of(case, INTERIOR_RULES, stage)
    if case.value is not None:
        assert finding.value == pytest.approx(case.value), case.why
    if case.limit is not None:
        assert finding.limit == pytest.approx(case.limit), case.why
    assert bool(finding.missing) == (case.outcome is Outcome.UNKNOWN)


@pytest.mark.parametrize("rule", INTERIOR_RULES, ids=lambda rule: rule.id)
def test_a_rule_has_a_case_for_each_outcome(rule: Rule) -> None:
    outcomes = {case.outcome for case in CASES if case.rule == rule.id}
    assert {Outcome.MET, Outcome.BROKEN} <= outcomes
