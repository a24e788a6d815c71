"""Cases of the rules of access zones, by hand."""

from typing import Any

from coachwright.model.finding import Outcome
from tests.support.builds import Data
from tests.support.rule_cases import RuleCase
from tests.support.vans import Thing, access, holding, thing, zone

MET, BROKEN, NOT_APPLICABLE = Outcome.MET, Outcome.BROKEN, Outcome.NOT_APPLICABLE

CHEST_SIZE = (600.0, 500.0, 800.0)
AHEAD = ((0.0, 500.0, 0.0), (600.0, 900.0, 800.0))
"""400 mm before the chest, to the right."""


def chest(purpose: str, x: float = 2700, y: float = -800, **more: Any) -> Thing:
    return thing("chest", CHEST_SIZE, (x, y, 0), facets=access(zone(purpose, *AHEAD, **more)))


def stool(x: float = 2700, y: float = 0) -> Thing:
    """Return a stool that stands 100 mm into the chest's zone, unless told otherwise."""
    return thing("stool", (300, 300, 450), (x, y, 0))


def waived(purpose: str) -> Data:
    waiver = {"fitting": "chest", "purpose": purpose, "role": "designer", "reason": "stool moves"}
    return {"waivers": [waiver]}


def _free(rule: str, purpose: str) -> tuple[RuleCase, ...]:
    """Return the cases that all rules of free zones have in common."""
    blocked = holding(chest(purpose), stool())
    return (
        RuleCase(rule=rule, outcome=MET, changes=holding(chest(purpose), stool(y=200)), value=0),
        RuleCase(
            rule=rule,
            outcome=BROKEN,
            subject="chest",
            changes=blocked,
            value=100,
            limit=1,
            why="zone y -300 to 100 mm, stool from 0 mm",
        ),
        RuleCase(rule=rule, outcome=NOT_APPLICABLE, changes=holding(stool())),
    )


def _may_be_waived(rule: str, purpose: str) -> tuple[RuleCase, ...]:
    return (
        RuleCase(
            rule=rule,
            outcome=NOT_APPLICABLE,
            subject="chest",
            changes=holding(chest(purpose), stool()) | waived(purpose),
        ),
        RuleCase(
            rule=rule,
            outcome=BROKEN,
            subject="chest",
            changes=holding(chest(purpose, always=True), stool()) | waived(purpose),
            why="what is always kept free is judged although it was given up",
        ),
    )


def _never_waived(rule: str, purpose: str) -> tuple[RuleCase, ...]:
    return (
        RuleCase(
            rule=rule,
            outcome=BROKEN,
            subject="chest",
            changes=holding(chest(purpose), stool()) | waived(purpose),
            why="given up, and judged all the same",
        ),
    )


DOORWAY = (
    RuleCase(
        rule="layout.moving-parts-free",
        outcome=MET,
        subject="chest",
        changes=holding(
            thing(
                "chest",
                CHEST_SIZE,
                (4100, -300, 20),
                facets=access(zone("drawer", (600, 0, 0), (1100, 500, 800))),
            ),
            doors=True,
        ),
        value=0,
        why="out of the rear doors, above their sill",
    ),
    RuleCase(
        rule="layout.moving-parts-free",
        outcome=BROKEN,
        subject="chest",
        changes=holding(
            thing(
                "chest",
                CHEST_SIZE,
                (4100, -300, 0),
                facets=access(zone("drawer", (600, 0, 0), (1100, 500, 800))),
            ),
            doors=True,
        ),
        value=450,
        why="4100 + 1100 - 4750 mm; its lower edge meets the sill",
    ),
    RuleCase(
        rule="layout.exits-free",
        outcome=MET,
        subject="chest",
        changes=holding(
            thing(
                "chest",
                CHEST_SIZE,
                (4100, -300, 0),
                facets=access(zone("exit", (600, 0, 0), (1100, 500, 800), always=True)),
            ),
            doors=True,
        ),
        value=0,
        why="people step over the sill",
    ),
    RuleCase(
        rule="layout.ventilation-free",
        outcome=BROKEN,
        subject="chest",
        changes=holding(
            thing(
                "chest",
                CHEST_SIZE,
                (4100, -300, 20),
                facets=access(zone("ventilation", (600, 0, 0), (700, 500, 800), always=True)),
            ),
            doors=True,
        ),
        value=50,
        why="4100 + 700 - 4750 mm: doors are mostly closed",
    ),
)


def _table(purpose: str, y: float, **more: Any) -> Thing:
    """Return a table 400 mm deep with its zone on the left, towards the chest."""
    return thing(
        "table",
        (600, 400, 700),
        (2700, y, 0),
        facets=access(zone(purpose, (0, -400, 0), (600, 0, 800), **more)),
    )


SHARED = (
    RuleCase(
        rule="layout.zones-shared",
        outcome=MET,
        changes=holding(chest("drawer"), _table("standing", 200)),
        value=0,
        why="both may share with any",
    ),
    RuleCase(
        rule="layout.zones-shared",
        outcome=BROKEN,
        subject="chest and table",
        changes=holding(chest("drawer", shares_with=["standing"]), _table("knees", 200)),
        value=1,
        limit=0,
    ),
    RuleCase(
        rule="layout.zones-shared",
        outcome=MET,
        changes=holding(
            chest("drawer", shares_with=["knees"]), _table("knees", 200, shares_with=["drawer"])
        ),
        why="each names the other",
    ),
    RuleCase(
        rule="layout.zones-shared",
        outcome=BROKEN,
        subject="chest and table",
        changes=holding(chest("drawer"), _table("exit", 200, always=True)),
        why="a drawer moves through what is always kept free",
    ),
    RuleCase(
        rule="layout.zones-shared",
        outcome=MET,
        changes=holding(chest("standing"), _table("exit", 200, always=True)),
        why="people may stand where they go out",
    ),
    RuleCase(
        rule="layout.zones-shared",
        outcome=MET,
        changes=holding(chest("drawer", shares_with=[]), _table("knees", 600)),
        why="they do not overlap",
    ),
    RuleCase(rule="layout.zones-shared", outcome=NOT_APPLICABLE, changes=holding(stool())),
)

ZONE_CASES: tuple[RuleCase, ...] = (
    *_free("layout.moving-parts-free", "drawer"),
    *_free("layout.exits-free", "exit"),
    *_free("layout.ventilation-free", "ventilation"),
    *_free("layout.seat-entry-free", "seat entry"),
    *_free("layout.working-space-free", "standing"),
    *_may_be_waived("layout.moving-parts-free", "drawer"),
    *_may_be_waived("layout.seat-entry-free", "seat entry"),
    *_may_be_waived("layout.working-space-free", "standing"),
    *_never_waived("layout.exits-free", "exit"),
    *_never_waived("layout.ventilation-free", "ventilation"),
    *DOORWAY,
    *SHARED,
)
