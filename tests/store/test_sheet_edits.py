"""Edits of a sheet's text: exactly what was asked for, and everything else as it was."""

import datetime
import difflib
import tomllib

import pytest

from coachwright.errors import BuildFileError, CannotEdit
from coachwright.store.blocks import blocks, comments
from coachwright.store.differences import differences
from coachwright.store.edits import Edit, Put, Take, edited
from coachwright.store.records import Role
from tests.store.sheets import SHEET
from tests.support.source import ROOT

FILES = sorted(
    [*(ROOT / "demos").glob("*.toml"), *(ROOT / "src/coachwright/catalogue").rglob("*.toml")]
)


class _Word(str):
    """Text of a type of its own, as some libraries hand out."""

    __slots__ = ()


def _lines(edits: list[Edit], text: str = SHEET) -> list[str]:
    """Return the lines that edits take out and put in."""
    after = edited(text, edits)
    found = difflib.unified_diff(text.splitlines(), after.splitlines(), lineterm="", n=0)
    return [line for line in list(found)[2:] if not line.startswith("@@")]


@pytest.mark.parametrize(
    ("edit", "lines"),
    [
        (Put(path=("name",), value="Lake"), ['-name = "Two berths"', '+name = "Lake"']),
        (
            Put(path=("customer",), value='a "b" \\ ü'),
            [
                '-customer = "A. Customer"   # by telephone',
                '+customer = "a \\"b\\" \\\\ ü"   # by telephone',
            ],
        ),
        (
            Put(path=("brief", "stay", "parked"), value="4 d"),
            ['-parked = "3 d"  # at the lake', '+parked = "4 d"  # at the lake'],
        ),
        (
            Put(path=("fittings", "fridge", "part"), value="fridge-90l"),
            [
                '-part = "fridge-50l"   # the small one',
                '+part = "fridge-90l"   # the small one',
            ],
        ),
        (Put(path=("fittings", "fridge", "mirror"), value=True), ["+mirror = true"]),
        (Put(path=("options",), value=["a"]), ['+options = ["a"]']),
        (Take(path=("fittings", "fridge", "within")), ['-within = "galley"']),
        (Put(path=("finishes", 1, "area"), value="8 m2"), ['-area = "7 m2"', '+area = "8 m2"']),
        (
            Put(path=("finishes", "floor-vinyl-2/floor", "area"), value="8 m2"),
            ['-area = "7 m2"', '+area = "8 m2"'],
        ),
        (
            Put(path=("brief", "comfort", "quiet"), value=datetime.date(2027, 4, 15)),
            ["+", "+[brief.comfort]", "+quiet = 2027-04-15"],
        ),
        (
            Put(path=("brief", "travellers", "child"), value={"name": "child", "mass": "20 kg"}),
            ["+", "+[[brief.travellers]]", '+name = "child"', '+mass = "20 kg"'],
        ),
        (
            Put(path=("changes", "moved", "bed"), value={"fitting": "bed", "at": ["1 m"] * 3}),
            ["+", "+[[changes.moved]]", '+fitting = "bed"', '+at = ["1 m", "1 m", "1 m"]'],
        ),
        (
            Put(path=("fittings", "bed", "use"), value=[{"mode": "on", "summer_use": "1 h/day"}]),
            ["+[[fittings.use]]", '+mode = "on"', '+summer_use = "1 h/day"', "+"],
        ),
        (
            Take(path=("fittings", "galley")),
            [
                "-# Measured twice.",
                "-[[fittings]]",
                '-name = "galley"',
                '-part = "galley-900"',
                '-at = ["1200 mm", "against left wall", "against floor"]',
                "-",
            ],
        ),
    ],
)
def test_an_edit_touches_only_its_own_lines(edit: Edit, lines: list[str]) -> None:
    assert _lines([edit]) == lines


def test_a_new_entry_goes_after_the_one_that_was_named() -> None:
    fan = {"name": "fan", "part": "fan-berth"}
    for follows, order in (
        ("", ["fan", "galley", "fridge", "bed"]),
        ("galley", ["galley", "fan", "fridge", "bed"]),
        (None, ["galley", "fridge", "bed", "fan"]),
        ("gone", ["galley", "fridge", "bed", "fan"]),
    ):
        after = edited(SHEET, [Put(path=("fittings", "fan"), value=fan, follows=follows)])
        assert [each["name"] for each in tomllib.loads(after)["fittings"]] == order
        assert comments(after) == comments(SHEET)


def test_a_whole_table_is_changed_where_it_differs() -> None:
    galley = tomllib.loads(SHEET)["fittings"][0]
    whole = Put(path=("fittings", "galley"), value={**galley, "part": "galley-1200"})
    assert _lines([whole]) == ['-part = "galley-900"', '+part = "galley-1200"']


def test_a_whole_list_is_changed_where_it_differs() -> None:
    fittings = tomllib.loads(SHEET)["fittings"]
    after = edited(SHEET, [Put(path=("fittings",), value=fittings[:2])])
    assert tomllib.loads(after)["fittings"] == fittings[:2]
    assert "# Measured twice." in after


def test_a_list_in_another_order_is_written_anew() -> None:
    fittings = tomllib.loads(SHEET)["fittings"][::-1]
    after = edited(SHEET, [Put(path=("fittings",), value=fittings)])
    assert tomllib.loads(after) == {**tomllib.loads(SHEET), "fittings": fittings}


@pytest.mark.parametrize("edit", [Take(path=("fittings",)), Put(path=("fittings",), value=[])])
def test_a_list_can_be_emptied_and_begun_again(edit: Edit) -> None:
    fan = Put(path=("fittings", "fan"), value={"name": "fan", "part": "fan-berth"})
    after = tomllib.loads(edited(SHEET, [edit, fan]))
    assert after["fittings"] == [{"name": "fan", "part": "fan-berth"}]


@pytest.mark.parametrize(
    "text",
    [
        "fittings = []\n[brief]\nreserve = 1\n",
        "# nothing yet\n[brief]\nreserve = 1\n",
        "[brief]\nreserve = 1",
        "brief = {reserve = 1}\nfittings = [{name = 'bed'}]\n",
        "brief.reserve = 1\n",
        "",
    ],
)
def test_other_forms_take_an_entry_and_a_value_too(text: str) -> None:
    fan = {"name": "fan", "part": "fan-berth"}
    edits = [Put(path=("fittings", "fan"), value=fan), Put(path=("brief", "stay", "a"), value=2)]
    before, after = tomllib.loads(text), tomllib.loads(edited(text, edits))
    assert after["fittings"] == [*before.get("fittings", []), fan]
    assert after["brief"] == {**before.get("brief", {}), "stay": {"a": 2}}


def test_lines_may_end_as_on_another_system() -> None:
    text = SHEET.replace("\n", "\r\n")
    after = edited(text, [Put(path=("brief", "stay", "parked"), value="4 d")])
    assert after == text.replace('"3 d"', '"4 d"')
    gone = edited(text, [Take(path=("fittings", "galley"))])
    assert "\r\n\r\n\r\n" not in gone


@pytest.mark.parametrize(
    ("edit", "place"),
    [
        (Take(path=("fittings", "oven")), r"fittings\.oven"),
        (Take(path=("story",)), "story"),
        (Put(path=("name", "first"), value="x"), r"name\.first"),
        (Put(path=("fittings", "oven", "at"), value=["1 m"]), r"fittings\.oven\.at"),
        (Put(path=("finishes", 7, "area"), value="1 m2"), r"finishes\[7\]\.area"),
        (Put(path=("fittings", "oven"), value={"name": "stove"}), r"fittings\.oven"),
        (Put(path=(), value={}), "the whole file"),
    ],
)
def test_an_edit_without_a_place_is_refused(edit: Edit, place: str) -> None:
    with pytest.raises(CannotEdit, match=f"no place for {place} in the sheet"):
        edited(SHEET, [edit])


def test_a_value_that_no_file_can_hold_is_refused() -> None:
    with pytest.raises(CannotEdit, match="name: the sheet's form does not take this change"):
        edited(SHEET, [Put(path=("name",), value=object())])


def test_a_sign_that_no_file_can_hold_is_refused() -> None:
    with pytest.raises(CannotEdit, match="name: the sheet's form does not take this change"):
        edited(SHEET, [Put(path=("name",), value="\ud800")])
    with pytest.raises(BuildFileError, match="half a sign"):
        edited(SHEET + "# \udfff", [])


def test_a_text_that_is_no_toml_is_refused() -> None:
    with pytest.raises(BuildFileError, match="line 1"):
        edited("name = ", [])


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_the_blocks_of_every_shipped_file_hold_what_the_reader_of_toml_finds(path: object) -> None:
    """`tomllib` of the standard library reads each block alone and the file as a whole."""
    text = str(path.read_text(encoding="utf-8"))  # type: ignore[attr-defined]
    whole = tomllib.loads(text)
    for block in blocks(text):
        alone = tomllib.loads(text[block.head : block.stop])
        for key in block.keys:
            alone = alone[key]
            alone = alone[0] if isinstance(alone, list) else alone
        there = whole
        for step in block.path:
            there = there[step]  # type: ignore[index]
        for key, value in alone.items():
            assert there[key] == value


def test_strings_and_brackets_do_not_lead_the_search_for_blocks_astray() -> None:
    text = (
        'a = "[x]" # [y]\n'
        'b = """\n[z]\n\\"""\n"""\n'
        "c = '''\n[[w]]'''\n"
        "d = [\n  '[', # ]\n  ']',\n]\n"
        '["e.f"]\n'
        'g = {h = "}"}\n'
        "[[i.'j']]\n[i.j.k]\n[[i.j]]\n[[i.j.l]]\n"
    )
    tomllib.loads(text)
    assert [each.path for each in blocks(text)] == [
        (),
        ("e.f",),
        ("i", "j", 0),
        ("i", "j", 0, "k"),
        ("i", "j", 1),
        ("i", "j", 1, "l", 0),
    ]


@pytest.mark.parametrize(
    ("before", "after", "count"),
    [
        ({"a": 1}, {"a": 1.0}, 1),
        ({"a": True}, {"a": 1}, 1),
        ({"a": [1]}, {"a": [1.0]}, 1),
        ({"a": [[1], [2]]}, {"a": [[1], [True]]}, 1),
        ({}, {"a": []}, 0),
        ({"a": [{"b": 1}]}, {"a": [{"b": 2}]}, 1),
        ({"a": [{"b": 1}]}, {"a": [{"b": 1}, {"b": 1}]}, 1),
        ({"a": {"b": 1}}, {"a": 1}, 1),
        ({"a": "1"}, {"a": "1"}, 0),
    ],
)
def test_values_differ_as_a_file_would(
    before: dict[str, object], after: dict[str, object], count: int
) -> None:
    assert len(differences(before, after)) == count


def test_values_of_other_types_are_written_as_what_they_stand_for() -> None:
    """`tomllib` of the standard library reads them back."""
    value = {"units": Role.OWNER, "sizes": ("1 m", "2 m"), "name": _Word("lake")}
    after = edited(SHEET, [Put(path=("brief", "comfort"), value=value)])
    assert tomllib.loads(after)["brief"]["comfort"] == {
        "units": "owner",
        "sizes": ["1 m", "2 m"],
        "name": "lake",
    }
