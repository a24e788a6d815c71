"""Walking on a grid, against filling point by point and against the exact width of a way."""

from hypothesis import given
from hypothesis import strategies as st

from coachwright.layout.passage import Patch, distance_mm, narrowest_passage
from coachwright.layout.walking import (
    Floor,
    Rows,
    around,
    free_floor,
    meets,
    points_in,
    reached_from,
    union,
    walls_between,
)

LOW, HIGH = (0.0, -900.0), (3000.0, 900.0)


def patch(x: tuple[float, float], y: tuple[float, float], name: str = "box") -> Patch:
    return Patch(name=name, low_mm=(x[0], y[0]), high_mm=(x[1], y[1]))


FRONT, REAR = patch((0, 0), (-900, 900)), patch((3000, 3000), (-900, 900))
SIDES = (patch((0, 3000), (-900, -900), "left"), patch((0, 3000), (900, 900), "right"))


def floor(*patches: Patch, width_mm: float = 450.0) -> Floor:
    return free_floor(low_mm=LOW, high_mm=HIGH, patches=patches, width_mm=width_mm, step_mm=50.0)


def walks_through(*boxes: Patch, width_mm: float = 450.0) -> bool:
    found = floor(*SIDES, *boxes, width_mm=width_mm)
    start = points_in(found, around(FRONT, 50.0))
    return meets(reached_from(found, start), points_in(found, around(REAR, 50.0)))


def test_an_empty_floor_is_walked_through() -> None:
    assert walks_through()


def test_a_gap_that_is_too_narrow_is_not() -> None:
    galley, bench = patch((1000, 2000), (-900, -230)), patch((1000, 2000), (230, 900))
    assert walks_through(galley, bench, width_mm=330.0)
    assert not walks_through(galley, bench, width_mm=600.0)


def test_a_way_round_two_corners_is_found() -> None:
    first, second = patch((800, 900), (-900, 300)), patch((1800, 1900), (-300, 900))
    assert walks_through(first, second)


def test_nothing_is_reached_from_nowhere() -> None:
    found = floor()
    nothing: Rows = (0,) * len(found.free)
    assert reached_from(found, nothing) == nothing
    assert not meets(points_in(found, patch((5000, 6000), (0, 100))), found.free)
    assert union([nothing, found.free]) == found.free


def filled(found: Floor, start: Rows) -> Rows:
    """Fill point by point, as one would by hand."""
    queue = [(x, y) for y, row in enumerate(start) for x in range(found.columns) if row >> x & 1]
    seen = set(queue)
    while queue:
        x, y = queue.pop()
        for place in ((x + 1, y), (x - 1, y), (x, y + 1), (x, y - 1)):
            inside = 0 <= place[0] < found.columns and 0 <= place[1] < len(found.free)
            if inside and place not in seen and found.free[place[1]] >> place[0] & 1:
                seen.add(place)
                queue.append(place)
    return tuple(
        sum(1 << x for x in range(found.columns) if (x, y) in seen) for y in range(len(found.free))
    )


@st.composite
def boxes(draw: st.DrawFn) -> Patch:
    x, y = draw(st.integers(0, 28)) * 100.0, draw(st.integers(-9, 8)) * 100.0
    across = draw(st.integers(1, 12)) * 100.0
    return patch((x, x + draw(st.integers(1, 10)) * 100.0), (y, y + across))


some_boxes = st.lists(boxes(), max_size=6)
some_widths = st.sampled_from([330.0, 450.0, 600.0])


@given(some_boxes, some_widths)
def test_filling_by_rows_is_filling_by_points(found: list[Patch], width_mm: float) -> None:
    here = floor(*SIDES, *found, width_mm=width_mm)
    start = points_in(here, around(FRONT, 50.0))
    assert reached_from(here, start) == filled(here, start)


@given(some_boxes, some_widths)
def test_a_point_is_free_where_nothing_is_near(found: list[Patch], width_mm: float) -> None:
    here = floor(*found, width_mm=width_mm)
    for number in range(0, len(here.free), 5):
        for column in range(0, here.columns, 7):
            x, y = here.x_from_mm + column * 50.0, here.y_from_mm + number * 50.0
            point = patch((x, x), (y, y))
            near = min((distance_mm(point, each) for each in found), default=1e9)
            free = bool(here.free[number] >> column & 1)
            assert free == (near >= width_mm / 2) or abs(near - width_mm / 2) < 1e-6


@given(some_boxes, some_widths)
def test_what_is_walked_agrees_with_the_width_of_the_way(
    found: list[Patch], width_mm: float
) -> None:
    left, right = SIDES
    exact_mm = narrowest_passage(side=[left], other_side=[right], obstacles=found).width_mm
    if walks_through(*found, width_mm=width_mm):
        assert exact_mm >= width_mm - 4
    elif not any(each.low_mm[0] < 450 or each.high_mm[0] > 2550 for each in found):
        assert exact_mm < width_mm + 71


def test_walls_leave_their_openings_out() -> None:
    door = patch((500, 1500), (900, 900), "door")
    walls = list(walls_between(low_mm=LOW, high_mm=HIGH, openings=[FRONT, door]))
    spans = sorted((*wall.low_mm, *wall.high_mm) for wall in walls)
    assert spans == [
        (0.0, -900.0, 3000.0, -900.0),
        (0.0, 900.0, 500.0, 900.0),
        (1500.0, 900.0, 3000.0, 900.0),
        (3000.0, -900.0, 3000.0, 900.0),
    ]
