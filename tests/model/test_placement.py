"""Where a fitting stands: by hand, and what must hold for any turn.

The box is 900 long (x), 500 wide (y), 800 high; its centre of mass 100 from the front, 50 from the
left, 300 up.  x runs rearwards and y to the right, so seen from above a quarter turn anticlockwise
takes what points forward to the left, what points left to the rear.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.model.build import TURNS_DEG, Fitted, Fitting
from coachwright.model.facets import Body
from coachwright.model.part import Part
from coachwright.model.placement import (
    Point,
    placed,
    point_of,
    turned_point_mm,
    turned_size_mm,
)

SIZE = (900.0, 500.0, 800.0)
CENTRE = (100.0, 50.0, 300.0)


def _fitted(
    turn_deg: float = 0.0, *, mirror: bool = False, centre_mm: Point | None = CENTRE
) -> Fitted:
    at_mm = (2000.0, -300.0, 10.0)
    fitting = Fitting(name="box", part="box", at_mm=at_mm, turn_deg=turn_deg, mirror=mirror)
    body = Body(size_mm=SIZE, mass_kg=10.0, centre_mm=centre_mm)
    return Fitted(fitting=fitting, part=Part(id="box", name="Box", body=body), at_mm=at_mm)


BY_HAND = (
    # Distances of the centre from the corner at (2000, -300, 10), worked out on paper.
    (0.0, False, (100.0, 50.0), (900.0, 500.0)),
    (90.0, False, (450.0, 100.0), (500.0, 900.0)),
    (180.0, False, (800.0, 450.0), (900.0, 500.0)),
    (270.0, False, (50.0, 800.0), (500.0, 900.0)),
    (0.0, True, (100.0, 450.0), (900.0, 500.0)),
    (90.0, True, (50.0, 100.0), (500.0, 900.0)),
    (180.0, True, (800.0, 50.0), (900.0, 500.0)),
    (270.0, True, (450.0, 800.0), (500.0, 900.0)),
)


@pytest.mark.parametrize(("turn_deg", "mirror", "centre", "plan"), BY_HAND)
def test_a_box_stands_where_pencil_and_paper_say(
    turn_deg: float, mirror: bool, centre: tuple[float, float], plan: tuple[float, float]
) -> None:
    found = placed(_fitted(turn_deg, mirror=mirror))
    assert found.low_mm == (2000.0, -300.0, 10.0)
    assert found.high_mm == (2000.0 + plan[0], -300.0 + plan[1], 810.0)
    assert found.centre_mm == (2000.0 + centre[0], -300.0 + centre[1], 310.0)


def test_the_centre_is_the_middle_where_none_is_given() -> None:
    assert placed(_fitted(centre_mm=None)).centre_mm == (2450.0, -50.0, 410.0)


def test_the_mass_is_the_measured_one_where_there_is_one() -> None:
    fitted = _fitted()
    weighed = fitted.fitting.model_copy(update={"measured_mass_kg": 11.5})
    assert fitted.mass_kg == 10.0
    assert fitted.model_copy(update={"fitting": weighed}).mass_kg == 11.5


SIDES = st.floats(0, 3000)
TURNS = st.sampled_from(TURNS_DEG)


@given(st.tuples(SIDES, SIDES, SIDES), st.tuples(*[st.floats(0, 1)] * 3), TURNS, st.booleans())
def test_the_turned_box_holds_what_the_box_held(
    size_mm: Point, share: Point, turn_deg: float, mirror: bool
) -> None:
    point = (size_mm[0] * share[0], size_mm[1] * share[1], size_mm[2] * share[2])
    turned = turned_point_mm(point, size_mm, turn_deg, mirror=mirror)
    for distance, side in zip(turned, turned_size_mm(size_mm, turn_deg), strict=True):
        assert -1e-9 <= distance <= side + 1e-9


@given(st.tuples(SIDES, SIDES, SIDES), st.tuples(*[st.floats(0, 1)] * 3))
def test_four_quarter_turns_change_nothing(size_mm: Point, share: Point) -> None:
    start = (size_mm[0] * share[0], size_mm[1] * share[1], size_mm[2] * share[2])
    point, size = start, size_mm
    for _ in range(4):
        point = turned_point_mm(point, size, 90.0, mirror=False)
        size = turned_size_mm(size, 90.0)
    assert size == size_mm
    assert point == pytest.approx(start, abs=1e-6)


@given(st.tuples(*[st.floats(0, 1)] * 3), TURNS)
def test_a_turn_is_so_many_quarter_turns(share: Point, turn_deg: float) -> None:
    point, size = (900.0 * share[0], 500.0 * share[1], 800.0 * share[2]), SIZE
    at_once = turned_point_mm(point, size, turn_deg, mirror=False)
    for _ in range(round(turn_deg / 90.0)):
        point = turned_point_mm(point, size, 90.0, mirror=False)
        size = turned_size_mm(size, 90.0)
    assert point == pytest.approx(at_once, abs=1e-9)


@given(st.tuples(*[st.floats(0, 1)] * 3))
def test_a_mirror_image_of_a_mirror_image_is_the_thing_itself(share: Point) -> None:
    point = (900.0 * share[0], 500.0 * share[1], 800.0 * share[2])
    once = turned_point_mm(point, SIZE, 0.0, mirror=True)
    assert turned_point_mm(once, SIZE, 0.0, mirror=True) == pytest.approx(point, abs=1e-9)


def test_any_point_of_a_fitting_can_be_asked_for() -> None:
    assert point_of(_fitted(180.0), (0.0, 0.0, 0.0)) == (2900.0, 200.0, 10.0)
