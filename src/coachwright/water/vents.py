"""Fixed vents of the living space, from the table of EN 721."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from coachwright.reference import table


@dataclass(frozen=True, kw_only=True, slots=True)
class VentsNeeded:
    """Free areas that cannot be closed.

    Attributes
    ----------
    roof_mm2
        High vent in the roof.
    wall_mm2
        High vent elsewhere, instead; None where only the roof will do.
    low_mm2
        Near the floor.
    status
        Whether the row was read or is from memory.
    """

    roof_mm2: float
    wall_mm2: float | None
    low_mm2: float
    status: Literal["read", "memory"]


def plan_m2(*, length_mm: float, width_mm: float) -> float:
    """Return the plan area of a vehicle [m2].

    Parameters
    ----------
    length_mm
        Overall. [mm]
    width_mm
        Overall, without mirrors. [mm]

    Returns
    -------
    float
        Length by width.

    Notes
    -----
    The whole outline, cab included, is larger than the living space: the vents come out on the
    large side.

    References
    ----------
    [geometry]

    Examples
    --------
    >>> plan_m2(length_mm=5000, width_mm=2000)
    10.0
    """
    return length_mm * width_mm / 1e6


def vents_needed(*, area_m2: float, unsealed_burner: bool) -> VentsNeeded | None:
    """Return the fixed vents that a living space needs.

    Parameters
    ----------
    area_m2
        Plan area. [m2]
    unsealed_burner
        A burner inside takes its air from the living space.

    Returns
    -------
    VentsNeeded or None
        None where the table has no row for the plan area.

    Notes
    -----
    A row holds from above its smaller to its larger plan area.  Vents that are not in the roof
    stand as high as possible and at least 300 mm above the upper mattress; low ones within
    100 mm of the floor.

    References
    ----------
    [en-721]

    Examples
    --------
    >>> needed = vents_needed(area_m2=8, unsealed_burner=True)
    >>> needed and (needed.roof_mm2, needed.low_mm2)
    (10000.0, 1500.0)
    """
    kind = "unsealed" if unsealed_burner else "sealed or none"
    for row in table("fixed_vents"):
        inside = float(row["plan_from_m2"]) < area_m2 <= float(row["plan_to_m2"])
        if row["burner"] == kind and inside:
            return VentsNeeded(
                roof_mm2=float(row["roof_mm2"]),
                wall_mm2=float(row["wall_mm2"]) if row["wall_mm2"] else None,
                low_mm2=float(row["low_mm2"]),
                status="read" if row["status"] == "read" else "memory",
            )
    return None


def free_mm2(*, areas_m2: Sequence[float]) -> float:
    """Return free areas together [mm2].

    Parameters
    ----------
    areas_m2
        Of each vent. [m2]

    Returns
    -------
    float
        Their sum.

    Notes
    -----
    As stated for each vent, meshes and louvres taken off.

    References
    ----------
    [geometry]

    Examples
    --------
    >>> free_mm2(areas_m2=(0.01, 0.005))
    15000.0
    """
    return sum(areas_m2) * 1e6
