"""The headers: what a page may load and run, and that data never gets to run."""

import re

import pytest
from nicegui.client import templates

from coachwright.web.door.headers import HEADERS, blessed, policy
from tests.web.serving import Seat

UNKNOWN = "a library's page without scripts"
FOREIGN = "<script>window.ran = true</script><style>body { outline: 7px solid red }</style>"


def _said(sent: str) -> dict[str, list[str]]:
    """Return a policy by its directives, as https://www.w3.org/TR/CSP3/#parse-serialized-policy."""
    parts = [each.split() for each in sent.split(";") if each.strip()]
    assert len({name for name, *_ in parts}) == len(parts), "a directive counts only once"
    return {name: values for name, *values in parts}


def test_a_page_may_load_and_run_only_what_is_its_own() -> None:
    said = _said(policy("chance"))
    for name in ("default-src", "object-src", "base-uri", "frame-ancestors"):
        assert said[name] == ["'none'"]
    assert said["script-src-attr"] == said["style-src-attr"] == ["'none'"]
    assert said["connect-src"] == said["form-action"] == said["font-src"] == ["'self'"]
    assert said["script-src"] == ["'self'", "'nonce-chance'", "'unsafe-eval'"]
    assert said["style-src"] == ["'self'", "'nonce-chance'"]
    assert said["img-src"] == ["'self'", "data:"]


def test_the_nonce_stands_on_every_script_and_style_of_the_frame_and_nowhere_in_data() -> None:
    source, _, _ = templates.env.loader.get_source(templates.env, "index.html")  # type: ignore[union-attr]
    made = source if "nonce" in source else blessed(source)
    for tag in re.findall(r"<(?:script|style)\b[^>]*>", made):
        assert 'nonce="{{ nonce() }}"' in tag
    assert "style=" not in re.sub(r"<style\b", "", made)


def test_another_frame_of_the_library_is_told() -> None:
    with pytest.raises(AssertionError, match="another frame"):
        blessed(UNKNOWN)


def test_every_page_has_a_nonce_of_its_own(seat: Seat) -> None:
    found = []
    for _ in range(2):
        answer = seat.page.goto(seat.address)
        assert answer is not None
        sent = answer.headers["content-security-policy"]
        nonce = re.search(r"'nonce-([\w-]{24})'", sent)
        assert nonce is not None
        assert sent == policy(nonce[1])
        assert seat.page.locator("script[nonce]").count() > 3
        found.append(nonce[1])
        for name, value in HEADERS.items():
            assert answer.headers[name.lower()] == value
    assert found[0] != found[1]


def test_what_is_no_page_may_load_nothing(seat: Seat) -> None:
    answer = seat.page.request.get(f"{seat.address}/api/v1/openapi.json")
    assert answer.headers["content-security-policy"].startswith("default-src 'none'")
    assert answer.headers["x-content-type-options"] == "nosniff"


def test_markup_that_gets_into_a_page_does_not_run(seat: Seat) -> None:
    seat.go("/")
    seat.page.evaluate(
        """words => {
          const made = document.createElement("div");
          made.innerHTML = '<img src="x:" onerror="window.ran = true">';
          document.body.append(made, document.createRange().createContextualFragment(words));
        }""",
        FOREIGN,
    )
    seat.page.wait_for_function("document.images.length")
    assert seat.page.evaluate("window.ran") is None
    outline = "getComputedStyle(document.body).outlineStyle"
    assert seat.page.evaluate(outline) == "none"
    assert [line for line in seat.trouble if "Content Security Policy" in line]
    seat.trouble.clear()  # that the browser complains is what was wanted
