"""The tables of the store, as the newest migration leaves them."""

from datetime import UTC, datetime
from typing import Any

from sqlalchemy import (
    BigInteger,
    Column,
    ForeignKey,
    ForeignKeyConstraint,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    String,
    Table,
    Text,
    UniqueConstraint,
)
from sqlalchemy.engine import Dialect
from sqlalchemy.types import TypeDecorator

_INSTANT = "%Y-%m-%dT%H:%M:%S.%fZ"


class Instant(TypeDecorator[datetime]):
    """A moment as text in UTC: the same in every database, and sorted as time is."""

    impl = String(27)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> str | None:  # noqa: ARG002
        """Return what is kept of a moment."""
        return None if value is None else instant_text(value)

    def process_result_value(self, value: Any, dialect: Dialect) -> datetime | None:  # noqa: ARG002
        """Return the moment of what is kept."""
        if value is None:
            return None
        return datetime.strptime(value, _INSTANT).replace(tzinfo=UTC)


def instant_text(moment: datetime) -> str:
    """Return a moment as it is kept.

    Examples
    --------
    >>> instant_text(datetime(2027, 4, 15, 9, tzinfo=UTC))
    '2027-04-15T09:00:00.000000Z'
    """
    return moment.astimezone(UTC).strftime(_INSTANT)


metadata = MetaData(
    naming_convention={
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s",
        "pk": "pk_%(table_name)s",
    }
)

build = Table(
    "build",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("name", Text, nullable=False),
    Column("customer", Text, nullable=False),
    Column("created_at", Instant, nullable=False),
    Column("created_by", Text, nullable=False),
    Column("changed_at", Instant, nullable=False),
    Column("archived_at", Instant),
    Column("head", Integer, nullable=False),
    Column("exported", Integer),
    sqlite_autoincrement=True,
)

event = Table(
    "event",
    metadata,
    Column("build_id", ForeignKey("build.id"), primary_key=True),
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("at", Instant, nullable=False),
    Column("actor", Text, nullable=False),
    Column("deed", String(16), nullable=False),
    Column("about", Integer),
    Column("splices", Text, nullable=False),
    Column("places", Text, nullable=False),
    Column("digest", String(64), nullable=False),
    Column("undo_next", Integer),
    Column("redo_next", Integer),
    Index(None, "build_id", "actor", "number"),
)

snapshot = Table(
    "snapshot",
    metadata,
    Column("build_id", Integer, primary_key=True, autoincrement=False),
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("text", Text, nullable=False),
    ForeignKeyConstraint(["build_id", "number"], ["event.build_id", "event.number"]),
)

revision = Table(
    "revision",
    metadata,
    Column("build_id", Integer, primary_key=True, autoincrement=False),
    Column("name", String(80), primary_key=True),
    Column("event", Integer, nullable=False),
    Column("at", Instant, nullable=False),
    Column("actor", Text, nullable=False),
    Column("note", Text, nullable=False),
    ForeignKeyConstraint(["build_id", "event"], ["event.build_id", "event.number"]),
)

account = Table(
    "account",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("name", String(80), nullable=False),
    Column("role", String(16), nullable=False),
    Column("password_hash", Text),
    Column("created_at", Instant, nullable=False),
    Column("closed_at", Instant),
    UniqueConstraint("name"),
    sqlite_autoincrement=True,
)

token = Table(
    "token",
    metadata,
    Column("digest", String(64), primary_key=True),
    Column("account_id", ForeignKey("account.id"), nullable=False),
    Column("purpose", String(16), nullable=False),
    Column("label", Text, nullable=False),
    Column("created_at", Instant, nullable=False),
    Column("expires_at", Instant, nullable=False),
    Index(None, "account_id"),
)

attachment = Table(
    "attachment",
    metadata,
    Column("digest", String(64), primary_key=True),
    Column("media_type", String(40), nullable=False),
    Column("size", BigInteger, nullable=False),
    Column("content", LargeBinary, nullable=False),
)

attached = Table(
    "attached",
    metadata,
    Column("build_id", ForeignKey("build.id"), primary_key=True),
    Column("digest", ForeignKey("attachment.digest"), primary_key=True),
    Column("name", Text, nullable=False),
    Column("note", Text, nullable=False),
    Column("at", Instant, nullable=False),
    Column("actor", Text, nullable=False),
)

tick = Table(
    "tick",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("build_id", ForeignKey("build.id"), nullable=False),
    Column("thing", Text, nullable=False),
    Column("step", String(16), nullable=False),
    Column("done", Integer, nullable=False),
    Column("part", Text, nullable=False),
    Column("place", Text, nullable=False),
    Column("at", Instant, nullable=False),
    Column("actor", Text, nullable=False),
    Index(None, "build_id"),
    sqlite_autoincrement=True,
)

audit = Table(
    "audit",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("at", Instant, nullable=False),
    Column("actor", Text, nullable=False),
    Column("deed", String(40), nullable=False),
    Column("about", Text, nullable=False),
    Column("place", Text, nullable=False, server_default=""),
    Index(None, "at"),
    sqlite_autoincrement=True,
)
