"""Cases of the rules of inverter, shore power and outlets."""

from coachwright.model.finding import Outcome
from tests.rules.electrics_bank_cases import ONE, case
from tests.support.builds import Data
from tests.support.electrics import INVERTER, SHORE, fitted, load
from tests.support.rule_cases import RuleCase

AC = ("ac", "inverter", INVERTER)
KETTLE = ("kettle", "ac_load", load("700 W"))
TOASTER = ("toaster", "ac_load", load("600 W"))
OVEN = ("oven", "ac_load", load("1800 W"))
US: Data = {"brief.jurisdiction": "us"}
UK: Data = {"brief.jurisdiction": "uk"}
SHORE_ONLY = ("heater", "ac_load", load("2500 W", supply="shore only"))


def _outlet(name: str, *, protected: bool, kind: str = "AC") -> tuple[str, str, Data]:
    return (
        name,
        "outlet",
        {"kind": kind, "limit": "15 A", "ground_fault_protected": protected},
    )


SAFE, BARE = _outlet("galley", protected=True), _outlet("bed", protected=False)
USB = _outlet("usb", protected=False, kind="USB")


def _compressor(surge: str) -> tuple[str, str, Data]:
    return ("cooler", "ac_load", load("500 W", surge=surge))


INVERTER_CASES: tuple[RuleCase, ...] = (
    *(
        case(rule, Outcome.NOT_APPLICABLE, fitted(ONE, AC))
        for rule in (
            "inverter-needed",
            "inverter-carries-largest-load",
            "inverter-carries-all-loads",
            "inverter-margin",
            "inverter-starts-largest-load",
            "inverter-starts-on-top",
            "shore-supply-europe",
            "leakage-breaker",
        )
    ),
    case("inverter-carries-all-loads", Outcome.NOT_APPLICABLE, fitted(ONE, KETTLE)),
    case("inverter-needed", Outcome.MET, fitted(ONE, KETTLE, AC), subject="kettle", value=1),
    case("inverter-needed", Outcome.BROKEN, fitted(ONE, KETTLE), value=0, limit=1),
    case(
        "inverter-needed",
        Outcome.BROKEN,
        fitted(
            ONE,
            brief__habits__devices=[
                {"name": "laptop", "draw": "65 W", "use": "4 h/day", "supply": "inverter"}
            ],
        ),
        subject="laptop",
    ),
    case(
        "inverter-carries-largest-load",
        Outcome.MET,
        fitted(ONE, KETTLE, TOASTER, AC),
        subject="kettle",
        value=700,
        limit=1000,
    ),
    case(
        "inverter-carries-largest-load",
        Outcome.BROKEN,
        fitted(ONE, KETTLE, ("oven", "ac_load", load("1800 W", hours=0)), AC),
        subject="oven",
        value=1800,
        why="a load that is not used by habit can still be switched on",
    ),
    case("inverter-carries-all-loads", Outcome.MET, fitted(ONE, KETTLE, AC), value=700),
    case(
        "inverter-carries-all-loads",
        Outcome.BROKEN,
        fitted(ONE, KETTLE, TOASTER, AC),
        value=1300,
        limit=1000,
    ),
    case("inverter-margin", Outcome.MET, fitted(ONE, KETTLE, AC), value=910, why="1.3 x 700"),
    case(
        "inverter-margin",
        Outcome.BROKEN,
        fitted(ONE, ("kettle", "ac_load", load("800 W")), AC),
        value=1040,
        why="1.3 x 800",
    ),
    case(
        "inverter-starts-largest-load",
        Outcome.MET,
        fitted(ONE, _compressor("1900 W"), AC),
        value=1900,
        limit=2000,
    ),
    case(
        "inverter-starts-largest-load",
        Outcome.BROKEN,
        fitted(ONE, _compressor("2500 W"), AC),
        subject="cooler",
        value=2500,
    ),
    case(
        "inverter-starts-on-top",
        Outcome.MET,
        fitted(ONE, _compressor("1300 W"), KETTLE, AC),
        value=2000,
        why="700 W running and 1300 W starting",
    ),
    case(
        "inverter-starts-on-top",
        Outcome.BROKEN,
        fitted(ONE, _compressor("1400 W"), KETTLE, AC),
        value=2100,
    ),
    case(
        "shore-supply-us",
        Outcome.MET,
        fitted(SHORE_ONLY) | US,
        value=2500,
        limit=2880,
        why="30 A x 120 V / 1.25",
    ),
    case("shore-supply-us", Outcome.BROKEN, fitted(SHORE_ONLY, TOASTER) | US, value=3100),
    case("shore-supply-us", Outcome.NOT_APPLICABLE, US),
    case("shore-supply-europe", Outcome.MET, fitted(SHORE_ONLY), value=2500, limit=2944),
    case(
        "shore-supply-europe",
        Outcome.BROKEN,
        fitted(SHORE_ONLY, TOASTER, ONE, ("mains", "shore_charger", SHORE)) | UK,
        value=3100 + 20 * 14.6 / 0.9,
        why="the charger at the bank's charging voltage of 14.6 V and 90 %",
    ),
    case("ground-fault-protection", Outcome.MET, fitted(SAFE, BARE) | US, value=1, limit=1),
    case("ground-fault-protection", Outcome.BROKEN, fitted(BARE) | US, value=0),
    case("ground-fault-protection", Outcome.NOT_APPLICABLE, fitted(USB) | US),
    case("ground-fault-outlets", Outcome.MET, fitted(SAFE, BARE) | US, subject="galley"),
    case("ground-fault-outlets", Outcome.BROKEN, fitted(SAFE, BARE) | US, subject="bed"),
    case("ground-fault-outlets", Outcome.NOT_APPLICABLE, US),
    case("leakage-breaker", Outcome.MET, fitted(SAFE) | UK, subject="galley"),
    case("leakage-breaker", Outcome.BROKEN, fitted(BARE), subject="bed", value=0),
)
