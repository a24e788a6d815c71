"""Seasons in a real browser: dials by keyboard, a week that moves, nothing kept."""

import pytest
from playwright.sync_api import Locator, ViewportSize, expect

from tests.web.screens import opened
from tests.web.serving import Seat

LONG_MS = 120_000
"""The first year of a site loads the compiler; on a busy machine that takes long."""
PHONE = ViewportSize(width=390, height=844)


def _part(seat: Seat, name: str) -> Locator:
    return seat.page.locator(f"section[aria-label='{name}']")


def _opened(seat: Seat) -> str:
    build = opened(seat, "Night watch")
    seat.go(f"{build}/seasons")
    _part(seat, "A week of the year").locator(".drawing svg").wait_for(timeout=LONG_MS)
    return build


def test_a_dial_turned_by_keyboard_answers_and_keeps_nothing(seat: Seat) -> None:
    _opened(seat)
    before = seat.page.get_by_text("edit ").first.inner_text()
    dial = seat.page.get_by_label("Solar panels")
    was = dial.get_attribute("aria-valuetext")
    dial.focus()
    for _ in range(4):
        seat.page.keyboard.press("ArrowRight")
    assert dial.get_attribute("aria-valuetext") != was
    tried = _part(seat, "What if …")
    tried.get_by_text("nine of ten at least").wait_for(timeout=LONG_MS)
    assert tried.locator("table tr").count() > 3
    assert dial.input_value() == "14"
    assert seat.page.get_by_text("edit ").first.inner_text() == before
    tried.get_by_role("button", name="As the build is").click()
    expect(tried.get_by_text("nine of ten at least")).to_have_count(0)


def test_the_week_moves_by_keys_and_by_buttons(seat: Seat) -> None:
    _opened(seat)
    week = _part(seat, "A week of the year")
    dial = seat.page.get_by_label("First day of the week")
    dial.focus()
    seat.page.keyboard.press("ArrowRight")
    week.locator("[aria-label*='16 Jan to 22 Jan'] svg").wait_for(timeout=LONG_MS)
    week.get_by_role("button", name="A week later").click()
    week.locator("[aria-label*='23 Jan to 29 Jan'] svg").wait_for(timeout=LONG_MS)
    assert dial.input_value() == "22"


@pytest.mark.parametrize("narrow", [True, False])
def test_nothing_is_wider_than_the_screen(seat: Seat, *, narrow: bool) -> None:
    if narrow:
        seat.page.set_viewport_size(PHONE)
    _opened(seat)
    seat.page.get_by_label("House battery").focus()
    seat.page.keyboard.press("ArrowRight")
    _part(seat, "What if …").locator(".drawing svg").wait_for(timeout=LONG_MS)
    wide = seat.page.evaluate("[document.documentElement.scrollWidth, innerWidth]")
    assert wide[0] <= wide[1]
