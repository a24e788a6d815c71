"""Seen and hidden parts of edges, and free places, held against a general geometry library."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Polygon, box, union_all

from coachwright.drawing.hiding import Patch, covered, free_places, stretches

SIZES = st.integers(min_value=1, max_value=60)
PLACES = st.integers(min_value=-40, max_value=120)


@st.composite
def _patches(draw: st.DrawFn) -> Patch:
    left, low = draw(PLACES), draw(PLACES)
    return (left + 0.3, low + 0.3, left + draw(SIZES) + 0.6, low + draw(SIZES) + 0.6)


POINTS = st.tuples(PLACES.map(float), PLACES.map(float))


@given(POINTS, POINTS, st.lists(_patches(), max_size=6))
def test_what_is_hidden_is_what_the_covers_take(
    start: tuple[float, float], end: tuple[float, float], covers: list[Patch]
) -> None:
    line = LineString([start, end])
    if line.length < 5:
        return
    seen, hidden = stretches(
        start, end, dropped=(), hiders=[(start, end, patch) for patch in covers]
    )
    taken = union_all([box(*patch) for patch in covers]) if covers else Polygon()
    inside = line.intersection(taken).length
    # pieces shorter than half a millimetre are left out on purpose
    slack = 0.8 * (2 * len(covers) + 1)
    assert sum(b - a for a, b in hidden) * line.length == pytest.approx(inside, abs=slack)
    assert sum(b - a for a, b in seen) * line.length == pytest.approx(
        line.length - inside, abs=slack
    )


@given(_patches(), st.lists(_patches(), max_size=6))
def test_a_free_place_lies_inside_and_no_cover_touches_it(
    patch: Patch, covers: list[Patch]
) -> None:
    taken = union_all([box(*cover) for cover in covers]) if covers else Polygon()
    for place in free_places(patch, covers):
        assert box(*patch).buffer(1e-6).covers(box(*place))
        assert box(*place).intersection(taken).area == pytest.approx(0.0, abs=1e-6)


def test_a_place_that_nothing_covers_is_the_whole() -> None:
    assert free_places((0.0, 0.0, 100.0, 50.0), []) == ((0.0, 0.0, 100.0, 50.0),)


def test_a_hole_leaves_the_four_places_beside_it() -> None:
    places = free_places((0.0, 0.0, 100.0, 100.0), [(40.0, 40.0, 60.0, 60.0)])
    assert set(places) == {
        (0.0, 0.0, 40.0, 100.0),
        (60.0, 0.0, 100.0, 100.0),
        (0.0, 0.0, 100.0, 40.0),
        (0.0, 60.0, 100.0, 100.0),
    }


def test_an_edge_along_a_patch_is_not_inside_it() -> None:
    assert covered((0.0, 10.0), (10.0, 10.0), (0.0, 0.0, 10.0, 10.0)) is None


def test_a_dropped_part_is_neither_seen_nor_hidden() -> None:
    start, end = (0.0, 0.0), (10.0, 0.0)
    seen, hidden = stretches(
        start,
        end,
        dropped=[(start, end, (2.0, -1.0, 4.0, 1.0))],
        hiders=[(start, end, (6.0, -1.0, 8.0, 1.0))],
    )
    assert seen == ((0.0, 0.2), (0.4, 0.6), (0.8, 1.0))
    assert [pytest.approx(part) for part in hidden] == [(0.6, 0.8)]
