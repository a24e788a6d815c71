"""Each road rule with a build for every outcome that it can have.

The weights are given: travelling 1500 kg front and 1700 kg rear, each worst case 50 kg more, the
95 % bound 40 kg; the centre of gravity 800 mm high.
"""

import pytest

from coachwright.model.build import Build
from coachwright.model.finding import Outcome
from coachwright.road.model import Road
from coachwright.road.rules import RULES
from coachwright.road.stage import stage
from tests.road.given_weights import weights
from tests.support.builds import Data, fitting, part
from tests.support.rule_cases import RuleCase, finding_of

MET, BROKEN = Outcome.MET, Outcome.BROKEN
UNKNOWN, NOT_APPLICABLE = Outcome.UNKNOWN, Outcome.NOT_APPLICABLE

US: Data = {"brief.jurisdiction": "us"}
UK: Data = {"brief.jurisdiction": "uk"}
LARGER, SAME, SMALLER = "245/75R16C", "225/75R16C", "195/75R16C"
"""Overall diameters 773.9, 743.9 and 698.9 mm; the placard's is the middle one."""


def put(*pairs: tuple[Data, Data]) -> Data:
    return {"own_parts": [each for each, _ in pairs], "fittings": [each for _, each in pairs]}


def tyres(size: str = SAME) -> Data:
    facet = {
        "size": size,
        "kind": "commercial",
        "load_index_single": 120,
        "speed_symbol": "R",
        "rated_pressure": "525 kPa",
    }
    return put((part("tyres", tyre=facet), fitting("tyres", "tyres", mounting="wheels")))


def thing(
    name: str, mounting: str, mass: str = "20 kg", at: tuple[int, int, int] = (4800, -700, 300)
) -> tuple[Data, Data]:
    body = {"size": ["100 mm", "100 mm", "100 mm"], "mass": mass}
    corner = [f"{length} mm" for length in at]
    return part(name, body=body), fitting(name, name, at=corner, mounting=mounting)


def hung(mounting: str, mass: str) -> Data:
    return put(thing("crate", mounting, mass))


def loaded(facet: str, mounting: str, mass: str, **limits: str) -> Data:
    """Return a 1 kg carrier with a crate on it."""
    body = {"size": ["100 mm", "100 mm", "100 mm"], "mass": mass}
    return put(
        (part("carrier", **{facet: limits}), fitting("carrier", "carrier", mounting=mounting)),
        (part("crate", body=body), fitting("crate", "crate", on="carrier")),
    )


def deck(mass: str) -> Data:
    return loaded("roof_rack", "roof", mass, load_limit="200 kg", standing_limit="150 kg")


def ladder(**facet: str) -> Data:
    given = {"first_rung": "500 mm", "clear_width": "300 mm"} | facet
    return put((part("ladder", ladder=given), fitting("ladder", "ladder", mounting="side")))


def single_step() -> Data:
    given = {"first_rung": "300 mm", "clear_width": "600 mm"}
    step = part("step", ladder=given, outside_device={"kind": "step"})
    return put((step, fitting("step", "step", mounting="side")))


def no_limit(name: str) -> Data:
    return {f"own_vehicle.limits.{name}": None}


def index(single: int) -> Data:
    return {"own_vehicle.tyre.load_index_single": single}


NO_DUAL: Data = {"own_vehicle.tyre.dual_rear": True, "own_vehicle.tyre.load_index_dual": None}

TYRE_CASES = (
    # load index 118 is 1320 kg a tyre, 100 is 800 kg, 105 is 925 kg
    RuleCase(
        rule="road.tyres-carry-axle", outcome=MET, subject="rear axle", value=1700, limit=2640
    ),
    RuleCase(
        rule="road.tyres-carry-axle",
        outcome=BROKEN,
        changes=index(100),
        subject="rear axle",
        value=1700,
        limit=1600,
    ),
    RuleCase(rule="road.tyres-carry-axle", outcome=UNKNOWN, changes=NO_DUAL, subject="rear axle"),
    RuleCase(
        rule="road.tyres-carry-axle-at-worst",
        outcome=MET,
        subject="rear axle",
        value=1790,
        limit=2640,
        why="1700 + 50 + 40",
    ),
    RuleCase(
        rule="road.tyres-carry-axle-at-worst",
        outcome=BROKEN,
        changes=index(103),
        subject="rear axle",
        value=1790,
        limit=1750,
        why="875 kg a tyre",
    ),
    RuleCase(
        rule="road.tyres-carry-axle-at-worst",
        outcome=UNKNOWN,
        changes=NO_DUAL,
        subject="rear axle",
    ),
    RuleCase(
        rule="road.tyres-cover-axle-rating-us",
        outcome=MET,
        changes=US,
        subject="rear axle",
        value=2100,
        limit=2640,
    ),
    RuleCase(
        rule="road.tyres-cover-axle-rating-us",
        outcome=BROKEN,
        changes=US | index(111) | {"own_vehicle.tyre.kind": "passenger"},
        subject="rear axle",
        value=2100,
        limit=2180 / 1.1,
        why="2 x 1090 kg carries 2100 kg, but a passenger tyre counts for 1/1.10 of it",
    ),
    RuleCase(
        rule="road.tyres-cover-axle-rating-us",
        outcome=UNKNOWN,
        changes=US | NO_DUAL,
        subject="rear axle",
    ),
    RuleCase(rule="road.tyres-cover-axle-rating", outcome=MET, subject="rear axle", limit=2640),
    RuleCase(
        rule="road.tyres-cover-axle-rating",
        outcome=BROKEN,
        changes=UK | index(105),
        subject="rear axle",
        value=2100,
        limit=1850,
    ),
    RuleCase(
        rule="road.tyres-cover-axle-rating",
        outcome=UNKNOWN,
        changes=NO_DUAL,
        subject="rear axle",
    ),
    RuleCase(rule="road.tyre-speed-symbol", outcome=MET, value=160, limit=170),
    RuleCase(
        rule="road.tyre-speed-symbol",
        outcome=BROKEN,
        changes={"own_vehicle.tyre.speed_symbol": "N"},
        value=160,
        limit=140,
    ),
    RuleCase(
        rule="road.tyre-pressure-for-load",
        outcome=MET,
        subject="rear axle",
        value=525 * (1790 / 2640) ** 1.25,
        limit=500,
    ),
    RuleCase(
        rule="road.tyre-pressure-for-load",
        outcome=BROKEN,
        changes={"own_vehicle.tyre.rear_pressure": "300 kPa"},
        subject="rear axle",
        limit=300,
    ),
    RuleCase(
        rule="road.tyre-pressure-for-load",
        outcome=UNKNOWN,
        changes={"own_vehicle.tyre.kind": "camper"},
        subject="rear axle",
    ),
    RuleCase(
        rule="road.speedometer-never-low",
        outcome=MET,
        changes=tyres(LARGER) | {"own_vehicle.tyre.speedometer_at_100": "105 km/h"},
        value=160 * 1.05 * 743.9 / 773.9 - 160,
        limit=0,
    ),
    RuleCase(
        rule="road.speedometer-never-low",
        outcome=BROKEN,
        changes=tyres(LARGER),
        value=160 * 743.9 / 773.9 - 160,
        limit=0,
        why="taken as exact on the placard tyre",
    ),
    RuleCase(rule="road.speedometer-never-low", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="road.speedometer-not-too-high",
        outcome=MET,
        changes=UK | tyres(SMALLER) | {"own_vehicle.tyre.speedometer_at_100": "103 km/h"},
        value=160 * 1.03 * 743.9 / 698.9 - 160,
        limit=20,
    ),
    RuleCase(rule="road.speedometer-not-too-high", outcome=MET, changes=tyres(LARGER)),
    RuleCase(
        rule="road.speedometer-not-too-high",
        outcome=BROKEN,
        changes=tyres(SMALLER) | {"own_vehicle.tyre.speedometer_at_100": "110 km/h"},
        value=160 * 1.10 * 743.9 / 698.9 - 160,
        limit=20,
    ),
    RuleCase(
        rule="road.speedometer-not-too-high",
        outcome=BROKEN,
        changes=tyres("195/50R16C"),
        why="601.4 mm: too high even if it was exact",
    ),
    RuleCase(
        rule="road.speedometer-not-too-high",
        outcome=UNKNOWN,
        changes=tyres(SMALLER),
        why="it may have shown up to the limit on the placard tyre",
    ),
    RuleCase(rule="road.speedometer-not-too-high", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="road.odometer-germany",
        outcome=BROKEN,
        changes=tyres(LARGER),
        value=773.9 / 743.9 - 1,
        limit=0.04,
    ),
    RuleCase(rule="road.odometer-germany", outcome=MET, changes=tyres(), value=0),
    RuleCase(rule="road.odometer-germany", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="road.tyre-clears-vehicle", outcome=MET, changes=tyres(LARGER), value=773.9, limit=775
    ),
    RuleCase(
        rule="road.tyre-clears-vehicle",
        outcome=BROKEN,
        changes=tyres("265/75R16C"),
        value=803.9,
        limit=775,
    ),
    RuleCase(rule="road.tyre-size-on-placard", outcome=MET, changes=US | tyres(), value=0),
    RuleCase(
        rule="road.tyre-size-on-placard",
        outcome=BROKEN,
        changes=US | tyres("LT245/70R17"),
        value=4,
        limit=0,
        why="width, aspect, rim and marking",
    ),
    RuleCase(rule="road.tyre-size-on-placard", outcome=NOT_APPLICABLE, changes=US),
    RuleCase(rule="road.spare-carried", outcome=MET),
    RuleCase(
        rule="road.spare-carried",
        outcome=BROKEN,
        changes={"own_vehicle.tyre.spare_carried": False},
    ),
    RuleCase(
        rule="road.spare-carried",
        outcome=BROKEN,
        changes={"vehicle_spare_removed": True},
        why="the vehicle's own was taken off and no other is fitted",
    ),
    RuleCase(rule="road.spare-fits-tyres", outcome=MET, value=0, limit=0.03),
    RuleCase(
        rule="road.spare-fits-tyres",
        outcome=BROKEN,
        changes=tyres(LARGER),
        value=1 - 743.9 / 773.9,
    ),
    RuleCase(
        rule="road.spare-fits-tyres",
        outcome=NOT_APPLICABLE,
        changes={"own_vehicle.tyre.spare_carried": False},
    ),
)

FAR_BACK = put(thing("crate", "hitch", at=(11000, 0, 0)))
FAR_OUT = put(thing("crate", "side", at=(2000, 1500, 500)))
FAR_UP = put(thing("crate", "roof", at=(2000, 0, 3400)))
LOW_MIDDLE = put(thing("tank", "underbody", at=(2000, 0, -500)))
HIGH_MIDDLE = put(thing("tank", "underbody", at=(2000, 0, -60)))

SIZE_CASES = (
    RuleCase(rule="road.overall-length", outcome=MET, value=5990, limit=12000),
    RuleCase(
        rule="road.overall-length",
        outcome=BROKEN,
        changes=FAR_BACK,
        value=12050,
        why="950 + 11000 + 100",
    ),
    RuleCase(rule="road.overall-width", outcome=MET, value=2050, limit=2550),
    RuleCase(
        rule="road.overall-width",
        outcome=BROKEN,
        changes=FAR_OUT,
        value=2625,
        why="1025 + 1500 + 100",
    ),
    RuleCase(rule="road.overall-height", outcome=MET, value=2650, limit=4000),
    RuleCase(
        rule="road.overall-height",
        outcome=BROKEN,
        changes=FAR_UP,
        value=4060,
        why="3400 + 100 + 560",
    ),
    RuleCase(rule="road.overall-length-uk", outcome=MET, changes=UK, value=5990, limit=12000),
    RuleCase(rule="road.overall-length-uk", outcome=BROKEN, changes=UK | FAR_BACK, value=12050),
    RuleCase(rule="road.overall-width-uk", outcome=MET, changes=UK, value=2050, limit=2550),
    RuleCase(rule="road.overall-width-uk", outcome=BROKEN, changes=UK | FAR_OUT, value=2625),
    RuleCase(rule="road.rear-overhang-uk", outcome=MET, changes=UK, value=0.26, limit=0.6),
    RuleCase(
        rule="road.rear-overhang-uk",
        outcome=BROKEN,
        changes=UK | put(thing("crate", "hitch", at=(6400, 0, 0))),
        value=0.625,
        why="(6500 - 4000)/4000",
    ),
    RuleCase(rule="road.overall-width-us", outcome=MET, changes=US, value=2050, limit=2600),
    RuleCase(rule="road.overall-width-us", outcome=BROKEN, changes=US | FAR_OUT, value=2625),
    RuleCase(rule="road.overall-height-us", outcome=MET, changes=US, value=2650, limit=4114.8),
    RuleCase(
        rule="road.overall-height-us",
        outcome=BROKEN,
        changes=US | put(thing("crate", "roof", at=(2000, 0, 3600))),
        value=4260,
    ),
    RuleCase(rule="road.departure-angle-kept", outcome=MET),
    RuleCase(
        rule="road.departure-angle-kept",
        outcome=BROKEN,
        changes=put(thing("crate", "hitch", at=(5500, 0, -200))),
    ),
    RuleCase(
        rule="road.departure-angle-kept",
        outcome=NOT_APPLICABLE,
        changes={
            "own_vehicle.rear_end.lowest_x": "3900 mm",
            "own_vehicle.rear_end.hitch_x": None,
        },
    ),
    RuleCase(rule="road.departure-angle-off-road", outcome=MET, limit=20),
    RuleCase(
        rule="road.departure-angle-off-road",
        outcome=BROKEN,
        changes=put(thing("crate", "hitch", at=(5900, 0, -200))),
    ),
    RuleCase(
        rule="road.departure-angle-off-road",
        outcome=NOT_APPLICABLE,
        changes={
            "own_vehicle.rear_end.lowest_x": "3900 mm",
            "own_vehicle.rear_end.hitch_x": None,
        },
    ),
    RuleCase(rule="road.ramp-angle-off-road", outcome=MET, changes=HIGH_MIDDLE, limit=20),
    RuleCase(rule="road.ramp-angle-off-road", outcome=BROKEN, changes=LOW_MIDDLE),
    RuleCase(rule="road.ramp-angle-off-road", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="road.clearance-off-road", outcome=MET, changes=HIGH_MIDDLE, value=500, limit=200
    ),
    RuleCase(rule="road.clearance-off-road", outcome=BROKEN, changes=LOW_MIDDLE, value=60),
    RuleCase(rule="road.clearance-off-road", outcome=NOT_APPLICABLE),
    RuleCase(rule="road.stability-factor", outcome=MET, value=1.11875, limit=1.04),
    RuleCase(
        rule="road.stability-factor",
        outcome=BROKEN,
        changes={"own_vehicle.outside.track_rear": "1500 mm"},
        value=1.03125,
        why="(1800 + 1500)/2/1600",
    ),
)


def place_cases(
    rule: str, mounting: str, limit_name: str, limit_kg: float
) -> tuple[RuleCase, ...]:
    """Return the four outcomes of a place with a limit in kilograms."""
    return (
        RuleCase(
            rule=rule, outcome=MET, changes=hung(mounting, "20 kg"), value=20, limit=limit_kg
        ),
        RuleCase(rule=rule, outcome=BROKEN, changes=hung(mounting, "200 kg"), value=200),
        RuleCase(
            rule=rule,
            outcome=UNKNOWN,
            changes=hung(mounting, "20 kg") | no_limit(limit_name),
        ),
        RuleCase(rule=rule, outcome=NOT_APPLICABLE),
    )


def carrier_cases(rule: str, facet: str, mounting: str, **more: str) -> tuple[RuleCase, ...]:
    """Return the three outcomes of a carrier that holds 50 kg."""
    limits = {"load_limit": "50 kg"} | more
    return (
        RuleCase(
            rule=rule,
            outcome=MET,
            changes=loaded(facet, mounting, "50 kg", **limits),
            value=50,
            limit=50,
        ),
        RuleCase(
            rule=rule, outcome=BROKEN, changes=loaded(facet, mounting, "51 kg", **limits), value=51
        ),
        RuleCase(rule=rule, outcome=NOT_APPLICABLE),
    )


SIDE_LIMIT: Data = {"own_vehicle.limits.side": "40 kg"}
LOAD_CASES = (
    *place_cases("road.roof-load", "roof", "roof_moving", 150),
    *place_cases("road.rear-door-load", "rear door left", "rear_door", 60),
    *place_cases("road.hitch-load", "hitch", "hitch", 100),
    RuleCase(
        rule="road.rear-door-load",
        outcome=BROKEN,
        changes=hung("rear door right", "61 kg"),
        subject="rear door right",
    ),
    RuleCase(
        rule="road.side-load", outcome=MET, changes=hung("side", "20 kg") | SIDE_LIMIT, limit=40
    ),
    RuleCase(
        rule="road.side-load", outcome=BROKEN, changes=hung("side", "41 kg") | SIDE_LIMIT, value=41
    ),
    RuleCase(rule="road.side-load", outcome=UNKNOWN, changes=hung("side", "20 kg")),
    RuleCase(rule="road.side-load", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="road.rear-door-moment",
        outcome=MET,
        changes=hung("rear door left", "20 kg"),
        value=20 * 9.80665 * (100**2 + 130**2) ** 0.5 / 1000,
        limit=300,
        why="centre at 4850, -650; hinge at 4750, -780",
    ),
    RuleCase(
        rule="road.rear-door-moment", outcome=BROKEN, changes=hung("rear door left", "200 kg")
    ),
    RuleCase(
        rule="road.rear-door-moment",
        outcome=UNKNOWN,
        changes=hung("rear door left", "20 kg") | no_limit("rear_door_moment"),
    ),
    RuleCase(rule="road.rear-door-moment", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="road.roof-load-standing",
        outcome=MET,
        changes=deck("60 kg"),
        value=143,
        limit=250,
        why="rack 1, crate 60, the heaviest traveller 82",
    ),
    RuleCase(rule="road.roof-load-standing", outcome=BROKEN, changes=deck("190 kg"), value=273),
    RuleCase(
        rule="road.roof-load-standing",
        outcome=UNKNOWN,
        changes=deck("60 kg") | no_limit("roof_standing"),
    ),
    RuleCase(rule="road.roof-load-standing", outcome=NOT_APPLICABLE),
    *carrier_cases("road.roof-rack-load", "roof_rack", "roof"),
    RuleCase(
        rule="road.roof-rack-standing",
        outcome=MET,
        changes=deck("60 kg"),
        value=142,
        limit=150,
    ),
    RuleCase(rule="road.roof-rack-standing", outcome=BROKEN, changes=deck("69 kg"), value=151),
    RuleCase(rule="road.roof-rack-standing", outcome=NOT_APPLICABLE),
    *carrier_cases("road.rear-door-carrier-load", "rear_door_carrier", "rear door left"),
    *carrier_cases("road.hitch-carrier-load", "hitch_carrier", "hitch"),
    *carrier_cases("road.slide-out-load", "slide_out", "floor", travel="600 mm"),
    RuleCase(
        rule="road.ladder-load", outcome=MET, changes=ladder(limit="100 kg"), value=82, limit=100
    ),
    RuleCase(rule="road.ladder-load", outcome=BROKEN, changes=ladder(limit="80 kg"), value=82),
    RuleCase(rule="road.ladder-load", outcome=UNKNOWN, changes=ladder()),
    RuleCase(rule="road.ladder-load", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="road.ladder-rungs-not-far-apart",
        outcome=MET,
        changes=ladder(rung_spacing="280 mm"),
        value=280,
        limit=356,
    ),
    RuleCase(
        rule="road.ladder-rungs-not-far-apart",
        outcome=BROKEN,
        changes=ladder(rung_spacing="400 mm"),
    ),
    RuleCase(rule="road.ladder-rungs-not-far-apart", outcome=UNKNOWN, changes=ladder()),
    RuleCase(rule="road.ladder-rungs-not-far-apart", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="road.ladder-rungs-not-far-apart",
        outcome=NOT_APPLICABLE,
        changes=single_step(),
        why="one step has no rungs to be apart",
    ),
    RuleCase(
        rule="road.ladder-rungs-not-close",
        outcome=MET,
        changes=ladder(rung_spacing="254 mm"),
        limit=254,
    ),
    RuleCase(
        rule="road.ladder-rungs-not-close",
        outcome=BROKEN,
        changes=ladder(rung_spacing="200 mm"),
    ),
    RuleCase(rule="road.ladder-rungs-not-close", outcome=UNKNOWN, changes=ladder()),
    RuleCase(rule="road.ladder-rungs-not-close", outcome=NOT_APPLICABLE),
    RuleCase(rule="road.ladder-first-rung", outcome=MET, changes=ladder(), value=500, limit=610),
    RuleCase(rule="road.ladder-first-rung", outcome=BROKEN, changes=ladder(first_rung="650 mm")),
    RuleCase(rule="road.ladder-first-rung", outcome=NOT_APPLICABLE),
    RuleCase(rule="road.ladder-width", outcome=MET, changes=ladder(), value=300, limit=292),
    RuleCase(rule="road.ladder-width", outcome=BROKEN, changes=ladder(clear_width="250 mm")),
    RuleCase(rule="road.ladder-width", outcome=NOT_APPLICABLE),
)

CASES: tuple[RuleCase, ...] = (*TYRE_CASES, *SIZE_CASES, *LOAD_CASES)


def _stage(build: Build) -> Road:
    return stage(build, weights())


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.rule} {case.outcome}")
def test_a_rule_comes_out_as_it_should(case: RuleCase) -> None:
    finding = finding_of(case, RULES, _stage)
    assert finding.outcome is case.outcome
    if case.value is not None:
        assert finding.value == pytest.approx(case.value, rel=1e-6)
    if case.limit is not None:
        assert finding.limit == pytest.approx(case.limit, rel=1e-6)


def test_every_rule_is_met_and_broken_by_some_case() -> None:
    for rule in RULES:
        outcomes = {case.outcome for case in CASES if case.rule == rule.id}
        assert {MET, BROKEN} <= outcomes, rule.id
