"""The roof as a field to pack: its border, what stands on it, and where panels can lie."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from coachwright.arrange.packing import Block, Field, Kind
from coachwright.layout.roof_plan import panel_fit
from coachwright.layout.solids import Box, box, solid, solid_of
from coachwright.layout.zones import zone_space
from coachwright.model.build import Build, Fitted, Mounting
from coachwright.model.part import Part
from coachwright.reference import limit, table

PLAIN_FACETS = frozenset({"body", "price", "labour", "access"})
"""A fitting with no other facet that carries panels is their mounting and goes with them."""


@dataclass(frozen=True, kw_only=True, slots=True)
class RoofWish:
    """What may be put on the roof.

    Attributes
    ----------
    panels
        Parts to choose from.
    most
        How many of each; None is as many as there is room for.
    most_kinds
        How many kinds may be mixed; None is any number.
    walkways_mm
        Strips across the roof that stay free: from x to x.
    mount
        Part that each rigid panel stands on; None is the roof itself.
    """

    panels: tuple[Part, ...]
    most: int | None = None
    most_kinds: int | None = None
    walkways_mm: tuple[tuple[float, float], ...] = ()
    mount: Part | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class RoofField:
    """A roof as a field, and how to come back from it.

    Attributes
    ----------
    origin_mm
        Corner of the field with the smallest x and y, in the vehicle's axes.
    obstacles
        Names of what stands in the way, in the order of the build.
    platforms
        Names of racks that carry the build's panels and may carry the new ones.
    replaced
        Names of panels and mountings that are exchanged.
    rows
        Kind's name → lowest and highest place across the roof that its curve allows. [mm]
    """

    field: Field
    kinds: tuple[Kind, ...]
    parts: dict[str, Part]
    origin_mm: tuple[float, float]
    obstacles: tuple[str, ...]
    platforms: tuple[str, ...]
    replaced: tuple[str, ...]
    rows: dict[tuple[str, bool], tuple[int, int]]


def roof_field(build: Build, wish: RoofWish) -> RoofField:
    """Return the roof of a build as a field for panels.

    Parameters
    ----------
    build
        With everything that stands on the roof.
    wish
        Panels to choose from and strips to keep free.

    Notes
    -----
    The border is the usable roof less the edge distance.  Everything on the roof that is no panel
    is an obstacle with its clearance, and so is what its lid sweeps.  A rack that carries panels
    now is a platform: panels stand wholly on it or beside it.
    """
    edge_mm = limit("layout.panel-edge").value
    roof = build.vehicle.roof
    origin_mm = (roof.x_from_mm + edge_mm, edge_mm - roof.half_width_mm)
    size_mm = (roof.x_to_mm - edge_mm - origin_mm[0], -2 * origin_mm[1])
    replaced, platforms = _panels_and_what_carries_them(build)
    standing = tuple(
        fitted
        for fitted in build.fittings
        if fitted.name not in replaced and _on_roof(build, fitted)
    )
    blocks = [
        block
        for fitted in standing
        for block in _blocks(fitted, origin_mm, platform=fitted.name in platforms)
    ]
    blocks.extend(_walkways(wish, origin_mm, size_mm))
    kinds = tuple(_kinds(wish, size_mm))
    parts = {part.id: part for part in wish.panels}
    rows = dict(_rows(build, wish, kinds, origin_mm, size_mm))
    return RoofField(
        field=Field(
            length_mm=math.floor(size_mm[0]),
            width_mm=math.floor(size_mm[1]),
            gap_mm=math.ceil(limit("layout.roof-clearance").value),
            blocks=tuple(blocks),
            stops_mm=_stops_mm(kinds, rows, size_mm),
            most_kinds=wish.most_kinds,
            most_g=_most_g(build, replaced),
        ),
        kinds=kinds,
        parts=parts,
        origin_mm=origin_mm,
        obstacles=tuple(dict.fromkeys(block.name for block in blocks if not block.platform)),
        platforms=platforms,
        replaced=replaced,
        rows=rows,
    )


def _panels_and_what_carries_them(build: Build) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return what is exchanged, and the racks that panels may stand on."""
    panels = [fitted for fitted in build.fittings if is_roof_panel(fitted)]
    names = {panel.name for panel in panels}
    replaced, platforms = list(names), []
    for fitted in build.fittings:
        carries = [each for each in build.fittings if each.fitting.on == fitted.name]
        if not any(each.name in names for each in carries):
            continue
        if fitted.part.roof_rack is not None:
            platforms.append(fitted.name)
        elif PLAIN_FACETS.issuperset(fitted.part.facet_names()) and all(
            each.name in names for each in carries
        ):
            replaced.append(fitted.name)
    order = [fitted.name for fitted in build.fittings]
    return tuple(sorted(replaced, key=order.index)), tuple(platforms)


def is_roof_panel(fitted: Fitted) -> bool:
    """Say whether a fitting is a panel on the roof that may be exchanged: none that is pinned."""
    panel, fitting = fitted.part.solar_panel, fitted.fitting
    return (
        panel is not None
        and not panel.folding
        and not fitting.pinned
        and fitting.mounting is Mounting.ROOF
    )


def _on_roof(build: Build, fitted: Fitted) -> bool:
    """Say whether a fitting stands on the roof, or reaches over it from the side."""
    if fitted.fitting.mounting is Mounting.ROOF:
        return True
    roof, outside = build.vehicle.roof, build.vehicle.outside
    bounds = solid_of(fitted).bounds
    return (
        fitted.fitting.mounting
        in (Mounting.SIDE, Mounting.REAR_DOOR_LEFT, Mounting.REAR_DOOR_RIGHT)
        and bounds.high_mm[2] > outside.height_mm - outside.floor_height_mm
        and bounds.low_mm[0] < roof.x_to_mm
        and bounds.low_mm[1] < roof.half_width_mm
        and bounds.high_mm[1] > -roof.half_width_mm
    )


def _blocks(fitted: Fitted, origin_mm: tuple[float, float], *, platform: bool) -> Iterator[Block]:
    margin_mm = 0.0 if platform else clearance_mm(fitted.part)
    boxes = list(solid_of(fitted).boxes)
    if not platform and fitted.part.access is not None:
        boxes += [zone_space(fitted, zone) for zone in fitted.part.access.zones]
    for part in boxes:
        yield _block(fitted.name, part, origin_mm, margin_mm, platform=platform)


def _block(
    name: str, part: Box, origin_mm: tuple[float, float], margin_mm: float, *, platform: bool
) -> Block:
    low = [part.low_mm[axis] - margin_mm - origin_mm[axis] for axis in (0, 1)]
    high = [part.high_mm[axis] + margin_mm - origin_mm[axis] for axis in (0, 1)]
    inwards, outwards = (math.ceil, math.floor) if platform else (math.floor, math.ceil)
    return Block(
        name=name,
        low_mm=(inwards(low[0]), inwards(low[1])),
        high_mm=(outwards(high[0]), outwards(high[1])),
        platform=platform,
    )


def clearance_mm(part: Part) -> float:
    """Return what stays free between a panel and a part on the roof: the largest that applies."""
    special = [
        float(row["value"])
        for row in table("roof_clearances")
        if getattr(part, row["facet"]) is not None
    ]
    return max([limit("layout.roof-clearance").value, *special])


def _walkways(
    wish: RoofWish, origin_mm: tuple[float, float], size_mm: tuple[float, float]
) -> Iterator[Block]:
    for number, (from_mm, to_mm) in enumerate(wish.walkways_mm, 1):
        yield Block(
            name=f"walkway {number}",
            low_mm=(math.floor(min(from_mm, to_mm) - origin_mm[0]), 0),
            high_mm=(math.ceil(max(from_mm, to_mm) - origin_mm[0]), math.ceil(size_mm[1])),
        )


def _kinds(wish: RoofWish, size_mm: tuple[float, float]) -> Iterator[Kind]:
    for part in wish.panels:
        length_mm, width_mm = footprint_mm(part, wish.mount)
        room = int(size_mm[0] * size_mm[1] // (length_mm * width_mm))
        most = room if wish.most is None else min(room, wish.most)
        if most > 0:
            yield Kind(
                name=part.id,
                length_mm=length_mm,
                width_mm=width_mm,
                most=most,
                mass_g=math.ceil(1000 * mass_kg(part, wish.mount)),
            )


def footprint_mm(part: Part, mount: Part | None) -> tuple[int, int]:
    """Return what a panel and its mounting take of the roof, before they are turned. [mm]."""
    length_mm, width_mm, _ = part.body.size_mm
    if mount is not None and not is_bonded(part):
        length_mm = max(length_mm, mount.body.size_mm[0])
        width_mm = max(width_mm, mount.body.size_mm[1])
    return math.ceil(length_mm), math.ceil(width_mm)


def is_bonded(part: Part) -> bool:
    """Say whether a panel is glued to the roof and needs no mounting."""
    return part.solar_panel is not None and part.solar_panel.bonded


def mass_kg(part: Part, mount: Part | None) -> float:
    """Return the mass of a panel with its mounting."""
    rails_kg = 0.0 if mount is None or is_bonded(part) else mount.body.mass_kg
    return part.body.mass_kg + rails_kg


def face_mm(build: Build, part: Part, rack: str, mount: Part | None) -> float:
    """Return the height of a panel's upper face in the vehicle's axes.

    Parameters
    ----------
    build
        Whose roof it is.
    part
        The panel.
    rack
        Name of the rack that it stands on; empty where none.
    mount
        What it stands on elsewhere.
    """
    outside, carrier = build.vehicle.outside, build.fitted(rack) if rack else None
    if carrier is not None:
        under_mm = solid_of(carrier).bounds.high_mm[2]
    else:
        under_mm = outside.height_mm - outside.floor_height_mm
        if mount is not None and not is_bonded(part):
            under_mm += mount.body.size_mm[2]
    return under_mm + part.body.size_mm[2]


def _most_g(build: Build, replaced: Sequence[str]) -> int | None:
    """Return what the roof may still carry beside what stays on it."""
    most_kg = build.vehicle.limits.roof_moving_kg
    if most_kg is None:
        return None
    staying_kg = sum(
        fitted.mass_kg + fitted.fitting.contents_kg
        for fitted in build.fittings
        if fitted.fitting.mounting is Mounting.ROOF and fitted.name not in replaced
    )
    return math.floor(1000 * (most_kg - staying_kg))


def _rows(
    build: Build,
    wish: RoofWish,
    kinds: Sequence[Kind],
    origin_mm: tuple[float, float],
    size_mm: tuple[float, float],
) -> Iterator[tuple[tuple[str, bool], tuple[int, int]]]:
    """Yield for each kind and turn the places across the roof that its curve allows."""
    parts = {part.id: part for part in wish.panels}
    for kind in kinds:
        for turned in (False, True):
            across_mm = kind.length_mm if turned else kind.width_mm
            allowed = [
                y_mm
                for y_mm in range(math.floor(size_mm[1]) - across_mm + 1)
                if lies_well(build, parts[kind.name], wish.mount, origin_mm[1] + y_mm, across_mm)
            ]
            if allowed:
                yield (kind.name, turned), (allowed[0], allowed[-1])


def lies_well(
    build: Build, part: Part, mount: Part | None, low_mm: float, across_mm: float
) -> bool:
    """Say whether the roof's curve lets a panel lie at a place across it.

    Parameters
    ----------
    build
        Whose roof it is.
    part, mount
        The panel and what it stands on.
    low_mm, across_mm
        Its left edge and its size across the roof. [mm]

    Notes
    -----
    Its mounting, where it has one, is packed up to the curve; else the limits of the layout's
    rules hold: the gap under the edge of a rigid panel, the bend of a glued one.
    """
    bonded = is_bonded(part)
    if mount is not None and not bonded:
        return True
    outside, roof = build.vehicle.outside, build.vehicle.roof
    roof_mm = outside.height_mm - outside.floor_height_mm
    front_mm, top_mm = roof.x_from_mm, roof_mm + part.body.size_mm[2]
    lying = box(
        (front_mm, low_mm, roof_mm),
        (front_mm + part.body.size_mm[0], low_mm + across_mm, top_mm),
    )
    fit = panel_fit(
        body=solid(part.id, (lying,)), on="", bonded=bonded, roof=roof, roof_mm=roof_mm
    )
    if bonded:
        return fit.bow_share_frac <= limit("layout.panel-bend").value
    return fit.edge_gap_mm <= limit("layout.panel-edge-gap").value


def _stops_mm(
    kinds: Sequence[Kind],
    rows: dict[tuple[str, bool], tuple[int, int]],
    size_mm: tuple[float, float],
) -> tuple[int, ...]:
    """Return the lines across the field between which the roof's curve holds some kinds."""
    stops = set()
    for kind in kinds:
        for turned in (False, True):
            across_mm = kind.length_mm if turned else kind.width_mm
            if (kind.name, turned) in rows:
                low_mm, high_mm = rows[kind.name, turned]
                stops |= {low_mm, high_mm + across_mm}
    return tuple(sorted(stops - {0, math.floor(size_mm[1])}))


def present_breaches(build: Build, roof: RoofField) -> Iterator[str]:
    """Yield in which ways the panels that are there now do not keep to what the search keeps to.

    Parameters
    ----------
    build
        As it is.
    roof
        Its roof as a field.
    """
    field, origin_mm = roof.field, roof.origin_mm
    for fitted in build.fittings:
        if not is_roof_panel(fitted):
            continue
        bounds = solid_of(fitted).bounds
        low = [bounds.low_mm[axis] - origin_mm[axis] for axis in (0, 1)]
        high = [bounds.high_mm[axis] - origin_mm[axis] for axis in (0, 1)]
        if min(*low, field.length_mm - high[0], field.width_mm - high[1]) < 0:
            yield f"{fitted.name} is closer to the roof's edge"
        for name in roof.obstacles:
            if any(
                block.name == name
                and all(
                    low[axis] < block.high_mm[axis] and high[axis] > block.low_mm[axis]
                    for axis in (0, 1)
                )
                for block in field.blocks
            ):
                yield f"{fitted.name} is closer to {name}"
        mount = next(
            (each.part for each in build.fittings if each.name == fitted.fitting.on), None
        )
        across_mm = math.floor(high[1] - low[1])
        if not lies_well(build, fitted.part, mount, bounds.low_mm[1], across_mm):
            yield f"{fitted.name} stands further off the curved roof at its edge"
