"""Road: tyres, speedometer, overall size, angles, stability, and what hangs outside."""

from collections.abc import Callable, Iterator

from coachwright.actions.benching import OnBench
from coachwright.actions.reading import weight_sheet
from coachwright.model.build import Build
from coachwright.papers.table import Pair, Table
from coachwright.papers.wording import NONE, part_and_position, show, spoken, words_of
from coachwright.road.model import Road
from coachwright.web.parts import sheet
from coachwright.web.parts.plain import box
from coachwright.web.parts.working import figures
from coachwright.web.state import Here, on_change

Said = Callable[[float | None, str], str]
"""Shows a value in a unit, in the reader's system."""


def create(here: Here) -> None:
    """Fill the page."""
    sheet.styled()
    room = box("stack")

    def draw(work: OnBench) -> None:
        room.clear()
        with room:
            _fill(work, here.system)

    on_change(here, draw)


def _fill(work: OnBench, system: str) -> None:
    view = weight_sheet(work.assessment, system)
    build, road = work.build, work.assessment.road

    def said(value: float | None, unit: str) -> str:
        return show(value, unit, system)

    sheet.heading("Road", "What it stands on, how large it is, and what hangs on the outside.")
    with sheet.section("Size and angles"):
        sheet.pairs((*_size(road, said), *_angles(build, road, said)))
    sheet.table(view.tyres)
    with sheet.section("Tyres, speedometer, spare"):
        sheet.pairs((*_tyres(road, said), *_speed(road, said), _spare(road, said)))
    sheet.table(_zones(build, road, said), empty="Nothing is carried outside.")
    sheet.table(_doors(road, said))
    sheet.table(_carriers(build, road, said))
    sheet.table(_ladders(build, road, said))
    figures(build, road.figures, system, "Every figure, with its working")
    sheet.notes(spoken(build, note) for note in road.notes)
    sheet.cautions(view.frame)


def _size(road: Road, said: Said) -> Iterator[Pair]:
    size = road.size
    for label, all_of_it, counted in (
        ("Overall length", said(size.length_mm, "mm"), said(size.counted_length_mm, "mm")),
        ("Overall width", said(size.width_mm, "mm"), said(size.counted_width_mm, "mm")),
        ("Overall height", said(size.height_mm, "mm"), said(size.counted_height_mm, "mm")),
    ):
        counts = f"the rules count {counted}" if counted != all_of_it else ""
        yield Pair(label=label, value=all_of_it, note=counts)
    yield Pair(
        label="Rear overhang",
        value=said(size.rear_overhang_mm, "mm"),
        note=f"{said(size.rear_overhang_frac, 'frac')} of the wheelbase",
    )


def _angles(build: Build, road: Road, said: Said) -> Iterator[Pair]:
    angles, standing = road.angles, road.stability
    for label, found in (
        ("Departure angle, everything fitted", angles.equipped),
        ("Departure angle, vehicle alone", angles.alone),
        ("Ramp angle of what hangs between the axles", angles.between),
    ):
        if found is None:
            yield Pair(label=label, value=NONE, note="nothing is there to limit it")
            continue
        yield Pair(
            label=label,
            value=said(found.angle.exact_deg, "deg"),
            note=f"at {part_and_position(build, found.point.of)}, "
            f"{said(found.point.height_mm, 'mm')} above the ground",
        )
    yield Pair(
        label="Static stability factor, travelling",
        value=said(standing.travelling.stability_ratio, "1"),
        note=f"at least {said(standing.low_ratio, '1')} (95 %); tips, standing still, at "
        f"{said(standing.travelling.tip_angle_deg, 'deg')}",
    )


def _tyres(road: Road, said: Said) -> Iterator[Pair]:
    tyres = road.tyres
    yield Pair(
        label="Tyres",
        value=tyres.size,
        note=f"{tyres.kind}; outside diameter {said(tyres.dimensions.diameter_mm, 'mm')}",
    )
    yield Pair(
        label="Room left in the wheel arch",
        value=said(tyres.clearance_left_mm, "mm"),
        note=f"largest that clears {said(tyres.largest_diameter_mm, 'mm')}",
    )
    yield Pair(
        label="The vehicle stands higher by",
        value=said(tyres.change.ride_change_mm, "mm"),
        note="than on the placard's tyres",
    )
    yield Pair(
        label="Speed symbol",
        value=f"{tyres.speed_symbol}, {said(tyres.top_speed_km_per_h, 'km/h')}",
    )


def _speed(road: Road, said: Said) -> Iterator[Pair]:
    found = road.speedometer
    yield Pair(
        label=f"True speed where {said(found.at_100.shown_km_per_h, 'km/h')} is shown",
        value=said(found.at_100.true_km_per_h, "km/h"),
        note="" if found.known else "the speedometer is taken as exact on the placard's tyres",
    )


def _spare(road: Road, said: Said) -> Pair:
    spare = road.spare
    if spare.diameter_mm is None:
        return Pair(label="Spare wheel", value="none")
    return Pair(
        label="Spare wheel",
        value=spare.size,
        note=f"{'full size, ' if spare.full_size else ''}{said(spare.diameter_mm, 'mm')}",
    )


def _limit(value_kg: float | None, said: Said) -> str:
    return "not stated" if value_kg is None else said(value_kg, "kg")


def _zones(build: Build, road: Road, said: Said) -> Table:
    return Table(
        heading="What hangs on each place",
        names=("Place", "Load", "Allowed by the maker", "What"),
        rows=tuple(
            (
                words_of(zone.zone).capitalize(),
                said(zone.load_kg, "kg"),
                _limit(zone.limit_kg, said),
                ", ".join(
                    f"{part_and_position(build, item.name)} {said(item.mass_kg, 'kg')}"
                    for item in zone.items
                )
                or NONE,
            )
            for zone in road.zones
        ),
    )


def _doors(road: Road, said: Said) -> Table:
    return Table(
        heading="Rear doors about their hinges",
        names=("Door", "Moment", "Arm of the load", "Allowed by the maker"),
        rows=tuple(
            (
                words_of(door.zone).capitalize(),
                said(door.load.moment_n_m, "N m"),
                said(door.load.arm_mm, "mm"),
                "not stated" if door.limit_n_m is None else said(door.limit_n_m, "N m"),
            )
            for door in road.door_moments
        ),
    )


def _carriers(build: Build, road: Road, said: Said) -> Table:
    return Table(
        heading="Carriers and racks",
        names=("Carrier", "Kind", "Load", "Allowed", "With a person on it", "Allowed standing"),
        rows=tuple(
            (
                part_and_position(build, each.carrier),
                words_of(each.kind),
                said(each.load_kg, "kg"),
                said(each.limit_kg, "kg"),
                NONE if each.standing_kg is None else said(each.standing_kg, "kg"),
                NONE if each.standing_kg is None else _limit(each.standing_limit_kg, said),
            )
            for each in road.carriers
        ),
    )


def _ladders(build: Build, road: Road, said: Said) -> Table:
    return Table(
        heading="Ladders and steps",
        names=("Which", "First rung above ground", "Between rungs", "Clear width", "Allowed"),
        rows=tuple(
            (
                part_and_position(build, each.name),
                said(each.first_rung_mm, "mm"),
                NONE if each.step else said(each.rung_spacing_mm, "mm"),
                said(each.clear_width_mm, "mm"),
                _limit(each.limit_kg, said),
            )
            for each in road.ladders
        ),
    )
