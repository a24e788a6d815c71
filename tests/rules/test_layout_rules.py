"""Every case of every layout rule, for the law that counts them."""

from tests.rules.test_layout_core_rules import CASES as CORE_CASES
from tests.rules.test_layout_interior_rules import CASES as INTERIOR_CASES
from tests.rules.test_layout_outside_rules import CASES as OUTSIDE_CASES
from tests.support.rule_cases import RuleCase

CASES: tuple[RuleCase, ...] = (*CORE_CASES, *INTERIOR_CASES, *OUTSIDE_CASES)


def test_no_case_stands_twice() -> None:
    assert all(CASES.count(case) == 1 for case in CASES)
