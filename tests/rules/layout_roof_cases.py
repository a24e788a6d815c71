"""Cases of the rules of the roof, by hand: x 1100 to 4700 mm, half width 720 mm, z 2090 mm."""

from typing import Any

from coachwright.model.finding import Outcome
from tests.support.builds import Data
from tests.support.electrics import PANEL
from tests.support.rule_cases import RuleCase
from tests.support.vans import Thing, holding, thing

MET, BROKEN = Outcome.MET, Outcome.BROKEN
UNKNOWN, NOT_APPLICABLE = Outcome.UNKNOWN, Outcome.NOT_APPLICABLE
ROOF_MM = 2090.0


def case(x: float = 2000, y: float = -250, z: float = ROOF_MM, **fields: Any) -> Thing:
    return thing("case", (1000, 500, 200), (x, y, z), **({"mounting": "roof"} | fields))


def fan(x: float) -> Thing:
    return thing("fan", (400, 400, 150), (x, -200, ROOF_MM), mounting="roof")


def rack(**facet: str) -> Thing:
    facets = {"roof_rack": {"load_limit": "100 kg"} | facet}
    return thing("rack", (1500, 1200, 100), (2000, -600, ROOF_MM), facets=facets, mounting="roof")


DECK = rack(standing_limit="200 kg")
BOARD = thing("board", (1500, 1000, 50), (2000, -600, ROOF_MM + 100), on="rack")


def panel(y: float = -300, z: float = ROOF_MM, *, bonded: bool = False, **fields: Any) -> Thing:
    facets = {"solar_panel": PANEL | {"bonded": bonded}}
    where = {"mounting": "roof"} | fields
    return thing("panel", (1600, 600, 30), (2000, y, z), facets=facets, **where)


def crown(height_mm: int) -> Data:
    return {"own_vehicle.roof.crown": f"{height_mm} mm"}


OUTLINES = (
    RuleCase(rule="layout.roof-outline", outcome=MET, changes=holding(case()), value=0),
    RuleCase(
        rule="layout.roof-outline",
        outcome=BROKEN,
        changes=holding(case(y=300)),
        value=80,
        why="300 + 500 - 720",
    ),
    RuleCase(
        rule="layout.roof-outline",
        outcome=BROKEN,
        changes=holding(case(x=1000)),
        value=100,
        why="1100 - 1000",
    ),
    RuleCase(rule="layout.roof-outline", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="layout.roof-rack-outline",
        outcome=MET,
        changes=holding(rack(), case(2100, z=ROOF_MM + 100, on="rack")),
        value=0,
    ),
    RuleCase(
        rule="layout.roof-rack-outline",
        outcome=BROKEN,
        subject="case",
        changes=holding(rack(), case(2800, z=ROOF_MM + 100, on="rack")),
        value=300,
        why="2800 + 1000 - 3500",
    ),
    RuleCase(
        rule="layout.roof-rack-outline",
        outcome=NOT_APPLICABLE,
        changes=holding(rack(), case()),
        why="it stands on the roof itself",
    ),
)
NEIGHBOURS = (
    RuleCase(
        rule="layout.roof-cover",
        outcome=MET,
        changes=holding(case(z=2400), fan(3200)),
        value=0,
    ),
    RuleCase(
        rule="layout.roof-cover",
        outcome=BROKEN,
        subject="case over fan",
        changes=holding(case(z=2400), fan(2900)),
        value=100,
        why="2000 + 1000 - 2900",
    ),
    RuleCase(rule="layout.roof-cover", outcome=NOT_APPLICABLE, changes=holding(case())),
    RuleCase(
        rule="layout.roof-cover",
        outcome=NOT_APPLICABLE,
        changes=holding(rack(), case(2100, z=ROOF_MM + 100, on="rack")),
        why="the rack carries it",
    ),
    RuleCase(
        rule="layout.roof-clearance",
        outcome=MET,
        subject="fan",
        changes=holding(case(), fan(3050)),
        value=50,
        limit=20,
    ),
    RuleCase(
        rule="layout.roof-clearance",
        outcome=BROKEN,
        subject="case",
        changes=holding(case(), fan(3010)),
        value=10,
    ),
    RuleCase(
        rule="layout.roof-clearance",
        outcome=NOT_APPLICABLE,
        changes=holding(case(), fan(2900)),
        why="they stand in one place, which another rule tells",
    ),
    RuleCase(
        rule="layout.deck-standing", outcome=MET, changes=holding(DECK), value=1200, limit=400
    ),
    RuleCase(
        rule="layout.deck-standing",
        outcome=BROKEN,
        changes=holding(DECK, BOARD),
        value=200,
        why="1200 wide, 1000 taken",
    ),
    RuleCase(
        rule="layout.deck-standing",
        outcome=NOT_APPLICABLE,
        changes=holding(rack()),
        why="nobody may stand on it",
    ),
)
PANELS = (
    RuleCase(
        rule="layout.panel-edge-gap",
        outcome=MET,
        changes=holding(panel()) | crown(40),
        value=40 * (300 / 720) ** 2,
        limit=60,
    ),
    RuleCase(
        rule="layout.panel-edge-gap",
        outcome=BROKEN,
        changes=holding(panel(z=ROOF_MM + 60)) | crown(40),
        value=60 + 40 * (300 / 720) ** 2,
    ),
    RuleCase(rule="layout.panel-edge-gap", outcome=UNKNOWN, changes=holding(panel())),
    RuleCase(
        rule="layout.panel-edge-gap",
        outcome=NOT_APPLICABLE,
        changes=holding(rack(), panel(z=ROOF_MM + 100, on="rack")) | crown(40),
        why="the rack bridges the curve",
    ),
    RuleCase(
        rule="layout.panel-bend",
        outcome=MET,
        changes=holding(panel(bonded=True)) | crown(40),
        value=40 * (300 / 720) ** 2 / 600,
        limit=0.03,
    ),
    RuleCase(
        rule="layout.panel-bend",
        outcome=BROKEN,
        changes=holding(panel(bonded=True)) | crown(200),
        value=200 * (300 / 720) ** 2 / 600,
    ),
    RuleCase(rule="layout.panel-bend", outcome=UNKNOWN, changes=holding(panel(bonded=True))),
    RuleCase(rule="layout.panel-bend", outcome=NOT_APPLICABLE, changes=holding(panel())),
    RuleCase(
        rule="layout.panel-edge",
        outcome=MET,
        changes=holding(panel()),
        value=420,
        limit=25,
        why="720 - 300",
    ),
    RuleCase(
        rule="layout.panel-edge",
        outcome=BROKEN,
        changes=holding(panel(y=100)),
        value=20,
        why="720 - 700",
    ),
    RuleCase(rule="layout.panel-edge", outcome=NOT_APPLICABLE, changes=holding(case())),
)

ROOF_CASES: tuple[RuleCase, ...] = (*OUTLINES, *NEIGHBOURS, *PANELS)
