"""Cases of the rules about people inside: bringing parts in, headroom, beds, toilet, worktops."""

from typing import Any

from coachwright.model.finding import Outcome
from tests.rules.water_pieces import US
from tests.support.builds import Data
from tests.support.rule_cases import RuleCase
from tests.support.vans import Thing, Triple, access, holding, thing, zone

MET, BROKEN = Outcome.MET, Outcome.BROKEN
UNKNOWN, NOT_APPLICABLE = Outcome.UNKNOWN, Outcome.NOT_APPLICABLE
WALL: Data = {"mounting": "wall"}
TALL: Data = {"brief.travellers.0.stature": "1880 mm"}

BIG: Triple = (2000.0, 1600.0, 600.0)
HUGE: Triple = (2400.0, 1800.0, 1600.0)


def box(name: str, size_mm: Triple, at_mm: Triple, **fields: Any) -> Thing:
    return thing(name, size_mm, at_mm, **fields)


def bed(
    top_mm: float,
    *,
    name: str = "bed",
    length_mm: float = 1900.0,
    width_mm: float = 1300.0,
    x_mm: float = 2850.0,
    berths: int = 2,
    facets: Data | None = None,
    **fields: Any,
) -> Thing:
    """Return a bed of 200 mm along the middle of the van."""
    data: Data = {
        "bed": {"length": f"{length_mm} mm", "width": f"{width_mm} mm", "berths": berths}
    }
    return thing(
        name,
        (length_mm, width_mm, 200.0),
        (x_mm, -width_mm / 2, top_mm - 200.0),
        facets=data | (facets or {}),
        **fields,
    )


LIFT_BED = bed(1900.0, mounting="ceiling")
"""Nothing says how far it comes down."""


def toilet(
    height_mm: float = 480.0, *, knees: bool = True, x_mm: float = 2000.0, **fields: Any
) -> Thing:
    """Return a toilet against the left wall that faces right; its middle is at x + 210 mm."""
    data: Data = {"toilet": {"kind": "cassette", "waste": "18 L"}}
    if knees:
        data |= access(zone("knees", (0, 520, 0), (420, 1070, 1200)))
    return thing("toilet", (420.0, 520.0, height_mm), (x_mm, -900, 0), facets=data, **fields)


def tap(holder: str, kind: str = "tap") -> Thing:
    outlet: Data = {"water_outlet": {"kind": kind, "flow": "5 L/min"}}
    return thing("outlet", (100.0, 100.0, 100.0), (2050, -600, 700), facets=outlet, within=holder)


def galley(height_mm: float) -> tuple[Thing, Thing]:
    cabinet = thing(
        "galley",
        (1200.0, 520.0, height_mm),
        (2000, -900, 0),
        facets={"carcass": {"storage": "100 L"}},
    )
    return cabinet, tap("galley")


def table(top_mm: float, x_mm: float = 2000.0, length_mm: float = 750.0) -> Thing:
    facet: Data = {
        "table": {"height": f"{top_mm} mm", "length": f"{length_mm} mm", "width": "500 mm"}
    }
    return thing("table", (length_mm, 500.0, top_mm), (x_mm, -250, 0), facets=facet)


LOADING = (
    RuleCase(
        rule="layout.part-passes-a-door",
        outcome=MET,
        changes=holding(box("board", BIG, (2000, -800, 0)), doors=True),
        value=150,
        limit=0,
        why="1600 x 600 in the rear doors, 1500 x 1750: 1750 - 1600",
    ),
    RuleCase(
        rule="layout.part-passes-a-door",
        outcome=BROKEN,
        changes=holding(box("block", HUGE, (2000, -800, 0)), doors=True),
        value=-100,
        why="1800 x 1600 in 1500 x 1750: 1500 - 1600",
    ),
    RuleCase(
        rule="layout.part-passes-a-door",
        outcome=UNKNOWN,
        changes=holding(box("board", BIG, (2000, -800, 0))),
        why="the vehicle states no doors",
    ),
    RuleCase(
        rule="layout.part-passes-a-door",
        outcome=NOT_APPLICABLE,
        changes=holding(box("lamp", (90.0, 90.0, 20.0), (2000, 0, 1880)), doors=True),
        why="nothing big",
    ),
    RuleCase(
        rule="layout.part-passes-straight",
        outcome=MET,
        changes=holding(box("board", BIG, (2000, -800, 0)), doors=True),
        value=150,
        limit=20,
        why="600 wide, 1600 high through the rear doors",
    ),
    RuleCase(
        rule="layout.part-passes-straight",
        outcome=BROKEN,
        changes=holding(box("beam", (3650.0, 600.0, 600.0), (1150, -300, 0)), doors=True),
        value=-50,
        why="4750 - 1150 - 3650 mm behind the rear doors",
    ),
    RuleCase(
        rule="layout.part-passes-straight",
        outcome=UNKNOWN,
        changes=holding(box("board", BIG, (2000, -800, 0))),
    ),
    RuleCase(
        rule="layout.part-passes-straight",
        outcome=NOT_APPLICABLE,
        changes=holding(box("block", HUGE, (2000, -800, 0)), doors=True),
        why="it passes no door at all, which is another rule's",
    ),
    RuleCase(
        rule="layout.loading-order",
        outcome=MET,
        changes=holding(box("board", BIG, (2000, -800, 0)), doors=True),
        value=0,
        limit=0,
    ),
    RuleCase(
        rule="layout.loading-order",
        outcome=BROKEN,
        changes=holding(
            box("block", (3500.0, 1700.0, 1850.0), (1200, -850, 0)),
            box("cube", (500.0, 500.0, 500.0), (2000, 0, 0)),
            doors=True,
        ),
        subject="cube",
        value=1,
        why="what can never be taken out fills both doors",
    ),
    RuleCase(
        rule="layout.loading-order",
        outcome=UNKNOWN,
        changes=holding(box("board", BIG, (2000, -800, 0))),
    ),
    RuleCase(rule="layout.loading-order", outcome=NOT_APPLICABLE, changes=holding(doors=True)),
)

BEAM_ACROSS = box("beam", (100.0, 1800.0, 200.0), (1160, -900, 1600), **WALL)

HEADROOM = (
    RuleCase(
        rule="layout.stands-upright",
        outcome=MET,
        changes=holding(doors=True),
        subject="ben",
        value=1900,
        limit=1840,
        why="1810 mm and shoes of 30 mm under the ceiling at 1900 mm",
    ),
    RuleCase(
        rule="layout.stands-upright",
        outcome=BROKEN,
        changes=holding(doors=True) | TALL,
        subject="ada",
        limit=1910,
        why="1880 + 30 mm",
    ),
    RuleCase(rule="layout.stands-upright", outcome=UNKNOWN, why="the vehicle states no doors"),
    RuleCase(
        rule="layout.headroom-way",
        outcome=MET,
        changes=holding(doors=True),
        subject="cab to sliding door",
        value=1900,
        limit=1840,
    ),
    RuleCase(
        rule="layout.headroom-way",
        outcome=BROKEN,
        changes=holding(BEAM_ACROSS, doors=True),
        subject="cab to sliding door",
        value=1600,
        why="underside of the beam",
    ),
    RuleCase(
        rule="layout.headroom-way",
        outcome=NOT_APPLICABLE,
        changes=holding(box("wall", (100.0, 1800.0, 1200.0), (1160, -900, 0)), doors=True),
        subject="cab to sliding door",
        why="closed from the floor up",
    ),
)

BEDS = (
    RuleCase(
        rule="layout.sleeper-length",
        outcome=MET,
        changes=holding(bed(800.0)),
        subject="ben",
        value=1900,
        limit=1810,
    ),
    RuleCase(
        rule="layout.sleeper-length",
        outcome=BROKEN,
        changes=holding(bed(800.0, length_mm=1750.0)),
        subject="ben",
    ),
    RuleCase(
        rule="layout.sleeper-length",
        outcome=MET,
        changes=holding(
            bed(800.0, name="short", length_mm=1720.0, berths=1),
            bed(500.0, name="long", length_mm=1850.0, berths=1),
        ),
        subject="ben",
        value=1850,
        why="the tall one lies in the long bed",
    ),
    RuleCase(rule="layout.sleeper-length", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.bed-shoulders",
        outcome=MET,
        changes=holding(bed(800.0)),
        value=1300,
        limit=1134,
        why="2 x 567 mm, the 95th percentile of men (ANSUR II)",
    ),
    RuleCase(
        rule="layout.bed-shoulders",
        outcome=BROKEN,
        changes=holding(bed(800.0, width_mm=1100.0)),
        value=1100,
    ),
    RuleCase(
        rule="layout.bed-shoulders",
        outcome=MET,
        changes=holding(bed(800.0, width_mm=1000.0))
        | {
            "brief.travellers.0.shoulder_breadth": "450 mm",
            "brief.travellers.1.shoulder_breadth": "500 mm",
        },
        limit=950,
        why="as measured",
    ),
    RuleCase(
        rule="layout.bed-shoulders",
        outcome=BROKEN,
        changes=holding(bed(800.0, width_mm=1000.0))
        | {
            "brief.travellers.0.child": True,
            "brief.travellers.0.stature": "1404 mm",
        },
        limit=567 * 1.8,
        why="a child of 0.8 times the middle man's 1755 mm has 0.8 times 567 mm",
    ),
    RuleCase(rule="layout.bed-shoulders", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.bed-sitting",
        outcome=MET,
        changes=holding(bed(800.0)),
        value=1100,
        limit=977,
        why="1900 - 800 mm; P95 of men (ANSUR II)",
    ),
    RuleCase(
        rule="layout.bed-sitting",
        outcome=BROKEN,
        changes=holding(bed(1000.0)),
        value=900,
    ),
    RuleCase(
        rule="layout.bed-sitting",
        outcome=MET,
        changes=holding(bed(1000.0))
        | {
            "brief.travellers.0.sitting_height": "850 mm",
            "brief.travellers.1.sitting_height": "890 mm",
        },
        limit=890,
        why="the taller of the two, as measured",
    ),
    RuleCase(rule="layout.bed-sitting", outcome=UNKNOWN, changes=holding(LIFT_BED)),
    RuleCase(rule="layout.bed-sitting", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.bunk-clearance",
        outcome=MET,
        changes=holding(bed(400.0, name="lower"), bed(1200.0, name="upper")),
        subject="lower",
        value=600,
        limit=500,
        why="underside at 1000 mm less 400 mm",
    ),
    RuleCase(
        rule="layout.bunk-clearance",
        outcome=BROKEN,
        changes=holding(bed(400.0, name="lower"), bed(1000.0, name="upper")),
        subject="lower",
        value=400,
    ),
    RuleCase(
        rule="layout.bunk-clearance",
        outcome=UNKNOWN,
        changes=holding(bed(400.0, name="lower"), LIFT_BED),
        subject="bed",
    ),
    RuleCase(rule="layout.bunk-clearance", outcome=NOT_APPLICABLE, changes=holding(bed(400.0))),
    RuleCase(
        rule="layout.bed-fall",
        outcome=MET,
        changes=holding(bed(800.0)),
        value=800,
        limit=1000,
    ),
    RuleCase(rule="layout.bed-fall", outcome=BROKEN, changes=holding(bed(1100.0)), value=1100),
    RuleCase(
        rule="layout.bed-fall",
        outcome=MET,
        changes=holding(
            bed(
                1900.0,
                mounting="ceiling",
                facets={
                    "bed": {
                        "length": "1900 mm",
                        "width": "1300 mm",
                        "berths": 2,
                        "drop": "1000 mm",
                    }
                },
            )
        ),
        value=900,
        why="it comes down by 1000 mm",
    ),
    RuleCase(rule="layout.bed-fall", outcome=UNKNOWN, changes=holding(LIFT_BED)),
    RuleCase(rule="layout.bed-fall", outcome=NOT_APPLICABLE),
)

BESIDE = (
    box("left", (300.0, 600.0, 1200.0), (1700, -900, 0)),
    box("right", (300.0, 600.0, 1200.0), (2420, -900, 0)),
)
"""Cabinets 210 mm from the middle of the toilet on both sides."""

WASHING = (
    RuleCase(
        rule="layout.toilet-knees",
        outcome=MET,
        changes=holding(toilet()),
        value=1805,
        limit=729,
        why="half width at 250 mm 905 mm + 900 mm; 60 + 669 mm (P95 of men, ANSUR II)",
    ),
    RuleCase(
        rule="layout.toilet-knees",
        outcome=BROKEN,
        changes=holding(toilet(), box("galley", (420.0, 500.0, 900.0), (2000, -300, 0))),
        value=600,
        why="-300 + 900 mm",
    ),
    RuleCase(
        rule="layout.toilet-knees",
        outcome=MET,
        changes=holding(toilet(), box("galley", (420.0, 500.0, 900.0), (2000, -300, 0)))
        | {
            "brief.travellers.0.buttock_knee": "540 mm",
            "brief.travellers.1.buttock_knee": "530 mm",
        },
        limit=600,
        why="60 + 540 mm, as measured",
    ),
    RuleCase(rule="layout.toilet-knees", outcome=UNKNOWN, changes=holding(toilet(knees=False))),
    RuleCase(
        rule="layout.toilet-knees",
        outcome=NOT_APPLICABLE,
        changes=holding(*galley(890.0), toilet(knees=False, within="galley")),
        why="put away in a cabinet",
    ),
    RuleCase(rule="layout.toilet-knees", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.toilet-shoulders",
        outcome=MET,
        changes=holding(toilet()),
        value=3600,
        limit=567,
        why="from cab line to rear doors",
    ),
    RuleCase(
        rule="layout.toilet-shoulders",
        outcome=BROKEN,
        changes=holding(toilet(), *BESIDE),
        value=420,
    ),
    RuleCase(
        rule="layout.toilet-shoulders", outcome=UNKNOWN, changes=holding(toilet(knees=False))
    ),
    RuleCase(rule="layout.toilet-shoulders", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.toilet-seat-low",
        outcome=MET,
        changes=holding(toilet()) | US,
        value=480,
        limit=17 * 25.4,
    ),
    RuleCase(rule="layout.toilet-seat-low", outcome=BROKEN, changes=holding(toilet(400.0)) | US),
    RuleCase(rule="layout.toilet-seat-low", outcome=NOT_APPLICABLE, changes=US),
    RuleCase(
        rule="layout.toilet-seat-high",
        outcome=MET,
        changes=holding(toilet()) | US,
        limit=19 * 25.4,
    ),
    RuleCase(rule="layout.toilet-seat-high", outcome=BROKEN, changes=holding(toilet(500.0)) | US),
    RuleCase(rule="layout.toilet-seat-high", outcome=NOT_APPLICABLE, changes=US),
    RuleCase(
        rule="layout.toilet-side",
        outcome=MET,
        changes=holding(toilet()) | US,
        value=1060,
        limit=16 * 25.4,
        why="2210 - 1150 mm to the cab line",
    ),
    RuleCase(
        rule="layout.toilet-side",
        outcome=BROKEN,
        changes=holding(toilet(), *BESIDE) | US,
        value=210,
    ),
    RuleCase(
        rule="layout.toilet-side", outcome=UNKNOWN, changes=holding(toilet(knees=False)) | US
    ),
    RuleCase(rule="layout.toilet-side", outcome=NOT_APPLICABLE, changes=US),
    RuleCase(
        rule="layout.shower-headroom",
        outcome=MET,
        changes=holding(
            box("stall", (800.0, 700.0, 1850.0), (2000, -750, 0)), tap("stall", "shower")
        ),
        value=1840,
        limit=1810,
        why="1900 mm less a tray of 60 mm",
    ),
    RuleCase(
        rule="layout.shower-headroom",
        outcome=BROKEN,
        changes=holding(
            box("stall", (800.0, 700.0, 1850.0), (2000, -750, 0)), tap("stall", "shower")
        )
        | TALL,
        limit=1880,
    ),
    RuleCase(rule="layout.shower-headroom", outcome=NOT_APPLICABLE),
)

WORKTOPS = (
    RuleCase(
        rule="layout.worktop-low",
        outcome=MET,
        changes=holding(*galley(890.0)),
        value=890,
        limit=850,
    ),
    RuleCase(rule="layout.worktop-low", outcome=BROKEN, changes=holding(*galley(800.0))),
    RuleCase(rule="layout.worktop-low", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.worktop-high",
        outcome=MET,
        changes=holding(*galley(890.0)),
        limit=950,
    ),
    RuleCase(rule="layout.worktop-high", outcome=BROKEN, changes=holding(*galley(1000.0))),
    RuleCase(rule="layout.worktop-high", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.worktop-accessible",
        outcome=MET,
        changes=holding(*galley(850.0)) | US,
        limit=34 * 25.4,
    ),
    RuleCase(
        rule="layout.worktop-accessible", outcome=BROKEN, changes=holding(*galley(890.0)) | US
    ),
    RuleCase(rule="layout.worktop-accessible", outcome=NOT_APPLICABLE, changes=US),
    RuleCase(
        rule="layout.table-knees",
        outcome=MET,
        changes=holding(table(720.0)) | US,
        value=690,
        limit=27 * 25.4,
        why="less a top of 30 mm",
    ),
    RuleCase(rule="layout.table-knees", outcome=BROKEN, changes=holding(table(700.0)) | US),
    RuleCase(rule="layout.table-knees", outcome=NOT_APPLICABLE, changes=US),
)

PEOPLE_CASES: tuple[RuleCase, ...] = (*LOADING, *HEADROOM, *BEDS, *WASHING, *WORKTOPS)
