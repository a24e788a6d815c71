"""Brief, revisions and catalogue: no serious barrier, nothing beyond the screen, by keyboard."""

import re
from collections.abc import Iterator
from typing import Literal

import pytest
from playwright.sync_api import Browser, FilePayload, ViewportSize, expect

from tests.web.axe import violations
from tests.web.conftest import WIDE
from tests.web.serving import Seat

PHONE = ViewportSize(width=390, height=844)
HUGE = ViewportSize(width=2560, height=1440)
Scheme = Literal["light", "dark"]
PRICES = b"Article,Description,Weight,List price\n7,A fan,2.5,120.00\n8,A pump,heavy,3.00\n"


@pytest.fixture(params=["light", "dark"])
def person(browser: Browser, address: str, request: pytest.FixtureRequest) -> Iterator[Seat]:
    """Return somebody who works by day or by night, with a build open at its brief."""
    scheme: Scheme = "dark" if request.param == "dark" else "light"
    context = browser.new_context(viewport=WIDE, color_scheme=scheme, reduced_motion="reduce")
    made = Seat(page=context.new_page(), address=address)
    _open(made)
    yield made
    context.close()
    assert not made.trouble


def _open(seat: Seat) -> None:
    seat.go("/")
    seat.page.get_by_role("button", name="Open a copy").nth(1).click()
    seat.page.wait_for_url(re.compile(r"/build/\d+/board"))
    seat.ready()
    _turn(seat, "brief")


def _turn(seat: Seat, page: str) -> None:
    seat.go(re.sub(r"(/build/\d+)/.*", rf"\1/{page}", seat.page.url.removeprefix(seat.address)))


def test_the_brief_and_what_it_asks_have_no_serious_barrier(person: Seat) -> None:
    expect(person.page.get_by_label("Days in one place")).to_be_visible()
    assert violations(person.page) == []
    _turn(person, "revisions")
    person.page.get_by_role("button", name="Name this state").click()
    expect(person.page.get_by_role("dialog").get_by_label("Note")).to_be_visible()
    assert violations(person.page, ".q-dialog") == []


def test_revisions_have_no_serious_barrier(person: Seat) -> None:
    field = person.page.get_by_label("Days in one place")
    field.fill("6 d")
    field.press("Tab")
    expect(person.page.locator("header").get_by_text(re.compile("edit 2$"))).to_be_visible()
    _turn(person, "revisions")
    person.page.get_by_role("button", name="Compare", exact=True).click()
    expect(person.page.locator(".overlay svg")).to_be_visible()
    expect(person.page.get_by_text("No fitting differs.")).to_be_visible()
    assert violations(person.page) == []


def test_the_catalogue_has_no_serious_barrier(person: Seat) -> None:
    person.go("/catalogue")
    assert violations(person.page) == []
    found = person.page.get_by_text(re.compile(r"^\d+ parts$"))
    every = found.inner_text()
    person.page.get_by_label("Search").fill("galley")
    expect(found).not_to_have_text(every)  # until then the rows are about to be made anew
    person.page.get_by_role("button", name="Galley block 1200").click()
    expect(person.page.get_by_role("dialog").get_by_text("used in")).to_be_visible()
    assert violations(person.page, ".q-dialog") == []


def test_a_list_is_handed_in_by_keyboard_and_looked_at(person: Seat) -> None:
    person.go("/catalogue")
    person.page.get_by_role("button", name="Price list").click()
    choose = person.page.get_by_role("button", name="Choose a list")
    with person.page.expect_file_chooser() as chosen:
        choose.focus()  # answered by the page, which by then hands choosers to us: keys overtake
        person.page.keyboard.press("Enter")
    chosen.value.set_files(FilePayload(name="p.csv", mimeType="text/csv", buffer=PRICES))
    expect(person.page.locator(".quiet", has_text="p.csv")).to_be_visible()
    held = person.page.get_by_label("Map").input_value()
    person.page.get_by_label("Map").fill(held.replace('decimal = ","', 'decimal = "."'))
    person.page.get_by_role("button", name="Look at the rows").click()
    expect(person.page.get_by_text("north-7")).to_be_visible()
    expect(person.page.get_by_text('row 3, column "Weight" (body.mass)')).to_be_visible()
    assert violations(person.page) == []


@pytest.mark.parametrize("size", [PHONE, HUGE], ids=["phone", "huge"])
def test_nothing_reaches_beyond_the_screen(seat: Seat, size: ViewportSize) -> None:
    _open(seat)
    seat.page.set_viewport_size(size)
    for page in ("brief", "revisions"):
        _turn(seat, page)
        assert _reach(seat) <= size["width"], page
    seat.go("/catalogue")
    assert _reach(seat) <= size["width"]
    seat.page.get_by_role("button", name="Base vehicles").click()
    expect(seat.page.get_by_role("table", name="Base vehicles")).to_be_visible()
    assert _reach(seat) <= size["width"]


def _reach(seat: Seat) -> int:
    found: int = seat.page.evaluate("document.documentElement.scrollWidth")
    return found
