"""A bad build file: what stands where, what is allowed, all at once, and never a traceback.

Each case spoils one thing in ``good_build.toml``; the whole line of its fault is checked.
"""

import json
from pathlib import Path
from typing import NamedTuple

import pytest

from coachwright.actions.writing import record_text
from tests.shells.running import Ran, Runner
from tests.support.builds import sheet

GOOD = (Path(__file__).parent / "good_build.toml").read_text(encoding="utf-8")
BRIEF = """
[brief]
jurisdiction = "eu"
travellers = [{ name = "ida", mass = "70 kg", stature = "1700 mm" }]
climate = { cold_night = "0 degC", hot_day = "30 degC" }
stay = { parked = "2 d" }
habits = { water = "10 L/day" }
"""
STANDARD = f"""
format = 1
name = "Weekender"
vehicle = "eu-l3h2-3500"
own_parts = [
  {{ id = "box", name = "Box", body = {{ size = ["1 m", "1 m", "1 m"], mass = "9 kg" }} }},
]
fittings = [{{ name = "trunk", part = "box", at = ["2 m", "0 mm", "0 mm"] }}]
offers = [{{ name = "no-trunk", title = "Without trunk", changes = {{ removed = ["trunk"] }} }}]
{BRIEF}"""
ON_STANDARD = f"""
format = 1
name = "On a standard"
standard = "weekender"
options = ["no-trunk"]
{BRIEF}"""


class Bad(NamedTuple):
    """One fault: what is put in place of what, and what must be said about it."""

    name: str
    old: str
    new: str
    field: str
    found: str
    allowed: str
    action: str = ""
    base: str = GOOD


CASES = (
    Bad(
        "bare number",
        'mass = "70 kg"',
        "mass = 70",
        "brief.travellers[0].mass (ida)",
        "the bare number 70",
        "kg, g, t, lb, oz",
        '"24 kg"',
    ),
    Bad(
        "unknown unit",
        '"70 kg"',
        '"70 stone"',
        "brief.travellers[0].mass (ida)",
        '"70 stone"',
        "kg, g, t, lb, oz",
        "the unit 'stone' is not known",
    ),
    Bad(
        "wrong dimension",
        '"70 kg"',
        '"70 cm"',
        "brief.travellers[0].mass (ida)",
        '"70 cm"',
        "kg, g, t, lb, oz",
        "cm is a unit of length",
    ),
    Bad(
        "unit missing",
        '"70 kg"',
        '"70"',
        "brief.travellers[0].mass (ida)",
        '"70"',
        "kg, g, t, lb, oz",
        "the unit is missing",
    ),
    Bad(
        "compound in the wrong order",
        '"5 ft 7 in"',
        '"7 in 5 ft"',
        "brief.travellers[0].stature (ida)",
        '"7 in 5 ft"',
        "mm, cm, m, in, ft",
        "from large to small",
    ),
    Bad(
        "decimal comma",
        '"2.4 m"',
        '"2,4 m"',
        "water_runs[0].length (to-galley)",
        '"2,4 m"',
        "mm, cm, m, in, ft",
        "use a point",
    ),
    Bad(
        "negative mass",
        '"82 kg"',
        '"-82 kg"',
        "brief.travellers[1].mass (per)",
        '"-82 kg"',
        "more than 0 kg",
    ),
    Bad(
        "negative load left out of the catalogue",
        'mass = "38 kg"',
        'mass = "-1 kg"',
        "own_parts[0].body.mass (Galley)",
        '"-1 kg"',
        "at least 0 kg",
    ),
    Bad(
        "share over the whole",
        'hookup = "10 %"',
        'hookup = "110 %"',
        "brief.stay.hookup",
        '"110 %"',
        "at most 100 %",
    ),
    Bad(
        "more hours than a day has",
        'drive = "2 h/day"',
        'drive = "25 h/day"',
        "brief.stay.drive",
        '"25 h/day"',
        "at most 24 h/day",
    ),
    Bad(
        "absurd temperature",
        '"-8 degC"',
        '"-300 degC"',
        "brief.climate.cold_night",
        '"-300 degC"',
        "at least -90 degC",
    ),
    Bad(
        "unknown field",
        "berth_wanted = true",
        "birth_wanted = true",
        "brief.travellers[1].birth_wanted (per)",
        "the unknown field 'birth_wanted'",
        "name, mass, stature",
        "did you mean 'berth_wanted'?",
    ),
    Bad(
        "unknown table",
        "[ticket]",
        "[tickets]",
        "tickets",
        "the unknown field 'tickets'",
        "format, name",
        "did you mean 'ticket'?",
    ),
    Bad(
        "required field missing",
        'stature = "1810 mm"\n',
        "",
        "brief.travellers[1].stature (per)",
        "nothing",
        "this field is required",
        "add it",
    ),
    Bad(
        "required table missing",
        '[brief.habits]\nwater = "12 L/day"\n',
        "",
        "brief.habits",
        "nothing",
        "this field is required",
        "add it",
    ),
    Bad(
        "word that is no choice",
        'surface = "walls"',
        'surface = "roof"',
        "finishes[0].surface",
        '"roof"',
        "one of 'walls', 'ceiling', 'floor' or 'doors'",
    ),
    Bad(
        "jurisdiction that is not known",
        'jurisdiction = "eu"',
        'jurisdiction = "ca"',
        "brief.jurisdiction",
        '"ca"',
        "one of 'us', 'eu' or 'uk'",
    ),
    Bad(
        "mounting that is not known",
        'turn = "0 deg"',
        'mounting = "rear door"',
        "fittings[0].mounting (galley)",
        '"rear door"',
        "'rear door left'",
    ),
    Bad(
        "date as words",
        "wanted = 2027-04-15",
        'wanted = "next spring"',
        "brief.wanted",
        '"next spring"',
        "a date",
        "2027-04-15",
    ),
    Bad(
        "date with a time",
        "wanted = 2027-04-15",
        "wanted = 2027-04-15T08:30:00",
        "brief.wanted",
        "2027-04-15 08:30:00",
        "a date without a time",
    ),
    Bad(
        "turn that is no quarter",
        'turn = "0 deg"',
        'turn = "45 deg"',
        "fittings[0].turn (galley)",
        "45 deg",
        "0 deg, 90 deg, 180 deg or 270 deg",
    ),
    Bad(
        "position with two values",
        'at = ["3300 mm", "300 mm", "0 mm"]',
        'at = ["3300 mm", "300 mm"]',
        "fittings[2].at[2] (battery)",
        "nothing",
        "this field is required",
    ),
    Bad(
        "position in words that do not exist",
        '"against left wall"',
        '"near the left wall"',
        "fittings[0].at[1] (galley)",
        '"near the left wall"',
        "a length, or a word such as behind",
    ),
    Bad(
        "position on the wrong axis",
        '"against left wall"',
        '"behind battery"',
        "fittings[0].at[1] (galley)",
        '"behind battery"',
        "on the y axis one of: right of",
    ),
    Bad(
        "position against what is not there",
        '"centred on galley"',
        '"centred on gally"',
        "fittings[1].at[1] (fridge)",
        '"centred on gally"',
        "the name of another fitting",
        "did you mean 'galley'?",
    ),
    Bad(
        "unknown part",
        'part = "house-battery"',
        'part = "house-batery"',
        "fittings[2].part (battery)",
        '"house-batery"',
        "the id of a part in the catalogue",
        "did you mean 'house-battery'?",
    ),
    Bad(
        "fitting's name twice",
        'name = "battery"\npart',
        'name = "galley"\npart',
        "fittings.name",
        '"galley" 2 times',
        "each name once",
    ),
    Bad(
        "name spelt badly",
        'name = "battery"\npart',
        'name = "House battery"\npart',
        "fittings[2].name (House battery)",
        '"House battery"',
        "lower-case words and numbers",
    ),
    Bad(
        "name empty",
        'name = "Spoilt on purpose"',
        'name = ""',
        "name",
        '""',
        "text that is not empty",
    ),
    Bad(
        "unknown seat",
        'seat = "passenger"',
        'seat = "bench.left"',
        "brief.travellers[1].seat (per)",
        '"bench.left"',
        "driver, passenger",
    ),
    Bad(
        "seat taken twice",
        'seat = "passenger"',
        'seat = "driver"',
        "brief.travellers[1].seat (per)",
        "where ida sits already",
        "each seat for one traveller",
    ),
    Bad(
        "carried by what is not there",
        'on = "galley"',
        'on = "roof-rack"',
        "fittings[1].on (fridge)",
        '"roof-rack"',
        "the name of another fitting",
    ),
    Bad(
        "carried in a ring",
        'turn = "0 deg"',
        'on = "fridge"',
        "fittings[0].on (galley)",
        "which stands on galley itself",
        "fittings that do not carry each other in a ring",
    ),
    Bad(
        "mode that the part has not",
        'mode = "cooling"',
        'mode = "boost"',
        "fittings[1].use[0].mode (fridge)",
        '"boost"',
        "a mode of the part small-fridge: cooling",
    ),
    Bad(
        "wish for a facet that there is not",
        'must_have = ["battery"]',
        'must_have = ["sauna"]',
        "brief.must_have[0]",
        '"sauna"',
        "a facet: body, ",
    ),
    Bad(
        "pipe to nowhere",
        'serves = "galley"',
        'serves = "sink"',
        "water_runs[0].serves (to-galley)",
        '"sink"',
        "the name of a fitting",
    ),
    Bad(
        "stranger on the weighbridge",
        'aboard = ["ida"]',
        'aboard = ["uwe"]',
        "ticket.aboard[0]",
        '"uwe"',
        "the name of a traveller: ida, per",
    ),
    Bad(
        "ticket that does not add up",
        'total = "2400 kg"',
        'total = "2300 kg"',
        "ticket.total",
        "2300 kg, where the axles add up to 2400 kg",
        "within 30 kg",
    ),
    Bad(
        "finish of no sheet material",
        'part = "felt"\nsurface',
        'part = "oak-galley"\nsurface',
        "finishes[0].part (walls)",
        '"oak-galley", which has no insulation or lining facet',
        "a part with the facet insulation or lining",
    ),
    Bad(
        "tyre size as nobody prints it",
        '"225/75R16C"',
        '"225-75-16"',
        "own_parts[4].tyre.size (Tyre)",
        '"225-75-16"',
        "width in mm / aspect in % R rim",
        '"225/75R16C"',
    ),
    Bad(
        "load index out of the table",
        "load_index_single = 118",
        "load_index_single = 218",
        "own_parts[4].tyre.load_index_single (Tyre)",
        "218",
        "at most 130",
    ),
    Bad(
        "money without currency",
        '"18000.00 EUR"',
        '"18000.00"',
        "brief.budget",
        '"18000.00"',
        "one of: EUR, GBP, USD",
        '"1250.00 EUR"',
    ),
    Bad(
        "money of another country",
        '"18000.00 EUR"',
        '"18000.00 XYZ"',
        "brief.budget",
        '"18000.00 XYZ"',
        "one of: EUR, GBP, USD",
    ),
    Bad(
        "truth where text belongs",
        'name = "Spoilt on purpose"',
        "name = true",
        "name",
        "the truth value true",
        "text in quotes",
    ),
    Bad(
        "text where truth belongs",
        "berth_wanted = true",
        'berth_wanted = "perhaps"',
        "brief.travellers[1].berth_wanted (per)",
        '"perhaps"',
        "true or false",
    ),
    Bad(
        "list where a table belongs",
        '[brief.stay]\nparked = "3 d"\ndrive = "2 h/day"\nhookup = "10 %"',
        '[[brief.stay]]\nparked = "3 d"',
        "brief.stay",
        "a list of 1",
        "a table",
    ),
    Bad(
        "text where a list belongs",
        'must_have = ["battery"]',
        'must_have = "battery"',
        "brief.must_have",
        '"battery"',
        "a list",
    ),
    Bad(
        "list where a quantity belongs",
        'water = "12 L/day"',
        'water = ["12 L/day"]',
        "brief.habits.water",
        "a list",
        "L/day, US gal/day",
    ),
    Bad(
        "nobody travels",
        '[{ name = "ida", mass = "70 kg", stature = "1700 mm" }]',
        "[]",
        "brief.travellers",
        "an empty list",
        "a list of at least 1",
        base=ON_STANDARD,
    ),
    Bad(
        "format of the future",
        "format = 1",
        "format = 2",
        "format",
        "2",
        "one of 1",
    ),
    Bad(
        "format missing",
        "format = 1\n",
        "",
        "format",
        "nothing",
        "this field is required",
    ),
    Bad(
        "unknown vehicle",
        'vehicle = "eu-l3h2-3500"',
        'vehicle = "eu-l3h2"',
        "vehicle",
        '"eu-l3h2"',
        "a base vehicle: ",
        "eu-l3h2-3500",
    ),
    Bad(
        "no vehicle",
        'vehicle = "eu-l3h2-3500"\n',
        "",
        "vehicle",
        "nothing",
        "the id of a base vehicle",
        "coachwright vehicles list",
    ),
    Bad(
        "unknown standard",
        'standard = "weekender"',
        'standard = "weekend"',
        "standard",
        '"weekend"',
        "weekender",
        base=ON_STANDARD,
    ),
    Bad(
        "unknown option",
        '["no-trunk"]',
        '["no-trunks"]',
        "options[0]",
        '"no-trunks"',
        "an option of the standard build: no-trunk",
        "did you mean 'no-trunk'?",
        base=ON_STANDARD,
    ),
    Bad(
        "option twice",
        '["no-trunk"]',
        '["no-trunk", "no-trunk"]',
        "options[1]",
        '"no-trunk" a second time',
        "each option once",
        base=ON_STANDARD,
    ),
    Bad(
        "fittings beside a standard",
        'options = ["no-trunk"]',
        'fittings = [{ name = "a", part = "lfp-12v-100ah", at = ["2 m", "0 mm", "0 mm"] }]',
        "fittings",
        "1 fittings beside standard",
        "only what differs from the standard build",
        base=ON_STANDARD,
    ),
    Bad(
        "changed fitting that is not there",
        'options = ["no-trunk"]',
        'changes = { removed = ["trunck"] }',
        "changes",
        '"trunck"',
        "a fitting of the standard build",
        "did you mean 'trunk'?",
        base=ON_STANDARD,
    ),
    Bad(
        "added under a name that is taken",
        'options = ["no-trunk"]',
        'changes = { added = [{ name = "trunk", part = "box", at = ["1 m", "0 m", "0 m"] }] }',
        "changes.added",
        'the fitting "trunk", which is there already',
        "a name that no fitting has",
        "changes.exchanged",
        base=ON_STANDARD,
    ),
    Bad(
        "speed symbol that there is not",
        'speed_symbol = "R"',
        'speed_symbol = "I"',
        "own_parts[4].tyre.speed_symbol (Tyre)",
        '"I"',
        "a speed symbol: J, K, L",
    ),
    Bad(
        "quote left open",
        'name = "Spoilt on purpose"',
        'name = "Spoilt on purpose',
        "line 3",
        "illegal character",
        "TOML, such as:",
        "correct the line",
    ),
    Bad(
        "key twice",
        "wanted = 2027-04-15",
        "wanted = 2027-04-15\nwanted = 2027-04-16",
        "line 10",
        "cannot overwrite a value",
        "TOML, such as:",
    ),
    Bad(
        "empty file",
        GOOD,
        "# nothing\n",
        "format",
        "nothing",
        "this field is required",
    ),
)


def _check(run: Runner, tmp_path: Path, content: bytes) -> tuple[Path, Ran]:
    shop = tmp_path / "shop" / "standards"
    shop.mkdir(parents=True)
    (shop / "weekender.toml").write_text(STANDARD, encoding="utf-8")
    file = tmp_path / "spoilt.toml"
    file.write_bytes(content)
    return file, run("--shop", shop.parent, "check", file)


def test_the_good_builds_have_no_faults(run: Runner, tmp_path: Path) -> None:
    _, good = _check(run, tmp_path, GOOD.encode())
    assert (good.code, good.err) in ((0, ""), (1, ""))
    file = tmp_path / "standard.toml"
    file.write_text(ON_STANDARD, encoding="utf-8")
    assert run("--shop", tmp_path / "shop", "check", file).err == ""


def test_there_are_at_least_forty_cases() -> None:
    assert len({case.name for case in CASES}) == len(CASES) >= 40


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name.replace(" ", "-"))
def test_a_fault_says_where_and_what(case: Bad, run: Runner, tmp_path: Path) -> None:
    assert case.base.count(case.old) == 1, "the case must spoil exactly one thing"
    file, ran = _check(run, tmp_path, case.base.replace(case.old, case.new).encode())
    assert ran.code == 2
    assert ran.out == ""
    assert "Traceback" not in ran.err
    lines = [line for line in ran.err.splitlines() if line.startswith(f"{file}: {case.field}: ")]
    assert lines, ran.err
    assert any(_says(line, case) for line in lines), lines


def _says(line: str, case: Bad) -> bool:
    found, _, rest = line.partition("; allowed: ")
    return case.found in found and case.allowed in rest and case.action in rest


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name.replace(" ", "-"))
def test_one_fault_brings_no_others(case: Bad, run: Runner, tmp_path: Path) -> None:
    _, ran = _check(run, tmp_path, case.base.replace(case.old, case.new).encode())
    lines = [line for line in ran.err.splitlines() if "; allowed: " in line]
    assert len(lines) == _FAULTS.get(case.name, 1), ran.err


_FAULTS = {
    "carried in a ring": 2,  # each of the two is told so
    "empty file": 3,  # nothing of what is required stands there
}
"""Cases that are more than one fault, with how many."""


def test_every_fault_of_a_file_is_said_at_once(run: Runner, tmp_path: Path) -> None:
    spoilt = GOOD
    apart = [case for case in CASES if case.name in _TOGETHER]
    assert len(apart) == len(_TOGETHER)
    for case in apart:
        spoilt = spoilt.replace(case.old, case.new)
    file, ran = _check(run, tmp_path, spoilt.encode())
    assert ran.code == 2
    for case in apart:
        start = f"{file}: {case.field}: "
        lines = [line for line in ran.err.splitlines() if line.startswith(start)]
        assert any(_says(line, case) for line in lines), (case.name, ran.err)
    assert ran.err.splitlines()[-1] == f"{len(apart)} faults"


_TOGETHER = frozenset(
    {
        "bare number",
        "share over the whole",
        "absurd temperature",
        "unknown field",
        "word that is no choice",
        "date as words",
        "turn that is no quarter",
        "unknown part",
        "unknown seat",
        "wish for a facet that there is not",
        "pipe to nowhere",
        "stranger on the weighbridge",
        "money of another country",
    }
)
"""Faults of the record, and faults of what it names, in one file."""


class Unreadable(NamedTuple):
    """A file that is not even text: how it comes about, and what must be said."""

    name: str
    content: bytes | None
    found: str
    allowed: str


@pytest.mark.parametrize(
    "case",
    [
        Unreadable("missing", None, "no such file", "a file"),
        Unreadable("not UTF-8", 'name = "K\u00fchn"'.encode("latin-1"), "not UTF-8", "UTF-8"),
        Unreadable("binary", bytes(range(256)), "not UTF-8", "UTF-8"),
    ],
    ids=lambda case: case.name,
)
def test_an_unreadable_file_is_named(case: Unreadable, run: Runner, tmp_path: Path) -> None:
    file = tmp_path / "build.toml"
    if case.content is not None:
        file.write_bytes(case.content)
    ran = run("check", file)
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith(f"{file}: the whole file: found ")
    assert case.found in ran.err
    assert case.allowed in ran.err
    assert "Traceback" not in ran.err


def test_a_folder_is_no_build(run: Runner, tmp_path: Path) -> None:
    ran = run("check", tmp_path)
    assert ran.code == 2
    assert ran.err.startswith(f"{tmp_path}: the whole file: found a folder; allowed: a file")


def test_a_shop_part_with_a_fault_is_named_with_its_own_file(run: Runner, tmp_path: Path) -> None:
    part = tmp_path / "shop" / "parts" / "house-battery.toml"
    part.parent.mkdir(parents=True)
    part.write_text('id = "house-battery"\nname = "B"\nbody = { mass = 12 }\n', encoding="utf-8")
    own = GOOD[GOOD.index('[[own_parts]]\nid = "house-battery"') :]
    own = own[: own.index('[[own_parts]]\nid = "felt"')]
    _, ran = _check(run, tmp_path, GOOD.replace(own, "").encode())
    assert ran.code == 2
    assert f"{part}: body.mass: found the bare number 12; allowed: " in ran.err
    assert f"{part}: body.size: found nothing; allowed: this field is required" in ran.err


def test_a_base_vehicle_beside_another_is_a_fault(run: Runner, tmp_path: Path) -> None:
    file = tmp_path / "both.toml"
    file.write_text(record_text(sheet({"vehicle": "eu-l3h2-3500"})), encoding="utf-8")
    ran = run("check", file)
    assert ran.code == 2
    assert ran.err == (
        f'{file}: vehicle: found "eu-l3h2-3500" and a table own_vehicle; '
        "allowed: one of the two; take one out\n"
    )


def test_faults_come_as_json_where_json_was_asked_for(run: Runner, tmp_path: Path) -> None:
    file = tmp_path / "spoilt.toml"
    file.write_text(GOOD.replace('"70 kg"', "70"), encoding="utf-8")
    ran = run("check", file, "--json")
    assert ran.code == 2
    (fault,) = json.loads(ran.out)["faults"]
    assert fault["file"] == str(file)
    assert fault["field"] == "brief.travellers[0].mass (ida)"
    assert fault["found"] == "the bare number 70"
    assert set(fault) == {"file", "field", "found", "allowed", "action"}


def test_a_long_line_is_not_wrapped(run: Runner, tmp_path: Path) -> None:
    file = tmp_path / ("deep-" * 30) / "spoilt.toml"
    file.parent.mkdir()
    file.write_text(GOOD.replace('"70 kg"', "70"), encoding="utf-8")
    ran = run("check", file)
    assert len(ran.err.splitlines()) == 1
    assert ran.err.startswith(f"{file}: brief.travellers[0].mass (ida): ")
