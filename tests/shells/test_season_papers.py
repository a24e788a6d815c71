"""Climate sheet and energy through the year: what they say of an invented year, and when not."""

import dataclasses
import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest

from coachwright.living.model import AWAITED, without_years
from coachwright.model.build import Build
from coachwright.papers.render import Press
from coachwright.papers.season_months import damp_table, energy_in_table, fuel_table, stands_table
from coachwright.papers.season_parts import cold_pairs, drying_pairs, hot_pairs
from coachwright.papers.season_words import poorest, promise_words, weather_words
from coachwright.papers.view_climate import climate_of
from coachwright.papers.view_year import year_of
from coachwright.papers.wording import in_words
from tests.support.builds import build
from tests.support.living_sample import COLD, DRYING, HOT, LIVING, WITHOUT, YEAR
from tests.support.paper_build import PAPERS, PAPERS_US

BUILDS = {"eu": PAPERS, "us": PAPERS_US}
VIEWS = {"climate": climate_of, "year": year_of}
SPACE = "\N{NO-BREAK SPACE}"


def _build(place: str) -> Build:
    return build(BUILDS[place])


def _view(name: str, place: str, living: Any = LIVING) -> Any:
    made = _build(place)
    return in_words(VIEWS[name](made, living), made.brief.units)


def _strings(data: Any) -> Iterator[str]:
    if isinstance(data, str):
        yield data
    elif isinstance(data, dict):
        for key, item in data.items():
            if not key.endswith("drawing"):
                yield from _strings(item)
    elif isinstance(data, list | tuple):
        for item in data:
            yield from _strings(item)


def test_the_promise_is_that_of_the_poorest_month_of_travel() -> None:
    promise = poorest(YEAR, (6, 7, 8))
    assert promise is not None
    assert promise.month == 6
    january = poorest(YEAR, tuple(range(1, 13)))
    assert january is not None
    said = promise_words(YEAR, january, "metric").replace(SPACE, " ")
    assert said == (
        "Five of ten January stays last at least 2.9 days at Lakeside, invented; nine of ten at "
        "least 1.8 days."
    )
    assert poorest(YEAR, ()) is None


def test_a_stand_that_was_followed_to_the_end_is_told_as_or_more() -> None:
    july = YEAR.stands[6]
    assert "21.0 days or more" in promise_words(YEAR, july, "metric").replace(SPACE, " ")


@pytest.mark.parametrize("name", VIEWS)
@pytest.mark.parametrize("place", BUILDS)
def test_every_paper_is_typeset(name: str, place: str) -> None:
    assert Press().pdf(name, _view(name, place)).startswith(b"%PDF-")


@pytest.mark.parametrize("name", VIEWS)
def test_without_a_year_a_paper_says_why(name: str) -> None:
    view = _view(name, "eu", WITHOUT)
    assert view.missing == "There is no year. Missing: the brief names no site."
    assert view.sites == ()
    assert Press().pdf(name, view).startswith(b"%PDF-")


def test_a_year_that_is_being_computed_is_told_as_such() -> None:
    awaited = _view("climate", "eu", without_years(AWAITED))
    assert awaited.missing == "The year is being computed."


@pytest.mark.parametrize("name", VIEWS)
@pytest.mark.parametrize("place", BUILDS)
def test_strings_are_for_people(name: str, place: str) -> None:
    texts = list(_strings(dataclasses.asdict(_view(name, place))))
    assert texts
    assert not [text for text in texts if re.search(r"\d+\.\d{4,}", text)]
    assert not [text for text in texts if re.search(r"\b[a-z]{2,}(?:_[a-z0-9]+)+\b", text)]
    assert not [text for text in texts if "⟦" in text or "None" in text]


@pytest.mark.parametrize("name", VIEWS)
def test_units_are_those_of_the_brief(name: str) -> None:
    cells = {place: " ".join(_strings(dataclasses.asdict(_view(name, place)))) for place in BUILDS}
    assert not re.search(r"°F|US gal|cfm", cells["eu"])
    assert "°F" in cells["us"]
    caution = YEAR.caution.split(":")[0]
    assert not re.search(r"\d°C|m³/h", cells["us"].replace(YEAR.caution, caution))


@pytest.mark.parametrize("name", VIEWS)
def test_where_the_weather_comes_from_is_told_with_its_caution(name: str) -> None:
    block = _view(name, "eu").sites[0]
    assert block.attribution == "Weather: synthetic; Invented for tests by nobody."
    assert "synthetic" in block.caution
    assert weather_words(replace(YEAR, attribution="")) == "Weather: synthetic."


def test_a_hot_room_has_its_caution_and_a_mild_one_has_not() -> None:
    assert "doctor" in _view("climate", "eu").sites[0].drying_caution
    mild = replace(LIVING, years=(replace(YEAR, drying=replace(DRYING, hot=False)),))
    assert _view("climate", "eu", mild).sites[0].drying_caution == ""


def test_what_a_site_has_not_is_left_out() -> None:
    hillside = _view("climate", "eu").sites[1]
    assert (hillside.hot, hillside.hot_drawing, hillside.drying) == ((), "", ())
    assert hillside.cold


def test_a_bank_that_was_not_followed_is_not_drawn() -> None:
    still = replace(COLD.picture, charge_frac=(1.0,) * len(COLD.picture.charge_frac))
    year = replace(YEAR, cold_night=replace(COLD, picture=still))
    drawing = _view("climate", "eu", replace(LIVING, years=(year,))).sites[0].cold_drawing
    assert "Charge of the bank" not in drawing
    assert "Charge of the bank" in _view("climate", "eu").sites[0].cold_drawing


def test_what_never_ends_is_said() -> None:
    cold = cold_pairs(replace(COLD, heat_up_h=None), "L", "metric")
    assert "never" in [each.value for each in cold]
    hot = hot_pairs(replace(HOT, hours_h=None, mild_duty_frac=None), "metric")
    assert {"through the day", "–"} <= {each.value for each in hot}
    never = drying_pairs(_build("eu"), replace(DRYING, hours_h=None))
    assert "never" in [each.value for each in never]


def test_tables_have_a_line_for_each_month() -> None:
    made = _build("eu")
    assert len(stands_table(YEAR, "metric").rows) == 13
    assert stands_table(YEAR, "metric").rows[-1][0] == "Whole year"
    damp = damp_table(made, YEAR)
    assert [len(row) for row in damp.rows] == [len(damp.names)] * 12
    assert any("grey tank (pos. 8)" in name for name in damp.names)
    without = replace(
        YEAR, months=tuple(replace(each, bank_low_degc=None) for each in YEAR.months)
    )
    assert "–" in energy_in_table(without, "metric").rows[0]


def test_what_was_not_given_has_a_column_of_its_own() -> None:
    assert any("Not given" in name for name in fuel_table(YEAR, "metric").names)
    given = replace(
        YEAR,
        fuel="propane",
        fuel_by_mass=True,
        months=tuple(replace(each, unmet_wh={}) for each in YEAR.months),
    )
    table = fuel_table(given, "us")
    assert table.names[1] == "Heating, propane, lb"
    assert table.note == "Whatever was wanted was given in every month."


def test_a_change_is_told_beside_what_was() -> None:
    (row,) = _view("year", "eu").changes.rows
    assert row[0] == "One more panel"
    assert [each.replace(SPACE, " ") for each in row[1:3]] == ["2.4 days", "1.8 days"]
