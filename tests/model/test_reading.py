"""From a parsed file to a record: every fault at once, in words that say what to do."""

import datetime
from typing import Any

import pytest

from coachwright.errors import Fault
from coachwright.model.brief import Cargo
from coachwright.model.build import BuildSheet, Decision
from coachwright.model.facets import Mode
from coachwright.model.reading import field_path, read_record
from coachwright.model.vehicle import Kerb
from tests.support.builds import SHEET, Data, changed, fitting, part


def _faults(changes: Data) -> tuple[Fault, ...]:
    found, faults = read_record(BuildSheet, changed(SHEET, changes), "my-build.toml")
    assert found is None
    return faults


ONE_FAULT: tuple[tuple[str, Data, str, str, str, str], ...] = (
    (
        "bare number",
        {"brief.travellers.1.mass": 82},
        "brief.travellers[1].mass (ben)",
        "the bare number 82",
        "a number with one of: kg, g, t, lb, oz",
        'a number needs its unit in quotes: write a mass, such as "24 kg"',
    ),
    (
        "wrong dimension",
        {"own_vehicle.outside.width": "2050 kg"},
        "own_vehicle.outside.width",
        '"2050 kg"',
        "a number with one of: mm, cm, m, in, ft",
        'kg is a unit of mass; write a length, such as "650 mm"',
    ),
    (
        "below its range",
        {"brief.travellers.0.mass": "0 kg"},
        "brief.travellers[0].mass (ada)",
        '"0 kg"',
        "more than 0 kg",
        "give a value within it",
    ),
    (
        "above its range",
        {"brief.stay.hookup": "140 %"},
        "brief.stay.hookup",
        '"140 %"',
        "at least 0 % and at most 100 %",
        "give a value within it",
    ),
    (
        "too many hours in a day",
        {"brief.climate.summer_sun": "25 h/day"},
        "brief.climate.summer_sun",
        '"25 h/day"',
        "at least 0 h/day and at most 24 h/day",
        "give a value within it",
    ),
    (
        "missing",
        {"brief.climate.hot_day": None},
        "brief.climate.hot_day",
        "nothing",
        "this field is required",
        "add it",
    ),
    (
        "misspelt field",
        {"brief.climate.cold_nite": "-8 degC"},
        "brief.climate.cold_nite",
        "the unknown field 'cold_nite'",
        "the fields cold_night, hot_day, summer_sun, winter_sun, sites, heating_grade",
        "did you mean 'cold_night'?",
    ),
    (
        "unheard-of field",
        {"brief.stay.zzz": 1},
        "brief.stay.zzz",
        "the unknown field 'zzz'",
        "the fields parked, drive, hookup, months",
        "take it out",
    ),
    (
        "internal name of a field",
        {"brief.travellers.0.mass": None, "brief.travellers.0.mass_kg": "70 kg"},
        "brief.travellers[0].mass (ada)",
        "nothing",
        "this field is required",
        "add it",
    ),
    (
        "no such choice",
        {"brief.jurisdiction": "mars"},
        "brief.jurisdiction",
        '"mars"',
        "one of 'us', 'eu' or 'uk'",
        "choose one of these",
    ),
    (
        "no such literal",
        {"own_vehicle.fuel.kind": "coal"},
        "own_vehicle.fuel.kind",
        '"coal"',
        "one of 'diesel', 'petrol' or 'electric'",
        "choose one of these",
    ),
    (
        "a name with a space",
        {"fittings": [fitting("big box", "crate")]},
        "fittings[0].name (big box)",
        '"big box"',
        "lower-case words and numbers joined by hyphens",
        "spell it in that form, such as fresh-tank-2",
    ),
    (
        "a number for text",
        {"customer": 7},
        "customer",
        "7",
        "text in quotes",
        "write it in quotes",
    ),
    (
        "text for a whole number",
        {"own_vehicle.year_from": "new"},
        "own_vehicle.year_from",
        '"new"',
        "a whole number",
        "write a whole number without quotes",
    ),
    (
        "a fraction for a whole number",
        {"own_vehicle.year_from": 2020.5},
        "own_vehicle.year_from",
        "2020.5",
        "a whole number",
        "write a whole number",
    ),
    (
        "a whole number out of range",
        {"own_vehicle.year_from": 1900},
        "own_vehicle.year_from",
        "1900",
        "at least 1950",
        "give a value within it",
    ),
    (
        "text for true or false",
        {"own_vehicle.alternator.smart": "perhaps"},
        "own_vehicle.alternator.smart",
        '"perhaps"',
        "true or false",
        "write true or false without quotes",
    ),
    (
        "text for a table",
        {"brief.climate": "mild"},
        "brief.climate",
        '"mild"',
        "a table",
        "write a table with its fields",
    ),
    (
        "a table for a list",
        {"fittings": {"name": "box"}},
        "fittings",
        "a table",
        "a list",
        "write a list in square brackets",
    ),
    (
        "two numbers where three belong",
        {"own_vehicle.fuel.centre": ["1600 mm", "0 mm"]},
        "own_vehicle.fuel.centre[2]",
        "nothing",
        "this field is required",
        "add it",
    ),
    (
        "an empty list",
        {"brief.travellers": []},
        "brief.travellers",
        "an empty list",
        "a list of at least 1",
        "add what is missing",
    ),
    (
        "empty text",
        {"name": ""},
        "name",
        '""',
        "text that is not empty",
        "write something here",
    ),
    (
        "no date",
        {"brief.wanted": "soon"},
        "brief.wanted",
        '"soon"',
        "a date",
        "write a date without quotes, such as 2027-04-15",
    ),
    (
        "an eighth of a turn",
        {"fittings": [fitting("box", "crate", turn="45 deg")]},
        "fittings[0].turn (box)",
        "45 deg",
        "0 deg, 90 deg, 180 deg or 270 deg",
        "turn by quarter turns",
    ),
    (
        "a format of the future",
        {"format": 2},
        "format",
        "2",
        "one of 1",
        "choose one of these",
    ),
)


@pytest.mark.parametrize(
    ("changes", "field", "found", "allowed", "action"),
    [case[1:] for case in ONE_FAULT],
    ids=[case[0] for case in ONE_FAULT],
)
def test_a_fault_says_where_what_and_what_to_do(
    changes: Data, field: str, found: str, allowed: str, action: str
) -> None:
    wanted = Fault(file="my-build.toml", field=field, found=found, allowed=allowed, action=action)
    assert wanted in _faults(changes)


def test_all_faults_of_a_file_come_at_once() -> None:
    changes: Data = {}
    for _, change, *_ in ONE_FAULT[:6]:
        changes |= change
    faults = _faults(changes)
    assert len(faults) == 6
    assert {fault.file for fault in faults} == {"my-build.toml"}


def test_what_is_shown_of_a_value_is_what_stood_there() -> None:
    changes = {"customer": True, "name": 1.5, "revision": {}, "story": [1, 2]}
    found = {fault.field: fault.found for fault in _faults(changes)}
    assert found == {
        "customer": "the truth value true",
        "name": "1.5",
        "revision": "a table",
        "story": "a list of 2",
    }


def test_an_own_part_is_named_beside_its_number() -> None:
    faults = _faults({"own_parts": [part("crate", body={"size": ["1 mm"] * 3, "mass": "-1 kg"})]})
    assert [fault.field for fault in faults] == ["own_parts[0].body.mass (crate)"]


def test_an_unknown_field_deep_in_a_list_knows_its_neighbours() -> None:
    crate = part("crate", dc_load={"modes": [{"name": "on", "drew": "5 W"}]})
    faults = _faults({"own_parts": [crate]})
    assert "did you mean 'draw'?" in [fault.action for fault in faults]


def test_a_sentence_holds_every_part_of_a_fault() -> None:
    fault = Fault(file="f", field="a.b", found='"x"', allowed="y", action="do z")
    assert fault.sentence() == 'f: a.b: found "x"; allowed: y; do z'


def test_a_prefix_stands_before_every_field() -> None:
    _, faults = read_record(Kerb, {}, "van.toml", "kerb")
    assert {fault.field for fault in faults} == {
        "kerb.front",
        "kerb.rear",
        "kerb.fuel",
        "kerb.cg_height",
    }


@pytest.mark.parametrize(
    ("location", "path"),
    [((), "the whole file"), (("a",), "a"), (("a", 0, "b", 1), "a[0].b[1]")],
)
def test_a_path_is_written_as_people_do(location: tuple[str | int, ...], path: str) -> None:
    assert field_path(location) == path


def test_what_is_no_table_at_all_is_a_fault_of_the_whole_file() -> None:
    nothing: Any = []
    found, faults = read_record(BuildSheet, nothing, "empty.toml")
    assert found is None
    assert [(fault.field, fault.allowed) for fault in faults] == [("the whole file", "a table")]


def test_a_good_record_comes_without_faults() -> None:
    data = {"name": "bench", "mass": "12 kg", "centre": ["1 m", "0 mm", "20 cm"]}
    found, faults = read_record(Cargo, data, "f.toml")
    assert faults == ()
    assert found == Cargo(name="bench", mass_kg=12.0, centre_mm=(1000.0, 0.0, 200.0))


def test_a_date_of_the_file_stays_a_date() -> None:
    data = {"rule": "r", "role": "lead", "reason": "seen", "date": datetime.date(2027, 4, 15)}
    found, _ = read_record(Decision, data, "f.toml")
    assert found is not None
    assert found.date == datetime.date(2027, 4, 15)


@pytest.mark.parametrize("value", [float("nan"), float("inf"), float("-inf")])
def test_a_program_cannot_put_in_what_is_no_number(value: float) -> None:
    with pytest.raises(ValueError, match="a finite number"):
        Mode(name="on", draw_w=value)
