"""Isometric boxes: the order of painting and what hides an edge, by sampled lines of sight."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.drawing.solid_order import Block, Eye, behind, block, hidden, overlap, painted
from coachwright.drawing.things import Corner

EYES = (Eye(turn_factor=1.0), Eye(turn_factor=-1.0))
CELLS = st.sets(
    st.tuples(st.integers(0, 3), st.integers(0, 3), st.integers(0, 3)), min_size=2, max_size=8
)


def _cell(cell: tuple[int, int, int], eye: Eye) -> Block:
    low = (cell[0] * 100.0, cell[1] * 100.0, cell[2] * 100.0)
    return block(f"{cell}", low, (low[0] + 90.0, low[1] + 90.0, low[2] + 90.0), eye)


def _towards(eye: Eye) -> Corner:
    """Return the direction from the thing to the eye."""
    return (-eye.turn_factor, -eye.turn_factor, 1.0)


@given(CELLS, st.sampled_from(EYES))
def test_what_a_line_of_sight_meets_first_is_painted_last(
    cells: set[tuple[int, int, int]], eye: Eye
) -> None:
    blocks = [_cell(cell, eye) for cell in sorted(cells)]
    order = [body.name for body in painted(blocks, eye)]
    toward = _towards(eye)
    for one, other in itertools.permutations(blocks, 2):
        middle = [(a + b) / 2 for a, b in zip(one.low_mm, one.high_mm, strict=True)]
        for step in range(1, 40):
            spot = [m + 12.5 * step * t for m, t in zip(middle, toward, strict=True)]
            if all(
                low < s < high
                for low, s, high in zip(other.low_mm, spot, other.high_mm, strict=True)
            ):
                assert overlap(one, other)
                assert behind(one, other, eye)
                assert order.index(one.name) < order.index(other.name)
                break


@pytest.mark.parametrize("eye", EYES)
def test_points_on_one_line_of_sight_fall_on_one_point(eye: Eye) -> None:
    toward = _towards(eye)
    start = (120.0, -40.0, 300.0)
    end = tuple(s + 77.0 * t for s, t in zip(start, toward, strict=True))
    assert eye.flat((end[0], end[1], end[2])) == pytest.approx(eye.flat(start))
    assert eye.sights((end[0], end[1], end[2])) == pytest.approx(eye.sights(start))


def test_an_edge_is_hidden_where_a_nearer_box_covers_it() -> None:
    eye = EYES[0]
    far = ((500.0, 0.0, 0.0), (500.0, 1000.0, 0.0))
    # straight before the edge's middle part, towards the eye
    near = block("near", (100.0, 0.0, 0.0), (200.0, 100.0, 1000.0), eye)
    gone = hidden(*far, near, eye)
    assert gone is not None
    assert 0.0 <= gone[0] < gone[1] <= 1.0
    aside = block("aside", (-5000.0, 0.0, 0.0), (-4900.0, 100.0, 100.0), eye)
    assert hidden(*far, aside, eye) is None


def test_length_across_is_that_of_a_true_isometric() -> None:
    """ISO 5456-3: the three axes are foreshortened alike, to the root of two thirds."""
    eye = EYES[0]
    origin = eye.flat((0.0, 0.0, 0.0))
    lengths = []
    for axis in ((1000.0, 0.0, 0.0), (0.0, 1000.0, 0.0), (0.0, 0.0, 1000.0)):
        end = eye.flat(axis)
        lengths.append(((end[0] - origin[0]) ** 2 + (end[1] - origin[1]) ** 2) ** 0.5)
    assert lengths == pytest.approx([1000.0 * (2 / 3) ** 0.5] * 3)
