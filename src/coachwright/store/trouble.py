"""What a database complains about, in sentences that say what to do."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import DBAPIError, SQLAlchemyError

from coachwright.errors import (
    StoreBusy,
    StoreDamaged,
    StoreError,
    StoreFull,
    StoreReadOnly,
    StoreUnreachable,
)

_SQLITE: dict[int, tuple[type[StoreError], str]] = {
    sqlite3.SQLITE_FULL: (
        StoreFull,
        "the disk is full; nothing was changed, make room and try again",
    ),
    sqlite3.SQLITE_IOERR: (
        StoreFull,
        (
            "the disk did not take or give what was asked for; nothing was changed, "
            "see whether it is full or failing and try again"
        ),
    ),
    sqlite3.SQLITE_READONLY: (
        StoreReadOnly,
        (
            "it may only be read; nothing was changed, "
            "give write access to the file and to its folder, or choose another place"
        ),
    ),
    sqlite3.SQLITE_BUSY: (
        StoreBusy,
        (
            "another program holds it; nothing was changed, "
            "close the other program or wait, and try again"
        ),
    ),
    sqlite3.SQLITE_LOCKED: (
        StoreBusy,
        "another program holds it; nothing was changed, try again",
    ),
    sqlite3.SQLITE_CANTOPEN: (
        StoreUnreachable,
        "it cannot be opened; see whether its folder is there and may be written to",
    ),
    sqlite3.SQLITE_CORRUPT: (
        StoreDamaged,
        (
            "it is damaged; keep the file as it is and restore the last backup "
            "with: coachwright restore FILE"
        ),
    ),
    sqlite3.SQLITE_NOTADB: (
        StoreDamaged,
        "it is not a store of builds; nothing was changed, name another file",
    ),
}
"""The primary code that SQLite gives → what it is and what to do."""

_POSTGRESQL: dict[str, tuple[type[StoreError], str]] = {
    "53100": _SQLITE[sqlite3.SQLITE_FULL],
    "25006": (
        StoreReadOnly,
        "the server only lets it be read; nothing was changed, ask who runs the server",
    ),
    "42501": (
        StoreReadOnly,
        "the server's account may not do that; nothing was changed, ask who runs the server",
    ),
    "55P03": _SQLITE[sqlite3.SQLITE_BUSY],
    "40P01": _SQLITE[sqlite3.SQLITE_LOCKED],
    "40001": _SQLITE[sqlite3.SQLITE_LOCKED],
    "57014": _SQLITE[sqlite3.SQLITE_LOCKED],
    "XX001": _SQLITE[sqlite3.SQLITE_CORRUPT],
    "XX002": _SQLITE[sqlite3.SQLITE_CORRUPT],
}
"""The state that PostgreSQL gives → what it is and what to do."""

_GONE = "the server cannot be reached; nothing was changed, see whether it runs and lets you in"


@contextmanager
def told(shown: str) -> Iterator[None]:
    """Turn a database's complaint into an error of the store.

    Parameters
    ----------
    shown
        The store's address as a person may see it.

    Raises
    ------
    StoreError
        Of the kind that it is.
    """
    try:
        yield
    except DBAPIError as error:
        raise _told(shown, error.orig or error) from error
    except sqlite3.Error as error:
        raise _told(shown, error) from error
    except SQLAlchemyError as error:
        raise StoreUnreachable(f"the store {shown}: {_first_line(error)}") from error


def _told(shown: str, error: BaseException) -> StoreError:
    kind, sentence = _kind(error)
    return kind(f"the store {shown}: {sentence}")


def _kind(error: BaseException) -> tuple[type[StoreError], str]:
    code = getattr(error, "sqlite_errorcode", None)
    if isinstance(code, int) and code & 0xFF in _SQLITE:  # the low byte is the primary code
        return _SQLITE[code & 0xFF]
    state = getattr(error, "sqlstate", None)
    if isinstance(state, str) and state in _POSTGRESQL:
        return _POSTGRESQL[state]
    if state is None and code is None and type(error).__module__.startswith("psycopg"):
        return StoreUnreachable, f"{_GONE} ({_last_line(error)})"
    if isinstance(state, str) and state.startswith(("08", "28", "3D", "57P")):
        return StoreUnreachable, f"{_GONE} ({_last_line(error)})"
    return StoreError, f"{_first_line(error)}; nothing was changed"


def _first_line(error: BaseException) -> str:
    return (str(error).strip() or type(error).__name__).splitlines()[0]


def _last_line(error: BaseException) -> str:
    return (str(error).strip() or type(error).__name__).splitlines()[-1].strip()
