"""A site's year on the screen: promise, months, cold night, hot day, drying."""

from coachwright.papers.table import Pair, Table
from coachwright.papers.view_climate import ClimateBlock, ClimateView
from coachwright.papers.view_year import YearBlock
from coachwright.web.parts import sheet
from coachwright.web.parts.plain import box, words


def promise(block: ClimateBlock) -> None:
    """Show what is promised at a site, and how far its weather is to be believed."""
    with box("card stack promise", tag="section", label="The promise"):
        words(block.promise, "headline", tag="h3")
        words(block.promise_note, "quiet", tag="p")
        if block.caution:
            with box("rowline"):
                words("▲ caution", "severity caution")
                words(block.caution, "grow")
        words(block.attribution, "quiet small", tag="p")


def months(block: ClimateBlock, year: YearBlock) -> None:
    """Show the months of a site's year in pictures and tables."""
    with sheet.section("How long a stand lasts"):
        sheet.drawing(block.stands_drawing, "Days that stands last, month by month; see the table")
        words(block.stands.note, "quiet small", tag="p")
    _table("Days that a stand lasts, as a table", block.stands)
    with sheet.section("Energy in and out by month"):
        sheet.drawing(year.drawing, "Energy by source and use, month by month; see the tables")
    _table("Energy in, as a table", year.into)
    _table("Energy out, as a table", year.out)
    with sheet.section("Warmth and comfort by month"):
        sheet.drawing(block.air_drawing, "Temperatures and comfort, month by month; see the table")
    _table("Warmth by month, as a table", block.air)
    sheet.table(year.fuel)


def extremes(block: ClimateBlock) -> None:
    """Show the design cold night, the design hot day, damp and drying."""
    with box("twoside"):
        _day("The design cold night", block.cold, block.cold_drawing)
        _day("The design hot day", block.hot, block.hot_drawing)
    if block.drying:
        with sheet.section("Drying wet kit"):
            sheet.pairs(block.drying)
            if block.drying_caution:
                with box("cautions hotroom"):
                    words("▲ Hot room", "severity caution")
                    words(block.drying_caution, tag="p")
    if block.bay:
        with sheet.section("Heat of inverter and chargers"):
            sheet.pairs(block.bay)
    sheet.table(block.damp)


def body(view: ClimateView) -> None:
    """Show what holds at any site: envelope, heating grades, fresh air."""
    if view.envelope_pairs:
        with sheet.section(view.envelope.heading):
            sheet.pairs(view.envelope_pairs)
            sheet.rows_of(view.envelope)
            words(view.envelope.note, "quiet small", tag="p")
    sheet.table(view.grades)
    if view.fresh_air:
        with sheet.section("Fresh air"):
            sheet.pairs(view.fresh_air)


def _day(title: str, pairs: tuple[Pair, ...], drawing: str) -> None:
    if pairs:
        with sheet.section(title):
            sheet.pairs(pairs)
            sheet.drawing(drawing, f"{title}: temperatures, charge and flows over the day")


def _table(title: str, shown: Table) -> None:
    """Show a table that opens when it is asked for: its picture stands above."""
    with box("card folded", tag="details"):
        words(title, tag="summary")
        sheet.rows_of(shown)
