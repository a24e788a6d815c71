"""Cases of the rules of underbody, ladders, trays and sides, by hand.

Load floor 560 mm above the ground, roof z 2090 mm; sliding door x 1300 to 2500 mm, z 20 to
1720 mm, on the right; rear doorway y -750 to 750 mm, z 10 to 1760 mm.
"""

from typing import Any

from coachwright.model.finding import Outcome
from tests.support.builds import Data
from tests.support.rule_cases import RuleCase
from tests.support.vans import Thing, Triple, holding, lengths, thing

MET, BROKEN = Outcome.MET, Outcome.BROKEN
UNKNOWN, NOT_APPLICABLE = Outcome.UNKNOWN, Outcome.NOT_APPLICABLE


def _zone(name: str, use: str, low: Triple, high: Triple) -> Data:
    return {"name": name, "use": use, "from": lengths(low), "to": lengths(high)}


FREE = _zone("left side", "free", (2000, -700, -350), (3000, -100, -100))
EXHAUST = _zone("exhaust line", "exhaust", (700, 150, -380), (2450, 450, -120))
SPARE = _zone("spare", "spare wheel", (4100, -380, -330), (4700, 380, -90))
UNDER: Data = {"own_vehicle.underbody": [FREE, EXHAUST, SPARE]}
NO_EXHAUST: Data = {"own_vehicle.underbody": [FREE]}
NOTHING_FREE: Data = {"own_vehicle.underbody": [EXHAUST]}


def tank(x: float = 2100, y: float = -600, z: float = -320) -> Thing:
    return thing("tank", (800, 400, 200), (x, y, z), mounting="underbody")


UNDERBODY = (
    RuleCase(rule="layout.underbody-taken", outcome=MET, changes=holding(tank()) | UNDER, value=0),
    RuleCase(
        rule="layout.underbody-taken",
        outcome=BROKEN,
        changes=holding(tank(y=0)) | UNDER,
        value=200,
        why="free of the exhaust when it hangs -120 - -320 higher; 350 rearwards, 250 left",
    ),
    RuleCase(rule="layout.underbody-taken", outcome=UNKNOWN, changes=holding(tank())),
    RuleCase(rule="layout.underbody-taken", outcome=NOT_APPLICABLE, changes=UNDER),
    RuleCase(rule="layout.underbody-spare", outcome=MET, changes=holding(tank()) | UNDER, value=0),
    RuleCase(
        rule="layout.underbody-spare",
        outcome=BROKEN,
        changes=holding(tank(4000, -200)) | UNDER,
        value=210,
        why="-120 - -330 downwards",
    ),
    RuleCase(
        rule="layout.underbody-spare",
        outcome=NOT_APPLICABLE,
        changes=holding(tank(4000, -200), vehicle_spare_removed=True) | UNDER,
    ),
    RuleCase(
        rule="layout.underbody-spare", outcome=NOT_APPLICABLE, changes=holding(tank()) | NO_EXHAUST
    ),
    RuleCase(rule="layout.underbody-free", outcome=MET, changes=holding(tank()) | UNDER, value=0),
    RuleCase(
        rule="layout.underbody-free",
        outcome=BROKEN,
        changes=holding(tank(y=-750)) | UNDER,
        value=50,
    ),
    RuleCase(
        rule="layout.underbody-free",
        outcome=BROKEN,
        changes=holding(tank(4000, -200), vehicle_spare_removed=True) | UNDER,
        value=100,
        why="the place of the spare wheel is free then: x 4000 to 4800 of 4100 to 4700",
    ),
    RuleCase(
        rule="layout.underbody-free", outcome=UNKNOWN, changes=holding(tank()) | NOTHING_FREE
    ),
    RuleCase(rule="layout.underbody-free", outcome=NOT_APPLICABLE, changes=UNDER),
    RuleCase(
        rule="layout.underbody-clearance",
        outcome=MET,
        changes=holding(tank()),
        value=240,
        limit=180,
        why="560 - 320",
    ),
    RuleCase(
        rule="layout.underbody-clearance",
        outcome=BROKEN,
        changes=holding(tank(z=-450)),
        value=110,
    ),
    RuleCase(rule="layout.underbody-clearance", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.exhaust-distance",
        outcome=MET,
        changes=holding(tank()) | UNDER,
        value=350,
        limit=100,
        why="y -200 to 150",
    ),
    RuleCase(
        rule="layout.exhaust-distance",
        outcome=BROKEN,
        changes=holding(tank(x=2490, y=-280)) | UNDER,
        value=50,
        why="3-4-5: 40 mm rearwards, 30 mm aside",
    ),
    RuleCase(
        rule="layout.exhaust-distance", outcome=UNKNOWN, changes=holding(tank()) | NO_EXHAUST
    ),
    RuleCase(
        rule="layout.exhaust-distance",
        outcome=NOT_APPLICABLE,
        changes=holding(tank()) | UNDER | {"own_vehicle.fuel.kind": "electric"},
    ),
)


def ladder(z: float = 0, width: str = "300 mm", **facet: str) -> Thing:
    facets = {"ladder": {"first_rung": "500 mm", "clear_width": width} | facet}
    return thing("ladder", (320, 110, 1700), (4000, 1025, z), facets=facets, mounting="side")


RUNGS: Any = {"rung_spacing": "300 mm"}
LADDERS = (
    RuleCase(
        rule="layout.ladder-as-stated",
        outcome=MET,
        changes=holding(ladder(-60, **RUNGS)),
        value=0,
        limit=30,
    ),
    RuleCase(
        rule="layout.ladder-as-stated",
        outcome=BROKEN,
        changes=holding(ladder(**RUNGS)),
        value=60,
        why="560 - 500",
    ),
    RuleCase(
        rule="layout.ladder-as-stated",
        outcome=NOT_APPLICABLE,
        changes=holding(ladder()),
        why="a step, not a ladder",
    ),
    RuleCase(
        rule="layout.ladder-below-roof",
        outcome=MET,
        changes=holding(ladder(100, **RUNGS)),
        value=290,
        limit=350,
        why="2090 - 1800",
    ),
    RuleCase(
        rule="layout.ladder-below-roof",
        outcome=BROKEN,
        changes=holding(ladder(**RUNGS)),
        value=390,
    ),
    RuleCase(rule="layout.ladder-below-roof", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.fixed-ladder-width",
        outcome=MET,
        changes=holding(ladder(width="420 mm", **RUNGS)),
        value=420,
        limit=16 * 25.4,
    ),
    RuleCase(
        rule="layout.fixed-ladder-width",
        outcome=BROKEN,
        changes=holding(ladder(**RUNGS)),
        value=300,
    ),
    RuleCase(rule="layout.fixed-ladder-width", outcome=NOT_APPLICABLE),
)


def tray(z: float = 20, **more: Any) -> Thing:
    facets = {"slide_out": {"travel": "700 mm", "load_limit": "100 kg"}, **more.pop("facets", {})}
    return thing("tray", (1000, 600, 120), (3750, -300, z), facets=facets, **more)


def crate(height: float) -> Thing:
    return thing("crate", (400, 400, height), (4000, -200, 140), on="tray")


CROSS = thing("cross", (200, 800, 300), (5100, -400, -100), mounting="hitch")


def table(height: str) -> Thing:
    facets = {"table": {"height": height, "length": "600 mm", "width": "400 mm"}}
    return thing(
        "table", (60, 600, 400), (5040, 50, 500), facets=facets, mounting="rear door right"
    )


TRAYS = (
    RuleCase(
        rule="layout.tray-opening", outcome=MET, changes=holding(tray(), doors=True), value=0
    ),
    RuleCase(
        rule="layout.tray-opening",
        outcome=BROKEN,
        changes=holding(tray(z=0), doors=True),
        value=10,
        why="the sill is 10 mm high",
    ),
    RuleCase(rule="layout.tray-opening", outcome=UNKNOWN, changes=holding(tray())),
    RuleCase(
        rule="layout.tray-opening",
        outcome=NOT_APPLICABLE,
        changes=holding(tray(turn="180 deg"), doors=True),
        why="it slides forwards",
    ),
    RuleCase(rule="layout.tray-way", outcome=MET, changes=holding(tray()), value=0),
    RuleCase(
        rule="layout.tray-way",
        outcome=BROKEN,
        changes=holding(tray(), CROSS),
        value=180,
        why="-100 + 300 - 20 upwards",
    ),
    RuleCase(rule="layout.tray-way", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.tray-reach",
        outcome=MET,
        changes=holding(tray(), crate(500)),
        value=1200,
        limit=1242,
        why="140 + 500 + 560",
    ),
    RuleCase(
        rule="layout.tray-reach", outcome=BROKEN, changes=holding(tray(), crate(600)), value=1300
    ),
    RuleCase(
        rule="layout.tray-reach",
        outcome=NOT_APPLICABLE,
        changes=holding(tray()),
        why="nothing on it",
    ),
    RuleCase(
        rule="layout.outside-surface-low",
        outcome=MET,
        changes=holding(table("850 mm")),
        value=850,
        limit=650,
    ),
    RuleCase(
        rule="layout.outside-surface-low",
        outcome=BROKEN,
        changes=holding(table("600 mm")),
        value=600,
    ),
    RuleCase(
        rule="layout.outside-surface-low",
        outcome=MET,
        changes=holding(tray(facets={"carcass": {"storage": "60 L"}})),
        value=700,
        why="20 + 120 + 560: a worktop that slides out",
    ),
    RuleCase(rule="layout.outside-surface-low", outcome=NOT_APPLICABLE, changes=holding(tray())),
    RuleCase(
        rule="layout.outside-surface-high",
        outcome=MET,
        changes=holding(table("850 mm")),
        limit=1000,
    ),
    RuleCase(
        rule="layout.outside-surface-high",
        outcome=BROKEN,
        changes=holding(table("1050 mm")),
        value=1050,
    ),
    RuleCase(rule="layout.outside-surface-high", outcome=NOT_APPLICABLE),
)


def awning(z: float, y: float = 1025, thickness: float = 120) -> Thing:
    return thing("awning", (2000, thickness, 100), (1500, y, z), mounting="side")


def window(x: float, *, opens: bool = True) -> Thing:
    facet = {"kind": "window", "clear_width": "600 mm", "clear_height": "300 mm", "opens": opens}
    place = (x, 860.0, 900.0)
    return thing("window", (700, 40, 400), place, facets={"opening": facet}, mounting="wall")


SIDES = (
    RuleCase(
        rule="layout.sliding-door-path",
        outcome=MET,
        changes=holding(awning(1800), doors=True),
        value=0,
        why="20 + 1700 + 50 = 1770",
    ),
    RuleCase(
        rule="layout.sliding-door-path",
        outcome=MET,
        changes=holding(awning(1750, thickness=15), doors=True),
        value=0,
        why="the door passes over what is that flat",
    ),
    RuleCase(
        rule="layout.sliding-door-path",
        outcome=BROKEN,
        changes=holding(awning(1750), doors=True),
        value=20,
    ),
    RuleCase(
        rule="layout.sliding-door-path",
        outcome=NOT_APPLICABLE,
        changes=holding(awning(1750, y=-1145), doors=True),
        why="on the other side",
    ),
    RuleCase(
        rule="layout.sliding-door-window",
        outcome=MET,
        changes=holding(window(3900), doors=True),
        value=0,
        why="1250 + 2 x 1300 = 3850",
    ),
    RuleCase(
        rule="layout.sliding-door-window",
        outcome=MET,
        changes=holding(window(1500), doors=True),
        value=0,
        why="it sits in the door",
    ),
    RuleCase(
        rule="layout.sliding-door-window",
        outcome=BROKEN,
        changes=holding(window(3000), doors=True),
        value=850,
        why="3850 - 3000",
    ),
    RuleCase(
        rule="layout.sliding-door-window",
        outcome=NOT_APPLICABLE,
        changes=holding(window(3000, opens=False), doors=True),
    ),
)

AROUND_CASES: tuple[RuleCase, ...] = (*UNDERBODY, *LADDERS, *TRAYS, *SIDES)
