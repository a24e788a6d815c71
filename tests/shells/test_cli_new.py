"""``coachwright new``: a starter that checks without faults, and overwrites nothing."""

import tomllib
from pathlib import Path

import pytest

from coachwright.catalogue.loading import Catalogue
from tests.shells.running import Runner


@pytest.mark.parametrize("region", ["us", "eu", "uk"])
def test_a_starter_checks_without_a_broken_stop(run: Runner, region: str) -> None:
    made = run("new", "first.toml", "--jurisdiction", region)
    assert (made.code, made.err) == (0, "")
    assert "Next: open it, then coachwright check first.toml" in made.out
    ran = run("check", "first.toml")
    assert (ran.code, ran.err) == (0, "")


@pytest.mark.parametrize("vehicle", Catalogue().vehicle_ids())
def test_every_vehicle_can_be_started_from(run: Runner, vehicle: str) -> None:
    assert run("new", "van.toml", "--vehicle", vehicle).code == 0
    ran = run("check", "van.toml")
    assert (ran.code, ran.err) == (0, "")
    data = tomllib.loads(Path("van.toml").read_text(encoding="utf-8"))
    assert data["vehicle"] == vehicle
    assert data["brief"]["jurisdiction"] == vehicle[:2]


def test_a_starter_has_comments(run: Runner) -> None:
    run("new", "first.toml")
    lines = Path("first.toml").read_text(encoding="utf-8").splitlines()
    assert sum(line.startswith("#") for line in lines) > 15


def test_the_commented_examples_are_right_too(run: Runner) -> None:
    run("new", "first.toml")
    path = Path("first.toml")
    text = path.read_text(encoding="utf-8")
    for line in (
        '# independence_wanted = "3 d"',
        '# budget = "18000.00 EUR"',
        "# wanted = 2027-04-15",
        "# [[brief.habits.devices]]",
        '# name = "laptop"',
        '# draw = "60 W"',
        '# use = "4 h/day"',
        "# [[brief.cargo]]",
        '# name = "tool box"',
        '# mass = "20 kg"',
        '# centre = ["3200 mm", "0 mm", "200 mm"]',
        "# [ticket]",
        "# date = 2027-03-01",
        '# total = "2950 kg"',
    ):
        assert line in text
        text = text.replace(line, line.removeprefix("# "))
    path.write_text(text, encoding="utf-8")
    assert run("check", path).err == ""


def test_a_file_that_is_there_is_never_overwritten(run: Runner) -> None:
    Path("mine.toml").write_text("precious", encoding="utf-8")
    ran = run("new", "mine.toml")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err == "mine.toml is there already; name another file or remove it\n"
    assert Path("mine.toml").read_text(encoding="utf-8") == "precious"


@pytest.mark.parametrize("name", ["build", "build.txt", ".toml"])
def test_a_name_ends_in_toml(run: Runner, name: str) -> None:
    ran = run("new", name)
    assert ran.code == 2
    assert "ends in .toml" in ran.err
    assert not Path(name).exists()


def test_an_unknown_vehicle_says_which_there_are(run: Runner) -> None:
    ran = run("new", "van.toml", "--vehicle", "eu-l3h2-3500kg")
    assert ran.code == 2
    assert "did you mean 'eu-l3h2-3500'?" in ran.err
    assert not Path("van.toml").exists()


def test_a_name_with_quotes_is_a_name(run: Runner) -> None:
    assert run("new", 'the "big" one.toml').code == 0
    assert run("check", 'the "big" one.toml').err == ""


def test_a_starter_can_begin_from_a_standard(run: Runner, tmp_path: Path) -> None:
    shop = tmp_path / "shop"
    (shop / "standards").mkdir(parents=True)
    run("new", "base.toml")
    base = Path("base.toml").read_text(encoding="utf-8")
    offer = '[[offers]]\nname = "bare"\ntitle = "Without locker"\nchanges.removed = ["locker"]\n'
    (shop / "standards" / "plain.toml").write_text(f"{base}\n{offer}", encoding="utf-8")
    assert run("--shop", shop, "new", "smith.toml", "--standard", "plain").code == 0
    text = Path("smith.toml").read_text(encoding="utf-8")
    assert "#   bare: Without locker" in text
    ran = run("--shop", shop, "check", "smith.toml")
    assert (ran.code, ran.err) == (0, "")
    compared = run("--shop", shop, "compare", "smith.toml")
    assert "No fitting differs." in compared.out
    Path("smith.toml").write_text(text.replace("options = []", 'options = ["bare"]'), "utf-8")
    assert "locker    removed" in run("--shop", shop, "compare", "smith.toml").out
