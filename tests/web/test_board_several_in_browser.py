"""Several fittings at once, pins, what a fitting is fixed to, and the view that turns."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.web.axe import violations
from tests.web.on_the_board import (
    after_an_edit,
    drag,
    edit,
    figure,
    grab,
    opened,
    picked,
    piece,
    place,
)
from tests.web.serving import Seat

SAME_PX = 1.0


@pytest.fixture
def board(seat: Seat) -> Page:
    return opened(seat)


def press(page: Page, name: str, *, shift: bool = False) -> None:
    x, y = grab(page, name)
    was = piece(page, name).get_attribute("aria-pressed") == "true"
    if shift:
        page.keyboard.down("Shift")
    page.mouse.click(x, y)
    if shift:
        page.keyboard.up("Shift")
    becomes = "false" if was and shift else "true"
    expect(piece(page, name)).to_have_attribute("aria-pressed", becomes)


def test_two_picked_with_shift_move_as_one_edit_and_come_back_as_one(board: Page) -> None:
    press(board, "bench")
    press(board, "stall", shift=True)
    assert picked(board) == {"bench", "stall"}
    before = {name: place(board, name) for name in ("bench", "stall", "galley")}
    after_an_edit(board, lambda: drag(board, "stall", 12, 0))
    by = {name: place(board, name)[0] - before[name][0] for name in before}
    assert by["stall"] > 5
    assert by["bench"] == pytest.approx(by["stall"], abs=SAME_PX)
    assert by["galley"] == pytest.approx(by["stall"], abs=SAME_PX)  # it stands behind the bench
    after_an_edit(board, lambda: board.get_by_role("button", name="Undo").click())
    for name, (x, _) in before.items():
        assert place(board, name)[0] == pytest.approx(x, abs=SAME_PX)


def test_a_second_press_with_shift_lets_go_of_one(board: Page) -> None:
    press(board, "bench")
    press(board, "stall", shift=True)
    press(board, "bench", shift=True)
    assert picked(board) == {"stall"}


def test_a_band_picks_what_lies_wholly_in_it(board: Page) -> None:
    bench = piece(board, "bench").locator("rect").bounding_box()
    galley = piece(board, "galley").locator("rect").bounding_box()
    assert bench is not None
    assert galley is not None
    beside = galley["y"] + galley["height"] + 40  # there is nothing that could be picked
    board.mouse.move(bench["x"] - 30, beside)
    board.mouse.down()
    board.mouse.move(galley["x"], galley["y"], steps=3)
    expect(board.locator("rect.band")).to_be_attached()
    board.mouse.move(galley["x"] + galley["width"] + 4, galley["y"] - 4, steps=3)
    board.mouse.up()
    assert {"bench", "galley"} <= picked(board)
    assert "bed" not in picked(board)


def test_several_are_picked_moved_and_pinned_by_keyboard(board: Page) -> None:
    piece(board, "galley").focus()
    board.keyboard.press("Enter")
    board.keyboard.press("Shift+PageDown")
    assert len(picked(board)) == 2
    assert "galley" in picked(board)
    expect(board.locator(".pickedpart")).to_contain_text("2 fittings: galley")
    after_an_edit(board, lambda: board.keyboard.press("ArrowRight"))
    expect(board.locator(".board-said")).to_contain_text("and 1 more")
    after_an_edit(board, lambda: board.keyboard.press("p"))
    names = picked(board)
    for name in names:
        expect(piece(board, name)).to_have_attribute("aria-label", re.compile("pinned"))
    board.keyboard.press("ArrowRight")
    expect(board.locator(".board-said")).to_contain_text("pinned; P lets go")
    after_an_edit(board, lambda: board.keyboard.press("p"))
    after_an_edit(board, lambda: board.keyboard.press("ArrowRight"))


def test_everything_is_picked_with_one_stroke_and_let_go(board: Page) -> None:
    piece(board, "galley").focus()
    board.keyboard.press("Control+a")
    assert {"galley", "bench", "bed", "stall"} <= picked(board)
    assert "sink" not in picked(board)  # built into the galley, it goes along
    board.keyboard.press("Escape")
    assert picked(board) == set()


def test_a_finger_picks_several_where_there_is_no_shift(board: Page) -> None:
    several = board.get_by_role("button", name=re.compile("^Several"))
    several.click()
    expect(several).to_have_attribute("aria-pressed", "true")
    press(board, "bench")
    press(board, "stall")
    assert picked(board) == {"bench", "stall"}
    several.click()
    expect(several).to_have_attribute("aria-pressed", "false")
    press(board, "bench")
    assert picked(board) == {"bench"}


def test_several_are_moved_by_typed_lengths_turned_and_taken_out(board: Page) -> None:
    press(board, "bench")
    press(board, "stall", shift=True)
    panel = board.locator(".pickedpart")
    panel.get_by_label("Rearwards by").fill("2 in")
    after_an_edit(board, lambda: panel.get_by_role("button", name="Move them").click())
    panel.get_by_label("Rearwards by").fill("two inches")
    panel.get_by_role("button", name="Move them").click()
    expect(board.locator(".q-notification")).to_contain_text("no length")
    after_an_edit(board, lambda: panel.get_by_role("button", name="Turn by a quarter").click())
    after_an_edit(board, lambda: panel.get_by_role("button", name="Swap left").click())
    panel.get_by_role("button", name="Take out …").click()
    expect(board.locator(".q-dialog")).to_contain_text("Take out bench, stall?")
    board.locator(".q-dialog").get_by_role("button", name="Leave it").click()
    assert violations(board, ".pickedpart") == []


def test_a_pinned_fitting_is_not_dragged_turned_or_typed_away(board: Page) -> None:
    press(board, "galley")
    panel = board.locator(".pickedpart")
    after_an_edit(board, lambda: panel.get_by_role("button", name="Pin where it stands").click())
    before, number = place(board, "galley"), edit(board)
    drag(board, "galley", 40, 0)
    expect(board.locator(".board-said")).to_contain_text("galley is pinned")
    assert place(board, "galley") == before
    field = panel.locator(".places input").first
    field.fill("100 in")
    field.press("Enter")
    expect(board.locator(".q-notification")).to_contain_text("galley is pinned")
    expect(field).to_have_value("behind bench 0.75 in")
    assert edit(board) == number


def test_what_would_take_a_pinned_one_along_is_refused(board: Page) -> None:
    press(board, "galley")
    after_an_edit(board, lambda: board.keyboard.press("p"))
    number = edit(board)
    drag(board, "bench", 20, 0)
    expect(board.locator(".q-notification")).to_contain_text("would go along with bench")
    assert edit(board) == number


def test_what_it_is_fixed_to_is_chosen(board: Page) -> None:
    press(board, "galley")
    panel = board.locator(".pickedpart")
    panel.get_by_label("Fixed to").click()
    option = board.get_by_role("option", name="Ceiling")
    after_an_edit(board, option.click)
    expect(panel.locator(".places input").nth(2)).to_have_value("against ceiling")
    panel.get_by_label("Stands on").click()
    option = board.get_by_role("option", name="bench", exact=True)
    after_an_edit(board, option.click)
    after_an_edit(board, lambda: board.get_by_role("button", name="Undo").click())


def test_a_part_goes_where_the_shelf_says(board: Page) -> None:
    board.get_by_label("Fix it to").click()
    board.get_by_role("option", name="Ceiling").click()
    board.get_by_label("Find a part").fill("freezer")
    put = board.locator(".shelf").get_by_role("button", name=re.compile("Put in: .*reezer"))
    expect(put).to_have_count(1)
    after_an_edit(board, put.click)
    expect(board.locator(".places input").nth(2)).to_have_value("against ceiling")


def test_what_is_picked_from_the_list_is_shown_by_a_view_that_draws_it(board: Page) -> None:
    expect(piece(board, "battery-left")).to_have_count(0)
    board.get_by_label("Pick a fitting").click()
    board.keyboard.type("battery left")
    board.get_by_role("option", name=re.compile("battery left")).click()
    expect(piece(board, "battery-left")).to_have_attribute("aria-pressed", "true")


def test_the_view_that_turns_is_drawn_turned_and_picks(board: Page) -> None:
    board.get_by_role("button", name="3-D").click()
    paper = board.get_by_role("application", name=re.compile("Night watch all round"))
    expect(paper).to_be_visible()
    said = board.locator(".turning-said")
    expect(said).to_have_text("Seen from the front left, 32° from above")
    colours = paper.evaluate(
        """canvas => {
            const {width, height} = canvas;
            const all = canvas.getContext("2d").getImageData(0, 0, width, height).data;
            const found = new Set();
            for (let i = 0; i < all.length; i += 4) if (all[i + 3]) found.add(all[i] >> 4);
            return found.size;
        }"""
    )
    assert colours > 6
    paper.focus()
    for _ in range(3):
        board.keyboard.press("ArrowLeft")
    expect(said).to_contain_text("Seen from the front,")
    board.keyboard.press("ArrowUp")
    expect(said).to_contain_text("47° from above")
    board.keyboard.press("Home")
    expect(said).to_contain_text("Seen from the front left, 32°")
    board.keyboard.press("PageDown")
    expect(said).to_contain_text("Picked:")
    box = paper.bounding_box()
    assert box is not None
    board.mouse.move(box["x"] + 200, box["y"] + 200)
    board.mouse.down()
    board.mouse.move(box["x"] + 320, box["y"] + 200, steps=4)
    board.mouse.up()
    expect(said).not_to_contain_text("Seen from the front left,")
    assert violations(board) == []


def test_the_view_that_turns_follows_an_edit(board: Page) -> None:
    press(board, "galley")
    board.get_by_role("button", name="3-D").click()
    paper = board.locator("canvas.turning-paper")
    before = paper.evaluate("canvas => canvas.toDataURL()")
    panel = board.locator(".pickedpart")
    after_an_edit(board, lambda: panel.get_by_role("button", name="Turn by a quarter").click())
    board.wait_for_function(
        "before => document.querySelector('canvas.turning-paper').toDataURL() !== before",
        arg=before,
    )


def test_a_bank_of_batteries_is_exchanged_as_one(board: Page) -> None:
    board.get_by_label("Pick a fitting").click()
    board.keyboard.type("battery left")
    board.get_by_role("option", name=re.compile("battery left")).click()
    board.get_by_role("button", name="Exchange").click()
    dialog = board.locator(".q-dialog")
    expect(dialog.get_by_role("checkbox")).to_be_checked()
    expect(dialog).to_contain_text("battery middle, battery right")
    first = dialog.get_by_role("button", name=re.compile("^Take ")).first
    after_an_edit(board, first.click)
    expect(figure(board, "Payload left").locator(".moved")).to_contain_text("−")
    expect(board.locator(".pickedpart")).to_contain_text("460 Ah")
    after_an_edit(board, lambda: board.get_by_role("button", name="Undo").click())
    expect(board.locator(".pickedpart")).to_contain_text("330 Ah")
