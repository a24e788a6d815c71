"""The bench as a server: its pages, its headers, and how it starts."""

from collections.abc import Awaitable, Callable
from functools import partial

from nicegui import app, run, ui

from coachwright.actions.benching import Bench, lay_open
from coachwright.errors import CoachwrightError
from coachwright.web import attached, theme
from coachwright.web.door.headers import bless_pages, with_headers
from coachwright.web.door.rules import House
from coachwright.web.door.seating import open_door, seated
from coachwright.web.navigation import PAGES, Page
from coachwright.web.parts import dispute
from coachwright.web.parts.plain import link, words
from coachwright.web.state import Here, show_everybody, watch
from coachwright.web.ticking import tell

_MOST_S = 60.0
"""A page that a busy machine builds slowly is shown late, not refused with an error after 3 s."""


def declare(bench: Bench, house: House | None = None) -> None:
    """Declare every page of a bench, the style sheet, the door and the headers."""
    theme.declare()
    open_door(app, bench, house or House(), show_everybody, tell)
    attached.declare(app, bench)
    bless_pages()
    app.middleware("http")(with_headers)
    for page in PAGES:
        if page.of_build:
            address, show = f"/build/{{build_id}}/{page.slug}", _of_build(bench, page)
            ui.page(address, response_timeout=_MOST_S)(show)
        else:
            ui.page(page.address(), response_timeout=_MOST_S)(_plain(bench, page))


def _plain(bench: Bench, page: Page) -> Callable[[], None]:
    def show() -> None:
        here = _seat(bench)
        with theme.frame(here, page):
            if page.owners and not here.who.may_manage:
                words("This page is for owners.", tag="p")
            else:
                page.create(here)

    return show


def _of_build(bench: Bench, page: Page) -> Callable[..., Awaitable[None]]:
    async def show(build_id: int, pick: str = "") -> None:
        try:
            work = await run.io_bound(lay_open, bench, build_id)
        except CoachwrightError as error:
            words(str(error), tag="p")
            link("To the order book", "/")
            return
        here = _seat(bench)
        here.now, here.picked = work, pick
        watch(here)
        with theme.frame(here, page):
            page.create(here)

    return show


def _seat(bench: Bench) -> Here:
    """Return a page with the bench as the person before it may use it."""
    client = ui.context.client
    mine, who = seated(bench, client)
    here = Here(bench=mine, client=client, who=who)
    here.settle = partial(dispute.create, here)
    return here


def start(
    bench: Bench,
    *,
    host: str,
    port: int,
    secret: str,
    show: bool,
    house: House | None = None,
    certificate: str | None = None,
    key: str | None = None,
) -> None:
    """Serve a bench until it is stopped.

    Parameters
    ----------
    bench
        What is shown.
    host, port
        Where it listens.
    secret
        Signs the cookie that tells browsers apart.
    show
        Open a browser.
    house
        Who may come in; this machine alone where not given.
    certificate, key
        Files for TLS.
    """
    declare(bench, house)
    ui.run(
        host=host,
        port=port,
        title="Coachwright",
        favicon=theme.STATIC / "mark.svg",
        reload=False,
        show=show,
        tailwind=False,
        show_welcome_message=False,
        storage_secret=secret,
        endpoint_documentation="none",
        language="en-GB",
        reconnect_timeout=10.0,
        server_header=False,
        session_middleware_kwargs={"same_site": "lax", "https_only": certificate is not None},
        ssl_certfile=certificate,
        ssl_keyfile=key,
    )
