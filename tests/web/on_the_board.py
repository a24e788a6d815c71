"""What tests of the drawing board in a real browser share."""

import re
from collections.abc import Callable

from playwright.sync_api import Locator, Page, expect

from tests.web.serving import Seat

_YEAR_MS = 120_000
"""On a busy machine, and where the loop of the year has yet to be compiled."""


def opened(seat: Seat) -> Page:
    """Open a fresh copy of demo (a) on the drawing board, and wait until its year is there.

    The column of figures grows when the year comes; what lies beside it must not move away from
    under a press.
    """
    seat.go("/")
    seat.page.get_by_role("button", name="Open a copy: Night watch").click()
    seat.page.wait_for_url("**/board")
    seat.ready()
    piece(seat.page, "galley").wait_for()
    expect(figure(seat.page, "Nine of ten stays")).to_be_visible(timeout=_YEAR_MS)
    return seat.page


def piece(page: Page, name: str) -> Locator:
    """Return a fitting in the drawing."""
    return page.locator(f'.piece[data-name="{name}"]')


def picked(page: Page) -> set[str]:
    """Return the names of the fittings that are picked in the drawing."""
    found = page.locator('.piece[aria-pressed="true"]')
    return {str(each.get_attribute("data-name")) for each in found.all()}


def figure(page: Page, label: str) -> Locator:
    """Return a line of the column of figures."""
    return page.locator(".headline .line", has_text=label)


def left_on_rear_axle(page: Page) -> str:
    """Return what is left on the rear axle, as it is shown."""
    return figure(page, "Left on the rear axle").locator(".value").inner_text()


def edit(page: Page) -> int:
    """Return the number of the last edit."""
    said = page.locator("header").get_by_text(re.compile(r"edit \d+$")).inner_text()
    return int(said.rpartition(" ")[2])


def after_an_edit(page: Page, deed: Callable[[], object]) -> None:
    """Do something and wait until the page shows the build after it."""
    before = edit(page)
    deed()
    expect(page.locator("header").get_by_text(re.compile(rf"edit {before + 1}$"))).to_be_visible()


def place(page: Page, name: str) -> tuple[float, float]:
    """Return where a fitting stands on the screen."""
    box = piece(page, name).locator("rect").bounding_box()
    assert box is not None
    return box["x"], box["y"]


def grab(page: Page, name: str) -> tuple[float, float]:
    """Return where to take hold of a fitting: at its upper edge, where nothing is built in."""
    box = piece(page, name).locator("rect").bounding_box()
    assert box is not None
    return box["x"] + box["width"] / 2, box["y"] + 3


def drag(page: Page, name: str, across: float, up: float) -> None:
    """Drag a fitting by some pixels."""
    x, y = grab(page, name)
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + across / 2, y - up / 2, steps=3)
    page.mouse.move(x + across, y - up, steps=3)
    page.mouse.up()
