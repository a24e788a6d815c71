"""Looking into a build's year: dials, weeks, and what a trial is told as."""

from dataclasses import replace
from functools import cache

from coachwright.actions.demos import demo
from coachwright.actions.opening import complete
from coachwright.actions.seasons import (
    LAST_DAY,
    Grounds,
    all_words,
    dials,
    every_week,
    grounds,
    week,
    week_beside,
    week_drawing,
)
from coachwright.actions.trying import Answer, answer
from coachwright.assess import Assessment, assess
from coachwright.catalogue.loading import Catalogue
from coachwright.store.editing import read_sheet
from tests.support.living_sample import LIVING, YEAR

SITE = "greensboro-nc"
CATALOGUE = Catalogue()


@cache
def _assessed() -> Assessment:
    return assess(complete(read_sheet(demo("night-watch").text), "the sheet", CATALOGUE))


@cache
def _ground() -> Grounds:
    return grounds(_assessed(), SITE, CATALOGUE)


def _answered(turned: dict[str, int]) -> Answer:
    return answer(
        build=_assessed().build,
        living=LIVING,
        year=replace(YEAR, site=SITE),
        ground=_ground(),
        shown_dials=dials(_assessed()),
        turned=turned,
        system="metric",
    )


def test_every_dial_stands_where_the_build_is() -> None:
    shown = {dial.name: all_words(dial, "metric")[dial.at] for dial in dials(_assessed())}
    bank = _assessed().electrics.bank
    assert bank is not None
    assert shown["bank_ah"] == f"{bank.capacity_ah:,.0f} Ah"
    assert shown["insulation_mm"] == "0 mm"
    assert shown["heat_degc"] == f"{_assessed().build.brief.habits.day_degc:.1f} °C"
    for dial in dials(_assessed()):
        assert len(all_words(dial, "us")) == dial.steps + 1


def test_the_ground_of_a_build_is_kept() -> None:
    assert grounds(_assessed(), SITE, CATALOGUE) is _ground()


def test_weeks_go_through_the_year_and_stay_within_it() -> None:
    assert len(every_week()) == LAST_DAY + 1
    assert every_week()[-1] == "25 Dec to 31 Dec"
    assert week_beside(3, forwards=False) == 0
    assert week_beside(LAST_DAY, forwards=True) == LAST_DAY
    assert week_beside(14, forwards=True) == 21


def test_a_week_is_seven_days_of_the_run() -> None:
    found = week(_ground(), 14)
    assert (found.day, len(found.charge_frac)) == (14, 7 * 144)
    assert week(_ground(), 400).day == LAST_DAY
    assert "15 Jan" in week_drawing(_ground(), 14, "us")


def test_a_trial_of_nothing_is_the_build_as_it_is() -> None:
    table = _answered({}).table
    assert [row[1] for row in table.rows] == [row[2] for row in table.rows]


def test_a_trial_is_told_beside_the_build_as_it_is() -> None:
    found = _answered({"insulation_mm": 12, "shade_frac": 18})
    assert found.said.startswith("Five of ten ")
    assert [row[1] for row in found.table.rows] != [row[2] for row in found.table.rows]
    assert found.drawing.startswith("<svg")
