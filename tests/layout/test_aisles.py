"""The ways through a van at the three heights of the body; by hand, and against shapely."""

from collections.abc import Sequence

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry.base import BaseGeometry

from coachwright.layout.aisles import Level, aisles, floor_plan, levels
from coachwright.layout.model import Aisle
from coachwright.layout.solids import Solid, box, solid
from coachwright.model.shell import BuildUp
from coachwright.model.vehicle import BaseVehicle
from tests.support.builds import Data, build
from tests.support.vans import APERTURES, DOORS

HIP = Level(name="hip", from_mm=600, to_mm=1100)
VEHICLE = build(DOORS).vehicle
LEFT_HAND: Data = {"own_vehicle.apertures": [APERTURES[0] | {"wall": "left"}, APERTURES[1]]}
TWO_SLIDERS: Data = {
    "own_vehicle.apertures": [
        *APERTURES,
        APERTURES[0] | {"wall": "left", "name": "left door"},
    ]
}
NO_REAR: Data = {"own_vehicle.apertures": APERTURES[:1]}


def block(x0: float, y0: float, x1: float, y1: float, **heights: float) -> Solid:
    low, high = heights.get("low", 0), heights.get("high", 1500)
    return solid("block", (box((x0, y0, low), (x1, y1, high)),))


def ways(
    *bodies: Solid, vehicle: BaseVehicle = VEHICLE, build_up: BuildUp | None = None
) -> dict[str, Aisle]:
    found = aisles(bodies=bodies, vehicle=vehicle, build_up=build_up or BuildUp(), levels=[HIP])
    return {aisle.way: aisle for aisle in found}


def test_every_pair_of_openings_is_a_way_told_from_the_cab_backwards() -> None:
    assert list(ways()) == [
        "cab to sliding door",
        "cab to rear doors",
        "sliding door to rear doors",
    ]
    assert list(ways(vehicle=build(LEFT_HAND).vehicle)) == list(ways())
    assert list(ways(vehicle=build(TWO_SLIDERS).vehicle)) == [
        "cab to left door",
        "cab to sliding door",
        "cab to rear doors",
        "left door to sliding door",
        "left door to rear doors",
        "sliding door to rear doors",
    ]


def test_a_van_without_rear_doors_has_a_wall_there() -> None:
    found = ways(block(1600, -900, 4750, 500), vehicle=build(NO_REAR).vehicle)
    assert list(found) == ["cab to sliding door"]
    assert not found["cab to sliding door"].rear


def test_a_way_says_whether_it_leads_to_the_rear() -> None:
    assert {way: aisle.rear for way, aisle in ways().items()} == {
        "cab to sliding door": False,
        "cab to rear doors": True,
        "sliding door to rear doors": True,
    }


def test_an_empty_van_is_as_wide_as_its_doors() -> None:
    found = ways()
    assert found["cab to sliding door"].passage.width_mm == 1200
    assert found["cab to rear doors"].passage.width_mm == 1500
    assert found["sliding door to rear doors"].passage.width_mm == 1200


def test_the_other_doors_are_shut() -> None:
    # it leaves no way inside the van, and a step out of the sliding door would lead round it
    across = block(1600, -1000, 2000, 905)
    found = ways(across)
    assert found["cab to rear doors"].passage.width_mm == 0
    assert found["sliding door to rear doors"].passage.width_mm == pytest.approx(500)
    assert found["cab to sliding door"].passage.width_mm == pytest.approx(300)


def test_the_walls_count_where_they_are_narrowest_over_the_height_with_their_finishes() -> None:
    # half width at 600 mm: 912 mm; at 1000 mm: 920 mm; at 1100 mm: 902.5 mm
    island = block(2600, -2000, 3000, 500)
    assert ways(island)["cab to rear doors"].passage.width_mm == pytest.approx(402.5)
    lined = ways(island, build_up=BuildUp(walls_mm=15, floor_mm=100))
    # 100 mm higher: 920 - 140 · 200 / 800 = 885 mm
    assert lined["cab to rear doors"].passage.width_mm == pytest.approx(885 - 15 - 500)
    assert (lined["cab to rear doors"].from_mm, lined["cab to rear doors"].to_mm) == (700, 1200)


def test_only_what_reaches_into_the_height_is_in_the_way() -> None:
    low = block(2600, -900, 3000, 500, low=0, high=600)
    high = block(2600, -900, 3000, 500, low=1100, high=1800)
    assert ways(low)["cab to rear doors"].passage.width_mm == 1500
    assert ways(high)["cab to rear doors"].passage.width_mm == 1500
    middle = block(2600, -900, 3000, 500, low=590, high=610)
    assert ways(middle)["cab to rear doors"].passage.width_mm == pytest.approx(402.5)


def test_the_heights_of_the_body_join_so_that_nothing_slips_between() -> None:
    floor, hip, shoulder = levels()
    assert (floor.name, hip.name, shoulder.name) == ("floor", "hip", "shoulder")
    assert floor.to_mm == hip.from_mm
    assert hip.to_mm == shoulder.from_mm


def test_a_door_wider_than_the_floor_takes_the_whole_end() -> None:
    wide: Data = {
        "own_vehicle.apertures": [
            APERTURES[1] | {"from": "-1000 mm", "clear_width": "2000 mm"},
        ]
    }
    found = ways(vehicle=build(wide).vehicle)
    assert found["cab to rear doors"].passage.width_mm == pytest.approx(1805)


# ------------------------------------------------------------- against shapely, doors and all

QUAD_SEGS = 32
BEYOND = 3000.0
WITHIN_MM = 1.0


def _floor(way: str, obstacles: Sequence[BaseGeometry]) -> BaseGeometry:
    """Return the free floor with a corridor behind each end of the way; other doors are shut."""
    corridors = {
        "cab": shapely.box(1150 - BEYOND, -902.5, 1150, 902.5),
        "sliding door": shapely.box(1300, 902.5, 2500, 902.5 + BEYOND),
        "rear doors": shapely.box(4750, -750, 4750 + BEYOND, 750),
    }
    inside = shapely.box(1150, -902.5, 4750, 902.5).difference(shapely.union_all(obstacles))
    return shapely.union_all([inside, *(corridors[end] for end in way.split(" to "))])


def _passes(way: str, floor: BaseGeometry, width_mm: float) -> bool:
    eroded = floor.buffer(-width_mm / 2, quad_segs=QUAD_SEGS)
    ends = {
        "cab": shapely.Point(1150 - BEYOND + 1000, 0),
        "sliding door": shapely.Point(1900, 902.5 + BEYOND - 1000),
        "rear doors": shapely.Point(4750 + BEYOND - 1000, 0),
    }
    one, other = (ends[end] for end in way.split(" to "))
    pieces = getattr(eroded, "geoms", [eroded])
    return any(piece.intersects(one) and piece.intersects(other) for piece in pieces)


@st.composite
def blocks(draw: st.DrawFn) -> Solid:
    x, y = draw(st.integers(115, 440)) * 10.0, draw(st.integers(-90, 80)) * 10.0
    length, width = draw(st.integers(10, 120)) * 10.0, draw(st.integers(10, 90)) * 10.0
    return block(x, y, min(4750, x + length), min(900, y + width))


@settings(max_examples=40, deadline=None)
@given(st.lists(blocks(), max_size=5))
def test_each_way_is_the_widest_that_passes_shapely_s_eroded_floor(bodies: list[Solid]) -> None:
    obstacles = [
        shapely.box(*part.low_mm[:2], *part.high_mm[:2]) for body in bodies for part in body.boxes
    ]
    for way, aisle in ways(*bodies).items():
        floor = _floor(way, obstacles)
        low, high = 0.0, 1300.0 if "sliding" in way else 1600.0
        while high - low > WITHIN_MM / 4:
            middle = (low + high) / 2
            low, high = (middle, high) if _passes(way, floor, middle) else (low, middle)
        assert aisle.passage.width_mm == pytest.approx((low + high) / 2, abs=WITHIN_MM)


def test_the_edge_of_the_floor_closes() -> None:
    edges, _ = floor_plan(bodies=(), vehicle=VEHICLE, build_up=BuildUp(), level=HIP)
    lines = [
        shapely.LineString([edge.patch.low_mm, edge.patch.high_mm])
        for edge in edges
        if edge.patch.low_mm != edge.patch.high_mm
    ]
    ring = shapely.line_merge(shapely.union_all(lines))
    assert shapely.is_ring(ring)
    assert ring.bounds == (1150, -902.5, 4750, 902.5)
