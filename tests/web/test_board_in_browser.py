"""The drawing board in a real browser: drag, nudge, undo, exchange, add, and another person."""

import re

import pytest
from playwright.sync_api import Browser, Page, Position, expect

from tests.web.conftest import WIDE
from tests.web.on_the_board import (
    after_an_edit,
    drag,
    edit,
    left_on_rear_axle,
    opened,
    piece,
)
from tests.web.serving import Seat


@pytest.fixture
def board(seat: Seat) -> Page:
    """Return the drawing board with a fresh copy of demo (a) on it."""
    return opened(seat)


def test_dragging_the_galley_rearwards_moves_axle_loads_and_findings_and_can_be_undone(
    board: Page,
) -> None:
    before = left_on_rear_axle(board)
    stops = board.locator(".verdict")
    expect(stops).to_contain_text("0 stops")
    after_an_edit(board, lambda: drag(board, "galley", 60, 0))
    assert left_on_rear_axle(board) != before
    expect(board.locator(".line", has_text="Left on the rear axle")).to_contain_text(
        "▼"  # mass moved rearwards loads the rear axle: less is left
    )
    expect(stops).not_to_contain_text("0 stops")
    expect(board.locator(".shortfindings")).to_contain_text("galley")
    expect(board.locator("rect.clash").first).to_be_attached()
    after_an_edit(board, lambda: board.get_by_role("button", name="Undo").click())
    assert left_on_rear_axle(board) == before
    expect(stops).to_contain_text("0 stops")
    after_an_edit(board, lambda: board.keyboard.press("Control+y"))
    assert left_on_rear_axle(board) != before


def test_a_relation_becomes_a_length_on_the_axis_that_is_moved(board: Page) -> None:
    piece(board, "galley").focus()
    board.keyboard.press("Enter")
    place = board.locator(".places input")
    expect(place.nth(0)).to_have_value("behind bench 0.75 in")
    after_an_edit(board, lambda: board.keyboard.press("ArrowRight"))
    expect(place.nth(0)).to_have_value(re.compile(r"^\d+\.\d\d? in$"))
    expect(place.nth(1)).to_have_value("against left wall")


def test_arrow_keys_go_ten_millimetres_and_one_with_shift(board: Page) -> None:
    piece(board, "galley").focus()
    board.keyboard.press("Enter")
    said = board.locator(".board-said")
    after_an_edit(board, lambda: board.keyboard.press("ArrowRight"))
    expect(said).to_contain_text("0.39 in rearwards")
    after_an_edit(board, lambda: board.keyboard.press("Shift+ArrowLeft"))
    expect(said).to_contain_text("0.04 in forwards")


def test_what_is_in_the_way_is_said_while_dragging(board: Page) -> None:
    box = piece(board, "galley").locator("rect").bounding_box()
    assert box is not None
    board.mouse.move(box["x"] + box["width"] / 2, box["y"] + 3)
    board.mouse.down()
    board.mouse.move(box["x"] + box["width"] / 2 + 80, box["y"] + 3, steps=4)
    expect(board.locator(".board-said")).to_contain_text("runs into")
    expect(board.locator("rect.ghost.in-trouble").first).to_be_attached()
    board.keyboard.press("Escape")
    board.mouse.up()


def test_the_drawing_follows_a_typed_place(board: Page) -> None:
    piece(board, "galley").focus()
    board.keyboard.press("Enter")
    before = piece(board, "galley").locator("rect").bounding_box()
    place = board.locator(".places input").nth(0)
    place.fill("behind bench 6 in")
    after_an_edit(board, lambda: place.press("Enter"))
    after = piece(board, "galley").locator("rect").bounding_box()
    assert before is not None
    assert after is not None
    assert after["x"] > before["x"]


def test_what_makes_no_sense_is_refused_with_a_sentence(board: Page) -> None:
    piece(board, "galley").focus()
    board.keyboard.press("Enter")
    place = board.locator(".places input").nth(0)
    place.fill("behind moon 6 in")
    place.press("Enter")
    expect(board.locator(".q-notification")).to_contain_text("moon")
    assert edit(board) == 1


def test_a_bigger_battery_is_chosen_and_its_mass_is_seen(board: Page) -> None:
    view = board.get_by_role("button", name="Plan, floor")
    view.click()
    expect(view).to_have_attribute("aria-pressed", "true")  # until then the old view has the keys
    piece(board, "battery-left").focus()
    board.keyboard.press("Enter")
    board.get_by_role("button", name="Exchange").click()
    choice = board.locator(".q-dialog").get_by_role("button", name=re.compile("^Take ")).first
    after_an_edit(board, choice.click)
    expect(board.locator(".line", has_text="Payload left").locator(".moved")).to_be_visible()


def test_a_part_is_put_in_from_the_shelf_and_taken_out_again(board: Page) -> None:
    board.get_by_label("Find a part").fill("freezer")
    put = board.locator(".shelf").get_by_role("button", name=re.compile("Put in: .*reezer"))
    expect(put).to_have_count(1)
    after_an_edit(board, put.click)
    expect(piece(board, "freezer-chest-32l")).to_have_attribute("aria-pressed", "true")
    board.get_by_role("button", name="Take out …").click()
    after_an_edit(board, lambda: board.get_by_role("button", name="Take out", exact=True).click())
    expect(piece(board, "freezer-chest-32l")).to_have_count(0)


def test_a_part_is_dropped_where_it_is_wanted(board: Page) -> None:
    board.get_by_label("Find a part").fill("freezer")
    part = board.locator(".shelf li.part", has_text="reezer")
    expect(part).to_have_count(1)
    target = piece(board, "bench").locator("rect").bounding_box()
    sheet = board.locator(".board-sheet").bounding_box()
    assert target is not None
    assert sheet is not None
    wanted = Position(x=target["x"] - sheet["x"] + 30, y=target["y"] - sheet["y"] - 40)
    sheet_of = board.locator(".board-sheet")
    after_an_edit(board, lambda: part.drag_to(sheet_of, target_position=wanted))
    dropped = piece(board, "freezer-chest-32l").locator("rect").bounding_box()
    assert dropped is not None
    middle = dropped["x"] + dropped["width"] / 2 - sheet["x"]
    assert middle == pytest.approx(wanted["x"], abs=6)


def test_every_view_is_drawn(board: Page) -> None:
    views = board.get_by_role("group", name="Views").get_by_role("button")
    for number in range(views.count() - 1):  # the last is the one that turns
        views.nth(number).click()
        expect(views.nth(number)).to_have_attribute("aria-pressed", "true")
        expect(board.locator(".board-drawing svg")).to_be_visible()


def test_the_whole_of_it_by_keyboard(board: Page) -> None:
    piece(board, "galley").focus()
    board.keyboard.press("PageDown")
    picked = board.locator('.piece[aria-pressed="true"]')
    expect(picked).to_have_count(1)
    name = picked.get_attribute("data-name")
    board.keyboard.press("PageUp")
    expect(picked).not_to_have_attribute("data-name", str(name))
    expect(picked).to_be_focused()
    after_an_edit(board, lambda: board.keyboard.press("m"))
    after_an_edit(board, lambda: board.keyboard.press("Control+z"))


def test_a_figure_opens_its_working(board: Page) -> None:
    board.get_by_role("button", name=re.compile("Left on the rear axle")).click()
    expect(board.locator(".q-dialog")).to_contain_text("left = limit")


def test_show_me_from_another_page_picks_the_fitting(board: Page, seat: Seat) -> None:
    seat.go(board.url.removeprefix(seat.address) + "?pick=stall")
    expect(piece(board, "stall")).to_have_attribute("aria-pressed", "true")


def test_two_people_see_each_others_edits(board: Page, browser: Browser, seat: Seat) -> None:
    other = browser.new_context(viewport=WIDE)
    second = Seat(page=other.new_page(), address=seat.address)
    second.go(board.url.removeprefix(seat.address))
    before = left_on_rear_axle(second.page)
    drag(board, "galley", 60, 0)
    expect(second.page.locator("header")).to_contain_text("edit 2")
    assert left_on_rear_axle(second.page) != before
    assert not second.trouble
    other.close()


def test_a_drag_outlasts_the_edit_of_another_person(
    board: Page, browser: Browser, seat: Seat
) -> None:
    other = browser.new_context(viewport=WIDE)
    second = Seat(page=other.new_page(), address=seat.address)
    second.go(board.url.removeprefix(seat.address))
    box = piece(board, "galley").locator("rect").bounding_box()
    assert box is not None
    x, y = box["x"] + box["width"] / 2, box["y"] + 3
    board.mouse.move(x, y)
    board.mouse.down()
    board.mouse.move(x + 40, y, steps=4)
    piece(second.page, "stall").focus()
    second.page.keyboard.press("Enter")
    after_an_edit(second.page, lambda: second.page.keyboard.press("ArrowRight"))
    expect(board.locator("header")).to_contain_text("edit 2")
    expect(board.locator("rect.ghost").first).to_be_attached()
    board.mouse.move(x + 50, y)
    after_an_edit(board, board.mouse.up)
    expect(second.page.locator("header")).to_contain_text("edit 3")
    assert not second.trouble
    other.close()


def test_many_quick_presses_are_all_kept(board: Page) -> None:
    piece(board, "galley").focus()
    board.keyboard.press("Enter")
    place = board.locator(".places input").nth(0)
    expect(place).to_have_value("behind bench 0.75 in")
    board.keyboard.press("Shift+ArrowRight")
    expect(place).to_have_value(re.compile(r"^\d"))
    first_in = float(place.input_value().removesuffix(" in"))
    for _ in range(12):
        board.keyboard.press("ArrowRight")
        board.wait_for_timeout(40)
    wanted = first_in + 120 / 25.4
    board.wait_for_function(
        "wanted => Math.abs(parseFloat(document.querySelector('.places input').value)"
        " - wanted) < 0.02",
        arg=wanted,
    )
