"""The order book: every build, and what to start a new one from."""

from datetime import UTC, datetime
from pathlib import Path

from nicegui import ui

from coachwright.actions.benching import begin, builds
from coachwright.actions.demos import demos
from coachwright.actions.looking import standard_rows
from coachwright.actions.starting import starter
from coachwright.web.parts.plain import box, link, tool, words
from coachwright.web.state import Here


def create(here: Here) -> None:
    """Fill the page."""
    with box("stack"):
        words("Order book", tag="h1")
        for entry in builds(here.bench):
            with box("card rowline"):
                link(entry.name, f"/build/{entry.build_id}/board", "strong")
                words(entry.customer, "quiet")
        words("Start from a demonstration build", tag="h2")
        for each in demos():
            with box("card rowline"):
                words(each.name, "strong")
                words(each.story, "quiet")
                tool("Open a copy", lambda text=each.text: _open(here, text))
        words("Start from a standard build", tag="h2")
        for row in standard_rows(here.bench.catalogue):
            with box("card rowline"):
                words(row.name, "strong")
                tool("Start", lambda name=row.id: _open(here, _standard(here, name)))


def _standard(here: Here, standard: str) -> str:
    return starter(Path(f"{standard}.toml"), here.bench.catalogue, "", "", standard)


def _open(here: Here, text: str) -> None:
    build_id = begin(here.bench, text, actor=here.actor, at=datetime.now(UTC))
    ui.navigate.to(f"/build/{build_id}/board")
