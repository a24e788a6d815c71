"""The first minutes at the bench: by somebody who read no manual, and without a mouse.

What is counted here stands in the manual page of the bench.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect
from pypdf import PdfReader

from tests.web.on_the_board import (
    after_an_edit,
    drag,
    edit,
    figure,
    left_on_rear_axle,
    opened,
    piece,
)
from tests.web.serving import Seat

MANUAL = Path(__file__).parents[2] / "docs" / "bench.md"
MOST_STEPS = 60
MOST_TABS = 900
"""Through an order book that other tests have filled."""
NUDGES = 12
"""Of 10 mm each."""


@dataclass
class Person:
    """Somebody whose clicks are counted."""

    page: Page
    clicks: list[str] = field(default_factory=list)

    def click(self, what: Locator, said: str) -> None:
        what.click()
        self.clicks.append(said)

    def drag(self, name: str, across: float) -> None:
        drag(self.page, name, across, 0)
        self.clicks.append(f"drag the {name}")


def pages_of(paper: Path) -> int:
    """Return how many pages a paper has, as an independent library reads it."""
    return len(PdfReader(paper).pages)


def words_of(paper: Path) -> str:
    """Return the words of a paper, as an independent library reads them."""
    return "\n".join(page.extract_text() for page in PdfReader(paper).pages)


def downloaded(page: Page, deed: Callable[[], None], folder: Path) -> Path:
    with page.expect_download() as taken:
        deed()
    target = folder / taken.value.suggested_filename
    taken.value.save_as(target)
    return target


def test_from_the_order_book_to_a_printed_paper_without_a_manual(
    seat: Seat, tmp_path: Path
) -> None:
    person, page = Person(seat.page), seat.page
    seat.go("/")
    start = page.get_by_role("button", name="Open a copy: Night watch")
    person.click(start, "*Open a copy* on the card *Night watch*")
    page.wait_for_url("**/board")
    seat.ready()
    piece(page, "galley").wait_for()

    axle = left_on_rear_axle(page)
    after_an_edit(page, lambda: person.drag("galley", 10))
    assert left_on_rear_axle(page) != axle
    expect(figure(page, "Left on the rear axle").locator(".moved")).to_be_visible()

    payload = figure(page, "Payload left")
    before = payload.locator(".value").inner_text()
    person.click(page.get_by_label("Pick a fitting"), "the list *Pick a fitting*")
    battery = page.get_by_role("option", name=re.compile("battery left"))
    person.click(battery, "*battery left* in the list")
    expect(piece(page, "battery-left")).to_have_attribute("aria-pressed", "true")
    person.click(page.get_by_role("button", name="Exchange"), "*Exchange …*")
    dialog = page.locator(".q-dialog")
    expect(dialog.locator("tbody tr").nth(1)).to_contain_text("460 Ah")
    expect(dialog.locator("tbody tr").nth(1)).to_contain_text("+24.3 lb")
    bigger = dialog.get_by_role("button", name="Take Lithium battery 12 V 460 Ah, heated")
    after_an_edit(page, lambda: person.click(bigger, "*Take* beside the battery of 460 Ah"))
    assert payload.locator(".value").inner_text() != before
    # three batteries of 45 kg instead of 34 kg: 33 kg, 72.8 lb
    expect(payload.locator(".moved")).to_contain_text("−72.8 lb")
    person.click(payload, "*Payload left*: its working")
    expect(dialog).to_contain_text("left = limit")
    person.click(dialog.get_by_role("button", name="Close"), "*Close*")

    person.click(page.get_by_role("link", name="Papers"), "*Papers*")
    take = page.get_by_role("button", name="Download: Weight statement")
    paper = downloaded(
        page, lambda: person.click(take, "*Download* beside *Weight statement*"), tmp_path
    )
    assert pages_of(paper) >= 1
    assert "Night watch" in words_of(paper)

    manual = MANUAL.read_text(encoding="utf-8")
    for number, said in enumerate(person.clicks, start=1):
        assert f"| {number} | {said} |" in manual
    assert f"| {len(person.clicks) + 1} |" not in manual


def _tab_to(page: Page, wanted: Locator) -> int:
    """Press the Tab key until something has the focus; return how often."""
    wanted.wait_for()
    for count in range(1, MOST_TABS):
        page.keyboard.press("Tab")
        if wanted.evaluate("element => element === document.activeElement"):
            return count
    raise AssertionError(f"not reached with {MOST_TABS} steps")


def test_the_galley_is_moved_by_keyboard_from_the_order_book_on(seat: Seat) -> None:
    page = seat.page
    seat.go("/")
    _tab_to(page, page.get_by_role("button", name="Open a copy: Night watch"))
    page.keyboard.press("Enter")
    page.wait_for_url("**/board")
    seat.ready()
    piece(page, "galley").wait_for()
    page.keyboard.press("Tab")
    expect(page.locator(":focus")).to_have_text("To the content")
    page.keyboard.press("Enter")
    for _ in range(MOST_STEPS):
        page.keyboard.press("Tab")
        if page.locator(":focus").get_attribute("data-name"):
            break
    for _ in range(MOST_STEPS):
        if page.locator(":focus").get_attribute("data-name") == "galley":
            break
        page.keyboard.press("PageDown")
    expect(piece(page, "galley")).to_be_focused()
    expect(piece(page, "galley")).to_have_attribute("aria-pressed", "true")
    before = left_on_rear_axle(page)
    first = piece(page, "galley").locator("rect").get_attribute("x")
    # the first step makes a length of the relation, so that it is the whole way that is read
    after_an_edit(page, lambda: page.keyboard.press("ArrowRight"))
    place = page.locator(".places input").first
    start_in = float(place.input_value().removesuffix(" in"))
    for _ in range(NUDGES - 1):
        page.keyboard.press("ArrowRight")
    page.wait_for_function(
        "wanted => Math.abs(parseFloat(document.querySelector('.places input').value) - wanted)"
        " < 0.02",
        arg=start_in + (NUDGES - 1) * 10 / 25.4,
    )
    expect(figure(page, "Left on the rear axle").locator(".moved")).to_contain_text("−")
    assert left_on_rear_axle(page) != before
    for _ in range(NUDGES):
        after_an_edit(page, lambda: page.keyboard.press("Control+z"))
        if page.locator(".places input").first.input_value() == "behind bench 0.75 in":
            break
    assert left_on_rear_axle(page) == before
    assert piece(page, "galley").locator("rect").get_attribute("x") == first


def test_two_states_are_compared_after_the_galley_was_dragged(seat: Seat) -> None:
    page = opened(seat)
    after_an_edit(page, lambda: drag(page, "galley", 10, 0))
    page.get_by_role("link", name="Revisions").click()
    page.get_by_role("button", name="Compare", exact=True).click()
    expect(page.locator(".overlay svg")).to_be_visible()
    expect(page.locator(".revisions")).to_contain_text("galley")


@pytest.mark.parametrize(
    ("paper", "word"), [("Weight statement", "axle"), ("Parts list", "Galley block")]
)
def test_a_paper_of_what_was_changed_opens(
    seat: Seat, tmp_path: Path, paper: str, word: str
) -> None:
    page = opened(seat)
    after_an_edit(page, lambda: drag(page, "galley", 10, 0))
    assert edit(page) == 2
    page.get_by_role("link", name="Papers").click()
    take = page.get_by_role("button", name=f"Download: {paper}")
    taken = downloaded(page, take.click, tmp_path)
    assert pages_of(taken) >= 1
    assert word in words_of(taken)
