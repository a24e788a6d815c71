"""Access zones where they stand, and what blocks them; by hand."""

from typing import Any

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from coachwright.layout.model import Layout, PlacedZone
from coachwright.layout.solids import Box, box, solid
from coachwright.layout.stage import stage
from coachwright.layout.zones import free_frac
from tests.layout.shapes import boxes, section, slices
from tests.support.builds import Data, build
from tests.support.vans import Thing, access, holding, thing, zone

SIZE = (600.0, 500.0, 800.0)
AHEAD = ((0.0, 500.0, 0.0), (600.0, 900.0, 800.0))
AT = (2700.0, -800.0, 0.0)
SPACE = box((2700, -300, 0), (3300, 100, 800))


def chest(purpose: str = "drawer", **more: Any) -> Thing:
    fields = {key: more.pop(key) for key in ("within", "on", "turn", "mirror") if key in more}
    return thing("chest", SIZE, AT, facets=access(zone(purpose, *AHEAD, **more)), **fields)


def stool(y: float = 0, *, facets: Data | None = None, **fields: Any) -> Thing:
    return thing("stool", (300, 300, 450), (2700, y, 0), facets=facets, **fields)


def layout_of(*things: Thing, **more: Any) -> Layout:
    return stage(build(holding(*things, **more)))


def only(layout: Layout) -> PlacedZone:
    (found,) = layout.zones
    return found


def test_a_zone_stands_where_its_fitting_does() -> None:
    found = only(layout_of(chest()))
    assert found.space == SPACE
    assert (found.fitting, found.purpose) == ("chest", "drawer")
    assert (found.blocked_by, found.depth_mm, found.free_frac) == ((), 0.0, 1.0)


@pytest.mark.parametrize(
    ("fields", "low", "high"),
    [
        # turned half round it opens to the left; mirrored as well; by a quarter to the front
        ({"turn": "180 deg"}, (2700, -1200, 0), (3300, -800, 800)),
        ({"mirror": True}, (2700, -1200, 0), (3300, -800, 800)),
        ({"turn": "90 deg"}, (2300, -800, 0), (2700, -200, 800)),
        ({"turn": "270 deg"}, (3200, -800, 0), (3600, -200, 800)),
    ],
)
def test_a_zone_turns_with_its_fitting(
    fields: Data, low: tuple[float, float, float], high: tuple[float, float, float]
) -> None:
    assert only(layout_of(chest(**fields))).space == box(low, high)


def test_what_stands_in_it_is_named_worst_first_with_its_depth() -> None:
    post = thing("post", (100, 100, 800), (2800, -300, 0))
    found = only(layout_of(chest(), stool(), post))
    # the stool 100 mm from the right, 300 mm from the front; the post 100 mm, from the left
    assert found.intrusions[0].depth_mm == 100
    assert set(found.blocked_by) == {"stool", "post"}
    taken = 0.3 * 0.1 * 0.45 + 0.1 * 0.1 * 0.8
    assert found.free_frac == pytest.approx(1 - taken / (0.6 * 0.4 * 0.8))


def test_one_millimetre_does_not_count() -> None:
    assert only(layout_of(chest(), stool(99))).blocked_by == ()
    assert only(layout_of(chest(), stool(98))).blocked_by == ("stool",)


def test_a_wheel_arch_blocks_too() -> None:
    made = thing("chest", SIZE, (3700, 0, 0), facets=access(zone("service", *AHEAD)))
    found = only(layout_of(made, arches=True))
    assert found.blocked_by == ("right wheel arch",)
    assert found.depth_mm == 200


def test_a_part_that_the_zone_may_hold_does_not_block() -> None:
    table: Data = {"table": {"height": "450 mm", "length": "300 mm", "width": "300 mm"}}
    assert only(layout_of(chest(may_hold=["table"]), stool(facets=table))).blocked_by == ()
    assert only(layout_of(chest(may_hold=["table"]), stool())).blocked_by == ("stool",)


def test_what_it_is_built_into_or_carried_by_does_not_block() -> None:
    frame = thing("frame", (700, 600, 900), (2650, -850, 0))
    assert only(layout_of(frame, chest(within="frame"))).blocked_by == ()
    plinth = thing("plinth", (700, 900, 20), (2650, -850, 0))
    made = thing(
        "chest",
        SIZE,
        (2700, -800, 20),
        on="plinth",
        facets=access(zone("drawer", (0, 500, -20), (600, 900, 780))),
    )
    assert only(layout_of(plinth, made)).blocked_by == ()


def test_what_is_built_into_it_does_not_block_but_what_stands_on_it_does() -> None:
    top = access(zone("service", (0, 0, 800), (600, 500, 1200)))
    made = thing("chest", SIZE, AT, facets=top)
    kettle = thing("kettle", (200, 200, 250), (2750, -700, 800), on="chest")
    sink = thing("sink", (200, 200, 250), (2750, -700, 700), within="chest")
    assert only(layout_of(made, kettle)).blocked_by == ("kettle",)
    assert only(layout_of(made, sink)).blocked_by == ()


def test_the_first_waiver_that_fits_is_kept() -> None:
    waivers = [
        {"fitting": "chest", "purpose": "filter", "role": "designer", "reason": "no filter"},
        {"fitting": "chest", "purpose": "", "role": "customer", "reason": "wants it so"},
    ]
    found = only(layout_of(chest(), waivers=waivers)).waived
    assert found is not None
    assert (found.role, found.reason) == ("customer", "wants it so")
    assert only(layout_of(chest())).waived is None


REAR = ((600.0, 0.0, 0.0), (1200.0, 500.0, 800.0))
"""A tray that comes out 600 mm behind."""


def rearmost(purpose: str = "slide-out travel", **more: Any) -> Thing:
    made = access(zone(purpose, *REAR, **more))
    return thing("tray", SIZE, (4150, -600, 20), facets=made)


def test_a_tray_comes_out_of_the_rear_doors() -> None:
    assert only(layout_of(rearmost(), doors=True)).blocked_by == ()
    assert only(layout_of(rearmost())).blocked_by == ("the rear doors",)


def test_what_hangs_on_a_rear_door_swings_away() -> None:
    box_on_door = thing("door-box", (300, 600, 600), (5040, -700, 200), mounting="rear door left")
    lamp = thing("lamp", (50, 50, 50), (5340, -500, 300), mounting="rear door left", on="door-box")
    assert only(layout_of(rearmost(), box_on_door, lamp, doors=True)).blocked_by == ()


def test_a_door_that_opens_to_a_right_angle_may_leave_its_load_in_the_way() -> None:
    shelf = thing("door-shelf", (300, 600, 600), (4440, -700, 200), mounting="rear door left")
    # hung inside the door: at 90 degrees it stands behind the van, from y -780 to -180 mm
    found = layout_of(rearmost(), shelf, doors=True, **{"own_vehicle.rear_end.open": "90 deg"})
    assert only(found).blocked_by == ("door-shelf",)


def test_what_hangs_on_the_hitch_stays_in_the_way() -> None:
    rack = thing("rack", (600, 1200, 700), (5100, -600, -200), mounting="hitch")
    found = only(layout_of(rearmost(), rack, doors=True))
    assert found.blocked_by == ("rack",)
    assert found.depth_mm == 250  # 4150 + 1200 - 5100 mm


def test_a_zone_that_is_always_free_passes_no_door_unless_it_is_an_exit() -> None:
    assert only(layout_of(rearmost("service", always=True), doors=True)).blocked_by == (
        "the rear doors",
    )
    assert only(layout_of(rearmost("exit", always=True), doors=True)).blocked_by == ()


def test_a_zone_outside_is_not_held_against_the_inner_shell() -> None:
    lid = access(zone("hatch swing", (0, 0, 100), (500, 500, 600)))
    hatch = thing("hatch", (500, 500, 100), (2000, -250, 2090), mounting="roof", facets=lid)
    assert only(layout_of(hatch)).blocked_by == ()


@given(boxes(), st.lists(boxes(), max_size=5))
def test_the_free_share_is_that_of_shapely(space: Box, takers: list[Box]) -> None:
    # outside check: shapely's difference of the sections, slice by slice
    whole, taken = solid("zone", (space,)), solid("takers", tuple(takers) or (space,))
    free = sum(
        section(whole, z).difference(section(taken, z) if takers else shapely.Polygon()).area * d
        for z, d in slices(whole, taken)
    )
    volume = sum(section(whole, z).area * d for z, d in slices(whole, taken))
    assert free_frac(space, takers) == pytest.approx(free / volume, abs=1e-9)
