"""The form of the database: made by steps; older is brought up to date, newer left alone."""

import sqlite3
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, text

from coachwright.errors import StoreDamaged, StoreSchema, StoreUnreachable
from coachwright.store import schema
from coachwright.store.copying import check_backup
from coachwright.store.engine import Database
from coachwright.store.opening import open_store
from coachwright.store.store import Store
from coachwright.store.tables import metadata
from tests.store.sheets import NOW, SHEET


def _old(address: str) -> None:
    """Make a store of the first form, with a build in it."""
    database = Database(address)
    with database.writing() as connection:
        schema.upgrade(connection, "0001")
        connection.execute(
            text(
                "INSERT INTO build (name, customer, created_at, created_by, changed_at, head) "
                "VALUES ('Old', '', '2026-01-01T00:00:00.000000Z', 'ann', "
                "'2026-01-01T00:00:00.000000Z', 0)"
            )
        )
    database.close()


def _version(address: str) -> str | None:
    database = Database(address)
    try:
        with database.reading() as connection:
            return schema.version_of(connection, database.shown)
    finally:
        database.close()


def test_the_forms_that_are_named_are_those_of_the_steps() -> None:
    steps = ScriptDirectory(str(Path(schema.__file__).parent / "migrations")).walk_revisions()
    assert tuple(step.revision for step in steps)[::-1] == schema.VERSIONS


def test_the_steps_lead_to_the_tables_that_are_declared(store: Store) -> None:
    """Alembic itself compares the database with the declaration."""
    with store._database.reading() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, metadata) == []


def test_an_older_store_is_kept_as_it_was_and_brought_up_to_date(
    address: str, tmp_path: Path
) -> None:
    _old(address)
    with open_store(address, backups=tmp_path / "kept") as store:
        assert store.builds()[0].name == "Old"
        store.create_build(SHEET, actor="ann", at=NOW)
        store.note(actor="ann", deed="seen", about="", at=NOW)
    assert _version(address) == schema.NEWEST
    (backup,) = (tmp_path / "kept").iterdir()
    assert backup.name.endswith(".form-0001-1")
    assert check_backup(backup) == "0001"


def test_the_backup_of_an_older_file_is_beside_it(tmp_path: Path) -> None:
    _old(str(tmp_path / "bench.db"))
    open_store(tmp_path / "bench.db").close()
    assert (tmp_path / "bench.db.form-0001-1").is_file()


def test_an_older_server_without_a_folder_for_its_backup_is_left_alone(address: str) -> None:
    _old(address)
    if address.startswith("postgresql"):
        with pytest.raises(StoreUnreachable, match="name a folder for its backup"):
            open_store(address)
        assert _version(address) == "0001"


def test_a_step_that_fails_leaves_the_store_as_it_was(
    address: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _old(address)
    whole = schema.upgrade

    def halfway(connection: Connection, to: str = schema.NEWEST) -> None:
        whole(connection, to)
        if to == schema.NEWEST:
            connection.execute(text("SELECT * FROM nothing"))

    monkeypatch.setattr(schema, "upgrade", halfway)
    with pytest.raises(Exception, match="nothing was changed"):
        open_store(address, backups=tmp_path / "kept")
    assert _version(address) == "0001"
    monkeypatch.undo()
    with open_store(address, backups=tmp_path / "kept") as store:
        assert store.builds()[0].name == "Old"


def test_a_newer_store_is_left_alone(address: str) -> None:
    with open_store(address) as store:
        build = store.create_build(SHEET, actor="ann", at=NOW).build_id
        with store._database.writing() as connection:
            connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    with pytest.raises(StoreSchema, match=r"newer Coachwright \(form 9999.*update Coachwright"):
        open_store(address)
    database = Database(address)
    with database.writing() as connection:
        connection.execute(
            text("UPDATE alembic_version SET version_num = :now"), {"now": schema.NEWEST}
        )
    database.close()
    with open_store(address) as store:
        assert store.sheet(build).text == SHEET


def test_no_migration_begins_where_its_backup_has_no_room(tmp_path: Path) -> None:
    _old(str(tmp_path / "bench.db"))
    (tmp_path / "taken").write_text("a file where the folder should be")
    with pytest.raises(Exception, match="nothing was changed"):
        open_store(tmp_path / "bench.db", backups=tmp_path / "taken")
    assert _version(str(tmp_path / "bench.db")) == "0001"


def test_a_file_is_marked_as_ours(tmp_path: Path) -> None:
    open_store(tmp_path / "bench.db").close()
    plain = sqlite3.connect(tmp_path / "bench.db")
    plain.execute("PRAGMA application_id = 7")
    plain.close()
    with pytest.raises(StoreDamaged, match="a database of something else"):
        open_store(tmp_path / "bench.db")


def test_a_log_is_kept_ahead_and_the_disk_is_waited_for(tmp_path: Path) -> None:
    with open_store(tmp_path / "bench.db") as store, store._database.reading() as connection:
        said = {
            name: connection.exec_driver_sql(f"PRAGMA {name}").scalar()
            for name in ("journal_mode", "synchronous", "foreign_keys", "busy_timeout")
        }
    assert said == {
        "journal_mode": "wal",
        "synchronous": 2,
        "foreign_keys": 1,
        "busy_timeout": 5000,
    }


def test_a_row_that_belongs_to_nothing_is_found(tmp_path: Path) -> None:
    open_store(tmp_path / "bench.db").close()
    plain = sqlite3.connect(tmp_path / "bench.db")
    with plain:
        plain.execute("INSERT INTO attached VALUES (7, 'x', '', '', '', '')")
    plain.close()
    with pytest.raises(StoreDamaged, match="a row of attached belongs to nothing"):
        open_store(tmp_path / "bench.db")


def test_the_folder_of_a_new_store_is_for_its_owner_alone(tmp_path: Path) -> None:
    open_store(tmp_path / "data" / "bench.db").close()
    assert (tmp_path / "data").stat().st_mode & 0o077 == 0
