"""The weather of sites for an assessment, and years kept from one start to the next."""

import hashlib
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib import resources
from pathlib import Path
from typing import TYPE_CHECKING

from pydantic import TypeAdapter, ValidationError
from pydantic_core import to_json

from coachwright import __version__
from coachwright.actions.files import write_all
from coachwright.assess import Almanac
from coachwright.catalogue.loading import Catalogue
from coachwright.errors import CannotWrite
from coachwright.living.model import Living

if TYPE_CHECKING:
    from coachwright.climate.arrays import SiteArrays

_ROOMS = ("climate", "electrics", "layout", "living", "model", "reference", "water")
"""What a year is computed with: where any of it is another, years are computed anew."""
_MOST_SITES = 8
"""Whose arrays stay in memory."""
_MOST_YEARS = 200
"""Kept at most; the oldest go."""


@dataclass(frozen=True, kw_only=True, slots=True)
class YearShelf:
    """A folder of years, each a file under the digest of what it was computed from."""

    folder: Path

    def take(self, key: str) -> Living | None:
        """Return what is kept under a key; what cannot be read is as good as not kept."""
        try:
            return _adapter().validate_json(self._place(key).read_bytes())
        except (OSError, ValidationError):
            return None

    def put(self, key: str, made: Living) -> None:
        """Keep a result; a folder that cannot be written to costs time and nothing else."""
        try:
            write_all({self._place(key): to_json(made)})
            self._tidy()
        except (CannotWrite, OSError):
            return

    def _place(self, key: str) -> Path:
        return self.folder / "years" / f"{key.rpartition(':')[2]}.json"

    def _tidy(self) -> None:
        kept = sorted(
            (self.folder / "years").glob("*.json"), key=lambda each: each.stat().st_mtime
        )
        for old in kept[:-_MOST_YEARS]:
            old.unlink(missing_ok=True)


def almanac_of(
    catalogue: Catalogue,
    folder: Path | None,
    *,
    wait: bool = True,
    began: Callable[[], None] = lambda: None,
    changes: bool = False,
) -> Almanac:
    """Return the almanac of a catalogue's sites.

    Parameters
    ----------
    catalogue
        Where sites are found.
    folder
        In which arrays and years are kept; None to compute them anew.
    wait
        Compute what is not kept; else say that it is awaited.
    began
        Called before something is computed that takes time.
    changes
        Say what some changes would do, too.
    """

    @lru_cache(maxsize=_MOST_SITES)
    def arrays_of(site_id: str) -> "SiteArrays":
        from coachwright.actions.site_shelf import arrays_of_site  # noqa: PLC0415  # heavy

        return arrays_of_site(catalogue, site_id, folder)

    return Almanac(
        arrays_of=arrays_of,
        mark=_mark(),
        shelf=None if folder is None else YearShelf(folder=folder),
        wait=wait,
        began=began,
        changes=changes,
    )


@cache
def _adapter() -> TypeAdapter[Living]:
    return TypeAdapter(Living)


@cache
def _mark() -> str:
    """Return a digest of the program that computes years: its version, and its files' dates."""
    made = hashlib.sha256(__version__.encode())
    for path in _files():
        at = path.stat()
        made.update(f"{path.name} {at.st_size} {at.st_mtime_ns}".encode())
    return made.hexdigest()


def _files() -> Iterator[Path]:
    with resources.as_file(resources.files("coachwright")) as package:
        for room in _ROOMS:
            yield from sorted((package / room).glob("*.py"))
            yield from sorted((package / room).glob("*.csv"))
