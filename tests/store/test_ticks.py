"""Ticks of the shop floor: appended, logged, beside the build; two at once lose nothing."""

from concurrent.futures import ThreadPoolExecutor
from functools import partial

import pytest

from coachwright.errors import NotAllowed, UnknownName
from coachwright.store.records import Step
from coachwright.store.store import Store
from tests.store.sheets import NOW, SHEET, later

PEOPLE, TICKS_EACH = ("finn", "gus", "ida", "jo"), 12


def _tick(store: Store, build: int, thing: str, actor: str, *, done: bool = True) -> None:
    store.floor.tick(
        build,
        thing,
        Step.HERE,
        done=done,
        part="galley-1200",
        place="650 0 0",
        actor=actor,
        at=NOW,
    )


def test_a_tick_is_kept_with_who_when_and_what_it_was(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    store.floor.tick(
        build,
        "galley",
        Step.FITTED,
        done=True,
        part="galley-1200",
        place="650 0 0",
        actor="finn",
        at=later(5),
    )
    (kept,) = store.floor.ticks(build)
    assert (kept.thing, kept.step, kept.done) == ("galley", Step.FITTED, True)
    assert (kept.part, kept.place) == ("galley-1200", "650 0 0")
    assert (kept.actor, kept.at) == ("finn", later(5))
    line = store.audit()[0]
    assert (line.actor, line.deed, line.about) == (
        "finn",
        "ticked: fitted",
        f"build {build}: galley",
    )


def test_a_tick_that_is_taken_back_is_added_not_taken_out(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    _tick(store, build, "galley", "finn")
    _tick(store, build, "galley", "gus", done=False)
    assert [(each.actor, each.done) for each in store.floor.ticks(build)] == [
        ("finn", True),
        ("gus", False),
    ]
    assert store.audit()[0].deed == "tick taken back: here"


def test_ticks_leave_the_build_as_it_is(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    before, entry = store.sheet(build), store.build(build)
    _tick(store, build, "galley", "finn")
    assert (store.sheet(build), store.build(build)) == (before, entry)
    assert store.reach(build, actor="finn").undo is None
    assert len(store.history(build)) == 1


def test_several_who_tick_at_once_lose_nothing(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    deeds = [
        partial(_tick, store, build, f"thing-{number}", actor)
        for number in range(TICKS_EACH)
        for actor in PEOPLE
    ]
    with ThreadPoolExecutor(len(PEOPLE)) as pool:
        for each in [pool.submit(deed) for deed in deeds]:
            each.result()
    kept = store.floor.ticks(build)
    assert {(each.thing, each.actor) for each in kept} == {
        (f"thing-{number}", actor) for number in range(TICKS_EACH) for actor in PEOPLE
    }
    assert len(kept) == len(deeds) == len({each.number for each in kept})


def test_a_build_that_is_not_there_has_no_ticks(store: Store) -> None:
    with pytest.raises(UnknownName):
        _tick(store, 7, "galley", "finn")
    with pytest.raises(UnknownName):
        store.floor.ticks(7)
    assert store.audit() == ()


def test_who_may_tick_is_looked_at_apart_from_who_may_edit(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id

    def never() -> None:
        raise NotAllowed("reads only")

    ticks_only = store.checked(never, floor=lambda: None)
    _tick(ticks_only, build, "galley", "finn")
    with pytest.raises(NotAllowed):
        ticks_only.archive(build, actor="finn", at=NOW)
    with pytest.raises(NotAllowed):
        _tick(store.checked(never), build, "galley", "finn")
    assert len(store.floor.ticks(build)) == 1
