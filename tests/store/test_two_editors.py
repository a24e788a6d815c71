"""Two persons edit one build: what can stand together is merged, the rest is asked about."""

import threading

import pytest

from coachwright.errors import CannotEdit, Fault
from coachwright.model.build import BuildSheet
from coachwright.store.edits import Edit, Put, Take
from coachwright.store.opening import open_store
from coachwright.store.records import Appended, Change, Conflict, WholeSheet
from coachwright.store.store import Store
from tests.store.sheets import NOW, SHEET, galley_to, kept, refused

FAN = {"name": "fan", "part": "fan-roof-small", "at": ["2 m", "0 mm", "against roof"]}
HEATER = {"name": "heater", "part": "heater-diesel-2kw", "at": ["100 mm", "300 mm", "0 mm"]}


def _both(store: Store, first: Change, second: Change) -> tuple[int, Appended | Conflict]:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    kept(store.append(build, 1, first, actor="ann", at=NOW))
    return build, store.append(build, 1, second, actor="bob", at=NOW)


def _deeds(store: Store, build: int, event: int) -> list[tuple[object, ...]]:
    """Return what differs from the first sheet, without the order in which things were put in."""
    found = store.compare(build, 1, event)
    return sorted((each.place, str(each.before), str(each.after)) for each in found)


@pytest.mark.parametrize(
    ("first", "second"),
    [
        (Put(path=("customer",), value="B"), Put(path=("brief", "stay", "parked"), value="4 d")),
        (Put(path=("fittings", "bed", "turn"), value="90 deg"), *galley_to(1300)),
        (Take(path=("fittings", "galley")), Put(path=("fittings", "bed", "turn"), value="90 deg")),
        (Put(path=("fittings", "fan"), value=FAN), Put(path=("fittings", "heater"), value=HEATER)),
        (Put(path=("fittings", "fan"), value=FAN), Take(path=("fittings", "bed"))),
        (Put(path=("fittings", "fan"), value=FAN, follows=""), *galley_to(1300)),
        (Put(path=("finishes", 0, "area"), value="1 m2"), Take(path=("brief", "must_have"))),
        (Put(path=("fittings", "galley", "turn"), value="90 deg"), *galley_to(1300)),
    ],
)
def test_edits_of_different_places_are_merged(store: Store, first: Edit, second: Edit) -> None:
    build, answer = _both(store, (first,), (second,))
    assert isinstance(answer, Appended)
    assert [each.place for each in answer.merged] == list(store.history(build)[1].places)
    alone = store.create_build(SHEET, actor="eve", at=NOW).build_id
    kept(store.append(alone, 1, (first, second), actor="eve", at=NOW))
    assert _deeds(store, build, 3) == _deeds(store, alone, 2)


@pytest.mark.parametrize(
    ("first", "second", "place"),
    [
        (galley_to(1300), galley_to(1400), "fittings.galley.at"),
        (galley_to(1300), (Take(path=("fittings", "galley")),), "fittings.galley"),
        ((Take(path=("fittings", "galley")),), galley_to(1300), "fittings.galley.at"),
        (
            (Put(path=("fittings", "fan"), value=FAN),),
            (Put(path=("fittings", "fan"), value={**FAN, "turn": "90 deg"}),),
            "fittings.fan",
        ),
        ((Take(path=("finishes", 0)),), (Put(path=("finishes", 1, "area"), value="1 m2"),), None),
    ],
)
def test_edits_of_one_place_are_asked_about_and_nothing_is_written_over(
    store: Store, first: tuple[Edit, ...], second: tuple[Edit, ...], place: str | None
) -> None:
    build, answer = _both(store, first, second)
    if place is None:  # finishes are named by part and surface, so these stand apart
        assert isinstance(answer, Appended)
        return
    conflict = refused(answer)
    assert [mine.place for mine, _ in conflict.disputed] == [place]
    assert conflict.actors == ("ann",)
    assert store.build(build).head == 2
    assert conflict.theirs == store.sheet(build)


def test_both_having_done_the_same_is_no_conflict(store: Store) -> None:
    build, answer = _both(store, galley_to(1300), galley_to(1300))
    assert isinstance(answer, Appended)
    assert store.build(build).head == 2


def test_the_second_can_have_it_all_the_same_once_it_is_seen(store: Store) -> None:
    build, answer = _both(store, galley_to(1300), galley_to(1400))
    conflict = refused(answer)
    again = store.append(build, conflict.theirs.event, galley_to(1400), actor="bob", at=NOW)
    assert '"1400 mm"' in kept(again).sheet.text
    assert '"1300 mm"' in store.sheet(build, 2).text


def test_the_second_can_leave_theirs_and_keep_the_rest(store: Store) -> None:
    more = Put(path=("customer",), value="B. Customer")
    build, answer = _both(store, galley_to(1300), (*galley_to(1400), more))
    conflict = refused(answer)
    assert conflict.clear is not None
    kept(store.append(build, conflict.theirs.event, conflict.clear, actor="bob", at=NOW))
    text = store.sheet(build).text
    assert '"1300 mm"' in text
    assert "B. Customer" in text


def test_the_second_can_keep_both_as_a_build_of_its_own(store: Store) -> None:
    _, answer = _both(store, galley_to(1300), galley_to(1400))
    conflict = refused(answer)
    copy = store.create_build(conflict.mine, actor="bob", at=NOW).build_id
    assert '"1400 mm"' in store.sheet(copy).text


def test_where_nothing_is_left_to_keep_nothing_is_offered(store: Store) -> None:
    _, answer = _both(store, galley_to(1300), galley_to(1400))
    assert refused(answer).clear is None


def test_whole_sheets_are_merged_with_their_comments(store: Store) -> None:
    mine = SHEET.replace("# Measured twice.", "# Measured three times.")
    theirs = SHEET.replace('"3 d"  # at the lake', '"5 d"  # at the sea')
    build, _ = _both(store, WholeSheet(text=theirs), WholeSheet(text=mine))
    text = store.sheet(build).text
    assert "# Measured three times." in text
    assert "# at the sea" in text


def test_a_comment_that_would_be_lost_is_asked_about(store: Store) -> None:
    mine = SHEET.replace("# at the lake", "# at the sea")
    theirs = SHEET.replace('"3 d"', '"4 d"')
    build, answer = _both(store, WholeSheet(text=theirs), WholeSheet(text=mine))
    conflict = refused(answer)
    assert conflict.disputed == ()
    assert conflict.mine == mine
    assert store.sheet(build).text == theirs


def test_entries_put_at_one_place_keep_the_comments_that_were_written_with_them(
    store: Store,
) -> None:
    end = 'surface = "floor"\narea = "7 m2"\n'
    finish = 'part = "lining-felt-5"\nsurface = "doors"\narea = "2 m2"\n'
    fan = f"\n# Against the steam.\n[[finishes]]\n{finish}"
    felt = fan.replace("steam", "cold").replace("doors", "ceiling")
    build, answer = _both(
        store,
        WholeSheet(text=SHEET.replace(end, end + fan)),
        WholeSheet(text=SHEET.replace(end, end + felt)),
    )
    assert isinstance(answer, Appended)
    text = store.sheet(build).text
    assert "# Against the steam." in text
    assert "# Against the cold." in text


def test_a_merged_sheet_that_the_judge_refuses_is_a_conflict(address: str) -> None:
    def whole(sheet: BuildSheet) -> tuple[Fault, ...]:
        names = {each.name for each in sheet.fittings}
        return tuple(
            Fault(file="", field=each.name, found=each.within, allowed="", action="")
            for each in sheet.fittings
            if each.within and each.within not in names
        )

    without = (Take(path=("fittings", "fridge")), Take(path=("fittings", "galley")))
    within = (Put(path=("fittings", "bed", "within"), value="galley"),)
    with open_store(address, judge=whole) as store:
        build, answer = _both(store, without, within)
        conflict = refused(answer)
        assert [each.field for each in conflict.faults] == ["bed"]
        assert conflict.clear is None
        assert store.build(build).head == 2


def test_each_undoes_what_each_has_made(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    store.append(build, 1, galley_to(1300), actor="ann", at=NOW)
    store.append(build, 2, (Put(path=("customer",), value="B"),), actor="bob", at=NOW)
    text = kept(store.undo(build, actor="ann", at=NOW)).sheet.text
    assert text == SHEET.replace('"A. Customer"', '"B"')
    text = kept(store.redo(build, actor="ann", at=NOW)).sheet.text
    assert '"1300 mm"' in text
    assert kept(store.undo(build, actor="bob", at=NOW)).sheet.text == SHEET.replace(
        '"1200 mm"', '"1300 mm"'
    )


def test_an_undo_over_what_another_did_is_asked_about(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    edits = (*galley_to(1300), Put(path=("customer",), value="B"))
    store.append(build, 1, edits, actor="ann", at=NOW)
    store.append(build, 2, galley_to(1400), actor="bob", at=NOW)
    conflict = refused(store.undo(build, actor="ann", at=NOW))
    assert [mine.place for mine, _ in conflict.disputed] == ["fittings.galley.at"]
    assert conflict.actors == ("bob",)
    rest = kept(store.undo(build, actor="ann", at=NOW, leave_theirs=True))
    assert rest.sheet.text == SHEET.replace('"1200 mm"', '"1400 mm"')
    assert store.reach(build, actor="ann").undo is None


def test_an_undo_over_what_another_did_can_be_had_once_it_is_seen(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    store.append(build, 1, galley_to(1300), actor="ann", at=NOW)
    store.append(build, 2, galley_to(1400), actor="bob", at=NOW)
    store.append(build, 3, (Put(path=("customer",), value="B"),), actor="bob", at=NOW)
    refused(store.undo(build, actor="ann", at=NOW, seen_event=3))
    over = kept(store.undo(build, actor="ann", at=NOW, seen_event=4))
    assert over.sheet.text == SHEET.replace('"A. Customer"', '"B"')
    again = kept(store.redo(build, actor="ann", at=NOW))
    assert again.sheet.text == store.sheet(build, 4).text


def test_an_undo_into_what_another_took_out_says_so(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    store.append(build, 1, galley_to(1300), actor="ann", at=NOW)
    store.append(build, 2, (Take(path=("fittings", "galley")),), actor="bob", at=NOW)
    refused(store.undo(build, actor="ann", at=NOW))
    with pytest.raises(CannotEdit, match="taken out meanwhile"):
        store.undo(build, actor="ann", at=NOW, seen_event=3)
    kept(store.undo(build, actor="ann", at=NOW, leave_theirs=True))


def test_many_hands_at_once_lose_nothing(address: str) -> None:
    """Eight threads append to one build at the same time, each always with an old base."""
    with open_store(address) as store:
        build = store.create_build(SHEET, actor="ann", at=NOW).build_id
        answers: list[object] = []

        def edit(hand: int) -> None:
            for step in range(5):
                value = {"part": f"lining-{hand}-{step}", "surface": "walls", "area": "1 m2"}
                path = ("finishes", f"lining-{hand}-{step}/walls")
                answers.append(
                    store.append(build, 1, (Put(path=path, value=value),), actor=f"{hand}", at=NOW)
                )

        hands = [threading.Thread(target=edit, args=(hand,)) for hand in range(8)]
        for each in hands:
            each.start()
        for each in hands:
            each.join()
        assert len(answers) == 40
        assert all(isinstance(each, Appended) for each in answers)
        assert store.build(build).head == 41
        assert store.sheet(build).text.count("[[finishes]]") == 42
