"""Cases of the rules about seats, ways out, cookers, vents, alarms and the entry."""

from typing import Any

from tests.rules.layout_interior_cases import (
    BROKEN,
    LIFT_BED,
    MET,
    NOT_APPLICABLE,
    UNKNOWN,
    WALL,
    bed,
    box,
    table,
)
from tests.rules.water_pieces import UK, US
from tests.support.builds import Data
from tests.support.rule_cases import RuleCase
from tests.support.vans import Thing, Triple, access, holding, thing, zone


def seat(*, belt: str = "three-point", x_mm: float = 2500.0, **fields: Any) -> Thing:
    """Return a seat that faces forwards; its reference point is at x + 400, 0, 480 mm."""
    facet: Data = {
        "seat": {
            "places": [{"name": "place", "reference": ["400 mm", "240 mm", "480 mm"]}],
            "belt": belt,
        }
    }
    steps = [
        {"from": ["0 mm", "0 mm", "0 mm"], "to": ["580 mm", "480 mm", "480 mm"]},
        {"from": ["400 mm", "0 mm", "480 mm"], "to": ["580 mm", "480 mm", "1180 mm"]},
    ]
    return thing(
        "seat",
        (580.0, 480.0, 1180.0),
        (x_mm, -240, 0),
        body={"shape": "steps", "steps": steps},
        facets=facet,
        **fields,
    )


def window(width_mm: float, height_mm: float) -> Thing:
    facet: Data = {
        "opening": {
            "kind": "window",
            "clear_width": f"{width_mm!r} mm",
            "clear_height": f"{height_mm!r} mm",
            "escape": True,
        }
    }
    return thing("window", (900.0, 45.0, 550.0), (3000, -920, 900), facets=facet, **WALL)


def vent(z_mm: float, mounting: str = "wall") -> Thing:
    facet: Data = {
        "opening": {
            "kind": "vent",
            "clear_width": "50 mm",
            "clear_height": "50 mm",
            "free_vent": "15 cm2",
        }
    }
    return thing("vent", (70.0, 25.0, 70.0), (2000, -900, z_mm), facets=facet, mounting=mounting)


def burner(y_mm: float = -800.0, *, stated: bool = False) -> Thing:
    """Return a hob whose top is at 895 mm."""
    data: Data = {"gas_appliance": {"input": "2 kW", "use": "0.16 kg/h"}}
    if stated:
        data |= access(zone("cooking clearance", (0, 0, 95), (480, 370, 495)))
    return thing("hob", (480.0, 370.0, 95.0), (2000, y_mm, 800), facets=data)


def induction() -> Thing:
    data = access(zone("cooking clearance", (0, 0, 60), (480, 370, 460)))
    return thing("induction", (480.0, 370.0, 60.0), (2000, -850, 800), facets=data)


def alarm(senses: list[str], z_mm: float) -> Thing:
    """Return an alarm of 40 mm height."""
    detector: Data = {"detector": {"senses": senses}}
    return thing("alarm", (110.0, 40.0, 40.0), (2000, -900, z_mm), facets=detector, **WALL)


def extinguisher(x_mm: float) -> Thing:
    facet: Data = {"extinguisher": {"rating": "10-B:C"}}
    return thing("extinguisher", (110.0, 110.0, 330.0), (x_mm, 760, 0), facets=facet)


def step(x_mm: float = 1500.0) -> Thing:
    facets: Data = {
        "ladder": {"first_rung": "260 mm", "clear_width": "440 mm"},
        "outside_device": {"kind": "step"},
    }
    return thing(
        "step", (600.0, 300.0, 120.0), (x_mm, 800, -300), facets=facets, mounting="underbody"
    )


WALL_ACROSS: Triple = (100.0, 1800.0, 1800.0)
BEHIND = box("bulkhead", WALL_ACROSS, (4150, -900, 0))

SEATS = (
    RuleCase(
        rule="layout.seat-reached",
        outcome=MET,
        changes=holding(seat(), doors=True),
        value=600,
        limit=330,
        why="the floor before it is empty; 600 mm is the widest that is looked at",
    ),
    RuleCase(
        rule="layout.seat-reached",
        outcome=MET,
        changes=holding(seat(), box("chest", (700.0, 1800.0, 400.0), (1400, -900, 0)), doors=True),
        value=330,
        why="400 mm between the chest and the seat, reached from the door's rear end",
    ),
    RuleCase(
        rule="layout.seat-reached",
        outcome=BROKEN,
        changes=holding(
            seat(), box("chest", (200.0, 1800.0, 1000.0), (2250, -900, 0)), doors=True
        ),
        value=0,
        why="50 mm before the seat",
    ),
    RuleCase(
        rule="layout.seat-reached",
        outcome=NOT_APPLICABLE,
        changes=holding(seat(belt="none"), doors=True),
    ),
    RuleCase(
        rule="layout.seat-headroom",
        outcome=MET,
        changes=holding(seat()),
        value=1522,
        limit=977,
        why="1900 - 480 + 102 mm",
    ),
    RuleCase(
        rule="layout.seat-headroom",
        outcome=BROKEN,
        changes=holding(seat(), box("shelf", (600.0, 600.0, 200.0), (2600, -300, 1300), **WALL)),
        value=922,
        why="1300 - 480 + 102 mm",
    ),
    RuleCase(
        rule="layout.seat-headroom",
        outcome=MET,
        changes=holding(seat(), box("shelf", (600.0, 600.0, 200.0), (2600, -300, 1300), **WALL))
        | {
            "brief.travellers.1.seat": "seat.place",
            "brief.travellers.1.sitting_height": "900 mm",
        },
        limit=900,
        why="as measured",
    ),
    RuleCase(rule="layout.seat-headroom", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.seat-table",
        outcome=MET,
        changes=holding(seat(), table(720.0, 1900.0)),
        value=250,
        limit=200,
        why="2900 - 2650 mm",
    ),
    RuleCase(
        rule="layout.seat-table",
        outcome=BROKEN,
        changes=holding(seat(), table(720.0, 2000.0)),
        value=150,
    ),
    RuleCase(rule="layout.seat-table", outcome=NOT_APPLICABLE, changes=holding(seat())),
)

EXITS = tuple(
    case
    for rule, place in (
        ("layout.ways-out", {}),
        ("layout.ways-out", UK),
        ("layout.ways-out-us", US),
    )
    for case in (
        RuleCase(
            rule=rule,
            outcome=MET,
            changes=holding(bed(700.0), doors=True) | place,
            value=3,
            limit=2,
            why="rear doors at the bed; sliding door and cab, because the bed is at an exit",
        ),
        RuleCase(
            rule=rule,
            outcome=BROKEN,
            changes=holding(bed(700.0), box("bulkhead", WALL_ACROSS, (2700, -900, 0)), doors=True)
            | place,
            value=1,
            why="only the rear doors",
        ),
        RuleCase(
            rule=rule,
            outcome=BROKEN,
            changes=holding(bed(700.0, length_mm=900.0, x_mm=3200.0), BEHIND, doors=True) | place,
            value=1,
            why="the cab lies behind the sliding door, 700 mm away",
        ),
        RuleCase(
            rule=rule,
            outcome=MET,
            changes=holding(
                bed(700.0, length_mm=900.0, x_mm=3200.0), window(830.0, 480.0), BEHIND, doors=True
            )
            | place,
            value=3,
            why="the window is 225 mm from the bed: sliding door and cab count again",
        ),
        RuleCase(rule=rule, outcome=UNKNOWN, changes=holding(LIFT_BED, doors=True) | place),
        RuleCase(rule=rule, outcome=NOT_APPLICABLE, changes=place),
    )
)

ESCAPES = (
    RuleCase(
        rule="layout.escape-opening",
        outcome=MET,
        changes=holding(window(609.6, 431.8)) | US,
        subject="window, shorter side",
        value=17 * 25.4,
        limit=17 * 25.4,
    ),
    RuleCase(
        rule="layout.escape-opening",
        outcome=BROKEN,
        changes=holding(window(600.0, 440.0)) | US,
        subject="window, longer side",
        value=600,
        limit=24 * 25.4,
    ),
    RuleCase(rule="layout.escape-opening", outcome=NOT_APPLICABLE, changes=US),
    RuleCase(
        rule="layout.escape-opening-width",
        outcome=MET,
        changes=holding(window(830.0, 480.0)),
        value=480,
        limit=450,
    ),
    RuleCase(
        rule="layout.escape-opening-width",
        outcome=BROKEN,
        changes=holding(window(830.0, 440.0)) | UK,
        value=440,
    ),
    RuleCase(rule="layout.escape-opening-width", outcome=NOT_APPLICABLE),
)

OVERHEAD = box("overhead", (1200.0, 340.0, 310.0), (1900, -800, 1200), **WALL)

AIR = (
    RuleCase(
        rule="layout.cooking-above",
        outcome=MET,
        changes=holding(burner()),
        value=1005,
        limit=400,
        why="1900 - 895 mm",
    ),
    RuleCase(
        rule="layout.cooking-above",
        outcome=BROKEN,
        changes=holding(burner(), OVERHEAD),
        value=305,
        why="1200 - 895 mm",
    ),
    RuleCase(
        rule="layout.cooking-above",
        outcome=NOT_APPLICABLE,
        changes=holding(burner(stated=True), OVERHEAD),
        why="it states its clearance, which is judged with the zones",
    ),
    RuleCase(
        rule="layout.cooking-beside",
        outcome=MET,
        changes=holding(burner()),
        value=116,
        limit=100,
        why="half width at 800 mm 916 mm less 800 mm",
    ),
    RuleCase(
        rule="layout.cooking-beside",
        outcome=BROKEN,
        changes=holding(burner(-850.0)),
        value=66,
    ),
    RuleCase(
        rule="layout.cooking-beside",
        outcome=BROKEN,
        changes=holding(burner(), box("locker", (300.0, 500.0, 1800.0), (2530, -800, 0))),
        value=50,
        why="2530 - 2480 mm",
    ),
    RuleCase(
        rule="layout.cooking-beside",
        outcome=NOT_APPLICABLE,
        changes=holding(induction()),
        why="no flame",
    ),
    RuleCase(
        rule="layout.low-vent-place",
        outcome=MET,
        changes=holding(vent(80)),
        value=80,
        limit=100,
    ),
    RuleCase(rule="layout.low-vent-place", outcome=BROKEN, changes=holding(vent(300))),
    RuleCase(
        rule="layout.low-vent-place", outcome=NOT_APPLICABLE, changes=holding(vent(1900, "roof"))
    ),
    RuleCase(
        rule="layout.high-vent-place",
        outcome=MET,
        changes=holding(vent(1200), bed(800.0)),
        value=400,
        limit=300,
    ),
    RuleCase(
        rule="layout.high-vent-place",
        outcome=BROKEN,
        changes=holding(vent(1200), bed(1000.0)),
        value=200,
    ),
    RuleCase(rule="layout.high-vent-place", outcome=UNKNOWN, changes=holding(vent(1200))),
    RuleCase(rule="layout.high-vent-place", outcome=NOT_APPLICABLE, changes=holding(vent(80))),
)

ALARMS = (
    RuleCase(
        rule="layout.smoke-alarm-place",
        outcome=MET,
        changes=holding(alarm(["smoke"], 1860)),
        value=0,
        limit=300,
    ),
    RuleCase(
        rule="layout.smoke-alarm-place",
        outcome=BROKEN,
        changes=holding(alarm(["smoke", "CO"], 1400)),
        value=460,
        why="1900 - 1440 mm",
    ),
    RuleCase(
        rule="layout.smoke-alarm-place",
        outcome=NOT_APPLICABLE,
        changes=holding(alarm(["CO"], 1400)),
    ),
    RuleCase(
        rule="layout.gas-alarm-place",
        outcome=MET,
        changes=holding(alarm(["LPG"], 100)),
        value=140,
        limit=300,
    ),
    RuleCase(rule="layout.gas-alarm-place", outcome=BROKEN, changes=holding(alarm(["LPG"], 1000))),
    RuleCase(rule="layout.gas-alarm-place", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.co-alarm-place",
        outcome=MET,
        changes=holding(alarm(["CO"], 1000), bed(700.0)),
        value=300,
        limit=0,
    ),
    RuleCase(
        rule="layout.co-alarm-place",
        outcome=BROKEN,
        changes=holding(alarm(["CO"], 300), bed(700.0)),
        value=-400,
    ),
    RuleCase(rule="layout.co-alarm-place", outcome=UNKNOWN, changes=holding(alarm(["CO"], 1000))),
    RuleCase(
        rule="layout.co-alarm-place",
        outcome=NOT_APPLICABLE,
        changes=holding(alarm(["CO", "LPG"], 100), bed(700.0)),
        why="it senses LP gas, which sinks",
    ),
    *(
        case
        for rule, place, near in (
            ("layout.extinguisher-place", {}, 1000),
            ("layout.extinguisher-place-us", US, 24 * 25.4),
        )
        for case in (
            RuleCase(
                rule=rule,
                outcome=MET,
                changes=holding(extinguisher(1350), doors=True) | place,
                value=0,
                limit=near,
            ),
            RuleCase(
                rule=rule,
                outcome=BROKEN,
                changes=holding(extinguisher(4000), doors=True) | place,
                value=1500,
                why="4000 - 2500 mm",
            ),
            RuleCase(rule=rule, outcome=UNKNOWN, changes=holding(extinguisher(1350)) | place),
            RuleCase(rule=rule, outcome=NOT_APPLICABLE, changes=place),
        )
    ),
)

ENTRY = (
    RuleCase(
        rule="layout.entry-rise",
        outcome=MET,
        changes=holding(step(), doors=True) | US,
        value=320,
        limit=19 * 25.4,
        why="floor 560 mm + sill 20 mm above the ground, step at 260 mm",
    ),
    RuleCase(
        rule="layout.entry-rise",
        outcome=BROKEN,
        changes=holding(doors=True) | US,
        value=580,
    ),
    RuleCase(
        rule="layout.entry-rise",
        outcome=BROKEN,
        changes=holding(step(3000.0), doors=True) | US,
        value=580,
        why="the step is not at the door",
    ),
    RuleCase(rule="layout.entry-rise", outcome=NOT_APPLICABLE, changes=US),
    RuleCase(
        rule="layout.first-step",
        outcome=MET,
        changes=holding(step(), doors=True),
        value=260,
        limit=400,
    ),
    RuleCase(
        rule="layout.first-step",
        outcome=BROKEN,
        changes=holding(doors=True) | UK,
        value=580,
    ),
    RuleCase(rule="layout.first-step", outcome=NOT_APPLICABLE),
)

SAFETY_CASES: tuple[RuleCase, ...] = (*SEATS, *EXITS, *ESCAPES, *AIR, *ALARMS, *ENTRY)
