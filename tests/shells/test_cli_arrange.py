"""``coachwright arrange``: panels for a roof, plans for a floor, and builds written from them."""

import json
import tomllib
from dataclasses import replace
from pathlib import Path

import pytest

from coachwright.actions.arranging import RoofQuestion, arrange_roof, write_roof
from coachwright.actions.opening import open_build
from coachwright.actions.refitting import text_refitted
from coachwright.actions.writing import record_text
from coachwright.arrange.solving import Search
from coachwright.catalogue.loading import Catalogue
from coachwright.errors import CannotWrite
from coachwright.model.build import BuildSheet
from coachwright.model.reading import read_record
from tests.arrange.floors import STRAIGHT, cabinet_data, stands
from tests.arrange.roofs import fan, panel_data
from tests.shells.running import Runner
from tests.support import builds

DEMOS = Path(__file__).parents[2] / "demos"
SOLAR = builds.fitting(
    "solar",
    "old",
    at=["1100 mm", "against centreline", "against roof"],
    mounting="roof",
)


def _file(tmp_path: Path, changes: dict[str, object], name: str = "build.toml") -> Path:
    path = tmp_path / name
    text = record_text(builds.sheet(changes))
    path.write_text(f"# by the shop\n{text}", encoding="utf-8")
    return path


@pytest.fixture
def roof(tmp_path: Path) -> Path:
    """Return a build with a panel, a fan before it, and something placed by the panel."""
    fitting, part = fan("fan", 3000, -200)
    antenna = builds.fitting(
        "antenna", "antenna", at=["behind solar 100 mm", "0 mm", "against roof"], mounting="roof"
    )
    return _file(
        tmp_path,
        {
            "fittings": [SOLAR, fitting, antenna],
            "own_parts": [panel_data("old", (900, 500), 90), part, builds.part("antenna")],
        },
    )


@pytest.fixture
def floor(tmp_path: Path) -> Path:
    """Return a build with three cabinets."""
    return _file(
        tmp_path,
        {
            "own_vehicle.shell.half_widths": STRAIGHT,
            "fittings": [
                stands("galley", "galley", "1500 mm"),
                stands("wardrobe", "wardrobe", "behind galley 10 mm"),
                stands("bench", "bench", "1500 mm", "right"),
            ],
            "own_parts": [
                cabinet_data("galley", 1000, zone_mm=450),
                cabinet_data("wardrobe", 500, height_mm=1800),
                cabinet_data("bench", 1200, height_mm=450),
            ],
        },
    )


def test_panels_are_chosen_and_shown(run: Runner, roof: Path) -> None:
    ran = run("arrange", "roof", roof, "--panels", "old", "--most", "2")
    assert (ran.code, ran.err) == (0, "")
    assert "180 W of panels" in ran.out
    assert "there are 90 W now" in ran.out
    assert "Proven: nothing is better." in ran.out
    assert "[[fittings]]" in ran.out


def test_panels_as_data(run: Runner, roof: Path) -> None:
    data = json.loads(run("arrange", "roof", roof, "--panels", "old", "--json").out)
    assert data["proof"]["proven"] is True
    assert data["total_w"] == sum(panel["rated_w"] for panel in data["panels"])
    assert {fitting["part"] for fitting in data["fittings"]} == {"old"}
    assert {cost["name"] for cost in data["obstacles"]} == {"fan", "antenna", "all of them"}


def test_a_copy_has_the_new_panels_and_every_comment(
    run: Runner, roof: Path, tmp_path: Path
) -> None:
    text = roof.read_text(encoding="utf-8")
    # a comment of the antenna stands before its table, behind the values of what is removed
    text = text.replace('[[fittings]]\nname = "fan"', '# cools\n[[fittings]]\nname = "fan"  # so')
    roof.write_text(text, encoding="utf-8")
    target = tmp_path / "new.toml"
    ran = run("arrange", "roof", roof, "--panels", "old", "--write", target)
    assert ran.code == 0
    written = target.read_text(encoding="utf-8")
    assert written.startswith("# by the shop\n")
    assert '# cools\n[[fittings]]\nname = "fan"  # so' in written
    assert roof.read_text(encoding="utf-8") == text
    build = open_build(target, Catalogue(None)).build
    names = [fitted.name for fitted in build.fittings]
    assert "solar" not in names
    assert "solar-1" in names
    antenna = build.fitted("antenna")
    assert antenna is not None
    assert antenna.at_mm[0] == 2100


def test_a_copy_of_a_build_from_a_standard_says_what_differs(run: Runner, tmp_path: Path) -> None:
    target = tmp_path / "new.toml"
    source = DEMOS / "four-seats.toml"
    ran = run("arrange", "roof", source, "--panels", "solar-175w-rigid", "--write", target)
    assert (ran.code, ran.err) == (0, "")
    written = target.read_text(encoding="utf-8")
    assert 'standard = "tourer-l3-eu"' in written
    assert "[[changes.added]]" in written
    assert "removed = [" in written


def test_a_file_that_is_there_is_never_overwritten(run: Runner, roof: Path) -> None:
    before = roof.read_bytes()
    ran = run("arrange", "roof", roof, "--panels", "old", "--write", roof)
    assert ran.code == 2
    assert "is there already" in ran.err
    assert roof.read_bytes() == before


def test_a_plan_that_failed_its_check_is_not_written(roof: Path, tmp_path: Path) -> None:
    catalogue = Catalogue(None)
    question = RoofQuestion(panels=("old",), most=1)
    plan = arrange_roof(roof, catalogue, question, Search(limit_s=10))
    with pytest.raises(CannotWrite, match="failed its check: a fault"):
        write_roof(roof, catalogue, replace(plan, faults=("a fault",)), tmp_path / "new.toml")


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--panels", "no-such-panel"), "no part 'no-such-panel'"),
        (("--panels", "hatch-400"), "hatch-400 is no solar panel for a roof"),
        (("--walkway", "somewhere"), "is no stretch; write it such as"),
        (("--panels", "old", "--mount", "no-such-rails"), "no part 'no-such-rails'"),
    ],
)
def test_a_question_that_cannot_be_answered_is_said(
    run: Runner, roof: Path, arguments: tuple[str, ...], said: str
) -> None:
    ran = run("arrange", "roof", roof, *arguments)
    assert ran.code == 2
    assert said in ran.err


def test_a_walkway_and_a_mounting_are_taken_from_the_line(run: Runner, roof: Path) -> None:
    walk = run(
        "arrange", "roof", roof, "--panels", "old", "--walkway", "1100 mm:2800 mm", "--json"
    )
    data = json.loads(walk.out)
    assert "walkway 1" in {cost["name"] for cost in data["obstacles"]}
    railed = run(
        "arrange", "roof", roof, "--panels", "old", "--mount", "solar-mount-rails", "--json"
    )
    assert {f["part"] for f in json.loads(railed.out)["fittings"]} == {
        "old",
        "solar-mount-rails",
    }


def test_floor_plans_are_shown_best_first(run: Runner, floor: Path) -> None:
    ran = run("arrange", "floor", floor, "--plans", "3")
    assert (ran.code, ran.err) == (0, "")
    for number in (1, 2, 3):
        assert f"Plan {number}: " in ran.out
    assert "points" in ran.out
    assert "The first plan came after" in ran.out


def test_floor_plans_as_data(run: Runner, floor: Path) -> None:
    data = json.loads(run("arrange", "floor", floor, "--pin", "galley", "--json").out)
    assert data["conflict"] == []
    assert len(data["plans"]) >= 2
    for plan in data["plans"]:
        places = {place["name"]: place for place in plan["places"]}
        assert not places["galley"]["moved"]
        assert "build" not in plan
        assert all("at" in fitting for fitting in plan["fittings"])


def test_a_floor_plan_is_written_and_reads_as_proposed(
    run: Runner, floor: Path, tmp_path: Path
) -> None:
    target = tmp_path / "new.toml"
    ran = run("arrange", "floor", floor, "--plan", "2", "--write", target)
    assert (ran.code, ran.err) == (0, "")
    assert target.read_text(encoding="utf-8").startswith("# by the shop\n")
    assert run("check", target).code in (0, 1)


def test_a_floor_plan_of_a_standard_is_written_as_moves(run: Runner, tmp_path: Path) -> None:
    target = tmp_path / "new.toml"
    ran = run("arrange", "floor", DEMOS / "four-seats.toml", "--plans", "1", "--write", target)
    assert (ran.code, ran.err) == (0, "")
    assert "[[changes.moved]]" in target.read_text(encoding="utf-8")


def test_colliding_wishes_are_named(run: Runner, floor: Path) -> None:
    ran = run("arrange", "floor", floor, "--aisle", "1390 mm")
    assert ran.code == 0
    assert "These wishes collide" in ran.out
    assert "- there is a way of 1390 mm from the cab" in ran.out


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--pin", "attic"), "no module 'attic'"),
        (("--aisle", "wide"), "is no width of a way"),
        (("--plans", "1", "--plan", "2", "--write", "x.toml"), "there is no plan 2"),
    ],
)
def test_a_floor_question_that_cannot_be_answered_is_said(
    run: Runner, floor: Path, arguments: tuple[str, ...], said: str
) -> None:
    ran = run("arrange", "floor", floor, *arguments)
    assert ran.code == 2
    assert said in ran.err


@pytest.mark.slow
@pytest.mark.parametrize("name", ["night-watch", "four-seats", "winter-kit"])
def test_each_demo_has_three_floor_plans_that_the_rules_pass(run: Runner, name: str) -> None:
    data = json.loads(run("arrange", "floor", DEMOS / f"{name}.toml", "--json").out)
    assert len(data["plans"]) >= 3
    assert data["took_s"] < 10
    assert data["dropped"] == []


@pytest.mark.slow
def test_the_roof_of_the_first_demo_is_proven(run: Runner) -> None:
    data = json.loads(run("arrange", "roof", DEMOS / "night-watch.toml", "--json").out)
    assert data["proof"]["proven"] is True
    assert data["proof"]["took_s"] < 5
    assert data["total_w"] >= data["present_w"]
    assert data["faults"] == []


def _sheet(text: str) -> BuildSheet:
    found, faults = read_record(BuildSheet, tomllib.loads(text), "test.toml")
    assert found is not None, faults
    return found


def test_fittings_in_an_inline_list_are_not_torn(tmp_path: Path) -> None:
    sheet = builds.sheet({"fittings": [SOLAR], "own_parts": [panel_data("old", (900, 500), 90)]})
    text = record_text(sheet)
    start = text.index("[[fittings]]")
    end = text.index("[[", start + 2)
    inline = 'fittings = [{ name = "solar", part = "old", at = ["0 mm", "0 mm", "0 mm"] }]\n'
    torn = inline + text[:start] + text[end:]
    with pytest.raises(CannotWrite, match=r"not written as tables \[\[fittings\]\]"):
        text_refitted(torn, sheet, removed=["solar"])


def test_lists_over_several_lines_go_with_their_table() -> None:
    sheet = builds.sheet(
        {
            "fittings": [SOLAR, SOLAR | {"name": "other"}],
            "own_parts": [panel_data("old", (900, 500), 90)],
        }
    )
    text = record_text(sheet).replace(
        'at = ["1100 mm", "against centreline", "against roof"]',
        'at = [\n  "1100 mm",  # front ]\n  "against centreline",\n  "against roof",\n]',
        1,
    )
    edited = text_refitted(text, sheet, removed=["solar"])
    assert [fitting.name for fitting in _sheet(edited).fittings] == ["other"]
    assert "# front" not in edited


def test_moves_of_a_standard_are_changed_where_they_are() -> None:
    head = 'format = 1\nname = "x"\nstandard = "tourer-l3-eu"\n'
    brief = record_text(builds.sheet()).split("[brief]")[1].split("[own_vehicle]")[0]
    moves = (
        "\n[changes]\nremoved = []\n\n[[changes.moved]]  # aside\n"
        'fitting = "galley"\nat = ["1 mm", "2 mm", "3 mm"]\n'
        '\n[[changes.added]]\nname = "own"\npart = "p"\nat = ["1 mm", "2 mm", "3 mm"]\n'
    )
    text = f"{head}\n[brief]{brief}{moves}"
    sheet = _sheet(text)
    galley = sheet.changes.added[0].model_copy(update={"name": "galley", "at_mm": (9.0, 8.0, 7.0)})
    own = sheet.changes.added[0].model_copy(update={"turn_deg": 90.0, "mirror": True})
    edited = text_refitted(text, sheet, removed=["fridge"], changed={"galley": galley, "own": own})
    found = _sheet(edited).changes
    assert found.removed == ("fridge",)
    assert found.moved[0].at_mm == (9.0, 8.0, 7.0)
    assert (found.added[0].turn_deg, found.added[0].mirror) == (90.0, True)
    assert "[[changes.moved]]  # aside" in edited


def test_a_site_makes_panels_count_by_energy(run: Runner, roof: Path) -> None:
    asked = ("arrange", "roof", roof, "--panels", "old", "--most", "2", "--site", "greensboro-nc")
    ran = run(*asked)
    assert (ran.code, ran.err) == (0, "")
    assert "the energy of the year" in ran.out
    assert "kWh a year before the controller" in ran.out
    data = json.loads(run(*asked, "--by", "month", "--json").out)
    assert (data["energy"]["by"], data["energy"]["month"]) == ("month", "December")
    assert all(cost["cost_wh"] >= 0 for cost in data["obstacles"])


def test_energy_needs_a_site_and_watts_need_none(run: Runner, roof: Path) -> None:
    ran = run("arrange", "roof", roof, "--by", "year")
    assert ran.code == 2
    assert "the brief names no site" in ran.err
    ran = run("arrange", "roof", roof, "--by", "watts", "--site", "greensboro-nc")
    assert ran.code == 2
    assert "watts are the same at every site" in ran.err


def test_the_site_of_the_brief_counts_by_itself(run: Runner, tmp_path: Path) -> None:
    path = _file(
        tmp_path,
        {
            "fittings": [SOLAR],
            "own_parts": [panel_data("old", (900, 500), 90)],
            "brief.climate.sites": ["oslo-no"],
        },
    )
    ran = run("arrange", "roof", path, "--panels", "old", "--most", "1")
    assert ran.code == 0
    assert "At Oslo the roof gives" in ran.out
    assert "Synthetic" in ran.out
