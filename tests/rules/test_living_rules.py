"""Rules of the coupled year: every outcome, on results made by hand."""

from typing import Any

import pytest

from coachwright.living.model import CoolerSupply, InverterBay, Living, SiteYear
from coachwright.living.rules import RULES
from coachwright.model.finding import Outcome
from tests.rules.living_pieces import (
    BATTERY,
    COOLER,
    ELECTRIC,
    GRADE_ONE,
    GRADE_THREE,
    GRADE_TWO,
    HEATER,
    INVERTER,
    OPEN_FLAME,
    US,
    WET_KIT,
    hidden_inverter,
    with_parts,
)
from tests.support.living import (
    WORKING,
    cold_night,
    drying,
    envelope,
    fresh_air,
    grade,
    hot_day,
    living,
    month,
    nothing,
    year,
)
from tests.support.rule_cases import RuleCase, finding_of

MET, BROKEN, UNKNOWN = Outcome.MET, Outcome.BROKEN, Outcome.UNKNOWN
NOT_APPLICABLE = Outcome.NOT_APPLICABLE

WANTED = {"brief.independence_wanted": "3 d"}
MORE = {"brief.independence_wanted": "4 d"}
MOST = {"brief.independence_wanted": "6 d"}
NIGHT = {"brief.habits.night": "16 degC"}
QUIET = living()
NOTHING = nothing()


def case(rule: str, outcome: Outcome, result: Living, **fields: Any) -> RuleCase:
    """Return a case over a result made by hand."""
    return RuleCase(rule=f"living.{rule}", outcome=outcome, result=result, **fields)


def in_january(**fields: Any) -> Living:
    """Return a year whose January is changed."""
    return living(year(months=(month(1, **fields), *year().months[1:])))


def supplied(can_give_w: float | None) -> SiteYear:
    """Return a year whose air conditioner takes 1500 W through an inverter."""
    supply = CoolerSupply(
        name="cooler",
        input_w=1500.0,
        through_inverter=True,
        can_give_w=can_give_w,
        working=WORKING,
    )
    return year(supply=supply)


def bay(warmest_degc: float | None) -> SiteYear:
    """Return a year with an inverter that stands in the cabin."""
    made = InverterBay(
        room="cabin",
        names=("inverter",),
        most_loss_w=200.0,
        flow_m3_per_h=59.0,
        vent_m2=0.05,
        warmest_degc=warmest_degc,
        working=WORKING,
    )
    return year(bay=made)


DAYS = (
    case(
        "nine-of-ten-stays",
        MET,
        QUIET,
        changes=WANTED,
        value=3.0,
        limit=3.0,
        why="January, the poorest: 2 + 1 days",
    ),
    case("nine-of-ten-stays", BROKEN, QUIET, changes=MORE, value=3.0, limit=4.0),
    case(
        "nine-of-ten-stays",
        MET,
        living(season_months=(6, 7)),
        changes=MOST,
        value=8.0,
        limit=6.0,
        why="June, the poorer of the two: 2 + 6 days",
    ),
    case("nine-of-ten-stays", UNKNOWN, NOTHING, changes=WANTED, limit=3.0),
    case("nine-of-ten-stays", UNKNOWN, living(year(stands=())), changes=WANTED),
    case("nine-of-ten-stays", NOT_APPLICABLE, QUIET),
    case("five-of-ten-stays", MET, QUIET, changes=MORE, value=5.0, limit=4.0, why="4 + 1 days"),
    case("five-of-ten-stays", BROKEN, QUIET, changes=MOST, value=5.0, limit=6.0),
    case("five-of-ten-stays", UNKNOWN, NOTHING, changes=WANTED),
    case("five-of-ten-stays", NOT_APPLICABLE, QUIET),
    case("loads-served", MET, QUIET, value=0.0, limit=0.0),
    case(
        "loads-served",
        BROKEN,
        in_january(unmet_wh={"fridge": 40.0, "heater": 2.0}),
        value=42.0,
        why="40 + 2 Wh",
    ),
    case("loads-served", UNKNOWN, NOTHING),
    case("bank-takes-charge", MET, QUIET, changes=with_parts(BATTERY), value=0.0),
    case(
        "bank-takes-charge",
        BROKEN,
        in_january(bank_locked_h=12.0),
        changes=with_parts(BATTERY),
        value=12.0,
        limit=0.0,
    ),
    case("bank-takes-charge", UNKNOWN, NOTHING, changes=with_parts(BATTERY)),
    case("bank-takes-charge", NOT_APPLICABLE, QUIET),
)

COOLING = (
    case(
        "cooler-supplied",
        MET,
        living(supplied(2000.0)),
        changes=with_parts(COOLER),
        value=1500.0,
        limit=2000.0,
    ),
    case(
        "cooler-supplied",
        BROKEN,
        living(supplied(1200.0)),
        changes=with_parts(COOLER),
        value=1500.0,
        limit=1200.0,
    ),
    case("cooler-supplied", UNKNOWN, living(supplied(None)), changes=with_parts(COOLER)),
    case("cooler-supplied", UNKNOWN, NOTHING, changes=with_parts(COOLER)),
    case("cooler-supplied", NOT_APPLICABLE, living(year(supply=None))),
    case("cooler-hours", MET, QUIET, changes=with_parts(COOLER), value=9.0, limit=8.0),
    case(
        "cooler-hours",
        BROKEN,
        living(year(hot_day=hot_day(hours_without_sun_h=5.0))),
        changes=with_parts(COOLER),
        value=5.0,
        limit=8.0,
    ),
    case(
        "cooler-hours",
        MET,
        living(year(hot_day=hot_day(hours_without_sun_h=None))),
        changes=with_parts(COOLER),
        value=24.0,
        limit=8.0,
        why="held through the day: all of its 24 hours",
    ),
    case("cooler-hours", UNKNOWN, NOTHING, changes=with_parts(COOLER)),
    case("cooler-hours", NOT_APPLICABLE, QUIET),
    case("day-cool-enough", MET, QUIET, changes=with_parts(COOLER), value=25.0, limit=26.0),
    case(
        "day-cool-enough",
        BROKEN,
        living(year(hot_day=hot_day(reached_degc=29.0))),
        changes=with_parts(COOLER),
        value=29.0,
        limit=26.0,
    ),
    case("day-cool-enough", UNKNOWN, NOTHING, changes=with_parts(COOLER)),
    case("day-cool-enough", NOT_APPLICABLE, QUIET),
)

GRADES = (
    case("heating-grade-two", MET, QUIET, changes=GRADE_TWO, value=30.0, limit=20.0),
    case("heating-grade-two", MET, QUIET, changes=GRADE_THREE, value=30.0, limit=20.0),
    case(
        "heating-grade-two",
        BROKEN,
        living(grades=(grade(2, reached_degc=18.0),)),
        changes=GRADE_TWO,
        value=18.0,
        limit=20.0,
    ),
    case("heating-grade-two", UNKNOWN, NOTHING, changes=GRADE_TWO),
    case("heating-grade-two", NOT_APPLICABLE, QUIET, changes=GRADE_ONE),
    case("heating-grade-two-unasked", MET, QUIET, changes=with_parts(HEATER), value=30.0),
    case(
        "heating-grade-two-unasked",
        BROKEN,
        living(grades=(grade(2, reached_degc=18.0),)),
        changes=with_parts(HEATER),
    ),
    case("heating-grade-two-unasked", UNKNOWN, NOTHING, changes=with_parts(HEATER)),
    case("heating-grade-two-unasked", NOT_APPLICABLE, QUIET),
    case(
        "heating-grade-two-unasked",
        NOT_APPLICABLE,
        QUIET,
        changes=with_parts(HEATER) | GRADE_ONE,
    ),
    case("heating-grade-three", MET, QUIET, changes=GRADE_THREE, value=30.0, limit=20.0),
    case(
        "heating-grade-three",
        BROKEN,
        living(grades=(grade(3, reached_degc=12.0),)),
        changes=GRADE_THREE,
        value=12.0,
        limit=20.0,
    ),
    case("heating-grade-three", UNKNOWN, NOTHING, changes=GRADE_THREE),
    case("heating-grade-three", NOT_APPLICABLE, QUIET, changes=GRADE_TWO),
    case("heat-up", MET, QUIET, changes=GRADE_THREE, value=3.0, limit=4.0),
    case(
        "heat-up",
        BROKEN,
        living(grades=(grade(3, heat_up_h=5.5),)),
        changes=GRADE_THREE,
        value=5.5,
        limit=4.0,
    ),
    case(
        "heat-up",
        BROKEN,
        living(grades=(grade(3, heat_up_h=None),)),
        changes=GRADE_THREE,
        value=24.0,
        limit=4.0,
        why="followed for a day and never reached",
    ),
    case("heat-up", UNKNOWN, NOTHING, changes=GRADE_THREE),
    case("heat-up", NOT_APPLICABLE, QUIET, changes=GRADE_TWO),
    case("average-u", MET, QUIET, changes=GRADE_TWO, value=1.3, limit=1.7),
    case("average-u", BROKEN, QUIET, changes=GRADE_THREE, value=1.3, limit=1.2),
    case(
        "average-u",
        MET,
        living(envelope=envelope(mean_u_w_per_m2k=0.9)),
        changes=GRADE_THREE,
        value=0.9,
    ),
    case("average-u", UNKNOWN, NOTHING, changes=GRADE_TWO),
    case("average-u", NOT_APPLICABLE, QUIET),
)

WARMTH = (
    case("heater-enough", MET, QUIET, changes=with_parts(HEATER), value=2000.0, limit=1500.0),
    case(
        "heater-enough",
        BROKEN,
        living(year(cold_night=cold_night(heater_w=1200.0))),
        changes=with_parts(HEATER),
        value=1200.0,
        limit=1500.0,
    ),
    case(
        "heater-enough-at-worst",
        MET,
        QUIET,
        changes=with_parts(HEATER),
        value=2000.0,
        limit=1800.0,
    ),
    case(
        "heater-enough-at-worst",
        BROKEN,
        living(year(cold_night=cold_night(heater_w=1600.0))),
        changes=with_parts(HEATER),
        value=1600.0,
        limit=1800.0,
        why="enough for the mean loss of 1500 W, not for the greatest",
    ),
    case("heater-enough-at-worst", UNKNOWN, NOTHING, changes=with_parts(HEATER)),
    case("heater-enough-at-worst", NOT_APPLICABLE, QUIET),
    case("heater-enough", UNKNOWN, NOTHING, changes=with_parts(HEATER)),
    case("heater-enough", NOT_APPLICABLE, QUIET),
    case("night-warm-enough", MET, QUIET, changes=NIGHT, value=16.0, limit=16.0),
    case(
        "night-warm-enough",
        BROKEN,
        living(year(cold_night=cold_night(reached_low_degc=11.0))),
        changes=NIGHT,
        value=11.0,
    ),
    case("night-warm-enough", UNKNOWN, NOTHING),
    case("night-warm-enough", NOT_APPLICABLE, living(year(cold_night=None))),
    case("comfort", MET, QUIET, value=0.99, limit=0.95),
    case("comfort", BROKEN, in_january(comfort_frac=0.8), value=0.8, limit=0.95),
    case("comfort", UNKNOWN, NOTHING),
    case("no-frost", MET, QUIET, value=0.0, limit=0.0, subject="fresh-tank"),
    case(
        "no-frost",
        BROKEN,
        in_january(frost_h={"fresh-tank": 0.0, "drain": 30.0}),
        value=30.0,
        subject="drain",
    ),
    case("no-frost", UNKNOWN, NOTHING),
    case(
        "no-frost",
        NOT_APPLICABLE,
        living(year(months=tuple(month(number, frost_h={}) for number in range(1, 13)))),
    ),
)

STALL = (
    case(
        "kit-dry",
        MET,
        living(year(drying=drying())),
        changes=WET_KIT,
        value=6.0,
        limit=8.0,
    ),
    case(
        "kit-dry",
        BROKEN,
        living(year(drying=drying(hours_h=9.5))),
        changes=WET_KIT,
        value=9.5,
        limit=8.0,
    ),
    case(
        "kit-dry",
        BROKEN,
        living(year(drying=drying(hours_h=None))),
        changes=WET_KIT,
        value=72.0,
        why="followed for three days and never dry",
    ),
    case("kit-dry", UNKNOWN, QUIET, changes=WET_KIT),
    case("kit-dry", NOT_APPLICABLE, living(year(drying=drying()))),
    case("stall-heat", MET, living(year(drying=drying())), value=48.0, limit=60.0),
    case(
        "stall-heat",
        BROKEN,
        living(year(drying=drying(reachable_degc=71.0, hot=True))),
        value=71.0,
        limit=60.0,
    ),
    case("stall-heat", NOT_APPLICABLE, QUIET),
    case("burner-room-sealed", MET, QUIET, changes=with_parts(HEATER), value=1.0),
    case("burner-room-sealed", BROKEN, QUIET, changes=with_parts(OPEN_FLAME), value=0.0),
    case("burner-room-sealed", NOT_APPLICABLE, QUIET, changes=with_parts(ELECTRIC)),
)

AIR = (
    case("air-good", MET, QUIET, value=900.0, limit=1000.0),
    case("air-good", BROKEN, in_january(co2_night_ppm=1200.0), value=1200.0, limit=1000.0),
    case("air-good", UNKNOWN, NOTHING),
    case("air-asleep", MET, in_january(co2_night_ppm=1200.0), value=1200.0, limit=1500.0),
    case("air-asleep", BROKEN, in_january(co2_night_ppm=2300.0), value=2300.0, limit=1500.0),
    case("air-asleep", UNKNOWN, NOTHING),
    case("air-at-most", MET, QUIET, value=1400.0, limit=5000.0),
    case("air-at-most", BROKEN, in_january(co2_most_ppm=5200.0), value=5200.0, limit=5000.0),
    case("air-at-most", UNKNOWN, NOTHING),
    case("fresh-air", MET, QUIET, value=45.0, limit=30.0),
    case(
        "fresh-air",
        BROKEN,
        living(fresh_air=fresh_air(open_m3_per_h=12.0)),
        value=12.0,
        limit=30.0,
    ),
    case("fresh-air", UNKNOWN, NOTHING),
    case("dry-lining", MET, QUIET, value=0.0, limit=0.0),
    case("dry-lining", BROKEN, in_january(wet_h={"lining": 5.0}), value=5.0, limit=0.0),
    case("dry-lining", UNKNOWN, NOTHING),
    case("dry-ribs", MET, QUIET, value=10.0, limit=72.0),
    case("dry-ribs", BROKEN, in_january(wet_h={"rib": 300.0}), value=300.0, limit=72.0),
    case("dry-ribs", UNKNOWN, NOTHING),
    case("dry-glass", MET, QUIET, value=100.0, limit=240.0),
    case("dry-glass", BROKEN, in_january(wet_h={"glass": 500.0}), value=500.0, limit=240.0),
    case("dry-glass", UNKNOWN, NOTHING),
    case(
        "dry-glass",
        NOT_APPLICABLE,
        living(year(months=tuple(month(number, wet_h={}) for number in range(1, 13)))),
    ),
    case("inverter-bay-warmth", MET, living(bay(33.0)), value=33.0, limit=40.0),
    case("inverter-bay-warmth", BROKEN, living(bay(46.0)), value=46.0, limit=40.0),
    case("inverter-bay-warmth", UNKNOWN, living(bay(None))),
    case("inverter-bay-warmth", UNKNOWN, NOTHING, changes=with_parts(INVERTER)),
    case("inverter-bay-warmth", NOT_APPLICABLE, living(year(bay=None))),
    case(
        "inverter-bay-air",
        MET,
        QUIET,
        changes=hidden_inverter("600 cm2"),
        value=0.06,
        limit=0.05,
    ),
    case("inverter-bay-air", BROKEN, QUIET, changes=hidden_inverter("200 cm2"), value=0.02),
    case("inverter-bay-air", UNKNOWN, QUIET, changes=hidden_inverter()),
    case("inverter-bay-air", UNKNOWN, NOTHING, changes=hidden_inverter("600 cm2")),
    case("inverter-bay-air", NOT_APPLICABLE, QUIET, changes=with_parts(INVERTER)),
)

CASES: tuple[RuleCase, ...] = (*DAYS, *COOLING, *GRADES, *WARMTH, *STALL, *AIR)


@pytest.mark.parametrize("each", CASES, ids=lambda each: f"{each.rule} {each.outcome}")
def test_a_rule_comes_out_as_it_should(each: RuleCase) -> None:
    finding = finding_of(each, RULES, lambda _build: each.result)
    if each.value is not None:
        assert finding.value == pytest.approx(each.value), each.why
    if each.limit is not None:
        assert finding.limit == pytest.approx(each.limit), each.why
    assert bool(finding.missing) == (each.outcome is UNKNOWN)


def test_a_grade_that_nobody_asks_for_is_noted_in_europe_alone() -> None:
    american = case("heating-grade-two-unasked", MET, QUIET, changes=with_parts(HEATER) | US)
    with pytest.raises(AssertionError, match="no finding"):
        finding_of(american, RULES, lambda _build: american.result)


def test_nothing_recalled_from_memory_stops_a_build() -> None:
    assert {rule.severity for rule in RULES} == {"caution", "note"}
