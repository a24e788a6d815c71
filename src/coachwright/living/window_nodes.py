"""The nodes of a window, and the sun that comes through it."""

from coachwright.living.given_body import Window
from coachwright.living.glass_curve import mean_of_even_light_frac
from coachwright.living.nodes import (
    AIR,
    GLASS,
    OUTSIDE_RADIANT_W_PER_M2K,
    SKY,
    Inner,
    Look,
    Making,
    curve_frac,
    glass_key,
)
from coachwright.living.radiant import RADIANT_W_PER_M2K
from coachwright.living.sunlight import Face, Pane

INNER_RESISTANCE_M2K_PER_W = 0.13
"""Usual film inside, that a window's U holds. [iso-6946]"""
OUTER_RESISTANCE_M2K_PER_W = 0.04
"""Usual film outside. [iso-6946]"""
LEAST_PANE_M2K_PER_W = 0.003
"""Of a pane of 3 mm glass, where a U leaves less. [iso-6946]"""
_LEAST_FILM_W_PER_M2K = 0.5
_BLIND_ABSORBS_FRAC = 0.5


def pane_films(window: Window) -> tuple[float, float, float]:
    """Return a window's outer film, its own resistance, and its inner film.

    Films in W/m2/K with radiation, the resistance in m2 K/W.  Where they are not told they are
    the usual ones that its U holds, drawn together if the U leaves no room for a pane.
    """
    outer, inner = 1.0 / OUTER_RESISTANCE_M2K_PER_W, 1.0 / INNER_RESISTANCE_M2K_PER_W
    if window.outer_film_w_per_m2k is not None:
        outer = window.outer_film_w_per_m2k + window.emittance_frac * OUTSIDE_RADIANT_W_PER_M2K
    if window.inner_film_w_per_m2k is not None:
        inner = window.inner_film_w_per_m2k + window.emittance_frac * RADIANT_W_PER_M2K
    if window.pane_resistance_m2k_per_w is not None:
        return outer, max(window.pane_resistance_m2k_per_w, 1e-5), inner
    whole = 1.0 / window.u_w_per_m2k
    own = whole - INNER_RESISTANCE_M2K_PER_W - OUTER_RESISTANCE_M2K_PER_W
    if own >= LEAST_PANE_M2K_PER_W:
        return outer, own, inner
    own = min(LEAST_PANE_M2K_PER_W, whole / 10.0)
    scale = (1.0 / outer + 1.0 / inner) / (whole - own)
    return outer * scale, own, inner * scale


def lay_window(making: Making, window: Window) -> None:
    """Lay a window of two faces, with its blind where that is shut."""
    room, area = making.room(window.room), window.area_m2
    outer_film, own, inner_film = pane_films(window)
    outer = making.node(f"{window.name} outside")
    pane = making.node(window.name)
    making.link(outer, pane, area / own)
    radiant = min(window.emittance_frac * OUTSIDE_RADIANT_W_PER_M2K, outer_film)
    if window.outer_film_w_per_m2k is not None:
        outer_film += making.stirred_w_per_m2k
    sky = window.plane.sky_frac
    making.drive(outer, AIR, area * (outer_film - radiant * sky))
    making.drive(outer, SKY, area * radiant * sky)
    face = pane
    if making.shut and window.blind_resistance_m2k_per_w > 0.0:
        face = making.node(f"{window.name} blind")
        making.link(pane, face, area / window.blind_resistance_m2k_per_w)
    inner_radiant = window.emittance_frac * RADIANT_W_PER_M2K
    making.faces[room].append(
        Inner(
            node=face,
            area_m2=area,
            film_w_per_m2k=max(inner_film - inner_radiant, _LEAST_FILM_W_PER_M2K),
            emittance_frac=window.emittance_frac,
        )
    )
    making.looks.append(Look(room=room, kind=GLASS, area_m2=area, node=pane))
    if window.plane.sunlit:
        outwards = own + 1.0 / outer_film
        inward_frac = outwards / (outwards + 1.0 / inner_film)
        _sun_through(making, window, pane, face, inward_frac)


def _sun_through(making: Making, window: Window, pane: int, face: int, inward_frac: float) -> None:
    """Let the sun into a window's pane and room; see `sunlight` for where it goes there."""
    room, area = making.room(window.room), window.area_m2
    column = making.light(glass_key(window))
    drawn = making.shut and window.blind_frac < 1.0
    through_m2 = area * (window.blind_frac if drawn else 1.0)
    absorbed = max(window.shgc_frac - window.transmitted_frac, 0.0) / inward_frac
    absorbed = min(absorbed, 1.0 - window.transmitted_frac)
    making.drive(pane, column, through_m2 * absorbed)
    even = window.diffuse_frac
    if even is None:
        even = mean_of_even_light_frac(by_incidence_frac=curve_frac(window))
    making.panes[room].append(
        Pane(
            column=column,
            through_m2=through_m2 * window.transmitted_frac,
            lost_m2=through_m2 * window.transmitted_frac * even,
        )
    )
    making.sun[room].append(
        Face(
            node=face,
            area_m2=area,
            is_floor=False,
            absorptance_frac=_BLIND_ABSORBS_FRAC if drawn else absorbed,
        )
    )
