"""Backups: one file, read again before it counts, and put back without losing what was there."""

import sqlite3
from pathlib import Path

import pytest

from coachwright.errors import (
    CannotWrite,
    StoreBusy,
    StoreDamaged,
    StoreSchema,
    StoreUnreachable,
)
from coachwright.store import schema
from coachwright.store.copying import check_backup
from coachwright.store.engine import Database
from coachwright.store.opening import back_up, open_store, put_back
from coachwright.store.records import Role
from coachwright.store.store import Store
from tests.store.conftest import KINDS, new_database
from tests.store.sheets import NOW, SHEET, galley_to, kept, later

PDF = b"%PDF-1.7\n" + bytes(range(256)) * 4


def _filled(store: Store) -> int:
    """Put something of every kind into a store."""
    build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    store.append(build, 1, galley_to(1300), actor="ann", at=later(1))
    store.name_revision(build, 2, "A", actor="ann", at=later(2), note="as ordered")
    store.attach(build, PDF, name="order.pdf", actor="ann", at=later(3))
    store.people.create("ann", Role.OWNER, "long enough", salt=bytes(16), actor="", at=NOW)
    store.people.begin_session("ann", "t" * 43, at=NOW, expires_at=later(60))
    return build


def _everything(store: Store, build: int) -> tuple[object, ...]:
    return (
        store.builds(),
        [store.sheet(build, number) for number in (1, 2)],
        store.history(build),
        store.revisions(build),
        store.attachments(build),
        store.attachment(build, store.attachments(build)[0].digest),
        store.people.accounts(),
        store.people.tokens(at=NOW),
        store.audit(),
        store.reach(build, actor="ann"),
    )


def test_a_backup_brings_everything_back(address: str, tmp_path: Path) -> None:
    with open_store(address) as store:
        build = _filled(store)
        before = _everything(store, build)
        back_up(address, tmp_path / "copy.db")  # while the store is open
        store.append(build, 2, galley_to(1400), actor="bob", at=NOW)
    old = put_back(address, tmp_path / "copy.db", tmp_path / "kept")
    with open_store(address) as store:
        assert _everything(store, build) == before
        assert kept(store.undo(build, actor="ann", at=NOW)).sheet.text == SHEET
        assert store.create_build(SHEET, actor="ann", at=NOW).build_id == build + 1
    assert old is not None
    with open_store(old) as store:
        assert '"1400 mm"' in store.sheet(build).text


def test_a_backup_is_one_file_that_holds_a_whole_store(address: str, tmp_path: Path) -> None:
    with open_store(address) as store:
        build = _filled(store)
        back_up(address, tmp_path / "copies" / "copy.db")
        assert [path.name for path in (tmp_path / "copies").iterdir()] == ["copy.db"]
        with open_store(tmp_path / "copies" / "copy.db") as copy:
            assert _everything(copy, build) == _everything(store, build)


def test_a_backup_of_a_server_can_be_put_back_into_a_file_and_the_other_way(
    address: str, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    other = str(tmp_path / "other.db")
    if not address.startswith("postgresql") and "postgresql" in KINDS:
        other = new_database(request.getfixturevalue("server"))
    with open_store(address) as store:
        build = _filled(store)
        before = _everything(store, build)
    back_up(address, tmp_path / "copy.db")
    assert put_back(other, tmp_path / "copy.db", tmp_path) is None
    with open_store(other) as store:
        assert _everything(store, build) == before


def test_a_backup_is_never_written_over(address: str, tmp_path: Path) -> None:
    with open_store(address) as store:
        _filled(store)
    back_up(address, tmp_path / "copy.db")
    before = (tmp_path / "copy.db").read_bytes()
    with pytest.raises(CannotWrite, match="is there already; name another file"):
        back_up(address, tmp_path / "copy.db")
    assert (tmp_path / "copy.db").read_bytes() == before


def test_an_empty_store_has_no_backup(tmp_path: Path) -> None:
    sqlite3.connect(tmp_path / "bench.db").close()
    (tmp_path / "bench.db").touch()
    with pytest.raises(StoreUnreachable, match="holds nothing yet"):
        back_up(tmp_path / "bench.db", tmp_path / "copy.db")
    assert not (tmp_path / "copy.db").exists()


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"no database at all, but long enough to be one" * 40, "not a store of builds"),
        (b"", "is empty; name a file that backup has written"),
        (None, "is not there; name a file that backup has written"),
    ],
)
def test_what_is_no_backup_replaces_nothing(
    address: str, tmp_path: Path, content: bytes | None, sentence: str
) -> None:
    with open_store(address) as store:
        build = _filled(store)
        before = _everything(store, build)
    if content is not None:
        (tmp_path / "copy.db").write_bytes(content)
    with pytest.raises((StoreDamaged, StoreUnreachable), match=sentence):
        put_back(address, tmp_path / "copy.db", tmp_path / "kept")
    with open_store(address) as store:
        assert _everything(store, build) == before
    assert not (tmp_path / "kept").exists()


def test_a_damaged_backup_replaces_nothing(address: str, tmp_path: Path) -> None:
    with open_store(address) as store:
        build = _filled(store)
    back_up(address, tmp_path / "copy.db")
    content = bytearray((tmp_path / "copy.db").read_bytes())
    content[8_192:16_384] = bytes(8_192)
    (tmp_path / "copy.db").write_bytes(bytes(content))
    with pytest.raises(StoreDamaged, match="is damaged"):
        put_back(address, tmp_path / "copy.db", tmp_path)
    with open_store(address) as store:
        assert '"1300 mm"' in store.sheet(build).text


def test_a_newer_backup_replaces_nothing(address: str, tmp_path: Path) -> None:
    with open_store(address) as store:
        build = _filled(store)
    back_up(address, tmp_path / "copy.db")
    plain = sqlite3.connect(tmp_path / "copy.db")
    with plain:
        plain.execute("UPDATE alembic_version SET version_num = '9999'")
    plain.close()
    with pytest.raises(StoreSchema, match="update Coachwright"):
        put_back(address, tmp_path / "copy.db", tmp_path)
    with open_store(address) as store:
        assert '"1300 mm"' in store.sheet(build).text


def test_an_older_backup_is_brought_up_to_date_while_it_is_put_back(
    address: str, tmp_path: Path
) -> None:
    old = Database(tmp_path / "old.db")
    with old.writing() as connection:
        schema.upgrade(connection, "0001")
    old.close()
    before = (tmp_path / "old.db").read_bytes()
    put_back(address, tmp_path / "old.db", tmp_path)
    with open_store(address) as store:
        assert store.builds() == ()
        _filled(store)
    assert check_backup(tmp_path / "old.db") == "0001"
    assert (tmp_path / "old.db").read_bytes() == before


def test_a_store_that_is_open_elsewhere_is_not_replaced(tmp_path: Path) -> None:
    with open_store(tmp_path / "bench.db") as store:
        build = _filled(store)
        back_up(tmp_path / "bench.db", tmp_path / "copy.db")
        store.append(build, 2, galley_to(1400), actor="bob", at=NOW)
        with pytest.raises(StoreBusy, match=r"open in another program.*stop the bench"):
            put_back(tmp_path / "bench.db", tmp_path / "copy.db", tmp_path)
        assert '"1400 mm"' in store.sheet(build).text


def test_a_damaged_store_is_kept_byte_for_byte_with_its_log_and_replaced(tmp_path: Path) -> None:
    file = tmp_path / "bench.db"
    with open_store(file) as store:
        build = _filled(store)
        back_up(file, tmp_path / "copy.db")
    damaged = b"SQLite format 3\x00" + b"\xff" * 40_000
    file.write_bytes(damaged)
    file.with_name("bench.db-wal").write_bytes(b"a log that belongs to the damaged file")
    old = put_back(file, tmp_path / "copy.db", tmp_path)
    assert old is not None
    assert old.read_bytes() == damaged
    assert old.with_name(f"{old.name}-wal").read_bytes().startswith(b"a log")
    with open_store(file) as store:
        assert '"1300 mm"' in store.sheet(build).text


def test_what_was_replaced_before_is_kept_too(tmp_path: Path) -> None:
    file = tmp_path / "bench.db"
    with open_store(file) as store:
        _filled(store)
    back_up(file, tmp_path / "copy.db")
    names = [put_back(file, tmp_path / "copy.db", tmp_path) for _ in range(2)]
    assert [each.name for each in names if each] == ["bench.db.replaced-1", "bench.db.replaced-2"]


def test_a_backup_without_a_folder_for_it_says_so(tmp_path: Path) -> None:
    with open_store(tmp_path / "bench.db") as store:
        _filled(store)
    (tmp_path / "taken").write_text("a file")
    with pytest.raises(CannotWrite, match=r"cannot be written: .*nothing was changed"):
        back_up(tmp_path / "bench.db", tmp_path / "taken" / "copy.db")
