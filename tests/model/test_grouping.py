"""One case stands for all that are met; what is broken or unknown is told one by one."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.model.finding import Finding, Outcome, Severity, Source
from coachwright.model.grouping import grouped

_MADE = Finding(
    rule="layout.aisle-wide-enough",
    discipline="layout",
    title="The way is wide enough",
    severity=Severity.STOP,
    outcome=Outcome.MET,
    subject="",
    value=None,
    limit=None,
    unit="mm",
    holds=">=",
    margin=None,
    missing="",
    detail="",
    remedy="",
    source=Source(key="a-standard"),
)


def _finding(
    subject: str,
    margin: float | None,
    *,
    rule: str = "layout.aisle-wide-enough",
    outcome: Outcome = Outcome.MET,
    unit: str = "mm",
) -> Finding:
    return replace(_MADE, subject=subject, margin=margin, rule=rule, outcome=outcome, unit=unit)


def test_the_smallest_margin_stands_for_all() -> None:
    (group,) = grouped([_finding("hip", 90), _finding("shoulder", 12), _finding("floor", 40)])
    assert group.nearest.subject == "shoulder"
    assert [other.subject for other in group.others] == ["hip", "floor"]
    assert group.more == 2


def test_of_equal_margins_the_first_stands_for_all() -> None:
    (group,) = grouped([_finding("hip", 12), _finding("shoulder", 12)])
    assert group.nearest.subject == "hip"


def test_margins_in_different_units_are_not_compared() -> None:
    groups = grouped([_finding("hip", 90), _finding("roof", 2, unit="kg"), _finding("foot", 80)])
    assert [(g.nearest.subject, g.more) for g in groups] == [("foot", 1), ("roof", 0)]


def test_a_rule_met_here_and_not_judged_there_makes_two_groups() -> None:
    idle = Outcome.NOT_APPLICABLE
    groups = grouped(
        [_finding("hip", 90), _finding("a", None, outcome=idle), _finding("b", None, outcome=idle)]
    )
    assert [(g.nearest.subject, g.more) for g in groups] == [("hip", 0), ("a", 1)]


@pytest.mark.parametrize("outcome", [Outcome.BROKEN, Outcome.UNKNOWN])
def test_what_is_broken_or_unknown_stays_alone(outcome: Outcome) -> None:
    found = [_finding(name, -1, outcome=outcome) for name in ("hip", "shoulder")]
    assert [group.nearest for group in grouped(found)] == found


def test_a_case_without_margin_never_stands_for_one_that_has_one() -> None:
    (group,) = grouped([_finding("hip", None), _finding("shoulder", 800)])
    assert group.nearest.subject == "shoulder"


def test_groups_stand_where_their_first_finding_stood() -> None:
    groups = grouped([_finding("a", 3), _finding("b", 2, rule="road.x"), _finding("c", 1)])
    assert [group.nearest.subject for group in groups] == ["c", "b"]


FINDINGS = st.lists(
    st.builds(
        _finding,
        st.text("abc", max_size=2),
        st.none() | st.floats(-9, 9),
        rule=st.sampled_from(["road.x", "road.y"]),
        outcome=st.sampled_from(Outcome),
        unit=st.sampled_from(["mm", "kg"]),
    )
)


@given(FINDINGS)
def test_every_finding_is_in_exactly_one_group(found: list[Finding]) -> None:
    groups = grouped(found)
    kept = [finding for group in groups for finding in (group.nearest, *group.others)]
    assert sorted(map(id, kept)) == sorted(map(id, found))
    for group in groups:
        for other in group.others:
            assert other.margin is None or (group.nearest.margin or 0.0) <= other.margin
