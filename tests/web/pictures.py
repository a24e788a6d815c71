"""The pictures of the README: `make pictures` takes them anew, small enough for a repository."""

import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

from playwright.sync_api import Browser, Page, ViewportSize, expect, sync_playwright

from tests.web.screens import opened
from tests.web.serving import Seat, launch, serving

FOLDER = Path("docs") / "pictures"
MOST_BYTES = 250_000
_SIZE = ViewportSize(width=1440, height=900)
_SCALE = 0.75
"""Of a picture against the screen."""
_MOVED = {
    "base_event": 1,
    "edits": [
        {"do": "put", "path": ["fittings", "galley", "at"], "value": ["behind bench 120 mm",
         "against left wall", "against floor"]},
        {"do": "put", "path": ["brief", "stay", "parked"], "value": "5 d"},
    ],
}  # fmt: skip


def _board(seat: Seat) -> None:
    seat.go(f"{opened(seat, 'Night watch')}/board?pick=galley")
    seat.page.locator(".piece").first.wait_for()
    expect(seat.page.locator(".places input").first).to_be_visible()


def _findings(seat: Seat) -> None:
    seat.go(f"{opened(seat, 'Troubled')}/findings")


def _weights(seat: Seat) -> None:
    seat.go(f"{opened(seat, 'Night watch')}/weights")


def _revisions(seat: Seat) -> None:
    build = opened(seat, "Night watch")
    number = build.rpartition("/")[2]
    kept = seat.page.request.post(f"{seat.address}/api/v1/builds/{number}/edits", data=_MOVED)
    assert kept.ok, kept.text()
    seat.go(f"{build}/revisions")
    seat.page.get_by_role("button", name="Compare", exact=True).click()
    seat.page.locator(".overlay svg").wait_for()


PICTURES: dict[str, Callable[[Seat], None]] = {
    "board": _board,
    "findings": _findings,
    "weights": _weights,
    "revisions": _revisions,
}
"""Name of a picture → what brings its page onto the screen."""


def taken(browser: Browser, address: str) -> Iterator[Path]:
    """Take every picture and yield where it is."""
    for name, show in PICTURES.items():
        context = browser.new_context(
            viewport=_SIZE, device_scale_factor=_SCALE, color_scheme="light"
        )
        seat = Seat(page=context.new_page(), address=address)
        show(seat)
        yield _picture(seat.page, FOLDER / f"{name}.png")
        context.close()
        assert not seat.trouble, seat.trouble


def _picture(page: Page, path: Path) -> Path:
    page.wait_for_load_state("networkidle")
    page.evaluate("document.fonts.ready")
    path.parent.mkdir(parents=True, exist_ok=True)
    page.screenshot(path=path)
    assert path.stat().st_size <= MOST_BYTES, f"{path} is too large for a repository"
    return path


def main() -> None:
    """Take the pictures."""
    with (
        tempfile.TemporaryDirectory() as folder,
        serving(Path(folder)) as address,
        sync_playwright() as playwright,
    ):
        browser = launch(playwright)
        for path in taken(browser, address):
            sys.stdout.write(f"{path}: {path.stat().st_size} bytes\n")
        browser.close()


if __name__ == "__main__":
    main()
