"""The shop floor in real browsers: two tick at once, by keyboard, on a phone."""

import re
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from playwright.sync_api import Browser, ViewportSize, expect

from coachwright.actions.admitting import make_account
from coachwright.store.records import Role, Step
from tests.web.benches import bench_in, lay
from tests.web.serving import Seat, serving

PHONE = ViewportSize(width=390, height=844)
PASSWORD = "correct horse battery"  # noqa: S105  # of accounts in tests
THINGS = ("bench", "fridge", "galley", "sink", "roof-fan", "tray")
_LONG_MS = 30_000


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return where the data of a bench with two people of the floor stand."""
    folder = tmp_path_factory.mktemp("floor")
    (folder / "coachwright").mkdir()
    bench = bench_in(folder / "coachwright")
    with bench.store:
        lay(bench)
        for name, role in (("olga", Role.OWNER), ("finn", Role.FLOOR), ("gus", Role.FLOOR)):
            make_account(
                bench, name, role, PASSWORD, salt=b"s" * 16, actor="test", at=datetime.now(UTC)
            )
    return folder


@pytest.fixture(scope="module")
def floor(folder: Path) -> Iterator[str]:
    """Return where that bench is served."""
    with serving(folder) as served:
        yield served


def _here(browser: Browser, address: str, name: str) -> Seat:
    context = browser.new_context(viewport=PHONE, has_touch=True)
    context.set_default_timeout(_LONG_MS)
    seat = Seat(page=context.new_page(), address=address)
    seat.page.goto(f"{address}/build/1/floor")
    seat.page.get_by_label("Name").fill(name)
    seat.page.get_by_label("Password").fill(PASSWORD)
    seat.page.keyboard.press("Enter")
    seat.page.wait_for_url("**/build/1/floor")
    seat.ready()
    return seat


def _tick(seat: Seat, step: Step, thing: str) -> None:
    button = seat.page.get_by_role(
        "button", name=re.compile(f"^{step.value.capitalize()}: .*, {thing}$")
    )
    button.click()
    expect(button).to_have_attribute("aria-pressed", "true", timeout=_LONG_MS)


def test_two_who_tick_at_once_see_each_others_ticks_and_lose_none(
    browser: Browser, floor: str, folder: Path
) -> None:
    finn, gus = (_here(browser, floor, name) for name in ("finn", "gus"))
    for thing in THINGS:
        _tick(finn, Step.HERE, thing)
        _tick(gus, Step.FITTED, thing)
    for seat in (finn, gus):
        counted = seat.page.get_by_text(re.compile(rf"^{len(THINGS)} of \d+ here, "))
        expect(counted).to_contain_text(f"{len(THINGS)} fitted", timeout=_LONG_MS)
        assert not seat.trouble
        seat.page.context.close()
    with bench_in(folder / "coachwright").store as store:
        kept = {(each.thing, each.actor) for each in store.floor.ticks(1) if each.done}
        assert kept >= {(thing, name) for thing in THINGS for name in ("finn", "gus")}
        assert any(each.deed == "ticked: fitted" for each in store.audit(most=1000))


def test_somebody_ticks_by_keyboard_and_stays_where_they_were(
    browser: Browser, floor: str
) -> None:
    seat = _here(browser, floor, "gus")
    button = seat.page.get_by_role("button", name=re.compile("^Here: .*, electrics-bay$"))
    button.focus()
    seat.page.keyboard.press("Space")
    expect(button).to_have_attribute("aria-pressed", "true", timeout=_LONG_MS)
    expect(button).to_have_text("☑ Here")
    expect(button).to_be_focused()
    seat.page.keyboard.press("Tab")
    expect(seat.page.locator(":focus")).to_have_attribute(
        "aria-label", re.compile("^Fitted: .*, electrics-bay$")
    )
    high = button.evaluate("each => each.getBoundingClientRect().height")
    assert high >= 44, "WCAG 2.2, 2.5.5: a target for a thumb"
    assert not seat.trouble
    seat.page.context.close()
