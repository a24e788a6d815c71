"""The shop's own parts and base vehicles: read, written, taken away, and where they are used."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

from coachwright.actions.benching import Bench
from coachwright.actions.files import write_all, write_text
from coachwright.actions.opening import complete
from coachwright.actions.paths import Steps, dotted, got
from coachwright.actions.writing import record_text, text_with_values
from coachwright.catalogue.loading import MOST_ID, Catalogue, Origin, parse_toml
from coachwright.errors import (
    CannotWrite,
    CatalogueError,
    CoachwrightError,
    Fault,
    NotAllowed,
)
from coachwright.model.part import ID_PATTERN, Part
from coachwright.model.reading import read_record
from coachwright.model.vehicle import BaseVehicle
from coachwright.store.editing import read_sheet

Kind = Literal["parts", "vehicles"]
_RECORD: dict[str, type[Part] | type[BaseVehicle]] = {"parts": Part, "vehicles": BaseVehicle}
_WORD = {"parts": "part", "vehicles": "base vehicle"}
MOST_CHARACTERS = 200_000
"""Of one entry's file."""


@dataclass(frozen=True, kw_only=True, slots=True)
class FieldLine:
    """One value of an entry, as its file spells it."""

    steps: Steps
    label: str
    text: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Entry:
    """An entry of the catalogue as it is shown and edited.

    Attributes
    ----------
    own
        The shop's own, so that it can be edited in place.
    text
        Its file.
    lines
        Its values.
    """

    kind: Kind
    id: str
    name: str
    origin: str
    own: bool
    text: str
    lines: tuple[FieldLine, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Use:
    """One build that uses an entry, and as what."""

    build_id: int
    build: str
    fittings: tuple[str, ...]


def entry(catalogue: Catalogue, kind: Kind, entry_id: str) -> Entry:
    """Return one entry of the catalogue.

    Raises
    ------
    UnknownName
        Where there is no such entry.
    CatalogueError
        Where its file has faults.
    """
    record: Part | BaseVehicle = (
        catalogue.part(entry_id) if kind == "parts" else catalogue.vehicle(entry_id)
    )
    origin = catalogue.origin(kind, entry_id)
    own = origin is not Origin.SHIPPED
    text = record_text(record)
    if own and catalogue.shop is not None:
        text = (catalogue.shop / kind / f"{entry_id}.toml").read_text(encoding="utf-8-sig")
    data, _ = parse_toml(text, entry_id)
    return Entry(
        kind=kind,
        id=entry_id,
        name=record.name,
        origin=str(origin),
        own=own,
        text=text,
        lines=tuple(_lines((), data or {})),
    )


def copy_text(catalogue: Catalogue, kind: Kind, entry_id: str, new_id: str) -> str:
    """Return the file of a new entry that begins as a copy of another.

    Raises
    ------
    UnknownName
        Where there is no such entry.
    """
    return text_with_values(entry(catalogue, kind, entry_id).text, {("id",): new_id})


def with_value(text: str, line: FieldLine, typed: str) -> str:
    """Return an entry's file with one value changed; what kind of value it is stays.

    Raises
    ------
    CatalogueError
        Where a number or a yes-or-no is not one.
    """
    data, faults = parse_toml(text, "the entry")
    if data is None:
        raise CatalogueError(faults)
    return text_with_values(text, {line.steps: _like(got(data, line.steps), typed, line)})


def save_entry(bench: Bench, kind: Kind, text: str, *, expected_id: str = "") -> str:
    """Keep an entry of the shop's own and return its id; its file is named by it alone.

    Raises
    ------
    CatalogueError
        With every fault of the text.
    CannotWrite
        Where the shop has no folder, or it cannot be written.
    """
    folder = _folder(bench)
    found = _approved(kind, text)
    if len(found.id) > MOST_ID:
        raise CatalogueError(
            [_fault("id", found.id, f"at most {MOST_ID} characters", "shorten it")]
        )
    if expected_id and found.id != expected_id:
        raise CatalogueError(
            [
                _fault(
                    "id",
                    f'"{found.id}"',
                    f'"{expected_id}", for builds name it so',
                    "copy the entry under another id instead",
                )
            ]
        )
    write_text(folder / kind / f"{found.id}.toml", text if text.endswith("\n") else f"{text}\n")
    return found.id


def new_entry(bench: Bench, kind: Kind, from_id: str, new_id: str) -> str:
    """Keep a copy of an entry under an id of its own.

    Raises
    ------
    CatalogueError
        Where the id is none.
    NotAllowed
        Where the id is taken.
    """
    catalogue = bench.catalogue
    taken = catalogue.part_ids() if kind == "parts" else catalogue.vehicle_ids()
    if new_id in taken and new_id != from_id:
        raise NotAllowed(f"there is a {_WORD[kind]} {new_id!r} already; choose another id")
    if re.fullmatch(ID_PATTERN, new_id) is None or len(new_id) > MOST_ID:
        allowed = f"at most {MOST_ID} small letters, digits and hyphens, such as north-fan-2"
        raise CatalogueError([_fault("id", f'"{new_id}"', allowed, "write one")])
    return save_entry(bench, kind, copy_text(catalogue, kind, from_id, new_id))


def remove_entry(bench: Bench, kind: Kind, entry_id: str) -> None:
    """Take an entry of the shop's own away; a shipped one with its id shows again.

    Raises
    ------
    NotAllowed
        Where it is not the shop's own, or a build would be left without it.
    """
    origin = bench.catalogue.origin(kind, entry_id)
    if origin is Origin.SHIPPED:
        raise NotAllowed(f"{entry_id} comes with the program and stays")
    used = uses(bench, kind, entry_id)
    if used and origin is Origin.SHOP:
        names = ", ".join(each.build for each in used)
        raise NotAllowed(f"{entry_id} is used by {names}; exchange it there first")
    path = _folder(bench) / kind / f"{entry_id}.toml"
    try:
        path.unlink()
    except OSError as error:
        raise CannotWrite(f"{path.name} cannot be taken away: {error.strerror}") from error


def uses(bench: Bench, kind: Kind, entry_id: str) -> tuple[Use, ...]:
    """Return the builds that use an entry, those put away too."""
    found = []
    for away in (False, True):
        for listed in bench.store.builds(archived=away):
            fittings = _used_in(bench, listed.build_id, kind, entry_id)
            if fittings:
                found.append(Use(build_id=listed.build_id, build=listed.name, fittings=fittings))
    return tuple(found)


def write_parts(bench: Bench, texts: Mapping[str, str]) -> tuple[str, ...]:
    """Keep several parts of the shop's own together, by their ids.

    Raises
    ------
    CannotWrite
        Where one of them cannot be written; then none is.
    """
    folder = _folder(bench) / "parts"
    write_all({folder / f"{part_id}.toml": text.encode() for part_id, text in texts.items()})
    return tuple(texts)


def _used_in(bench: Bench, build_id: int, kind: Kind, entry_id: str) -> tuple[str, ...]:
    text = bench.store.sheet(build_id).text
    try:
        build = complete(read_sheet(text), "the sheet", bench.catalogue)
    except CoachwrightError:
        return ("a build that has faults",) if f'"{entry_id}"' in text else ()
    if kind == "vehicles":
        return ("base vehicle",) if build.vehicle.id == entry_id else ()
    fitted = [each.name for each in build.fittings if each.part.id == entry_id]
    layers = [
        f"finish on {layer.finish.surface}"
        for layer in build.finishes
        if layer.part.id == entry_id
    ]
    return (*fitted, *layers)


def _folder(bench: Bench) -> Path:
    """Return the folder that the shop's own entries are written to."""
    bench.check()
    if bench.catalogue.shop is None:
        raise CannotWrite("the shop has no folder of its own yet; name one with --shop")
    return bench.catalogue.shop


def _approved(kind: Kind, text: str) -> Part | BaseVehicle:
    if len(text) > MOST_CHARACTERS:
        most = f"at most {MOST_CHARACTERS:,} characters"
        raise CatalogueError([_fault("the whole file", f"{len(text):,}", most, "shorten it")])
    data, faults = parse_toml(text, "the entry")
    if data is None:
        raise CatalogueError(faults)
    found, faults = read_record(_RECORD[kind], data, "the entry")
    if found is None:
        raise CatalogueError(faults)
    return found


def _fault(field: str, found: str, allowed: str, action: str) -> Fault:
    return Fault(file="the entry", field=field, found=found, allowed=allowed, action=action)


def _lines(steps: Steps, data: Any) -> Iterator[FieldLine]:
    if isinstance(data, Mapping):
        for key, value in data.items():
            yield from _lines((*steps, str(key)), value)
    elif isinstance(data, list):
        for index, value in enumerate(data):
            yield from _lines((*steps, index), value)
    else:
        said = str(data).lower() if isinstance(data, bool) else str(data)
        yield FieldLine(steps=steps, label=dotted(steps), text=said)


def _like(stood: Any, typed: str, line: FieldLine) -> Any:
    plain = typed.strip()
    if isinstance(stood, bool):
        if plain not in ("true", "false"):
            raise CatalogueError([_fault(line.label, f'"{plain}"', "true or false", "write one")])
        return plain == "true"
    if isinstance(stood, int | float):
        try:
            return type(stood)(plain)
        except ValueError:
            number = "a number" if isinstance(stood, float) else "a whole number"
            raise CatalogueError([_fault(line.label, f'"{plain}"', number, "write one")]) from None
    return plain
