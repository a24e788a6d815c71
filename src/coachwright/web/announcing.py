"""Tell when the bench answers: an address is printed when it can be opened, not before."""

import asyncio
import contextlib
from collections.abc import Callable

from nicegui import app, background_tasks

_BETWEEN_S = 0.02
_AT = {"0.0.0.0": "127.0.0.1", "::": "::1"}  # noqa: S104  # where everywhere is knocked at


def when_it_answers(host: str, port: int, say: Callable[[], None]) -> None:
    """Call something once, when the server that is about to start lets visitors in.

    Parameters
    ----------
    host, port
        Where it will listen.
    say
        Called when it does.
    """

    async def begin() -> None:
        background_tasks.create(_knock(_AT.get(host, host), port, say), name="first knock")

    app.on_startup(begin)


async def _knock(host: str, port: int, say: Callable[[], None]) -> None:
    while True:
        with contextlib.suppress(OSError):
            _, door = await asyncio.open_connection(host, port)
            door.close()
            say()
            return
        await asyncio.sleep(_BETWEEN_S)
