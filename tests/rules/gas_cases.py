"""Cases of the rules of gas lockers, alarms and fixed vents."""

from coachwright.model.finding import Outcome
from tests.rules.water_pieces import (
    CO_ALARM,
    LPG_ALARM,
    ROOF,
    SEALED,
    SHORT,
    STOVE,
    UK,
    US,
    WALL,
    heater,
    store,
    vent,
    with_parts,
)
from tests.support.rule_cases import RuleCase

MET, BROKEN = Outcome.MET, Outcome.BROKEN
UNKNOWN, NOT_APPLICABLE = Outcome.UNKNOWN, Outcome.NOT_APPLICABLE

LOCKERS = (
    RuleCase(
        rule="water.locker-low-vent",
        outcome=MET,
        changes=with_parts((store(floor="0.14 m2", low_vent="100 cm2"), {})),
        value=10_000.0,
        limit=10_000.0,
        why="2 % of 0.14 m2 is 28 cm2, at least 100 cm2",
    ),
    RuleCase(
        rule="water.locker-low-vent",
        outcome=BROKEN,
        changes=with_parts((store(floor="0.14 m2", low_vent="78.5 cm2"), {})) | UK,
        why="a round hole of 100 mm",
    ),
    RuleCase(
        rule="water.locker-low-vent",
        outcome=UNKNOWN,
        changes=with_parts((store(low_vent="100 cm2"), {})),
    ),
    RuleCase(
        rule="water.locker-low-vent",
        outcome=UNKNOWN,
        changes=with_parts((store(floor="0.14 m2"), {})),
    ),
    RuleCase(
        rule="water.locker-low-vent",
        outcome=NOT_APPLICABLE,
        changes=with_parts((store(), {"mounting": "hitch"})),
        why="cylinders in the open air",
    ),
    RuleCase(
        rule="water.locker-high-vent",
        outcome=MET,
        changes=with_parts((store(floor="0.63 m2", low_vent="63 cm2", high_vent="63 cm2"), {})),
        value=6_300.0,
        limit=6_300.0,
        why="1 % of 0.63 m2",
    ),
    RuleCase(
        rule="water.locker-high-vent",
        outcome=BROKEN,
        changes=with_parts((store(floor="0.14 m2", low_vent="50 cm2", high_vent="49 cm2"), {})),
        limit=5_000.0,
        why="at least 50 cm2",
    ),
    RuleCase(
        rule="water.locker-high-vent",
        outcome=UNKNOWN,
        changes=with_parts((store(low_vent="50 cm2", high_vent="50 cm2"), {})),
    ),
    RuleCase(
        rule="water.locker-high-vent",
        outcome=NOT_APPLICABLE,
        changes=with_parts((store(floor="0.14 m2", low_vent="100 cm2"), {})),
        why="a low vent alone will do",
    ),
    RuleCase(
        rule="water.locker-low-vent-us",
        outcome=MET,
        changes=with_parts((store(floor="0.30 m2", low_vent="30 cm2"), {})) | US,
        value=3_000.0,
        limit=3_000.0,
        why="half of 2 % of 0.30 m2",
    ),
    RuleCase(
        rule="water.locker-low-vent-us",
        outcome=BROKEN,
        changes=with_parts((store(floor="0.30 m2", low_vent="29 cm2"), {})) | US,
    ),
    RuleCase(
        rule="water.locker-low-vent-us",
        outcome=UNKNOWN,
        changes=with_parts((store(floor="0.30 m2"), {})) | US,
    ),
    RuleCase(rule="water.locker-low-vent-us", outcome=NOT_APPLICABLE, changes=US),
    RuleCase(
        rule="water.locker-high-vent-us",
        outcome=MET,
        changes=with_parts((store(floor="0.30 m2", high_vent="30 cm2"), {})) | US,
    ),
    RuleCase(
        rule="water.locker-high-vent-us",
        outcome=BROKEN,
        changes=with_parts((store(floor="0.30 m2", high_vent="29 cm2"), {})) | US,
    ),
    RuleCase(
        rule="water.locker-high-vent-us",
        outcome=UNKNOWN,
        changes=with_parts((store(floor="0.30 m2"), {})) | US,
    ),
    RuleCase(rule="water.locker-high-vent-us", outcome=NOT_APPLICABLE, changes=US),
    RuleCase(
        rule="water.locker-outside-access",
        outcome=MET,
        changes=with_parts((store(), {})) | US,
    ),
    RuleCase(
        rule="water.locker-outside-access",
        outcome=BROKEN,
        changes=with_parts((store(outside_access=False), {})) | US,
    ),
    RuleCase(rule="water.locker-outside-access", outcome=NOT_APPLICABLE, changes=US),
    RuleCase(
        rule="water.gas-containers",
        outcome=MET,
        changes=with_parts((store(), {}), (store(), {})) | US,
        value=2.0,
        limit=2.0,
        why="one in each of two lockers",
    ),
    RuleCase(
        rule="water.gas-containers",
        outcome=BROKEN,
        changes=with_parts((store(cylinders=3), {})) | US,
    ),
    RuleCase(rule="water.gas-containers", outcome=NOT_APPLICABLE, changes=US),
)

ALARMS = tuple(
    case
    for suffix, place in (("-us", US), ("", {}), ("", UK))
    for case in (
        RuleCase(
            rule=f"water.gas-alarm{suffix}",
            outcome=MET,
            changes=with_parts((store(), {}), (LPG_ALARM, {})) | place,
        ),
        RuleCase(
            rule=f"water.gas-alarm{suffix}",
            outcome=BROKEN,
            changes=with_parts((store(), {}), (CO_ALARM, {})) | place,
        ),
        RuleCase(
            rule=f"water.gas-alarm{suffix}",
            outcome=NOT_APPLICABLE,
            changes=with_parts((LPG_ALARM, {})) | place,
        ),
        RuleCase(
            rule=f"water.co-alarm{suffix}",
            outcome=MET,
            changes=with_parts((STOVE, {}), (CO_ALARM, {})) | place,
        ),
        RuleCase(
            rule=f"water.co-alarm{suffix}",
            outcome=BROKEN,
            changes=with_parts((heater(fuel="2 kW"), {}), (LPG_ALARM, {})) | place,
        ),
        RuleCase(
            rule=f"water.co-alarm{suffix}",
            outcome=NOT_APPLICABLE,
            changes=with_parts(({"heater": {"output": "1 kW", "fuel": "electric"}}, {})) | place,
        ),
    )
)

VENTS = (
    RuleCase(
        rule="water.fixed-high-vents",
        outcome=MET,
        changes=with_parts((STOVE, {}), (vent("100 cm2"), ROOF)) | SHORT,
        value=10_000.0,
        limit=10_000.0,
        why="open burner, 5 to 10 m2",
    ),
    RuleCase(
        rule="water.fixed-high-vents",
        outcome=MET,
        changes=with_parts((SEALED, {}), (vent("30 cm2"), WALL)) | SHORT | UK,
        value=3_000.0,
        limit=3_000.0,
        why="no open burner: 30 cm2 high in a wall instead of the roof",
    ),
    RuleCase(
        rule="water.fixed-high-vents",
        outcome=MET,
        changes=with_parts(
            ({"fan": {"flow": "50 m3/h", "closable": False, "free_area": "15 cm2"}}, ROOF)
        )
        | SHORT,
        value=1_500.0,
        limit=1_500.0,
        why="a roof fan that stays open",
    ),
    RuleCase(
        rule="water.fixed-high-vents",
        outcome=BROKEN,
        changes=with_parts((STOVE, {}), (vent("100 cm2"), WALL)) | SHORT,
        value=0.0,
        limit=10_000.0,
        why="with an open burner only the roof will do",
    ),
    RuleCase(
        rule="water.fixed-high-vents",
        outcome=BROKEN,
        changes=with_parts(
            (vent("30 cm2"), WALL),
            (
                {"bed": {"length": "1900 mm", "width": "1300 mm", "berths": 2}},
                {"at": ["2500 mm", "-600 mm", "1101 mm"]},
            ),
        )
        | SHORT,
        value=0.0,
        why="1500 mm is less than 300 mm above a bed at 1201 mm",
    ),
    RuleCase(
        rule="water.fixed-high-vents",
        outcome=UNKNOWN,
        changes=with_parts((STOVE, {})) | SHORT,
        why="no vent states its area",
    ),
    RuleCase(
        rule="water.fixed-high-vents",
        outcome=UNKNOWN,
        changes=with_parts((vent("30 cm2"), ROOF)),
        why="no open burner over 10 m2: no row of the table was seen",
    ),
    RuleCase(
        rule="water.fixed-high-vents",
        outcome=NOT_APPLICABLE,
        changes=with_parts((STOVE, {})),
        why="over 10 m2: the row is from memory",
    ),
    RuleCase(
        rule="water.fixed-low-vents",
        outcome=MET,
        changes=with_parts((STOVE, {}), (vent("15 cm2"), {})) | SHORT,
        value=1_500.0,
        limit=1_500.0,
        why="open burner, 5 to 10 m2",
    ),
    RuleCase(
        rule="water.fixed-low-vents",
        outcome=BROKEN,
        changes=with_parts(
            ({"heater": {"output": "4 kW", "fuel": "wood", "room_sealed": False}}, {}),
            (vent("14 cm2"), {}),
        )
        | SHORT,
    ),
    RuleCase(
        rule="water.fixed-low-vents", outcome=UNKNOWN, changes=with_parts((STOVE, {})) | SHORT
    ),
    RuleCase(
        rule="water.fixed-low-vents",
        outcome=NOT_APPLICABLE,
        changes=with_parts((STOVE, {})),
    ),
    RuleCase(
        rule="water.fixed-high-vents-large",
        outcome=MET,
        changes=with_parts((STOVE, {}), (vent("125 cm2"), ROOF)),
        limit=12_500.0,
        why="10 to 15 m2, from memory",
    ),
    RuleCase(
        rule="water.fixed-high-vents-large",
        outcome=BROKEN,
        changes=with_parts((STOVE, {}), (vent("124 cm2"), ROOF)) | UK,
    ),
    RuleCase(
        rule="water.fixed-high-vents-large",
        outcome=UNKNOWN,
        changes=with_parts((STOVE, {})),
    ),
    RuleCase(
        rule="water.fixed-high-vents-large",
        outcome=NOT_APPLICABLE,
        changes=with_parts((STOVE, {})) | SHORT,
    ),
    RuleCase(
        rule="water.fixed-low-vents-large",
        outcome=MET,
        changes=with_parts((STOVE, {}), (vent("20 cm2"), {})),
        limit=2_000.0,
        why="10 to 15 m2, from memory",
    ),
    RuleCase(
        rule="water.fixed-low-vents-large",
        outcome=BROKEN,
        changes=with_parts((STOVE, {}), (vent("20 cm2"), ROOF)),
        value=0.0,
        why="nothing near the floor",
    ),
    RuleCase(rule="water.fixed-low-vents-large", outcome=UNKNOWN, changes=with_parts((STOVE, {}))),
    RuleCase(
        rule="water.fixed-low-vents-large",
        outcome=NOT_APPLICABLE,
        changes=with_parts((STOVE, {})) | SHORT,
    ),
)
