"""Which form the database has, and bringing an older one up to date with a backup before."""

from pathlib import Path
from typing import Any

from sqlalchemy import Connection, inspect, text

from coachwright.errors import StoreDamaged, StoreSchema
from coachwright.store.engine import APPLICATION_ID, Database, keep_log_ahead, lock_out_others

VERSIONS = ("0001", "0002", "0003", "0004")
"""Every form there was, the oldest first; a test holds them against the migrations."""

NEWEST = VERSIONS[-1]

_VERSION_TABLE = "alembic_version"


def version_of(connection: Connection, shown: str) -> str | None:
    """Return the form of a database; None where it is empty.

    Raises
    ------
    StoreDamaged
        Where it belongs to something else.
    StoreSchema
        Where it is newer than this program.
    """
    tables = inspect(connection).get_table_names()
    if not tables:
        return None
    if _VERSION_TABLE not in tables or not _is_ours(connection):
        raise StoreDamaged(
            f"the store {shown}: this is a database of something else; "
            "nothing was changed, name another"
        )
    found = connection.execute(text(f"SELECT version_num FROM {_VERSION_TABLE}")).scalar()  # noqa: S608
    if found not in VERSIONS:
        raise StoreSchema(
            f"the store {shown} was written by a newer Coachwright (form {found}, "
            f"this one knows up to {NEWEST}); nothing was changed, update Coachwright"
        )
    return str(found)


def upgrade(connection: Connection, to: str = NEWEST) -> None:
    """Bring a database to a newer form, within the transaction that is open.

    Parameters
    ----------
    connection
        Of a transaction that writes.
    to
        Which form.
    """
    from alembic.config import Config  # noqa: PLC0415  # only a new or an older store needs it
    from alembic.runtime.environment import EnvironmentContext  # noqa: PLC0415
    from alembic.script import ScriptDirectory  # noqa: PLC0415

    steps = ScriptDirectory(str(Path(__file__).parent / "migrations"))

    def wanted(found: Any, _context: Any) -> Any:
        return steps._upgrade_revs(to, found)  # noqa: SLF001  # as Alembic's own manual does

    with EnvironmentContext(Config(), steps, fn=wanted) as environment:
        environment.configure(connection=connection, transactional_ddl=True)
        environment.run_migrations()
    if connection.dialect.name == "sqlite":
        connection.exec_driver_sql(f"PRAGMA application_id = {APPLICATION_ID}")


def bring_up_to_date(database: Database) -> None:
    """Make a new database, or bring an older one to the newest form; all of it or nothing.

    Raises
    ------
    StoreError
        Where it cannot be done; the database is then as it was.
    """
    keep_log_ahead(database)
    with database.writing() as connection:
        lock_out_others(connection)
        if version_of(connection, database.shown) != NEWEST:
            upgrade(connection)


def check_integrity(connection: Connection, shown: str) -> None:
    """Let SQLite read its whole file and see whether it hangs together; a server does so itself.

    Raises
    ------
    StoreDamaged
        Where it does not.
    """
    if connection.dialect.name != "sqlite":
        return
    said = connection.exec_driver_sql("PRAGMA integrity_check(1)").scalar()
    stray = connection.exec_driver_sql("PRAGMA foreign_key_check").first()
    if said != "ok" or stray is not None:
        what = f"a row of {stray[0]} belongs to nothing" if stray is not None else said
        raise StoreDamaged(
            f"the store {shown} is damaged ({what}); keep the file as it is and restore the last "
            "backup with: coachwright restore FILE"
        )


def _is_ours(connection: Connection) -> bool:
    if connection.dialect.name != "sqlite":
        return inspect(connection).has_table("build")
    return connection.exec_driver_sql("PRAGMA application_id").scalar() == APPLICATION_ID
