"""Take the outside of a build apart and put the results together."""

from collections.abc import Iterator

from coachwright import reference
from coachwright.layout.figures_outside import outside_figures
from coachwright.layout.kin import REAR_DOORS
from coachwright.layout.model_outside import (
    BesideDoor,
    LadderPlace,
    Outside,
    OutsideSurface,
    Tray,
    UnderPlace,
)
from coachwright.layout.outside_groups import Groups, groups_of
from coachwright.layout.roof_plan import roof_covers, roof_gaps
from coachwright.layout.sides import beside_door
from coachwright.layout.slide_outs import tray_out
from coachwright.layout.stage_rear import covered, door_depth_mm, door_places, hung, swings
from coachwright.layout.stage_roof import decks, higher, on_roof, panels, roof_places
from coachwright.layout.standing import Standing
from coachwright.layout.underbody import under_place
from coachwright.model.build import INSIDE, Fitted, Mounting

_TABLES_OUTSIDE = (*REAR_DOORS, Mounting.SIDE, Mounting.HITCH)


def outside_of(here: Standing) -> Outside:
    """Return what is fitted outside, and whether it gets in the way.

    Parameters
    ----------
    here
        What stands where.
    """
    build, build_up, groups = here.build, here.build_up, groups_of(here)
    roof = groups.bodies(on_roof(groups))
    behind = tuple(hung(groups))
    trays = tuple(_trays(groups))
    figures = outside_figures(
        build=build, hung=behind, trays=trays, doors_mm=door_depth_mm(groups), build_up=build_up
    )
    return Outside(
        roof=tuple(roof_places(groups)),
        covers=roof_covers(bodies=roof, related=here.kin.related),
        gaps=roof_gaps(bodies=roof, related=here.kin.related),
        decks=tuple(decks(groups)),
        panels=tuple(panels(groups)),
        higher=tuple(higher(groups)),
        door_places=tuple(door_places(groups)),
        covered=tuple(covered(groups)),
        swings=tuple(swings(groups)),
        hung=behind,
        under=tuple(_under(groups)),
        ladders=tuple(_ladders(groups)),
        trays=trays,
        beside_doors=tuple(_beside_doors(groups)),
        surfaces=tuple(_surfaces(groups)),
        figures=figures,
    )


def _under(groups: Groups) -> Iterator[UnderPlace]:
    vehicle = groups.build.vehicle
    zones = tuple(
        zone.model_copy(update={"use": "free"})
        if zone.use == "spare wheel" and groups.build.vehicle_spare_removed
        else zone
        for zone in vehicle.underbody
    )
    for fitted in groups.at(Mounting.UNDERBODY):
        if fitted.part.ladder is None:
            yield under_place(
                body=groups.solids[fitted.name],
                zones=zones,
                floor_height_mm=vehicle.outside.floor_height_mm,
                slack_mm=groups.here.slack_mm,
            )


def _ladders(groups: Groups) -> Iterator[LadderPlace]:
    """Yield the ladders with more than one rung that are fixed outside; steps are none."""
    outside = groups.build.vehicle.outside
    for fitted in groups.at(Mounting.SIDE, *REAR_DOORS):
        ladder = fitted.part.ladder
        if ladder is not None and ladder.rung_spacing_mm is not None:
            space = groups.solids[fitted.name].bounds
            yield LadderPlace(
                name=fitted.name,
                bottom_mm=space.low_mm[2] + outside.floor_height_mm,
                first_rung_mm=ladder.first_rung_mm,
                below_roof_mm=outside.height_mm - outside.floor_height_mm - space.high_mm[2],
                clear_width_mm=ladder.clear_width_mm,
            )


def _trays(groups: Groups) -> Iterator[Tray]:
    for fitted in groups.here.placed:
        slide = fitted.part.slide_out
        if slide is None:
            continue
        load = [
            each
            for each in groups.here.placed
            if fitted.name == each.fitting.within
            or fitted.name in groups.here.kin.carriers[each.name]
        ]
        yield tray_out(
            body=groups.solids[fitted.name],
            load=groups.bodies(tuple(load)),
            load_kg=sum(each.mass_kg + each.fitting.contents_kg for each in load),
            travel_mm=slide.travel_mm,
            turn_deg=fitted.fitting.turn_deg,
            others=[
                groups.solids[other.name]
                for other in groups.here.placed
                if other not in load and _may_meet(groups, fitted, other)
            ],
            vehicle=groups.build.vehicle,
            slack_mm=groups.here.slack_mm,
        )


def _may_meet(groups: Groups, tray: Fitted, other: Fitted) -> bool:
    """Say whether a tray may meet a fitting that stands still.

    What hangs on an open door is out of the way; what stands inside is looked at with the access
    zones, where the tray's record has one for its travel.
    """
    if tray.name == other.name or other.name in groups.here.kin.door:
        return False
    if groups.here.kin.related(tray.name, other.name):
        return False
    zones = tray.part.access.zones if tray.part.access else ()
    stated = any(zone.purpose == "slide-out travel" for zone in zones)
    return not (stated and other.fitting.mounting in INSIDE)


def _beside_doors(groups: Groups) -> Iterator[BesideDoor]:
    vehicle = groups.build.vehicle
    doors = [each for each in vehicle.apertures if each.wall != "rear"]
    for fitted in groups.at(Mounting.SIDE, Mounting.WALL):
        opening = fitted.part.opening
        if fitted.fitting.mounting is Mounting.WALL and opening is None:
            continue
        body = groups.solids[fitted.name]
        side = "right" if body.bounds.low_mm[1] + body.bounds.high_mm[1] > 0 else "left"
        for door in doors:
            if door.wall == side:
                yield beside_door(
                    body=body,
                    door=door,
                    half_width_mm=vehicle.outside.width_mm / 2,
                    leaf_mm=reference.limit("layout.sliding-door-margin").value,
                    opens=opening is not None and opening.kind == "window" and opening.opens,
                )


def _surfaces(groups: Groups) -> Iterator[OutsideSurface]:
    """Yield tables fixed outside, at the height that they state, and worktops that slide out."""
    floor_height_mm = groups.build.vehicle.outside.floor_height_mm
    for fitted in groups.at(*_TABLES_OUTSIDE):
        if fitted.part.table is not None:
            yield OutsideSurface(name=fitted.name, height_mm=fitted.part.table.height_mm)
    for fitted in groups.here.placed:
        if fitted.part.slide_out is not None and fitted.part.carcass is not None:
            top_mm = groups.solids[fitted.name].bounds.high_mm[2]
            yield OutsideSurface(name=fitted.name, height_mm=top_mm + floor_height_mm)
