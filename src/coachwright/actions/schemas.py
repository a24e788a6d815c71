"""JSON schemas of every record, for editors and other programs."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

from coachwright.actions.files import write_all
from coachwright.errors import UnknownName
from coachwright.model.build import BuildSheet
from coachwright.model.part import Part
from coachwright.model.vehicle import BaseVehicle

_DIALECT = "https://json-schema.org/draft/2020-12/schema"


def _assessment() -> dict[str, Any]:
    from coachwright.actions.checking import report_schema  # noqa: PLC0415  # knows everything

    return report_schema()


def _price_map() -> dict[str, Any]:
    from coachwright.actions.price_map import PriceMap  # noqa: PLC0415  # seldom wanted

    return PriceMap.model_json_schema(by_alias=True)


_MADE_BY: dict[str, Callable[[], dict[str, Any]]] = {
    "assessment": _assessment,
    "build": lambda: BuildSheet.model_json_schema(by_alias=True),
    "part": lambda: Part.model_json_schema(by_alias=True),
    "price-map": _price_map,
    "vehicle": lambda: BaseVehicle.model_json_schema(by_alias=True),
}
RECORDS: tuple[str, ...] = tuple(_MADE_BY)
"""The records that have a schema."""


def schema(record: str) -> dict[str, Any]:
    """Return the JSON schema of one record.

    Raises
    ------
    UnknownName
        Where there is no such record.
    """
    if record not in _MADE_BY:
        raise UnknownName("record", record, RECORDS)
    return {"$schema": _DIALECT, **_MADE_BY[record]()}


def write_schemas(folder: Path) -> tuple[Path, ...]:
    """Write the schema of every record into a folder; return the files.

    Raises
    ------
    CannotWrite
        Where one of them cannot be written; then none is.
    """
    files = {
        folder / f"{name}.schema.json": f"{json.dumps(schema(name), indent=2)}\n".encode()
        for name in RECORDS
    }
    write_all(files)
    return tuple(files)
