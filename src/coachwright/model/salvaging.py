"""A best guess at a faulty sheet, so that what it names can be checked in the same run.

A file with a bad unit in one place and an unknown part in another must show both at once.  The
sheet made here serves for finding faults only; nothing is ever computed from it.
"""

from collections.abc import Mapping
from typing import Any, TypeVar

from pydantic import BaseModel

from coachwright.model.brief import Brief, Cargo, Traveller
from coachwright.model.build import (
    BuildSheet,
    Changes,
    Exchange,
    Finish,
    Fitting,
    ModeUse,
    Move,
    Option,
    Waiver,
    WaterRun,
    WeighTicket,
)
from coachwright.model.part import Part
from coachwright.model.reading import read_record
from coachwright.model.vehicle import BaseVehicle

R = TypeVar("R", bound=BaseModel)


def salvaged(data: Mapping[str, Any]) -> BuildSheet:
    """Return a sheet with every piece that can be read, and the names of those that cannot."""
    brief = _table(data, "brief")
    return _partial(
        BuildSheet,
        name="",
        vehicle=_text(data, "vehicle"),
        own_vehicle=_record(BaseVehicle, data.get("own_vehicle")),
        standard=_text(data, "standard"),
        options=_texts(data, "options"),
        changes=_changes(_table(data, "changes")),
        brief=_partial(
            Brief,
            travellers=_all(Traveller, brief, "travellers", ("name", "seat")),
            cargo=_all(Cargo, brief, "cargo", ("name",)),
            must_have=_texts(brief, "must_have"),
        ),
        fittings=_fittings(data, "fittings"),
        finishes=_all(Finish, data, "finishes", ("part", "surface")),
        water_runs=_all(WaterRun, data, "water_runs", ("name", "serves")),
        waivers=_all(Waiver, data, "waivers", ("fitting", "purpose")),
        own_parts=_all(Part, data, "own_parts", ("id", "name")),
        ticket=_record(WeighTicket, data.get("ticket")),
        offers=_all(Option, data, "offers", ("name", "title")),
    )


def _changes(data: Mapping[str, Any]) -> Changes:
    return _partial(
        Changes,
        removed=_texts(data, "removed"),
        moved=tuple(move for move in _all(Move, data, "moved", ("fitting",)) if move.fitting),
        exchanged=_all(Exchange, data, "exchanged", ("fitting", "part")),
        added=_fittings(data, "added"),
    )


def _fittings(data: Mapping[str, Any], field: str) -> tuple[Fitting, ...]:
    return tuple(
        _record(Fitting, entry)
        or _partial(
            Fitting,
            name=_text(entry, "name"),
            part=_text(entry, "part"),
            on=_text(entry, "on"),
            within=_text(entry, "within"),
            at_mm=(0.0, 0.0, 0.0),
            use=_all(ModeUse, entry, "use", ("mode",)),
        )
        for entry in _tables(data, field)
    )


def _all(
    record: type[R], data: Mapping[str, Any], field: str, texts: tuple[str, ...]
) -> tuple[R, ...]:
    return tuple(
        _record(record, entry) or _partial(record, **{name: _text(entry, name) for name in texts})
        for entry in _tables(data, field)
    )


def _partial(record: type[R], **values: Any) -> R:
    """Return a record with some fields only, unchecked."""
    construct: Any = record.model_construct
    made: R = construct(**values)
    return made


def _record(record: type[R], data: Any) -> R | None:
    if not isinstance(data, Mapping):
        return None
    return read_record(record, data, "")[0]


def _text(data: Mapping[str, Any], field: str) -> str:
    value = data.get(field, "")
    return value if isinstance(value, str) else ""


def _texts(data: Mapping[str, Any], field: str) -> tuple[str, ...]:
    values = data.get(field, ())
    if not isinstance(values, list):
        return ()
    return tuple(value for value in values if isinstance(value, str))


def _table(data: Mapping[str, Any], field: str) -> Mapping[str, Any]:
    value = data.get(field, {})
    return value if isinstance(value, Mapping) else {}


def _tables(data: Mapping[str, Any], field: str) -> tuple[Mapping[str, Any], ...]:
    values = data.get(field, ())
    if not isinstance(values, list):
        return ()
    return tuple(value if isinstance(value, Mapping) else {} for value in values)
