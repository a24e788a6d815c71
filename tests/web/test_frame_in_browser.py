"""The frame in a real browser: headers, nothing from elsewhere."""

import urllib.request

from coachwright.web.door.headers import HEADERS
from tests.web.serving import Seat


def test_the_headers_forbid_everything_from_elsewhere(address: str) -> None:
    with urllib.request.urlopen(address) as answer:  # noqa: S310  # loopback
        sent = dict(answer.headers)
    for name, value in HEADERS.items():
        assert sent[name.lower()] == value


def test_no_request_leaves_the_machine_and_nothing_is_wrong(seat: Seat) -> None:
    seat.go("/")
    opened = seat.page.get_by_role("button", name="Open a copy")
    opened.first.click()
    seat.page.wait_for_url("**/board")
    seat.ready()
