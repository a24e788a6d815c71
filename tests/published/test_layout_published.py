"""Shares of people against counts in the survey's own data file."""

from dataclasses import dataclass

import pytest

from coachwright.layout.people import percentile_mm, suits_up_to

ANSUR = (
    "ANSUR II, 2012 Anthropometric Survey of U.S. Army Personnel, public data file: "
    "4,082 men and 1,986 women, counted"
)
BETWEEN_PERCENTILES = 0.006
"""The table keeps 11 percentiles; between them the normal score is taken as linear."""


@dataclass(frozen=True, kw_only=True)
class Counted:
    """People whose stature is at most a length."""

    length_mm: float
    men_frac: float
    women_frac: float
    why: str
    source: str = ANSUR
    within: float = BETWEEN_PERCENTILES


COUNTED = (
    Counted(length_mm=1800, men_frac=0.7457, women_frac=0.9960, why="1830 mm less 30 mm shoes"),
    Counted(length_mm=1830, men_frac=0.8628, women_frac=1.0, why="bed of 1830 mm"),
    Counted(length_mm=1900, men_frac=0.9787, women_frac=1.0, why="bed of 1900 mm"),
)


@pytest.mark.parametrize("case", COUNTED, ids=lambda case: case.why)
def test_the_share_is_what_was_counted(case: Counted) -> None:
    found = suits_up_to(dimension="stature", length_mm=case.length_mm)
    assert found.men_frac == pytest.approx(case.men_frac, abs=case.within)
    assert found.women_frac == pytest.approx(case.women_frac, abs=case.within)


def test_two_shoulders_across_a_bed() -> None:
    # ANSUR II: 95th percentile man 567 mm, woman 499 mm
    across = sum(
        percentile_mm(dimension="shoulder breadth", sex=sex, percentile="p95")
        for sex in ("men", "women")
    )
    assert across == 1066
