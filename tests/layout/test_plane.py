"""Rectangles against an independent geometry library (shapely) and by hand."""

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from coachwright.layout.plane import (
    ABOVE,
    BEHIND,
    BESIDE,
    Rectangle,
    common,
    covered_frac,
    gap_mm,
    largest_square_mm,
    overhang,
    seen,
    shift_mm,
)
from coachwright.layout.solids import Box


def rectangle(x0: float, y0: float, x1: float, y1: float) -> Rectangle:
    return Rectangle(low_mm=(x0, y0), high_mm=(x1, y1))


def polygon(of: Rectangle, grown: float = 0.0) -> shapely.Polygon:
    low, high = of.low_mm, of.high_mm
    return shapely.box(low[0] - grown, low[1] - grown, high[0] + grown, high[1] + grown)


@st.composite
def rectangles(draw: st.DrawFn, most: int = 60) -> Rectangle:
    x0, y0 = draw(st.integers(-most, most)), draw(st.integers(-most, most))
    return rectangle(x0, y0, x0 + draw(st.integers(1, most)), y0 + draw(st.integers(1, most)))


def moved(of: Rectangle, x: float, y: float) -> Rectangle:
    (x0, y0), (x1, y1) = of.low_mm, of.high_mm
    return rectangle(x0 + x, y0 + y, x1 + x, y1 + y)


def shared_area(one: Rectangle, other: Rectangle) -> float:
    return float(polygon(one).intersection(polygon(other)).area)


@given(one=rectangles(), other=rectangles())
def test_a_gap_is_the_distance_of_the_library(one: Rectangle, other: Rectangle) -> None:
    assert gap_mm(one, other) == pytest.approx(shapely.distance(polygon(one), polygon(other)))
    assert gap_mm(one, other) == gap_mm(other, one)


@given(one=rectangles(), other=rectangles())
def test_what_is_common_is_the_intersection_of_the_library(
    one: Rectangle, other: Rectangle
) -> None:
    shared = common(one, other)
    area = shared_area(one, other)
    assert (shared is None) == (area == 0)
    if shared is not None:
        assert polygon(shared).area == pytest.approx(area)


@given(one=rectangles(), other=rectangles())
def test_a_shift_frees_and_a_smaller_one_does_not(one: Rectangle, other: Rectangle) -> None:
    shift = shift_mm(one, other)
    assert (shift == 0) == (shared_area(one, other) == 0)
    ways = ((shift, 0.0), (-shift, 0.0), (0.0, shift), (0.0, -shift))
    assert min(shared_area(moved(one, *way), other) for way in ways) == 0
    for x, y in ways:
        if shift:
            assert shared_area(moved(one, x * 0.99, y * 0.99), other) > 0


@given(target=rectangles(), covers=st.lists(rectangles(), max_size=6))
def test_a_covered_share_is_the_union_of_the_library(
    target: Rectangle, covers: list[Rectangle]
) -> None:
    union = shapely.union_all([polygon(cover) for cover in covers])
    expected = polygon(target).intersection(union).area / polygon(target).area
    assert covered_frac(target, covers) == pytest.approx(expected, abs=1e-12)


@given(obstacles=st.lists(rectangles(12), max_size=5))
def test_no_larger_square_fits_at_any_whole_place(obstacles: list[Rectangle]) -> None:
    """All corners are whole numbers, so a largest square has a whole corner and side."""
    outline = rectangle(0, 0, 14, 9)
    taken = shapely.union_all([polygon(each) for each in obstacles])

    def fits(x: int, y: int, side: int) -> bool:
        square = shapely.box(x, y, x + side, y + side)
        return bool(square.within(polygon(outline)) and square.intersection(taken).area == 0)

    best = max(
        side
        for x in range(14)
        for y in range(9)
        for side in range(10)
        if side == 0 or fits(x, y, side)
    )
    assert largest_square_mm(outline, obstacles) == best


def test_a_full_outline_has_no_square() -> None:
    outline = rectangle(0, 0, 10, 10)
    assert largest_square_mm(outline, [rectangle(-1, -1, 11, 11)]) == 0


def test_an_overhang_is_told_for_each_side() -> None:
    found = overhang(rectangle(-10, 5, 90, 130), rectangle(0, 0, 100, 100))
    assert (found.first_low_mm, found.first_high_mm) == (10, -10)
    assert (found.second_low_mm, found.second_high_mm) == (-5, 30)


@pytest.mark.parametrize(
    ("axes", "low", "high"),
    [(ABOVE, (1, 2), (4, 6)), (BEHIND, (2, 3), (6, 8)), (BESIDE, (1, 3), (4, 8))],
)
def test_a_box_is_seen_along_the_third_axis(
    axes: tuple[int, int], low: tuple[float, float], high: tuple[float, float]
) -> None:
    view = seen(Box(low_mm=(1, 2, 3), high_mm=(4, 6, 8)), axes)
    assert (view.low_mm, view.high_mm) == (low, high)
