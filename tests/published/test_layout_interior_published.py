"""Figures about people inside against published rules and counts."""

from dataclasses import dataclass

import pytest

from coachwright.layout.stage import stage
from coachwright.layout.steps import stair
from coachwright.reference import limit
from tests.support.builds import build
from tests.support.vans import holding


@dataclass(frozen=True, kw_only=True)
class Climb:
    """A floor above the ground, and the equal steps up to it."""

    limit_id: str
    most_riser_in: float
    count: int
    riser_mm: float
    source: str
    height_mm: float = 620.0
    within: float = 1e-3


CLIMBS = (
    Climb(
        limit_id="layout.riser-stair",
        most_riser_in=9.5,
        count=3,
        riser_mm=206.7,
        source="29 CFR 1910.25(c): riser at most 9.5 in; n = ceil(620 / 241)",
    ),
    Climb(
        limit_id="layout.riser-accessible",
        most_riser_in=7,
        count=4,
        riser_mm=155.0,
        source="ADA standards 504.2: riser at most 7 in; hand calculation",
        within=1e-9,
    ),
)


@pytest.mark.parametrize("case", CLIMBS, ids=lambda case: case.source)
def test_the_steps_are_as_many_as_the_rule_makes_them(case: Climb) -> None:
    most_mm = limit(case.limit_id).value
    assert most_mm == pytest.approx(case.most_riser_in * 25.4)
    found = stair(height_mm=case.height_mm, most_riser_mm=most_mm)
    assert found.count == case.count
    assert found.riser_mm == pytest.approx(case.riser_mm, rel=case.within)


ANSUR = (
    "ANSUR II, 2012 Anthropometric Survey of U.S. Army Personnel, public data file, counted: "
    "clear height 1900 mm and shoes of 30 mm suit 95.12 % of men and all women"
)
BETWEEN_PERCENTILES = 0.006
"""The table keeps 11 percentiles; between them the normal score is taken as linear."""


def test_a_clear_height_of_1900_mm_suits_whom_the_survey_counts() -> None:
    figures = {figure.name: figure.value for figure in stage(build(holding(doors=True))).figures}
    assert figures["layout.headroom"] == 1900
    assert figures["layout.headroom-suits-men"] == pytest.approx(
        0.9512, abs=BETWEEN_PERCENTILES
    ), ANSUR
    assert figures["layout.headroom-suits-women"] == pytest.approx(1.0, abs=BETWEEN_PERCENTILES), (
        ANSUR
    )


@pytest.mark.parametrize(
    ("limit_id", "inches", "source"),
    [
        ("layout.escape-short", 17, "NFPA 1192-2018, exit window 17 x 24 in, as quoted"),
        ("layout.escape-long", 24, "NFPA 1192-2018, exit window 17 x 24 in, as quoted"),
        ("layout.exit-near", 24, "NFPA 1192-2018 6.2.1.3, as quoted"),
        ("layout.toilet-seat-low", 17, "ADA standards 604.4"),
        ("layout.toilet-seat-high", 19, "ADA standards 604.4"),
        ("layout.toilet-side", 16, "ADA standards 604.2"),
        ("layout.worktop-accessible", 34, "ADA standards 902.3"),
        ("layout.table-knees", 27, "ADA standards 306.3"),
        ("layout.step-needed", 19, "29 CFR 1926.1051(a)"),
    ],
)
def test_a_limit_is_the_rule_s_own_figure_in_inches(
    limit_id: str, inches: float, source: str
) -> None:
    assert limit(limit_id).value == pytest.approx(inches * 25.4), source
