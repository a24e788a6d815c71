"""Two people with one build open: each sees the other's edits, and nothing is written over."""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.web.conftest import WIDE
from tests.web.serving import Seat

MASS = "Weight, dressed"


@pytest.fixture
def two(browser: Browser, address: str) -> Iterator[tuple[Seat, Seat]]:
    """Return two people at browsers of their own, with one build open at its brief."""
    seats = tuple(
        Seat(page=browser.new_context(viewport=WIDE).new_page(), address=address) for _ in range(2)
    )
    anna, bert = seats
    anna.go("/")
    anna.page.get_by_role("button", name="Open a copy").nth(1).click()
    anna.page.wait_for_url(re.compile(r"/build/\d+/board"))
    anna.ready()
    path = re.sub(r"board.*", "brief", anna.page.url.removeprefix(address))
    for seat in seats:
        seat.go(path)
    yield anna, bert
    for seat in seats:
        seat.page.context.close()
        assert not seat.trouble


def _mass(page: Page, person: int = 0) -> str:
    return page.get_by_label(MASS).nth(person).input_value()


def _type(page: Page, text: str, person: int = 0) -> None:
    field = page.get_by_label(MASS).nth(person)
    field.click()
    field.fill(text)


def test_each_sees_the_others_edit_at_once(two: tuple[Seat, Seat]) -> None:
    anna, bert = two
    _type(anna.page, "260 lb")
    anna.page.keyboard.press("Tab")
    expect(bert.page.get_by_label(MASS).first).to_have_value("260 lb")
    expect(bert.page.get_by_text("also open in another window")).to_be_visible()


def test_different_answers_are_merged(two: tuple[Seat, Seat]) -> None:
    anna, bert = two
    _type(bert.page, "150 lb", person=1)
    _type(anna.page, "255 lb")
    anna.page.keyboard.press("Tab")
    expect(bert.page.get_by_label(MASS).first).to_have_value("255 lb")
    bert.page.keyboard.press("Tab")
    expect(anna.page.get_by_label(MASS).nth(1)).to_have_value("150 lb")
    assert _mass(anna.page) == "255 lb"


@pytest.mark.parametrize(
    ("choice", "first"), [("Leave theirs", "250 lb"), ("Have mine", "190 lb")]
)
def test_the_second_to_save_sees_what_collides_and_chooses(
    two: tuple[Seat, Seat], choice: str, first: str
) -> None:
    anna, bert = two
    _type(bert.page, "190 lb")
    _type(anna.page, "250 lb")
    anna.page.keyboard.press("Tab")
    expect(bert.page.get_by_text("meanwhile: 250 lb")).to_be_visible()
    assert _mass(bert.page) == "190 lb"
    bert.page.keyboard.press("Tab")
    asked = bert.page.get_by_role("dialog")
    expect(asked.get_by_text("changed the same meanwhile")).to_be_visible()
    expect(asked.get_by_text("250 lb")).to_be_visible()
    expect(asked.get_by_text("190 lb")).to_be_visible()
    assert _mass(anna.page) == "250 lb"
    asked.get_by_role("button", name=choice).click()
    expect(asked).to_be_hidden()
    for seat in two:
        expect(seat.page.get_by_label(MASS).first).to_have_value(first)


def test_both_can_be_kept(two: tuple[Seat, Seat]) -> None:
    anna, bert = two
    _type(bert.page, "190 lb")
    _type(anna.page, "250 lb")
    anna.page.keyboard.press("Tab")
    expect(bert.page.get_by_text("meanwhile: 250 lb")).to_be_visible()
    bert.page.keyboard.press("Tab")
    before = bert.page.url
    bert.page.get_by_role("button", name="Keep both").click()
    bert.page.wait_for_url(re.compile(r"/build/\d+/board"))
    assert bert.page.url.partition("/board")[0] != before.partition("/brief")[0]
    assert _mass(anna.page) == "250 lb"
