"""Take over a supplier's price list that was handed in: a preview row by row, then the parts."""

import tempfile
from dataclasses import dataclass
from pathlib import Path

from coachwright.actions.benching import Bench
from coachwright.actions.importing import ImportPlan, PlannedPart, plan_import
from coachwright.actions.price_list import MOST_BYTES
from coachwright.actions.shopkeeping import write_parts
from coachwright.errors import Fault, NotAllowed, PriceListError
from coachwright.store.attaching import shown_name

ENDINGS = (".csv", ".xlsx")
MOST_MAP_BYTES = 200_000
MOST_SHOWN = 500
"""Rows of a preview; the rest is counted."""
EXAMPLE_MAP = """\
format = 1
id = "north-{Article}"        # how a part's id is made of the list's columns
currency = "EUR"
decimal = ","                 # what stands before the decimals in the list

[[columns]]
column = "Description"        # heading as it stands in the list
field = "name"

[[columns]]
column = "Weight"
field = "body.mass"
unit = "kg"

[[columns]]
column = "List price"
field = "price.price"

[defaults.body]               # what the list does not give, for new parts only
size = ["300 mm", "300 mm", "300 mm"]
"""
"""A map to begin with."""


@dataclass(frozen=True, kw_only=True, slots=True)
class HandedIn:
    """A list that somebody handed in.

    Attributes
    ----------
    name
        As the person calls it; shown, and never a path.
    """

    name: str
    content: bytes

    @property
    def ending(self) -> str:
        """What its name ends in, small."""
        return Path(self.name).suffix.lower()


@dataclass(frozen=True, kw_only=True, slots=True)
class Preview:
    """What taking over a list would do, row by row.

    Attributes
    ----------
    parts
        New and changed ones.
    faults
        With the row in each; what is wrong with the whole list too.
    """

    name: str
    rows: int
    parts: tuple[PlannedPart, ...]
    unchanged: int
    faults: tuple[Fault, ...]


def preview(bench: Bench, handed: HandedIn, map_text: str) -> Preview:
    """Read a list by a map and say what taking it over would do; nothing is kept.

    Raises
    ------
    NotAllowed
        Where it is no list, or too large.
    """
    _refuse(handed, map_text)
    with tempfile.TemporaryDirectory(prefix="coachwright-") as room:
        prices = Path(room) / f"list{handed.ending}"
        map_file = Path(room) / "map.toml"
        prices.write_bytes(handed.content)
        map_file.write_text(map_text, encoding="utf-8")
        try:
            plan = plan_import(prices, map_file, bench.catalogue, Path(room))
        except PriceListError as error:
            found = ImportPlan(
                file=str(prices), folder=Path(room), rows=0, parts=(), faults=error.faults
            )
            return _preview(found, handed)
    return _preview(plan, handed)


def take_over(bench: Bench, found: Preview) -> tuple[str, ...]:
    """Keep the parts of a preview among the shop's own; return their ids.

    Raises
    ------
    CannotWrite
        Where one of them cannot be written; then none is.
    """
    named = shown_name(found.name)
    return write_parts(bench, {part.id: _named(part.text, named) for part in found.parts})


def _named(text: str, name: str) -> str:
    """Return a part's file with the list's own name in its first line."""
    first, joint, rest = text.partition(", row ")
    plain = first.startswith("# From the price list ")
    return f"# From the price list {name}{joint}{rest}" if plain else text


def _preview(plan: ImportPlan, handed: HandedIn) -> Preview:
    parts = tuple(part for part in plan.parts if part.action != "unchanged")
    return Preview(
        name=shown_name(handed.name),
        rows=plan.rows,
        parts=parts,
        unchanged=len(plan.parts) - len(parts),
        faults=tuple(_bare(fault) for fault in plan.faults),
    )


def _bare(fault: Fault) -> Fault:
    """Return a fault without the place where the server keeps the list for a moment."""
    file = "the map" if fault.file.endswith("map.toml") else "the list"
    return Fault(
        file=file,
        field=fault.field,
        found=fault.found,
        allowed=fault.allowed,
        action=fault.action,
    )


def _refuse(handed: HandedIn, map_text: str) -> None:
    if handed.ending not in ENDINGS:
        raise NotAllowed(f"{shown_name(handed.name)} is no price list; save it as .csv or .xlsx")
    if not 0 < len(handed.content) <= MOST_BYTES:
        raise NotAllowed(
            f"{shown_name(handed.name)} has {len(handed.content):,} bytes; "
            f"a list has 1 to {MOST_BYTES:,}"
        )
    if len(map_text.encode()) > MOST_MAP_BYTES:
        raise NotAllowed(f"the map is longer than {MOST_MAP_BYTES:,} bytes")
