"""Charts of the months: bars as long as their figures, nothing written over anything written."""

from dataclasses import replace
from itertools import combinations

import pytest

from coachwright.drawing.axis import axis
from coachwright.drawing.calendar import date_words
from coachwright.drawing.day_picture import day_picture
from coachwright.drawing.energy_fills import SOURCES, USES, gathered_wh
from coachwright.drawing.month_air import month_air
from coachwright.drawing.month_energy import month_energy
from coachwright.drawing.month_stands import month_stands
from coachwright.drawing.scene import Area, Layer, Line, Scene, Sheet, Style, Text
from coachwright.drawing.svg import svg
from tests.drawing.written import overlaps, written_on
from tests.support.living_sample import COLD, LIVING, YEAR, picture_of

WIDE_MM = 174.0


def _stands(system: str, wanted_d: float | None = 4.0) -> Scene:
    return month_stands(
        YEAR.stands,
        wanted_d=wanted_d,
        travelled=LIVING.season_months,
        system=system,
        paper_width_mm=WIDE_MM,
    )


def _air(system: str) -> Scene:
    return month_air(
        YEAR.months,
        coldest_degc=18.0,
        warmest_degc=26.0,
        system=system,
        paper_width_mm=WIDE_MM,
    )


def _scene(name: str, system: str) -> Scene:
    week = picture_of(days=7, outside_degc=-3.0, cabin_degc=19.0)
    made = {
        "stands": lambda: _stands(system),
        "energy": lambda: month_energy(YEAR.months, system=system, paper_width_mm=WIDE_MM),
        "air": lambda: _air(system),
        "day": lambda: day_picture(COLD.picture, system=system, paper_width_mm=WIDE_MM),
        "week": lambda: day_picture(week, system=system, paper_width_mm=WIDE_MM),
    }
    return made[name]()


def _texts(scene: Scene) -> list[str]:
    return [each.text for each in scene.primitives if isinstance(each, Text)]


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize("name", ["stands", "energy", "air", "day", "week"])
def test_nothing_is_written_over_anything_and_nothing_leaves_the_chart(
    name: str, system: str
) -> None:
    scene = _scene(name, system)
    size = (scene.high_mm[0], scene.high_mm[1])
    sheet = Sheet(name=name, title=name, size_mm=size, frame=scene, panes=())
    written = list(written_on(sheet))
    assert written
    assert [
        (one.text, other.text)
        for one, other in combinations(written, 2)
        if overlaps(one.patch, other.patch)
    ] == []
    assert [
        each.text
        for each in written
        if each.patch[0] < -0.01
        or each.patch[1] < -0.01
        or each.patch[2] > size[0] + 0.01
        or each.patch[3] > size[1] + 0.01
    ] == []


@pytest.mark.parametrize("name", ["stands", "energy", "air", "day", "week"])
def test_no_figure_has_many_decimals(name: str) -> None:
    for text in _texts(_scene(name, "us")):
        assert len(text.partition(".")[2]) <= 2


def test_days_that_were_followed_to_the_end_are_told_as_such() -> None:
    assert _texts(_stands("metric")).count("21+") > 1


def test_a_wish_is_a_dashed_line_at_its_height() -> None:
    def wishes(scene: Scene) -> list[Line]:
        return [
            each
            for each in scene.primitives
            if isinstance(each, Line)
            and each.layer is Layer.PLUMBING
            and each.end_mm[0] == WIDE_MM
        ]

    (wish,) = wishes(_stands("metric"))
    assert wish.style is Style.DASHED
    assert wishes(_stands("metric", None)) == []


def test_what_is_gathered_is_the_sum_of_its_parts() -> None:
    parts = {"fans": 3.0, "light": 4.0, "heater": 0.0, "unheard": 9.0}
    assert [sum(gathered_wh(parts, USES).values()), len(gathered_wh(parts, USES))] == [7.0, 1]


def test_kinds_of_energy_differ_without_colour() -> None:
    fills = {*SOURCES.values(), *USES.values()}
    assert len({fill.letter for fill in fills}) == len(fills)


def test_an_axis_has_round_figures_in_the_units_that_are_read() -> None:
    made = axis(low=0.0, high=9.0, unit="frac", system="metric", foot_mm=0.0, head_mm=10.0)
    assert [tick.text for tick in made.ticks] == ["0", "200", "400", "600", "800", "1,000"]
    warm = axis(low=0.0, high=10.0, unit="degC", system="us", foot_mm=0.0, head_mm=20.0)
    assert warm.place_mm(0.0) == pytest.approx(2.0 * 20.0 / 20.0)
    assert [tick.text for tick in warm.ticks] == ["30", "35", "40", "45", "50"]
    fine = axis(low=0.0, high=1.2, unit="L", system="metric", foot_mm=0.0, head_mm=10.0)
    assert [tick.text for tick in fine.ticks][:2] == ["0.00", "0.25"]


def test_an_empty_range_still_has_an_axis() -> None:
    made = axis(low=0.0, high=0.0, unit="d", system="metric", foot_mm=0.0, head_mm=10.0)
    assert len(made.ticks) > 1


def test_months_without_anybody_in_have_no_share() -> None:
    empty = tuple(replace(each, occupied_h=0.0) for each in YEAR.months)
    shares = [
        each
        for each in month_air(
            empty,
            coldest_degc=18.0,
            warmest_degc=26.0,
            system="metric",
            paper_width_mm=WIDE_MM,
        ).primitives
        if isinstance(each, Area)
    ]
    key_alone = 5
    assert len(shares) == key_alone


def test_a_picture_without_a_bank_has_no_charge() -> None:
    without = replace(COLD.picture, charge_frac=())
    assert "Charge of the bank" not in _texts(
        day_picture(without, system="metric", paper_width_mm=WIDE_MM)
    )


def test_a_week_is_drawn_in_means_and_stays_small() -> None:
    week = _scene("week", "metric")
    longest = max(len(each.points_mm) for each in week.primitives if isinstance(each, Area))
    assert longest <= 2 * 200
    assert len(svg(week)) < 120_000
    assert "15 Jan" in _texts(week)


def test_dates_go_round_the_year() -> None:
    assert [date_words(day) for day in (58, 59, 364, 365)] == [
        "28 Feb",
        "1 Mar",
        "31 Dec",
        "1 Jan",
    ]
