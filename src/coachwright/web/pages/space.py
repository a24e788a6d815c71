"""Fit and room: ways, headroom, beds, seats, exits, and how the parts come in."""

from coachwright.actions.benching import OnBench
from coachwright.actions.reading import layout_sheet
from coachwright.layout.model import Layout
from coachwright.model.build import Build
from coachwright.papers.table import Table
from coachwright.papers.wording import NONE, part_and_position, show, spoken
from coachwright.web.parts import sheet
from coachwright.web.parts.plain import box, words
from coachwright.web.parts.working import figures
from coachwright.web.state import Here, on_change


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
    view = layout_sheet(work.assessment, system)
    sheet.heading("Fit and room", "Whether it fits, and whether people can live in it.")
    with box("card"):
        sheet.pairs(view.headline)
    sheet.table(view.ways, empty="No way through the van was found.")
    sheet.table(_headroom(build, layout, system))
    sheet.table(view.beds, empty="No bed is fitted.")
    if view.no_bed:
        words(view.no_bed, "card", tag="p")
    sheet.table(_exits(build, layout))
    sheet.table(view.seats, empty="No seat with a belt is fitted.")
    if view.living:
        with sheet.section("Living in it"):
            sheet.pairs(view.living)
    sheet.table(_stores(build, layout, system))
    sheet.table(view.loading)
    if view.stuck:
        words(view.stuck, "card severity caution", tag="p")
    sheet.table(view.waived, empty=view.nothing_waived)
    shown = (*layout.figures, *layout.interior.figures)
    by_name = {each.name: each for each in shown}
    figures(build, by_name.values(), system, "Every figure, with its working")
    sheet.cautions(view.frame)


def _headroom(build: Build, layout: Layout, system: str) -> Table:
    return Table(
        heading="Headroom on the ways",
        names=("Way", "For a body as wide as", "Clear height", "Ends at"),
        rows=tuple(
            (
                each.way.capitalize(),
                show(each.width_mm, "mm", system),
                show(each.clear_mm, "mm", system) if each.clear_mm > 0.0 else "closed",
                spoken(build, each.under),
            )
            for each in layout.interior.headrooms
        ),
    )


def _exits(build: Build, layout: Layout) -> Table:
    def named(names: tuple[str, ...]) -> str:
        return ", ".join(part_and_position(build, name) for name in names) or NONE

    return Table(
        heading="Ways out from the beds",
        names=("Bed", "Ways out, nearest first", "Only past another", "Missing"),
        rows=tuple(
            (
                part_and_position(build, each.bed),
                named(each.exits),
                named(each.behind),
                spoken(build, each.missing) or NONE,
            )
            for each in layout.interior.ways_out
        ),
    )


def _stores(build: Build, layout: Layout, system: str) -> Table:
    return Table(
        heading="Storage",
        names=("Cabinet", "Room"),
        rows=tuple(
            (part_and_position(build, each.name), show(each.storage_l, "L", system))
            for each in layout.stores
        ),
    )
