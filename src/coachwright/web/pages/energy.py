"""Energy: the day's budget in both half-years, what charges it, and how long anything runs."""

from nicegui import ui

from coachwright.actions.benching import OnBench
from coachwright.actions.reading import energy_sheet
from coachwright.actions.running import how_long
from coachwright.drawing.day_bars import DayBar, DayGroup, day_bars
from coachwright.drawing.svg import svg
from coachwright.electrics.model import Electrics, RunTime
from coachwright.errors import BadInput, CoachwrightError
from coachwright.papers.table import Pair
from coachwright.papers.view_energy import EnergyView
from coachwright.papers.wording import show
from coachwright.web.parts import sheet
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.parts.working import figures, working
from coachwright.web.state import Here, on_change

_WIDE_MM = 190.0
_SOCKET, _BATTERY = "mains socket (inverter)", "battery direct"


def create(here: Here) -> None:
    """Fill the page."""
    sheet.styled()
    with box("stack"):
        sheet.heading("Energy", "One typical day of the warm and of the cold half-year.")
        top = box("stack")
        _question(here)
        room = box("stack")

    def draw(work: OnBench) -> None:
        view = energy_sheet(work.assessment, here.system)
        top.clear()
        with top:
            _top(work, view, here.system)
        room.clear()
        with room:
            _tables(work, view, here.system)

    on_change(here, draw)


def _top(work: OnBench, view: EnergyView, system: str) -> None:
    with box("card stack"):
        sheet.pairs(view.headline)
        words(view.basis, "quiet small", tag="p")
    with sheet.section("The day, in and out"):
        groups = _groups(work.assessment.electrics, system)
        sheet.drawing(
            svg(day_bars(groups, paper_width_mm=_WIDE_MM)),
            "Bars of the day's energy by source and use; the table below holds every figure",
        )


def _tables(work: OnBench, view: EnergyView, system: str) -> None:
    sheet.table(view.budget)
    sheet.table(view.charging, empty="Nothing charges a battery.")
    sheet.table(view.runtimes, empty="There is no load that could run on the battery.")
    sheet.table(view.loads, empty="There are no loads.")
    with sheet.section("Battery"):
        sheet.pairs(view.bank)
        if view.bank_missing:
            words(view.bank_missing, tag="p")
    if view.inverter:
        with sheet.section("Inverter"):
            sheet.pairs(view.inverter)
    sheet.table(view.arrays)
    if view.arrays_missing:
        words(view.arrays_missing, "card", tag="p")
    shown = work.assessment.electrics.figures
    figures(work.build, shown, system, "Every figure, with its working")
    sheet.cautions(view.frame)


def _groups(electrics: Electrics, system: str) -> tuple[DayGroup, ...]:
    warm, cold = electrics.summer, electrics.winter
    hot, cool = warm.use, cold.use
    into = (
        ("Sun", warm.sun_wh_per_day, cold.sun_wh_per_day),
        ("Driving", warm.driving_wh_per_day, cold.driving_wh_per_day),
        ("Hook-up", warm.hookup_wh_per_day, cold.hookup_wh_per_day),
    )
    out = (
        ("Direct-current loads", hot.dc_wh_per_day, cool.dc_wh_per_day),
        ("Behind the inverter", hot.ac_wh_per_day, cool.ac_wh_per_day),
        ("Lost in the inverter", hot.inverter_loss_wh_per_day, cool.inverter_loss_wh_per_day),
        (
            "Inverter on, no load",
            hot.inverter_standby_wh_per_day,
            cool.inverter_standby_wh_per_day,
        ),
        ("Lost in storage", warm.storage_loss_wh_per_day, cold.storage_loss_wh_per_day),
    )
    return tuple(
        DayGroup(heading=heading, bars=tuple(_bar(*each, system) for each in bars))
        for heading, bars in (("Into the battery", into), ("Out of the battery", out))
    )


def _bar(
    label: str, summer_wh_per_day: float | None, winter_wh_per_day: float | None, system: str
) -> DayBar:
    return DayBar(
        label=label,
        summer=show(summer_wh_per_day, "Wh/day", system),
        winter=show(winter_wh_per_day, "Wh/day", system),
        summer_wh_per_day=summer_wh_per_day,
        winter_wh_per_day=winter_wh_per_day,
    )


def _question(here: Here) -> None:
    with sheet.section("How long can I run …"):
        row = box("rowline question")
        said = box("answer").props('aria-live="polite"')

    def answer() -> None:
        said.clear()
        with said:
            socket = supply.value == _SOCKET
            _answer(here, draw.value or "", duty.value or "", socket=socket)

    with row:
        draw = ui.input("Draw, in W", value="60").props("outlined dense").mark("draw")
        duty = ui.input("Share of the time, in %", value="100").props("outlined dense")
        supply = ui.radio([_BATTERY, _SOCKET], value=_BATTERY, on_change=answer)
        supply.props("inline dense")
        supply.props["aria-label"] = "Where it gets its power"
        tool("Answer", answer, classes="main")
    for field in (draw, duty.mark("duty")):
        field.on("keydown.enter", answer)
    on_change(here, lambda _work: answer())


def _answer(here: Here, draw: str, duty: str, *, socket: bool) -> None:
    try:
        found = how_long(here.work.assessment, draw=draw, duty=duty, behind_inverter=socket)
    except BadInput as error:
        for fault in error.faults:
            words(f"{fault.field}: {fault.action}", "severity caution", tag="p")
    except CoachwrightError as error:
        words(str(error), "severity caution", tag="p")
    else:
        _run(here, found)


def _run(here: Here, found: RunTime) -> None:
    system = here.system
    draw, duty = show(found.draw_w, "W", system), show(found.duty_frac, "frac", system)
    words(f"{draw}, drawing {duty} of the time, from a full battery down to its reserve:", tag="p")
    sheet.pairs(
        (
            Pair(label="Alone", value=show(found.alone_h, "h", system)),
            Pair(label="With what is always on", value=show(found.with_others_h, "h", system)),
            Pair(
                label="Alone, in the design cold night",
                value=show(found.cold_alone_h, "h", system),
            ),
        )
    )
    working(here.work.build, found.working, system)
