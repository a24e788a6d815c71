"""Who is at the bench: oneself, who else has the build open, and the way out."""

from nicegui import ui

from coachwright.web.parts.plain import box, tool, words
from coachwright.web.state import Here, watchers

_EVERY_S = 3.0
_OUT = "fetch('/sign-out', {method: 'POST'}).then(() => location.assign('/sign-in'))"


def create(here: Here) -> None:
    """Show who is here, and keep showing it.

    Parameters
    ----------
    here
        The page.
    """
    with box("presence rowline").props("role=status"):
        others = words("", "small quiet").mark("presence")
        if here.who.name:
            words(here.who.name, "small strong")
            if not here.who.may_edit:
                words("reads only", "small quiet")
            tool("Sign out", lambda: ui.run_javascript(_OUT), classes="bare").mark("sign-out")

    def show() -> None:
        others.set_text(_others(here))

    if here.now is not None:
        show()
        ui.timer(_EVERY_S, show)


def _others(here: Here) -> str:
    """Return in words who else has the build open."""
    open_pages = [
        each
        for each in watchers(here.work.build_id)
        if each is not here and each.client.has_socket_connection
    ]
    if not open_pages:
        return ""
    named = sorted({each.actor for each in open_pages}.difference({here.actor}))
    if not named:
        return "also open in another window"
    return f"also here: {', '.join(named)}"
