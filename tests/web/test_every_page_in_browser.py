"""Every page in one run: no serious barrier by day, by night and on a phone; nothing too wide."""

from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import Browser, BrowserContext, ViewportSize, expect

from coachwright.actions.admitting import make_account
from coachwright.store.records import Role
from coachwright.web.navigation import PAGES
from tests.web.axe import violations
from tests.web.benches import bench_in, lay
from tests.web.conftest import WIDE
from tests.web.serving import Seat, serving

PHONE = ViewportSize(width=390, height=844)
HUGE = ViewportSize(width=2560, height=1440)
PASSWORD = "correct horse battery"  # noqa: S105  # of accounts in tests
BUILD = 1
PATHS = {each.title: each.address(BUILD) for each in PAGES}
LOOKS: dict[str, tuple[ViewportSize, Literal["light", "dark"]]] = {
    "day": (WIDE, "light"),
    "night": (WIDE, "dark"),
    "phone": (PHONE, "light"),
    "phone at night": (PHONE, "dark"),
}


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Return where the bench of a shop is served: with people, and a build that has troubles."""
    folder = tmp_path_factory.mktemp("shop")
    (folder / "coachwright").mkdir()
    bench = bench_in(folder / "coachwright")
    with bench.store:
        assert lay(bench, "troubled") == BUILD
        for name, role in (("olga", Role.OWNER), ("finn", Role.FLOOR)):
            make_account(
                bench, name, role, PASSWORD, salt=b"s" * 16, actor="test", at=datetime.now(UTC)
            )
    with serving(folder) as served:
        yield served


@pytest.fixture(scope="module")
def badge(browser: Browser, shop: str, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return what a browser keeps of an owner who has signed in."""
    kept = tmp_path_factory.mktemp("badge") / "owner.json"
    context = browser.new_context()
    page = context.new_page()
    page.goto(f"{shop}/sign-in")
    page.get_by_label("Name").fill("olga")
    page.get_by_label("Password").fill(PASSWORD)
    page.keyboard.press("Enter")
    page.wait_for_url(f"{shop}/")
    context.storage_state(path=kept)
    context.close()
    return kept


def _seated(context: BrowserContext, shop: str) -> Seat:
    context.set_default_timeout(60_000)
    return Seat(page=context.new_page(), address=shop)


def _settled(seat: Seat, path: str) -> None:
    """Open a page and wait until everything on it stands."""
    seat.go(path)
    expect(seat.page.locator("#content")).to_be_visible()
    seat.page.wait_for_load_state("networkidle")
    seat.page.evaluate("document.fonts.ready")
    if path.endswith("/board"):
        seat.page.locator(".piece").first.wait_for()


def _beyond(seat: Seat) -> int:
    """Return by how many pixels a page reaches beyond the screen."""
    beyond: int = seat.page.evaluate(
        "document.documentElement.scrollWidth - document.documentElement.clientWidth"
    )
    return beyond


@pytest.mark.parametrize("look", LOOKS)
def test_no_page_has_a_serious_barrier(
    browser: Browser, shop: str, badge: Path, look: str
) -> None:
    size, scheme = LOOKS[look]
    context = browser.new_context(
        viewport=size, color_scheme=scheme, storage_state=badge, reduced_motion="reduce"
    )
    seat = _seated(context, shop)
    found = {}
    for title, path in PATHS.items():
        _settled(seat, path)
        found[title] = violations(seat.page)
    context.close()
    assert {title: said for title, said in found.items() if said} == {}
    assert not seat.trouble


@pytest.mark.parametrize("size", [PHONE, HUGE], ids=["phone", "huge"])
def test_no_page_reaches_beyond_the_screen(
    browser: Browser, shop: str, badge: Path, size: ViewportSize
) -> None:
    context = browser.new_context(viewport=size, storage_state=badge, reduced_motion="reduce")
    seat = _seated(context, shop)
    found = {}
    for title, path in PATHS.items():
        _settled(seat, path)
        found[title] = _beyond(seat)
        current = seat.page.get_by_role("navigation", name="Pages").locator("[aria-current]")
        expect(current).to_have_text(title)
        expect(current).to_be_in_viewport()
    context.close()
    assert {title: by for title, by in found.items() if by > 0} == {}
    assert not seat.trouble


@pytest.mark.parametrize("look", LOOKS)
def test_the_sign_in_page_has_no_serious_barrier(browser: Browser, shop: str, look: str) -> None:
    size, scheme = LOOKS[look]
    context = browser.new_context(viewport=size, color_scheme=scheme, bypass_csp=True)
    seat = _seated(context, shop)
    seat.page.goto(f"{shop}/sign-in")
    assert violations(seat.page) == []
    assert _beyond(seat) <= 0
    context.close()
    assert not seat.trouble


def test_only_an_owner_is_shown_people_and_log(browser: Browser, shop: str, badge: Path) -> None:
    context = browser.new_context(viewport=WIDE, storage_state=badge)
    seat = _seated(context, shop)
    seat.go("/people")
    expect(seat.page.get_by_role("table", name="People")).to_contain_text("finn")
    expect(seat.page.get_by_role("table", name="Log")).to_contain_text("127.0.0.1")
    seat.page.get_by_role("button", name="Sign out").click()
    seat.page.wait_for_url("**/sign-in")
    seat.page.get_by_label("Name").fill("finn")
    seat.page.get_by_label("Password").fill(PASSWORD)
    seat.page.keyboard.press("Enter")
    seat.page.wait_for_url(f"{shop}/")
    seat.ready()
    pages = seat.page.get_by_role("navigation", name="Pages")
    expect(pages.get_by_role("link", name="Catalogue")).to_be_visible()
    expect(pages.get_by_role("link", name="People and log")).to_have_count(0)
    seat.go("/people")
    expect(seat.page.get_by_text("This page is for owners.")).to_be_visible()
    expect(seat.page.get_by_role("table", name="Log")).to_have_count(0)
    context.close()
    assert not seat.trouble
