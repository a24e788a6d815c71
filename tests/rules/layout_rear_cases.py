"""Cases of the rules of the rear, by hand.

Rear face x 5040 mm, half width 1025 mm; hinge lines 780 mm from the middle; floor 560 mm above
the ground; the doors open to 180 degrees.
"""

import math
from typing import Any

from coachwright.model.finding import Outcome
from tests.support.builds import Data
from tests.support.rule_cases import RuleCase
from tests.support.vans import Thing, holding, thing

MET, BROKEN = Outcome.MET, Outcome.BROKEN
UNKNOWN, NOT_APPLICABLE = Outcome.UNKNOWN, Outcome.NOT_APPLICABLE
FACE_MM = 5040.0


def _zone(name: str, kind: str, low: tuple[int, int], high: tuple[int, int]) -> Data:
    ends = {"from": [f"{mm} mm" for mm in low], "to": [f"{mm} mm" for mm in high]}
    return {"name": name, "kind": kind, **ends}


LAMP = _zone("left lamps", "lamp", (-1000, 100), (-850, 700))
PLATE = _zone("plate", "plate", (-300, 200), (-100, 320))
CAMERA = _zone("camera", "camera", (-30, 1850), (30, 1890))
HANDLE = _zone("handle", "handle", (20, 420), (120, 500))
WINDOW = _zone("window", "window", (200, 900), (600, 1400))
ZONES: Data = {"own_vehicle.rear_end.zones": [LAMP, PLATE, CAMERA, HANDLE, WINDOW]}
ONLY_LAMP: Data = {"own_vehicle.rear_end.zones": [LAMP]}
TOP: Data = {"own_vehicle.rear_end.door_top": "1800 mm"}
WHERE = {name: {"brief.jurisdiction": name} for name in ("eu", "uk", "us")}


def hung(y: float = 200, z: float = 800, height: float = 500, side: str = "right") -> Thing:
    """Return a box 400 mm wide and 300 mm deep on a rear door."""
    size = (300.0, 400.0, height)
    return thing("box", size, (FACE_MM, y, z), mounting=f"rear door {side}")


def behind(
    gap: float = 100, width: float = 800, z: float = 200, height: float = 600, **facet: Any
) -> Thing:
    """Return a rack on the hitch, centred."""
    facets = {"hitch_carrier": {"load_limit": "60 kg"} | facet}
    place = (FACE_MM + gap, -width / 2, z)
    return thing("rack", (400, width, height), place, facets=facets, mounting="hitch")


DOORS = (
    RuleCase(rule="layout.rear-door-outline", outcome=MET, changes=holding(hung()) | TOP, value=0),
    RuleCase(
        rule="layout.rear-door-outline",
        outcome=BROKEN,
        changes=holding(hung(y=500)) | TOP,
        value=120,
        why="500 + 400 - 780",
    ),
    RuleCase(
        rule="layout.rear-door-outline",
        outcome=BROKEN,
        changes=holding(hung(z=1400)) | TOP,
        value=100,
        why="1400 + 500 - 1800",
    ),
    RuleCase(
        rule="layout.rear-door-outline",
        outcome=BROKEN,
        changes=holding(hung(y=-900, z=-50, side="left")),
        value=120,
        why="over the hinge line by 900 - 780, over the bottom by 50; the top does not matter",
    ),
    RuleCase(rule="layout.rear-door-outline", outcome=UNKNOWN, changes=holding(hung())),
    RuleCase(rule="layout.rear-door-outline", outcome=NOT_APPLICABLE, changes=holding(behind())),
    RuleCase(rule="layout.rear-door-middle", outcome=MET, changes=holding(hung()), value=0),
    RuleCase(
        rule="layout.rear-door-middle",
        outcome=BROKEN,
        changes=holding(hung(y=-100)),
        value=100,
    ),
    RuleCase(
        rule="layout.rear-door-middle",
        outcome=BROKEN,
        changes=holding(hung(y=-350, side="left")),
        value=50,
    ),
    RuleCase(rule="layout.rear-door-middle", outcome=NOT_APPLICABLE),
)


def _lamps(where: str) -> tuple[RuleCase, ...]:
    rule = f"layout.covered-lamp-{where}"
    wide = holding(behind(width=2000))
    return (
        RuleCase(
            rule=rule, outcome=MET, changes=holding(behind()) | ZONES | WHERE[where], value=0
        ),
        RuleCase(
            rule=rule,
            outcome=BROKEN,
            subject="left lamps",
            changes=wide | ZONES | WHERE[where],
            value=5 / 6,
            limit=0,
            why="z 200 to 700 of 100 to 700 mm, over its whole width",
        ),
        RuleCase(
            rule=rule,
            outcome=MET,
            subject="left lamps",
            changes=holding(behind(width=2000, repeats=["lamp"])) | ZONES | WHERE[where],
            value=0,
        ),
        RuleCase(rule=rule, outcome=UNKNOWN, changes=wide | WHERE[where]),
        RuleCase(rule=rule, outcome=NOT_APPLICABLE, changes=ZONES | WHERE[where]),
    )


def _plates(rule: str, where: str) -> tuple[RuleCase, ...]:
    return (
        RuleCase(rule=rule, outcome=MET, changes=holding(hung()) | ZONES | WHERE[where], value=0),
        RuleCase(
            rule=rule,
            outcome=BROKEN,
            changes=holding(behind()) | ZONES | WHERE[where],
            value=1,
            limit=0,
        ),
        RuleCase(
            rule=rule,
            outcome=BROKEN,
            changes=holding(behind(repeats=["lamp"])) | ZONES | WHERE[where],
            value=1,
            why="it carries lamps, but no plate",
        ),
        RuleCase(
            rule=rule,
            outcome=MET,
            changes=holding(behind(repeats=["plate"])) | ZONES | WHERE[where],
            value=0,
        ),
        RuleCase(rule=rule, outcome=UNKNOWN, changes=holding(hung()) | ONLY_LAMP | WHERE[where]),
        RuleCase(rule=rule, outcome=NOT_APPLICABLE, changes=ZONES | WHERE[where]),
    )


def _others(rule: str, met: Thing, broken: Thing, *, met_at: float, at: float) -> list[RuleCase]:
    return [
        RuleCase(rule=rule, outcome=MET, changes=holding(met) | ZONES, value=met_at),
        RuleCase(rule=rule, outcome=BROKEN, changes=holding(broken) | ZONES, value=at),
        RuleCase(rule=rule, outcome=UNKNOWN, changes=holding(broken)),
        RuleCase(
            rule=rule,
            outcome=NOT_APPLICABLE,
            changes=holding(broken) | ONLY_LAMP,
            why="the vehicle has none",
        ),
    ]


VISIBLE = (
    *(case for where in WHERE for case in _lamps(where)),
    *_plates("layout.covered-plate-eu", "eu"),
    *_plates("layout.covered-plate", "uk"),
    # z 200 to 1870 over a camera at 1850 to 1890 mm
    *_others("layout.covered-camera", behind(), behind(height=1670), met_at=0, at=0.5),
    *_others("layout.covered-handle", hung(), behind(), met_at=0, at=1),
    # z 800 to 1100 and 800 to 1300 over a window at 900 to 1400 mm
    *_others("layout.covered-window", hung(height=300), hung(), met_at=0.4, at=0.8),
)
SWINGS = (
    RuleCase(
        rule="layout.rear-door-opens",
        outcome=MET,
        subject="rear door right",
        changes=holding(hung()),
        value=180 - math.degrees(math.acos(180 / 245)),
        limit=90,
        why="near edge 180 mm from the hinge line; body 1025 - 780 = 245 mm beyond it",
    ),
    RuleCase(
        rule="layout.rear-door-opens",
        outcome=BROKEN,
        subject="rear door right",
        changes=holding(behind()),
        value=math.degrees(math.asin(100 / 780)),
        why="the edge of the door, 780 mm from its hinge line, meets the rack 100 mm behind it",
    ),
    RuleCase(
        rule="layout.rear-door-opens",
        outcome=UNKNOWN,
        subject="rear door left",
        changes=holding(behind(tilts=True)),
    ),
    RuleCase(
        rule="layout.rear-door-opens",
        outcome=MET,
        subject="rear door left",
        changes=holding(behind(z=-400, height=300)),
        value=180,
        why="the rack ends below the door",
    ),
    RuleCase(rule="layout.rear-door-opens", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.rear-door-opens-fully",
        outcome=MET,
        subject="rear door right",
        changes=holding(hung(y=0)),
        value=180,
        why="its near edge is 380 mm from the hinge line, beyond the body's 245 mm",
    ),
    RuleCase(
        rule="layout.rear-door-opens-fully",
        outcome=BROKEN,
        subject="rear door left",
        changes=holding(hung(y=-600, side="left")),
        value=180 - math.degrees(math.acos(180 / 245)),
        limit=180,
    ),
    RuleCase(
        rule="layout.rear-door-opens-fully",
        outcome=UNKNOWN,
        subject="rear door right",
        changes=holding(behind(tilts=True)),
    ),
    RuleCase(rule="layout.rear-door-opens-fully", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.hitch-gap",
        outcome=MET,
        changes=holding(behind(gap=700)),
        value=700,
        limit=math.sqrt(780**2 - 380**2),
    ),
    RuleCase(rule="layout.hitch-gap", outcome=BROKEN, changes=holding(behind()), value=100),
    RuleCase(rule="layout.hitch-gap", outcome=UNKNOWN, changes=holding(behind(tilts=True))),
    RuleCase(rule="layout.hitch-gap", outcome=NOT_APPLICABLE, changes=holding(hung())),
)
PARKING = (
    RuleCase(
        rule="layout.hangs-above-kerb",
        outcome=MET,
        changes=holding(behind()),
        value=760,
        limit=150,
        why="200 + 560",
    ),
    RuleCase(
        rule="layout.hangs-above-kerb",
        outcome=BROKEN,
        changes=holding(behind(z=-450)),
        value=110,
    ),
    RuleCase(rule="layout.hangs-above-kerb", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.hangs-over-parking",
        outcome=MET,
        changes=holding(behind()),
        value=760,
        limit=450,
    ),
    RuleCase(
        rule="layout.hangs-over-parking",
        outcome=BROKEN,
        changes=holding(behind()),
        value=760,
        limit=900,
    ),
    RuleCase(rule="layout.hangs-over-parking", outcome=NOT_APPLICABLE),
)

REAR_CASES: tuple[RuleCase, ...] = (*DOORS, *VISIBLE, *SWINGS, *PARKING)
