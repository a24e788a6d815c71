"""Entries read before are used again, and nothing reads otherwise for it."""

import tomllib
from typing import Any

import pytest

from coachwright.actions.demos import demo
from coachwright.errors import BuildFileError
from coachwright.model.build import BuildSheet, Fitting
from coachwright.model.reading import read_record
from coachwright.store.editing import SHEET, read_sheet
from coachwright.store.entries import with_known_entries

DEMOS = ("night-watch", "winter-kit", "four-seats")


@pytest.mark.parametrize("name", DEMOS)
def test_a_sheet_reads_as_it_does_in_one_piece(name: str) -> None:
    data = tomllib.loads(demo(name).text)
    whole, faults = read_record(BuildSheet, data, SHEET)
    assert not faults
    assert whole is not None
    assert read_sheet(demo(name).text) == whole
    assert read_sheet(demo(name).text).model_dump_json() == whole.model_dump_json()


def test_only_the_entry_that_was_changed_is_read_anew() -> None:
    text = demo("night-watch").text
    before = read_sheet(text)
    name = before.fittings[3].name
    after = read_sheet(text.replace(f'name = "{name}"\n', f'name = "{name}"\nnote = "here"\n', 1))
    assert after.fittings[3].note == "here"
    assert before.fittings[3].note == ""
    others = zip(before.fittings, after.fittings, strict=True)
    assert [one is other for one, other in others].count(False) == 1
    assert after.brief is before.brief


@pytest.mark.parametrize(
    ("one", "other"), [(True, 1), (1, 1.0), ("1", 1)], ids=["truth", "number", "text"]
)
def test_what_is_only_nearly_the_same_is_another_entry(one: Any, other: Any) -> None:
    entry = {"name": "galley", "part": "galley-900", "at": ["0 mm", "0 mm", "0 mm"]}
    found = [
        with_known_entries({"fittings": [entry | {"mirror": mirror}]})["fittings"][0]
        for mirror in (one, other)
    ]
    alone = [
        read_record(Fitting, each, "")[0]
        for each in (entry | {"mirror": one}, entry | {"mirror": other})
    ]
    for made, wanted in zip(found, alone, strict=True):
        assert made == wanted if wanted is not None else isinstance(made, dict)


def test_faults_are_told_as_in_one_piece() -> None:
    text = demo("night-watch").text.replace("mm", "parsecs", 3)
    _, faults = read_record(BuildSheet, tomllib.loads(text), SHEET)
    with pytest.raises(BuildFileError) as told:
        read_sheet(text)
    assert faults
    assert told.value.faults == faults
