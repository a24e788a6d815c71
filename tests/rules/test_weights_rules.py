"""Every rule on masses, with a case for each outcome that it can have."""

import pytest

from coachwright.model.finding import Outcome
from coachwright.weights.rules import RULES
from coachwright.weights.stage import stage
from tests.support.builds import Data, fitting, part
from tests.support.rule_cases import RuleCase, finding_of

MET, BROKEN = Outcome.MET, Outcome.BROKEN
UNKNOWN, NONE = Outcome.UNKNOWN, Outcome.NOT_APPLICABLE

US: Data = {"brief.jurisdiction": "us"}
UK: Data = {"brief.jurisdiction": "uk"}


def ballast(mass: str, x: str, y: str = "-50 mm", **more: object) -> Data:
    """Return a build with one measured weight, its middle 50 mm behind and beside x and y."""
    return {
        "own_parts": [part("ballast", **more)],
        "fittings": [
            fitting("ballast", "ballast", at=[x, y, "0 mm"], measured_mass=mass),
        ],
    }


def stowed(contents: str, **carcass: str) -> Data:
    """Return a build with a cabinet that something is stowed in."""
    return {
        "own_parts": [part("locker", carcass=carcass)],
        "fittings": [fitting("locker", "locker", contents=contents)],
    }


def ticket(total: str, **more: object) -> Data:
    """Return a build that was weighed: fuel and gas full, nobody aboard."""
    return {"ticket": {"date": "2026-05-04", "total": total, **more}}


# The small build weighs 2,100 - 68.04 - 75 kg dry, 75.6 kg of fuel, people of 70 and 82 kg:
# 2,184.56 kg travelling, 1,319.0 kg of it in front (hand calculation).
TRAVELLING = 2184.56
HEAVY = ballast("1400 kg", "1950 mm")
BEHIND = ballast("1200 kg", "4950 mm")

CASES: tuple[RuleCase, ...] = (
    RuleCase(
        rule="weights.gross-rating-us",
        outcome=MET,
        changes=US,
        subject="travelling",
        value=TRAVELLING,
        limit=3500,
        why="1956.96 + 75.6 + 70 + 82",
    ),
    RuleCase(
        rule="weights.gross-rating-us",
        outcome=BROKEN,
        changes=US | HEAVY,
        subject="travelling",
        value=TRAVELLING + 1400,
        limit=3500,
    ),
    RuleCase(
        rule="weights.gross-rating-eu",
        outcome=MET,
        subject="waste full, fresh empty",
        value=TRAVELLING,
    ),
    RuleCase(
        rule="weights.gross-rating-eu",
        outcome=BROKEN,
        changes=UK | HEAVY,
        subject="travelling",
        value=TRAVELLING + 1400,
    ),
    RuleCase(
        rule="weights.axle-rating-us",
        outcome=MET,
        changes=US,
        subject="rear axle, travelling",
        limit=2100,
    ),
    RuleCase(
        rule="weights.axle-rating-us",
        outcome=BROKEN,
        changes=US | BEHIND,
        subject="rear axle, travelling",
        value=865.5365 + 1200 * 5000 / 4000,
        why="850 kg of kerb less 68.04·1.6/4 and 75·0.65/4, plus 75.6·1.6/4 and 152·0.65/4",
    ),
    RuleCase(
        rule="weights.axle-rating-eu",
        outcome=MET,
        subject="front axle, travelling",
        value=2184.56 - 865.5365,
        limit=1850,
    ),
    RuleCase(
        rule="weights.axle-rating-eu",
        outcome=BROKEN,
        changes=BEHIND,
        subject="rear axle, driver only",
    ),
    RuleCase(rule="weights.gross-bound", outcome=MET, subject="travelling", limit=3500),
    RuleCase(
        rule="weights.gross-bound",
        outcome=BROKEN,
        changes=ballast("1300 kg", "1950 mm"),
        subject="travelling",
        why="3,484.6 kg nominal; the base vehicle alone is uncertain by more than 50 kg",
    ),
    RuleCase(rule="weights.axle-bound", outcome=MET, subject="rear axle, travelling"),
    RuleCase(
        rule="weights.axle-bound",
        outcome=BROKEN,
        changes=ballast("980 kg", "4950 mm"),
        subject="rear axle, travelling",
        why="865.5 + 1,225 = 2,090.5 kg nominal of 2,100 kg",
    ),
    RuleCase(rule="weights.axle-worst-combination", outcome=MET, subject="rear axle"),
    RuleCase(
        rule="weights.axle-worst-combination",
        outcome=BROKEN,
        changes={
            "own_parts": [
                part("fresh", tank={"contents": "fresh", "volume": "700 L"}),
                part("grey", tank={"contents": "grey", "volume": "700 L"}),
            ],
            "fittings": [
                fitting("fresh", "fresh", at=["3950 mm", "0 mm", "0 mm"]),
                fitting("grey", "grey", at=["3950 mm", "0 mm", "0 mm"]),
            ],
        },
        subject="rear axle",
        value=865.5365 + 2 + 1400,
        why="both tanks full stand over the rear axle; one of them alone would do",
    ),
    RuleCase(rule="weights.all-seats-taken", outcome=MET, subject="vehicle"),
    RuleCase(
        rule="weights.all-seats-taken",
        outcome=BROKEN,
        changes=HEAVY,
        subject="vehicle",
        value=1956.96 + 68.04 + 1400 + 2 * 75 + 79.9,
        why="running order without its driver, 75 kg a seat, 10 (2 + 5.99)",
    ),
    RuleCase(
        rule="weights.occc-covers-belts",
        outcome=MET,
        changes=US,
        value=3500 - 1956.96 - 75.6,
        limit=300 * 0.45359237,
        why="two belts at 150 lb",
    ),
    RuleCase(
        rule="weights.occc-covers-belts",
        outcome=BROKEN,
        changes=US | HEAVY,
        value=3500 - 1956.96 - 75.6 - 1400,
    ),
    RuleCase(
        rule="weights.gross-rating-lower-bound",
        outcome=MET,
        changes=US,
        value=3500,
        limit=1956.96 + 75.6 + 300 * 0.45359237,
    ),
    RuleCase(rule="weights.gross-rating-lower-bound", outcome=BROKEN, changes=US | HEAVY),
    RuleCase(
        rule="weights.gross-rating-within-axles", outcome=MET, changes=US, value=3500, limit=3950
    ),
    RuleCase(
        rule="weights.gross-rating-within-axles",
        outcome=BROKEN,
        changes=US | {"own_vehicle.ratings.front_axle": "1300 kg"},
        limit=3400,
    ),
    RuleCase(
        rule="weights.relabel",
        outcome=MET,
        changes=US | ballast("45 kg", "1950 mm"),
        value=45,
        limit=100 * 0.45359237,
    ),
    RuleCase(
        rule="weights.relabel",
        outcome=BROKEN,
        changes=US | ballast("46 kg", "1950 mm"),
        value=46,
    ),
    RuleCase(
        rule="weights.minimum-pay-mass",
        outcome=MET,
        value=3500 - (1956.96 + 68.04 + 75) - 75,
        limit=79.9,
        why="one passenger seat; 10 (2 + 5.99)",
    ),
    RuleCase(
        rule="weights.minimum-pay-mass",
        outcome=BROKEN,
        changes=UK | ballast("1250 kg", "1950 mm"),
        value=75,
    ),
    RuleCase(rule="weights.front-axle-share", outcome=MET, value=1400, limit=1050),
    RuleCase(
        rule="weights.front-axle-share",
        outcome=BROKEN,
        changes={"own_vehicle.ratings.rear_axle": "2500 kg"},
        value=1000,
        limit=1050,
    ),
    RuleCase(rule="weights.front-axle-share-towing", outcome=MET, value=1500, limit=700),
    RuleCase(
        rule="weights.front-axle-share-towing",
        outcome=BROKEN,
        changes={"own_vehicle.ratings.rear_axle": "2950 kg"},
        value=650,
    ),
    RuleCase(
        rule="weights.front-axle-share-towing",
        outcome=UNKNOWN,
        changes={"own_vehicle.limits.hitch": None},
        why="the vehicle has a hitch whose limit its maker does not state",
    ),
    RuleCase(
        rule="weights.front-axle-share-towing",
        outcome=NONE,
        changes={"own_vehicle.limits.hitch": None, "own_vehicle.rear_end.hitch_x": None},
    ),
    RuleCase(rule="weights.front-axle-in-use", outcome=MET),
    RuleCase(rule="weights.front-axle-in-use", outcome=BROKEN, changes=BEHIND),
    RuleCase(rule="weights.axles-cover-gross", outcome=MET, value=3950, limit=3500),
    RuleCase(
        rule="weights.axles-cover-gross",
        outcome=BROKEN,
        changes={"own_vehicle.ratings.front_axle": "1300 kg"},
        value=3400,
    ),
    RuleCase(rule="weights.licence-b", outcome=MET, value=3500, limit=3500),
    RuleCase(
        rule="weights.licence-b",
        outcome=BROKEN,
        changes={"own_vehicle.ratings.gross": "3850 kg"},
        value=3850,
    ),
    RuleCase(rule="weights.licence-b-uk", outcome=MET, changes=UK, value=3500, limit=3500),
    RuleCase(
        rule="weights.licence-b-uk",
        outcome=BROKEN,
        changes=UK | {"own_vehicle.ratings.gross": "3850 kg"},
    ),
    RuleCase(
        rule="weights.uk-approval-load",
        outcome=MET,
        changes=UK,
        value=1956.96 + 75.6 + 2 * (68 + 7 + 10) + 59.9,
        limit=3500,
    ),
    RuleCase(rule="weights.uk-approval-load", outcome=BROKEN, changes=UK | HEAVY),
    RuleCase(rule="weights.side-balance", outcome=MET, subject="front axle", limit=0.05),
    RuleCase(
        rule="weights.side-balance",
        outcome=BROKEN,
        changes=ballast("200 kg", "1950 mm", "650 mm"),
        subject="rear axle",
    ),
    RuleCase(
        rule="weights.ticket-within-bound",
        outcome=MET,
        changes=ticket("2040 kg"),
        subject="vehicle",
        value=2040 - 2032.56,
    ),
    RuleCase(
        rule="weights.ticket-within-bound",
        outcome=BROKEN,
        changes=ticket("2240 kg", front="1340 kg", rear="900 kg"),
        subject="front axle",
    ),
    RuleCase(
        rule="weights.ticket-within-bound",
        outcome=UNKNOWN,
        changes=ticket("2040 kg"),
        subject="rear axle",
        why="only the total was weighed",
    ),
    RuleCase(rule="weights.ticket-within-bound", outcome=NONE),
    RuleCase(
        rule="weights.declared-mass",
        outcome=MET,
        changes=ticket("2100 kg"),
        value=2100 - 2032.56,
        limit=0.05 * 2032.56,
    ),
    RuleCase(
        rule="weights.declared-mass",
        outcome=BROKEN,
        changes=UK | ticket("2150 kg"),
        value=2150 - 2032.56,
    ),
    RuleCase(rule="weights.declared-mass", outcome=NONE),
    RuleCase(
        rule="weights.contents-limit",
        outcome=MET,
        changes=stowed("12 kg", contents_limit="15 kg"),
        value=12,
        limit=15,
    ),
    RuleCase(
        rule="weights.contents-limit",
        outcome=BROKEN,
        changes=stowed("16 kg", contents_limit="15 kg"),
        value=16,
    ),
    RuleCase(rule="weights.contents-limit", outcome=UNKNOWN, changes=stowed("12 kg")),
    RuleCase(
        rule="weights.contents-limit",
        outcome=NONE,
        changes=stowed("0 kg", contents_limit="15 kg"),
    ),
)


@pytest.mark.parametrize("case", CASES, ids=[f"{case.rule}-{case.outcome}" for case in CASES])
def test_a_rule_has_the_outcome(case: RuleCase) -> None:
    finding = finding_of(case, RULES, stage)
    assert finding.outcome is case.outcome
    if case.value is not None:
        assert finding.value == pytest.approx(case.value, rel=1e-6), case.why
    if case.limit is not None:
        assert finding.limit == pytest.approx(case.limit, rel=1e-6), case.why


def test_every_rule_is_met_and_broken_by_a_case() -> None:
    for rule in RULES:
        outcomes = {case.outcome for case in CASES if case.rule == rule.id}
        assert {MET, BROKEN} <= outcomes, rule.id
