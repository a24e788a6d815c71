"""The pages for signing in and out; plain forms that need no script."""

import asyncio
import html
import secrets
from collections.abc import Awaitable, Callable
from datetime import UTC, datetime, timedelta
from functools import partial
from urllib.parse import parse_qs

from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response

from coachwright.actions.admitting import SESSION, Tries, Who, sign_in, sign_out
from coachwright.actions.benching import Bench
from coachwright.web.door.guard import who_is
from coachwright.web.door.rules import SESSION_COOKIE, SIGN_IN, House, landing

STRICT = (
    "default-src 'none'; style-src 'self'; font-src 'self'; img-src 'self'; form-action 'self'; "
    "base-uri 'none'; frame-ancestors 'none'"
)
"""What the sign-in page may load: it has no script at all."""
Answer = Callable[[Request], Awaitable[Response]]
_MOST_FORM_BYTES = 10_000
_WRONG = "This name and password do not belong together."
_PAGE = """\
<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>Sign in · Coachwright</title>
<link rel="stylesheet" href="/coachwright/static/bench.css">
<link rel="stylesheet" href="/coachwright/static/door.css">
</head>
<body class="door">
<main>
<h1>Coachwright</h1>
<form method="post" action="{action}" class="card stack">
<h2>Sign in</h2>
<p class="wrong" role="alert">{trouble}</p>
<input type="hidden" name="next" value="{after}">
<label for="name">Name</label>
<input id="name" name="name" value="{name}" autocomplete="username" required autofocus>
<label for="password">Password</label>
<input id="password" name="password" type="password" autocomplete="current-password" required>
<button type="submit">Sign in</button>
</form>
</main>
</body>
</html>
"""


def pages(bench: Bench, house: House) -> tuple[Answer, Answer, Answer]:
    """Return what shows the form, what lets in, and what lets out.

    Parameters
    ----------
    bench
        Whose accounts.
    house
        How the server stands.
    """
    tries = Tries()

    async def show(request: Request) -> Response:
        return _form(after=landing(request.query_params.get("next", "/")))

    async def come_in(request: Request) -> Response:
        return await _come_in(request, bench, house, tries)

    async def go_out(request: Request) -> Response:
        who = who_is(request.state)
        token = request.cookies.get(SESSION_COOKIE, "")
        if who is not None and token:
            deed = partial(sign_out, bench, token, who, at=datetime.now(UTC))
            await asyncio.to_thread(deed)
        answer = RedirectResponse(SIGN_IN, status_code=303)
        answer.delete_cookie(SESSION_COOKIE, path="/")
        return answer

    return show, come_in, go_out


async def _come_in(request: Request, bench: Bench, house: House, tries: Tries) -> Response:
    body = await request.body()
    if len(body) > _MOST_FORM_BYTES:
        return _form(trouble=_WRONG, status=413)
    given = parse_qs(body.decode("utf-8", "replace"), max_num_fields=8)
    name, password = _first(given, "name"), _first(given, "password")
    after = landing(_first(given, "next"))
    token = secrets.token_urlsafe(32)
    place = request.client.host if request.client else "unknown"
    found = await asyncio.to_thread(
        partial(
            sign_in,
            bench,
            tries,
            name=name,
            password=password,
            token=token,
            place=place,
            at=datetime.now(UTC),
        )
    )
    if isinstance(found, Who):
        answer = RedirectResponse(after, status_code=303)
        answer.set_cookie(
            SESSION_COOKIE,
            token,
            max_age=int(SESSION.total_seconds()),
            path="/",
            secure=house.encrypted,
            httponly=True,
            samesite="lax",
        )
        return answer
    if isinstance(found, timedelta):
        seconds = int(found.total_seconds())
        waiting = f"Too many wrong passwords; try again in {seconds} seconds."
        refused = _form(trouble=waiting, name=name, after=after, status=429)
        refused.headers["Retry-After"] = f"{seconds}"
        return refused
    return _form(trouble=_WRONG, name=name, after=after, status=401)


def _first(given: dict[str, list[str]], name: str) -> str:
    return given.get(name, [""])[0]


def _form(
    *, trouble: str = "", name: str = "", after: str = "/", status: int = 200
) -> HTMLResponse:
    shown = _PAGE.format(
        action=SIGN_IN,
        trouble=html.escape(trouble),
        name=html.escape(name, quote=True),
        after=html.escape(after, quote=True),
    )
    return HTMLResponse(
        shown,
        status_code=status,
        headers={
            "Content-Security-Policy": STRICT,
            "Cache-Control": "no-store",
            "Referrer-Policy": "same-origin",  # else browsers hide the origin of the form
        },
    )
