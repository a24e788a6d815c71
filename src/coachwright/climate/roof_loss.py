"""What every place on a roof loses to what stands there, at once: a field over the roof."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.shading import ALTITUDES, BEARINGS, STEP_DEG, Obstacle

TILE_MM = 25.0
"""Side of the squares that the roof is cut into."""
_LEAST_MM = 1e-6

Field = NDArray[np.float64]


@dataclass(frozen=True, kw_only=True, slots=True)
class Patch:
    """A roof seen from above, in the vehicle's axes."""

    low_mm: tuple[float, float]
    high_mm: tuple[float, float]

    @property
    def tiles(self) -> tuple[int, int]:
        """How many squares along and across, the last ones reaching over."""
        along, across = (
            max(1, int(np.ceil((high - low) / TILE_MM)))
            for low, high in zip(self.low_mm, self.high_mm, strict=True)
        )
        return along, across


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Reach:
    """How far it is from the middle of each square to an obstacle, for each bearing of a mask.

    Attributes
    ----------
    top_mm
        The obstacle's upper edge. [mm]
    far_mm
        Along the roof; without end where the bearing passes the obstacle by. [mm]
    """

    top_mm: float
    far_mm: NDArray[np.float32]


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Loss:
    """What a flat panel loses on each place of a roof, in hours of its rated power.

    Attributes
    ----------
    summed
        Over all squares before each corner along and across.
    """

    patch: Patch
    summed: Field

    def mean_h(self, low_mm: tuple[float, float], high_mm: tuple[float, float]) -> float:
        """Return the mean over a rectangle; what lies beside the roof counts as its edge."""
        rows, columns = (
            [self._place_ratio(corner[axis], axis) for corner in (low_mm, high_mm)]
            for axis in (0, 1)
        )
        area = (rows[1] - rows[0]) * (columns[1] - columns[0])
        if area <= 0.0:
            return 0.0
        whole = (
            self._before_h(rows[1], columns[1])
            - self._before_h(rows[0], columns[1])
            - self._before_h(rows[1], columns[0])
            + self._before_h(rows[0], columns[0])
        )
        return whole / area

    def _place_ratio(self, at_mm: float, axis: int) -> float:
        """Return a place in squares from the roof's lower edge."""
        along_ratio = (at_mm - self.patch.low_mm[axis]) / TILE_MM
        return min(max(along_ratio, 0.0), float(self.patch.tiles[axis]))

    def _before_h(self, row_ratio: float, column_ratio: float) -> float:
        """Return the sum over all squares, and parts of squares, before a place."""
        row = min(int(row_ratio), self.summed.shape[0] - 2)
        column = min(int(column_ratio), self.summed.shape[1] - 2)
        below, beside = row_ratio - row, column_ratio - column
        over, under = self.summed[row], self.summed[row + 1]
        first = (1.0 - beside) * over[column] + beside * over[column + 1]
        second = (1.0 - beside) * under[column] + beside * under[column + 1]
        return float((1.0 - below) * first + below * second)


def reaches(*, patch: Patch, obstacles: Sequence[Obstacle]) -> dict[str, Reach]:
    """Return how far each obstacle is from each square of a roof.

    Parameters
    ----------
    patch
        The roof.
    obstacles
        On it, by different names.

    Notes
    -----
    The nearest point of the obstacle's outline along each bearing (slabs in the plane).  It is
    taken as closed from its top down to the panels.

    References
    ----------
    [kay-kajiya-1986]
    """
    bearing = np.radians((np.arange(BEARINGS) + 0.5) * STEP_DEG)
    toward = np.stack([-np.cos(bearing), np.sin(bearing)])
    points = [
        np.asarray(low + (np.arange(tiles) + 0.5) * TILE_MM, dtype=np.float64)
        for low, tiles in zip(patch.low_mm, patch.tiles, strict=True)
    ]
    return {
        each.name: Reach(top_mm=each.high_mm[2], far_mm=_far_mm(each, points, toward))
        for each in obstacles
    }


def _far_mm(
    obstacle: Obstacle, points: Sequence[Field], toward: NDArray[np.float64]
) -> NDArray[np.float32]:
    """Return the distance for each square along, each across and each bearing."""
    enters, leaves = [], []
    for axis in (0, 1):
        first = (obstacle.low_mm[axis] - points[axis])[:, None] / toward[axis][None, :]
        last = (obstacle.high_mm[axis] - points[axis])[:, None] / toward[axis][None, :]
        enters.append(np.minimum(first, last).astype(np.float32))
        leaves.append(np.maximum(first, last).astype(np.float32))
    enter = np.maximum(np.maximum(enters[0][:, None, :], enters[1][None, :, :]), 0.0)
    leave = np.minimum(leaves[0][:, None, :], leaves[1][None, :, :])
    return np.where(leave > enter, enter, np.float32(np.inf))


def loss(
    *, patch: Patch, around: Mapping[str, Reach], cells_h: NDArray[np.float64], face_mm: float
) -> Loss:
    """Return what flat panels at one height lose on each place of a roof.

    Parameters
    ----------
    patch
        The roof.
    around
        What stands on it.
    cells_h
        What each bearing and altitude is worth, in hours of rated power. [h]
    face_mm
        Height of the panels' upper faces in the vehicle's axes. [mm]

    Notes
    -----
    On each bearing the sky is hidden up to tan h = (top − face) / distance, by the steepest of
    all; a cell of the sky is lost where its middle is hidden, as in a mask.  Panels of one
    height do not stand in each other's light.
    """
    steepest = np.zeros((*patch.tiles, BEARINGS), dtype=np.float32)
    for each in around.values():
        if each.top_mm > face_mm:
            rise = np.float32(each.top_mm - face_mm) / np.maximum(
                each.far_mm, np.float32(_LEAST_MM)
            )
            np.maximum(steepest, rise, out=steepest)
    middles = np.tan(np.radians((np.arange(ALTITUDES) + 0.5) * STEP_DEG)).astype(np.float32)
    hidden = np.searchsorted(middles, steepest, side="right")
    worth = np.zeros((BEARINGS, ALTITUDES + 1))
    worth[:, 1:] = np.cumsum(cells_h, axis=1)
    lost = worth[np.arange(BEARINGS), hidden].sum(axis=-1)
    summed = np.zeros((lost.shape[0] + 1, lost.shape[1] + 1))
    summed[1:, 1:] = lost.cumsum(axis=0).cumsum(axis=1)
    return Loss(patch=patch, summed=summed)
