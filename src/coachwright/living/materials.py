"""What layers are made of: steel, insulation, lining, air."""

from bisect import bisect_left
from dataclasses import dataclass
from functools import cache

from coachwright import reference
from coachwright.errors import UnknownName


@dataclass(frozen=True, kw_only=True, slots=True)
class Material:
    """One row of the table."""

    conductivity_w_per_m_k: float
    density_kg_per_m3: float
    heat_j_per_kg_k: float


@cache
def material(name: str) -> Material:
    """Return the first row of a material.

    Raises
    ------
    UnknownName
        Where the table has no such material.

    Examples
    --------
    >>> material("steel").conductivity_w_per_m_k
    50.0
    """
    rows = _rows(name)
    if not rows:
        known = sorted({row["material"] for row in reference.table("living_materials")})
        raise UnknownName("material", name, known)
    return rows[0]


def _rows(name: str) -> tuple[Material, ...]:
    return tuple(
        Material(
            conductivity_w_per_m_k=float(row["conductivity_w_per_m_k"]),
            density_kg_per_m3=float(row["density_kg_per_m3"]),
            heat_j_per_kg_k=float(row["heat_j_per_kg_k"]),
        )
        for row in reference.table("living_materials")
        if row["material"] == name
    )


def wood_w_per_m_k(*, density_kg_per_m3: float) -> float:
    """Return the conductivity of plywood of a density [W/m/K].

    Parameters
    ----------
    density_kg_per_m3
        Of the board. [kg/m3]

    Notes
    -----
    Linear between the rows of 300, 500, 700 and 1000 kg/m3; the first and last hold beyond.

    References
    ----------
    [en-12524]

    Examples
    --------
    >>> round(wood_w_per_m_k(density_kg_per_m3=600), 3)
    0.15
    """
    return _between_factor(
        density_kg_per_m3,
        tuple((row.density_kg_per_m3, row.conductivity_w_per_m_k) for row in _rows("plywood")),
    )


def gap_m2k_per_w(*, gap_mm: float) -> float:
    """Return the resistance of an unventilated air gap with heat across [m2 K/W].

    Parameters
    ----------
    gap_mm
        Of air between two ordinary faces. [mm]

    Notes
    -----
    Linear between rows from 5 to 25 mm; the first and last hold beyond.  From memory.

    References
    ----------
    [iso-6946]

    Examples
    --------
    >>> gap_m2k_per_w(gap_mm=40)
    0.18
    """
    return _between_factor(
        gap_mm,
        tuple(
            (float(row["gap_mm"]), float(row["resistance_m2k_per_w"]))
            for row in reference.table("air_gaps")
        ),
    )


def _between_factor(at_factor: float, points_factor: tuple[tuple[float, float], ...]) -> float:
    """Return the value at a place on a line through points; the ends hold beyond."""
    places = [place for place, _ in points_factor]
    index = bisect_left(places, at_factor)
    if index == 0:
        return points_factor[0][1]
    if index == len(points_factor):
        return points_factor[-1][1]
    (left, low), (right, high) = points_factor[index - 1], points_factor[index]
    return low + (at_factor - left) / (right - left) * (high - low)
