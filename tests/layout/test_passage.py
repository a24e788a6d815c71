"""The narrowest passage against shapely: the centre of a disc in the eroded floor."""

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.layout.passage import (
    Patch,
    Plan,
    distance_mm,
    narrowest_passage,
    nearest_points_mm,
    outermost,
)
from tests.layout.shapes import polygon

LENGTH, WIDTH = 3000.0, 1800.0
"""The floor: openings at both ends over its whole width, walls along both sides."""
LEFT = Patch(name="left", low_mm=(0, 0), high_mm=(LENGTH, 0))
RIGHT = Patch(name="right", low_mm=(0, WIDTH), high_mm=(LENGTH, WIDTH))
BEYOND = 4000.0
"""How far the floor goes on beyond each opening, so that an opening is no wall."""
QUAD_SEGS = 32
"""Chords of a quarter circle: the erosion is right to 0.03 % of the radius."""
WITHIN_MM = 1.0


def patch(name: str, low: Plan, high: Plan) -> Patch:
    return Patch(name=name, low_mm=low, high_mm=high)


@st.composite
def patches(draw: st.DrawFn) -> Patch:
    """Return an obstacle of 50 to 900 mm, anywhere on the floor and over its edges."""
    x, y = draw(st.integers(0, 280)) * 10.0, draw(st.integers(-10, 170)) * 10.0
    length, width = draw(st.integers(5, 90)) * 10.0, draw(st.integers(5, 90)) * 10.0
    return patch("obstacle", (x, y), (x + length, y + width))


def width_mm(obstacles: list[Patch]) -> float:
    return narrowest_passage(side=[LEFT], other_side=[RIGHT], obstacles=obstacles).width_mm


def eroded_width_mm(obstacles: list[Patch]) -> float:
    """Return the widest disc that passes, by bisection on shapely's erosion of the free floor."""
    floor = shapely.box(-BEYOND, 0, LENGTH + BEYOND, WIDTH)
    free = floor.difference(shapely.union_all([polygon(each) for each in obstacles]))
    low, high = 0.0, WIDTH + 1
    while high - low > WITHIN_MM / 4:
        middle = (low + high) / 2
        eroded = free.buffer(-middle / 2, quad_segs=QUAD_SEGS)
        pieces = getattr(eroded, "geoms", [eroded])
        passes = any(
            not piece.is_empty and piece.bounds[0] < -1500 and piece.bounds[2] > LENGTH + 1500
            for piece in pieces
        )
        low, high = (middle, high) if passes else (low, middle)
    return (low + high) / 2


@settings(max_examples=60, deadline=None)
@given(st.lists(patches(), max_size=7))
def test_the_widest_person_is_the_one_who_passes_the_eroded_floor(obstacles: list[Patch]) -> None:
    # outside check: shapely's buffer and connectedness, no chains of gaps
    assert width_mm(obstacles) == pytest.approx(eroded_width_mm(obstacles), abs=WITHIN_MM)


@given(st.lists(patches(), max_size=6), patches())
def test_one_more_obstacle_never_widens_the_way(obstacles: list[Patch], more: Patch) -> None:
    assert width_mm([*obstacles, more]) <= width_mm(obstacles)


@given(st.lists(patches(), max_size=6))
def test_a_mirrored_floor_is_as_wide(obstacles: list[Patch]) -> None:
    mirrored = [
        patch("obstacle", (p.low_mm[0], WIDTH - p.high_mm[1]), (p.high_mm[0], WIDTH - p.low_mm[1]))
        for p in obstacles
    ]
    assert width_mm(mirrored) == pytest.approx(width_mm(obstacles))


@given(st.lists(patches(), max_size=6))
def test_both_sides_are_alike(obstacles: list[Patch]) -> None:
    back = narrowest_passage(side=[RIGHT], other_side=[LEFT], obstacles=obstacles)
    assert back.width_mm == width_mm(obstacles)


@given(st.lists(patches(), min_size=1, max_size=6))
def test_the_place_named_is_as_wide_as_said(obstacles: list[Patch]) -> None:
    found = narrowest_passage(side=[LEFT], other_side=[RIGHT], obstacles=obstacles)
    line = shapely.LineString([found.from_mm, found.to_mm])
    assert line.length == pytest.approx(found.width_mm)


@given(patches(), patches())
def test_a_distance_is_that_of_shapely(one: Patch, other: Patch) -> None:
    assert distance_mm(one, other) == pytest.approx(shapely.distance(polygon(one), polygon(other)))
    ends = nearest_points_mm(one, other)
    for end, body in zip(ends, (one, other), strict=True):
        assert shapely.distance(shapely.Point(end), polygon(body)) == pytest.approx(0)


@given(st.lists(patches(), max_size=8))
def test_what_lies_within_another_changes_nothing(obstacles: list[Patch]) -> None:
    kept = list(outermost(obstacles))
    assert width_mm(kept) == width_mm(obstacles)
    whole = shapely.union_all([polygon(each) for each in obstacles])
    assert shapely.union_all([polygon(each) for each in kept]).area == pytest.approx(whole.area)


def test_the_empty_floor_is_as_wide_as_it_is() -> None:
    found = narrowest_passage(side=[LEFT], other_side=[RIGHT], obstacles=[])
    assert (found.width_mm, found.between) == (WIDTH, ("left", "right"))


def test_the_better_of_two_ways_round_counts() -> None:
    # an island 300 mm from the left and 700 mm from the right wall
    island = patch("island", (1000, 300), (2000, 1100))
    found = narrowest_passage(side=[LEFT], other_side=[RIGHT], obstacles=[island])
    assert found.width_mm == 700
    assert set(found.between) == {"island", "right"}


def test_a_slanted_gap_is_measured_along_the_slant() -> None:
    galley = patch("galley", (0, 0), (1000, 900))
    bench = patch("bench", (1300, 1300), (2500, 1800))
    found = narrowest_passage(side=[LEFT], other_side=[RIGHT], obstacles=[galley, bench])
    assert found.width_mm == 500  # 300 mm along, 400 mm across
    assert (found.from_mm, found.to_mm) in (
        ((1000, 900), (1300, 1300)),
        ((1300, 1300), (1000, 900)),
    )


def test_what_stands_from_wall_to_wall_closes_the_way() -> None:
    assert width_mm([patch("bed", (1000, 0), (2000, 1800))]) == 0


def test_a_way_without_walls_is_refused() -> None:
    with pytest.raises(OutOfRange, match="no walls"):
        narrowest_passage(side=[], other_side=[RIGHT], obstacles=[])
