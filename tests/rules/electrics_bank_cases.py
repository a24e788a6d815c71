"""Cases of the bank's rules."""

from coachwright.model.finding import Outcome
from tests.support.builds import Data
from tests.support.electrics import AGM, INVERTER, LFP, SHORE, fitted, load
from tests.support.rule_cases import RuleCase

ONE = ("bank-a", "battery", LFP)
TWO = ("bank-b", "battery", LFP)
THREE = ("bank-c", "battery", LFP)
LAMP = ("lamp", "dc_load", load("100 W"))
SHORE_24 = SHORE | {"battery": "24 V"}
MIXED = fitted(ONE, ("odd", "battery", AGM), LAMP, ("mains", "shore_charger", SHORE))
BIG = LFP | {"capacity": "200 Ah"}


def case(rule: str, outcome: Outcome, changes: Data, **more: object) -> RuleCase:
    return RuleCase(rule=f"electrics.{rule}", outcome=outcome, changes=changes, **more)  # type: ignore[arg-type]


NOTHING = tuple(
    case(rule, Outcome.NOT_APPLICABLE, {})
    for rule in (
        "battery-needed",
        "bank-of-one-chemistry",
        "bank-of-one-kind",
        "no-battery-left-over",
        "batteries-in-parallel",
        "batteries-in-series",
        "devices-fit-bank-voltage",
        "loads-fit-bank-voltage",
        "bank-carries-largest-load",
        "bank-carries-all-loads",
        "leisure-battery-size",
        "house-voltage-in-standard",
    )
)

BANK_CASES: tuple[RuleCase, ...] = (
    *NOTHING,
    case("battery-needed", Outcome.MET, fitted(ONE, LAMP), value=1, limit=1),
    case("battery-needed", Outcome.BROKEN, fitted(LAMP), value=0),
    case("bank-of-one-chemistry", Outcome.MET, fitted(ONE, TWO), value=1),
    case("bank-of-one-chemistry", Outcome.BROKEN, MIXED, value=2, limit=1),
    case("bank-of-one-kind", Outcome.MET, fitted(ONE, TWO), value=1),
    case("bank-of-one-kind", Outcome.BROKEN, fitted(ONE, ("big", "battery", BIG)), value=2),
    case("no-battery-left-over", Outcome.MET, fitted(ONE, TWO), value=0),
    case(
        "no-battery-left-over",
        Outcome.BROKEN,
        fitted(ONE, TWO, THREE, ("mains", "shore_charger", SHORE_24)),
        value=1,
        why="three 12 V batteries on a 24 V system: one string of two, one over",
    ),
    case("batteries-in-parallel", Outcome.MET, fitted(ONE, TWO), value=2, limit=2),
    case("batteries-in-parallel", Outcome.BROKEN, fitted(ONE, TWO, THREE), value=3, limit=2),
    case(
        "batteries-in-series",
        Outcome.MET,
        fitted(ONE, TWO, ("mains", "shore_charger", SHORE_24)),
        value=2,
        limit=2,
    ),
    case(
        "batteries-in-series",
        Outcome.BROKEN,
        fitted(
            *((f"cell-{at}", "battery", LFP) for at in range(4)),
            ("mains", "shore_charger", SHORE | {"battery": "48 V"}),
        ),
        value=4,
        limit=2,
    ),
    case(
        "devices-fit-bank-voltage",
        Outcome.MET,
        fitted(ONE, ("mains", "shore_charger", SHORE)),
        value=12,
        limit=12,
        why="12.8 V is a 12 V system",
    ),
    case(
        "devices-fit-bank-voltage",
        Outcome.MET,
        fitted(
            ONE,
            TWO,
            ("mains", "shore_charger", SHORE_24),
            (
                "sun",
                "solar_controller",
                {"input_limit": "100 V", "charge_limit": "20 A", "battery": ["12 V", "24 V"]},
            ),
        ),
        subject="sun",
        value=24,
    ),
    case(
        "devices-fit-bank-voltage",
        Outcome.BROKEN,
        fitted(ONE, TWO, ("mains", "shore_charger", SHORE_24), ("ac", "inverter", INVERTER)),
        subject="ac",
        value=12,
        limit=24,
    ),
    case("devices-fit-bank-voltage", Outcome.UNKNOWN, MIXED),
    case("loads-fit-bank-voltage", Outcome.MET, fitted(ONE, LAMP), value=12),
    case(
        "loads-fit-bank-voltage",
        Outcome.BROKEN,
        fitted(ONE, ("pump", "dc_load", load("50 W", nominal="24 V"))),
        value=24,
        limit=12,
    ),
    case("loads-fit-bank-voltage", Outcome.UNKNOWN, MIXED),
    case(
        "bank-carries-largest-load",
        Outcome.MET,
        fitted(ONE, ("kettle", "dc_load", load("1280 W"))),
        value=100,
        limit=100,
        why="1280 W / 12.8 V",
    ),
    case(
        "bank-carries-largest-load",
        Outcome.BROKEN,
        fitted(ONE, ("oven", "ac_load", load("1800 W")), ("ac", "inverter", INVERTER)),
        value=156.25,
        why="1800 / 0.9 / 12.8",
    ),
    case("bank-carries-largest-load", Outcome.UNKNOWN, MIXED),
    case(
        "bank-carries-all-loads",
        Outcome.MET,
        fitted(ONE, LAMP, ("fan", "dc_load", load("110 W"))),
        value=20,
        limit=100,
        why="210 W at the cut-off of 10.5 V",
    ),
    case(
        "bank-carries-all-loads",
        Outcome.BROKEN,
        fitted(ONE, LAMP, ("oven", "ac_load", load("1800 W")), ("ac", "inverter", INVERTER)),
        value=(100 + 1000 / 0.9) / 10.5,
        why="the inverter gives no more than its 1000 W",
    ),
    case("bank-carries-all-loads", Outcome.UNKNOWN, MIXED),
    case("leisure-battery-size", Outcome.MET, fitted(ONE), value=100, limit=60),
    case(
        "leisure-battery-size",
        Outcome.BROKEN,
        fitted(("small", "battery", LFP | {"capacity": "50 Ah"})),
        value=50,
    ),
    case("leisure-battery-size", Outcome.UNKNOWN, MIXED),
    case("house-voltage-in-standard", Outcome.MET, fitted(ONE), value=12),
    case(
        "house-voltage-in-standard",
        Outcome.BROKEN,
        fitted(ONE, TWO, ("mains", "shore_charger", SHORE_24)),
        value=24,
    ),
)
