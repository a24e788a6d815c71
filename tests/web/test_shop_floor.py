"""The shop floor's list: what is to be fitted, in words; ticks by role; the interface."""

from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from fastapi import FastAPI
from nicegui.testing import User

from coachwright.actions.admitting import Who, as_seen_by, issue_token, make_account
from coachwright.actions.benching import Bench, OnBench, edit, lay_open, set_up
from coachwright.actions.shop_floor import GROUPS, LINING, PIPES, Thing, floor_list, tick
from coachwright.catalogue.loading import Catalogue
from coachwright.errors import NotAllowed, UnknownName
from coachwright.store.edits import Put
from coachwright.store.records import Role, Step
from coachwright.units import worded
from coachwright.web.door.rules import House
from coachwright.web.door.seating import open_door
from tests.web.benches import NOW, lay
from tests.web.calling import Program

PASSWORD = "correct horse battery"  # noqa: S105  # of accounts in tests


@pytest.fixture
def work(bench: Bench) -> OnBench:
    return lay_open(bench, lay(bench))


def _thing(bench: Bench, work: OnBench, key: str) -> Thing:
    (found,) = (each for each in floor_list(bench, work).things if each.key == key)
    return found


def _ticked(bench: Bench, work: OnBench, key: str, step: Step, *, done: bool = True) -> None:
    tick(bench, work, key, step, done=done, actor="finn", at=NOW)


def test_everything_in_the_build_is_on_the_list_once(bench: Bench, work: OnBench) -> None:
    things = floor_list(bench, work).things
    keys = [each.key for each in things]
    build = work.build
    assert len(set(keys)) == len(keys)
    assert {each.name for each in build.fittings} < set(keys)
    assert len(keys) == len(build.fittings) + len(build.finishes) + len(build.water_runs)
    assert [each.group for each in things] == sorted(
        (each.group for each in things), key=GROUPS.index
    )
    assert things[0].group == LINING
    assert things[-1].group == PIPES


def test_what_is_built_in_stands_behind_what_it_is_built_into(bench: Bench, work: OnBench) -> None:
    keys = [each.key for each in floor_list(bench, work).things]
    for fitted in work.build.fittings:
        if fitted.fitting.within:
            assert keys.index(fitted.fitting.within) < keys.index(fitted.name)


def test_a_place_is_told_as_a_tape_measures_it(bench: Bench, work: OnBench) -> None:
    """Checked by hand against the corner and size of the fitting (design axes: x rearwards)."""
    galley = _thing(bench, work, "galley")
    x_mm, y_mm, z_mm = next(e.at_mm for e in work.build.fittings if e.name == "galley")
    assert (round(x_mm), round(y_mm), round(z_mm)) == (2451, -862, 39)
    said = [worded(each) for each in galley.where]
    assert said[0] == "fixed to the floor"
    assert said[1] == (
        "its front edge 2,451 mm behind the front axle; left, 342 mm to 862 mm from the middle; "
        "its underside 39 mm above the load floor"
    )
    assert said[2].startswith("as drawn: behind bench 0.75 in, against left wall")
    assert worded(_thing(bench, work, "fridge").where[0]).startswith("built into Galley block")
    panel = _thing(bench, work, "solar-front")
    assert "across the middle, 567 mm to the left and 567 mm to the right" in worded(
        panel.where[1]
    )
    assert panel.where[0].startswith("carried by Mounting rails")
    assert "below the load floor" in worded(_thing(bench, work, "grey-tank").where[1])


def test_a_tick_counts_and_is_taken_back(bench: Bench, work: OnBench) -> None:
    _ticked(bench, work, "galley", Step.HERE)
    _ticked(bench, work, "fridge", Step.FITTED)
    found = floor_list(bench, work)
    assert (found.here, found.fitted) == (2, 1)
    here = _thing(bench, work, "galley").here
    assert (here.done, here.by, here.at) == (True, "finn", NOW)
    _ticked(bench, work, "galley", Step.HERE, done=False)
    assert not _thing(bench, work, "galley").here.done
    assert (found.ticks[0].thing, len(found.ticks)) == ("fridge", 2)


def test_a_tick_of_what_has_moved_since_holds_no_more(bench: Bench, work: OnBench) -> None:
    for step in Step:
        _ticked(bench, work, "overhead-galley", step)
    place = next(i for i, e in enumerate(work.sheet.fittings) if e.name == "overhead-galley")
    change = (Put(path=("fittings", place, "at"), value=["2600 mm", "-700 mm", "1400 mm"]),)
    made = edit(bench, work.build_id, work.event, change, actor="ann", at=NOW)
    assert isinstance(made, OnBench)
    moved = _thing(bench, made, "overhead-galley")
    assert moved.here.done, "it lies there wherever it goes"
    assert not moved.fitted.done
    assert "place or mounting" in moved.fitted.changed


def test_a_tick_of_another_part_holds_no_more(bench: Bench, work: OnBench) -> None:
    _ticked(bench, work, "roof-fan", Step.HERE)
    bench.store.floor.tick(
        work.build_id,
        "galley",
        Step.HERE,
        done=True,
        part="galley-900",
        place="",
        actor="finn",
        at=NOW,
    )
    galley = _thing(bench, work, "galley").here
    assert not galley.done
    assert "was galley-900 then" in galley.changed


def test_ticks_change_neither_record_nor_digest(bench: Bench, work: OnBench) -> None:
    digest, text = work.build.digest, bench.store.sheet(work.build_id).text
    _ticked(bench, work, "galley", Step.FITTED)
    after = lay_open(bench, work.build_id)
    assert (after.build.digest, after.event) == (digest, work.event)
    assert bench.store.sheet(work.build_id).text == text


def test_a_thing_that_the_build_has_not_cannot_be_ticked(bench: Bench, work: OnBench) -> None:
    with pytest.raises(UnknownName, match="thing to be fitted"):
        _ticked(bench, work, "helipad", Step.HERE)


def test_the_floor_ticks_and_edits_nothing(bench: Bench, work: OnBench) -> None:
    seen = as_seen_by(bench, lambda: Who(name="finn", role=Role.FLOOR))
    _ticked(seen, work, "galley", Step.HERE)
    with pytest.raises(NotAllowed, match="change nothing"):
        seen.store.archive(work.build_id, actor="finn", at=NOW)
    gone = as_seen_by(bench, lambda: None)
    with pytest.raises(NotAllowed, match="sign in again"):
        _ticked(gone, work, "galley", Step.FITTED)
    assert len(bench.store.floor.ticks(work.build_id)) == 1


# ------------------------------------------------------------------------------------- the page


async def test_somebody_ticks_and_sees_who_did(user: User, bench: Bench) -> None:
    number = lay(bench)
    await user.open(f"/build/{number}/floor")
    await user.should_see("0 of ")
    user.find(marker="here-galley").click()
    await user.should_see("1 of ")
    await user.should_see("designer, ")
    user.find(marker="show-to-fit").click()
    await user.should_see("Galley block 1200")
    user.find(marker="here-galley").click()
    await user.should_see("galley: here taken back")
    await user.should_see("nothing of this kind")
    assert [each.done for each in bench.store.floor.ticks(number)] == [True, False]


async def test_a_tick_of_another_page_is_seen_at_once(user: User, bench: Bench) -> None:
    number = lay(bench)
    await user.open(f"/build/{number}/floor")
    first = user.client
    await user.open(f"/build/{number}/floor")
    user.find(marker="fitted-sink").click()
    await user.should_see("1 fitted")
    assert first is not None
    with first:
        await user.should_see("1 fitted")


# -------------------------------------------------------------------------------- the interface


@pytest.fixture
def guarded(tmp_path: Path) -> Iterator[tuple[Bench, Program, list[int]]]:
    """Return a bench with accounts, and a program that acts for the floor."""
    bench = set_up(tmp_path / "guarded.db", Catalogue())
    told: list[int] = []
    with bench.store:
        lay(bench)
        now = datetime.now(UTC)
        for name, role in (("olga", Role.OWNER), ("finn", Role.FLOOR)):
            make_account(bench, name, role, PASSWORD, salt=b"s" * 16, actor="test", at=now)
        issue_token(bench, "finn", "k" * 40, label="scanner", days=1, actor="olga", at=now)
        app = FastAPI()
        open_door(app, bench, House(guarded=True), ticked=told.append)
        program = Program(app=app, headers={"Authorization": f"Bearer {'k' * 40}"})
        yield bench, program, told


def test_a_program_reads_and_ticks_for_the_floor(
    guarded: tuple[Bench, Program, list[int]],
) -> None:
    bench, program, told = guarded
    found = program.get("builds/1/floor").json()
    assert {"thing", "name", "group", "where", "here", "fitted"} <= found["things"][0].keys()
    answer = program.post("builds/1/ticks", json={"thing": "galley", "step": "here"})
    assert answer.status_code == 201
    (galley,) = (each for each in answer.json()["things"] if each["thing"] == "galley")
    assert (galley["here"]["done"], galley["here"]["by"]) == (True, "finn")
    assert told == [1]
    back = {"thing": "galley", "step": "here", "done": False}
    assert program.post("builds/1/ticks", json=back).json()["ticks"][0]["done"] is False
    assert bench.store.audit(most=1)[0].deed == "tick taken back: here"


@pytest.mark.parametrize(
    ("body", "status"),
    [
        ({"thing": "helipad", "step": "here"}, 404),
        ({"thing": "galley", "step": "painted"}, 422),
        ({"thing": "", "step": "here"}, 422),
        ({"thing": "galley", "step": "here", "actor": "olga"}, 422),
    ],
)
def test_a_tick_that_cannot_be_is_refused(
    guarded: tuple[Bench, Program, list[int]], body: dict[str, str], status: int
) -> None:
    bench, program, told = guarded
    assert program.post("builds/1/ticks", json=body).status_code == status
    assert program.post("builds/9/ticks", json=body).status_code in (404, 422)
    assert bench.store.floor.ticks(1) == ()
    assert told == []
