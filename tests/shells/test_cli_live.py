"""The command that shows a build's year at a site."""

import json
from pathlib import Path

import pytest

from tests.shells.running import Ran, Runner

DEMO = Path(__file__).parents[2] / "demos" / "winter-kit.toml"


@pytest.fixture
def lived(
    run: Runner, monkeypatch: pytest.MonkeyPatch, tmp_path_factory: pytest.TempPathFactory
) -> Runner:
    """Return what runs a command whose years are kept over all tests of this file."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.getbasetemp() / "lived"))
    return run


def said(ran: Ran) -> str:
    return " ".join(ran.out.split())


def test_it_shows_months_days_and_what_the_weather_may_be_off_by(lived: Runner) -> None:
    ran = lived("live", DEMO)
    assert ran.code == 0, ran.err
    assert [line.split()[0] for line in ran.out.splitlines() if line.startswith(" Jan")] == [
        "Jan",
        "Jan",
    ]
    assert "nine of ten at least" in said(ran)
    assert "Time until wet kit is dry in the drying-wardrobe" in said(ran)
    assert "Synthetic: made from monthly temperature" in said(ran)
    assert "CC-BY-4.0" in said(ran)
    assert all(len(line) <= 80 for line in ran.out.splitlines())


def test_the_year_is_computed_once_and_then_taken_as_kept(lived: Runner) -> None:
    lived("live", DEMO)
    again = lived("check", DEMO)
    assert "Computing" not in again.err
    assert "Nine of ten stays" in said(again)


def test_other_programs_get_everything(lived: Runner) -> None:
    data = json.loads(lived("live", DEMO, "--json").out)
    assert len(data["living"]["years"][0]["months"]) == 12
    assert len(data["living"]["years"][0]["stands"]) == 12
    assert data["changes"] == []


def test_steps_go_into_a_table(lived: Runner, tmp_path: Path) -> None:
    table = tmp_path / "steps.csv"
    ran = lived("live", DEMO, "--start", "12-20", "--days", "2", "--csv", table)
    assert ran.code == 0, ran.err
    lines = table.read_text(encoding="utf-8").splitlines()
    assert lines[0].startswith("month,day,hour,outside degC,cabin degC")
    assert len(lines) == 1 + 2 * 144
    assert lines[1].startswith("12,20,00:00,")
    assert lines[-1].startswith("12,21,23:50,")


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--start", "12-30", "--days", "3"), "name 1 to 2 days"),
        (("--start", "02-29"), "write month and day, such as 01-31"),
        (("--days", "0"), "name 1 to 365 days"),
    ],
)
def test_days_that_are_no_days_of_the_year_are_refused(
    lived: Runner, tmp_path: Path, arguments: tuple[str, ...], words: str
) -> None:
    ran = lived("live", DEMO, "--csv", tmp_path / "steps.csv", *arguments)
    assert ran.code == 2
    assert words in ran.err
    assert not (tmp_path / "steps.csv").exists()


def test_changes_are_real_runs(lived: Runner) -> None:
    told = said(lived("live", DEMO, "--changes"))
    for change in ("one more panel", "one more battery", "20 mm more", "a pitch in the"):
        assert change in told


def test_a_site_is_asked_for_where_the_brief_names_none(run: Runner, tmp_path: Path) -> None:
    run("new", "plain.toml")
    ran = run("live", tmp_path / "plain.toml")
    assert ran.code == 2
    assert "names no site" in ran.err
    assert "coachwright weather list" in ran.err
    assert run("live", tmp_path / "plain.toml", "--site", "nowhere").code == 2
