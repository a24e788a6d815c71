"""Builds as appended events: kept, read back at any event, undone and redone without end."""

from datetime import datetime

import pytest

from coachwright.errors import BuildFileError, CannotEdit, Fault, NothingToUndo, UnknownName
from coachwright.model.build import BuildSheet
from coachwright.store.chain import SNAPSHOT_EVERY
from coachwright.store.edits import Put, Take
from coachwright.store.opening import open_store
from coachwright.store.records import Deed, Reach, WholeSheet
from coachwright.store.store import Store
from tests.store.sheets import NOW, SHEET, galley_to, kept, later


def test_a_new_build_is_kept_as_it_was_written(store: Store) -> None:
    made = store.create_build(SHEET, actor="ann", at=NOW)
    assert store.sheet(made.build_id).text == SHEET
    (entry,) = store.builds()
    assert (entry.name, entry.customer, entry.head) == ("Two berths", "A. Customer", 1)
    assert (entry.created_at, entry.created_by, entry.revision) == (NOW, "ann", "")


def test_an_edit_is_appended_with_actor_time_and_place(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    store.append(build, 1, galley_to(1320), actor="bob", at=later(5))
    event = store.history(build)[0]
    assert (event.number, event.actor, event.at) == (2, "bob", later(5))
    assert (event.deed, event.places) == (Deed.EDITED, ("fittings.galley.at",))
    assert store.build(build).changed_at == later(5)


def test_an_edit_leaves_comments_and_everything_else(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    answer = kept(store.append(build, 1, galley_to(1320), actor="ann", at=NOW))
    assert answer.sheet.text == SHEET.replace('"1200 mm"', '"1320 mm"')


def test_every_state_there_ever_was_can_be_read(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    states = {1: SHEET}
    for step in range(2 * SNAPSHOT_EVERY + 3):
        answer = kept(store.append(build, step + 1, galley_to(1000 + step), actor="ann", at=NOW))
        states[answer.sheet.event] = answer.sheet.text
    assert {number: store.sheet(build, number).text for number in states} == states


def test_undo_goes_back_to_the_first_edit_and_redo_to_the_last(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    states = [SHEET]
    for step in range(7):
        answer = kept(store.append(build, step + 1, galley_to(1000 + step), actor="ann", at=NOW))
        states.append(answer.sheet.text)
    for state in reversed(states[:-1]):
        assert kept(store.undo(build, actor="ann", at=NOW)).sheet.text == state
    with pytest.raises(NothingToUndo, match="nothing that ann could undo"):
        store.undo(build, actor="ann", at=NOW)
    for state in states[1:]:
        assert kept(store.redo(build, actor="ann", at=NOW)).sheet.text == state
    with pytest.raises(NothingToUndo, match="redo"):
        store.redo(build, actor="ann", at=NOW)


def test_an_edit_after_an_undo_ends_the_redo_and_loses_nothing(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    moved = kept(store.append(build, 1, galley_to(1320), actor="ann", at=NOW))
    store.undo(build, actor="ann", at=NOW)
    store.append(build, 3, galley_to(900), actor="ann", at=NOW)
    assert store.reach(build, actor="ann") == Reach(undo=4, redo=None)
    assert store.sheet(build, moved.sheet.event).text == moved.sheet.text
    assert kept(store.undo(build, actor="ann", at=NOW)).sheet.text == SHEET
    assert store.reach(build, actor="ann").undo is None


def test_undo_reaches_back_over_a_restart(address: str) -> None:
    with open_store(address) as store:
        build = store.create_build(SHEET, actor="ann", at=NOW).build_id
        store.append(build, 1, galley_to(1320), actor="ann", at=NOW)
    with open_store(address) as store:
        assert kept(store.undo(build, actor="ann", at=NOW)).sheet.text == SHEET


def test_undoing_what_was_taken_out_brings_its_comments_back(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    store.append(build, 1, (Take(path=("fittings", "galley")),), actor="ann", at=NOW)
    assert "Measured twice" not in store.sheet(build).text
    assert kept(store.undo(build, actor="ann", at=NOW)).sheet.text == SHEET


def test_going_back_to_a_revision_is_an_edit_that_can_be_undone(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    moved = kept(store.append(build, 1, galley_to(1320), actor="ann", at=NOW))
    back = kept(store.go_back(build, 2, 1, actor="bob", at=NOW))
    assert back.sheet.text == SHEET
    assert store.history(build)[0].deed is Deed.RETURNED
    assert store.history(build)[0].about == 1
    assert kept(store.undo(build, actor="bob", at=NOW)).sheet.text == moved.sheet.text


def test_an_edit_that_changes_nothing_appends_nothing(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    answer = kept(store.append(build, 1, galley_to(1200), actor="ann", at=NOW))
    assert answer.sheet.event == 1
    assert answer.differences == ()


def test_a_faulty_edit_is_refused_with_its_faults_and_nothing_is_appended(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    bare = (Put(path=("brief", "stay", "parked"), value="3"),)
    with pytest.raises(BuildFileError, match=r"brief\.stay\.parked"):
        store.append(build, 1, bare, actor="ann", at=NOW)
    with pytest.raises(BuildFileError, match="TOML"):
        store.append(build, 1, WholeSheet(text="name = "), actor="ann", at=NOW)
    with pytest.raises(CannotEdit, match=r"fittings\.oven"):
        store.append(build, 1, (Take(path=("fittings", "oven")),), actor="ann", at=NOW)
    assert store.build(build).head == 1


def test_a_faulty_sheet_makes_no_build(store: Store) -> None:
    with pytest.raises(BuildFileError, match="brief"):
        store.create_build("format = 1\nname = 'x'\n", actor="ann", at=NOW)
    assert store.builds() == ()


def test_a_sheet_is_shown_to_the_judge_before_it_is_kept(address: str) -> None:
    def no_oven(sheet: BuildSheet) -> tuple[Fault, ...]:
        ovens = [each.name for each in sheet.fittings if each.part == "oven"]
        return tuple(
            Fault(file="", field=name, found="an oven", allowed="none", action="take it out")
            for name in ovens
        )

    with open_store(address, judge=no_oven) as store:
        build = store.create_build(SHEET, actor="ann", at=NOW).build_id
        oven = (Put(path=("fittings", "galley", "part"), value="oven"),)
        with pytest.raises(BuildFileError, match="found an oven"):
            store.append(build, 1, oven, actor="ann", at=NOW)
        assert store.build(build).head == 1


def test_what_is_not_there_is_said_with_what_is(store: Store) -> None:
    with pytest.raises(UnknownName, match="no build '7'"):
        store.sheet(7)
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    with pytest.raises(UnknownName, match="no event '9'; there are: 1 to 1"):
        store.sheet(build, 9)
    with pytest.raises(UnknownName, match="event"):
        store.append(build, 9, galley_to(1000), actor="ann", at=NOW)


def test_two_builds_have_histories_of_their_own(store: Store) -> None:
    first = store.create_build(SHEET, actor="ann", at=NOW).build_id
    second = store.create_build(SHEET, actor="ann", at=later(1)).build_id
    store.append(first, 1, galley_to(1320), actor="ann", at=later(2))
    assert store.sheet(second).text == SHEET
    assert [each.build_id for each in store.builds()] == [first, second]
    with pytest.raises(NothingToUndo):
        store.undo(second, actor="ann", at=NOW)


def test_the_name_and_the_customer_of_the_list_follow_the_sheet(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    edits = (
        Put(path=("name",), value='"Lake" \\ <b>'),
        Put(path=("customer",), value="Zoë O'Néill"),
    )
    store.append(build, 1, edits, actor="ann", at=NOW)
    entry = store.build(build)
    assert (entry.name, entry.customer) == ('"Lake" \\ <b>', "Zoë O'Néill")


def test_signs_that_cannot_be_printed_stay_in_the_sheet_and_out_of_the_list(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    odd = "Lake\0\nof 🚐\u202e"
    store.append(build, 1, (Put(path=("name",), value=odd),), actor="ann", at=NOW)
    assert store.compare(build, 1, 2)[0].after == odd
    assert store.build(build).name == "Lake  of 🚐"


def test_a_build_is_put_away_and_taken_out_whole(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    store.archive(build, actor="ann", at=later(9))
    assert store.builds() == ()
    assert store.builds(archived=True)[0].archived_at == later(9)
    store.unarchive(build, actor="ann", at=later(10))
    assert store.sheet(build).text == SHEET
    assert [each.deed for each in store.audit()] == ["build taken out", "build archived"]


def test_history_can_be_asked_for_in_pieces(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    for step in range(4):
        store.append(build, step + 1, galley_to(1000 + step), actor="ann", at=later(step))
    assert [each.number for each in store.history(build, after=2, most=2)] == [5, 4]


def test_a_moment_is_kept_to_the_microsecond_and_in_utc(store: Store) -> None:
    moment = datetime.fromisoformat("2027-03-01T10:30:00.000001+02:00")
    build = store.create_build(SHEET, actor="ann", at=moment).build_id
    assert store.build(build).created_at == moment
