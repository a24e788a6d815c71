"""The catalogue: browse parts and base vehicles, keep the shop's own, take over price lists."""

from functools import partial

from nicegui import ui

from coachwright.actions.looking import part_rows, vehicle_rows
from coachwright.actions.shelving import GROUPS
from coachwright.actions.shopkeeping import Kind
from coachwright.errors import CoachwrightError
from coachwright.units import shown
from coachwright.web.parts import entry, grid, price_list
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.parts.styled import styled
from coachwright.web.state import Here

_FIRST = 60
"""Rows that are shown before somebody asks for all."""
_ALL, _OWN = "all parts", "the shop's own"
_VIEWS = (("parts", "Parts"), ("vehicles", "Base vehicles"), ("list", "Price list"))


def create(here: Here) -> None:
    """Fill the page."""
    styled("forms")
    words("Catalogue", tag="h2")
    _Shelves(here)


class _Shelves:
    """What the page shows, and what is looked for."""

    def __init__(self, here: Here) -> None:
        self.here = here
        self.view = "parts"
        self.every = False
        self.signs: dict[str, ui.button] = {}
        with box("rowline page-tools", label="What to look at").props("role=group"):
            for name, title in _VIEWS:
                self.signs[name] = tool(title, partial(self.turn, name))
        with box("rowline seek") as self.seek:
            self.words = ui.input("Search", on_change=self._anew).mark("search")
            self.words.props("outlined dense clearable type=search debounce=200")
            facets = {"": _ALL, _OWN: _OWN}
            facets.update(dict(_boards()))
            self.board = ui.select(facets, label="What it does", value="", on_change=self._anew)
            self.board.props("outlined dense options-dense").classes("state")
        self.room = box("stack")
        self.turn("parts")

    def turn(self, view: str) -> None:
        """Show parts, base vehicles or the desk for price lists."""
        self.view = view
        for name, sign in self.signs.items():
            sign.props["aria-pressed"] = "true" if name == view else "false"
            sign.update()
        self.seek.set_visibility(view == "parts")
        self.show()

    def _anew(self) -> None:
        self.every = False
        self.show()

    def show(self) -> None:
        """Fill the room anew."""
        self.room.clear()
        with self.room:
            try:
                {"parts": self._parts, "vehicles": self._vehicles, "list": self._list}[self.view]()
            except CoachwrightError as error:
                words(str(error), "wrong", tag="p")

    def _list(self) -> None:
        price_list.create(self.here)

    def _parts(self) -> None:
        system = self.here.system
        board = str(self.board.value or "")
        facet = "" if board == _OWN else board
        found = part_rows(
            self.here.bench.catalogue, facet=facet, search=str(self.words.value or "")
        )
        if board == _OWN:
            found = tuple(row for row in found if row.origin.startswith(_OWN))
        words(f"{len(found)} parts", "quiet", tag="p").props("role=status")
        listed = found if self.every else found[:_FIRST]
        rows = [
            (
                partial(self._name, "parts", row.id, row.name),
                ", ".join(row.facets).replace("_", " ") or "—",
                shown(row.mass_kg, "kg", system),
                ", ".join(row.prices) or "no price",
                row.origin,
            )
            for row in listed
        ]
        with box("card"):
            grid.create(
                ("part", "does", "mass", "price", "whose"),
                rows,
                label="Parts",
                right=frozenset({2, 3}),
            )
        if len(listed) < len(found):
            tool(f"Show all {len(found)}", self._all)

    def _all(self) -> None:
        self.every = True
        self.show()

    def _vehicles(self) -> None:
        system = self.here.system
        rows = [
            (
                partial(self._name, "vehicles", row.id, row.name),
                row.market,
                shown(row.gross_kg, "kg", system),
                shown(row.wheelbase_mm, "mm", system),
                shown(row.length_mm, "mm", system),
                shown(row.height_mm, "mm", system),
                f"{row.seats}",
                row.origin,
            )
            for row in vehicle_rows(self.here.bench.catalogue)
        ]
        with box("card"):
            grid.create(
                (
                    "base vehicle",
                    "market",
                    "gross",
                    "wheelbase",
                    "length",
                    "height",
                    "seats",
                    "whose",
                ),
                rows,
                label="Base vehicles",
                right=frozenset({2, 3, 4, 5, 6}),
            )

    def _name(self, kind: Kind, entry_id: str, name: str) -> None:
        opened = partial(entry.create, self.here, kind, entry_id, self.show)
        tool(name, opened, classes="bare name").mark(entry_id)


def _boards() -> list[tuple[str, str]]:
    """Return the facets that parts are looked for by, with their boards."""
    return [
        (facet, f"{group}: {facet.replace('_', ' ')}")
        for group, facets in GROUPS
        for facet in facets
    ]
