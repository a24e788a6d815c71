"""Take a build apart into masses: the base vehicle, what is fitted, what is aboard."""

from collections.abc import Iterator

from coachwright.model.build import Build, FinishLayer, Fitted, Mounting
from coachwright.model.placement import Point, placed
from coachwright.model.vehicle import BaseVehicle, UnderbodyZone
from coachwright.weights import masses
from coachwright.weights.aboard import aboard_items
from coachwright.weights.assumptions import assumption
from coachwright.weights.model import Group, MassItem
from coachwright.weights.moments import PointMass
from coachwright.weights.places import DoorArea, Place, surface_place
from coachwright.weights.seats import driver_reference

CATALOGUE_POOL = "catalogue"
"""Declared and estimated masses err together in part."""


def items(build: Build) -> tuple[MassItem, ...]:
    """Return every mass of a build, full or aboard."""
    return (
        *_base_items(build.vehicle),
        *_spare_items(build),
        *_wheel_items(build),
        *(item for fitted in build.fittings for item in _fitting_items(build, fitted)),
        *_finish_items(build),
        *aboard_items(build),
    )


def wheel_sets(build: Build) -> tuple[Fitted, ...]:
    """Return the fittings that replace the vehicle's wheels; only the first one is counted."""
    return tuple(f for f in build.having("tyre") if f.fitting.mounting is Mounting.WHEELS)


def _base_items(vehicle: BaseVehicle) -> Iterator[MassItem]:
    full_kg = masses.liquid_mass_kg(
        volume_l=vehicle.fuel.tank_l, density_kg_per_l=vehicle.fuel.density_kg_per_l
    )
    yield _dry_item(vehicle, full_kg * vehicle.kerb.fuel_frac)
    x_mm, y_mm, z_mm = vehicle.fuel.centre_mm
    yield MassItem(
        name="vehicle.fuel",
        label="Fuel",
        group=Group.FUEL,
        mass_kg=full_kg,
        tolerance_kg=full_kg * assumption("tolerance-liquid").value,
        x_mm=x_mm,
        y_mm=y_mm,
        z_mm=z_mm,
        height_mm=z_mm + vehicle.outside.floor_height_mm,
        source="tank volume times density",
    )


def _dry_item(vehicle: BaseVehicle, fuel_kg: float) -> MassItem:
    kerb = vehicle.kerb
    dry = masses.dry_vehicle(
        kerb_front_kg=kerb.front_kg,
        kerb_rear_kg=kerb.rear_kg,
        cg_y_mm=kerb.cg_y_mm,
        cg_height_mm=kerb.cg_height_mm,
        wheelbase_mm=vehicle.outside.wheelbase_mm,
        fuel=_included(vehicle, fuel_kg, vehicle.fuel.centre_mm),
        driver=_included(vehicle, kerb.driver_kg, driver_reference(vehicle)),
    )
    return MassItem(
        name="vehicle.dry",
        label="Base vehicle, dry",
        group=Group.BASE,
        mass_kg=dry.mass_kg,
        tolerance_kg=kerb.tolerance_frac * (kerb.front_kg + kerb.rear_kg),
        x_mm=dry.x_mm,
        y_mm=dry.y_mm,
        z_mm=dry.height_mm - vehicle.outside.floor_height_mm,
        height_mm=dry.height_mm,
        x_tolerance_mm=assumption("base-length").value,
        height_tolerance_mm=assumption("base-height").value,
        source="kerb figures less the fuel and driver they include",
    )


def spare_zone(vehicle: BaseVehicle) -> UnderbodyZone | None:
    """Return the place under the floor that is for the vehicle's own spare wheel."""
    return next((zone for zone in vehicle.underbody if zone.use == "spare wheel"), None)


def _spare_items(build: Build) -> Iterator[MassItem]:
    """Yield the vehicle's own spare wheel as what is gone, where it is taken off."""
    vehicle, zone = build.vehicle, spare_zone(build.vehicle)
    if not build.vehicle_spare_removed:
        return
    if zone is not None:
        x_mm, y_mm, z_mm = _middle(zone.from_mm, zone.to_mm)
    else:
        size = vehicle.tyre.size
        height_mm = masses.wheel_centre_mm(
            rim_mm=size.rim_mm, width_mm=size.width_mm, aspect_frac=size.aspect_frac
        )
        x_mm, y_mm = vehicle.outside.wheelbase_mm, 0.0
        z_mm = height_mm - vehicle.outside.floor_height_mm
    yield MassItem(
        name="vehicle.spare-removed",
        label="The vehicle's own spare wheel, taken off",
        group=Group.BASE,
        mass_kg=-vehicle.tyre.wheel_mass_kg,
        tolerance_kg=0.0,
        x_mm=x_mm,
        y_mm=y_mm,
        z_mm=z_mm,
        height_mm=z_mm + vehicle.outside.floor_height_mm,
        source="one wheel with its tyre, at the middle of its place under the floor"
        if zone is not None
        else "one wheel with its tyre, taken to have hung at the rear axle",
    )


def _included(vehicle: BaseVehicle, mass_kg: float, at_mm: Point) -> PointMass:
    """Return what the kerb figures include, its height above the ground."""
    x_mm, y_mm, z_mm = at_mm
    return PointMass(
        mass_kg=mass_kg,
        x_mm=x_mm,
        y_mm=y_mm,
        height_mm=z_mm + vehicle.outside.floor_height_mm,
    )


def _wheel_items(build: Build) -> Iterator[MassItem]:
    vehicle = build.vehicle
    floor_mm = vehicle.outside.floor_height_mm
    for fitted in wheel_sets(build)[:1]:
        tyre = fitted.part.tyre
        if tyre is None:
            continue
        height_mm = masses.wheel_centre_mm(
            rim_mm=tyre.size.rim_mm,
            width_mm=tyre.size.width_mm,
            aspect_frac=tyre.size.aspect_frac,
        )
        rear_wheels = 4 if vehicle.tyre.dual_rear else 2
        tolerance, pool = _tolerance(fitted)
        for axle, wheels, x_mm in (
            ("front", 2, 0.0),
            ("rear", rear_wheels, vehicle.outside.wheelbase_mm),
        ):
            yield MassItem(
                name=f"{fitted.name}.{axle}-axle",
                label=f"{fitted.part.name}, {axle} axle, instead of the standard wheels",
                group=Group.WHEELS,
                mass_kg=masses.exchanged_wheels_kg(
                    new_kg=fitted.mass_kg, old_kg=vehicle.tyre.wheel_mass_kg, wheels=wheels
                ),
                tolerance_kg=wheels * tolerance.tolerance_kg,
                systematic_frac=tolerance.systematic_frac,
                pool=pool,
                x_mm=x_mm,
                y_mm=0.0,
                z_mm=height_mm - floor_mm,
                height_mm=height_mm,
                source="difference of one wheel with its tyre times the wheels of the axle",
            )


def _tolerance(fitted: Fitted) -> tuple[masses.Tolerance, str]:
    body = fitted.part.body
    kind = "estimated" if body.source == "estimated" else "declared"
    measured = fitted.fitting.measured_mass_kg is not None
    weighed = measured or body.source == "weighed"
    tolerance = masses.fitting_tolerance(
        mass_kg=fitted.mass_kg,
        declared_frac=body.mass_tolerance_frac,
        measured=measured,
        measured_frac=assumption("tolerance-measured").value,
        systematic_frac=0.0 if weighed else assumption(f"systematic-{kind}").value,
    )
    return tolerance, "" if weighed else CATALOGUE_POOL


def _fitting_items(build: Build, fitted: Fitted) -> Iterator[MassItem]:
    if fitted in wheel_sets(build):
        return
    floor_mm = build.vehicle.outside.floor_height_mm
    where = placed(fitted)
    x_mm, y_mm, z_mm = where.centre_mm
    tolerance, pool = _tolerance(fitted)
    measured = fitted.fitting.measured_mass_kg is not None
    yield MassItem(
        name=fitted.name,
        label=fitted.part.name,
        group=Group.FITTING,
        mass_kg=fitted.mass_kg,
        tolerance_kg=tolerance.tolerance_kg,
        systematic_frac=tolerance.systematic_frac,
        pool=pool,
        x_mm=x_mm,
        y_mm=y_mm,
        z_mm=z_mm,
        height_mm=z_mm + floor_mm,
        source="measured by the shop" if measured else f"catalogue, {fitted.part.body.source}",
    )
    if fitted.fitting.contents_kg:
        contents_kg = fitted.fitting.contents_kg
        middle = _middle(where.low_mm, where.high_mm)
        yield MassItem(
            name=f"{fitted.name}.contents",
            label=f"Contents of {fitted.name}",
            group=Group.CONTENTS,
            mass_kg=contents_kg,
            tolerance_kg=contents_kg * assumption("tolerance-contents").value,
            systematic_frac=assumption("systematic-packing").value,
            pool="packing",
            x_mm=middle[0],
            y_mm=middle[1],
            z_mm=middle[2],
            height_mm=middle[2] + floor_mm,
            source="the build's contents, at the middle of the fitting",
        )


def _middle(low_mm: Point, high_mm: Point) -> Point:
    return (
        (low_mm[0] + high_mm[0]) / 2,
        (low_mm[1] + high_mm[1]) / 2,
        (low_mm[2] + high_mm[2]) / 2,
    )


def _doors(vehicle: BaseVehicle) -> tuple[DoorArea, ...]:
    found: list[DoorArea] = []
    for aperture in vehicle.apertures:
        middle_mm = aperture.from_mm + aperture.clear_width_mm / 2
        side_mm = vehicle.shell.half_widths[0].half_width_mm
        x_mm, y_mm = {
            "left": (middle_mm, -side_mm),
            "right": (middle_mm, side_mm),
            "rear": (vehicle.shell.rear_mm, middle_mm),
        }[aperture.wall]
        z_mm = aperture.sill_mm + aperture.clear_height_mm / 2
        area_m2 = aperture.clear_width_mm * aperture.clear_height_mm * 1e-6
        found.append(DoorArea(middle=Place(x_mm=x_mm, y_mm=y_mm, z_mm=z_mm), area_m2=area_m2))
    return tuple(found)


def _finish_items(build: Build) -> Iterator[MassItem]:
    for index, layer in enumerate(build.finishes, start=1):
        yield _finish_item(build.vehicle, layer, index)


def _finish_item(vehicle: BaseVehicle, layer: FinishLayer, index: int) -> MassItem:
    finish, part = layer.finish, layer.part
    sheet = part.insulation or part.lining
    thickness_mm = finish.thickness_mm
    if thickness_mm is None:
        thickness_mm = sheet.thickness_mm if sheet else 0.0
    mass_kg = masses.sheet_mass_kg(
        area_m2=finish.area_m2,
        thickness_mm=thickness_mm,
        density_kg_per_l=sheet.density_kg_per_l if sheet else 0.0,
    )
    where = surface_place(
        surface=finish.surface,
        cab_line_mm=vehicle.shell.cab_line_mm,
        rear_mm=vehicle.shell.rear_mm,
        ceiling_mm=vehicle.shell.ceiling_mm,
        doors=_doors(vehicle),
    )
    kind = "estimated" if part.body.source == "estimated" else "declared"
    return MassItem(
        name=f"finish.{index}",
        label=f"{part.name}, {finish.surface}",
        group=Group.FINISH,
        mass_kg=mass_kg,
        tolerance_kg=mass_kg * part.body.mass_tolerance_frac,
        systematic_frac=assumption(f"systematic-{kind}").value,
        pool=CATALOGUE_POOL,
        x_mm=where.x_mm,
        y_mm=where.y_mm,
        z_mm=where.z_mm,
        height_mm=where.z_mm + vehicle.outside.floor_height_mm,
        source="area times thickness times density, at the middle of the surface",
    )
