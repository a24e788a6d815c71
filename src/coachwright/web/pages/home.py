"""The order book: every build, and what to start a new one from."""

from collections.abc import Callable
from datetime import UTC, datetime
from functools import partial

from nicegui import run, ui

from coachwright.actions.benching import begin, builds, copy_of, put_away, take_out
from coachwright.actions.order_book import (
    Beginning,
    Card,
    beginnings,
    card_of,
    card_of_beginning,
    matches,
    text_of,
)
from coachwright.errors import CoachwrightError
from coachwright.store.records import BuildEntry
from coachwright.web.parts.finding import mark
from coachwright.web.parts.plain import box, link, tool, words
from coachwright.web.state import Here, refuse

_STYLE = '<link rel="stylesheet" href="/coachwright/static/home.css">'


def create(here: Here) -> None:
    """Fill the page."""
    ui.add_head_html(_STYLE)
    _Book(here).create()


class _Book:
    def __init__(self, here: Here) -> None:
        self._here = here
        self._waiting: list[tuple[ui.element, Callable[[], Card]]] = []

    def create(self) -> None:
        with box("orderbook stack"):
            with box("rowline bookhead"):
                words("Order book", tag="h1")
                self._search = ui.input("Find a build or a customer", on_change=self._list)
                self._search.props("outlined dense clearable")
                self._away = ui.checkbox("Those put away", on_change=self._list)
            self._listed = box("cards", tag="ul", label="Builds")
            words("Start a new build", tag="h2")
            with box("cards", tag="ul", label="What a new build can start from"):
                for each in beginnings(self._here.bench.catalogue):
                    self._beginning(each)
        self._list()

    def _list(self) -> None:
        found = [
            entry
            for entry in builds(self._here.bench, archived=bool(self._away.value))
            if matches(entry, self._search.value or "")
        ]
        with self._listed.clear():
            for entry in found:
                self._entry(entry)
            if not found:
                words(self._none(), "quiet none", tag="li")
        ui.timer(0, self._fill, once=True)

    def _none(self) -> str:
        if self._search.value:
            return "No build holds these words."
        if self._away.value:
            return "Nothing is put away."
        return "No build is in the book yet; start one from a demonstration or a standard build."

    def _entry(self, entry: BuildEntry) -> None:
        address = f"/build/{entry.build_id}/board"
        with box("card ordercard", tag="li"):
            inside = box("inside")
            with inside:
                words(entry.name, "strong")
            with box("rowline"):
                made = link("Open", address, "opens")
                made.props["aria-label"] = f"Open {entry.name}"
                copy = tool("Copy", lambda: self._copy(entry))
                copy.props["aria-label"] = f"Copy {entry.name}"
                text = "Take out again" if entry.archived_at else "Put away"
                away = tool(text, lambda: self._put_away(entry), classes="bare")
                away.props["aria-label"] = f"{text}: {entry.name}"
        make = partial(card_of, self._here.bench, entry, self._here.system)
        self._waiting.append((inside, make))

    def _beginning(self, beginning: Beginning) -> None:
        with box("card ordercard", tag="li"):
            inside = box("inside")
            with inside:
                words(beginning.name, "strong")
            said = "Open a copy" if beginning.kind == "demo" else "Start from it"
            start = tool(said, lambda: self._start(beginning), classes="main")
            start.props["aria-label"] = f"{said}: {beginning.name}"
        catalogue = self._here.bench.catalogue
        system = self._here.system
        make = partial(card_of_beginning, beginning, catalogue, system)
        self._waiting.append((inside, make))

    async def _fill(self) -> None:
        """Fill the cards one after the other; the page is there before."""
        waiting, self._waiting = self._waiting, []
        for inside, make in waiting:
            try:
                card = await run.io_bound(make)
            except CoachwrightError as error:
                with inside:
                    words(str(error), "quiet small", tag="p")
                continue
            if card is not None and not inside.is_deleted:
                with inside.clear():
                    _show(card)

    def _start(self, beginning: Beginning) -> None:
        text = text_of(beginning, self._here.bench.catalogue)
        build_id = begin(self._here.bench, text, actor=self._here.actor, at=_now())
        ui.navigate.to(f"/build/{build_id}/board")

    def _copy(self, entry: BuildEntry) -> None:
        here = self._here
        try:
            build_id = copy_of(here.bench, entry.build_id, actor=here.actor, at=_now())
        except CoachwrightError as error:
            refuse(here, str(error))
            return
        ui.navigate.to(f"/build/{build_id}/board")

    def _put_away(self, entry: BuildEntry) -> None:
        here = self._here
        deed = take_out if entry.archived_at else put_away
        deed(here.bench, entry.build_id, actor=here.actor, at=_now())
        self._list()


def _show(card: Card) -> None:
    with box("thumb", label=f"Plan of {card.name}").props("role=img"):
        # drawn by this program's drawing office, which escapes every name
        ui.html(card.picture, sanitize=False)
    words(card.name, "strong", tag="h3")
    for text in (card.customer, card.vehicle):
        if text:
            words(text, "quiet small")
    with box("facts", tag="dl"):
        for fact in card.facts:
            with box():
                words(fact.label, tag="dt")
                words(fact.value, tag="dd")
    with box("worst"):
        if card.worst_kind:
            stops, cautions = card.verdict.stops, card.verdict.cautions
            mark(card.worst_kind, f"{card.worst_kind}: {card.worst}")
            words(f"stops {stops}, cautions {cautions}; revision {card.revision}", "quiet small")
        else:
            mark("met", "nothing open")
            words(f"accepted {card.verdict.accepted}; revision {card.revision}", "quiet small")


def _now() -> datetime:
    return datetime.now(UTC)
