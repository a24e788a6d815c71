"""``coachwright compare``: what was exchanged, and what came of it."""

import json
from pathlib import Path

import pytest

from coachwright.actions.writing import record_text
from tests.shells.running import Runner
from tests.support.builds import Data, fitting, part, sheet

PARTS = [
    part("box", body={"size": ["500 mm", "500 mm", "500 mm"], "mass": "20 kg"}),
    part("safe", body={"size": ["500 mm", "500 mm", "500 mm"], "mass": "1600 kg"}),
    part(
        "stool",
        body={"size": ["300 mm", "300 mm", "400 mm"], "mass": "4 kg"},
        price={"price": ["40.00 EUR"]},
    ),
]
BEFORE: Data = {
    "own_parts": PARTS,
    "fittings": [
        fitting("trunk", "box"),
        fitting("stays", "box", at=["3000 mm", "0 mm", "0 mm"]),
        fitting("goes", "box", at=["3600 mm", "0 mm", "0 mm"]),
        fitting("wanders", "box", at=["4200 mm", "0 mm", "0 mm"]),
        fitting("filled", "box", at=["1300 mm", "0 mm", "0 mm"]),
    ],
}
AFTER: Data = {
    "name": "Later",
    "own_parts": PARTS,
    "fittings": [
        fitting("trunk", "safe"),
        fitting("stays", "box", at=["3000.1 mm", "0 mm", "0 mm"]),
        fitting("wanders", "box", at=["4200 mm", "200 mm", "0 mm"], turn="90 deg"),
        fitting("filled", "box", at=["1300 mm", "0 mm", "0 mm"], contents="5 kg"),
        fitting("comes", "stool", at=["2600 mm", "400 mm", "0 mm"]),
    ],
}


@pytest.fixture
def both(tmp_path: Path) -> tuple[Path, Path]:
    """Return the earlier and the later build."""
    paths = (tmp_path / "before.toml", tmp_path / "after.toml")
    for path, changes in zip(paths, (BEFORE, AFTER), strict=True):
        path.write_text(record_text(sheet(changes)), encoding="utf-8")
    return paths


def test_each_kind_of_change_is_told(run: Runner, both: tuple[Path, Path]) -> None:
    changes = json.loads(run("compare", *both, "--json").out)["fittings"]
    assert {(change["fitting"], change["change"]) for change in changes} == {
        ("trunk", "exchanged"),
        ("goes", "removed"),
        ("wanders", "moved"),
        ("filled", "altered"),
        ("comes", "added"),
    }
    (moved,) = (change for change in changes if change["change"] == "moved")
    assert moved["before"] == "at 4,200 mm, 0 mm, 0 mm"
    assert moved["after"] == "at 4,200 mm, 200 mm, 0 mm, turned 90 deg"


def test_the_mass_that_came_shows_on_the_scales(run: Runner, both: tuple[Path, Path]) -> None:
    figures = {
        figure["name"]: figure
        for figure in json.loads(run("compare", *both, "--json").out)["figures"]
    }
    # 20 kg became 1600 kg, 20 kg went, 5 kg and 4 kg came
    change = figures["weights.total-travelling"]["change"]
    assert change == {"value": pytest.approx(1569.0), "unit": "kg"}
    front = figures["weights.front-axle-travelling"]["change"]["value"]
    rear = figures["weights.rear-axle-travelling"]["change"]["value"]
    assert front + rear == pytest.approx(1569.0)


def test_what_became_broken_is_told(run: Runner, both: tuple[Path, Path]) -> None:
    found = json.loads(run("compare", *both, "--json").out)["findings"]
    assert any(
        (change["severity"], change["before"], change["after"]) == ("stop", "met", "broken")
        for change in found
    )
    out = run("compare", *both).out
    assert "From Test build, revision A (test-van)" in out
    assert "to Later, revision A (test-van)" in out
    assert "broken" in out


def test_the_way_back_is_the_opposite(run: Runner, both: tuple[Path, Path]) -> None:
    there = json.loads(run("compare", *both, "--json").out)
    back = json.loads(run("compare", *reversed(both), "--json").out)
    opposite = {"added": "removed", "removed": "added"}
    assert {(c["fitting"], opposite.get(c["change"], c["change"])) for c in there["fittings"]} == {
        (c["fitting"], c["change"]) for c in back["fittings"]
    }
    theirs = {f["name"]: f["change"]["value"] for f in back["figures"]}
    for figure in there["figures"]:
        value = figure["change"]["value"]
        assert theirs[figure["name"]] == (None if value is None else pytest.approx(-value))


def test_a_build_does_not_differ_from_itself(run: Runner, both: tuple[Path, Path]) -> None:
    found = json.loads(run("compare", both[0], both[0], "--json").out)
    assert (found["fittings"], found["figures"], found["findings"]) == ([], [], [])
    out = run("compare", both[0], both[0]).out
    assert "No fitting differs." in out
    assert "No finding became broken, unknown or mended." in out


def test_a_comparison_fits_eighty_columns(run: Runner, both: tuple[Path, Path]) -> None:
    for arguments in ((), ("--all",), ("--units", "us")):
        assert max(map(len, run("compare", *both, *arguments).out.splitlines())) <= 80


def test_prices_are_compared_where_all_are_known(run: Runner, tmp_path: Path) -> None:
    priced = part("stool", price={"price": ["40.00 EUR"]})
    paths = []
    for name, fittings in (("one", [fitting("a", "stool")]), ("none", [])):
        path = tmp_path / f"{name}.toml"
        changes: Data = {"own_parts": [priced], "fittings": fittings}
        path.write_text(record_text(sheet(changes)), encoding="utf-8")
        paths.append(path)
    price = json.loads(run("compare", *paths, "--json").out)["price"]
    assert price == {"before": "40.00 EUR", "after": "0.00 EUR", "change": "-40.00 EUR"}


def test_without_a_standard_a_second_build_is_needed(run: Runner, both: tuple[Path, Path]) -> None:
    ran = run("compare", both[0])
    assert ran.code == 2
    assert "names no standard build to compare with" in ran.err
