"""Pages that show what the shop floor ticks off, and telling them when somebody has."""

from collections.abc import Callable

from nicegui import Client

from coachwright.web.state import Here

_following: dict[int, list[tuple[Client, Callable[[], None]]]] = {}
"""Open pages by the build whose ticks they show."""


def follow(here: Here, draw: Callable[[], None]) -> None:
    """Let a page hear of every tick of its build, until it is closed.

    Parameters
    ----------
    here
        The page.
    draw
        Shows the ticks anew.
    """
    entry = (here.client, draw)
    listed = _following.setdefault(here.work.build_id, [])
    listed.append(entry)
    here.client.on_delete(lambda: listed.remove(entry))


def tell(build_id: int) -> None:
    """Let every page that shows the ticks of a build show them anew."""
    for client, draw in tuple(_following.get(build_id, ())):
        with client:
            draw()
