"""Each rule of the electrics, with every outcome that it can have."""

import pytest

from coachwright.electrics.rules import RULES
from coachwright.electrics.stage import stage
from coachwright.model.finding import Outcome
from tests.rules.electrics_bank_cases import BANK_CASES
from tests.rules.electrics_charging_cases import CHARGING_CASES
from tests.rules.electrics_inverter_cases import INVERTER_CASES
from tests.support.rule_cases import RuleCase, finding_of

CASES: tuple[RuleCase, ...] = (*BANK_CASES, *INVERTER_CASES, *CHARGING_CASES)


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.rule} {case.outcome}")
def test_a_rule_comes_out_as_it_should(case: RuleCase) -> None:
    finding = finding_of(case, RULES, stage)
    if case.value is not None:
        assert finding.value == pytest.approx(case.value, rel=1e-6), case.why
    if case.limit is not None:
        assert finding.limit == pytest.approx(case.limit, rel=1e-6), case.why


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.rule} {case.outcome}")
def test_unknown_says_what_is_missing(case: RuleCase) -> None:
    finding = finding_of(case, RULES, stage)
    assert bool(finding.missing) == (case.outcome is Outcome.UNKNOWN)


def test_every_rule_has_a_case_of_met_and_of_broken() -> None:
    seen = {(case.rule, case.outcome) for case in CASES}
    for rule in RULES:
        assert (rule.id, Outcome.MET) in seen, rule.id
        assert (rule.id, Outcome.BROKEN) in seen, rule.id
