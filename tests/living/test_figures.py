"""Headline figures: the promise, what is told of weather, and other sites."""

import pytest

from coachwright.living.figures import figures, sentence
from coachwright.living.model import without_years
from coachwright.units import worded
from tests.support.living import hot_day, living, stands, year


def test_the_promise_is_the_poorest_month_of_the_season() -> None:
    made = figures(living(season_months=(6, 7)))
    by_name = {figure.name: figure for figure in made.figures}
    promise = by_name["living.nine-of-ten-days"]
    assert promise.value == 8.0  # June: 2 + 6 days
    assert "June" in promise.label
    assert by_name["living.five-of-ten-days"].value == 10.0
    assert promise.working is not None
    assert "five of ten June stays" in worded(promise.working.note)


def test_each_working_ends_in_its_figure() -> None:
    """Those of nights, days and the body are made by what computes them, and held there."""
    made = figures(living())
    own = ("days", "coldest-inside", "hot-day-hours", "fuel", "comfort")
    found = [each for each in made.figures if each.name.endswith(own)]
    assert len(found) == 5
    for figure in found:
        assert figure.working is not None
        assert figure.working.result == pytest.approx(figure.value), figure.name


def test_synthetic_weather_is_said_with_how_far_it_may_be_off() -> None:
    made = figures(living(year(origin="synthetic", caution="sun 13 % high at most")))
    weathered = [each for each in made.figures if "Testville" in each.label]
    assert len(weathered) > 5
    for figure in weathered:
        assert "synthetic weather" in figure.label
        assert figure.working is not None
        assert "sun 13 % high" in figure.working.note


def test_other_sites_have_figures_of_their_own() -> None:
    made = figures(living(year(), year(site="northville", title="Northville")))
    names = [figure.name for figure in made.figures]
    assert "living.nine-of-ten-days-at-northville" in names
    assert len(names) == len(set(names))


def test_a_day_that_is_held_says_so() -> None:
    made = figures(living(year(hot_day=hot_day(hours_h=None))))
    (found,) = [each for each in made.figures if each.name == "living.hot-day-hours"]
    assert found.value == 24.0
    assert "or longer" in found.label


def test_without_years_the_promise_is_missing_and_says_why() -> None:
    made = figures(without_years("a site"))
    assert [figure.value for figure in made.figures] == [None, None]
    assert {figure.missing for figure in made.figures} == {"a site"}


def test_without_a_bank_no_stay_is_promised() -> None:
    made = figures(living(year(stands=(), cold_night=None, hot_day=None, fuel="")))
    (found,) = [each for each in made.figures if each.name == "living.nine-of-ten-days"]
    assert found.value is None
    assert found.missing == "a battery"


def test_a_stay_that_was_followed_to_the_end_is_that_long_or_longer() -> None:
    told = worded(sentence(stands(7, 12.0, 21.0, 21.0), "Oslo"))
    assert told == (
        "five of ten July stays last 21 days or more at Oslo; nine of ten at least 12 days"
    )
