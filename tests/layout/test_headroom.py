"""Headroom as a bottleneck of closing heights, against the width of ways at each height."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.layout.headroom import Edge, Hanging, headrooms
from coachwright.layout.model_interior import Headroom
from coachwright.layout.passage import Patch, narrowest_passage

CAB_MM, REAR_MM, HALF_MM, CEILING_MM = 1000.0, 4000.0, 900.0, 1900.0
DOOR_MM = (1500.0, 2500.0)
EDGES = (
    Edge(wall="cab", from_mm=-HALF_MM, to_mm=HALF_MM, opening="cab"),
    Edge(wall="right", from_mm=CAB_MM, to_mm=DOOR_MM[0]),
    Edge(wall="right", from_mm=DOOR_MM[0], to_mm=DOOR_MM[1], opening="sliding door"),
    Edge(wall="right", from_mm=DOOR_MM[1], to_mm=REAR_MM),
    Edge(wall="rear", from_mm=-HALF_MM, to_mm=HALF_MM),
    Edge(wall="left", from_mm=CAB_MM, to_mm=REAR_MM),
)


def straight_walls(y_mm: float) -> float:
    return 0.0 if y_mm >= HALF_MM else float("inf")


def leaning_walls(y_mm: float) -> float:
    """Half width 900 mm at the floor, 700 mm at 2000 mm."""
    return max(0.0, (HALF_MM - y_mm) * 10) if y_mm > 700 else float("inf")


def hanging(name: str, x: tuple[float, float], y: tuple[float, float], from_mm: float) -> Hanging:
    return Hanging(
        name=name,
        x_from_mm=x[0],
        x_to_mm=x[1],
        y_from_mm=y[0],
        y_to_mm=y[1],
        from_mm=from_mm,
    )


def headroom(
    *things: Hanging,
    width_mm: float = 450.0,
    walls: Callable[[float], float] = straight_walls,
    floor_mm: float = 0.0,
) -> Headroom:
    (found,) = headrooms(
        edges=EDGES,
        hangings=things,
        width_mm=width_mm,
        rear_mm=REAR_MM,
        ceiling_mm=CEILING_MM,
        wall_reaches_mm=walls,
        floor_mm=floor_mm,
    )
    return found


def test_an_empty_van_has_its_ceiling() -> None:
    found = headroom(floor_mm=20.0)
    assert (found.way, found.clear_mm, found.under) == ("cab to sliding door", 1880, "ceiling")


def test_a_beam_across_ends_it() -> None:
    found = headroom(hanging("beam", (1100, 1200), (-900, 900), 1600))
    assert (found.clear_mm, found.under) == (1600, "beam")


def test_a_locker_beside_the_way_does_not() -> None:
    assert headroom(hanging("locker", (1000, 3000), (-900, -560), 1400)).clear_mm == CEILING_MM


def test_two_lockers_that_leave_too_narrow_a_gap_end_it() -> None:
    left = hanging("left locker", (1000, 1450), (-900, -220), 1400)
    right = hanging("right locker", (1000, 1450), (220, 900), 1500)
    assert headroom(left, right).clear_mm == 1500
    assert headroom(left, right).under == "right locker"
    assert headroom(left, right, width_mm=430.0).clear_mm == CEILING_MM


def test_what_closes_the_floor_leaves_nothing() -> None:
    assert headroom(hanging("bulkhead", (1100, 1120), (-900, 900), 0)).clear_mm == 0


def test_a_door_that_is_too_narrow_leaves_nothing() -> None:
    found = headroom(width_mm=1100.0)
    assert (found.clear_mm, found.under) == (0, "sliding door")


def test_a_wall_that_leans_in_ends_it() -> None:
    """The gap left of the galley closes where 900 - h / 10 + 350 = 450... + 770 mm."""
    post = hanging("post", (1100, 1200), (-350, 900), 0)
    found = headroom(post, walls=leaning_walls, width_mm=450.0)
    assert found.clear_mm == pytest.approx(1000)
    assert found.under == "post"


def test_the_rear_wall_closes_a_gap() -> None:
    box = hanging("box", (3000, 3700), (-900, 900), 500)
    assert headroom(box).clear_mm == CEILING_MM


positions = st.integers(10, 39).map(lambda n: 100.0 * n)
widths = st.integers(-9, 8).map(lambda n: 100.0 * n)


@st.composite
def things(draw: st.DrawFn) -> Hanging:
    x, y = draw(positions), draw(widths)
    return hanging(
        f"thing at {x} {y}",
        (x, x + draw(st.integers(1, 8)) * 100.0),
        (y, min(900.0, y + draw(st.integers(1, 12)) * 100.0)),
        draw(st.integers(0, 18)) * 100.0,
    )


def open_at(hangings: list[Hanging], height_mm: float, width_mm: float) -> bool:
    """Ask the other way: is the way wide enough for everything that reaches below a height?"""
    obstacles = [
        Patch(name=h.name, low_mm=(h.x_from_mm, h.y_from_mm), high_mm=(h.x_to_mm, h.y_to_mm))
        for h in hangings
        if h.from_mm < height_mm
    ]
    before = Patch(name="right", low_mm=(CAB_MM, HALF_MM), high_mm=(DOOR_MM[0], HALF_MM))
    behind = Patch(name="right", low_mm=(DOOR_MM[1], HALF_MM), high_mm=(REAR_MM, HALF_MM))
    rear = Patch(name="rear", low_mm=(REAR_MM, -HALF_MM), high_mm=(REAR_MM, HALF_MM))
    left = Patch(name="left", low_mm=(CAB_MM, -HALF_MM), high_mm=(REAR_MM, -HALF_MM))
    found = narrowest_passage(side=[before], other_side=[behind, rear, left], obstacles=obstacles)
    return found.width_mm >= width_mm


@given(st.lists(things(), max_size=7), st.sampled_from([310.0, 450.0, 640.0]))
def test_headroom_is_the_height_up_to_which_the_way_is_wide_enough(
    hangings: list[Hanging], width_mm: float
) -> None:
    clear_mm = headroom(*hangings, width_mm=width_mm).clear_mm
    assert open_at(hangings, clear_mm, width_mm)
    if clear_mm < CEILING_MM:
        assert not open_at(hangings, clear_mm + 1, width_mm)


@given(st.lists(things(), min_size=1, max_size=7))
def test_leaving_something_out_never_lowers_it(hangings: list[Hanging]) -> None:
    assert headroom(*hangings[1:]).clear_mm >= headroom(*hangings).clear_mm


@given(st.lists(things(), max_size=7), st.floats(100, 900), st.floats(0, 300))
def test_a_broader_person_never_gains(
    hangings: list[Hanging], width_mm: float, more_mm: float
) -> None:
    broad = headroom(*hangings, width_mm=width_mm + more_mm).clear_mm
    assert broad <= headroom(*hangings, width_mm=width_mm).clear_mm
