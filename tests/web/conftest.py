"""What the tests of the bench share: a simulated person, and a real browser at a real server."""

import os
from collections.abc import AsyncIterator, Iterator
from pathlib import Path

import httpx
import pytest
from nicegui import core, ui
from nicegui.client import Client
from nicegui.functions.navigate import Navigate
from nicegui.functions.notify import notify
from nicegui.storage import Storage
from nicegui.testing import User
from nicegui.testing.general import nicegui_reset_globals, prepare_simulation
from playwright.sync_api import Browser, ViewportSize, expect, sync_playwright

from coachwright.actions.benching import Bench
from coachwright.web import app
from tests.web.benches import bench_in
from tests.web.serving import Seat, launch, serving

WIDE = ViewportSize(width=1440, height=900)
_PATIENCE_MS = 20_000
"""How long a test waits for what it expects: machines that run tests are busy."""


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Bench]:
    """Return a bench over an empty store."""
    made = bench_in(tmp_path)
    with made.store:
        yield made


@pytest.fixture
async def user(
    bench: Bench, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> AsyncIterator[User]:
    """Return a simulated person at the bench; asks for no browser."""
    monkeypatch.setattr(Storage, "path", tmp_path / "storage")
    with nicegui_reset_globals():
        os.environ["NICEGUI_USER_SIMULATION"] = "true"
        try:
            prepare_simulation()
            app.declare(bench)
            ui.run(storage_secret="simulated", show=False)  # noqa: S106
            async with core.app.router.lifespan_context(core.app):
                transport = httpx.ASGITransport(core.app)
                async with httpx.AsyncClient(
                    transport=transport, base_url="http://localhost"
                ) as http:
                    yield User(http)
        finally:
            os.environ.pop("NICEGUI_USER_SIMULATION", None)
            Client.page_routes.clear()  # else the library forgets our modules
            ui.navigate = Navigate()
            ui.notify = notify


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """Return a real browser.

    It holds a loop of its own, so a module has tests with `seat` or with `user`, not both.
    """
    expect.set_options(timeout=_PATIENCE_MS)
    with sync_playwright() as playwright:
        made = launch(playwright)
        yield made
        made.close()


@pytest.fixture(scope="session")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Return where a bench is served, in a process of its own."""
    with serving(tmp_path_factory.mktemp("bench")) as served:
        yield served


@pytest.fixture
def seat(browser: Browser, address: str) -> Iterator[Seat]:
    """Return a person at a real browser; trouble on the page fails the test."""
    context = browser.new_context(viewport=WIDE)
    made = Seat(page=context.new_page(), address=address)
    yield made
    context.close()
    assert not made.trouble
