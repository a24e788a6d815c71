"""Take the beds and the sleepers of a build to their subjects."""

from collections.abc import Iterator

from coachwright.layout.assumptions import assumed_mm
from coachwright.layout.beds import Lying, Mattress, Person, best_to_sit, sleepers
from coachwright.layout.clear_space import clear_above
from coachwright.layout.model_interior import Bedfellows, BedSpace, Sleeper
from coachwright.layout.people import percentile_mm
from coachwright.layout.room import Room
from coachwright.layout.solids import Box
from coachwright.layout.stage_living import outline
from coachwright.model.brief import Traveller
from coachwright.model.build import Fitted, Mounting
from coachwright.model.facets import Bed

_WHOLE_FRAC = 0.95
"""A body that is smaller than this share of its bed is not the made-up bed."""


def beds_of(room: Room) -> Iterator[tuple[Fitted, Bed]]:
    """Yield the beds of a build, those outside the shell too."""
    for fitted in room.placed:
        if fitted.part.bed is not None:
            yield fitted, fitted.part.bed


def lying(room: Room) -> tuple[Lying, ...]:
    """Return who sleeps in which bed."""
    mattresses = [
        Mattress(
            name=fitted.name,
            length_mm=bed.length_mm,
            width_mm=bed.width_mm,
            berths=bed.berths // bed.beds + (1 if number < bed.berths % bed.beds else 0),
        )
        for fitted, bed in beds_of(room)
        for number in range(bed.beds)
    ]
    return sleepers(
        mattresses=mattresses,
        people=[_person(t) for t in room.build.brief.travellers if t.berth_wanted],
    )


def _person(traveller: Traveller) -> Person:
    return Person(
        name=traveller.name,
        stature_mm=traveller.stature_mm,
        shoulders_mm=shoulders_mm(traveller),
    )


def shoulders_mm(traveller: Traveller) -> float:
    """Return the shoulder breadth of a traveller, where it was measured; else a broad one. [mm].

    Notes
    -----
    Not measured: that of 95 in 100 men; of a child in the proportion of its stature to that of
    the middle man, at most the same.
    """
    if traveller.shoulder_breadth_mm is not None:
        return traveller.shoulder_breadth_mm
    broad_mm = percentile_mm(dimension="shoulder breadth", sex="men", percentile="p95")
    middle_mm = percentile_mm(dimension="stature", sex="men", percentile="p50")
    return broad_mm * min(1.0, traveller.stature_mm / middle_mm) if traveller.child else broad_mm


def sleepers_of(found: tuple[Lying, ...]) -> Iterator[Sleeper]:
    """Yield each sleeper with the bed."""
    for each in found:
        for person in each.people:
            yield Sleeper(
                traveller=person.name,
                bed=each.mattress.name,
                stature_mm=person.stature_mm,
                length_mm=each.mattress.length_mm,
            )


def bedfellows_of(room: Room, found: tuple[Lying, ...]) -> Iterator[Bedfellows]:
    """Yield those who lie in one bed, each bed that has somebody in it."""
    measured = {t.name for t in room.build.brief.travellers if t.shoulder_breadth_mm is not None}
    for each in found:
        if each.people:
            yield Bedfellows(
                bed=each.mattress.name,
                travellers=tuple(person.name for person in each.people),
                shoulders_mm=sum(person.shoulders_mm for person in each.people),
                width_mm=each.mattress.width_mm,
                measured=all(person.name in measured for person in each.people),
            )


def made_up(room: Room, fitted: Fitted, bed: Bed) -> tuple[Box | None, str]:
    """Return the made-up bed as a box, or what is missing to know where it lies."""
    body = room.solids[fitted.name].bounds
    if fitted.fitting.mounting is Mounting.CEILING and bed.drop_mm <= 0:
        return None, f"how far {fitted.name} comes down for the night"
    sides_mm = sorted(body.high_mm[axis] - body.low_mm[axis] for axis in (0, 1))
    wanted_mm = sorted((bed.length_mm, bed.width_mm))
    smaller = any(
        side < _WHOLE_FRAC * wanted for side, wanted in zip(sides_mm, wanted_mm, strict=True)
    )
    outside = fitted.name not in {each.name for each in room.inside}
    if smaller or outside or fitted.part.seat is not None:
        return None, f"where {fitted.name} lies when it is made up"
    low, high = body.low_mm, body.high_mm
    return (
        Box(
            low_mm=(low[0], low[1], low[2] - bed.drop_mm),
            high_mm=(high[0], high[1], high[2] - bed.drop_mm),
        ),
        "",
    )


def bed_spaces_of(room: Room) -> Iterator[BedSpace]:
    """Yield the space above each bed."""
    boxes = {fitted.name: made_up(room, fitted, bed) for fitted, bed in beds_of(room)}
    for fitted, _ in beds_of(room):
        place, missing = boxes[fitted.name]
        if place is None:
            yield BedSpace(
                name=fitted.name,
                top_mm=None,
                sit_mm=None,
                least_mm=None,
                under="",
                least_under="",
                other_bed="",
                missing=missing,
            )
            continue
        yield _bed_space(room, fitted, place, _other_bed(fitted.name, place, boxes))


def _bed_space(room: Room, fitted: Fitted, place: Box, other_bed: str) -> BedSpace:
    top_mm = place.high_mm[2]
    bodies = room.around(fitted)
    if other_bed:
        bodies = (*bodies, room.solids[other_bed])
    patch = outline(place, fitted.name)
    sit = best_to_sit(
        mattress=patch,
        top_mm=top_mm,
        ceiling_mm=room.ceiling_mm,
        square_mm=assumed_mm("sitting-square"),
        bodies=bodies,
    )
    least = clear_above(footprint=patch, from_mm=top_mm, ceiling_mm=room.ceiling_mm, bodies=bodies)
    return BedSpace(
        name=fitted.name,
        top_mm=top_mm - room.floor_mm,
        sit_mm=sit.free_mm,
        least_mm=least.free_mm,
        under=sit.ended_by,
        least_under=least.ended_by,
        other_bed=other_bed,
        missing="",
    )


def _other_bed(name: str, place: Box, boxes: dict[str, tuple[Box | None, str]]) -> str:
    """Return a bed that lies over or under this one."""
    for other, (box, _) in boxes.items():
        if (
            other != name
            and box is not None
            and all(
                box.low_mm[axis] < place.high_mm[axis] and box.high_mm[axis] > place.low_mm[axis]
                for axis in (0, 1)
            )
        ):
            return other
    return ""
