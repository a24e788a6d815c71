"""The door in a real browser and at a real socket: signing in, roles, other sites, headers."""

import http.client
import re
from collections.abc import Iterator
from datetime import UTC, datetime

import pytest
from playwright.sync_api import Browser, ViewportSize, expect

from coachwright.actions.admitting import make_account
from coachwright.store.records import Role
from coachwright.web.door.headers import HEADERS
from tests.web.benches import bench_in, lay
from tests.web.conftest import WIDE
from tests.web.serving import Seat, serving

PHONE = ViewportSize(width=390, height=844)
PASSWORD = "correct horse battery"  # noqa: S105  # of accounts in tests
SOCKET = "/_nicegui_ws/socket.io/?EIO=4&transport=websocket"


@pytest.fixture(scope="module")
def guarded(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Return where a bench with accounts is served."""
    folder = tmp_path_factory.mktemp("guarded")
    (folder / "coachwright").mkdir()
    bench = bench_in(folder / "coachwright")
    with bench.store:
        lay(bench)
        for name, role in (("olga", Role.OWNER), ("dora", Role.DESIGNER), ("finn", Role.FLOOR)):
            make_account(
                bench, name, role, PASSWORD, salt=b"s" * 16, actor="test", at=datetime.now(UTC)
            )
    with serving(folder) as served:
        yield served


def _asked(address: str, path: str, headers: dict[str, str]) -> int:
    host, _, port = address.removeprefix("http://").partition(":")
    line = http.client.HTTPConnection(host, int(port), timeout=10)
    try:
        line.request("GET", path, headers=headers)
        return line.getresponse().status
    finally:
        line.close()


def _upgrade(origin: str) -> dict[str, str]:
    return {
        "Connection": "Upgrade",
        "Upgrade": "websocket",
        "Sec-WebSocket-Version": "13",
        "Sec-WebSocket-Key": "AAAAAAAAAAAAAAAAAAAAAA==",
        "Origin": origin,
    }


def _sign_in(browser: Browser, address: str, name: str) -> Seat:
    seat = Seat(page=browser.new_context(viewport=WIDE).new_page(), address=address)
    seat.page.goto(f"{address}/build/1/brief")
    seat.page.get_by_label("Name").fill(name)
    seat.page.get_by_label("Password").fill(PASSWORD)
    seat.page.keyboard.press("Enter")
    seat.page.wait_for_url("**/build/1/brief")
    seat.ready()
    return seat


def test_somebody_signs_in_by_keyboard_edits_and_signs_out(browser: Browser, guarded: str) -> None:
    seat = _sign_in(browser, guarded, "dora")
    header = seat.page.locator("header")
    expect(header.get_by_text("dora", exact=True)).to_be_visible()
    field = seat.page.get_by_label("Days in one place")
    field.fill("5 d")
    field.press("Tab")
    expect(header.get_by_text(re.compile("edit 2$"))).to_be_visible()
    seat.page.get_by_role("button", name="Sign out").click()
    seat.page.wait_for_url("**/sign-in")
    seat.page.goto(f"{guarded}/build/1/brief")
    seat.page.wait_for_url("**/sign-in?next=**")
    assert not seat.trouble
    seat.page.context.close()


def test_the_floor_reads_and_changes_nothing(browser: Browser, guarded: str) -> None:
    seat = _sign_in(browser, guarded, "finn")
    expect(seat.page.get_by_text("reads only")).to_be_visible()
    field = seat.page.get_by_label("Days in one place")
    field.fill("9 d")
    field.press("Tab")
    expect(seat.page.get_by_text("finn may read this and change nothing")).to_be_visible()
    assert not seat.trouble
    seat.page.context.close()


def test_people_see_who_is_here(browser: Browser, guarded: str) -> None:
    olga, dora = (_sign_in(browser, guarded, name) for name in ("olga", "dora"))
    expect(olga.page.get_by_text("also here: dora")).to_be_visible()
    expect(dora.page.get_by_text("also here: olga")).to_be_visible()
    for seat in (olga, dora):
        assert not seat.trouble
        seat.page.context.close()


def test_the_sign_in_page_is_held_stricter_than_the_rest(browser: Browser, guarded: str) -> None:
    page = browser.new_context(viewport=PHONE).new_page()
    answer = page.goto(f"{guarded}/sign-in")
    assert answer is not None
    assert "default-src 'none'" in answer.headers["content-security-policy"]
    for name in HEADERS.keys() - {"Referrer-Policy"}:
        assert answer.headers[name.lower()] == HEADERS[name]
    assert page.evaluate("document.scripts.length") == 0
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    page.context.close()


def test_a_socket_is_let_in_by_its_origin_alone(address: str) -> None:
    assert _asked(address, SOCKET, _upgrade(address)) == 101
    for origin in ("https://elsewhere.example", "null", "http://127.0.0.1:1"):
        assert _asked(address, SOCKET, _upgrade(origin)) == 403
    polled = "/_nicegui_ws/socket.io/?EIO=4&transport=polling"
    assert _asked(address, polled, {"Origin": "https://elsewhere.example"}) == 403


def test_a_socket_wants_a_session_where_there_are_accounts(guarded: str) -> None:
    assert _asked(guarded, SOCKET, _upgrade(guarded)) == 403
    assert _asked(guarded, "/build/1/brief", {}) == 401


def test_a_server_is_not_found_under_another_name(address: str) -> None:
    assert _asked(address, "/", {"Host": "elsewhere.example"}) == 421
