"""Pictures of every page of the bench, by day, by night and on a phone: `make screens`."""

import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Literal

from playwright.sync_api import Browser, Page, ViewportSize, sync_playwright

from coachwright.actions.admitting import make_account
from coachwright.actions.benching import lay_open
from coachwright.actions.shop_floor import tick
from coachwright.store.records import Role, Step
from coachwright.web.navigation import PAGES
from tests.web.benches import NOW, bench_in, lay
from tests.web.serving import Seat, launch, serving

FOLDER = Path("out") / "screens"
DEMOS = ("Night watch", "Troubled")
SIZES: dict[str, tuple[ViewportSize, Literal["light", "dark"]]] = {
    "day": ({"width": 1440, "height": 900}, "light"),
    "night": ({"width": 1440, "height": 900}, "dark"),
    "phone": ({"width": 390, "height": 844}, "light"),
    "wide": ({"width": 2560, "height": 1440}, "light"),
}
_PASSWORD = "correct horse battery"  # noqa: S105  # of a bench that is thrown away
_TICKED = {
    Step.HERE: ("bench", "galley", "fridge", "sink", "roof-fan", "battery-left", "tray"),
    Step.FITTED: ("bench", "galley", "rails-front"),
}
_MOST_HIGH = 5000
"""Longer pages are cut off in their picture."""


def opened(seat: Seat, name: str) -> str:
    """Open a copy of a demonstration build and return the address of its pages."""
    seat.go("/")
    row = seat.page.locator(".card", has_text=name).filter(has=seat.page.get_by_role("button"))
    row.get_by_role("button", name="Open a copy").first.click()
    seat.page.wait_for_url("**/board")
    return seat.page.url.partition(seat.address)[2].rpartition("/")[0]


def pictures(
    browser: Browser, address: str, only: tuple[str, ...], sizes: tuple[str, ...]
) -> Iterator[Path]:
    """Yield the picture of each page at each size."""
    for size in sizes:
        viewport, scheme = SIZES[size]
        context = browser.new_context(viewport=viewport, color_scheme=scheme)
        seat = Seat(page=context.new_page(), address=address)
        builds = [opened(seat, name) for name in DEMOS]
        for page in PAGES:
            if only and page.slug not in only:
                continue
            for build, demo in zip(builds, DEMOS, strict=True) if page.of_build else (("", ""),):
                seat.go(f"{build}/{page.slug}")
                word = demo.lower().replace(" ", "-") or "shop"
                yield _picture(seat.page, FOLDER / f"{page.slug or 'home'}-{word}-{size}.png")
        for line in seat.trouble:
            print(f"{size}: {line}")  # noqa: T201  # for whoever looks at the pictures
        context.close()


def _picture(page: Page, path: Path) -> Path:
    page.wait_for_load_state("networkidle")
    page.evaluate("document.fonts.ready")
    path.parent.mkdir(parents=True, exist_ok=True)
    high = min(page.evaluate("document.documentElement.scrollHeight"), _MOST_HIGH)
    wide = page.viewport_size["width"] if page.viewport_size else 0
    page.screenshot(
        path=path, full_page=True, clip={"x": 0, "y": 0, "width": wide, "height": high}
    )
    return path


def pictures_with_people(
    browser: Browser, folder: Path, only: tuple[str, ...], sizes: tuple[str, ...]
) -> Iterator[Path]:
    """Yield pictures of what only a bench with accounts shows: signing in, people, ticks."""
    (folder / "coachwright").mkdir()
    bench = bench_in(folder / "coachwright")
    with bench.store:
        number = lay(bench)
        for name, role in (("olga", Role.OWNER), ("dora", Role.DESIGNER), ("finn", Role.FLOOR)):
            make_account(bench, name, role, _PASSWORD, salt=b"s" * 16, actor="setup", at=NOW)
        work = lay_open(bench, number)
        for step, things in _TICKED.items():
            for thing in things:
                tick(bench, work, thing, step, done=True, actor="finn", at=NOW)
    with serving(folder) as address:
        for size in sizes:
            viewport, scheme = SIZES[size]
            context = browser.new_context(viewport=viewport, color_scheme=scheme)
            seat = Seat(page=context.new_page(), address=address)
            seat.page.goto(f"{address}/sign-in")
            if not only or "sign-in" in only:
                yield _picture(seat.page, FOLDER / f"sign-in-{size}.png")
            seat.page.get_by_label("Name").fill("olga")
            seat.page.get_by_label("Password").fill(_PASSWORD)
            seat.page.keyboard.press("Enter")
            seat.page.wait_for_url(f"{address}/")
            for slug, path in (("people", "/people"), ("floor", f"/build/{number}/floor")):
                if not only or slug in only:
                    seat.go(path)
                    yield _picture(seat.page, FOLDER / f"{slug}-with-people-{size}.png")
            context.close()


def main(words: list[str]) -> None:
    """Write the pictures; words name pages (slugs) or sizes, none means every one."""
    sizes = tuple(word for word in words if word in SIZES) or tuple(SIZES)
    only = tuple(word for word in words if word not in SIZES)
    with (
        tempfile.TemporaryDirectory() as folder,
        serving(Path(folder)) as address,
        sync_playwright() as playwright,
    ):
        browser = launch(playwright)
        for path in pictures(browser, address, only, sizes):
            print(path)  # noqa: T201  # for whoever looks at the pictures
        with tempfile.TemporaryDirectory() as other:
            for path in pictures_with_people(browser, Path(other), only, sizes):
                print(path)  # noqa: T201  # for whoever looks at the pictures
        browser.close()


if __name__ == "__main__":
    main(sys.argv[1:])
