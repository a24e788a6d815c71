"""Each rule of the wishes, with every outcome that it can have."""

import pytest

from coachwright.model.build import OptionConflict
from coachwright.model.finding import Outcome
from coachwright.wishes.rules import RULES
from coachwright.wishes.stage import stage
from tests.rules.water_pieces import UK, US, with_parts
from tests.support.builds import Data
from tests.support.rule_cases import RuleCase, finding_of

MET, BROKEN = Outcome.MET, Outcome.BROKEN
UNKNOWN, NOT_APPLICABLE = Outcome.UNKNOWN, Outcome.NOT_APPLICABLE
NOBODY_SITS: Data = {"brief.travellers.0.seat": "", "brief.travellers.1.seat": ""}


def seat(belt: str = "three-point", **more: object) -> Data:
    places = [{"name": "left", "reference": ["200 mm", "200 mm", "400 mm"]}]
    return {"seat": {"places": places, "belt": belt} | more}


def bed(length: str = "1900 mm", berths: int = 2) -> Data:
    return {"bed": {"length": length, "width": "1300 mm", "berths": berths}}


def priced(price: str) -> Data:
    return {"price": {"price": [price]}}


SIDEWAYS: Data = {"turn": "90 deg"}
SITS: Data = {"brief.travellers.1.seat": "piece-a.left"}
CONFLICT = OptionConflict(
    wish="belted-rear-seat",
    other="long-galley",
    cause="both stand behind the sliding door",
    kind="excluded",
)
SMOKE: Data = {"detector": {"senses": ["smoke"]}}
EXTINGUISHER: Data = {"extinguisher": {"rating": "10-B:C"}}
BUDGET: Data = {"brief.budget": "1000.00 EUR"}

SEATS = (
    RuleCase(
        rule="wishes.enough-belted-seats", outcome=MET, value=2, limit=2, why="driver, passenger"
    ),
    RuleCase(
        rule="wishes.enough-belted-seats",
        outcome=BROKEN,
        changes={"own_vehicle.seats.1.belt": "none"},
        value=1,
        limit=2,
        why="the passenger's seat has no belt",
    ),
    RuleCase(rule="wishes.enough-belted-seats", outcome=NOT_APPLICABLE, changes=NOBODY_SITS),
    RuleCase(rule="wishes.traveller-belted", outcome=MET, changes=with_parts((seat(), {})) | SITS),
    RuleCase(
        rule="wishes.traveller-belted",
        outcome=BROKEN,
        changes=with_parts((seat("none"), {})) | SITS,
        subject="ben",
    ),
    RuleCase(
        rule="wishes.traveller-belted",
        outcome=BROKEN,
        changes=with_parts((seat(), SIDEWAYS)) | SITS,
        subject="ben",
        why="in the EU a side-facing seat is no travel seat",
    ),
    RuleCase(
        rule="wishes.traveller-belted",
        outcome=MET,
        changes=with_parts((seat(), SIDEWAYS)) | SITS | US,
        subject="ben",
    ),
    RuleCase(
        rule="wishes.traveller-belted",
        outcome=BROKEN,
        changes=with_parts((seat(travel_seat=False), {})) | SITS,
        subject="ben",
    ),
    RuleCase(rule="wishes.traveller-belted", outcome=NOT_APPLICABLE, changes=NOBODY_SITS),
    RuleCase(rule="wishes.side-facing-seats", outcome=MET, changes=with_parts((seat(), {}))),
    RuleCase(
        rule="wishes.side-facing-seats",
        outcome=MET,
        changes=with_parts((seat(), {"turn": "180 deg"})),
        why="rearward",
    ),
    RuleCase(
        rule="wishes.side-facing-seats",
        outcome=BROKEN,
        changes=with_parts((seat(), SIDEWAYS)),
    ),
    RuleCase(
        rule="wishes.side-facing-seats",
        outcome=NOT_APPLICABLE,
        changes=with_parts((seat(travel_seat=False), SIDEWAYS)),
        why="marked as not for use in motion",
    ),
    RuleCase(
        rule="wishes.side-facing-seats-uk", outcome=MET, changes=with_parts((seat(), {})) | UK
    ),
    RuleCase(
        rule="wishes.side-facing-seats-uk",
        outcome=BROKEN,
        changes=with_parts((seat(), SIDEWAYS)) | UK,
    ),
    RuleCase(rule="wishes.side-facing-seats-uk", outcome=NOT_APPLICABLE, changes=UK),
    RuleCase(
        rule="wishes.side-facing-belts",
        outcome=MET,
        changes=with_parts((seat("lap"), SIDEWAYS)) | US,
    ),
    RuleCase(
        rule="wishes.side-facing-belts",
        outcome=BROKEN,
        changes=with_parts((seat("none"), SIDEWAYS)) | US,
    ),
    RuleCase(
        rule="wishes.side-facing-belts",
        outcome=NOT_APPLICABLE,
        changes=with_parts((seat("none"), {})) | US,
    ),
)

BELTS = tuple(
    case
    for suffix, place in (("-us", US), ("", {}), ("-uk", UK))
    for case in (
        RuleCase(
            rule=f"wishes.travel-seat-belts{suffix}",
            outcome=MET,
            changes=with_parts((seat("lap"), {})) | place,
        ),
        RuleCase(
            rule=f"wishes.travel-seat-belts{suffix}",
            outcome=BROKEN,
            changes=with_parts((seat("none"), {})) | place,
        ),
        RuleCase(
            rule=f"wishes.travel-seat-belts{suffix}",
            outcome=NOT_APPLICABLE,
            changes=with_parts((seat("none", travel_seat=False), {})) | place,
        ),
    )
)

EVIDENCE = (
    RuleCase(
        rule="wishes.seat-evidence",
        outcome=MET,
        changes=with_parts((seat(anchorage_evidence="UN R14, R17"), {})),
        value=2,
        limit=2,
        why="both named",
    ),
    RuleCase(
        rule="wishes.seat-evidence",
        outcome=BROKEN,
        changes=with_parts((seat(anchorage_evidence="UN R14"), {})),
        value=1,
        why="the seat's own strength is not named",
    ),
    RuleCase(rule="wishes.seat-evidence", outcome=UNKNOWN, changes=with_parts((seat(), {}))),
    RuleCase(rule="wishes.seat-evidence", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="wishes.seat-evidence-uk",
        outcome=MET,
        changes=with_parts((seat(anchorage_evidence="UN R14"), {})) | UK,
    ),
    RuleCase(
        rule="wishes.seat-evidence-uk",
        outcome=BROKEN,
        changes=with_parts((seat(anchorage_evidence="pull test in the shop"), {})) | UK,
        value=0,
        why="no regulation is named",
    ),
    RuleCase(
        rule="wishes.seat-evidence-uk", outcome=UNKNOWN, changes=with_parts((seat(), {})) | UK
    ),
    RuleCase(rule="wishes.seat-evidence-uk", outcome=NOT_APPLICABLE, changes=UK),
)

WISHES = (
    RuleCase(
        rule="wishes.enough-berths",
        outcome=MET,
        changes=with_parts((bed(), {})),
        value=2,
        limit=2,
        why="a double bed for two",
    ),
    RuleCase(rule="wishes.enough-berths", outcome=BROKEN, changes=with_parts((bed(berths=1), {}))),
    RuleCase(
        rule="wishes.enough-berths",
        outcome=NOT_APPLICABLE,
        changes={
            "brief.travellers.0.berth_wanted": False,
            "brief.travellers.1.berth_wanted": False,
        },
    ),
    RuleCase(
        rule="wishes.bed-length",
        outcome=MET,
        changes=with_parts((bed("1860 mm"), {})),
        value=50,
        limit=50,
        why="ben is 1810 mm",
    ),
    RuleCase(rule="wishes.bed-length", outcome=BROKEN, changes=with_parts((bed("1850 mm"), {}))),
    RuleCase(rule="wishes.bed-length", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="wishes.must-have",
        outcome=MET,
        changes=with_parts((bed(), {})) | {"brief.must_have": ["bed"]},
    ),
    RuleCase(
        rule="wishes.must-have",
        outcome=BROKEN,
        changes=with_parts((bed(), {})) | {"brief.must_have": ["bed", "heater"]},
        subject="heater",
        value=0,
        why="none is fitted",
    ),
    RuleCase(rule="wishes.must-have", outcome=NOT_APPLICABLE),
    RuleCase(
        rule="wishes.budget",
        outcome=MET,
        changes=with_parts((priced("400.00 EUR"), {}), (priced("600.00 EUR"), {})) | BUDGET,
        value=100_000,
        limit=100_000,
        why="400 + 600 EUR in cents",
    ),
    RuleCase(
        rule="wishes.budget",
        outcome=BROKEN,
        changes=with_parts((priced("400.00 EUR"), {}), (priced("600.01 EUR"), {})) | BUDGET,
    ),
    RuleCase(
        rule="wishes.budget",
        outcome=BROKEN,
        changes=with_parts((priced("1000.01 EUR"), {}), (priced("1.00 USD"), {})) | BUDGET,
        why="what is known is too much already",
    ),
    RuleCase(
        rule="wishes.budget",
        outcome=UNKNOWN,
        changes=with_parts((priced("400.00 EUR"), {}), (priced("1.00 USD"), {})) | BUDGET,
    ),
    RuleCase(rule="wishes.budget", outcome=NOT_APPLICABLE),
    RuleCase(rule="wishes.options-agree", outcome=MET, changes={"options": ["long-galley"]}),
    RuleCase(
        rule="wishes.options-agree",
        outcome=BROKEN,
        changes={"options": ["long-galley", "belted-rear-seat"]},
        conflicts=(CONFLICT,),
        subject="belted-rear-seat and long-galley",
    ),
    RuleCase(rule="wishes.options-agree", outcome=NOT_APPLICABLE),
)

ALARMS = tuple(
    RuleCase(rule=f"wishes.{kind}{suffix}", outcome=outcome, changes=changes | place)
    for suffix, place in (("-us", US), ("", {}), ("", UK))
    for kind, facet in (("smoke-alarm", SMOKE), ("extinguisher", EXTINGUISHER))
    for outcome, changes in ((MET, with_parts((facet, {}))), (BROKEN, with_parts((bed(), {}))))
)

CASES: tuple[RuleCase, ...] = (*SEATS, *BELTS, *EVIDENCE, *WISHES, *ALARMS)


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.rule} {case.outcome}")
def test_a_rule_comes_out_as_it_should(case: RuleCase) -> None:
    finding = finding_of(case, RULES, stage)
    if case.value is not None:
        assert finding.value == pytest.approx(case.value), case.why
    if case.limit is not None:
        assert finding.limit == pytest.approx(case.limit), case.why
    assert bool(finding.missing) == (case.outcome is UNKNOWN)


def test_a_conflict_names_both_wishes_and_their_cause() -> None:
    case = next(c for c in CASES if c.conflicts)
    finding = finding_of(case, RULES, stage)
    assert CONFLICT.wish in finding.subject
    assert CONFLICT.other in finding.subject
    assert CONFLICT.cause in finding.detail
