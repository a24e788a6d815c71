"""``coachwright check``: the verdict, its JSON, workings, exit codes."""

import json
import math
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from coachwright.actions.schemas import schema
from coachwright.actions.writing import record_text
from coachwright.assess import RULES
from coachwright.cli.showing import LONGEST_ID
from tests.shells.running import Runner
from tests.support.builds import Data, fitting, part, sheet

DISCIPLINES = ("layout", "weights", "road", "electrics", "water", "wishes", "living")
HEAVY: Data = {
    "own_parts": [part("safe", body={"size": ["600 mm", "600 mm", "600 mm"], "mass": "1500 kg"})],
    "fittings": [fitting("safe", "safe", at=["3900 mm", "0 mm", "0 mm"])],
}

WIDE: Data = {
    "own_parts": [
        part(
            "small-inverter",
            inverter={"continuous": "1000 W", "surge": "1200 W", "standby": "12 W"},
        ),
        part(
            "kiln",
            ac_load={
                "modes": [
                    {
                        "name": "firing",
                        "draw": "130000 W",
                        "summer_use": "4 h/day",
                        "winter_use": "4 h/day",
                    }
                ]
            },
        ),
    ],
    "fittings": [
        fitting("inverter", "small-inverter", at=["3900 mm", "0 mm", "0 mm"]),
        fitting("kiln", "kiln", at=["2900 mm", "0 mm", "0 mm"]),
    ],
}


@pytest.fixture
def light(tmp_path: Path) -> Path:
    """Return a build in which no stop is broken."""
    path = tmp_path / "light.toml"
    nobody = {f"brief.travellers.{place}.berth_wanted": False for place in (0, 1)}
    path.write_text(record_text(sheet(nobody)), encoding="utf-8")
    return path


@pytest.fixture
def heavy(tmp_path: Path) -> Path:
    """Return a build that is far too heavy."""
    path = tmp_path / "heavy.toml"
    path.write_text(record_text(sheet(HEAVY)), encoding="utf-8")
    return path


@pytest.fixture
def wide(tmp_path: Path) -> Path:
    """Return a build whose broken rules have wide figures beside long ids."""
    path = tmp_path / "wide.toml"
    path.write_text(record_text(sheet(WIDE)), encoding="utf-8")
    return path


def test_a_build_without_broken_stops_leaves_with_nothing(run: Runner, light: Path) -> None:
    ran = run("check", light)
    assert (ran.code, ran.err) == (0, "")
    assert "No stop is broken." in ran.out
    assert "Next: " in ran.out


def test_a_broken_stop_leaves_with_one(run: Runner, heavy: Path) -> None:
    ran = run("check", heavy)
    assert ran.code == 1
    assert "stops are broken." in ran.out
    assert "Broken stops: " in ran.out
    assert "→ " in ran.out
    assert ran.out.index("Broken stops") < ran.out.index("Broken cautions")


def test_nothing_is_said_to_be_safe_or_certified(run: Runner, light: Path) -> None:
    said = run("check", light, "--all").out.lower()
    assert "no certificate, approval or" in said
    assert "is safe" not in said
    assert "certified" not in said


def test_the_verdict_fits_eighty_columns(run: Runner, heavy: Path) -> None:
    for arguments in ((), ("--all",), ("--units", "us"), ("--working", "list")):
        lines = run("check", heavy, *arguments).out.splitlines()
        assert max(map(len, lines)) <= 80 or str(heavy) in "".join(lines)


def test_the_units_may_be_chosen(run: Runner, heavy: Path) -> None:
    assert " lb " in run("check", heavy, "--units", "us").out
    assert " kg " in run("check", heavy, "--units", "metric").out
    assert " lb " not in run("check", heavy).out


def test_all_shows_what_is_met_and_not_applicable(run: Runner, light: Path) -> None:
    short, long = run("check", light).out, run("check", light, "--all").out
    assert "(--all lists them)" in short
    assert "(--all lists them)" not in long
    assert len(long) > len(short)


def test_no_rule_id_is_longer_than_the_column_that_holds_it() -> None:
    assert max(len(rule.id) for rules in RULES.values() for rule in rules) <= LONGEST_ID


@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize("name", ["heavy", "light", "wide"])
def test_a_rule_id_is_never_broken(
    run: Runner, request: pytest.FixtureRequest, name: str, units: str
) -> None:
    path = request.getfixturevalue(name)
    findings = json.loads(run("check", path, "--json").out)["findings"]
    lines = {
        line[:80].strip() for line in run("check", path, "--all", "--units", units).out.split("\n")
    }
    shown = {line.split("  ")[0] for line in lines}
    assert {finding["rule"] for finding in findings} <= shown


def test_all_tells_of_a_rule_only_the_case_nearest_its_limit(run: Runner, light: Path) -> None:
    findings = json.loads(run("check", light, "--json").out)["findings"]
    rule = "weights.axle-rating-eu"
    met = [f for f in findings if f["rule"] == rule and f["outcome"] == "met"]
    nearest = min(met, key=lambda finding: finding["margin"])
    said = run("check", light, "--all").out
    assert len(met) > 1
    assert said.count(f" {rule} ") == 1
    before, after = said.split(f" {rule} ")
    assert nearest["subject"].split(",")[0] in " ".join(before.split("\n")[-3:])
    assert f"and {len(met) - 1} more, all met" in after.split("\n")[1]


def test_the_json_validates_against_the_exported_schema(
    run: Runner, light: Path, heavy: Path
) -> None:
    checker = jsonschema.Draft202012Validator(schema("assessment"))
    for path, code in ((light, 0), (heavy, 1)):
        ran = run("check", path, "--json")
        assert ran.code == code
        assert list(checker.iter_errors(json.loads(ran.out))) == []


def test_the_json_has_the_promised_keys(run: Runner, heavy: Path) -> None:
    data = json.loads(run("check", heavy, "--json").out)
    promised = ["format", "build", "verdict", "headline", "findings"]
    assert list(data) == [*promised, *DISCIPLINES]
    assert data["build"]["name"] == "Test build"
    assert data["verdict"]["stops"] == sum(
        (finding["severity"], finding["outcome"]) == ("stop", "broken")
        for finding in data["findings"]
    )


def test_every_number_of_the_json_is_finite(run: Runner, heavy: Path) -> None:
    def walk(value: Any) -> None:
        if isinstance(value, dict):
            for entry in value.values():
                walk(entry)
        elif isinstance(value, list):
            for entry in value:
                walk(entry)
        elif isinstance(value, float):
            assert math.isfinite(value)

    walk(json.loads(run("check", heavy, "--json").out))


def test_a_working_is_shown_with_what_was_put_in(run: Runner, light: Path) -> None:
    ran = run("check", light, "--working", "weights.rear-axle-travelling")
    assert ran.code == 0
    assert "wheelbase" in ran.out
    assert "\n= " in ran.out


def test_a_working_comes_as_json(run: Runner, light: Path) -> None:
    ran = run("check", light, "--working", "weights.cg-height", "--json")
    figure = json.loads(ran.out)
    assert figure["name"] == "weights.cg-height"
    assert figure["working"]["given"]


def test_every_figure_has_a_page_of_working(run: Runner, light: Path) -> None:
    data = json.loads(run("check", light, "--json").out)
    names = [
        figure["name"] for discipline in DISCIPLINES for figure in data[discipline]["figures"]
    ]
    listed = run("check", light, "--working", "list").out
    for name in names:
        assert name in listed
        assert run("check", light, "--working", name).code == 0


def test_an_unknown_figure_says_which_there_are(run: Runner, light: Path) -> None:
    ran = run("check", light, "--working", "weights.cg-hight")
    assert (ran.code, ran.out) == (2, "")
    assert "did you mean 'weights.cg-height'?" in ran.err


def test_an_accepted_stop_is_explained_and_stays_broken(run: Runner, tmp_path: Path) -> None:
    decision = {"rule": "weights.gross", "role": "engineer", "reason": "will be uprated"}
    path = tmp_path / "accepted.toml"
    broken = json.loads(run("check", _written(path, sheet(HEAVY)), "--json").out)["findings"][0]
    decision["rule"] = broken["rule"]
    ran = run("check", _written(path, sheet({**HEAVY, "decisions": [decision]})))
    assert ran.code == 1
    assert "accepted by engineer: will be uprated" in ran.out


def _written(path: Path, record: Any) -> Path:
    path.write_text(record_text(record), encoding="utf-8")
    return path


def test_markup_in_a_name_is_shown_as_it_is(run: Runner, tmp_path: Path) -> None:
    path = _written(tmp_path / "m.toml", sheet({"name": "Odd [/red] name [bold]"}))
    assert "Odd [/red] name [bold]" in run("check", path).out
