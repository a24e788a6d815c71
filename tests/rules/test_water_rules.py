"""Each rule of the water and gas services, with every outcome that it can have."""

import pytest

from coachwright.model.finding import Outcome
from coachwright.water.rules import RULES
from coachwright.water.stage import stage
from tests.rules.gas_cases import ALARMS, LOCKERS, VENTS
from tests.rules.water_cases import DAYS, FROST, SUPPLY
from tests.support.rule_cases import RuleCase, finding_of

CASES: tuple[RuleCase, ...] = (*DAYS, *FROST, *SUPPLY, *LOCKERS, *ALARMS, *VENTS)


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
