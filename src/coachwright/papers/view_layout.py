"""The layout sheet: ways, headroom, beds, seats, zones given up, in which order parts come in."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.assess import Assessment
from coachwright.layout.model import Aisle, Layout, PlacedZone
from coachwright.layout.model_interior import BedSpace, LoadingStep, SeatSpace, ToiletSpace
from coachwright.model.build import Build
from coachwright.model.working import Figure
from coachwright.papers.frame import FrameView, frame
from coachwright.papers.table import Pair, Table, pair_of
from coachwright.papers.wording import (
    NONE,
    digits,
    part_and_position,
    part_of,
    position_of,
    show,
    spoken,
    subject_of,
    words_of,
)

_OVERVIEW = (
    "layout.free-floor-area",
    "layout.storage-volume",
    "layout.counter-length",
    "layout.added-length-behind",
    "layout.free-behind",
)
_LEVELS = ("floor", "hip", "shoulder")


@dataclass(frozen=True, kw_only=True, slots=True)
class LayoutView:
    """Everything on the layout sheet."""

    frame: FrameView
    headline: tuple[Pair, ...]
    ways: Table
    beds: Table
    no_bed: str
    seats: Table
    living: tuple[Pair, ...]
    waived: Table
    nothing_waived: str
    loading: Table
    stuck: str


def layout_view(assessment: Assessment) -> LayoutView:
    """Return the layout sheet of a build."""
    build, layout = assessment.build, assessment.layout
    waived = [zone for zone in layout.zones if zone.waived is not None]
    return LayoutView(
        frame=frame(build, title="Layout sheet", cautions=("layout", "seats")),
        headline=tuple(_headline(assessment)),
        ways=_ways(build, layout),
        beds=_beds(assessment),
        no_bed=_nobody(assessment),
        seats=_seats(build, layout.interior.seats),
        living=tuple(_living(build, layout)),
        waived=_waived(build, waived),
        nothing_waived="" if waived else "No access zone was given up.",
        loading=_loading(build, layout),
        stuck=_stuck(build, layout),
    )


def _by_name(assessment: Assessment) -> dict[str, Figure]:
    return {figure.name: figure for figure in assessment.layout.figures}


def _suits(assessment: Assessment, name: str) -> str:
    """Return whom something suits: a share of men and one of women."""
    figures = _by_name(assessment)
    found = [figures.get(f"layout.{name}-suits-{sex}") for sex in ("men", "women")]
    men, women = (None if figure is None else figure.value for figure in found)
    if men is None or women is None:
        return ""
    return f"{show(men, 'frac', 'metric')} of men, {show(women, 'frac', 'metric')} of women"


def _headline(assessment: Assessment) -> Iterator[Pair]:
    build, figures = assessment.build, _by_name(assessment)
    headroom = figures.get("layout.headroom")
    if headroom is not None:
        suits = _suits(assessment, "headroom")
        pair = pair_of(build, headroom)
        yield Pair(
            label=pair.label,
            value=pair.value,
            note=f"{suits} stand upright there, in shoes" if suits else "",
        )
    yield from _entry(assessment)
    for name in _OVERVIEW:
        if name in figures:
            yield pair_of(build, figures[name])


def _entry(assessment: Assessment) -> Iterator[Pair]:
    system, entry = assessment.build.brief.units, assessment.layout.interior.entry
    if entry is None:
        return
    rises = ", ".join(show(rise_mm, "mm", system) for rise_mm in entry.rises_mm)
    yield Pair(
        label=f"Floor at the {entry.door} above the ground, unladen",
        value=show(entry.height_mm, "mm", system),
        note=f"rises {rises}" if entry.step else "no step fitted",
    )


def _ways(build: Build, layout: Layout) -> Table:
    system = build.brief.units
    headrooms = {_ends(headroom.way): headroom for headroom in layout.interior.headrooms}
    rows = []
    for way in dict.fromkeys(aisle.way for aisle in layout.aisles):
        levels = {aisle.level: aisle for aisle in layout.aisles if aisle.way == way}
        worst = min(levels.values(), key=lambda aisle: aisle.passage.width_mm)
        headroom = headrooms.get(_ends(way))
        rows.append(
            (
                way,
                *(_width(levels.get(level), system) for level in _LEVELS),
                " and ".join(
                    subject_of(build, name) for name in dict.fromkeys(worst.passage.between)
                ),
                NONE if headroom is None else _clear(headroom.clear_mm, system),
                NONE if headroom is None else subject_of(build, headroom.under),
            )
        )
    return Table(
        heading="Ways through the living space",
        names=(
            "From and to",
            "At the feet",
            "At the hip",
            "At the shoulder",
            "Narrowest between",
            "Clear height",
            "Up to",
        ),
        rows=tuple(rows),
        note="Widest round person who can pass at that height. Clear height: tallest that the way "
        "lets through. Furniture may close a way to the rear on purpose.",
    )


def _ends(way: str) -> frozenset[str]:
    return frozenset(way.split(" to "))


def _width(aisle: Aisle | None, system: str) -> str:
    return NONE if aisle is None else _clear(aisle.passage.width_mm, system)


def _clear(length_mm: float, system: str) -> str:
    return show(length_mm, "mm", system) if length_mm else "closed"


def _beds(assessment: Assessment) -> Table:
    interior = assessment.layout.interior
    return Table(
        heading="Beds, who sleeps in them, and the ways out",
        names=(
            "Bed",
            "Length × width",
            "Top",
            "Clear, best",
            "Clear, lowest",
            "Sleepers and their stature",
            "Ways out, nearest first",
        ),
        rows=tuple(_bed(assessment, space) for space in interior.bed_spaces),
        note=" ".join(_bed_notes(assessment)),
    )


def _bed(assessment: Assessment, space: BedSpace) -> tuple[str, ...]:
    build, interior = assessment.build, assessment.layout.interior
    system, fitted = build.brief.units, build.fitted(space.name)
    bed = fitted.part.bed if fitted else None
    sleepers = [each for each in interior.sleepers if each.bed == space.name]
    ways = next((ways for ways in interior.ways_out if ways.bed == space.name), None)
    size = (
        f"{digits(bed.length_mm, 'mm', system)} × {show(bed.width_mm, 'mm', system)}"
        if bed
        else NONE
    )
    return (
        part_and_position(build, space.name),
        size,
        show(space.top_mm, "mm", system),
        show(space.sit_mm, "mm", system),
        show(space.least_mm, "mm", system),
        ", ".join(
            f"{words_of(each.traveller)} {show(each.stature_mm, 'mm', system)}"
            for each in sleepers
        )
        or "nobody",
        _ways_out(build, ways.exits, ways.missing) if ways else NONE,
    )


def _ways_out(build: Build, exits: tuple[str, ...], missing: str) -> str:
    if missing:
        return f"unknown: {spoken(build, missing)}"
    return ", ".join(words_of(name) for name in exits) or "none"


def _bed_notes(assessment: Assessment) -> Iterator[str]:
    build, interior = assessment.build, assessment.layout.interior
    system = build.brief.units
    for space in interior.bed_spaces:
        lying = _suits(assessment, f"bed-{space.name}")
        sitting = _suits(assessment, f"sitting-{space.name}")
        said = [f"{lying} lie straight" if lying else "", f"{sitting} sit up" if sitting else ""]
        if any(said):
            bed = part_of(build, space.name)
            yield f"{bed}: {'; '.join(word for word in said if word)}."
    for escape in interior.escapes:
        sides = (show(side, "mm", system) for side in (escape.short_mm, escape.long_mm))
        yield f"{part_and_position(build, escape.name)} opens to {' × '.join(sides)}."


def _nobody(assessment: Assessment) -> str:
    """Name who wants a berth and has no bed."""
    asleep = {each.traveller for each in assessment.layout.interior.sleepers}
    wanting = (each for each in assessment.build.brief.travellers if each.berth_wanted)
    without = ", ".join(words_of(each.name) for each in wanting if each.name not in asleep)
    return f"No bed for: {without}." if without else ""


def _seats(build: Build, seats: tuple[SeatSpace, ...]) -> Table:
    system = build.brief.units
    return Table(
        heading="Fitted seats with belts",
        names=("Seat", "Faces", "Way in", "Headroom", "Needed", "To the table"),
        rows=tuple(
            (
                _place(build, seat.name),
                seat.faces,
                _clear(seat.entry_mm, system),
                show(seat.head_mm, "mm", system),
                show(seat.head_needed_mm, "mm", system),
                NONE if seat.table_mm is None else show(seat.table_mm, "mm", system),
            )
            for seat in seats
        ),
        note="Way in: the widest person who gets there from a door, of the widths looked at.",
    )


def _place(build: Build, name: str) -> str:
    fitting, _, place = name.partition(".")
    return f"{part_and_position(build, fitting)}, {words_of(place)}"


def _living(build: Build, layout: Layout) -> Iterator[Pair]:
    system, interior = build.brief.units, layout.interior
    for worktop in interior.worktops:
        yield Pair(
            label=f"Worktop of {subject_of(build, worktop.name)}",
            value=show(worktop.height_mm, "mm", system),
        )
    for table in interior.tables:
        yield Pair(
            label=f"Knees under {subject_of(build, table.name)}",
            value=show(table.clear_mm, "mm", system),
        )
    for shower in interior.showers:
        yield Pair(
            label=f"Clear height in {subject_of(build, shower.name)}",
            value=show(shower.clear_mm, "mm", system),
        )
    for toilet in interior.toilets:
        yield _toilet(build, toilet)


def _toilet(build: Build, toilet: ToiletSpace) -> Pair:
    system = build.brief.units
    label = f"Knees before {subject_of(build, toilet.name)}"
    if toilet.stowed:
        return Pair(label=label, value=NONE, note=f"stowed in {part_of(build, toilet.stall)}")
    shut = toilet.knees_open_mm is not None
    room_mm = toilet.knees_open_mm if shut else toilet.knees_mm
    note = f"needed {show(toilet.knees_needed_mm, 'mm', system)}"
    return Pair(
        label=f"{label}, door open" if shut else label,
        value=show(room_mm, "mm", system),
        note=f"missing: {spoken(build, toilet.missing)}" if toilet.missing else note,
    )


def _waived(build: Build, waived: list[PlacedZone]) -> Table:
    return Table(
        heading="Access zones given up",
        names=("Pos.", "Of", "Zone", "What stands in it", "Accepted by", "Reason"),
        rows=tuple(
            (
                position_of(build, zone.fitting),
                part_of(build, zone.fitting),
                words_of(zone.purpose),
                ", ".join(part_and_position(build, name) for name in zone.blocked_by) or "nothing",
                zone.waived.role if zone.waived else "",
                zone.waived.reason if zone.waived else "",
            )
            for zone in waived
        ),
    )


def _loading(build: Build, layout: Layout) -> Table:
    steps = layout.interior.loading.steps
    told = any(step.before for step in steps)
    return Table(
        heading="Order in which the big parts come in",
        names=("", "Pos.", "Part", "Through the", *(("Not yet in place",) if told else ())),
        rows=tuple(
            (
                f"{number}.",
                position_of(build, step.name),
                part_of(build, step.name),
                words_of(step.door),
                *((_before(build, step),) if told else ()),
            )
            for number, step in enumerate(steps, start=1)
        ),
        note="Other orders may do as well; smaller parts go in at any time.",
    )


def _before(build: Build, step: LoadingStep) -> str:
    return ", ".join(part_and_position(build, name) for name in step.before) or NONE


def _stuck(build: Build, layout: Layout) -> str:
    names = ", ".join(part_and_position(build, name) for name in layout.interior.loading.stuck)
    return f"No way in was found for: {names}." if names else ""
