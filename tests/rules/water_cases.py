"""Cases of the rules of tanks, frost, supply and warm water."""

from coachwright.model.finding import Outcome
from tests.rules.water_pieces import (
    DRAW,
    FRESH,
    OUTSIDE,
    PUMP,
    RUN,
    RUN_TO_TAP,
    WEAK,
    heater,
    tank,
    tap,
    with_parts,
)
from tests.support.rule_cases import RuleCase

MET, BROKEN = Outcome.MET, Outcome.BROKEN
UNKNOWN, NOT_APPLICABLE = Outcome.UNKNOWN, Outcome.NOT_APPLICABLE

DAYS = (
    RuleCase(
        rule="water.days-wanted",
        outcome=MET,
        changes=with_parts(FRESH) | {"brief.independence_wanted": "3 d"},
        value=3.0,
        limit=3.0,
        why="72 L / (2 x 12 L/day)",
    ),
    RuleCase(
        rule="water.days-wanted",
        outcome=BROKEN,
        changes=with_parts(FRESH, (tank("grey", "48 L"), {}))
        | {"brief.independence_wanted": "3 d"},
        value=2.0,
        why="the grey tank ends them: 48 L / (2 x 12 L/day)",
    ),
    RuleCase(
        rule="water.days-wanted",
        outcome=UNKNOWN,
        changes={"brief.independence_wanted": "3 d"},
    ),
    RuleCase(
        rule="water.days-wanted",
        outcome=UNKNOWN,
        changes=with_parts(FRESH)
        | {"brief.independence_wanted": "3 d", "brief.habits.water": "0 L/day"},
    ),
    RuleCase(rule="water.days-wanted", outcome=NOT_APPLICABLE, changes=with_parts(FRESH)),
    RuleCase(
        rule="water.toilet-days-wanted",
        outcome=MET,
        changes=with_parts(({"toilet": {"kind": "cassette", "waste": "17 L"}}, {}))
        | {"brief.independence_wanted": "5 d"},
        value=5.0,
        why="17 L / (2 x 1.7 L/day); no flush water",
    ),
    RuleCase(
        rule="water.toilet-days-wanted",
        outcome=BROKEN,
        changes=with_parts(
            ({"toilet": {"kind": "cassette", "waste": "17.7 L", "flush": "0.25 L"}}, {})
        )
        | {"brief.independence_wanted": "5 d"},
        value=3.0,
        why="17.7 L / (2 x (1.7 + 5 x 0.25) L/day)",
    ),
    RuleCase(
        rule="water.toilet-days-wanted",
        outcome=NOT_APPLICABLE,
        changes={"brief.independence_wanted": "5 d"},
    ),
    RuleCase(rule="water.least-use", outcome=MET, value=12.0, limit=7.5, why="as in the brief"),
    RuleCase(rule="water.least-use", outcome=BROKEN, changes={"brief.habits.water": "7 L/day"}),
    RuleCase(
        rule="water.grey-holds-fresh",
        outcome=MET,
        changes=with_parts(FRESH, (tank("grey", "78 L"), {}), (heater(), {})),
        value=78.0,
        limit=78.0,
        why="72 L and 6 L in the heater",
    ),
    RuleCase(
        rule="water.grey-holds-fresh",
        outcome=BROKEN,
        changes=with_parts(FRESH, (tank("grey", "77 L"), {}), (heater(), {})),
    ),
    RuleCase(
        rule="water.grey-holds-fresh",
        outcome=BROKEN,
        changes=with_parts(FRESH, (tap(), {})),
        value=0.0,
        limit=72.0,
        why="a tap inside and nothing to drain into",
    ),
    RuleCase(
        rule="water.grey-holds-fresh",
        outcome=NOT_APPLICABLE,
        changes=with_parts(
            FRESH, ({"water_outlet": {"kind": "outside shower", "flow": "5 L/min"}}, {})
        ),
    ),
    RuleCase(rule="water.grey-holds-fresh", outcome=NOT_APPLICABLE),
)

FROST = (
    RuleCase(
        rule="water.frost-protected",
        outcome=BROKEN,
        changes=with_parts((tank("grey", "70 L"), OUTSIDE)),
        value=8.0,
        limit=0.0,
        why="the design night is -8 degC",
    ),
    RuleCase(
        rule="water.frost-protected",
        outcome=BROKEN,
        changes=with_parts(FRESH),
        subject="piece-a",
        why="inside, but nothing heats the van",
    ),
    RuleCase(
        rule="water.frost-protected",
        outcome=BROKEN,
        changes=with_parts(FRESH, water_runs=[RUN | {"place": "outside"}]),
        subject="cold",
    ),
    RuleCase(
        rule="water.frost-protected",
        outcome=BROKEN,
        changes=with_parts((heater(), OUTSIDE)),
        subject="piece-a",
    ),
    RuleCase(
        rule="water.frost-protected",
        outcome=MET,
        changes=with_parts((tank("grey", "70 L", heated=True), OUTSIDE)),
        value=0.0,
        why="its own heating",
    ),
    RuleCase(
        rule="water.frost-protected",
        outcome=MET,
        changes=with_parts(
            FRESH, ({"heater": {"output": "2 kW", "fuel": "diesel"}}, {"mounting": "floor"})
        ),
        subject="piece-a",
        why="inside a heated van",
    ),
    RuleCase(
        rule="water.frost-protected",
        outcome=MET,
        changes=with_parts(water_runs=[RUN | {"place": "outside", "drained": True}]),
        subject="cold",
    ),
    RuleCase(
        rule="water.frost-protected",
        outcome=MET,
        changes=with_parts((heater(frost_valve=True), OUTSIDE)),
        subject="piece-a",
    ),
    RuleCase(
        rule="water.frost-protected",
        outcome=MET,
        changes=with_parts((tank("grey", "70 L"), OUTSIDE | {"heated_space": True})),
        subject="piece-a",
        why="a heated double floor",
    ),
    RuleCase(rule="water.frost-protected", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="water.frost-lasts-the-night",
        outcome=MET,
        changes=with_parts((tank("grey", "75 L", loss="2 W/K"), OUTSIDE)),
        why="75 x 0.9982 x 4186 / 2 / 3600 x ln(13/8) = 21.1 h",
    ),
    RuleCase(
        rule="water.frost-lasts-the-night",
        outcome=BROKEN,
        changes=with_parts((tank("grey", "75 L", loss="4 W/K"), OUTSIDE)),
        why="half of the hours: 10.6 h",
    ),
    RuleCase(
        rule="water.frost-lasts-the-night",
        outcome=UNKNOWN,
        changes=with_parts((tank("grey", "75 L"), OUTSIDE)),
    ),
    RuleCase(
        rule="water.frost-lasts-the-night",
        outcome=NOT_APPLICABLE,
        changes=with_parts((tank("grey", "75 L", heated=True), OUTSIDE)),
    ),
    RuleCase(
        rule="water.frost-lasts-the-night",
        outcome=NOT_APPLICABLE,
        changes=with_parts((tank("grey", "75 L"), OUTSIDE))
        | {"brief.climate.cold_night": "3 degC"},
    ),
)

SUPPLY = (
    RuleCase(
        rule="water.pump-serves-outlet",
        outcome=MET,
        changes=with_parts((tap(), {}), (PUMP, {})) | RUN_TO_TAP,
    ),
    RuleCase(
        rule="water.pump-serves-outlet",
        outcome=BROKEN,
        changes=with_parts((tap(), {}), (WEAK, {})) | RUN_TO_TAP,
        why="4 L/min at most",
    ),
    RuleCase(
        rule="water.pump-serves-outlet",
        outcome=BROKEN,
        changes=with_parts(
            (tap(), {}),
            (PUMP, {}),
            water_runs=[RUN | {"serves": "piece-a", "rise": "30 m"}],
        ),
        value=0.0,
        why="30 m of water is 294 kPa, above the cut-out",
    ),
    RuleCase(
        rule="water.pump-serves-outlet",
        outcome=UNKNOWN,
        changes=with_parts((tap(), {}), (PUMP, {})),
        why="no run serves the tap",
    ),
    RuleCase(
        rule="water.pump-serves-outlet",
        outcome=UNKNOWN,
        changes=with_parts((tap(), {})) | RUN_TO_TAP,
        why="no pump",
    ),
    RuleCase(rule="water.pump-serves-outlet", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="water.pump-draw-plausible",
        outcome=MET,
        changes=with_parts((PUMP | DRAW, {})),
        value=60.0,
        limit=5 * 120 / 60 / 0.35,
        why="5 L/min against 120 kPa at 0.35",
    ),
    RuleCase(
        rule="water.pump-draw-plausible",
        outcome=BROKEN,
        changes=with_parts(
            (PUMP | {"dc_load": {"modes": [{"name": "running", "draw": "20 W"}]}}, {})
        ),
    ),
    RuleCase(rule="water.pump-draw-plausible", outcome=UNKNOWN, changes=with_parts((PUMP, {}))),
    RuleCase(rule="water.pump-draw-plausible", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="water.air-gap",
        outcome=MET,
        changes=with_parts((tap(bore="19 mm", air_gap="38 mm"), {})),
        value=38.0,
        limit=38.0,
        why="two bores of 19 mm",
    ),
    RuleCase(
        rule="water.air-gap",
        outcome=BROKEN,
        changes=with_parts((tap(bore="10 mm", air_gap="24 mm"), {})),
        limit=25.0,
        why="not less than 25 mm",
    ),
    RuleCase(rule="water.air-gap", outcome=UNKNOWN, changes=with_parts((tap(), {}))),
    RuleCase(
        rule="water.air-gap",
        outcome=NOT_APPLICABLE,
        changes=with_parts(({"water_outlet": {"kind": "shower", "flow": "6 L/min"}}, {})),
    ),
    RuleCase(
        rule="water.scald-limit",
        outcome=MET,
        changes=with_parts((heater(set="45 degC"), {})),
    ),
    RuleCase(
        rule="water.scald-limit",
        outcome=MET,
        changes=with_parts((heater(mixes_to="42 degC"), {})),
        value=42.0,
        why="stored at 60 degC behind a mixing valve",
    ),
    RuleCase(
        rule="water.scald-limit",
        outcome=BROKEN,
        changes=with_parts((heater(mixes_to="55 degC"), {})),
    ),
    RuleCase(rule="water.scald-limit", outcome=UNKNOWN, changes=with_parts((heater(), {}))),
    RuleCase(rule="water.scald-limit", outcome=NOT_APPLICABLE),
    RuleCase(rule="water.stored-hot-enough", outcome=MET, changes=with_parts((heater(), {}))),
    RuleCase(
        rule="water.stored-hot-enough",
        outcome=BROKEN,
        changes=with_parts((heater(set="45 degC"), {})),
    ),
    RuleCase(rule="water.stored-hot-enough", outcome=NOT_APPLICABLE),
)
