"""An edit that collides with what others did meanwhile: what differs, and three ways on."""

from collections.abc import Awaitable, Callable
from datetime import UTC, datetime
from functools import partial
from typing import Any

from nicegui import run, ui

from coachwright.actions.benching import begin
from coachwright.actions.settling import mine_over
from coachwright.errors import CoachwrightError
from coachwright.store.records import Conflict
from coachwright.web.parts import grid
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.state import Here, change

_MOST = 90
"""Signs of a value that are shown."""


def create(here: Here, found: Conflict) -> None:
    """Show what collides; nothing is written over unless the person says so.

    Parameters
    ----------
    here
        The page.
    found
        What came back instead of the edit.
    """
    with ui.dialog().props("persistent") as dialog, ui.card().classes("sheet broad stack"):
        dialog.props["aria-label"] = "Others have changed the same"
        words(f"{', '.join(found.actors)} changed the same meanwhile", tag="h2")
        words("Your edit is not kept yet. Nothing of theirs is lost whatever you choose.", tag="p")
        _places(found)
        for fault in found.faults:
            words(fault.sentence(), "wrong", tag="p")
        ways: tuple[tuple[str, str, Callable[[], Awaitable[str]]], ...] = (
            ("Leave theirs", "leave-theirs", partial(_theirs, here, found)),
            ("Have mine", "have-mine", partial(_mine, here, found)),
            ("Keep both, mine as another build", "keep-both", partial(_both, here, found)),
        )
        with box("rowline"):
            for words_, mark, way in ways:
                tool(words_, partial(_go, way, dialog)).mark(mark)
    dialog.on("hide", dialog.delete)
    dialog.open()


async def _go(way: Callable[[], Awaitable[str]], dialog: ui.dialog) -> None:
    after = await way()
    if after:
        dialog.close()
        ui.navigate.to(after)


def _places(found: Conflict) -> None:
    disputed = found.disputed or tuple((mine, mine) for mine in found.my_differences)
    rows = [
        (_where(mine.place), _said(mine.before), _said(mine.after), _said(theirs.after))
        for mine, theirs in disputed
    ]
    grid.create(("place", "it was", "yours", "theirs"), rows, label="What collides")
    others = _besides(found)
    if others:
        words("They changed besides, and it stays:", "quiet", tag="p")
        words(", ".join(others), "small", tag="p")


def _besides(found: Conflict) -> list[str]:
    collided = {theirs.place for _, theirs in found.disputed}
    places = (each.place for each in found.their_differences if each.place not in collided)
    return [_where(place) for place in places]


def _where(place: str) -> str:
    """Return a place of the sheet as a person reads it."""
    words_ = place.replace("-", " ").split(".")
    return " › ".join(words_[1:] if words_[0] == "fittings" else words_)


def _said(value: Any) -> str:
    if value is None:
        return "nothing"
    text = ", ".join(map(_said, value)) if isinstance(value, list | tuple) else str(value)
    return text if len(text) <= _MOST else f"{text[:_MOST]}…"


async def _theirs(here: Here, found: Conflict) -> str:
    """Leave theirs where both collide, and keep what nobody disputes."""
    kept = found.clear is None or await change(here, found.clear)
    return _anew(here) if kept else ""


async def _mine(here: Here, found: Conflict) -> str:
    """Have mine where both collide; the rest of theirs stays."""
    kept = await change(here, mine_over(here.bench, found))
    return _anew(here) if kept else ""


async def _both(here: Here, found: Conflict) -> str:
    """Make another build of mine."""
    deed = partial(begin, here.bench, found.mine, actor=here.actor, at=datetime.now(UTC))
    try:
        made = await run.io_bound(deed)
    except CoachwrightError as error:
        ui.notify(str(error), type="warning")
        return ""
    return f"/build/{made}/board"


def _anew(here: Here) -> str:
    """Return the page's own address: what was typed into it is settled."""
    request = here.client.request
    return request.url.path if request is not None else "/"
