"""Each rule of what stands where, with every outcome that it can have; all figures by hand."""

from typing import Any

import pytest

from coachwright.layout.rules import RULES
from coachwright.layout.stage import stage
from coachwright.model.finding import Outcome
from tests.rules.layout_zone_cases import ZONE_CASES
from tests.support.builds import Data
from tests.support.rule_cases import RuleCase, finding_of
from tests.support.vans import holding, thing

MET, BROKEN = Outcome.MET, Outcome.BROKEN
UNKNOWN, NOT_APPLICABLE = Outcome.UNKNOWN, Outcome.NOT_APPLICABLE

LOW = (500.0, 400.0, 500.0)
WALL: Data = {"mounting": "wall"}
RACK_SIZE = (700.0, 1200.0, 700.0)


def box(x: float, y: float, z: float = 0.0, **fields: Any) -> tuple[Data, Data]:
    return thing("box", LOW, (x, y, z), **fields)


SHELL = (
    RuleCase(
        rule="layout.inside-shell",
        outcome=MET,
        changes=holding(box(2000, -200)),
        value=0,
        limit=1,
    ),
    RuleCase(
        rule="layout.inside-shell",
        outcome=BROKEN,
        changes=holding(box(2000, 530)),
        value=30,
        why="530 + 400 - 900 mm at the floor",
    ),
    RuleCase(
        rule="layout.inside-shell",
        outcome=BROKEN,
        changes=holding(thing("box", LOW, (2000, -900, 1000), **WALL)),
        value=67.5,
        why="half width at 1500 mm: 920 - 140 · 500 / 800 = 832.5 mm",
    ),
    RuleCase(
        rule="layout.inside-shell",
        outcome=BROKEN,
        changes=holding(box(4300, -200)),
        value=50,
        why="4300 + 500 - 4750 mm at the rear doors",
    ),
    RuleCase(rule="layout.inside-shell", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.inside-shell",
        outcome=NOT_APPLICABLE,
        changes=holding(box(600, 0, mounting="cab")),
        why="the cab's shape is not in the record",
    ),
    RuleCase(
        rule="layout.inside-shell",
        outcome=NOT_APPLICABLE,
        changes=holding(
            thing(
                "window",
                (900, 45, 450),
                (2000, -940, 900),
                facets={
                    "opening": {
                        "kind": "window",
                        "clear_width": "800 mm",
                        "clear_height": "400 mm",
                    }
                },
                **WALL,
            )
        ),
        why="a window is let into the wall",
    ),
)
PLACES = (
    RuleCase(
        rule="layout.one-place",
        outcome=MET,
        changes=holding(box(2000, 0), thing("other", LOW, (2500, 0, 0))),
        value=0,
        why="face to face",
    ),
    RuleCase(
        rule="layout.one-place",
        outcome=BROKEN,
        subject="box and other",
        changes=holding(box(2000, 0), thing("other", LOW, (2460, 100, 0))),
        value=40,
        why="2500 - 2460 mm along x; 300 mm across and 500 mm up are more",
    ),
    RuleCase(
        rule="layout.one-place",
        outcome=MET,
        changes=holding(
            box(2000, 0), thing("other", (100, 100, 100), (2100, 100, 100), within="box")
        ),
        why="built into it",
    ),
    RuleCase(rule="layout.one-place", outcome=NOT_APPLICABLE, changes=holding(box(2000, 0))),
    RuleCase(
        rule="layout.wheel-arches",
        outcome=MET,
        changes=holding(box(3700, 300), arches=True),
        why="300 + 400 mm is the inner face",
    ),
    RuleCase(
        rule="layout.wheel-arches",
        outcome=BROKEN,
        subject="box",
        changes=holding(box(3700, 420), arches=True),
        value=120,
        why="420 + 400 - 700 mm inwards; 300 mm up is more",
    ),
    RuleCase(
        rule="layout.wheel-arches",
        outcome=BROKEN,
        changes=holding(thing("box", LOW, (3700, 450, 220), **WALL), arches=True),
        value=80,
        why="300 - 220 mm up; 150 mm inwards is more",
    ),
    RuleCase(
        rule="layout.wheel-arches",
        outcome=MET,
        changes=holding(
            thing(
                "box",
                (500, 400, 500),
                (3700, 450, 0),
                body={
                    "shape": "steps",
                    "steps": [
                        {"from": ["0 mm", "0 mm", "0 mm"], "to": ["500 mm", "250 mm", "500 mm"]},
                        {
                            "from": ["0 mm", "250 mm", "310 mm"],
                            "to": ["500 mm", "400 mm", "500 mm"],
                        },
                    ],
                },
            ),
            arches=True,
        ),
        why="stepped over the arch",
    ),
    RuleCase(rule="layout.wheel-arches", outcome=NOT_APPLICABLE, changes=holding(box(3700, 420))),
)
HELD = (
    RuleCase(rule="layout.supported", outcome=MET, changes=holding(box(2000, 0)), value=0),
    RuleCase(
        rule="layout.supported",
        outcome=BROKEN,
        changes=holding(box(2000, 0, 60)),
        value=60,
        why="60 mm above the floor",
    ),
    RuleCase(
        rule="layout.supported",
        outcome=BROKEN,
        changes=holding(
            box(2000, 0),
            finishes=[{"part": "ply", "surface": "floor", "area": "5 m2"}],
            own_parts=[
                holding(box(2000, 0))["own_parts"][0],
                {
                    "id": "ply",
                    "name": "ply",
                    "body": {"size": ["2500 mm", "1220 mm", "12 mm"], "mass": "20 kg"},
                    "lining": {"density": "0.6 kg/L", "thickness": "12 mm"},
                },
            ],
        )
        | {"fittings.0.at": ["2000 mm", "0 mm", "20 mm"]},
        value=8,
        why="20 - 12 mm above the finished floor",
    ),
    RuleCase(
        rule="layout.supported",
        outcome=BROKEN,
        changes=holding(thing("box", LOW, (2000, -880, 500), **WALL)),
        value=30,
        why="half width 910 mm at 500 mm: 30 mm from the left wall",
    ),
    RuleCase(
        rule="layout.supported",
        outcome=MET,
        changes=holding(thing("box", LOW, ["2000 mm", "against right wall", "500 mm"], **WALL)),
        value=0,
    ),
    RuleCase(
        rule="layout.supported",
        outcome=BROKEN,
        changes=holding(thing("lamp", (100, 100, 20), (2000, 0, 1860), mounting="ceiling")),
        value=20,
        why="1900 - 1860 - 20 mm below the ceiling",
    ),
    RuleCase(
        rule="layout.supported",
        outcome=BROKEN,
        subject="cup",
        changes=holding(box(2000, 0), thing("cup", (80, 80, 100), (2100, 100, 540), on="box")),
        value=40,
        why="540 - 500 mm above what carries it",
    ),
    RuleCase(rule="layout.supported", outcome=NOT_APPLICABLE),
)
OUTSIDE = (
    RuleCase(
        rule="layout.carried-outside",
        outcome=MET,
        changes=holding(thing("panel", (1000, 500, 30), (2000, 0, 2130), mounting="roof")),
        value=40,
        limit=150,
        why="the roof is 2650 - 560 = 2090 mm above the load floor",
    ),
    RuleCase(
        rule="layout.carried-outside",
        outcome=BROKEN,
        changes=holding(thing("panel", (1000, 500, 30), (2000, 0, 2290), mounting="roof")),
        value=200,
    ),
    RuleCase(
        rule="layout.carried-outside",
        outcome=BROKEN,
        changes=holding(thing("rack", RACK_SIZE, (5250, -600, -200), mounting="hitch")),
        value=200,
        why="5250 - 5050 mm behind the hitch point",
    ),
    RuleCase(
        rule="layout.carried-outside",
        outcome=UNKNOWN,
        changes=holding(
            thing("rack", RACK_SIZE, (5100, -600, -200), mounting="hitch"),
        )
        | {"own_vehicle.rear_end.hitch_x": None},
    ),
    RuleCase(rule="layout.carried-outside", outcome=NOT_APPLICABLE, changes=holding(box(2000, 0))),
)
CLOSES_AISLE = thing("block", (500, 1450, 1600), (2600, -900, 0))
"""Leaves 350 mm to the right wall at the floor, and at 1550 mm 823.75 - 550 = 273.75 mm."""
WAYS = (
    RuleCase(
        rule="layout.way-passable",
        outcome=MET,
        subject="cab to sliding door, floor",
        changes=holding(doors=True),
        value=1200,
        limit=330,
        why="the door is narrower than anything else",
    ),
    RuleCase(
        rule="layout.way-passable",
        outcome=BROKEN,
        subject="cab to sliding door, floor",
        changes=holding(thing("block", (1000, 1550, 700), (1400, -900, 0)), doors=True),
        value=(100**2 + 250.4**2) ** 0.5,
        why="from the front edge of the door: block 100 mm further back and 250.4 mm inwards",
    ),
    RuleCase(
        rule="layout.way-passable",
        outcome=NOT_APPLICABLE,
        subject="cab to rear doors",
        changes=holding(CLOSES_AISLE, doors=True),
        why="under 330 mm at shoulder height: furniture closes the way to the rear",
    ),
    RuleCase(rule="layout.way-passable", outcome=NOT_APPLICABLE, why="no doors in the record"),
    RuleCase(
        rule="layout.way-reasonable",
        outcome=MET,
        subject="cab to rear doors, hip",
        changes=holding(doors=True),
        value=1500,
        limit=450,
        why="rear doors",
    ),
    RuleCase(
        rule="layout.way-reasonable",
        outcome=BROKEN,
        subject="cab to rear doors, floor",
        changes=holding(thing("block", (500, 1400, 550), (2600, -900, 0)), doors=True),
        value=400.4,
        why="900 + 20 · 20 / 1000 - 500 mm, at the lower edge of that level",
    ),
    RuleCase(
        rule="layout.way-reasonable",
        outcome=NOT_APPLICABLE,
        subject="sliding door to rear doors",
        changes=holding(CLOSES_AISLE, doors=True),
    ),
    RuleCase(
        rule="layout.escape-aisle",
        outcome=MET,
        subject="cab to sliding door",
        changes=holding(doors=True),
        value=1200,
        limit=450,
    ),
    RuleCase(
        rule="layout.escape-aisle",
        outcome=BROKEN,
        subject="cab to rear doors",
        changes=holding(thing("block", (500, 1400, 550), (2600, -900, 0)), doors=True),
        value=400.4,
    ),
    RuleCase(
        rule="layout.escape-aisle",
        outcome=NOT_APPLICABLE,
        subject="cab to rear doors",
        changes=holding(CLOSES_AISLE, doors=True),
    ),
)

CASES: tuple[RuleCase, ...] = (*SHELL, *PLACES, *HELD, *OUTSIDE, *WAYS, *ZONE_CASES)


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.rule}-{case.outcome}")
def test_a_rule_has_the_outcome_of_its_case(case: RuleCase) -> None:
    finding = finding_of(case, RULES, stage)
    if case.value is not None:
        assert finding.value == pytest.approx(case.value, rel=1e-6, abs=1e-9)
    if case.limit is not None:
        assert finding.limit == pytest.approx(case.limit, rel=1e-6)
