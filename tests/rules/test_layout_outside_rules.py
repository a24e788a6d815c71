"""Each rule of the outside, with every outcome that it can have; all figures by hand."""

import pytest

from coachwright.layout.rules_outside import OUTSIDE_RULES
from coachwright.layout.stage import stage
from tests.rules.layout_around_cases import AROUND_CASES
from tests.rules.layout_rear_cases import REAR_CASES
from tests.rules.layout_roof_cases import ROOF_CASES
from tests.support.rule_cases import RuleCase, finding_of

CASES: tuple[RuleCase, ...] = (*ROOF_CASES, *REAR_CASES, *AROUND_CASES)


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.rule}-{case.outcome}")
def test_a_rule_has_the_outcome_of_its_case(case: RuleCase) -> None:
    finding = finding_of(case, OUTSIDE_RULES, stage)
    if case.value is not None:
        assert finding.value == pytest.approx(case.value, rel=1e-6, abs=1e-9)
    if case.limit is not None:
        assert finding.limit == pytest.approx(case.limit, rel=1e-6)
