"""The free floor against shapely's difference of areas."""

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from coachwright.layout.free_floor import free_area_m2, union_mm
from coachwright.layout.passage import Patch
from coachwright.layout.stage import stage
from tests.layout.shapes import polygon
from tests.layout.test_passage import patches
from tests.support.builds import build
from tests.support.vans import holding, thing

FLOOR = Patch(name="floor", low_mm=(0, 0), high_mm=(3000, 1800))


@given(st.lists(patches(), max_size=8))
def test_the_free_area_is_that_of_shapely(obstacles: list[Patch]) -> None:
    free = polygon(FLOOR).difference(shapely.union_all([polygon(each) for each in obstacles]))
    assert free_area_m2(floor=FLOOR, obstacles=obstacles) == pytest.approx(free.area / 1e6)


@given(st.lists(st.tuples(st.integers(0, 50), st.integers(0, 50)), max_size=6))
def test_a_union_of_stretches_is_the_count_of_what_they_cover(made: list[tuple[int, int]]) -> None:
    stretches = [(float(min(pair)), float(max(pair))) for pair in made]
    covered = {unit for low, high in stretches for unit in range(int(low), int(high))}
    assert union_mm(stretches) == len(covered)


def test_the_floor_of_a_van() -> None:
    # 3600 mm from cab line to rear, 2 · 900.4 mm wide at 20 mm; arches 800 by 200.4 mm each
    found = stage(build(holding(thing("box", (500, 400, 300), (2000, 0, 0)), arches=True)))
    whole = 3.6 * 1.8008
    expected = whole - 2 * 0.8 * 0.2004 - 0.5 * 0.4
    assert found.free_floor.free_m2 == pytest.approx(expected)
    assert found.free_floor.length_mm * found.free_floor.width_mm / 1e6 == pytest.approx(whole)


def test_what_is_stepped_over_and_what_hangs_above_takes_no_floor() -> None:
    mat = thing("mat", (500, 400, 20), (2000, 0, 0))
    shelf = thing("shelf", (500, 200, 200), (2000, -880, 900), mounting="wall")
    empty, with_both = (stage(build(holding(*things))) for things in ((), (mat, shelf)))
    assert with_both.free_floor == empty.free_floor
