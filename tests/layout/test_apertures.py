"""Boxes through doors; checked by turning rectangles and by cutting boxes at random."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.layout.apertures import (
    Doorway,
    passes_at_all,
    passes_straight,
    rectangle_fits,
    section_spare_mm,
)

REAR = Doorway(name="rear doors", width_mm=1560, height_mm=1790, depth_mm=3000)
SIDE = Doorway(name="sliding door", width_mm=1250, height_mm=1750, depth_mm=1800)

sides = st.floats(min_value=50, max_value=3000)


def fits_when_turned(p: float, q: float, a: float, b: float) -> bool:
    """Turn the rectangle by every angle in turn: slow, and by another way of thought."""
    for step in range(4001):
        angle = math.pi / 2 * step / 4000
        width = p * math.cos(angle) + q * math.sin(angle)
        height = p * math.sin(angle) + q * math.cos(angle)
        if width <= a and height <= b:
            return True
    return False


@given(p=sides, q=sides, a=sides, b=sides)
def test_a_rectangle_that_fits_at_some_angle_fits(p: float, q: float, a: float, b: float) -> None:
    fits = rectangle_fits(long_mm=p, short_mm=q, width_mm=a, height_mm=b)
    if fits_when_turned(p, q, a, b):
        assert rectangle_fits(long_mm=p - 1e-6, short_mm=q - 1e-6, width_mm=a, height_mm=b)
    if fits:
        assert fits_when_turned(p - 2, q - 2, a, b)


def test_a_diagonal_is_the_longest_thin_strip() -> None:
    diagonal_mm = math.hypot(1560, 1790)
    assert rectangle_fits(long_mm=diagonal_mm - 1, short_mm=0.1, width_mm=1560, height_mm=1790)
    assert not rectangle_fits(long_mm=diagonal_mm + 1, short_mm=0.1, width_mm=1560, height_mm=1790)


@settings(max_examples=2000)
@given(
    p=sides,
    q=sides,
    u=st.floats(-4, 4),
    v=st.floats(-4, 4),
    angle=st.floats(0, math.pi),
)
def test_no_cut_through_the_middle_of_a_box_is_smaller_than_its_smallest_section(
    p: float, q: float, u: float, v: float, angle: float
) -> None:
    """A plane x = u·y + v·z cuts a long box in a parallelogram; lay any rectangle round it."""
    length = p * math.hypot(1, u)
    along = p * u * q * v / length
    across = math.sqrt(max(0.0, (q * math.hypot(1, v)) ** 2 - along**2))
    cos, sin = math.cos(angle), math.sin(angle)
    width = abs(length * cos) + abs(along * cos + across * sin)
    height = abs(length * sin) + abs(-along * sin + across * cos)
    assert rectangle_fits(long_mm=p, short_mm=q, width_mm=width + 1e-6, height_mm=height + 1e-6)


@given(p=sides, q=sides, less=st.floats(min_value=0, max_value=500))
def test_a_smaller_section_never_becomes_too_large(p: float, q: float, less: float) -> None:
    large = section_spare_mm(long_mm=p, short_mm=q, width_mm=1560, height_mm=1790)
    small = section_spare_mm(long_mm=max(1, p - less), short_mm=q, width_mm=1560, height_mm=1790)
    assert small >= large - 0.1


@given(p=sides, q=sides)
def test_what_is_missing_makes_it_fit(p: float, q: float) -> None:
    spare = section_spare_mm(long_mm=p, short_mm=q, width_mm=1560, height_mm=1790)
    assert rectangle_fits(
        long_mm=p + spare, short_mm=q + spare, width_mm=1560 + 1e-9, height_mm=1790 + 1e-9
    )


def test_a_section_that_passes_only_rolled_has_nothing_to_spare() -> None:
    assert section_spare_mm(long_mm=2000, short_mm=200, width_mm=1560, height_mm=1790) == 0


def test_the_better_door_is_named() -> None:
    found = passes_at_all(sizes_mm=[(1000, 1000, 1000)], doors=[SIDE, REAR])
    assert (found.door, found.spare_mm) == ("rear doors", 560)


def test_each_box_of_a_stepped_part_must_pass() -> None:
    found = passes_at_all(sizes_mm=[(500, 500, 500), (2400, 1800, 1600)], doors=[REAR])
    assert found.spare_mm == pytest.approx(-40, abs=0.1)


def test_a_long_part_does_not_go_straight_through_a_side_door() -> None:
    found = passes_straight(size_mm=(2000, 600, 600), doors=[SIDE, REAR])
    assert (found.door, found.spare_mm) == ("rear doors", 960)
    assert passes_straight(size_mm=(2000, 600, 600), doors=[SIDE]).spare_mm == -200


@given(a=sides, b=sides, c=sides)
def test_what_passes_straight_passes(a: float, b: float, c: float) -> None:
    straight = passes_straight(size_mm=(a, b, c), doors=[SIDE, REAR])
    at_all = passes_at_all(sizes_mm=[(a, b, c)], doors=[SIDE, REAR])
    assert straight.spare_mm <= at_all.spare_mm or straight.spare_mm < 0


def test_without_a_door_nothing_is_said() -> None:
    with pytest.raises(OutOfRange, match="at least one door"):
        passes_at_all(sizes_mm=[(1, 1, 1)], doors=[])
    with pytest.raises(OutOfRange, match="at least one door"):
        passes_straight(size_mm=(1, 1, 1), doors=[])
