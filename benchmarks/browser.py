"""The bench in the real browser: edits, first pages, many people, two people on one build."""

import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page, sync_playwright
from tests.web.conftest import WIDE
from tests.web.on_the_board import drag, edit, grab, opened, piece
from tests.web.serving import Seat, launch, serving

from benchmarks.figures import Row, latency

EDITS = 60
PEOPLE = 20
FIRST_PAGES = 9
ROUNDS_OF_TWO = 10
ACROSS_PX = 44

_WATCH = """
() => {
  const seen = (window.benchSeen = { from: 0, column: 0, page: 0 });
  const now = (place) => () => { seen[place] = performance.now(); };
  const all = { subtree: true, childList: true, characterData: true, attributes: true };
  new MutationObserver(now("column")).observe(document.querySelector(".headline"), all);
  new MutationObserver(now("page")).observe(document.querySelector(".bench"), all);
  const begin = () => Object.assign(seen, { from: performance.now(), column: 0, page: 0 });
  document.addEventListener("pointerup", begin, true);
  document.addEventListener("keydown", (event) => {
    if (!["Control", "Shift"].includes(event.key)) begin();
  }, true);
}
"""
"""Notes when a person let go of something, and when anything in the column or the page changed."""
_STILL = """
(wanted) => {
  const { from, column, page } = window.benchSeen;
  const shown = document.querySelector("header").innerText.match(/edit (\\d+)/);
  if (!shown || Number(shown[1]) < wanted || !column) return null;
  if (performance.now() - Math.max(column, page) < 200) return null;
  return [column - from, page - from];
}
"""
_READY = """
() => {
  const shown = [".piece", ".headline .value"].every((each) => document.querySelector(each));
  return window.did_handshake && shown ? performance.now() : null;
}
"""


def rows() -> Iterator[Row]:
    """Measure, and yield each row as it is known."""
    with (
        tempfile.TemporaryDirectory() as folder,
        serving(Path(folder)) as address,
        sync_playwright() as playwright,
    ):
        browser = launch(playwright)
        yield from _edits(browser, address)
        yield from _first_pages(browser, address)
        yield from _two_people(browser, address)
        yield from _many_people(browser, address)
        browser.close()


def _seat(browser: Browser, address: str) -> Seat:
    return Seat(page=browser.new_context(viewport=WIDE).new_page(), address=address)


def _watched(browser: Browser, address: str) -> Page:
    page = opened(_seat(browser, address))
    page.evaluate(_WATCH)
    return page


def _until_still(page: Page, wanted: int) -> tuple[float, float]:
    """Return after how many ms the column and the whole page last changed."""
    found: Any = page.wait_for_function(_STILL, arg=wanted).json_value()
    return float(found[0]), float(found[1])


def _one_edit(page: Page, turn: int) -> tuple[float, float]:
    """Drop the galley elsewhere, mirror it by a key, or undo, in turn."""
    wanted = edit(page) + 1
    kind = turn % 3
    if kind == 0:
        drag(page, "galley", ACROSS_PX if turn % 2 else -ACROSS_PX, 0)
    elif kind == 1:
        piece(page, "galley").focus()
        page.keyboard.press("m")
    else:
        page.keyboard.press("Control+z")
    return _until_still(page, wanted)


def _edits(browser: Browser, address: str) -> Iterator[Row]:
    page = _watched(browser, address)
    for turn in range(6):  # the first ones only warm up
        _one_edit(page, turn)
    taken = [_one_edit(page, turn) for turn in range(EDITS)]
    yield latency("an edit of demo (a) to every figure fresh", [each[0] for each in taken], 100)
    yield latency("  and to drawing and findings fresh too", [each[1] for each in taken])
    page.context.close()


def _first_pages(browser: Browser, address: str) -> Iterator[Row]:
    page = opened(_seat(browser, address))
    path = page.url
    page.context.close()
    taken_ms: list[float] = []
    for _ in range(FIRST_PAGES):
        seat = _seat(browser, address)
        seat.page.goto(path, wait_until="commit")
        taken_ms.append(float(seat.page.wait_for_function(_READY).json_value()))
        seat.page.context.close()
    yield latency("first page interactive, nothing cached", taken_ms, 1500)


def _two_people(browser: Browser, address: str) -> Iterator[Row]:
    """Let two people drop different fittings of one build at once."""
    first = opened(_seat(browser, address))
    second = _seat(browser, address).page
    second.goto(first.url)
    piece(second, "stall").wait_for()
    before = edit(first)
    for turn in range(ROUNDS_OF_TWO):
        for page, name in ((first, "galley"), (second, "stall")):
            x, y = grab(page, name)
            page.mouse.move(x, y)
            page.mouse.down()
            page.mouse.move(x + (ACROSS_PX if turn % 2 else -ACROSS_PX), y, steps=3)
        first.mouse.up()
        second.mouse.up()
        wanted = before + 2 * (turn + 1)
        for page in (first, second):
            page.wait_for_function(
                "wanted => document.querySelector('header').innerText.includes(`edit ${wanted}`)",
                arg=wanted,
            )
    dropped, kept = 2 * ROUNDS_OF_TWO, edit(first) - before
    yield Row(
        name=f"two people drop at once in one build, {dropped} edits over the web",
        said=f"kept {kept}, lost {dropped - kept}",
        budget="lost 0",
    )
    for page in (first, second):
        page.context.close()


def _many_people(browser: Browser, address: str) -> Iterator[Row]:
    pages = [_watched(browser, address) for _ in range(PEOPLE)]
    drops = (0, 3)  # turns that drop the galley, there and back
    taken_ms = [_one_edit(page, turn)[0] for turn in drops for page in pages]
    yield latency(f"the same with {PEOPLE} people's builds open in one process", taken_ms, 300)
    for page in pages:
        page.context.close()
