"""Cases of the rules of charging."""

from coachwright.model.finding import Outcome
from tests.rules.electrics_bank_cases import LAMP, MIXED, ONE, case
from tests.support.builds import Data
from tests.support.electrics import CONTROLLER, DCDC, LFP, PANEL, SHORE, fitted, load
from tests.support.rule_cases import RuleCase

SUN = ("sun", "solar_controller", CONTROLLER)
ROOF = ("roof-a", "solar_panel", PANEL)
ROOF_TWO = ("roof-b", "solar_panel", PANEL)
ROOF_THREE = ("roof-c", "solar_panel", PANEL)
BARE_PANEL = {key: value for key, value in PANEL.items() if key != "voltage_coefficient"}
UNFUSED = {key: value for key, value in PANEL.items() if key != "series_fuse"}
MAINS = ("mains", "shore_charger", SHORE)
ENGINE = ("engine", "dcdc_charger", DCDC)
US: Data = {"brief.jurisdiction": "us"}
MIXED_SUN = MIXED | {
    "own_parts": [*MIXED["own_parts"], *fitted(SUN, ROOF, ROOF_TWO)["own_parts"]],
    "fittings": [*MIXED["fittings"], *fitted(SUN, ROOF, ROOF_TWO)["fittings"]],
}
TOUGH = LFP | {"charge_from": "-20 degC"}

NOTHING = tuple(
    case(rule, Outcome.NOT_APPLICABLE, {})
    for rule in (
        "cold-charging",
        "charger-within-bank",
        "chargers-within-bank",
        "alternator-share",
        "smart-alternator",
        "hookup-charger",
        "panels-on-controller",
        "no-panel-left-over",
        "panel-cold-voltage",
        "controller-clipping",
        "panels-alike",
        "panel-series-fuse",
        "independence-wanted",
        "balance-covers-use",
    )
)

CHARGERS: tuple[RuleCase, ...] = (
    case(
        "cold-charging",
        Outcome.MET,
        fitted(("bank", "battery", TOUGH), MAINS),
        subject="bank",
        value=-8,
        limit=-20,
    ),
    case("cold-charging", Outcome.BROKEN, fitted(ONE, MAINS), value=-8, limit=0),
    case(
        "cold-charging",
        Outcome.MET,
        fitted(("bank", "battery", LFP | {"heated": True}), MAINS),
        value=0,
        limit=0,
        why="pads keep it at the temperature from which it may be charged",
    ),
    case("cold-charging", Outcome.NOT_APPLICABLE, fitted(ONE)),
    case("charger-within-bank", Outcome.MET, fitted(ONE, MAINS), value=20, limit=50),
    case(
        "charger-within-bank",
        Outcome.BROKEN,
        fitted(ONE, ("mains", "shore_charger", SHORE | {"charge_limit": "60 A"})),
        value=60,
    ),
    case("charger-within-bank", Outcome.UNKNOWN, MIXED),
    case("chargers-within-bank", Outcome.MET, fitted(ONE, MAINS, ENGINE), value=50, limit=50),
    case("chargers-within-bank", Outcome.BROKEN, fitted(ONE, MAINS, ENGINE, SUN), value=80),
    case("chargers-within-bank", Outcome.UNKNOWN, MIXED),
    case(
        "alternator-share",
        Outcome.MET,
        fitted(ONE, ENGINE),
        value=30 * 12.8 / (0.9 * 12),
        limit=40,
        why="half of 180 A less 50 A",
    ),
    case(
        "alternator-share",
        Outcome.BROKEN,
        fitted(ONE, ("engine", "dcdc_charger", DCDC | {"charge_limit": "40 A"})),
        value=40 * 12.8 / (0.9 * 12),
    ),
    case("smart-alternator", Outcome.MET, fitted(ONE, ENGINE), value=1),
    case("smart-alternator", Outcome.BROKEN, fitted(ONE), value=0),
    case(
        "smart-alternator",
        Outcome.NOT_APPLICABLE,
        fitted(ONE, own_vehicle__alternator__smart=False),
    ),
    case("hookup-charger", Outcome.MET, fitted(ONE, MAINS, brief__stay__hookup="20 %"), value=1),
    case("hookup-charger", Outcome.BROKEN, fitted(ONE, brief__stay__hookup="20 %"), value=0),
)

PANELS: tuple[RuleCase, ...] = (
    case("panels-on-controller", Outcome.MET, fitted(SUN, ROOF), subject="roof-a"),
    case("panels-on-controller", Outcome.BROKEN, fitted(ROOF), subject="roof-a", value=0),
    case("no-panel-left-over", Outcome.MET, fitted(ONE, SUN, ROOF, ROOF_TWO), value=0),
    case(
        "no-panel-left-over",
        Outcome.BROKEN,
        fitted(ONE, SUN, ("low", "solar_panel", PANEL | {"rated_voltage": "10 V"})),
        value=1,
        why="two panels of 10 V make one string for 14.6 V",
    ),
    case("no-panel-left-over", Outcome.UNKNOWN, fitted(SUN, ROOF)),
    case(
        "panel-cold-voltage",
        Outcome.MET,
        fitted(ONE, SUN, ROOF),
        value=24 * (1 + 0.003 * 33),
        limit=100,
        why="33 K below 25 degC",
    ),
    case(
        "panel-cold-voltage",
        Outcome.BROKEN,
        fitted(ONE, ("sun", "solar_controller", CONTROLLER | {"input_limit": "25 V"}), ROOF),
        limit=25,
    ),
    case("panel-cold-voltage", Outcome.UNKNOWN, MIXED_SUN),
    case(
        "panel-cold-voltage-us",
        Outcome.MET,
        fitted(ONE, SUN, ("roof", "solar_panel", BARE_PANEL)) | US,
        value=24 * 1.14,
        why="NEC Table 690.7(A) at -8 degC",
    ),
    case(
        "panel-cold-voltage-us",
        Outcome.BROKEN,
        fitted(
            ONE,
            ("sun", "solar_controller", CONTROLLER | {"input_limit": "27 V"}),
            ("roof", "solar_panel", BARE_PANEL),
        )
        | US,
        value=27.36,
    ),
    case(
        "panel-cold-voltage-us",
        Outcome.UNKNOWN,
        fitted(
            ONE,
            SUN,
            ("roof", "solar_panel", BARE_PANEL),
            brief__climate__cold_night="-45 degC",
        )
        | US,
        why="the table ends at -40 degC",
    ),
    case("panel-cold-voltage-us", Outcome.NOT_APPLICABLE, US),
    case(
        "controller-clipping",
        Outcome.MET,
        fitted(ONE, SUN, ROOF, ROOF_TWO),
        value=360 / 12.8,
        limit=30,
    ),
    case(
        "controller-clipping",
        Outcome.BROKEN,
        fitted(ONE, SUN, ROOF, ROOF_TWO, ROOF_THREE),
        value=540 / 12.8,
    ),
    case("controller-clipping", Outcome.UNKNOWN, MIXED_SUN),
    case("panels-alike", Outcome.MET, fitted(ONE, SUN, ROOF, ROOF_TWO), value=0, limit=0.05),
    case(
        "panels-alike",
        Outcome.BROKEN,
        fitted(ONE, SUN, ROOF, ("high", "solar_panel", PANEL | {"rated_voltage": "40 V"})),
        value=0.5,
    ),
    case("panels-alike", Outcome.UNKNOWN, MIXED_SUN),
    case("panels-alike", Outcome.NOT_APPLICABLE, fitted(ONE, SUN, ROOF)),
    case(
        "panel-series-fuse",
        Outcome.MET,
        fitted(ONE, SUN, ROOF, ROOF_TWO),
        value=12,
        limit=15,
        why="1.25 x 9.6 A from the other string",
    ),
    case(
        "panel-series-fuse",
        Outcome.BROKEN,
        fitted(ONE, SUN, ROOF, ROOF_TWO, ROOF_THREE),
        value=24,
    ),
    case(
        "panel-series-fuse",
        Outcome.UNKNOWN,
        fitted(ONE, SUN, ROOF, ("roof", "solar_panel", UNFUSED)),
    ),
    case("panel-series-fuse-us", Outcome.MET, fitted(ONE, SUN, ROOF, ROOF_TWO) | US, value=12),
    case(
        "panel-series-fuse-us",
        Outcome.BROKEN,
        fitted(ONE, SUN, ROOF, ROOF_TWO, ROOF_THREE) | US,
        value=24,
    ),
    case(
        "panel-series-fuse-us",
        Outcome.UNKNOWN,
        fitted(ONE, SUN, ROOF, ("roof", "solar_panel", UNFUSED)) | US,
    ),
    case("panel-series-fuse-us", Outcome.NOT_APPLICABLE, fitted(ONE, SUN, ROOF) | US),
)


def _wanted(days: str, **more: object) -> Data:
    return fitted(ONE, LAMP, brief__independence_wanted=days, **more)


DAYS: tuple[RuleCase, ...] = (
    case(
        "independence-wanted",
        Outcome.MET,
        _wanted("4 d"),
        subject="summer",
        value=100 * 12.8 * 0.8 / 200,
        limit=4,
        why="1024 Wh at 200 Wh a day, no panel",
    ),
    case("independence-wanted", Outcome.BROKEN, _wanted("6 d"), subject="summer"),
    case("independence-wanted", Outcome.UNKNOWN, fitted(LAMP, brief__independence_wanted="2 d")),
    case(
        "independence-wanted",
        Outcome.UNKNOWN,
        fitted(
            ONE,
            LAMP,
            SUN,
            ROOF,
            brief__independence_wanted="2 d",
            brief__climate__winter_sun=None,
        ),
        subject="winter",
    ),
    case(
        "balance-covers-use",
        Outcome.MET,
        fitted(ONE, ("clock", "dc_load", load("10 W")), SUN, ROOF),
        subject="summer",
    ),
    case("balance-covers-use", Outcome.BROKEN, fitted(ONE, LAMP), subject="summer", value=-200),
    case("balance-covers-use", Outcome.UNKNOWN, MIXED),
)

CHARGING_CASES: tuple[RuleCase, ...] = (*NOTHING, *CHARGERS, *PANELS, *DAYS)
