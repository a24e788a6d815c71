"""Entries of sheets that were read before: an edit reads anew only the entries it changed."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Any

from coachwright.model.brief import Brief
from coachwright.model.build import Decision, Finish, Fitting, Waiver, WaterRun
from coachwright.model.part import Part
from coachwright.model.reading import read_record
from coachwright.model.record import Record

_MOST_KEPT = 2048
_LISTS: Mapping[str, type[Record]] = {
    "decisions": Decision,
    "finishes": Finish,
    "fittings": Fitting,
    "own_parts": Part,
    "waivers": Waiver,
    "water_runs": WaterRun,
}
_TABLES: Mapping[str, type[Record]] = {"brief": Brief}


@dataclass(frozen=True, slots=True)
class _Spelt:
    """An entry as its file spells it; equal only to one that is spelt the same, types too."""

    record: type[Record]
    spelt: str
    entry: Any = field(compare=False)


def with_known_entries(data: Mapping[str, Any]) -> dict[str, Any]:
    """Return a parsed sheet with its entries as records, as far as they have no faults.

    Parameters
    ----------
    data
        As the TOML reader gave it; it stays as it is.

    Returns
    -------
    dict
        An entry with faults stays as it was, so that the sheet's reader tells them.
    """
    made = dict(data)
    for name, record in _LISTS.items():
        if isinstance(made.get(name), list):
            made[name] = [_known(record, entry) for entry in made[name]]
    for name, record in _TABLES.items():
        if name in made:
            made[name] = _known(record, made[name])
    return made


def _known(record: type[Record], entry: Any) -> Any:
    found = _read(_Spelt(record, repr(entry), entry))
    return entry if found is None else found


@lru_cache(maxsize=_MOST_KEPT)
def _read(spelt: _Spelt) -> Record | None:
    if not isinstance(spelt.entry, Mapping):
        return None
    return read_record(spelt.record, spelt.entry, "")[0]
