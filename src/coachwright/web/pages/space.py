"""Fit and room: ways, headroom, beds, seats, exits, and how the parts come in."""

from collections.abc import Callable, Iterable

from coachwright.actions.benching import OnBench
from coachwright.layout.model import Layout
from coachwright.layout.model_interior import Interior
from coachwright.model.build import Build
from coachwright.papers.frame import frame
from coachwright.papers.table import Pair, Table
from coachwright.papers.wording import NONE, part_and_position, show, spoken, words_of
from coachwright.web.parts import sheet
from coachwright.web.parts.plain import box, words
from coachwright.web.parts.working import figures
from coachwright.web.state import Here, on_change

_NO_BED = "No bed is fitted."


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
    build, layout = work.build, work.assessment.layout
    told = _Teller(build, system)
    inside = layout.interior
    sheet.heading("Fit and room", "Whether it fits, and whether people can live in it.")
    with sheet.section("Room"):
        sheet.pairs(_room(layout, told))
    sheet.table(_ways(layout, told), empty="No way through the van was found.")
    sheet.table(_headroom(inside, told))
    sheet.table(_beds(inside, told), empty=_NO_BED)
    sheet.table(_sleepers(inside, told))
    sheet.table(_seats(inside, told), empty="No seat with a belt is fitted.")
    sheet.table(_exits(inside, told), empty=_NO_BED)
    sheet.table(_toilets(inside, told))
    sheet.table(_heights(inside, told))
    sheet.table(_stores(layout, told))
    _loading(inside, told)
    figures(build, (*layout.figures, *inside.figures), system, "Every figure, with its working")
    sheet.cautions(frame(build, title="Fit and room", cautions=("seats", "certification")))


class _Teller:
    """Says values and names as one person reads them."""

    def __init__(self, build: Build, system: str) -> None:
        """Keep the names of the build and the system of units."""
        self._build = build
        self._system = system

    def mm(self, length_mm: float | None) -> str:
        return NONE if length_mm is None else show(length_mm, "mm", self._system)

    def open(self, width_mm: float) -> str:
        """Say how wide a way is, and of one that is shut that it is."""
        return self.mm(width_mm) if width_mm > 0.0 else "closed"

    def value(self, value: float | None, unit: str) -> str:
        return NONE if value is None else show(value, unit, self._system)

    def name(self, name: str) -> str:
        return part_and_position(self._build, name) if name else NONE

    def names(self, names: Iterable[str]) -> str:
        return ", ".join(self.name(each) for each in names) or NONE

    def text(self, text: str) -> str:
        return spoken(self._build, text) or NONE


def _table(
    heading: str, *columns: tuple[str, Callable[..., str]], of: Iterable[object], note: str = ""
) -> Table:
    """Return a table from its columns: what stands above, and what of each thing below."""
    return Table(
        heading=heading,
        names=tuple(name for name, _ in columns),
        rows=tuple(tuple(text(each) for _, text in columns) for each in of),
        note=note,
    )


def _room(layout: Layout, told: _Teller) -> tuple[Pair, ...]:
    floor, entry = layout.free_floor, layout.interior.entry
    between = f"{told.mm(floor.length_mm)} by {told.mm(floor.width_mm)} in all"
    pairs = [Pair(label="Free floor", value=told.value(floor.free_m2, "m2"), note=between)]
    if entry is not None:
        rises = ", ".join(told.mm(rise_mm) for rise_mm in entry.rises_mm)
        pairs.append(
            Pair(
                label=f"Floor at the {words_of(entry.door)}, above ground",
                value=told.mm(entry.height_mm),
                note=f"steps of {rises}",
            )
        )
    return tuple(pairs)


def _ways(layout: Layout, told: _Teller) -> Table:
    return _table(
        "Ways through the van",
        ("Way", lambda each: each.way.capitalize()),
        ("At the height of", lambda each: each.level),
        ("Narrowest", lambda each: told.open(each.passage.width_mm)),
        ("Between", lambda each: told.text(" and ".join(each.passage.between))),
        of=layout.aisles,
        note="As wide as the widest round body that passes at that height.",
    )


def _headroom(inside: Interior, told: _Teller) -> Table:
    return _table(
        "Headroom on the ways",
        ("Way", lambda each: each.way.capitalize()),
        ("For a body as wide as", lambda each: told.mm(each.width_mm)),
        ("Clear height", lambda each: told.open(each.clear_mm)),
        ("Ends at", lambda each: told.text(each.under)),
        of=inside.headrooms,
    )


def _beds(inside: Interior, told: _Teller) -> Table:
    return _table(
        "Beds",
        ("Bed", lambda each: told.name(each.name)),
        ("Top of the mattress", lambda each: told.mm(each.top_mm)),
        ("Room to sit up", lambda each: told.mm(each.sit_mm)),
        ("Under", lambda each: told.text(each.under)),
        ("Lowest above it", lambda each: told.mm(each.least_mm)),
        ("Missing", lambda each: told.text(each.missing)),
        of=inside.bed_spaces,
    )


def _sleepers(inside: Interior, told: _Teller) -> Table:
    return _table(
        "Who sleeps where",
        ("Traveller", lambda each: told.text(each.traveller)),
        ("Bed", lambda each: told.name(each.bed)),
        ("Stature", lambda each: told.mm(each.stature_mm)),
        ("Length to lie in", lambda each: told.mm(each.length_mm)),
        of=inside.sleepers,
    )


def _seats(inside: Interior, told: _Teller) -> Table:
    return _table(
        "Seats with belts",
        ("Seat", lambda each: told.name(each.name)),
        ("Faces", lambda each: each.faces),
        ("Way in as wide as", lambda each: told.open(each.entry_mm)),
        ("Headroom", lambda each: told.mm(each.head_mm)),
        ("Needed", lambda each: told.mm(each.head_needed_mm)),
        ("To the table", lambda each: told.mm(each.table_mm)),
        of=inside.seats,
    )


def _exits(inside: Interior, told: _Teller) -> Table:
    return _table(
        "Ways out from the beds",
        ("Bed", lambda each: told.name(each.bed)),
        ("Ways out, nearest first", lambda each: told.names(each.exits)),
        ("Only past another", lambda each: told.names(each.behind)),
        ("Missing", lambda each: told.text(each.missing)),
        of=inside.ways_out,
    )


def _toilets(inside: Interior, told: _Teller) -> Table:
    return _table(
        "Toilet",
        ("Toilet", lambda each: told.name(each.name)),
        ("Seat", lambda each: told.mm(each.seat_mm)),
        ("Room for knees", lambda each: told.mm(each.knees_mm)),
        ("Needed", lambda each: told.mm(each.knees_needed_mm)),
        ("Shoulders", lambda each: told.mm(each.shoulders_mm)),
        ("Needed there", lambda each: told.mm(each.shoulders_needed_mm)),
        ("Put away", lambda each: "yes" if each.stowed else "no"),
        of=inside.toilets,
    )


def _heights(inside: Interior, told: _Teller) -> Table:
    rows = (
        *((told.name(each.name), "worktop", told.mm(each.height_mm)) for each in inside.worktops),
        *(
            (told.name(each.name), "knees under the table", told.mm(each.clear_mm))
            for each in inside.tables
        ),
        *(
            (told.name(each.name), "clear height in the shower", told.mm(each.clear_mm))
            for each in inside.showers
        ),
    )
    return Table(heading="Working heights", names=("Fitting", "What", "Height"), rows=rows)


def _stores(layout: Layout, told: _Teller) -> Table:
    return _table(
        "Storage",
        ("Cabinet", lambda each: told.name(each.name)),
        ("Room", lambda each: told.value(each.storage_l, "L")),
        of=layout.stores,
    )


def _loading(inside: Interior, told: _Teller) -> None:
    found = inside.loading
    sheet.table(
        _table(
            "Bringing the big parts in",
            ("Part, in this order", lambda each: told.name(each.name)),
            ("Through", lambda each: words_of(each.door)),
            ("Before", lambda each: told.names(each.before)),
            of=found.steps,
        )
    )
    if found.stuck:
        text = f"No order was found for: {told.names(found.stuck)}."
        words(text, "card severity caution", tag="p")
