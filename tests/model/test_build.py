"""A build has a digest of everything in it, and a sheet reads back as it was written."""

import json
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pydantic import BaseModel, ValidationError

from coachwright.model.build import BuildSheet
from coachwright.model.reading import read_record
from tests.support.builds import SHEET, Data, build, changed, fitting, part, sheet
from tests.support.records import records

LAMP = part("lamp", dc_load={"modes": [{"name": "on", "draw": "5 W"}]})
FULL: Data = {
    "own_parts": [LAMP],
    "fittings": [fitting("a", "lamp"), fitting("b", "lamp")],
    "story": "a night watch",
    "decisions": [{"rule": "r", "role": "lead", "reason": "tested"}],
}


def test_the_digest_is_the_same_each_time() -> None:
    assert build(FULL).digest == build(FULL).digest
    assert len(build(FULL).digest) == 64


def test_the_digest_survives_writing_and_reading() -> None:
    made = build(FULL)
    assert type(made).model_validate(made.model_dump()).digest == made.digest


@pytest.mark.parametrize(
    "change",
    [
        {"name": "Another name"},
        {"story": "a day watch"},
        {"revision": "B"},
        {"brief.travellers.0.mass": "70.001 kg"},
        {"brief.jurisdiction": "uk"},
        {"own_vehicle.kerb.front": "1251 kg"},
        {"own_parts.0.body.mass": "1.0000001 kg"},
        {"fittings.0.at": ["2000 mm", "1 mm", "0 mm"]},
        {"fittings.1.mirror": True},
        {"fittings.1.name": "c"},
        {"decisions.0.reason": "weighed"},
        {"fittings": [fitting("b", "lamp"), fitting("a", "lamp")]},
    ],
)
def test_any_change_moves_the_digest(change: Data) -> None:
    assert build(FULL | change).digest != build(FULL).digest


def test_a_unit_is_only_a_spelling() -> None:
    metric = build({"brief.travellers.0.mass": "45.359237 kg"})
    assert build({"brief.travellers.0.mass": "100 lb"}).digest == metric.digest


def test_a_build_cannot_be_changed() -> None:
    with pytest.raises(ValidationError, match="frozen"):
        build().name = "another"  # type: ignore[misc]


def _optional_fields(record: type[BaseModel]) -> list[str]:
    return [
        name
        for name, field in record.model_fields.items()
        if type(None) in getattr(field.annotation, "__args__", ())
        and not field.is_required()
        and field.get_default() is not None
    ]


def _all_records() -> list[type[BaseModel]]:
    waiting: list[type[BaseModel]] = [BuildSheet]
    found: list[type[BaseModel]] = []

    def walk(annotation: Any) -> None:
        is_record = isinstance(annotation, type) and issubclass(annotation, BaseModel)
        if is_record and annotation not in found and annotation not in waiting:
            waiting.append(annotation)
        for argument in getattr(annotation, "__args__", ()):
            walk(argument)

    while waiting:
        record = waiting.pop()
        found.append(record)
        for field in record.model_fields.values():
            walk(field.annotation)
    return found


@pytest.mark.parametrize("record", _all_records(), ids=lambda record: record.__name__)
def test_what_may_be_left_out_is_nothing_where_it_is_left_out(record: type[BaseModel]) -> None:
    """A file cannot say "none": a field that may be None must be None by default."""
    assert not _optional_fields(record)


def _read_back(written: BuildSheet) -> BuildSheet:
    data = written.model_dump(mode="json", exclude_none=True)
    found, faults = read_record(BuildSheet, json.loads(json.dumps(data)), "again.toml")
    assert not faults
    assert found is not None
    return found


def test_the_small_sheet_reads_back_as_written() -> None:
    assert _read_back(sheet(FULL)) == sheet(FULL)


def test_what_is_written_is_spelt_as_people_spell_it() -> None:
    data = sheet(FULL).model_dump(mode="json", exclude_none=True)
    mass = changed(SHEET, FULL)["own_parts"][0]["body"]["mass"]
    assert data["own_parts"][0]["body"]["mass"] == mass
    assert data["brief"]["travellers"][0]["stature"] == "1700 mm"
    assert data["own_vehicle"]["tyre"]["size"] == "225/75R16C"


@settings(max_examples=60, suppress_health_check=list(HealthCheck))
@given(st.data())
def test_any_sheet_reads_back_as_written(data: st.DataObject) -> None:
    written = data.draw(records(BuildSheet))
    assert _read_back(written) == written
