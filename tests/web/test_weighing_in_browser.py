"""The weighbridge ticket in a real browser: its form has no barrier, its photograph is shown."""

from playwright.sync_api import FilePayload, expect

from tests.web.axe import violations
from tests.web.screens import opened
from tests.web.serving import Seat
from tests.web.test_weighing import PNG

_LONG_MS = 30_000


def test_a_ticket_is_entered_by_keyboard_and_its_photograph_shown(seat: Seat) -> None:
    page = seat.page
    page.set_default_timeout(_LONG_MS)
    seat.go(f"{opened(seat, 'Night watch')}/weights")
    page.get_by_role("button", name="Enter a ticket").focus()
    page.keyboard.press("Enter")
    form = page.get_by_role("dialog", name="Weighbridge ticket")
    expect(form.get_by_label("Whole vehicle")).to_be_visible(timeout=_LONG_MS)
    assert violations(page, ".q-dialog") == []
    form.get_by_label("Whole vehicle").fill("9200 lb")
    form.get_by_label("Front axle").fill("3700 lb")
    form.get_by_label("Rear axle").fill("5500 lb")
    form.get_by_role("button", name="Keep the ticket").focus()
    page.keyboard.press("Enter")
    expect(form).to_be_hidden(timeout=_LONG_MS)
    expect(page.get_by_text("heavier on the scales than computed").first).to_be_visible(
        timeout=_LONG_MS
    )
    picture = FilePayload(name="scale.png", mimeType="image/png", buffer=PNG)
    page.locator("input[type=file]").set_input_files(picture)
    shown = page.get_by_role("img", name="scale.png")
    expect(shown).to_be_visible(timeout=_LONG_MS)
    shown.scroll_into_view_if_needed()
    page.wait_for_function(
        "each => each.complete && each.naturalWidth === 1", arg=shown.element_handle()
    )
    assert violations(page) == []
