"""What is aboard and comes and goes: water, gas, travellers, luggage, cargo."""

from collections.abc import Iterator

from coachwright.model.brief import Jurisdiction, Traveller
from coachwright.model.build import Build, Fitted
from coachwright.model.placement import Point, placed
from coachwright.reference import limit
from coachwright.units import told
from coachwright.weights import masses
from coachwright.weights.assumptions import assumption, limit_kg
from coachwright.weights.model import Group, MassItem
from coachwright.weights.places import luggage_place
from coachwright.weights.seats import driver_reference, driver_seat_names, seat_places

Held = tuple[str, Group, float]


def aboard_items(build: Build) -> Iterator[MassItem]:
    """Yield water, gas, people, luggage and cargo, each full or aboard."""
    for fitted in build.fittings:
        yield from _held_items(build, fitted)
    yield from _people(build)
    yield from _luggage(build)
    for cargo in build.brief.cargo:
        yield _item(
            build,
            f"cargo.{cargo.name}",
            Group.CARGO,
            cargo.mass_kg,
            cargo.centre_mm,
            label=cargo.name,
            tolerance_frac=cargo.tolerance_frac,
            source="the brief's cargo",
        )


def occupant_kg(build: Build) -> float:
    """Return the mass of a person in the statements of the build's jurisdiction."""
    if build.brief.jurisdiction is Jurisdiction.US:
        return limit_kg("weights.us-occupant")
    return limit_kg("weights.eu-occupant")


def _item(
    build: Build,
    name: str,
    group: Group,
    mass_kg: float,
    centre_mm: Point,
    *,
    label: str,
    tolerance_frac: float,
    systematic_frac: float = 0.0,
    pool: str = "",
    source: str,
) -> MassItem:
    return MassItem(
        name=name,
        label=label,
        group=group,
        mass_kg=mass_kg,
        tolerance_kg=mass_kg * tolerance_frac,
        systematic_frac=systematic_frac,
        pool=pool,
        x_mm=centre_mm[0],
        y_mm=centre_mm[1],
        z_mm=centre_mm[2],
        height_mm=centre_mm[2] + build.vehicle.outside.floor_height_mm,
        source=source,
    )


def _held(fitted: Fitted) -> Iterator[Held]:
    part = fitted.part
    if part.tank is not None:
        group = Group.FRESH if part.tank.contents == "fresh" else Group.WASTE
        yield "water", group, part.tank.volume_l
    if part.water_heater is not None:
        yield "hot-water", Group.HOT_WATER, part.water_heater.volume_l
    if part.toilet is not None:
        yield "flush-water", Group.FLUSH_WATER, part.toilet.flush_tank_l
        yield "waste", Group.WASTE, part.toilet.waste_l


def _held_items(build: Build, fitted: Fitted) -> Iterator[MassItem]:
    where = placed(fitted)
    middle = (
        (where.low_mm[0] + where.high_mm[0]) / 2,
        (where.low_mm[1] + where.high_mm[1]) / 2,
        (where.low_mm[2] + where.high_mm[2]) / 2,
    )
    density_kg_per_l = limit("weights.label-water").value
    for kind, group, volume_l in _held(fitted):
        if volume_l:
            yield _item(
                build,
                f"{fitted.name}.{kind}",
                group,
                masses.liquid_mass_kg(volume_l=volume_l, density_kg_per_l=density_kg_per_l),
                middle,
                label=f"{group.capitalize()} of {fitted.name}",
                tolerance_frac=assumption("tolerance-liquid").value,
                source=f"volume at {told(density_kg_per_l, 'kg/L')}, at the middle of the fitting",
            )
    if fitted.part.gas_store is not None:
        yield _item(
            build,
            f"{fitted.name}.gas",
            Group.GAS,
            fitted.part.gas_store.gas_kg,
            middle,
            label=f"Gas of {fitted.name}",
            tolerance_frac=assumption("tolerance-gas").value,
            source="the part's gas when full, at the middle of the fitting",
        )


def _people(build: Build) -> Iterator[MassItem]:
    places = {place.name: place.reference_mm for place in seat_places(build)}
    driver_seats = driver_seat_names(build.vehicle)
    driving = False
    for traveller in build.brief.travellers:
        if traveller.seat:
            drives = traveller.seat in driver_seats
            driving = driving or drives
            yield _person(build, traveller, places[traveller.seat], drives=drives)
    if not driving:
        yield _item(
            build,
            "traveller.unnamed-driver",
            Group.DRIVER,
            occupant_kg(build),
            driver_reference(build.vehicle),
            label="Driver, of the statements' mass",
            tolerance_frac=assumption("tolerance-person").value,
            source="nobody of the brief sits on the driver's seat",
        )


def _person(build: Build, traveller: Traveller, seat_mm: Point, *, drives: bool) -> MassItem:
    return _item(
        build,
        f"traveller.{traveller.name}",
        Group.DRIVER if drives else Group.PASSENGER,
        traveller.mass_kg,
        seat_mm,
        label=traveller.name,
        tolerance_frac=assumption("tolerance-person").value,
        source="the brief's body mass, at the reference point of the seat",
    )


def luggage_point(build: Build) -> Point:
    """Return where luggage is taken to be: the middle of the rear third of the living floor."""
    shell = build.vehicle.shell
    where = luggage_place(
        cab_line_mm=shell.cab_line_mm,
        rear_mm=shell.rear_mm,
        reach_frac=assumption("luggage-reach").value,
        height_mm=assumption("luggage-height").value,
    )
    return (where.x_mm, where.y_mm, where.z_mm)


def _luggage(build: Build) -> Iterator[MassItem]:
    for traveller in build.brief.travellers:
        if traveller.luggage_kg:
            yield _item(
                build,
                f"luggage.{traveller.name}",
                Group.LUGGAGE,
                traveller.luggage_kg,
                luggage_point(build),
                label=f"Luggage of {traveller.name}",
                tolerance_frac=assumption("tolerance-luggage").value,
                systematic_frac=assumption("systematic-packing").value,
                pool="packing",
                source="the brief's luggage, at the middle of the rear third of the floor",
            )
