"""Who sits before a page, and the bench as they may use it."""

from collections.abc import Callable
from datetime import UTC, datetime

from fastapi import FastAPI
from nicegui import Client
from starlette.routing import Route

from coachwright.actions.admitting import ALONE, Who, as_seen_by, known_by
from coachwright.actions.benching import Bench, OnBench
from coachwright.web.door.guard import Guard, who_is
from coachwright.web.door.rules import INTERFACE, SESSION_COOKIE, SIGN_IN, SIGN_OUT, House
from coachwright.web.door.signing import pages
from coachwright.web.interface.app import interface


def open_door(
    app: FastAPI,
    bench: Bench,
    house: House,
    shown: Callable[[OnBench], object] = bool,
    ticked: Callable[[int], object] = bool,
) -> None:
    """Put the guard before everything, and the interface under its path.

    Parameters
    ----------
    app
        The server.
    bench
        What it shows.
    house
        How the server stands.
    shown
        Told of every build that another program has changed.
    ticked
        Told of every build of which another program has ticked something.
    """
    app.add_middleware(Guard, bench=bench, house=house)
    made = interface(bench, guarded=house.guarded, shown=shown, ticked=ticked)
    app.mount(INTERFACE, made)
    if house.guarded:
        show, come_in, go_out = pages(bench, house)
        app.router.routes.append(Route(SIGN_IN, show, methods=["GET"]))
        app.router.routes.append(Route(SIGN_IN, come_in, methods=["POST"]))
        app.router.routes.append(Route(SIGN_OUT, go_out, methods=["POST"]))


def seated(bench: Bench, client: Client) -> tuple[Bench, Who]:
    """Return the bench as the person before a page may use it, and who that is.

    Parameters
    ----------
    bench
        The whole bench.
    client
        The page.
    """
    request = client.request
    who = who_is(request.state) if request is not None else None
    if request is None or who is None or who is ALONE:
        return bench, ALONE
    token = request.cookies.get(SESSION_COOKIE, "")

    def known() -> Who | None:
        return known_by(bench, token, program=False, at=datetime.now(UTC))

    return as_seen_by(bench, known, who.place), who
