"""Panels for a roof: a field of 2000 by 1000 mm inside its edge distance of 25 mm."""

import pytest

from coachwright.arrange.model import PanelPlace
from coachwright.arrange.roof import ALL_OBSTACLES, propose_roof
from coachwright.arrange.roof_field import RoofWish, clearance_mm
from coachwright.arrange.solving import Search
from coachwright.errors import CallError
from coachwright.model.part import Part
from coachwright.reference import limit
from tests.arrange.roofs import fan, panel, panel_data, roof_build
from tests.support import builds

SEARCH = Search(limit_s=20)
GAP_MM = limit("layout.roof-clearance").value
EDGE_MM = limit("layout.panel-edge").value


def test_the_assumptions_of_these_tests_hold() -> None:
    assert (GAP_MM, EDGE_MM) == (20, 25)


def test_an_empty_roof_takes_what_fits_with_its_gaps() -> None:
    # two rows of two: 990 + 20 + 990 = 2000 mm, 490 + 20 + 490 = 1000 mm
    wish = RoofWish(panels=(panel("p", (990, 490), 100),))
    plan = propose_roof(roof_build(), wish, SEARCH)
    assert (plan.total_w, plan.proof.proven, plan.faults) == (400, True, ())
    assert {place.low_mm for place in plan.panels} == {
        (1025, -500),
        (2035, -500),
        (1025, 10),
        (2035, 10),
    }


def test_a_millimetre_more_leaves_no_second_row() -> None:
    wish = RoofWish(panels=(panel("p", (991, 491), 100),))
    # turned, three stand side by side: 3 · 491 + 2 · 20 = 1513 mm, a fourth needs 2024 mm
    assert propose_roof(roof_build(), wish, SEARCH).total_w == 300


def test_a_panel_is_turned_where_that_helps() -> None:
    wish = RoofWish(panels=(panel("p", (1000, 990), 100),))
    plan = propose_roof(roof_build(), wish, SEARCH)
    assert plan.total_w == 200
    assert all(place.turned for place in plan.panels)


def test_what_a_fan_costs_is_found_without_it() -> None:
    # behind the fan in the middle nothing of 990 mm is left: 2000 / 2 − 200 − 25 = 775 mm
    fitting, part = fan("fan", 1825, -200)
    wish = RoofWish(panels=(panel("p", (990, 490), 100), panel("q", (770, 480), 60)))
    plan = propose_roof(roof_build(fittings=[fitting], parts=[part]), wish, SEARCH)
    assert plan.total_w == 4 * 60
    assert [(cost.name, cost.without_w, cost.cost_w) for cost in plan.obstacles] == [
        ("fan", 400, 160)
    ]
    assert plan.obstacles[0].proven


def test_several_obstacles_are_left_out_one_by_one_and_together() -> None:
    one, part = fan("front-fan", 1025, -500)
    other, _ = fan("rear-fan", 2625, -500)
    wish = RoofWish(panels=(panel("p", (990, 490), 100),))
    plan = propose_roof(roof_build(fittings=[one, other], parts=[part]), wish, SEARCH)
    costs = {cost.name: cost.cost_w for cost in plan.obstacles}
    # between them, or between one and the other end of the roof, there is room for one panel
    assert costs == {"front-fan": 0, "rear-fan": 0, ALL_OBSTACLES: 100}


def test_a_walkway_stays_free() -> None:
    wish = RoofWish(panels=(panel("p", (990, 490), 100),), walkways_mm=((1900, 2200),))
    plan = propose_roof(roof_build(), wish, SEARCH)
    assert plan.total_w == 200  # 875 mm before and 825 mm behind it: one each, turned
    assert plan.obstacles[0].cost_w == 200


def test_present_panels_and_their_rails_make_room_for_new_ones() -> None:
    rails = builds.part("rails", body={"size": ["600 mm", "400 mm", "45 mm"], "mass": "3 kg"})
    build = roof_build(
        fittings=[
            builds.fitting(
                "rails", "rails", at=["1200 mm", "0 mm", "against roof"], mounting="roof"
            ),
            builds.fitting(
                "old", "old", at=["1200 mm", "0 mm", "above rails"], mounting="roof", on="rails"
            ),
            builds.fitting(
                "box", "rails", at=["behind old 100 mm", "0 mm", "0 mm"], mounting="floor"
            ),
        ],
        parts=[rails, panel_data("old", (700, 400), 80)],
    )
    wish = RoofWish(panels=(panel("p", (990, 490), 100),), mount=build.fittings[0].part)
    plan = propose_roof(build, wish, SEARCH)
    assert plan.removed == ("rails", "old")
    assert (plan.present_w, plan.total_w) == (80, 400)
    assert plan.mass_kg == 4 * (10 + 3)
    names = [fitted.name for fitted in plan.build.fittings]
    assert names[0] == "box"
    assert plan.build.fittings[0].at_mm[0] == 2000  # behind the old panel, told by a length now
    assert [f.on for f in plan.fittings if f.on] == [f"solar-rails-{n}" for n in range(1, 5)]
    assert plan.faults == ()


def test_a_mounting_larger_than_its_panel_takes_its_own_room() -> None:
    rails = Part.model_validate(
        {"id": "rails", "name": "rails", "body": {"size_mm": (1200, 490, 45), "mass_kg": 3}}
    )
    wish = RoofWish(panels=(panel("p", (900, 490), 100),), mount=rails)
    assert propose_roof(roof_build(), wish, SEARCH).total_w == 200


def test_no_more_than_the_roof_may_carry() -> None:
    build = roof_build({"own_vehicle.limits.roof_moving": "25 kg"})
    wish = RoofWish(panels=(panel("p", (490, 490), 50),))
    plan = propose_roof(build, wish, SEARCH)
    assert (len(plan.panels), plan.mass_kg) == (2, 20)


def test_an_unknown_roof_limit_is_said() -> None:
    build = roof_build({"own_vehicle.limits.roof_moving": None})
    plan = propose_roof(build, RoofWish(panels=(panel("p", (490, 490), 50),)), SEARCH)
    assert any("no limit for the roof" in note for note in plan.notes)


def test_mixed_kinds_are_said_and_can_be_ruled_out() -> None:
    panels = (panel("p", (1500, 490), 150), panel("q", (480, 490), 45))
    mixed = propose_roof(roof_build(), RoofWish(panels=panels), SEARCH)
    plain = propose_roof(roof_build(), RoofWish(panels=panels, most_kinds=1), SEARCH)
    assert mixed.total_w == 390
    assert any("2 kinds" in note for note in mixed.notes)
    assert plain.total_w == 360  # eight small ones
    assert {place.part for place in plain.panels} == {"q"}


def test_most_of_each_holds() -> None:
    wish = RoofWish(panels=(panel("p", (490, 490), 50),), most=3)
    assert propose_roof(roof_build(), wish, SEARCH).total_w == 150


@pytest.mark.parametrize(("crown", "watts"), [("50 mm", 400), ("90 mm", 200)])
def test_a_rigid_panel_lies_only_where_the_roof_is_flat_enough(crown: str, watts: int) -> None:
    # at y = 500 the roof falls crown · (500 / 525)²: 45 mm and 82 mm, against 60 mm; with a crown
    # of 90 mm it falls 60 mm at 525 · √(60 / 90) = 428 mm, which leaves one row
    build = roof_build({"own_vehicle.roof.crown": crown})
    wish = RoofWish(panels=(panel("p", (990, 490), 100),))
    plan = propose_roof(build, wish, SEARCH)
    assert plan.total_w == watts


def test_a_glued_panel_lies_in_the_middle_of_a_round_roof() -> None:
    # bend of a panel of 300 mm in the middle: 90 · (150 / 525)² / 300 = 2.4 %, against 3 %
    build = roof_build({"own_vehicle.roof.crown": "90 mm"})
    wish = RoofWish(panels=(panel("p", (990, 300), 100, bonded=True),))
    plan = propose_roof(build, wish, SEARCH)
    assert plan.total_w == 200
    assert all(abs(place.low_mm[1] + 150) < 100 for place in plan.panels)


def test_a_rack_that_carries_panels_carries_the_new_ones() -> None:
    rack = builds.part(
        "rack",
        body={"size": ["1000 mm", "1000 mm", "100 mm"], "mass": "20 kg"},
        roof_rack={"load_limit": "80 kg"},
    )
    build = roof_build(
        fittings=[
            builds.fitting(
                "rack", "rack", at=["1025 mm", "-500 mm", "against roof"], mounting="roof"
            ),
            builds.fitting(
                "old", "old", at=["1100 mm", "0 mm", "above rack"], mounting="roof", on="rack"
            ),
        ],
        parts=[rack, panel_data("old", (700, 400), 80)],
    )
    plan = propose_roof(build, RoofWish(panels=(panel("p", (990, 490), 100),)), SEARCH)
    assert plan.removed == ("old",)
    assert sorted(fitting.on for fitting in plan.fittings) == ["", "", "rack", "rack"]
    assert plan.faults == ()


def test_worth_can_be_something_else_than_watts() -> None:
    def sunny_rear(_part: Part, place: PanelPlace) -> int:
        return int(place.low_mm[0])

    wish = RoofWish(panels=(panel("p", (490, 490), 50),), most=1)
    plan = propose_roof(roof_build(), wish, SEARCH, value_of=sunny_rear)
    assert plan.panels[0].high_mm[0] == 3025
    assert plan.proof.value == plan.panels[0].value == 2535


def test_what_the_present_panels_breach_is_said() -> None:
    fitting, part = fan("fan", 2000, 0)
    build = roof_build(
        fittings=[
            fitting,
            builds.fitting("old", "old", at=["1290 mm", "0 mm", "against roof"], mounting="roof"),
            builds.fitting(
                "far", "old", at=["1000 mm", "-420 mm", "against roof"], mounting="roof"
            ),
        ],
        parts=[part, panel_data("old", (700, 400), 80)],
    )
    plan = propose_roof(build, RoofWish(panels=(panel("p", (490, 490), 50),)), SEARCH)
    assert any(
        "old is closer to fan" in note and "far is closer to the roof's edge" in note
        for note in plan.notes
    )


def test_something_must_be_there_to_choose_from() -> None:
    with pytest.raises(CallError, match="no panel to choose from"):
        propose_roof(roof_build(), RoofWish(panels=()), SEARCH)


def test_an_air_conditioner_asks_for_more_room_than_a_rack() -> None:
    plain = panel("p", (490, 490), 50)
    cooled = plain.model_copy(update={"air_conditioner": plain.solar_panel})
    assert clearance_mm(cooled) > clearance_mm(plain) == GAP_MM


def test_a_pinned_panel_stays_and_others_lie_beside_it() -> None:
    old = builds.fitting(
        "old", "old", at=["1025 mm", "-500 mm", "against roof"], mounting="roof", pinned=True
    )
    build = roof_build(fittings=[old], parts=[panel_data("old", (990, 490), 80)])
    plan = propose_roof(build, RoofWish(panels=(panel("p", (990, 490), 100),)), SEARCH)
    assert plan.removed == ()
    assert (plan.present_w, plan.total_w, plan.faults) == (0, 300, ())
    assert [fitted.name for fitted in plan.build.fittings].count("old") == 1
