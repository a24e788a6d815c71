"""Seasons at the bench: an invented year on the page, and what stands there without one."""

from dataclasses import replace

import pytest
from nicegui.testing import User

from coachwright.actions.benching import Bench
from coachwright.living.model import Living
from coachwright.papers.view_climate import climate_of
from coachwright.papers.view_year import year_of
from tests.support.living_sample import LIVING, WITHOUT
from tests.web.benches import lay


@pytest.fixture
def invented(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let every build have the invented year."""
    _with(monkeypatch, LIVING)


def _with(monkeypatch: pytest.MonkeyPatch, living: Living) -> None:
    reading = "coachwright.actions.reading"
    monkeypatch.setattr(f"{reading}.climate_view", lambda each: climate_of(each.build, living))
    monkeypatch.setattr(f"{reading}.year_view", lambda each: year_of(each.build, living))


@pytest.mark.usefixtures("invented")
async def test_the_promise_stands_first_with_its_caution(user: User, bench: Bench) -> None:
    await user.open(f"/build/{lay(bench)}/seasons")
    await user.should_see("Five of ten January stays last at least")
    await user.should_see("Invented for tests by nobody")
    await user.should_see("The weather is synthetic")


@pytest.mark.usefixtures("invented")
@pytest.mark.parametrize(
    "seen",
    [
        "How long a stand lasts",
        "Energy in and out by month",
        "Warmth and comfort by month",
        "The design cold night",
        "The design hot day",
        "Drying wet kit",
        "Damp, frost and used air by month",
        "Where the heat goes",
        "What one change would do",
    ],
)
async def test_the_page_shows_its_parts(user: User, bench: Bench, seen: str) -> None:
    await user.open(f"/build/{lay(bench)}/seasons")
    await user.should_see(seen)


@pytest.mark.usefixtures("invented")
async def test_another_site_is_chosen(user: User, bench: Bench) -> None:
    await user.open(f"/build/{lay(bench)}/seasons")
    await user.should_see("at Lakeside, invented; nine of ten")
    user.find(content="Hillside, invented").click()
    await user.should_see("at Hillside, invented; nine of ten")
    await user.should_not_see("Drying wet kit")


async def test_one_site_offers_no_choice(
    user: User, bench: Bench, monkeypatch: pytest.MonkeyPatch
) -> None:
    _with(monkeypatch, replace(LIVING, years=LIVING.years[:1]))
    await user.open(f"/build/{lay(bench)}/seasons")
    await user.should_see("at Lakeside, invented; nine of ten")
    await user.should_not_see("Hillside")


async def test_without_a_year_the_page_says_why(
    user: User, bench: Bench, monkeypatch: pytest.MonkeyPatch
) -> None:
    _with(monkeypatch, WITHOUT)
    await user.open(f"/build/{lay(bench)}/seasons")
    await user.should_see("Missing: the brief names no site.")
    await user.should_not_see("The design cold night")
