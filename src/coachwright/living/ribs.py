"""Steel ribs through insulation: bounds of the heat that they carry, and a value between."""

from dataclasses import dataclass

from coachwright.errors import OutOfRange

LEAST_DEPTH_MM = 13.0
"""Least distance from face to metal in the zone method. [ashrae-zone-method]"""
LEAST_BRIDGE_M2K_PER_W = 0.001
"""Below this the film over a rib decides alone."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Bridged:
    """A part of the shell with ribs.

    Attributes
    ----------
    clear_w_per_m2k
        Between the ribs.
    low_w_per_m2k, high_w_per_m2k
        Mean by parallel paths and by isothermal planes: nothing real lies outside.
    mean_w_per_m2k
        By zones: the value taken.
    rib_w_per_m2k, rib_zone_frac
        Over the zone of a rib, and that zone's share of the area.
    """

    clear_w_per_m2k: float
    low_w_per_m2k: float
    mean_w_per_m2k: float
    high_w_per_m2k: float
    rib_w_per_m2k: float
    rib_zone_frac: float


def zone_width_mm(*, face_mm: float, depth_mm: float) -> float:
    """Return the width of the zone that a piece of metal draws heat from [mm].

    Parameters
    ----------
    face_mm
        Width of the metal's face. [mm]
    depth_mm
        From the panel's surface to the metal; counted as at least 13 mm. [mm]

    Notes
    -----
    W = m + 2 d.

    References
    ----------
    [ashrae-zone-method]

    Examples
    --------
    >>> zone_width_mm(face_mm=25, depth_mm=28)
    81.0
    """
    return face_mm + 2.0 * max(depth_mm, LEAST_DEPTH_MM)


def isothermal_w_per_m_k(
    *, rib_frac: float, metal_w_per_m_k: float, fill_w_per_m_k: float
) -> float:
    """Return the conductivity of a layer through which metal goes, all mixed [W/m/K].

    Parameters
    ----------
    rib_frac
        Share of the area that is metal.
    metal_w_per_m_k
        Of the metal. [W/m/K]
    fill_w_per_m_k
        Of what is between. [W/m/K]

    Notes
    -----
    λ = f λ_metal + (1 − f) λ_fill.

    References
    ----------
    [iso-6946]

    Examples
    --------
    >>> round(isothermal_w_per_m_k(rib_frac=0.08, metal_w_per_m_k=50, fill_w_per_m_k=0.0235), 4)
    4.0216
    """
    return rib_frac * metal_w_per_m_k + (1.0 - rib_frac) * fill_w_per_m_k


def bridged(
    *,
    outside_m2k_per_w: float,
    fill_mm: float,
    fill_w_per_m_k: float,
    inside_m2k_per_w: float,
    cover_mm: float,
    rib_frac: float,
    rib_mm: float,
    sheet_mm: float,
    metal_w_per_m_k: float,
) -> Bridged:
    """Return how much heat goes through a wall whose insulation is crossed by hollow ribs.

    Parameters
    ----------
    outside_m2k_per_w
        Outer film and what else lies outside the ribs. [m2 K/W]
    fill_mm
        Insulation between the ribs. [mm]
    fill_w_per_m_k
        Of that insulation. [W/m/K]
    inside_m2k_per_w
        Lining over the ribs and the inner film. [m2 K/W]
    cover_mm
        Thickness of that lining. [mm]
    rib_frac
        Share of the area that ribs stand on.
    rib_mm
        Width of a rib's inner face. [mm]
    sheet_mm
        Of the rib's steel: two webs of it carry the heat. [mm]
    metal_w_per_m_k
        Of the steel. [W/m/K]

    Returns
    -------
    Bridged
        U between ribs, bounds, and the value by zones.

    Raises
    ------
    OutOfRange
        Where the share of ribs is not from 0 to below 1, or a thickness is not above 0.

    Notes
    -----
    Parallel paths: U' = (1 − f) / R_clear + f / (R_out + R_in), ribs as short circuits.
    Isothermal planes: 1 / U'' = R_out + d / (f λ_metal + (1 − f) λ_fill) + R_in, ribs solid.
    ISO 6946 leaves insulation bridged by metal out of its scope: both are bounds alone.
    Zones: over W = m + 2 d around a rib (d the lining, at least 13 mm; at most the spacing m / f)
    the layers are mixed as isothermal planes with two webs of sheet in W; the rest is clear.
    Holes in ribs, thermal breaks and fins of the skin are left out; no measurement at hand.

    References
    ----------
    [iso-6946], [ashrae-zone-method]

    Examples
    --------
    >>> wall = bridged(outside_m2k_per_w=0.040018, fill_mm=25, fill_w_per_m_k=0.0235,
    ...     inside_m2k_per_w=0.13 + 0.003 / 0.13, cover_mm=3, rib_frac=0.08, rib_mm=40,
    ...     sheet_mm=0.9, metal_w_per_m_k=50)
    >>> [round(u, 3) for u in (wall.clear_w_per_m2k, wall.low_w_per_m2k, wall.high_w_per_m2k)]
    [0.796, 1.146, 5.017]
    """
    if not 0.0 <= rib_frac < 1.0:
        raise OutOfRange("rib_frac", rib_frac, "from 0 to below 1")
    if min(fill_mm, rib_mm, sheet_mm) <= 0.0:
        raise OutOfRange("fill_mm", min(fill_mm, rib_mm, sheet_mm), "above 0")
    both = outside_m2k_per_w + inside_m2k_per_w
    deep_m = fill_mm / 1000.0
    clear = 1.0 / (both + deep_m / fill_w_per_m_k)
    short = 1.0 / both
    mixed = isothermal_w_per_m_k(
        rib_frac=rib_frac, metal_w_per_m_k=metal_w_per_m_k, fill_w_per_m_k=fill_w_per_m_k
    )
    high = 1.0 / (both + deep_m / mixed)
    low = min((1.0 - rib_frac) * clear + rib_frac * short, high)
    width = zone_width_mm(face_mm=rib_mm, depth_mm=cover_mm)
    share = min(1.0, width * rib_frac / rib_mm)
    webs = isothermal_w_per_m_k(
        rib_frac=min(1.0, 2.0 * sheet_mm / width),
        metal_w_per_m_k=metal_w_per_m_k,
        fill_w_per_m_k=fill_w_per_m_k,
    )
    over_rib = 1.0 / (both + deep_m / webs)
    mean = share * over_rib + (1.0 - share) * clear
    return Bridged(
        clear_w_per_m2k=clear,
        low_w_per_m2k=low,
        mean_w_per_m2k=min(max(mean, low), high),
        high_w_per_m2k=high,
        rib_w_per_m2k=over_rib,
        rib_zone_frac=share,
    )


def bridge_w_per_k(
    *,
    area_m2: float,
    rib_m2: float,
    mean_w_per_m2k: float,
    outer_m2k_per_w: float,
    inner_m2k_per_w: float,
    layers_m2k_per_w: float,
) -> float:
    """Return the conductance from the outer face to the rib's inner face for a mean U [W/K].

    Parameters
    ----------
    area_m2
        Of the surface. [m2]
    rib_m2
        Inner face over the ribs, out of that area. [m2]
    mean_w_per_m2k
        Wanted, from air to air. [W/m2/K]
    outer_m2k_per_w
        Outer film. [m2 K/W]
    inner_m2k_per_w
        Inner film. [m2 K/W]
    layers_m2k_per_w
        Of the layers between ribs. [m2 K/W]

    Returns
    -------
    float
        0 where the layers alone let as much through.

    Raises
    ------
    OutOfRange
        Where there is no inner face over ribs, or no other.

    Notes
    -----
    The network has one outer face and two inner ones: 1 / (1 / (U A) − R_out / A) less the way
    through layers and the face beside the ribs, 1 / (R / A + R_in / (A − A_rib)), is the way
    through the ribs, from which their own film R_in / A_rib is taken.  What the film over the
    ribs cannot pass on is cut off at 1000 W/(m2 K): bounds by isothermal planes reach it.

    Examples
    --------
    >>> round(bridge_w_per_k(area_m2=10, rib_m2=1, mean_w_per_m2k=1.0, outer_m2k_per_w=0.04,
    ...     inner_m2k_per_w=0.13, layers_m2k_per_w=1.5), 3)
    9.935
    """
    if not 0.0 < rib_m2 < area_m2:
        raise OutOfRange("rib_m2", rib_m2, f"above 0 and below {area_m2:g}")
    whole = 1.0 / (1.0 / (mean_w_per_m2k * area_m2) - outer_m2k_per_w / area_m2)
    beside = 1.0 / (layers_m2k_per_w / area_m2 + inner_m2k_per_w / (area_m2 - rib_m2))
    through = whole - beside
    if through <= 0.0:
        return 0.0
    left = 1.0 / through - inner_m2k_per_w / rib_m2
    return rib_m2 / max(left * rib_m2, LEAST_BRIDGE_M2K_PER_W)
