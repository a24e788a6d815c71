"""Take what hangs outside apart: roof, doors, hitch, sides, carriers, ladders."""

from collections.abc import Iterator

from coachwright import reference
from coachwright.model.build import Build, Fitted, Mounting
from coachwright.model.facets import RoofRack
from coachwright.model.placement import placed
from coachwright.model.vehicle import LoadLimits
from coachwright.road.carried import (
    CarriedItem,
    carried_sum,
    hinge_moment,
    pulse_force,
    standing_on,
)
from coachwright.road.model import (
    CarrierLoad,
    CrashForce,
    DoorMoment,
    LadderState,
    ZoneLoad,
)
from coachwright.road.stage_outside import mountings

_CARRIERS = ("roof_rack", "rear_door_carrier", "hitch_carrier", "slide_out")


def zone_loads(build: Build) -> tuple[ZoneLoad, ...]:
    """Return what hangs on the roof, the doors, the hitch and the sides."""
    limits = build.vehicle.limits
    roof = (*_in(build, Mounting.ROOF), *_roof_cargo(build))
    sides = _in(build, Mounting.SIDE)
    zones = [
        _zone("roof", roof, limits.roof_moving_kg),
        _zone("rear door left", _in(build, Mounting.REAR_DOOR_LEFT), limits.rear_door_kg),
        _zone("rear door right", _in(build, Mounting.REAR_DOOR_RIGHT), limits.rear_door_kg),
        _zone("hitch", _in(build, Mounting.HITCH), limits.hitch_kg),
        _zone("side left", tuple(item for item in sides if item.y_mm < 0), limits.side_kg),
        _zone("side right", tuple(item for item in sides if item.y_mm >= 0), limits.side_kg),
    ]
    if any(rack.standing_limit_kg is not None for _, rack in _racks(build)):
        on_deck = (*roof, _person(build))
        zones.append(
            _zone(
                "roof standing",
                on_deck,
                limits.roof_standing_kg,
                person_kg=standing_person_kg(build),
            )
        )
    return tuple(zones)


def door_moments(build: Build, zones: tuple[ZoneLoad, ...]) -> tuple[DoorMoment, ...]:
    """Return the moment about the hinge line of each rear door's load."""
    hinge_x_mm = build.vehicle.shell.rear_mm
    hinge_y_mm = build.vehicle.rear_end.door_hinge_y_mm
    hinges = {"rear door left": -hinge_y_mm, "rear door right": hinge_y_mm}
    return tuple(
        _door_moment(zone, hinge_x_mm, hinges[zone.zone], build.vehicle.limits)
        for zone in zones
        if zone.zone in hinges
    )


def _door_moment(
    zone: ZoneLoad, hinge_x_mm: float, hinge_y_mm: float, limits: LoadLimits
) -> DoorMoment:
    total = carried_sum(items=zone.items)
    return DoorMoment(
        zone=zone.zone,
        load=hinge_moment(
            mass_kg=total.mass_kg,
            x_mm=total.x_mm if zone.items else hinge_x_mm,
            y_mm=total.y_mm if zone.items else hinge_y_mm,
            hinge_x_mm=hinge_x_mm,
            hinge_y_mm=hinge_y_mm,
        ),
        limit_n_m=limits.rear_door_moment_n_m,
    )


def carrier_loads(build: Build) -> tuple[CarrierLoad, ...]:
    """Return what stands on each rack, door carrier, hitch carrier and slide-out tray."""
    return tuple(
        _carrier(build, fitted, kind) for kind in _CARRIERS for fitted in build.having(kind)
    )


def ladder_states(build: Build) -> tuple[LadderState, ...]:
    """Return the ladders and steps."""
    return tuple(
        LadderState(
            name=fitted.name,
            step=(
                fitted.part.outside_device is not None
                and fitted.part.outside_device.kind == "step"
            ),
            first_rung_mm=fitted.part.ladder.first_rung_mm,
            rung_spacing_mm=fitted.part.ladder.rung_spacing_mm,
            clear_width_mm=fitted.part.ladder.clear_width_mm,
            limit_kg=fitted.part.ladder.limit_kg,
            person_kg=standing_person_kg(build),
        )
        for fitted in build.having("ladder")
        if fitted.part.ladder is not None
    )


def crash_forces(zones: tuple[ZoneLoad, ...]) -> tuple[CrashForce, ...]:
    """Return the force of the roof load in each published city-crash pulse."""
    (roof,) = (zone for zone in zones if zone.zone == "roof")
    pulses = (reference.limit("road.crash-pulse-iso"), reference.limit("road.crash-pulse-din"))
    return tuple(
        CrashForce(
            source=pulse.source.key,
            pulse_factor=pulse.value,
            pulse=pulse_force(mass_kg=roof.load_kg, pulse_factor=pulse.value),
        )
        for pulse in pulses
        if roof.items
    )


def standing_person_kg(build: Build) -> float:
    """Return the mass of the person on a deck or ladder: the heaviest, at least the standard."""
    return max(
        reference.limit("road.standing-person").value,
        *(traveller.mass_kg for traveller in build.brief.travellers),
    )


def _person(build: Build) -> CarriedItem:
    return CarriedItem(
        name="one person standing", mass_kg=standing_person_kg(build), x_mm=0.0, y_mm=0.0
    )


def _zone(
    name: str, items: tuple[CarriedItem, ...], limit_kg: float | None, *, person_kg: float = 0.0
) -> ZoneLoad:
    total = carried_sum(items=items)
    return ZoneLoad(
        zone=name,
        load_kg=total.mass_kg,
        limit_kg=limit_kg,
        items=items,
        person_kg=person_kg,
        working=total.working,
    )


def _in(build: Build, mounting: Mounting) -> tuple[CarriedItem, ...]:
    return tuple(
        _item(fitted) for fitted in build.fittings if mounting in mountings(build, fitted)
    )


def _roof_cargo(build: Build) -> Iterator[CarriedItem]:
    outside = build.vehicle.outside
    roof_z_mm = outside.height_mm - outside.floor_height_mm
    for cargo in build.brief.cargo:
        if cargo.centre_mm[2] >= roof_z_mm:
            yield CarriedItem(
                name=cargo.name,
                mass_kg=cargo.mass_kg,
                x_mm=cargo.centre_mm[0],
                y_mm=cargo.centre_mm[1],
            )


def _item(fitted: Fitted) -> CarriedItem:
    centre = placed(fitted).centre_mm
    return CarriedItem(name=fitted.name, mass_kg=_full_kg(fitted), x_mm=centre[0], y_mm=centre[1])


def _full_kg(fitted: Fitted) -> float:
    """Return the mass with contents, and with water and gas when full."""
    part = fitted.part
    water_l = sum(
        (
            0.0 if part.tank is None else part.tank.volume_l,
            0.0 if part.water_heater is None else part.water_heater.volume_l,
            0.0 if part.toilet is None else part.toilet.flush_tank_l,
        )
    )
    gas_kg = 0.0 if part.gas_store is None else part.gas_store.gas_kg
    water_kg = water_l * reference.limit("road.water-density").value
    return fitted.mass_kg + fitted.fitting.contents_kg + water_kg + gas_kg


def _racks(build: Build) -> Iterator[tuple[Fitted, RoofRack]]:
    for fitted in build.having("roof_rack"):
        if fitted.part.roof_rack is not None:
            yield fitted, fitted.part.roof_rack


def _carrier(build: Build, fitted: Fitted, kind: str) -> CarrierLoad:
    carried_by = {each.name: each.fitting.on for each in build.fittings}
    names = set(standing_on(carrier=fitted.name, carried_by=carried_by))
    contents = CarriedItem(
        name=f"contents of {fitted.name}",
        mass_kg=fitted.fitting.contents_kg,
        x_mm=0.0,
        y_mm=0.0,
    )
    items = tuple(_item(each) for each in build.fittings if each.name in names)
    total = carried_sum(items=(*items, contents) if contents.mass_kg else items)
    rack = fitted.part.roof_rack if kind == "roof_rack" else None
    standing_limit_kg = None if rack is None else rack.standing_limit_kg
    return CarrierLoad(
        carrier=fitted.name,
        kind=kind,
        load_kg=total.mass_kg,
        limit_kg=getattr(fitted.part, kind).load_limit_kg,
        standing_kg=None
        if standing_limit_kg is None
        else carried_sum(items=(*items, _person(build))).mass_kg,
        standing_limit_kg=standing_limit_kg,
        working=total.working,
    )
