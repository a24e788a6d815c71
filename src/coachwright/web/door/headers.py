"""What every answer says to the browser: what it may load and run, and what it may never do."""

import secrets
from collections.abc import Awaitable, Callable, Mapping

from fastapi import Request, Response
from jinja2 import BaseLoader, Environment, pass_context
from jinja2.runtime import Context
from markupsafe import Markup
from nicegui.client import templates

NONCE = "nonce"
_NONCE_BYTES = 18
_HIDDEN = ' style="display: none"'
_BODY = "{{ body_html | safe }}"
_ASSUMED = ("<script", "<style", _HIDDEN, _BODY)
"""What the library's own frame of a page has, and what is blessed or put better in it."""

HEADERS: Mapping[str, str] = {
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "X-Permitted-Cross-Domain-Policies": "none",
    "Permissions-Policy": (
        "camera=(), microphone=(), geolocation=(), payment=(), usb=(), serial=(), midi=(), "
        "display-capture=(), accelerometer=(), gyroscope=(), magnetometer=()"
    ),
}
"""Sent with every answer, beside the policy."""

SHUT = "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
"""The policy of what is no page: pictures, sheets, data."""


def policy(nonce: str) -> str:
    """Return what a page may load and run.

    The library compiles the handlers that a page sends as words, so ``'unsafe-eval'`` stays.  A
    script or style that stands in a page runs only with the nonce of that answer, which nothing
    that comes from data can know; attributes that hold a script or a style never count.

    Parameters
    ----------
    nonce
        Chance, anew for each answer.
    """
    return "; ".join(
        (
            "default-src 'none'",
            f"script-src 'self' 'nonce-{nonce}' 'unsafe-eval'",
            "script-src-attr 'none'",
            f"style-src 'self' 'nonce-{nonce}'",
            "style-src-attr 'none'",
            "img-src 'self' data:",
            "font-src 'self'",
            "connect-src 'self'",
            "object-src 'none'",
            "base-uri 'none'",
            "form-action 'self'",
            "frame-ancestors 'none'",
        )
    )


async def with_headers(
    request: Request, call_next: Callable[[Request], Awaitable[Response]]
) -> Response:
    """Answer a request with every header on the answer.

    Parameters
    ----------
    request
        What is asked.
    call_next
        Answers it.
    """
    nonce = secrets.token_urlsafe(_NONCE_BYTES)
    setattr(request.state, NONCE, nonce)
    response = await call_next(request)
    page = response.headers.get("content-type", "").startswith("text/html")
    response.headers.setdefault("Content-Security-Policy", policy(nonce) if page else SHUT)
    for name, value in HEADERS.items():
        response.headers.setdefault(name, value)
    return response


class _Blessed(BaseLoader):
    """Gives the library's frame of a page with the nonce on its own scripts and styles.

    The nonce is put into the frame before any data is, so that markup in data never gets it.
    """

    def __init__(self, library: BaseLoader) -> None:
        self._library = library

    def get_source(
        self, environment: Environment, template: str
    ) -> tuple[str, str | None, Callable[[], bool] | None]:
        """Return a template and where it comes from."""
        source, where, fresh = self._library.get_source(environment, template)
        return blessed(source), where, fresh


def bless_pages() -> None:
    """Let the library's pages carry the nonce; once for each program."""
    environment = templates.env
    if not isinstance(environment.loader, _Blessed):
        assert environment.loader is not None
        environment.loader = _Blessed(environment.loader)
        environment.globals[NONCE] = _nonce
        environment.globals["own_style"] = _own_style
        if environment.cache is not None:
            environment.cache.clear()


def blessed(source: str) -> str:
    """Return the frame of a page with the nonce on every script and style that stands in it.

    Parameters
    ----------
    source
        The template, as the library has it.

    Raises
    ------
    AssertionError
        Where the library's frame is another than the one this was made for.
    """
    assert all(each in source for each in _ASSUMED), "the library has another frame of a page"
    for tag in ("<script", "<style"):
        source = source.replace(tag, f'{tag} nonce="{{{{ {NONCE}() }}}}"')
    source = source.replace(_HIDDEN, " hidden")
    return source.replace(_BODY, "{{ own_style(body_html) }}")


@pass_context
def _nonce(context: Context) -> str:
    found: str = getattr(context["request"].state, NONCE, "")
    return found


@pass_context
def _own_style(context: Context, body: str) -> Markup:
    """Return a page's body with the nonce on the style that the library itself begins it with."""
    rest = body.removeprefix("<style>")
    assert rest != body, "the library begins a page's body otherwise"
    return Markup(f'<style nonce="{_nonce(context)}">{rest}')  # noqa: S704  # of the library
