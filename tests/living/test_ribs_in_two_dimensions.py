"""The zone value of a ribbed wall against a two-dimensional solution made here.

A hat of bent sheet on the skin, insulation beside it, still air in it, a lining over it; half a
spacing, adiabatic sides, films outside and inside: the boundary conditions of ISO 10211.  Finite
volumes with harmonic means, solved at once; halving the cells moves the result by less than 1 %.
"""

from itertools import pairwise
from typing import NamedTuple

import numpy as np
import pytest
from numpy.typing import NDArray

from coachwright.living.ribs import bridged

STEEL, AIR_IN_RIB = 50.0, 0.04 / 0.18
"""W/(m K): EN 12524; still air of 40 mm, 0.18 m2 K/W, as a conductivity (ISO 6946, memory)."""
OUTER, INNER = 0.04, 0.13

Grid = NDArray[np.float64]


class Wall(NamedTuple):
    """Insulation and lining [mm and W/(m K)], and the rib's face and spacing [mm]."""

    fill_mm: float
    fill: float
    cover_mm: float
    cover: float
    rib_mm: float
    spacing_mm: float


def _edges(*parts: tuple[float, int]) -> Grid:
    """Return cell edges: each part [mm] cut into a number of cells."""
    edges = [0.0]
    for length, cells in parts:
        edges += [edges[-1] + length * (cell + 1) / cells for cell in range(cells)]
    return np.array(edges) / 1000.0


def two_dimensional_w_per_m2k(wall: Wall) -> float:
    """Return the mean U of half a spacing with half a hollow rib of 0.9 mm sheet."""
    sheet = 0.9
    half = wall.rib_mm / 2.0
    far = wall.spacing_mm / 2.0 - half
    near = min(60.0, far / 2.0)
    x = _edges((half - sheet, 8), (sheet, 1), (near, 20), (far - near, 10))
    y = _edges((sheet, 1), (wall.fill_mm - sheet, 16), (sheet, 1), (wall.cover_mm, 4))
    wide, high = np.diff(x), np.diff(y)
    conducts = np.full((len(wide), len(high)), wall.fill)
    conducts[:8, 1:17] = AIR_IN_RIB
    conducts[:9, 17] = STEEL
    conducts[8, 1:17] = STEEL
    conducts[:, 0] = STEEL
    conducts[:, 18:] = wall.cover
    count = conducts.size
    number = np.arange(count).reshape(conducts.shape)
    matrix, right = np.zeros((count, count)), np.zeros(count)

    def link(one: int, other: int, through: float) -> None:
        matrix[one, one] += through
        matrix[other, other] += through
        matrix[one, other] -= through
        matrix[other, one] -= through

    for row in range(len(wide)):
        for low, up in pairwise(range(len(high))):
            way = high[low] / 2 / conducts[row, low] + high[up] / 2 / conducts[row, up]
            link(number[row, low], number[row, up], wide[row] / way)
    for left, after in pairwise(range(len(wide))):
        for row in range(len(high)):
            way = wide[left] / 2 / conducts[left, row] + wide[after] / 2 / conducts[after, row]
            link(number[left, row], number[after, row], high[row] / way)
    inside = wide / (INNER + high[-1] / 2 / conducts[:, -1])
    outside = wide / (OUTER + high[0] / 2 / conducts[:, 0])
    for column in range(len(wide)):
        matrix[number[column, -1], number[column, -1]] += inside[column]
        matrix[number[column, 0], number[column, 0]] += outside[column]
        right[number[column, -1]] += inside[column]
    warmth = np.linalg.solve(matrix, right).reshape(conducts.shape)
    return float((inside * (1.0 - warmth[:, -1])).sum() / x[-1])


CASES = [
    pytest.param(Wall(40.0, 0.019, 4.0, 0.13, 40.0, 400.0), id="40 mm polyiso, 4 mm ply, 10 %"),
    pytest.param(Wall(40.0, 0.019, 9.0, 0.17, 40.0, 400.0), id="40 mm polyiso, 9 mm ply, 10 %"),
    pytest.param(Wall(25.0, 0.0235, 3.0, 0.13, 40.0, 500.0), id="25 mm, 3 mm ply, 8 %"),
    pytest.param(Wall(25.0, 0.0235, 3.0, 0.13, 25.0, 312.5), id="25 mm, narrow ribs, 8 %"),
    pytest.param(Wall(40.0, 0.036, 4.0, 0.13, 60.0, 400.0), id="40 mm wool, wide ribs, 15 %"),
    pytest.param(Wall(40.0, 0.019, 4.0, 0.13, 60.0, 600.0), id="40 mm polyiso, wide ribs, 10 %"),
]


@pytest.mark.parametrize("wall", CASES)
def test_zones_come_close_to_two_dimensions(wall: Wall) -> None:
    """Within 7 %, and the bounds hold: what nobody knows of a rib is more than that."""
    flat = two_dimensional_w_per_m2k(wall)
    zones = bridged(
        outside_m2k_per_w=OUTER + 0.0009 / STEEL,
        fill_mm=wall.fill_mm,
        fill_w_per_m_k=wall.fill,
        inside_m2k_per_w=INNER + wall.cover_mm / 1000.0 / wall.cover,
        cover_mm=wall.cover_mm,
        rib_frac=wall.rib_mm / wall.spacing_mm,
        rib_mm=wall.rib_mm,
        sheet_mm=0.9,
        metal_w_per_m_k=STEEL,
    )
    assert zones.low_w_per_m2k < flat < zones.high_w_per_m2k
    assert zones.mean_w_per_m2k == pytest.approx(flat, rel=0.07)


def test_without_a_rib_two_dimensions_are_one() -> None:
    """A wall of one material throughout: 1 / (0.04 + 0.0009/50 + d/k + 0.13)."""
    flat = two_dimensional_w_per_m2k(Wall(40.0, STEEL, 4.0, 0.13, 40.0, 400.0))
    short = 1.0 / (OUTER + 0.0009 / STEEL + 0.040 / STEEL + 0.004 / 0.13 + INNER)
    assert flat == pytest.approx(short, rel=0.03)  # still air stays in the rib
