"""U-values of the shell's parts, and the heat that the whole loses for each kelvin."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from coachwright import reference
from coachwright.errors import OutOfRange, UnknownName
from coachwright.living.given_body import Layer
from coachwright.living.model import Envelope, Loss
from coachwright.living.ribs import Bridged, bridged
from coachwright.model.working import Given, Working

AIR_WH_PER_M3_K = 0.34
"""Heat of a cubic metre of air at sea level: 1.2 kg/m3 · 1005 J/(kg K) / 3600. [energy-balance]"""
MM_PER_M = 1000.0
J_PER_WH = 3600.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Films:
    """Surface resistances and the inner convection, by direction of the heat."""

    inner_m2k_per_w: float
    outer_m2k_per_w: float
    inner_w_per_m2k: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Line:
    """One part of the shell, as it enters the sum."""

    name: str
    area_m2: float
    u_w_per_m2k: float
    low_w_per_m2k: float
    high_w_per_m2k: float


@cache
def films(direction: str) -> Films:
    """Return the films for heat that goes ``"up"``, ``"horizontal"`` or ``"down"``.

    Raises
    ------
    UnknownName
        Where there is no such direction.

    Notes
    -----
    Convection and radiation together at about 10 °C, outside with 4 m/s of wind; convection of
    the inner face alone beside it.

    References
    ----------
    [iso-6946]
    """
    rows = {row["direction"]: row for row in reference.table("surface_films")}
    if direction not in rows:
        raise UnknownName("direction", direction, sorted(rows))
    row = rows[direction]
    return Films(
        inner_m2k_per_w=float(row["inner_m2k_per_w"]),
        outer_m2k_per_w=float(row["outer_m2k_per_w"]),
        inner_w_per_m2k=float(row["inner_w_per_m2k"]),
    )


def layers_m2k_per_w(layers: Sequence[Layer]) -> float:
    """Return the resistance of layers on one another [m2 K/W].

    Notes
    -----
    Σ d / λ, or the layer's own resistance where it tells one.

    References
    ----------
    [iso-6946]
    """
    return sum(
        layer.resistance_m2k_per_w
        if layer.conductivity_w_per_m_k <= 0.0
        else layer.thickness_mm / MM_PER_M / layer.conductivity_w_per_m_k
        for layer in layers
    )


def plane_w_per_m2k(*, layers: Sequence[Layer], direction: str) -> float:
    """Return the U-value of a plane part without bridges [W/m2/K].

    Parameters
    ----------
    layers
        From outside inwards.
    direction
        Of the heat: ``"up"``, ``"horizontal"`` or ``"down"``.

    Notes
    -----
    U = 1 / (Rse + Σ d / λ + Rsi).  Plane, homogeneous layers, steady.

    References
    ----------
    [iso-6946]

    Examples
    --------
    >>> steel = Layer(name="steel", thickness_mm=0.9, conductivity_w_per_m_k=50)
    >>> foam = Layer(name="foam", thickness_mm=25, conductivity_w_per_m_k=0.0235)
    >>> ply = Layer(name="ply", thickness_mm=3, conductivity_w_per_m_k=0.13)
    >>> round(plane_w_per_m2k(layers=[steel, foam, ply], direction="horizontal"), 5)
    0.79559
    """
    film = films(direction)
    return 1.0 / (film.outer_m2k_per_w + layers_m2k_per_w(layers) + film.inner_m2k_per_w)


def ribbed(
    *,
    skin: Layer,
    insulation: Sequence[Layer],
    lining: Sequence[Layer],
    direction: str,
    rib_depth_mm: float,
    rib_frac: float,
    rib_mm: float,
) -> Bridged:
    """Return the U-values of a part with ribs, with their bounds.

    Parameters
    ----------
    skin
        The steel sheet.
    insulation
        Between the ribs, from outside inwards; perhaps an air gap.
    lining
        Over the ribs.
    direction
        Of the heat.
    rib_depth_mm
        Of the ribs; insulation thicker than this covers them too. [mm]
    rib_frac
        Share of the area that ribs stand on.
    rib_mm
        Width of a rib's inner face. [mm]

    Notes
    -----
    Insulation is taken as one layer of its total resistance; what is thicker than the ribs
    covers them with the same conductivity.  Ribs deeper than the insulation end with it: the
    bare metal that stands out of it warms a little and is left out.

    References
    ----------
    [iso-6946], [ashrae-zone-method]
    """
    film = films(direction)
    thick = sum(layer.thickness_mm for layer in insulation)
    between = layers_m2k_per_w(insulation)
    filled = min(thick, rib_depth_mm)
    conductivity = thick / MM_PER_M / between
    over = (thick - filled) / MM_PER_M / conductivity
    return bridged(
        outside_m2k_per_w=film.outer_m2k_per_w + layers_m2k_per_w([skin]),
        fill_mm=filled,
        fill_w_per_m_k=conductivity,
        inside_m2k_per_w=over + layers_m2k_per_w(lining) + film.inner_m2k_per_w,
        cover_mm=thick - filled + sum(layer.thickness_mm for layer in lining),
        rib_frac=rib_frac,
        rib_mm=rib_mm,
        sheet_mm=skin.thickness_mm,
        metal_w_per_m_k=skin.conductivity_w_per_m_k,
    )


def behind_w_per_k(*, divider_w_per_k: float, cab_w_per_k: float) -> float:
    """Return the heat lost through a divider and the cab behind it, one after the other [W/K].

    Parameters
    ----------
    divider_w_per_k
        From the living space to the cab, air that passes counted. [W/K]
    cab_w_per_k
        From the cab to outside. [W/K]

    Notes
    -----
    1 / (1 / K + 1 / UA): the cab unheated, at rest, without sun.

    References
    ----------
    [energy-balance]

    Examples
    --------
    >>> behind_w_per_k(divider_w_per_k=20, cab_w_per_k=60)
    15.0
    """
    if divider_w_per_k <= 0.0 or cab_w_per_k <= 0.0:
        return 0.0
    return 1.0 / (1.0 / divider_w_per_k + 1.0 / cab_w_per_k)


def leak_w_per_k(*, air_m3: float, leak_per_h: float) -> float:
    """Return the heat that leaking air takes for each kelvin [W/K].

    Parameters
    ----------
    air_m3
        Of the room. [m3]
    leak_per_h
        Air changes. [1/h]

    Notes
    -----
    H = 0.34 n V, at sea level.

    References
    ----------
    [energy-balance]

    Examples
    --------
    >>> round(leak_w_per_k(air_m3=13, leak_per_h=1), 2)
    4.42
    """
    return AIR_WH_PER_M3_K * leak_per_h * air_m3


def held_j_per_k(*, area_m2: float, layers: Sequence[Layer]) -> float:
    """Return the heat that layers hold for each kelvin [J/K].

    Parameters
    ----------
    area_m2
        Of the surface. [m2]
    layers
        Those that follow the inside: from the innermost up to the insulation.

    Notes
    -----
    C = A Σ d ρ c.

    References
    ----------
    [energy-balance]
    """
    return area_m2 * sum(
        layer.thickness_mm / MM_PER_M * layer.density_kg_per_m3 * layer.heat_j_per_kg_k
        for layer in layers
    )


def envelope(*, lines: Sequence[Line], air_w_per_k: float, held_wh_per_k: float) -> Envelope:
    """Return the heat that a body loses for each kelvin, part by part.

    Parameters
    ----------
    lines
        Parts of the shell.
    air_w_per_k
        By leaking air. [W/K]
    held_wh_per_k
        Heat that what stands inside the insulation holds. [Wh/K]

    Returns
    -------
    Envelope
        UA with its breakdown, mean U, both with the range that ribs cause, and its working.

    Raises
    ------
    OutOfRange
        Where there is no area.

    Notes
    -----
    UA = Σ U A, mean U = UA / Σ A; low and high with every rib as parallel path and as isothermal
    plane.  Still air inside, 4 m/s outside, steady; leaking air apart.

    References
    ----------
    [iso-6946], [energy-balance]

    Examples
    --------
    >>> wall = Line(name="walls", area_m2=20, u_w_per_m2k=0.8, low_w_per_m2k=0.8,
    ...     high_w_per_m2k=0.8)
    >>> pane = Line(name="panes", area_m2=2, u_w_per_m2k=5, low_w_per_m2k=5, high_w_per_m2k=5)
    >>> envelope(lines=[wall, pane], air_w_per_k=4, held_wh_per_k=90).ua_w_per_k
    26.0
    """
    area = sum(line.area_m2 for line in lines)
    if area <= 0.0:
        raise OutOfRange("area_m2", area, "above 0")
    total = sum(line.area_m2 * line.u_w_per_m2k for line in lines)
    low = sum(line.area_m2 * line.low_w_per_m2k for line in lines)
    high = sum(line.area_m2 * line.high_w_per_m2k for line in lines)
    losses = tuple(
        Loss(
            name=line.name,
            area_m2=line.area_m2,
            ua_w_per_k=line.area_m2 * line.u_w_per_m2k,
            low_w_per_k=line.area_m2 * line.low_w_per_m2k,
            high_w_per_k=line.area_m2 * line.high_w_per_m2k,
            share_frac=line.area_m2 * line.u_w_per_m2k / total,
        )
        for line in lines
    )
    return Envelope(
        losses=losses,
        ua_w_per_k=total,
        ua_low_w_per_k=low,
        ua_high_w_per_k=high,
        mean_u_w_per_m2k=total / area,
        mean_u_low_w_per_m2k=low / area,
        mean_u_high_w_per_m2k=high / area,
        leak_w_per_k=air_w_per_k,
        heat_wh_per_k=held_wh_per_k,
        working=_working(losses, total),
    )


def _working(losses: Sequence[Loss], total_w_per_k: float) -> Working:
    symbols = [f"UA{number}" for number in range(1, len(losses) + 1)]
    return Working(
        expression=f"UA = {' + '.join(symbols)}",
        given=tuple(
            Given(
                symbol=symbol,
                meaning=loss.name,
                value=loss.ua_w_per_k,
                unit="W/K",
                source="build and living assumptions",
            )
            for symbol, loss in zip(symbols, losses, strict=True)
        ),
        result=total_w_per_k,
        unit="W/K",
        references=("iso-6946", "ashrae-zone-method"),
        note=(
            "Ribs by zones; parallel paths and isothermal planes bound it. "
            "Leaking air is not in it."
        ),
    )
