"""The sheets of a build in a real browser: readable, reachable by keyboard, printed."""

import io
import zipfile
from pathlib import Path

import pytest
from playwright.sync_api import ViewportSize

from coachwright.papers.pack import DOCUMENTS
from tests.web.axe import violations
from tests.web.screens import opened
from tests.web.serving import Seat

PHONE = ViewportSize(width=390, height=844)
SHEETS = ("findings", "weights", "energy", "water", "road", "room", "papers")


@pytest.mark.parametrize("slug", SHEETS)
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_no_serious_violation(seat: Seat, slug: str, scheme: str) -> None:
    seat.page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
    build = opened(seat, "Troubled")
    seat.go(f"{build}/{slug}")
    seat.page.wait_for_load_state("networkidle")
    assert violations(seat.page) == []


@pytest.mark.parametrize("slug", SHEETS)
def test_a_phone_shows_a_sheet_without_scrolling_sideways(seat: Seat, slug: str) -> None:
    seat.page.set_viewport_size(PHONE)
    build = opened(seat, "Night watch")
    seat.go(f"{build}/{slug}")
    wide = seat.page.evaluate("document.documentElement.scrollWidth")
    assert wide <= PHONE["width"]


def test_the_job_pack_is_printed_and_taken_away(seat: Seat, tmp_path: Path) -> None:
    build = opened(seat, "Night watch")
    seat.go(f"{build}/papers")
    seat.page.get_by_role("button", name="Print the job pack").click()
    seat.page.get_by_text(f"All {len(DOCUMENTS)} papers are printed").wait_for(timeout=60_000)
    with seat.page.expect_download() as taken:
        seat.page.get_by_role("button", name="Download all as one archive").click()
    with zipfile.ZipFile(io.BytesIO(Path(taken.value.path()).read_bytes())) as packed:
        assert tuple(packed.namelist()) == DOCUMENTS
        assert packed.read("weight-statement.pdf").startswith(b"%PDF")
    with seat.page.expect_download() as one:
        seat.page.get_by_role("button", name="Download: Weight statement").click()
    assert Path(one.value.path()).read_bytes().startswith(b"%PDF")
    assert one.value.suggested_filename == "night-watch-c-weight-statement.pdf"


def test_a_figure_opens_its_working_by_keyboard(seat: Seat) -> None:
    build = opened(seat, "Night watch")
    seat.go(f"{build}/weights")
    assert seat.page.get_by_text("Result:").count() == 0
    seat.page.locator("details.figure summary").first.focus()
    seat.page.keyboard.press("Enter")
    seat.page.get_by_text("Result:").wait_for()


def test_show_me_leads_to_the_fitting_on_the_drawing_board(seat: Seat) -> None:
    build = opened(seat, "Troubled")
    seat.go(f"{build}/findings")
    seat.page.get_by_role("button", name="Show me on the drawing board: wardrobe").first.click()
    seat.page.wait_for_url("**/board?pick=wardrobe")


def test_printing_can_be_stopped(seat: Seat) -> None:
    build = opened(seat, "Night watch")
    seat.go(f"{build}/papers")
    seat.page.get_by_role("button", name="Print the job pack").click()
    seat.page.get_by_role("button", name="Stop printing").click()
    said = seat.page.get_by_text("Stopped;")
    said.wait_for(timeout=60_000)
    assert f"of {len(DOCUMENTS)} papers" in said.inner_text()


def test_the_pages_of_a_paper_are_looked_at(seat: Seat) -> None:
    build = opened(seat, "Night watch")
    seat.go(f"{build}/papers")
    seat.page.get_by_role("button", name="Look at: Weight statement").click()
    first = seat.page.get_by_alt_text("Page 1 of")
    first.wait_for(timeout=30_000)
    assert first.evaluate("picture => picture.naturalWidth") > 800


def test_a_finding_is_accepted_by_keyboard_alone(seat: Seat) -> None:
    build = opened(seat, "Night watch")
    seat.go(f"{build}/findings")
    opener = seat.page.get_by_role("button", name="Accept: ").first
    opener.focus()
    seat.page.keyboard.press("Enter")
    seat.page.get_by_label("Your role in the shop").wait_for()
    assert opener.get_attribute("aria-expanded") == "true"
    seat.page.get_by_label("Your role in the shop").focus()
    seat.page.keyboard.type("workshop master")
    seat.page.keyboard.press("Tab")
    seat.page.keyboard.type("the customer knows and wants it so")
    seat.page.keyboard.press("Tab")
    seat.page.keyboard.press("Enter")
    seat.page.get_by_text("Accepted by the workshop master").wait_for()
