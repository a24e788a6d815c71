"""Floor plans, and the wishes that collide where there is none."""

import json
from typing import Any

import pytest

from coachwright.arrange import floor as floor_module
from coachwright.arrange.checking import Checked
from coachwright.arrange.floor import floor_model, propose_floor
from coachwright.arrange.floor_conflict import colliding
from coachwright.arrange.floor_goals import AxleSpare, add_goals, group_mass_kg
from coachwright.arrange.floor_groups import FloorWish
from coachwright.arrange.floor_measures import measured, points_count, way_width_mm
from coachwright.arrange.floor_problem import floor_problem, weight
from coachwright.arrange.model import FloorMeasures, FloorPlan
from coachwright.arrange.solving import Search, solve
from coachwright.errors import UnknownName
from coachwright.layout import stage as layout_stage
from coachwright.model.build import Build
from tests.arrange.floors import SIDE_DOOR, cabinet_data, floor_build, kitchen, stands
from tests.support import builds

SEARCH = Search(limit_s=20)
NARROW = FloorWish(aisle_mm=400)


def _row(lengths: tuple[int, ...], wall: str = "left", **changes: Any) -> Build:
    """Return cabinets of some lengths, one behind the other as written, 700 mm deep."""
    names = [f"box-{number}" for number, _ in enumerate(lengths)]
    parts = [
        cabinet_data(name, length, width_mm=700, height_mm=1800)
        for name, length in zip(names, lengths, strict=True)
    ]
    fittings = [stands(name, name, "1150 mm", wall) for name in names]
    return floor_build(fittings, parts, **changes)


def _order(plan: FloorPlan, wall: str) -> list[str]:
    return [place.name for place in plan.places if place.wall == wall]


def test_cabinets_that_just_fill_both_walls_find_their_places() -> None:
    # 3600 mm on each wall: 1800 + 1800 and 2000 + 1600 is the only way to part them
    proposal = propose_floor(_row((1800, 2000, 1800, 1600)), NARROW, SEARCH)
    assert proposal.plans
    for plan in proposal.plans:
        walls = {frozenset(_order(plan, "left")), frozenset(_order(plan, "right"))}
        assert walls == {frozenset({"box-0", "box-2"}), frozenset({"box-1", "box-3"})}


def test_ten_millimetres_more_collide_and_the_cabinets_are_named() -> None:
    proposal = propose_floor(_row((1810, 2000, 1800, 1600)), NARROW, SEARCH)
    assert proposal.plans == ()
    # of the three long ones no two fit behind each other, and there are two walls
    assert [words for words in proposal.conflict if words.endswith("in the van")] == [
        "box-0 is in the van",
        "box-1 is in the van",
        "box-2 is in the van",
    ]


def test_a_collision_names_no_wish_too_many() -> None:
    build = _row((1810, 2000, 1800, 1600))
    problem = floor_problem(build, NARROW)
    conflict = colliding(floor_model(problem), SEARCH)
    for left_out in conflict:
        floor = floor_model(problem)
        kept = [floor.wishes[words] for words in conflict if words != left_out]
        floor.model.add_bool_and(kept)
        assert solve(floor.model, SEARCH)[1].found


def test_wishes_that_can_be_met_do_not_collide() -> None:
    assert colliding(floor_model(floor_problem(kitchen(), FloorWish())), SEARCH) == ()


def test_a_way_that_is_too_wide_collides_by_name() -> None:
    proposal = propose_floor(kitchen(), FloorWish(aisle_mm=1350), SEARCH)
    assert "there is a way of 1350 mm from the cab" in proposal.conflict
    assert any(words.endswith("is in the van") for words in proposal.conflict)


def test_a_pinned_module_is_named_in_a_collision() -> None:
    build = _row((1800, 1900))
    wish = FloorWish(pinned=("box-0",), aisle_mm=1000)  # the other must stand at the same wall
    proposal = propose_floor(build, wish, SEARCH)
    assert "box-0 stays where it is" in proposal.conflict
    assert "box-1 is in the van" in proposal.conflict


def test_plans_differ_by_side_or_order_and_each_is_checked() -> None:
    proposal = propose_floor(_row((600, 700, 900)), NARROW, SEARCH)
    assert len(proposal.plans) == 5
    looks = [(_order(plan, "left"), _order(plan, "right")) for plan in proposal.plans]
    assert len({json.dumps(look) for look in looks}) == 5
    assert all(plan.points_count for plan in proposal.plans)
    assert [plan.points_count for plan in proposal.plans] == sorted(
        (plan.points_count for plan in proposal.plans), reverse=True
    )
    assert proposal.first_s is not None
    assert proposal.first_s <= proposal.took_s


def test_twins_are_not_exchanged_for_a_new_plan() -> None:
    parts = [cabinet_data("box", 1000, height_mm=1800)]
    build = floor_build([stands("one", "box", "1200 mm"), stands("two", "box", "2500 mm")], parts)
    proposal = propose_floor(build, NARROW, SEARCH)
    looks = [(len(_order(plan, "left")), len(_order(plan, "right"))) for plan in proposal.plans]
    assert looks.count((1, 1)) <= 1 + sum(
        1 for plan in proposal.plans if plan.places[0].name == "one"
    )
    assert all(
        plan.places[0].name == "one" or plan.places[0].wall == "right" for plan in proposal.plans
    )


def test_a_pinned_module_stays() -> None:
    proposal = propose_floor(kitchen(), FloorWish(pinned=("galley",)), SEARCH)
    assert proposal.plans
    for plan in proposal.plans:
        place = next(place for place in plan.places if place.name == "galley")
        assert (place.from_mm, place.wall, place.moved) == (1500, "left", False)


def test_zones_are_free_in_every_plan() -> None:
    proposal = propose_floor(kitchen(), FloorWish(), SEARCH)
    assert proposal.plans
    for plan in proposal.plans:
        layout = layout_stage.stage(plan.build)
        assert not any(zone.intrusions for zone in layout.zones)
        assert layout.clashes == ()
        assert {held.gap_mm for held in layout.supports} == {0.0}


def test_the_sliding_door_keeps_a_way_in() -> None:
    build = _row((1500, 1500), "right", **{"own_vehicle.apertures": [SIDE_DOOR]})
    proposal = propose_floor(build, FloorWish(), SEARCH)
    assert proposal.plans
    for plan in proposal.plans:
        right = sorted((p.from_mm, p.to_mm) for p in plan.places if p.wall == "right")
        starts = [1300.0, *(to_mm for _, to_mm in right)]
        ends = [*(from_mm for from_mm, _ in right), 2500.0]
        free = [min(end, 2500) - max(start, 1300) for start, end in zip(starts, ends, strict=True)]
        assert max(free) >= weight("entry").value


def test_a_plan_that_fails_its_check_is_dropped_and_said(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def failing(*_arguments: object) -> Checked:
        layout = layout_stage.stage(kitchen())
        return Checked(layout=layout, faults=("a fault",), cautions=())

    monkeypatch.setattr(floor_module, "checked", failing)
    proposal = propose_floor(kitchen(), FloorWish(), Search(limit_s=3), most=2)
    assert proposal.plans == ()
    assert proposal.dropped[0] == ("a fault",)
    assert proposal.conflict == ()


def test_an_interrupt_keeps_the_plans_so_far() -> None:
    def stop(words: str) -> None:
        if words.startswith("2"):
            raise KeyboardInterrupt

    proposal = propose_floor(_row((600, 700, 900)), NARROW, SEARCH, on_plan=stop)
    assert len(proposal.plans) == 2


def test_no_more_plans_than_wanted() -> None:
    assert len(propose_floor(_row((600, 700)), NARROW, SEARCH, most=1).plans) == 1


def test_the_best_plan_has_the_shortest_runs() -> None:
    # the tank stands in the bench, the tap in the galley: side by side on one wall is best
    plan = propose_floor(kitchen(), FloorWish(), SEARCH).plans[0]
    others = propose_floor(kitchen(), FloorWish(), SEARCH).plans[1:]
    assert all(plan.points_count >= other.points_count for other in others)
    assert plan.proof.proven


def test_moved_windows_and_belted_seats_get_a_note() -> None:
    seat = {
        "places": [{"name": "one", "reference": ["200 mm", "250 mm", "400 mm"]}],
        "belt": "three-point",
    }
    window = {"kind": "window", "clear_width": "300 mm", "clear_height": "300 mm"}
    parts = [
        builds.part(
            "seat", body={"size": ["600 mm", "500 mm", "900 mm"], "mass": "30 kg"}, seat=seat
        ),
        builds.part(
            "window",
            body={"size": ["400 mm", "50 mm", "300 mm"], "mass": "2 kg"},
            opening=window,
        ),
    ]
    build = floor_build(
        [
            stands("seat", "seat", "1600 mm"),
            builds.fitting(
                "window",
                "window",
                at=["centred on seat", "against left wall", "above seat 100 mm"],
                mounting="wall",
            ),
        ],
        parts,
    )
    notes = propose_floor(build, NARROW, SEARCH).notes
    assert any("anchorages were tested where they were" in note for note in notes)
    assert any(note.startswith("window: moves with seat") for note in notes)


def test_what_is_bought_and_has_to_be_mirrored_gets_a_note() -> None:
    lopsided = builds.part(
        "fridge",
        body={
            "size": ["500 mm", "500 mm", "800 mm"],
            "mass": "20 kg",
            "centre": ["200 mm", "200 mm", "400 mm"],
        },
    )
    build = floor_build(
        [
            stands("tall", "tall", "1600 mm"),
            builds.fitting(
                "fridge",
                "fridge",
                at=["flush front tall", "flush left tall", "flush bottom tall"],
                within="tall",
            ),
        ],
        [cabinet_data("tall", 600, height_mm=1800), lopsided],
    )
    notes = propose_floor(build, NARROW, SEARCH).notes
    assert any(note.startswith("fridge is mirrored in some plans") for note in notes)


def test_a_quarter_turn_stands_against_a_wall() -> None:
    build = _row((1400,))
    proposal = propose_floor(build, FloorWish(turned=("box-0",), aisle_mm=330), SEARCH, most=5)
    turned = [
        place for plan in proposal.plans for place in plan.places if place.turned.startswith("by")
    ]
    for place in turned:
        assert place.to_mm - place.from_mm == 700


def test_the_way_is_measured_by_the_layout() -> None:
    build = _row((1000,))  # 700 mm of 1800 mm are taken
    problem = floor_problem(build, FloorWish())
    layout = layout_stage.stage(build)
    assert way_width_mm(problem, build, layout, 4000) == 1100
    found = measured(problem, build, layout, 4000)
    assert found.room_mm == 3600
    assert (found.plumbing_mm, found.cable_mm, found.counter_mm) == (0, 0, 0)
    assert found.storage_l == 100


def test_worktops_side_by_side_count_as_one() -> None:
    parts = [cabinet_data("box", 500)]
    one_wall = floor_build(
        [stands("one", "box", "1500 mm"), stands("two", "box", "2010 mm")], parts
    )
    apart = floor_build(
        [stands("one", "box", "1500 mm"), stands("two", "box", "2010 mm", "right")], parts
    )
    for build, counter_mm in ((one_wall, 1000), (apart, 500)):
        problem = floor_problem(build, FloorWish())
        found = measured(problem, build, layout_stage.stage(build), 4000)
        assert found.counter_mm == counter_mm


def test_points_are_the_sum_of_measures_by_their_weights() -> None:
    found = FloorMeasures(
        aisle_mm=800,
        axle_spare_kg=100,
        plumbing_mm=1000,
        cable_mm=2000,
        storage_l=500,
        counter_mm=600,
        room_mm=700,
    )
    # width counts up to 650 mm
    by_hand = 65 + 20 - 10 - 10 + 10 + 6 + 7
    assert points_count(found) == by_hand


def test_an_unknown_weight_is_refused() -> None:
    with pytest.raises(UnknownName, match="no weight 'beauty'"):
        weight("beauty")


def test_the_lighter_axle_draws_mass_to_itself() -> None:
    build = _row((1000,))
    problem = floor_problem(build, NARROW)
    ends = {}
    for name, spare in (
        ("front", AxleSpare(front_kg=900, rear_kg=0)),
        ("rear", AxleSpare(front_kg=0, rear_kg=900)),
    ):
        floor = floor_model(problem)
        floor.model.add_bool_and(list(floor.wishes.values()))
        add_goals(floor, spare)
        solver, proof = solve(floor.model, SEARCH)
        assert proof.proven
        ends[name] = floor.stands(solver)[0].low_x_mm
    assert ends == {"front": 1150, "rear": 3750}
    assert group_mass_kg(problem.groups[0]) == 20
