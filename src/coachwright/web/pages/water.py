"""Water: tanks and days, hot water, flow, frost, disinfection, gas."""

from coachwright.actions.benching import OnBench
from coachwright.actions.reading import water_sheet
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
    view = water_sheet(work.assessment, system)
    sheet.heading("Water", "How long the tanks last, how warm, how fast, and what frost does.")
    with box("card"):
        sheet.pairs(view.stores)
    sheet.table(view.hot_water, empty="No water heater is fitted.")
    sheet.table(view.warm_up)
    sheet.table(view.outlets, empty="No tap or shower is fitted.")
    sheet.table(view.pumps)
    sheet.table(view.frost, empty="Nothing that holds water is fitted.")
    sheet.table(view.doses)
    if view.gas:
        with sheet.section("Gas"):
            sheet.pairs(view.gas)
            if view.gas_note:
                words(view.gas_note, "quiet", tag="p")
    sheet.table(view.lockers)
    shown = work.assessment.water.figures
    figures(work.build, shown, system, "Every figure, with its working")
    sheet.cautions(view.frame)
