"""The demo builds and the standard build: they open, hold together and say what they should.

What must come out is set by the commission: three demos without a broken stop and one with at
least fifteen broken rules, each of 30 to 60 fittings, laid out by relations.
"""

from collections import Counter
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from coachwright.actions.opening import Opened, complete, open_build
from coachwright.actions.year_shelf import almanac_of
from coachwright.assess import Assessment, assess
from coachwright.catalogue.loading import Catalogue
from coachwright.layout.model import Layout
from coachwright.layout.stage import stage as layout_of
from coachwright.model.build import Build, BuildSheet, Fitting, Option
from coachwright.model.finding import Outcome, Severity, broken_stops
from coachwright.model.position import Relation
from coachwright.model.reading import read_record

FOLDER = Path(__file__).parents[2] / "demos"
SOUND = ("night-watch", "four-seats", "winter-kit")
"""Demos that are as a good shop would build them."""
ALL = (*SOUND, "troubled")
STANDARD = "tourer-l3-eu"
SHIMS_MM = 5.0
"""Gap inside that a shim closes."""
BRACKET_MM = 150.0
"""Reach of a bracket outside."""


@cache
def opened(name: str) -> Opened:
    """Return one demo, opened."""
    return open_build(FOLDER / f"{name}.toml", Catalogue())


@cache
def assessed(name: str) -> Assessment:
    """Return one demo's assessment, with the years at its sites."""
    return assess(opened(name).build, almanac=almanac_of(Catalogue(), None))


@cache
def laid_out(name: str) -> Layout:
    """Return one demo's layout."""
    return layout_of(opened(name).build)


@cache
def standard() -> BuildSheet:
    """Return the standard build as written."""
    return Catalogue().standard(STANDARD)


def with_options(*names: str) -> Build:
    """Return the standard build with options."""
    return complete(standard().model_copy(update={"options": names}), STANDARD, Catalogue())


def broken_rules(assessment: Assessment) -> Counter[str]:
    """Return the broken rules with their number of subjects."""
    return Counter(f.rule for f in assessment.findings if f.outcome is Outcome.BROKEN)


def positions(sheet: BuildSheet) -> Iterator[object]:
    """Yield every coordinate that a sheet, or the standard build under it, writes."""
    fittings: tuple[Fitting, ...] = (*sheet.fittings, *sheet.changes.added)
    if sheet.standard:
        fittings += standard().fittings
        for option in standard().offers:
            if option.name in sheet.options:
                fittings += option.changes.added
    for fitting in fittings:
        yield from fitting.at_mm


@pytest.mark.parametrize("name", ALL)
def test_it_has_a_story_and_thirty_to_sixty_fittings(name: str) -> None:
    build = opened(name).build
    assert len(build.story.split()) > 30
    assert 30 <= len(build.fittings) <= 60


@pytest.mark.parametrize("name", ALL)
def test_most_coordinates_are_told_by_what_they_stand_against(name: str) -> None:
    found = list(positions(opened(name).sheet))
    told = sum(isinstance(position, Relation) for position in found)
    assert told / len(found) >= 0.5


@pytest.mark.parametrize("name", ALL)
def test_its_sheet_reads_back_as_written(name: str) -> None:
    sheet = opened(name).sheet
    again, faults = read_record(BuildSheet, sheet.model_dump(mode="json"), name)
    assert not faults
    assert again == sheet


@pytest.mark.parametrize("name", SOUND)
def test_a_sound_demo_breaks_no_stop_and_leaves_none_open(name: str) -> None:
    findings = assessed(name).findings
    assert list(broken_stops(findings)) == []
    open_stops = [
        f.rule for f in findings if f.severity is Severity.STOP and f.outcome is Outcome.UNKNOWN
    ]
    assert open_stops == []


@pytest.mark.parametrize("name", SOUND)
def test_each_caution_that_a_sound_demo_does_not_meet_was_accepted(name: str) -> None:
    cautions = [
        f
        for f in assessed(name).findings
        if f.severity is Severity.CAUTION and f.outcome is not Outcome.MET
    ]
    left = [f"{f.rule} ({f.subject})" for f in cautions if f.outcome is not Outcome.NOT_APPLICABLE]
    accepted = [f"{f.rule} ({f.subject})" for f in cautions if f.accepted is not None]
    assert left == accepted


@pytest.mark.parametrize("name", SOUND)
def test_every_decision_of_a_sound_demo_is_about_something_broken_or_unknown(name: str) -> None:
    open_to = {
        f.rule for f in assessed(name).findings if f.outcome in (Outcome.BROKEN, Outcome.UNKNOWN)
    }
    assert {decision.rule for decision in opened(name).build.decisions} <= open_to


@pytest.mark.parametrize("name", SOUND)
def test_a_sound_demo_stands_in_its_shell_and_clear_of_everything(name: str) -> None:
    layout = laid_out(name)
    assert [fit.name for fit in layout.shell_fits if fit.spare_mm < -0.5] == []
    assert [(clash.one, clash.other) for clash in layout.clashes] == []
    assert [(zone.fitting, zone.blocked_by) for zone in layout.zones if zone.blocked_by] == []


@pytest.mark.parametrize("name", SOUND)
def test_nothing_floats_in_a_sound_demo(name: str) -> None:
    for support in laid_out(name).supports:
        most_mm = BRACKET_MM if support.outside else SHIMS_MM
        assert support.gap_mm is not None, support.name
        assert support.gap_mm <= most_mm, support.name


@pytest.mark.parametrize("name", SOUND)
def test_people_walk_freely_from_the_cab_to_the_sliding_door(name: str) -> None:
    ways = [aisle for aisle in laid_out(name).aisles if aisle.way == "cab to sliding door"]
    assert min(aisle.passage.width_mm for aisle in ways) >= 450.0


def test_one_can_walk_through_the_winter_van_to_its_rear_doors() -> None:
    ways = [aisle for aisle in laid_out("winter-kit").aisles if aisle.way == "cab to rear doors"]
    assert min(aisle.passage.width_mm for aisle in ways) >= 450.0


@pytest.mark.parametrize("name", SOUND)
def test_everyone_of_a_sound_demo_can_stretch_out(name: str) -> None:
    """50 mm longer than the sleeper: common practice, no source."""
    for bed in assessed(name).wishes.beds:
        if bed.longest_stature_mm is not None:
            assert bed.length_mm >= bed.longest_stature_mm + 50.0


@pytest.mark.parametrize("name", SOUND)
def test_batteries_stand_low_and_between_the_axles(name: str) -> None:
    build = opened(name).build
    for fitted in build.having("battery"):
        x_mm, _, z_mm = fitted.at_mm
        assert 0.0 < x_mm < build.vehicle.outside.wheelbase_mm
        assert z_mm < 100.0


@pytest.mark.parametrize("name", SOUND)
def test_a_sound_demo_costs_no_more_than_its_budget(name: str) -> None:
    price = assessed(name).wishes.price
    assert price.without_price == ()
    assert price.price_minor is not None
    assert price.budget_minor is not None
    assert price.price_minor <= price.budget_minor


def test_the_ticket_of_the_winter_van_is_off_the_model_and_within_its_bound() -> None:
    ticket = assessed("winter-kit").weights.ticket
    assert ticket is not None
    assert {row.subject for row in ticket.rows} == {"vehicle", "front axle", "rear axle"}
    for row in ticket.rows:
        assert abs(row.difference_kg) > 1.0
        assert row.within


def test_the_family_stays_within_its_licence_with_four_belted_seats() -> None:
    assessment = assessed("four-seats")
    assert assessment.wishes.belted >= 4
    assert assessment.weights.case("travelling").total.nominal_kg <= 3500.0
    assert assessment.weights.case("travelling").total.high_kg <= 3500.0


def test_the_troubled_build_breaks_fifteen_rules_and_some_in_every_discipline() -> None:
    broken = broken_rules(assessed("troubled"))
    assert len(broken) >= 15
    disciplines = {rule.split(".")[0] for rule in broken}
    assert disciplines == {
        "layout",
        "weights",
        "road",
        "electrics",
        "water",
        "wishes",
        "living",
    }


def test_the_troubled_build_breaks_twelve_rules_of_the_layout_with_a_value_and_a_limit() -> None:
    broken = [
        finding
        for finding in assessed("troubled").findings
        if finding.discipline == "layout" and finding.outcome is Outcome.BROKEN
    ]
    assert len({finding.rule for finding in broken}) >= 12
    for finding in broken:
        assert finding.value is not None
        assert finding.limit is not None
        assert finding.margin is not None
        assert finding.margin < 0.0


@pytest.mark.parametrize(
    ("rule", "subject"),
    [
        ("layout.inside-shell", "wardrobe"),
        ("layout.one-place", "galley and fridge"),
        ("layout.wheel-arches", "garage-left"),
        ("layout.supported", "floating-shelf"),
        ("layout.part-passes-a-door", "one-piece-unit"),
        ("layout.moving-parts-free", "roof-hatch"),
        ("layout.toilet-knees", "toilet"),
        ("layout.covered-plate-eu", "number plate"),
        ("layout.underbody-taken", "grey-tank"),
        ("weights.axle-rating-eu", "rear axle, travelling"),
        ("road.hitch-load", "hitch"),
        ("electrics.inverter-carries-largest-load", "hob"),
        ("electrics.cold-charging", "battery"),
        ("water.locker-low-vent", "gas-locker"),
        ("wishes.traveller-belted", "child-younger"),
        ("wishes.bed-length", "bed"),
    ],
)
def test_the_troubled_build_fails_where_the_manual_points(rule: str, subject: str) -> None:
    assert any(
        finding.rule == rule and finding.subject == subject
        for finding in assessed("troubled").findings
        if finding.outcome is Outcome.BROKEN
    )


def test_the_layout_of_the_troubled_build_fails_where_its_file_says_so() -> None:
    layout = laid_out("troubled")
    outside = {fit.name for fit in layout.shell_fits if fit.spare_mm < -0.5}
    clashes = {frozenset((clash.one, clash.other)) for clash in layout.clashes}
    blocked = {(zone.fitting, zone.purpose) for zone in layout.zones if zone.blocked_by}
    floating = {
        support.name
        for support in layout.supports
        if support.gap_mm is not None and support.gap_mm > BRACKET_MM
    }
    assert outside == {"wardrobe"}
    assert clashes == {
        frozenset(("galley", "fridge")),
        frozenset(("dinette", "one-piece-unit")),
        frozenset(("garage-left", "left wheel arch")),
    }
    assert blocked == {
        ("wardrobe", "door swing"),
        ("galley", "drawer"),
        ("hob", "cooking clearance"),
        ("fridge", "door swing"),
        ("side-seat", "seat entry"),
        ("toilet", "knees"),
        ("roof-hatch", "hatch swing"),
    }
    assert {"floating-shelf", "grey-tank"} <= floating


def test_the_file_of_the_troubled_build_tells_each_trouble() -> None:
    text = (FOLDER / "troubled.toml").read_text()
    assert text.count("TROUBLE:") >= 25


def test_the_family_builds_on_the_standard_with_options_and_changes_of_its_own() -> None:
    sheet = opened("four-seats").sheet
    assert sheet.standard == STANDARD
    assert len(sheet.options) >= 4
    assert sheet.changes.added
    assert opened("four-seats").build.conflicts == ()


@pytest.mark.parametrize("option", standard().offers, ids=lambda option: option.name)
def test_each_option_can_be_had_with_what_it_needs(option: Option) -> None:
    build = with_options(*option.requires, option.name)
    assert build.conflicts == ()
    layout = layout_of(build)
    assert [fit.name for fit in layout.shell_fits if fit.spare_mm < -0.5] == []
    assert [(clash.one, clash.other) for clash in layout.clashes] == []
    assert [(zone.fitting, zone.blocked_by) for zone in layout.zones if zone.blocked_by] == []


def test_seat_and_long_galley_exclude_each_other_and_say_why() -> None:
    (conflict,) = with_options("belted-rear-seat", "long-galley").conflicts
    assert conflict.kind == "excluded"
    assert {conflict.wish, conflict.other} == {
        option.title
        for option in standard().offers
        if option.name in ("belted-rear-seat", "long-galley")
    }
    assert "both want the left side behind the cab" in conflict.cause


def test_the_cause_of_the_exclusion_is_true() -> None:
    """The long galley, had the seat been there as well, would stand in its place."""
    seat = with_options("belted-rear-seat").fitted("rear-seat")
    galley = with_options("long-galley").fitted("galley")
    assert seat is not None
    assert galley is not None
    seat_end_mm = seat.at_mm[0] + seat.part.body.size_mm[0]
    assert galley.at_mm[0] < seat_end_mm
    cab_line_mm = with_options().vehicle.shell.cab_line_mm
    assert galley.at_mm[0] - cab_line_mm == pytest.approx(755.0)
    entry_mm = (
        next(zone for zone in seat.part.access.zones if zone.purpose == "seat entry").from_mm[0]
        if seat.part.access
        else 0.0
    )
    assert seat.part.body.size_mm[0] - entry_mm == pytest.approx(1030.0)


def test_an_option_that_needs_another_says_so() -> None:
    conflicts = with_options("winter-pack").conflicts
    assert [conflict.kind for conflict in conflicts] == ["required"]
