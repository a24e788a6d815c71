"""Read parts, base vehicles and standard builds: the shipped ones and the shop's own.

A shop's folder holds ``parts/<id>.toml``, ``vehicles/<id>.toml`` and ``standards/<id>.toml``.  A
shop's entry with the id of a shipped one takes its place, and `Catalogue.origin` says so.
"""

import re
import tomllib
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from pathlib import Path
from typing import Any, TypeVar

from pydantic import BaseModel

from coachwright.errors import CatalogueError, Fault, UnknownName
from coachwright.model.build import BuildSheet
from coachwright.model.part import ID_PATTERN, Part
from coachwright.model.reading import read_record
from coachwright.model.vehicle import BaseVehicle

SHIPPED = Path(__file__).parent
"""Folder of the shipped catalogue."""
MOST_ID = 120
"""Characters of an entry's id; longer names of files cannot be kept everywhere."""
R = TypeVar("R", bound=BaseModel)


class Origin(StrEnum):
    """Where an entry of the catalogue comes from."""

    SHIPPED = "shipped"
    SHOP = "the shop's own"
    OVERRIDE = "the shop's own, in place of a shipped one"


@dataclass(frozen=True)
class Catalogue:
    """The shipped catalogue, with a shop's own over it.

    Parameters
    ----------
    shop
        The shop's folder; None for the shipped catalogue alone.
    """

    shop: Path | None = None

    def part_ids(self) -> tuple[str, ...]:
        """Return the ids of all parts, sorted."""
        return self._ids("parts")

    def vehicle_ids(self) -> tuple[str, ...]:
        """Return the ids of all base vehicles, sorted."""
        return self._ids("vehicles")

    def standard_ids(self) -> tuple[str, ...]:
        """Return the ids of all standard builds, sorted."""
        return self._ids("standards")

    def part(self, part_id: str) -> Part:
        """Return one part.

        Raises
        ------
        UnknownName
            Where there is no such part.
        CatalogueError
            Where its file has faults.
        """
        return self._entry("parts", part_id, Part)

    def vehicle(self, vehicle_id: str) -> BaseVehicle:
        """Return one base vehicle.

        Raises
        ------
        UnknownName
            Where there is no such vehicle.
        CatalogueError
            Where its file has faults.
        """
        return self._entry("vehicles", vehicle_id, BaseVehicle)

    def standard(self, standard_id: str) -> BuildSheet:
        """Return one standard build as written.

        Raises
        ------
        UnknownName
            Where there is no such standard build.
        CatalogueError
            Where its file has faults.
        """
        return self._entry("standards", standard_id, BuildSheet)

    def parts(self) -> tuple[Part, ...]:
        """Return every part, by id.

        Raises
        ------
        CatalogueError
            With every fault of every file.
        """
        return self._all("parts", Part)

    def vehicles(self) -> tuple[BaseVehicle, ...]:
        """Return every base vehicle, by id.

        Raises
        ------
        CatalogueError
            With every fault of every file.
        """
        return self._all("vehicles", BaseVehicle)

    def origin(self, kind: str, entry_id: str) -> Origin:
        """Return where an entry of ``"parts"``, ``"vehicles"`` or ``"standards"`` comes from."""
        if not _is_id(entry_id):
            return Origin.SHIPPED
        shipped = (SHIPPED / kind / f"{entry_id}.toml").is_file()
        own = self.shop is not None and (self.shop / kind / f"{entry_id}.toml").is_file()
        if own:
            return Origin.OVERRIDE if shipped else Origin.SHOP
        return Origin.SHIPPED

    def _ids(self, kind: str) -> tuple[str, ...]:
        own = () if self.shop is None else _stems(self.shop / kind)
        return tuple(sorted({*own, *_shipped_ids(kind)}))

    def _folders(self, kind: str) -> tuple[Path, ...]:
        own = () if self.shop is None else (self.shop / kind,)
        return (*own, SHIPPED / kind)

    def _path(self, kind: str, entry_id: str) -> Path | None:
        if not _is_id(entry_id):
            return None
        for folder in self._folders(kind):
            path = folder / f"{entry_id}.toml"
            if path.is_file():
                return path
        return None

    def _entry(self, kind: str, entry_id: str, record: type[R]) -> R:
        path = self._path(kind, entry_id)
        if path is None:
            raise UnknownName(_SINGULAR[kind], entry_id, self._ids(kind))
        found, faults = _read(path, record)
        if found is None:
            raise CatalogueError(faults)
        return found

    def _all(self, kind: str, record: type[R]) -> tuple[R, ...]:
        entries: list[R] = []
        faults: list[Fault] = []
        for entry_id in self._ids(kind):
            path = self._path(kind, entry_id)
            found, wrong = (None, ()) if path is None else _read(path, record)
            faults.extend(wrong)
            if found is not None:
                entries.append(found)
        if faults:
            raise CatalogueError(faults)
        return tuple(entries)


def _is_id(entry_id: str) -> bool:
    """Say whether a text can be an entry's id; nothing else ever becomes part of a path."""
    return len(entry_id) <= MOST_ID and re.fullmatch(ID_PATTERN, entry_id) is not None


_SINGULAR = {"parts": "part", "vehicles": "base vehicle", "standards": "standard build"}


@cache
def _shipped_ids(kind: str) -> tuple[str, ...]:
    """List the shipped files once: they do not change while the program runs."""
    return _stems(SHIPPED / kind)


def _stems(folder: Path) -> tuple[str, ...]:
    return tuple(path.stem for path in folder.glob("*.toml")) if folder.is_dir() else ()


def _read(path: Path, record: type[R]) -> tuple[R | None, tuple[Fault, ...]]:
    if SHIPPED in path.parents:
        return _read_shipped(path, record)
    return _read_now(path, record)


@cache
def _read_shipped(path: Path, record: type[R]) -> tuple[R | None, tuple[Fault, ...]]:
    """Read a shipped file once: it does not change while the program runs."""
    return _read_now(path, record)


def _read_now(path: Path, record: type[R]) -> tuple[R | None, tuple[Fault, ...]]:
    data, faults = read_toml(path)
    if data is None:
        return None, faults
    found, faults = read_record(record, data, str(path))
    entry_id = getattr(found, "id", path.stem)
    if found is not None and entry_id != path.stem:
        return None, (
            Fault(
                file=str(path),
                field="id",
                found=f'"{entry_id}"',
                allowed=f'the name of the file, "{path.stem}"',
                action="rename the file or change the id",
            ),
        )
    return found, faults


def read_toml(path: Path) -> tuple[dict[str, Any] | None, tuple[Fault, ...]]:
    """Read a TOML file.

    Returns
    -------
    tuple
        The parsed file and no faults, or None and what is wrong with it.
    """
    try:
        text = path.read_bytes().decode("utf-8-sig")
    except FileNotFoundError:
        return None, (_file_fault(path, "no such file", "a file", "check the path"),)
    except IsADirectoryError:
        return None, (_file_fault(path, "a folder", "a file", "name the file in it"),)
    except PermissionError:
        return None, (
            _file_fault(path, "a file you may not read", "a readable file", "change its rights"),
        )
    except UnicodeDecodeError as error:
        found = f"byte {error.start}, which is not UTF-8"
        return None, (_file_fault(path, found, "text in UTF-8", "save the file as UTF-8"),)
    return parse_toml(text, str(path))


def parse_toml(text: str, file: str) -> tuple[dict[str, Any] | None, tuple[Fault, ...]]:
    """Parse TOML text; a syntax fault says the line and what stood there."""
    try:
        return tomllib.loads(text), ()
    except tomllib.TOMLDecodeError as error:
        return None, (_syntax_fault(text, file, str(error)),)


def _syntax_fault(text: str, file: str, message: str) -> Fault:
    reason, _, place = message.partition(" (at ")
    lines = text.splitlines()
    number = len(lines)
    if place.startswith("line "):
        number = int(place.removeprefix("line ").split(",")[0])
    stood = lines[number - 1].strip() if 0 < number <= len(lines) else "the end of the file"
    return Fault(
        file=file,
        field=f"line {number}",
        found=f"{stood!r}: {reason[:1].lower()}{reason[1:]}",
        allowed='TOML, such as: mass = "24 kg"',
        action="correct the line; quotes, brackets and equals signs must be complete",
    )


def _file_fault(path: Path, found: str, allowed: str, action: str) -> Fault:
    return Fault(
        file=str(path), field="the whole file", found=found, allowed=allowed, action=action
    )
