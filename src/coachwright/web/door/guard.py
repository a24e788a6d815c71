"""Stands before every request and every socket."""

import asyncio
import logging
from dataclasses import replace
from datetime import UTC, datetime
from typing import Any
from urllib.parse import quote

from starlette.datastructures import Headers, MutableHeaders
from starlette.requests import cookie_parser
from starlette.responses import JSONResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from coachwright.actions.admitting import ALONE, Allowance, Who, known_by
from coachwright.actions.benching import Bench
from coachwright.web.door.rules import (
    SESSION_COOKIE,
    SIGN_IN,
    House,
    is_free,
    is_interface,
    most_bytes,
    refused,
)

_log = logging.getLogger("coachwright.door")
_BEARER = "bearer "
_POLICY_VIOLATION = 1008
_MOST_DIGITS = 12


class _TooMuch(Exception):
    """A request has more bytes than it may have."""


class Guard:
    """Lets in who may come in, and says who it is to what lies behind."""

    def __init__(self, app: ASGIApp, *, bench: Bench, house: House) -> None:
        self._app, self._bench, self._house = app, bench, house

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer one request, or let it through."""
        if scope["type"] not in ("http", "websocket"):
            await self._app(scope, receive, send)
            return
        away = refused(self._house, scope)
        if away is not None:
            _log.warning("refused %s %s: %s", scope.get("method"), scope["path"][:200], away[1])
            await _end(_said(*away), scope, receive, send)
            return
        who = await self._who(scope)
        if who is None and not is_free(scope["path"]):
            await _end(_asked_to_sign_in(scope), scope, receive, send)
            return
        scope.setdefault("state", {})["who"] = _from_where(who, scope)
        if scope["type"] == "websocket":
            await self._app(scope, receive, send)
        else:
            await self._measured(scope, receive, send)

    async def _who(self, scope: Scope) -> Who | None:
        if not self._house.guarded:
            return ALONE
        headers = Headers(scope=scope)
        now = datetime.now(UTC)
        if is_interface(scope["path"]):
            given = headers.get("authorization", "")
            if not given.lower().startswith(_BEARER):
                return None
            token = given[len(_BEARER) :].strip()
            return await asyncio.to_thread(known_by, self._bench, token, program=True, at=now)
        token = cookie_parser(headers.get("cookie", "")).get(SESSION_COOKIE, "")
        if not token or is_free(scope["path"]):
            return None
        return await asyncio.to_thread(known_by, self._bench, token, program=False, at=now)

    async def _measured(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request through as long as it stays within what it may have."""
        most = most_bytes(scope["path"])
        given = Headers(scope=scope).get("content-length", "0")
        if not given.isdecimal() or len(given) > _MOST_DIGITS or int(given) > most:
            await _end(_too_much(most), scope, receive, send)
            return
        allowance = Allowance(left=most)
        begun = over = False

        async def measured() -> Message:
            nonlocal over
            message = await receive()
            if not allowance.take(len(message.get("body", b""))):
                over = True
                raise _TooMuch
            return message

        async def sent(message: Message) -> None:
            nonlocal begun
            if over and not begun:
                raise _TooMuch  # whatever was made of half a request
            begun = True
            if message["type"] == "http.response.start" and self._house.encrypted:
                MutableHeaders(scope=message)["Strict-Transport-Security"] = "max-age=31536000"
            await send(message)

        try:
            await self._app(scope, measured, sent)
        except _TooMuch:
            if not begun:
                await _end(_too_much(most), scope, receive, send)


def _from_where(who: Who | None, scope: Scope) -> Who | None:
    """Return who it is, with the address from which the request comes."""
    client = scope.get("client")
    if who is None or who is ALONE or not client:
        return who
    return replace(who, place=client[0])


def who_is(state: Any) -> Who | None:
    """Return who made a request, by its state; None where nobody has signed in."""
    found: Who | None = getattr(state, "who", None)
    return found


def _too_much(most: int) -> Response:
    return _said(413, f"a request has at most {most:,} bytes")


def _said(status: int, words: str) -> Response:
    return JSONResponse({"detail": words}, status_code=status)


def _asked_to_sign_in(scope: Scope) -> Response:
    if is_interface(scope["path"]):
        answer = _said(401, "give a token: Authorization: Bearer TOKEN")
        answer.headers["WWW-Authenticate"] = "Bearer"
        return answer
    wants_page = "text/html" in Headers(scope=scope).get("accept", "")
    if scope["type"] == "http" and scope["method"] == "GET" and wants_page:
        return RedirectResponse(f"{SIGN_IN}?next={quote(scope['path'])}", status_code=303)
    return _said(401, "sign in first")


async def _end(answer: Response, scope: Scope, receive: Receive, send: Send) -> None:
    if scope["type"] == "websocket":
        await receive()
        await send({"type": "websocket.close", "code": _POLICY_VIOLATION})
    else:
        await answer(scope, receive, send)
