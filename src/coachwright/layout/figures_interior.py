"""The figures about people inside, with their workings."""

from collections.abc import Iterator

from coachwright.layout.assumptions import assumed_mm
from coachwright.layout.model_interior import Entry, Interior, ToiletSpace
from coachwright.layout.people import suits_up_to
from coachwright.layout.steps import stair
from coachwright.model.build import Build
from coachwright.model.finding import Status
from coachwright.model.working import Figure, Given, Working
from coachwright.reference import limit
from coachwright.units import told

_KNOWN = {
    Status.READ: "read in its source",
    Status.MEMORY: "from memory",
    Status.PRACTICE: "common practice",
}


def interior_figures(*, build: Build, interior: Interior) -> Iterator[Figure]:
    """Yield the figures about people inside.

    Parameters
    ----------
    build
        Gives the beds' lengths.
    interior
        All other results.
    """
    yield from _headroom(interior)
    for fitted in build.having("bed"):
        bed = fitted.part.bed
        if bed is not None:
            yield from _shares(
                name=f"bed-{fitted.name}",
                label=f"who lie straight in {fitted.name}",
                dimension="stature",
                room_mm=bed.length_mm,
                off_mm=0.0,
                off="nothing",
            )
    for space in interior.bed_spaces:
        if space.sit_mm is not None:
            yield from _shares(
                name=f"sitting-{space.name}",
                label=f"who can sit up in {space.name}",
                dimension="sitting height",
                room_mm=space.sit_mm,
                off_mm=0.0,
                off="nothing",
            )
    for toilet in interior.toilets:
        yield from _knees(toilet)
    for worktop in interior.worktops:
        yield _measured(
            f"worktop-{worktop.name}",
            f"Height of the worktop of {worktop.name} above the finished floor",
            worktop.height_mm,
        )
    if interior.entry is not None:
        yield from _entry(interior.entry)


def _measured(name: str, label: str, length_mm: float) -> Figure:
    working = Working(
        expression="h as placed",
        given=(
            Given(
                symbol="h",
                meaning=label,
                value=length_mm,
                unit="mm",
                source="positions of the build",
            ),
        ),
        result=length_mm,
        unit="mm",
        references=("geometry",),
    )
    return Figure(name=f"layout.{name}", label=label, value=length_mm, unit="mm", working=working)


def _headroom(interior: Interior) -> Iterator[Figure]:
    """Yield the headroom of the best way and whom it suits."""
    if not interior.headrooms:
        return
    best = max(interior.headrooms, key=lambda headroom: headroom.clear_mm)
    yield Figure(
        name="layout.headroom",
        label=f"Clear height on the best way, {best.way}",
        value=best.clear_mm,
        unit="mm",
        working=Working(
            expression="h = max over ways of min over chains of max closing height",
            given=tuple(
                Given(
                    symbol=f"h{number}",
                    meaning=f"{headroom.way}, up to {headroom.under}, "
                    f"{told(headroom.width_mm, 'mm')} wide",
                    value=headroom.clear_mm,
                    unit="mm",
                    source="positions of the build",
                )
                for number, headroom in enumerate(interior.headrooms, start=1)
            ),
            result=best.clear_mm,
            unit="mm",
            references=("geometry", "engineering-access-table"),
            note="above the finished floor",
        ),
    )
    yield from _shares(
        name="headroom",
        label="who stand upright on the best way",
        dimension="stature",
        room_mm=best.clear_mm,
        off_mm=assumed_mm("shoes"),
        off="shoes",
    )


def _shares(
    *, name: str, label: str, dimension: str, room_mm: float, off_mm: float, off: str
) -> Iterator[Figure]:
    """Yield the shares of men and of women whose dimension is at most what is left."""
    left_mm = room_mm - off_mm
    suits = suits_up_to(dimension=dimension, length_mm=left_mm)
    for sex, share_frac in (("men", suits.men_frac), ("women", suits.women_frac)):
        yield Figure(
            name=f"layout.{name}-suits-{sex}",
            label=f"Share of {sex} {label}",
            value=share_frac,
            unit="frac",
            working=Working(
                expression=f"share of men or women with {dimension} <= h - s",
                given=(
                    Given(symbol="h", meaning="room", value=room_mm, unit="mm"),
                    Given(symbol="s", meaning=off, value=off_mm, unit="mm"),
                ),
                result=share_frac,
                unit="frac",
                references=("ansur-ii-2012",),
                note="survey of soldiers; linear in the normal score between its percentiles",
            ),
        )


def _knees(toilet: ToiletSpace) -> Iterator[Figure]:
    """Yield whose knees have room on a toilet, with the door of its stall open."""
    room_mm = toilet.knees_open_mm if toilet.knees_open_mm is not None else toilet.knees_mm
    if room_mm is not None:
        yield from _shares(
            name=f"knees-{toilet.name}",
            label=f"whose knees have room on {toilet.name}, doors open",
            dimension="buttock-knee length",
            room_mm=room_mm,
            off_mm=assumed_mm("toilet-back"),
            off="lid and cistern behind the back",
        )


def _entry(entry: Entry) -> Iterator[Figure]:
    """Yield the height of the entry and the steps that it would take."""
    yield _measured(
        "entry-height",
        f"Floor at the {entry.door} above the ground, unladen",
        entry.height_mm,
    )
    for kind, limit_id in (
        ("stair", "layout.riser-stair"),
        ("accessible", "layout.riser-accessible"),
    ):
        most = limit(limit_id)
        steps = stair(height_mm=entry.height_mm, most_riser_mm=most.value)
        yield Figure(
            name=f"layout.entry-risers-{kind}",
            label=f"{most.title}: equal rises up to the floor",
            value=steps.count,
            unit="count",
            working=Working(
                expression="n = ceil(h / r)",
                given=(
                    Given(symbol="h", meaning="floor", value=entry.height_mm, unit="mm"),
                    Given(symbol="r", meaning=most.title, value=most.value, unit="mm"),
                ),
                result=steps.count,
                unit="count",
                references=(most.source.key,),
                note=f"each {told(steps.riser_mm, 'mm')}; the limit is "
                f"{_KNOWN[most.source.status]}",
            ),
        )
