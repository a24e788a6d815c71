"""Whatever people do, in whatever order: what is read is what was made, and undo leads back."""

from hypothesis import given, settings
from hypothesis import strategies as st
from sqlalchemy import select

from coachwright.errors import CannotEdit, NothingToUndo
from coachwright.store import tables
from coachwright.store.blocks import comments
from coachwright.store.differences import differences
from coachwright.store.edits import Edit, Put, Take, edited, parsed
from coachwright.store.merging import merged
from coachwright.store.opening import open_store
from coachwright.store.records import Appended, WholeSheet
from coachwright.store.splices import as_text, from_text, reversed_splices, spliced, splices
from coachwright.store.store import Store
from tests.store.sheets import NOW, SHEET

NAMES = ("galley", "fridge", "bed", "fan", "oven")
WORDS = st.text(st.characters(codec="utf-8", exclude_categories=["Cs"]), max_size=12)
POSITIONS = st.lists(st.integers(0, 4000).map("{} mm".format), min_size=3, max_size=3)


NAMED = st.sampled_from(NAMES)


def _fitting(name: str, at: list[str], follows: str | None) -> Put:
    fitting = {"name": name, "part": "a-part", "at": at}
    return Put(path=("fittings", name), value=fitting, follows=follows)


EDITS: st.SearchStrategy[Edit] = st.one_of(
    st.builds(lambda name, at: Put(path=("fittings", name, "at"), value=at), NAMED, POSITIONS),
    st.builds(lambda name, note: Put(path=("fittings", name, "note"), value=note), NAMED, WORDS),
    st.builds(_fitting, NAMED, POSITIONS, st.sampled_from([None, "", *NAMES])),
    st.builds(lambda name: Take(path=("fittings", name)), NAMED),
    st.builds(lambda words: Put(path=("customer",), value=words), WORDS),
    st.builds(
        lambda number: Put(path=("brief", "stay", "drive"), value=f"{number} h/day"),
        st.integers(0, 9),
    ),
    st.builds(
        lambda number: Put(path=("finishes", 0, "area"), value=f"{number} m2"), st.integers(1, 9)
    ),
)
"""Edits as the bench makes them; some have no place in the sheet."""


DEEDS = st.lists(
    st.tuples(
        st.sampled_from(["ann", "bob"]), st.one_of(EDITS, st.sampled_from(["undo", "redo"]))
    ),
    max_size=12,
)


def _do(store: Store, build: int, actor: str, deed: Edit | str, base: int | None = None) -> bool:
    """Do one thing; say whether it was kept."""
    try:
        if deed == "undo":
            answer = store.undo(build, actor=actor, at=NOW)
        elif deed == "redo":
            answer = store.redo(build, actor=actor, at=NOW)
        else:
            assert not isinstance(deed, str)
            base = store.build(build).head if base is None else base
            answer = store.append(build, base, (deed,), actor=actor, at=NOW)
    except (CannotEdit, NothingToUndo):
        return False
    return isinstance(answer, Appended)


def _replayed(store: Store, build: int) -> str:
    """Return what all events lead to from nothing, without any snapshot."""
    text = ""
    with store._database.reading() as connection:
        event = tables.event.c
        kept = connection.execute(
            select(event.splices).where(event.build_id == build).order_by(event.number)
        ).scalars()
        for each in kept:
            text = spliced(text, from_text(each))
    return text


@settings(max_examples=60)
@given(DEEDS)
def test_what_is_read_is_what_a_replay_of_all_events_gives(
    tmp_path_factory: object, deeds: list[tuple[str, Edit | str]]
) -> None:
    folder = tmp_path_factory.mktemp("law")  # type: ignore[attr-defined]
    with open_store(folder / "bench.db") as store:
        build = store.create_build(SHEET, actor="ann", at=NOW).build_id
        for actor, deed in deeds:
            _do(store, build, actor, deed)
            assert store.sheet(build).text == _replayed(store, build)
        for number in range(1, store.build(build).head + 1):
            assert store.sheet(build, number).event == number


@settings(max_examples=60)
@given(st.lists(st.one_of(EDITS, st.sampled_from(["undo", "redo"])), max_size=14))
def test_one_persons_undo_and_redo_are_a_row_of_states(
    tmp_path_factory: object, deeds: list[Edit | str]
) -> None:
    """Held against the plain model: a list of states and a place in it."""
    folder = tmp_path_factory.mktemp("law")  # type: ignore[attr-defined]
    with open_store(folder / "bench.db") as store:
        build = store.create_build(SHEET, actor="ann", at=NOW).build_id
        states, place = [SHEET], 0
        for deed in deeds:
            head = store.build(build).head
            kept = _do(store, build, "ann", deed)
            if deed == "undo":
                assert kept is (place > 0)
                place -= kept
            elif deed == "redo":
                assert kept is (place < len(states) - 1)
                place += kept
            elif kept and store.build(build).head > head:
                states = [*states[: place + 1], store.sheet(build).text]
                place += 1
            assert store.sheet(build).text == states[place]


@given(st.lists(EDITS, max_size=6), st.lists(EDITS, max_size=6))
def test_a_merge_has_all_of_both_or_is_asked_about(mine: list[Edit], theirs: list[Edit]) -> None:
    my_text, their_text = _as_far_as_possible(mine), _as_far_as_possible(theirs)
    both = merged(SHEET, my_text, their_text)
    if not isinstance(both, str):
        return
    old, new = parsed(SHEET), parsed(both)
    found = {(each.path, str(each.after)) for each in differences(old, new)}
    for text in (my_text, their_text):
        wanted = {(each.path, str(each.after)) for each in differences(old, parsed(text))}
        assert wanted <= found
    assert len(found) <= len(differences(old, parsed(my_text))) + len(
        differences(old, parsed(their_text))
    )


@given(st.lists(EDITS, max_size=8))
def test_edits_add_no_comment_and_move_none(listed: list[Edit]) -> None:
    after = comments(_as_far_as_possible(listed))
    left = iter(comments(SHEET))
    assert all(each in left for each in after)


@given(st.text(max_size=60), st.text(max_size=60))
def test_a_splice_leads_there_and_back(before: str, after: str) -> None:
    there = from_text(as_text(splices(before, after)))
    assert spliced(before, there) == after
    assert spliced(after, reversed_splices(there)) == before


@settings(max_examples=30)
@given(st.lists(EDITS, max_size=6))
def test_what_is_exported_is_imported_the_same(
    tmp_path_factory: object, listed: list[Edit]
) -> None:
    folder = tmp_path_factory.mktemp("law")  # type: ignore[attr-defined]
    with open_store(folder / "bench.db") as store:
        build = store.create_build(_as_far_as_possible(listed), actor="ann", at=NOW).build_id
        sheet = store.export_toml(build, actor="ann", at=NOW)
        file = folder / "build.toml"
        file.write_bytes(sheet.text.encode())
        text = file.read_bytes().decode()
        assert store.create_build(text, actor="ann", at=NOW).digest == sheet.digest
        answer = store.import_toml(build, text, actor="ann", at=NOW)
        assert isinstance(answer, Appended)
        assert answer.sheet == sheet


def _as_far_as_possible(listed: list[Edit]) -> str:
    text = SHEET
    for each in listed:
        try:
            text = edited(text, [each])
        except CannotEdit:
            continue
    return text


def test_a_whole_sheet_is_an_edit_like_any_other(store: Store) -> None:
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    answer = store.append(build, 1, WholeSheet(text=SHEET + "# end\n"), actor="ann", at=NOW)
    assert isinstance(answer, Appended)
    assert answer.differences == ()
    assert answer.sheet.text.endswith("# end\n")
