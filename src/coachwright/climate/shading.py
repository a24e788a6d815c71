"""What stands on the roof around a panel, as a mask over the sky, and what it takes away.

Bearings are counted clockwise from where the vehicle heads: 0 to the front, 90 to the right.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.model import Hours

STEP_DEG = 5.0
BEARINGS, ALTITUDES = 72, 18
"""Cells of the mask: 5° by 5°."""
POINTS = 8
"""Rays start from the middles of as many fields along each side of a panel."""
SECTIONS = 3
"""Bypass diodes of a usual panel, each over a third of its cells. [shop-practice-climate]"""
EIGHT_DEG = tuple(45.0 * each for each in range(8))
"""Headings that stand for all. [deg]"""
_SHARP = 1e-9

Corner = tuple[float, float, float]


@dataclass(frozen=True, kw_only=True, slots=True)
class Obstacle:
    """A box on the roof, by its corners in the vehicle's axes."""

    name: str
    low_mm: Corner
    high_mm: Corner


@dataclass(frozen=True, kw_only=True, slots=True)
class Face:
    """The upper face of a flat panel, in the vehicle's axes."""

    low_mm: tuple[float, float]
    high_mm: tuple[float, float]
    z_mm: float


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Mask:
    """Which share of a panel each part of the sky does not reach.

    Attributes
    ----------
    shaded_frac
        For each bearing and altitude, at the middles of the cells.
    sky_frac
        Share of an even sky's light that is taken away.
    """

    shaded_frac: NDArray[np.float64]
    sky_frac: float


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Shade:
    """Share of the sun's own power that a panel loses in each hour.

    Attributes
    ----------
    area_frac
        By its shaded area: the least.
    string_frac
        Where each touched section of cells is bypassed: the most.
    """

    area_frac: Hours
    string_frac: Hours


def mask(*, face: Face, obstacles: Sequence[Obstacle]) -> Mask:
    """Return the mask of a panel.

    Parameters
    ----------
    face
        Of the panel.
    obstacles
        Around it; what lies wholly under its face takes nothing.

    Notes
    -----
    From 8 by 8 points of the panel a ray goes into the middle of each of 72 by 18 cells of the
    sky; a point is shaded where its ray meets a box (slabs).  An even sky gives Σ m sin h cos h /
    Σ sin h cos h.  Against a count of ten thousand rays at random places: within 2 % of the panel
    in any cell that no edge crosses, 0.5 % for the sky.

    References
    ----------
    [kay-kajiya-1986]
    """
    points = _points(face)
    hit = np.zeros((len(points), BEARINGS, ALTITUDES), dtype=bool)
    for obstacle in obstacles:
        if obstacle.high_mm[2] > face.z_mm:
            hit |= _meets(points, face.z_mm, obstacle)
    shaded = hit.mean(axis=0)
    return Mask(shaded_frac=shaded, sky_frac=_sky_frac(shaded))


def shade_of_hours(
    *, made: Mask, azimuth_deg: Hours, altitude_deg: Hours, heading_deg: float | None
) -> Shade:
    """Return a panel's shade from the sun in each hour, by area and by sections of cells.

    Parameters
    ----------
    made
        Its mask.
    azimuth_deg, altitude_deg
        Of the sun, clockwise from north and above the horizon. [deg]
    heading_deg
        Where the vehicle heads, clockwise from north; None for the mean of eight headings. [deg]

    Notes
    -----
    `beam_shaded_frac` and `string_loss_frac`; for the mean each heading is judged by itself.
    """
    headings = EIGHT_DEG if heading_deg is None else (heading_deg,)
    areas = [
        beam_shaded_frac(
            made=made, azimuth_deg=azimuth_deg, altitude_deg=altitude_deg, heading_deg=each
        )
        for each in headings
    ]
    strings = [string_loss_frac(shaded_frac=area) for area in areas]
    return Shade(
        area_frac=np.asarray(np.mean(areas, axis=0)),
        string_frac=np.asarray(np.mean(strings, axis=0)),
    )


def beam_shaded_frac(
    *, made: Mask, azimuth_deg: Hours, altitude_deg: Hours, heading_deg: float
) -> Hours:
    """Return the share of a panel that the sun does not reach in each hour.

    Parameters
    ----------
    made
        Its mask.
    azimuth_deg, altitude_deg
        Of the sun, clockwise from north and above the horizon. [deg]
    heading_deg
        Where the vehicle heads, clockwise from north. [deg]

    Notes
    -----
    Between the middles of the cells along straight lines; below 2.5° as at 2.5°.
    """
    cells, shares = cells_of_sun(
        azimuth_deg=azimuth_deg, altitude_deg=altitude_deg, heading_deg=heading_deg
    )
    return np.asarray((made.shaded_frac.reshape(-1)[cells] * shares).sum(axis=0))


def cells_of_sun(
    *, azimuth_deg: Hours, altitude_deg: Hours, heading_deg: float
) -> tuple[NDArray[np.int64], NDArray[np.float64]]:
    """Return the four cells of a mask around the sun in each hour, and what each counts.

    Parameters
    ----------
    azimuth_deg, altitude_deg
        Of the sun, clockwise from north and above the horizon. [deg]
    heading_deg
        Where the vehicle heads, clockwise from north. [deg]

    Notes
    -----
    Cells by their place in the mask row after row; the four shares of an hour add up to one.
    """
    across = ((azimuth_deg - heading_deg) % 360.0) / STEP_DEG - 0.5
    up = np.clip(altitude_deg / STEP_DEG - 0.5, 0.0, ALTITUDES - 1.0)
    west, low = np.floor(across).astype(np.int64), np.floor(up).astype(np.int64)
    to_east, to_high = across - west, up - low
    high = np.minimum(low + 1, ALTITUDES - 1)
    from_west, from_east = (west % BEARINGS) * ALTITUDES, ((west + 1) % BEARINGS) * ALTITUDES
    cells = np.stack([from_west + low, from_east + low, from_west + high, from_east + high])
    shares = np.stack(
        [
            (1.0 - to_east) * (1.0 - to_high),
            to_east * (1.0 - to_high),
            (1.0 - to_east) * to_high,
            to_east * to_high,
        ]
    )
    return cells, shares


def sky_weights() -> NDArray[np.float64]:
    """Return what each cell counts under an even sky: sin h cos h, all of them one."""
    height = np.radians((np.arange(ALTITUDES) + 0.5) * STEP_DEG)
    weight = np.sin(height) * np.cos(height)
    return np.tile(weight / (weight.sum() * BEARINGS), (BEARINGS, 1))


def string_loss_frac(*, shaded_frac: Hours, sections: int = SECTIONS) -> Hours:
    """Return the share of the sun's own power that a partly shaded panel loses at most.

    Parameters
    ----------
    shaded_frac
        Share of its area that the sun does not reach.
    sections
        Groups of cells with a bypass diode each.

    Notes
    -----
    A section with a shaded cell is bypassed whole: ⌈n f⌉ / n, the worst a shadow along the cells
    can do; the best is f itself.  Less than a hundredth of the panel counts by its area.

    References
    ----------
    [shop-practice-climate]

    Examples
    --------
    >>> [round(float(each), 3) for each in string_loss_frac(shaded_frac=np.array([0, 0.1, 0.5]))]
    [0.0, 0.333, 0.667]
    """
    whole = np.ceil(np.maximum(shaded_frac, 0.0) * sections - _SHARP) / sections
    felt = shaded_frac >= 0.01  # noqa: PLR2004  # a hundredth
    return np.asarray(np.where(felt, whole, shaded_frac))


def _points(face: Face) -> NDArray[np.float64]:
    share = (np.arange(POINTS) + 0.5) / POINTS
    xs = face.low_mm[0] + share * (face.high_mm[0] - face.low_mm[0])
    ys = face.low_mm[1] + share * (face.high_mm[1] - face.low_mm[1])
    return np.stack(np.meshgrid(xs, ys, indexing="ij"), axis=-1).reshape(-1, 2)


def _meets(points: NDArray[np.float64], face_mm: float, obstacle: Obstacle) -> NDArray[np.bool_]:
    """Say for each point, bearing and altitude whether the ray meets the box.

    Seen from above the ray is over the box from one distance to another; between them it must be
    below the box's upper face and above its lower one.
    """
    bearing = np.radians((np.arange(BEARINGS) + 0.5) * STEP_DEG)
    toward = np.stack([-np.cos(bearing), np.sin(bearing)], axis=-1)[None, :, :]
    first = (np.asarray(obstacle.low_mm[:2]) - points)[:, None, :] / toward
    last = (np.asarray(obstacle.high_mm[:2]) - points)[:, None, :] / toward
    enters = np.maximum(np.minimum(first, last).max(axis=-1), 0.0)
    leaves = np.maximum(first, last).min(axis=-1)
    over = leaves > enters
    rise = np.tan(np.radians((np.arange(ALTITUDES) + 0.5) * STEP_DEG))
    enters, leaves = np.where(over, enters, np.inf), np.where(over, leaves, 1.0)
    highest, lowest = obstacle.high_mm[2] - face_mm, obstacle.low_mm[2] - face_mm
    return np.asarray(
        (rise * np.maximum(enters, _SHARP)[..., None] <= highest)
        & (rise * leaves[..., None] >= lowest)
    )


def _sky_frac(shaded: NDArray[np.float64]) -> float:
    return float((shaded * sky_weights()).sum())
