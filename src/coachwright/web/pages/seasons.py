"""Seasons: how long, how warm, how cool, how dry, in which month."""

from collections.abc import Callable
from dataclasses import dataclass, field

from nicegui import ui

from coachwright.actions.benching import OnBench
from coachwright.actions.reading import climate_sheet, year_sheet
from coachwright.papers.view_climate import ClimateView
from coachwright.web.parts import season_sheet, sheet
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.parts.season_week import SeasonWeek
from coachwright.web.parts.styled import styled
from coachwright.web.parts.what_if import WhatIf
from coachwright.web.parts.working import figures
from coachwright.web.state import Here, on_change

_SOON_S = 0.05
_LEAD = "How long, how warm, how cool, how dry, in which month: a whole year, step by step."


@dataclass(kw_only=True, slots=True)
class _Looked:
    """Which site somebody looks at, and which are offered."""

    site: str = ""
    offered: dict[str, ui.button] = field(default_factory=dict)


def create(here: Here) -> None:
    """Fill the page."""
    sheet.styled()
    styled("seasons")
    looked = _Looked()
    with box("stack"):
        sheet.heading("Seasons", _LEAD)
        choice = box("rowline").props('role="group" aria-label="Site"')
        top = box("stack")
        week, tries = SeasonWeek(here=here), WhatIf(here=here)
        turning = box("stack")
        with turning:
            tries.create()
            week.create()
        room = box("stack")

    def choose(site: str) -> None:
        looked.site = site
        draw(here.work)

    def draw(work: OnBench) -> None:
        view = climate_sheet(work.assessment, here.system)
        _offer(choice, view, looked, choose)
        top.clear()
        with top:
            _top(view, looked.site, awaited=work.assessment.living.is_awaited)
        year = next((y for y in work.assessment.living.years if y.site == looked.site), None)
        turning.set_visibility(year is not None)
        tries.show(work, year)
        week.site = year.site if year else ""
        room.clear()
        with room:
            _fill(work, view, looked.site, here.system)
        ui.timer(_SOON_S, week.draw, once=True)

    on_change(here, draw)


def _offer(
    choice: ui.element, view: ClimateView, looked: _Looked, choose: Callable[[str], None]
) -> None:
    """Offer the sites of the brief; what somebody holds is not made anew."""
    titles = {each.site: each.title for each in view.sites}
    if looked.site not in titles:
        looked.site = next(iter(titles), "")
    if tuple(titles) != tuple(looked.offered):
        choice.clear()
        looked.offered = {}
        with choice:
            for site, title in titles.items() if len(titles) > 1 else ():
                looked.offered[site] = tool(title, lambda site=site: choose(site))
    for site, button in looked.offered.items():
        button.props["aria-pressed"] = "true" if site == looked.site else "false"
        button.update()


def _top(view: ClimateView, site: str, *, awaited: bool) -> None:
    if view.missing:
        with box("card stack"):
            words("? unknown", "severity unknown")
            words(view.missing, tag="p")
            if awaited:
                words("It appears here by itself.", "quiet", tag="p")
    words(view.basis, "quiet small", tag="p")
    for block in view.sites:
        if block.site == site:
            season_sheet.promise(block)


def _fill(work: OnBench, view: ClimateView, site: str, system: str) -> None:
    year = year_sheet(work.assessment, system)
    for block, energy in zip(view.sites, year.sites, strict=True):
        if block.site == site:
            season_sheet.months(block, energy)
            season_sheet.extremes(block)
    season_sheet.body(view)
    sheet.table(year.changes)
    shown = work.assessment.living.figures
    if shown:
        figures(work.build, shown, system, "Every figure, with its working")
    sheet.sources(view.sources)
    sheet.cautions(view.frame)
