"""The order book and the drawing board: no serious barrier, by day, by night and on a phone."""

from collections.abc import Iterator
from typing import Literal

import pytest
from playwright.sync_api import Browser, ViewportSize, expect

from tests.web.axe import violations
from tests.web.conftest import WIDE
from tests.web.serving import Seat

PHONE = ViewportSize(width=390, height=844)
HUGE = ViewportSize(width=2560, height=1440)
Scheme = Literal["light", "dark"]


@pytest.fixture(params=["light", "dark"])
def scheme(request: pytest.FixtureRequest) -> Scheme:
    return "dark" if request.param == "dark" else "light"


@pytest.fixture
def person(browser: Browser, address: str, scheme: Scheme) -> Iterator[Seat]:
    """Return somebody who works by day or by night."""
    context = browser.new_context(viewport=WIDE, color_scheme=scheme)
    made = Seat(page=context.new_page(), address=address)
    yield made
    context.close()
    assert not made.trouble


def opened(seat: Seat, name: str) -> None:
    seat.go("/")
    seat.page.get_by_role("button", name=f"Open a copy: {name}").click()
    seat.page.wait_for_url("**/board")
    seat.ready()
    seat.page.locator(".piece").first.wait_for()


def test_the_order_book_has_no_serious_barrier(person: Seat) -> None:
    person.go("/")
    expect(person.page.locator(".thumb svg").last).to_be_visible()
    assert violations(person.page) == []


@pytest.mark.parametrize("name", ["Night watch", "Troubled"])
def test_the_drawing_board_has_no_serious_barrier(person: Seat, name: str) -> None:
    opened(person, name)
    person.page.locator(".piece").first.focus()
    person.page.keyboard.press("Enter")
    expect(person.page.locator(".places input").first).to_be_visible()
    assert violations(person.page) == []


@pytest.mark.parametrize("size", [PHONE, HUGE], ids=["phone", "huge"])
def test_nothing_reaches_beyond_the_screen(seat: Seat, size: ViewportSize) -> None:
    seat.page.set_viewport_size(size)
    opened(seat, "Night watch")
    for path in ("/", seat.page.url.removeprefix(seat.address)):
        seat.go(path)
        wide = seat.page.evaluate("document.documentElement.scrollWidth")
        assert wide <= size["width"]


def test_the_way_to_the_content_is_first_and_focus_is_seen(seat: Seat) -> None:
    opened(seat, "Night watch")
    seat.page.keyboard.press("Tab")
    expect(seat.page.locator(":focus")).to_have_text("To the content")
    seat.page.keyboard.press("Tab")
    outline = seat.page.locator(":focus").evaluate("e => getComputedStyle(e).outlineStyle")
    assert outline == "solid"
