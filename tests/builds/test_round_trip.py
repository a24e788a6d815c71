"""Whatever a record holds, its file reads back as the same record."""

import datetime
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.actions.paths import put
from coachwright.actions.writing import record_text, text_with_decision, text_with_values
from coachwright.catalogue.loading import Catalogue, parse_toml
from coachwright.errors import BuildFileError, CannotWrite
from coachwright.model.build import BuildSheet, Decision
from coachwright.model.part import Part
from coachwright.model.reading import read_record
from coachwright.model.record import Record
from coachwright.model.vehicle import BaseVehicle
from tests.support.builds import Data, fitting, part, sheet

FOLDER = Path(__file__).parent


def _read(text: str, record: type[Record]) -> Record:
    data, faults = parse_toml(text, "written.toml")
    assert data is not None, faults
    found, faults = read_record(record, data, "written.toml")
    assert found is not None, faults
    return found


words = st.text(st.characters(exclude_categories=["Cs"]), max_size=40)
names = st.from_regex(r"[a-z0-9]{1,6}(-[a-z0-9]{1,4}){0,2}", fullmatch=True)
lengths = st.floats(-20_000, 20_000).map(lambda mm: f"{mm!r} mm")
masses = st.floats(0, 5000).map(lambda kg: f"{kg!r} kg")
positive = st.floats(0.001, 5000)
fittings = st.builds(
    lambda name, at, turn, mirror, contents, note: fitting(
        name, "crate", at=list(at), turn=turn, mirror=mirror, contents=contents, note=note
    ),
    names,
    st.tuples(lengths, lengths, lengths),
    st.sampled_from(["0 deg", "90 deg", "180 deg", "270 deg"]),
    st.booleans(),
    masses,
    words,
)
sheets: st.SearchStrategy[Data] = st.fixed_dictionaries(
    {
        "name": words.filter(bool),
        "customer": words,
        "story": words,
        "fittings": st.lists(fittings, max_size=3),
        "brief.travellers.0.mass": positive.map(lambda kg: f"{kg!r} kg"),
        "brief.stay.hookup": st.floats(0, 100).map(lambda share: f"{share!r} %"),
        "brief.climate.cold_night": st.floats(-89, 50).map(lambda degc: f"{degc!r} degC"),
        "brief.wanted": st.dates(datetime.date(1, 1, 1)),
        "brief.must_have": st.lists(st.sampled_from(["bed", "battery"]), max_size=2),
        "decisions": st.lists(
            st.fixed_dictionaries({"rule": words, "role": words.filter(bool), "reason": names}),
            max_size=2,
        ),
        "own_parts": st.just([part("crate")]),
    }
)


@given(sheets)
def test_any_build_reads_back_the_same(changes: Data) -> None:
    written = sheet(changes)
    text = record_text(written)
    assert _read(text, BuildSheet) == written
    assert record_text(_read(text, BuildSheet)) == text


@pytest.mark.parametrize("path", sorted(FOLDER.glob("*.toml")), ids=lambda path: path.stem)
def test_a_build_of_the_tests_reads_back_the_same(path: Path) -> None:
    written = _read(path.read_text(encoding="utf-8"), BuildSheet)
    assert _read(record_text(written), BuildSheet) == written


@pytest.mark.parametrize(
    "path", sorted((FOLDER.parents[1] / "demos").glob("*.toml")), ids=lambda path: path.stem
)
def test_a_demo_reads_back_the_same(path: Path) -> None:
    written = _read(path.read_text(encoding="utf-8"), BuildSheet)
    assert _read(record_text(written), BuildSheet) == written


def test_every_shipped_part_reads_back_the_same() -> None:
    for written in Catalogue().parts():
        assert _read(record_text(written), Part) == written


def test_every_shipped_vehicle_reads_back_the_same() -> None:
    for written in Catalogue().vehicles():
        assert _read(record_text(written), BaseVehicle) == written


@given(st.lists(words.filter(bool), min_size=1, max_size=3))
def test_decisions_add_up_and_comments_stay(reasons: list[str]) -> None:
    first = sheet()
    text = f"# kept above\n{record_text(first)}# kept below\n"
    for reason in reasons:
        text = text_with_decision(text, Decision(rule="a.b", role="customer", reason=reason))
    read = _read(text, BuildSheet)
    assert isinstance(read, BuildSheet)
    assert [decision.reason for decision in read.decisions] == reasons
    assert read.model_copy(update={"decisions": ()}) == first
    assert "# kept above" in text
    assert "# kept below" in text


@pytest.mark.parametrize(
    ("text", "steps", "value"),
    [
        ('[body]  # a\nmass = "2 kg"  # b\n', ("body", "mass"), "3 kg"),
        ('body = { mass = "2 kg" }  # a\n', ("body", "mass"), "3 kg"),
        ('id = "x"  # a\n', ("price", "price"), ["1.00 EUR"]),
        ('[[modes]]  # a\nname = "on"\n[other]\nx = 1\n', ("modes", 0, "draw"), "4 W"),
        ('[body]  # a\nsize = ["1 mm", "2 mm", "3 mm"]\n', ("body", "size", 1), "9 mm"),
        ("# a\nmodes = []\n", ("modes", 0, "draw"), "4 W"),
    ],
)
def test_a_value_is_set_and_all_else_stays(
    text: str, steps: tuple[str | int, ...], value: Any
) -> None:
    wanted, _ = parse_toml(text, "before")
    assert wanted is not None
    put(wanted, steps, value)
    edited = text_with_values(text, {steps: value})
    assert parse_toml(edited, "after") == (wanted, ())
    assert "# a" in edited


def test_there_must_be_a_place_for_a_value() -> None:
    with pytest.raises(CannotWrite, match=r"no place for body\.mass in the file"):
        text_with_values('body = "soul"', {("body", "mass"): "3 kg"})
    with pytest.raises(CannotWrite, match="cannot be written to a file"):
        text_with_values("a = 1", {("a",): object()})
    with pytest.raises(CannotWrite, match="decisions is not a list of tables"):
        text_with_decision("decisions = 3", Decision(rule="a.b", role="c", reason="d"))


def test_a_text_that_is_no_toml_is_not_edited() -> None:
    with pytest.raises(BuildFileError, match="line 1"):
        text_with_values("a = = 1", {("a",): 2})
