"""Steps into the van, by hand."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.layout.steps import rises_mm, stair


def test_no_height_takes_no_step() -> None:
    assert stair(height_mm=0, most_riser_mm=200).count == 0
    assert stair(height_mm=0, most_riser_mm=200).riser_mm == 0


@given(st.floats(1, 2000), st.floats(50, 400))
def test_one_step_fewer_would_be_too_steep(height_mm: float, most_mm: float) -> None:
    found = stair(height_mm=height_mm, most_riser_mm=most_mm)
    assert found.riser_mm <= most_mm * (1 + 1e-12)
    assert math.isclose(found.count * found.riser_mm, height_mm)
    assert (found.count - 1) * most_mm < height_mm


def test_a_step_above_the_floor_is_no_help() -> None:
    assert rises_mm(height_mm=500, first_step_mm=600) == (500,)
    assert rises_mm(height_mm=500, first_step_mm=None) == (500,)
    assert rises_mm(height_mm=500, first_step_mm=200) == (200, 300)


def test_what_makes_no_stair_is_refused() -> None:
    with pytest.raises(OutOfRange, match="at least 0"):
        stair(height_mm=-1, most_riser_mm=200)
    with pytest.raises(OutOfRange, match="above 0"):
        stair(height_mm=100, most_riser_mm=0)
