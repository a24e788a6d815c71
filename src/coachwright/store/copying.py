"""Backups: always one SQLite file, whatever the store itself is kept in.

So a backup of a server can be read without one, and carried over to a shop that has none.
"""

import os
import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from sqlalchemy import Connection, MetaData, func, insert, select, text

from coachwright.errors import CannotWrite, StoreBusy, StoreDamaged, StoreUnreachable
from coachwright.store.engine import Database, lock_out_others
from coachwright.store.schema import (
    bring_up_to_date,
    check_integrity,
    upgrade,
    version_of,
)
from coachwright.store.trouble import told

_BESIDE = ("-wal", "-shm", "-journal")
"""What SQLite keeps beside a file."""

_ROWS = 20
"""Rows carried at once; an attachment is one row and may be large."""


def backup(database: Database, file: Path) -> None:
    """Write everything that is in a database to one file that was read again.

    Raises
    ------
    CannotWrite
        Where the file is there already, or cannot be written; then nothing is left of it.
    StoreError
        Where the database cannot be read, or holds nothing.
    """
    if file.exists():
        raise CannotWrite(f"{file} is there already; name another file")
    with database.reading() as connection:
        version = version_of(connection, database.shown)
    if version is None:
        raise StoreUnreachable(f"the store {database.shown} holds nothing yet")
    with _beside(file) as part:
        if database.file is None:
            _copy_to_file(database, part, version)
        else:
            _copy_file(database.file, part)
        check_backup(part)
        _in_place(part, file)


def check_backup(file: Path) -> str:
    """Return the form of a backup that is whole and that this program can read.

    Raises
    ------
    StoreUnreachable
        Where there is no such file.
    StoreDamaged
        Where it is not whole, or not a store.
    StoreSchema
        Where it is newer than this program.
    """
    if not file.is_file():
        raise StoreUnreachable(f"{file} is not there; name a file that backup has written")
    held = Database(file)
    try:
        with held.reading() as connection:
            version = version_of(connection, held.shown)
            check_integrity(connection, held.shown)
    finally:
        held.close()
    if version is None:
        raise StoreDamaged(f"{file} is empty; name a file that backup has written")
    return version


def restore(database: Database, file: Path, kept_in: Path) -> Path | None:
    """Put a backup in the place of what a database holds; return where the old content is kept.

    Parameters
    ----------
    database
        Where to; no other program may have it open.
    file
        What backup has written.
    kept_in
        Folder for the old content.

    Raises
    ------
    StoreError
        Where the backup is not whole, or the database is open elsewhere; it is then as it was.
    CannotWrite
        Where there is no room; the database is then as it was.
    """
    check_backup(file)
    database.make_folder()
    name = database.file.name if database.file else f"{database.engine.url.database}.db"
    kept = free_name(kept_in / f"{name}.replaced")
    if database.file is None:
        return _restore_on_server(database, file, kept)
    database.close()
    with _beside(database.file) as part:
        _copy_file(file, part)
        newer = Database(part)
        bring_up_to_date(newer)
        newer.close()
        _as_one_file(part)
        there = database.file.exists()
        if there:
            kept.parent.mkdir(parents=True, exist_ok=True)
            _keep(database.file, kept)
        _in_place(part, database.file)
    return kept if there else None


def free_name(wanted: Path) -> Path:
    """Return the first path of a row that is free: ``bench.db.replaced-1``, ``-2``, ..."""
    number = 1
    while True:
        path = wanted.with_name(f"{wanted.name}-{number}")
        if not path.exists():
            return path
        number += 1


@contextmanager
def _beside(file: Path) -> Iterator[Path]:
    """Give a path beside a file to write to first; it is gone afterwards, come what may."""
    part = file.with_name(f".{file.name}.part")
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        part.unlink(missing_ok=True)
        yield part
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise CannotWrite(
            f"{file} cannot be written: {reason}; nothing was changed, "
            "choose another folder or make room and try again"
        ) from error
    finally:
        for end in ("", *_BESIDE):
            with suppress(OSError):  # what went wrong before is what has to be said
                part.with_name(part.name + end).unlink(missing_ok=True)


def _in_place(part: Path, file: Path) -> None:
    """Give a finished file its name, and see it and its name safely on the disk."""
    with part.open("rb+") as written:
        os.fsync(written.fileno())
    part.replace(file)
    folder = os.open(file.parent, os.O_RDONLY)
    try:
        os.fsync(folder)
    finally:
        os.close(folder)


def _copy_file(file: Path, part: Path) -> None:
    """Copy an SQLite file as it is at one moment, although it may be in use."""
    with told(str(file)):
        source, target = sqlite3.connect(file), sqlite3.connect(part)
        try:
            source.backup(target)
        finally:
            source.close()
            target.close()
    _as_one_file(part)


def _as_one_file(part: Path) -> None:
    with told(str(part)):
        plain = sqlite3.connect(part)
        try:
            plain.execute("PRAGMA journal_mode = DELETE")
        finally:
            plain.close()


def _alone(file: Path) -> bool:
    """Close a file's log, which only the last program may do; False where it is damaged.

    Raises
    ------
    StoreBusy
        Where another program has it open.
    """
    try:
        with told(str(file)):
            plain = sqlite3.connect(file, timeout=0.2)
            try:
                plain.execute("PRAGMA journal_mode = DELETE")
            finally:
                plain.close()
    except StoreBusy as error:
        raise StoreBusy(
            f"the store {file} is open in another program; nothing was changed, "
            "stop the bench and try again"
        ) from error
    except StoreDamaged:
        return False
    return True


def _keep(file: Path, kept: Path) -> None:
    """Keep a file as one; a damaged one byte for byte with its log, in which someone may look.

    Raises
    ------
    StoreBusy
        Where another program has it open; then nothing is kept.
    """
    log, kept_log = (each.with_name(f"{each.name}-wal") for each in (file, kept))
    shutil.copyfile(file, kept)
    if log.exists():  # before anything opens the file, which may throw a log away
        shutil.copyfile(log, kept_log)
    try:
        whole = _alone(file)
    except StoreBusy:
        kept.unlink()
        kept_log.unlink(missing_ok=True)
        raise
    if whole:
        shutil.copyfile(file, kept)
        kept_log.unlink(missing_ok=True)
    for end in _BESIDE:  # a log beside another file than its own would be played into it
        file.with_name(file.name + end).unlink(missing_ok=True)


def _copy_to_file(database: Database, part: Path, version: str) -> None:
    target = Database(part)
    with database.reading() as source, target.writing() as made:
        source.execute(text("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ"))
        upgrade(made, version)
        _copy_rows(source, made)
    target.close()


def _restore_on_server(database: Database, file: Path, kept: Path) -> Path | None:
    with database.reading() as connection:
        there = version_of(connection, database.shown)
    if there is not None:
        backup(database, kept)
    bring_up_to_date(database)
    with _beside(kept) as part:
        _copy_file(file, part)
        newer = Database(part)
        bring_up_to_date(newer)
        with newer.reading() as source, database.writing() as target:
            lock_out_others(target)
            _empty(target)
            _copy_rows(source, target)
        newer.close()
    return kept if there is not None else None


def _empty(connection: Connection) -> None:
    for table in reversed(_tables(connection).sorted_tables):
        connection.execute(table.delete())


def _tables(connection: Connection) -> MetaData:
    found = MetaData()
    found.reflect(connection)
    found.remove(found.tables["alembic_version"])
    return found


def _copy_rows(source: Connection, target: Connection) -> None:
    """Carry all rows over, parents first, and let the numbers go on from the highest."""
    for table in _tables(source).sorted_tables:
        query = select(table).execution_options(yield_per=_ROWS)
        for some in source.execute(query).mappings().partitions():
            target.execute(insert(table), [dict(row) for row in some])
        if target.dialect.name == "postgresql" and "id" in table.c:
            highest = target.execute(select(func.max(table.c.id))).scalar()
            if highest is not None:
                sequence = func.pg_get_serial_sequence(table.name, "id")
                target.execute(select(func.setval(sequence, highest)))
