"""The roof from above: outlines, what covers what, and panels on its curve."""

from collections.abc import Callable, Sequence
from itertools import combinations

from coachwright.layout.model_outside import (
    HigherNeighbour,
    PanelFit,
    RoofCover,
    RoofGap,
    RoofPlace,
)
from coachwright.layout.plane import ABOVE, Rectangle, gap_mm, overhang, seen, shift_mm
from coachwright.layout.solids import Box, Solid
from coachwright.model.vehicle import Roof

Related = Callable[[str, str], bool]


def roof_outline(roof: Roof) -> Rectangle:
    """Return the part of the roof that can carry something, from above."""
    return Rectangle(
        low_mm=(roof.x_from_mm, -roof.half_width_mm), high_mm=(roof.x_to_mm, roof.half_width_mm)
    )


def roof_place(*, body: Solid, carrier: str, outline: Rectangle) -> RoofPlace:
    """Return how far a fitting stands over the edge of what carries it.

    Parameters
    ----------
    body
        In the vehicle's axes.
    carrier
        Name of what carries it.
    outline
        Of that, from above.
    """
    found = overhang(seen(body.bounds, ABOVE), outline)
    sides = {
        "front": found.first_low_mm,
        "rear": found.first_high_mm,
        "left": found.second_low_mm,
        "right": found.second_high_mm,
    }
    side = max(sides, key=lambda name: sides[name])
    return RoofPlace(name=body.name, carrier=carrier, overhang_mm=sides[side], side=side)


def roof_covers(*, bodies: Sequence[Solid], related: Related) -> tuple[RoofCover, ...]:
    """Return the pairs of roof fittings that do not share a height, and how far they overlap.

    Parameters
    ----------
    bodies
        What is on the roof.
    related
        Says whether one of two names carries the other.

    Notes
    -----
    Fittings at one height are in one place or apart, which the clashes tell; one above the other
    hides it from the sky, or keeps it from opening.  Overlap: smallest shift in plan that frees
    each pair of boxes, the largest over the pairs.
    """
    found = []
    for one, other in combinations(bodies, 2):
        if related(one.name, other.name) or _share_height(one.bounds, other.bounds):
            continue
        upper, lower = (
            (one, other) if one.bounds.low_mm[2] > other.bounds.low_mm[2] else (other, one)
        )
        overlap = max(
            shift_mm(seen(a, ABOVE), seen(b, ABOVE)) for a in upper.boxes for b in lower.boxes
        )
        found.append(RoofCover(upper=upper.name, lower=lower.name, overlap_mm=overlap))
    return tuple(found)


def roof_gaps(*, bodies: Sequence[Solid], related: Related) -> tuple[RoofGap, ...]:
    """Return each roof fitting's nearest neighbour at its own height that it does not touch.

    Parameters
    ----------
    bodies
        What is on the roof.
    related
        Says whether one of two names carries the other.

    Notes
    -----
    Those that overlap in plan are clashes and not counted here.
    """
    nearest: dict[str, RoofGap] = {}
    for one, other in combinations(bodies, 2):
        if related(one.name, other.name) or not _share_height(one.bounds, other.bounds):
            continue
        views = [(seen(a, ABOVE), seen(b, ABOVE)) for a in one.boxes for b in other.boxes]
        if any(shift_mm(a, b) > 0 for a, b in views):
            continue
        gap = min(gap_mm(a, b) for a, b in views)
        for name, neighbour in ((one.name, other.name), (other.name, one.name)):
            if name not in nearest or gap < nearest[name].gap_mm:
                nearest[name] = RoofGap(name=name, neighbour=neighbour, gap_mm=gap)
    return tuple(nearest.values())


def panel_fit(*, body: Solid, on: str, bonded: bool, roof: Roof, roof_mm: float) -> PanelFit:
    """Return how a panel lies on the curved roof.

    Parameters
    ----------
    body
        The panel.
    on
        What carries it; empty where it lies on the roof itself.
    bonded
        It is glued down and bends with the roof.
    roof
        Of the vehicle.
    roof_mm
        Top of the roof on the centreline above the load floor. [mm]

    Notes
    -----
    The roof falls as a parabola, f(y) = crown · (y / half width)², the same along its whole
    length; corrugations are left out.  Bow = f at the panel's farthest side less f at its nearest
    point to the centreline.
    """
    low_mm, high_mm = body.bounds.low_mm, body.bounds.high_mm
    far_mm = max(abs(low_mm[1]), abs(high_mm[1]))
    near_mm = 0.0 if low_mm[1] <= 0 <= high_mm[1] else min(abs(low_mm[1]), abs(high_mm[1]))
    far_fall_mm = roof_fall_mm(y_mm=far_mm, roof=roof)
    bow_mm = far_fall_mm - roof_fall_mm(y_mm=near_mm, roof=roof)
    place = roof_place(body=body, carrier="roof", outline=roof_outline(roof))
    return PanelFit(
        name=body.name,
        on=on,
        bonded=bonded,
        bow_mm=bow_mm,
        edge_gap_mm=low_mm[2] - roof_mm + far_fall_mm,
        bow_share_frac=bow_mm / (high_mm[1] - low_mm[1]),
        edge_mm=-place.overhang_mm,
    )


def roof_fall_mm(*, y_mm: float, roof: Roof) -> float:
    """Return how much lower the roof is at a distance from the centreline. [mm].

    Examples
    --------
    >>> roof_fall_mm(
    ...     y_mm=-300.0, roof=Roof(x_from_mm=0, x_to_mm=3000, half_width_mm=600, crown_mm=40)
    ... )
    10.0
    """
    return roof.crown_mm * (y_mm / roof.half_width_mm) ** 2


def higher_neighbours(*, panel: Solid, bodies: Sequence[Solid]) -> tuple[HigherNeighbour, ...]:
    """Return what stands higher than a panel, nearest first.

    Parameters
    ----------
    panel
        In the vehicle's axes.
    bodies
        What is on the roof; the panel itself does not count.
    """
    top_mm = panel.bounds.high_mm[2]
    own = seen(panel.bounds, ABOVE)
    found = [
        HigherNeighbour(
            panel=panel.name,
            name=body.name,
            rise_mm=body.bounds.high_mm[2] - top_mm,
            distance_mm=gap_mm(own, seen(body.bounds, ABOVE)),
            space=body.bounds,
        )
        for body in bodies
        if body.name != panel.name and body.bounds.high_mm[2] > top_mm
    ]
    return tuple(sorted(found, key=lambda each: (each.distance_mm, each.name)))


def _share_height(one: Box, other: Box) -> bool:
    return min(one.high_mm[2], other.high_mm[2]) > max(one.low_mm[2], other.low_mm[2])
