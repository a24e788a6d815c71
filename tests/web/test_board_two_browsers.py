"""Two persons at one drawing board: a drag that another has overtaken is merged or asked about."""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.web.conftest import WIDE
from tests.web.on_the_board import after_an_edit, edit, grab, opened, piece, place
from tests.web.serving import Seat

SAME_PX = 1.0


@pytest.fixture
def two(browser: Browser, address: str) -> Iterator[tuple[Page, Page]]:
    """Return two persons at browsers of their own, with one build on the board."""
    seats = [
        Seat(page=browser.new_context(viewport=WIDE).new_page(), address=address) for _ in range(2)
    ]
    anna, bert = seats
    opened(anna)
    bert.go(anna.page.url.removeprefix(address))
    piece(bert.page, "galley").wait_for()
    yield anna.page, bert.page
    for seat in seats:
        seat.page.context.close()
        assert not seat.trouble


def lifted(page: Page, name: str, across: float) -> None:
    """Take hold of a fitting and draw it some way, without letting go."""
    x, y = grab(page, name)
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + across, y, steps=4)


def nudge(page: Page, name: str, key: str = "ArrowRight") -> None:
    piece(page, name).focus()
    page.keyboard.press("Enter")
    after_an_edit(page, lambda: page.keyboard.press(key))


def typed_place(page: Page) -> str:
    return page.locator(".places input").first.input_value()


def dragged_over(anna: Page, bert: Page) -> None:
    """Let Anna drag the galley while Bert nudges it, and drop it after that."""
    lifted(anna, "galley", 40)
    nudge(bert, "galley")
    expect(anna.locator("header")).to_contain_text("edit 2")
    anna.mouse.up()
    asked = anna.get_by_role("dialog")
    expect(asked.get_by_text("changed the same meanwhile")).to_be_visible()


def test_drags_of_two_fittings_are_both_kept(two: tuple[Page, Page]) -> None:
    anna, bert = two
    before = {name: place(anna, name)[0] for name in ("galley", "stall")}
    lifted(anna, "galley", 40)
    nudge(bert, "stall")
    expect(anna.locator("header")).to_contain_text("edit 2")
    after_an_edit(anna, anna.mouse.up)
    expect(bert.locator("header")).to_contain_text("edit 3")
    for page in two:
        assert place(page, "galley")[0] > before["galley"] + 20
        assert place(page, "stall")[0] > before["stall"]


def test_a_drag_of_what_another_has_moved_is_asked_about(two: tuple[Page, Page]) -> None:
    anna, bert = two
    dragged_over(anna, bert)
    theirs = typed_place(bert)
    asked = anna.get_by_role("dialog")
    expect(asked).to_contain_text("behind bench 0.75 in")
    assert edit(bert) == 2  # nothing is written over
    asked.get_by_role("button", name="Leave theirs").click()
    expect(asked).to_be_hidden()
    piece(anna, "galley").wait_for()
    assert typed_place(bert) == theirs
    assert place(anna, "galley")[0] == pytest.approx(place(bert, "galley")[0], abs=SAME_PX)


def test_one_may_insist(two: tuple[Page, Page]) -> None:
    anna, bert = two
    start = place(bert, "galley")[0]
    dragged_over(anna, bert)
    theirs = typed_place(bert)
    anna.get_by_role("dialog").get_by_role("button", name="Have mine").click()
    expect(bert.locator("header")).to_contain_text("edit 3")
    expect(bert.locator(".places input").first).not_to_have_value(theirs)
    # from where it was lifted, not from where the other had put it meanwhile
    assert place(bert, "galley")[0] - start == pytest.approx(40, abs=10)


def test_what_is_dragged_stays_under_the_pointer_while_another_moves_it(
    two: tuple[Page, Page],
) -> None:
    anna, bert = two
    lifted(anna, "galley", 40)
    ghost = anna.locator("rect.ghost").first
    before = ghost.bounding_box()
    nudge(bert, "galley")
    expect(anna.locator("header")).to_contain_text("edit 2")
    anna.wait_for_function("document.querySelector('header').textContent.includes('edit 2')")
    after = ghost.bounding_box()
    assert before is not None
    assert after is not None
    assert after["x"] == pytest.approx(before["x"], abs=SAME_PX)
    anna.keyboard.press("Escape")
    anna.mouse.up()


def test_what_somebody_types_of_a_place_outlasts_an_edit_and_is_asked_about(
    two: tuple[Page, Page],
) -> None:
    anna, bert = two
    piece(anna, "galley").focus()
    anna.keyboard.press("Enter")
    field = anna.locator(".places input").first
    field.click()
    field.fill("behind bench 5 in")
    nudge(bert, "stall")
    expect(anna.locator("header")).to_contain_text("edit 2")
    expect(field).to_have_value("behind bench 5 in")
    nudge(bert, "galley")
    expect(anna.locator(".placefield").first).to_contain_text("meanwhile:")
    field.press("Enter")
    asked = anna.get_by_role("dialog")
    expect(asked).to_contain_text("behind bench 5 in")
    asked.get_by_role("button", name="Have mine").click()
    expect(bert.locator(".places input").first).to_have_value("behind bench 5 in")


def test_a_drag_of_what_another_has_taken_out_is_asked_about(two: tuple[Page, Page]) -> None:
    anna, bert = two
    lifted(anna, "stall", 10)
    piece(bert, "stall").focus()
    bert.keyboard.press("Enter")
    bert.get_by_role("button", name="Take out …").click()
    after_an_edit(bert, lambda: bert.get_by_role("button", name="Take out", exact=True).click())
    expect(piece(anna, "stall")).to_have_count(0)
    anna.mouse.up()
    asked = anna.get_by_role("dialog")
    expect(asked.get_by_text("changed the same meanwhile")).to_be_visible()
    asked.get_by_role("button", name=re.compile("Leave theirs")).click()
    expect(asked).to_be_hidden()
    assert edit(bert) == 2
