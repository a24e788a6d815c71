"""Accounts with roles and passwords, and tokens that expire.

A password is kept as an Argon2id hash, a token as its SHA-256: neither can be read back.  Salts
and tokens are chance, and come from the shell.
"""

import hashlib
from datetime import datetime
from functools import cache

import argon2
from argon2.exceptions import InvalidHashError, VerificationError
from sqlalchemy import ColumnElement, Connection, delete, func, insert, select, update

from coachwright.errors import NotAllowed, UnknownName
from coachwright.store import tables
from coachwright.store.records import Account, Purpose, Role, TokenEntry

LEAST_PASSWORD = 10
MOST_PASSWORD = 200
"""Characters; a longer one would only keep the machine busy."""
LEAST_SALT = 16
"""Bytes."""
MOST_NAME = 80

_HASHER = argon2.PasswordHasher()
"""The library's own cost, which follows RFC 9106 for machines with little memory."""

_account, _token = tables.account.c, tables.token.c


def accounts(connection: Connection) -> tuple[Account, ...]:
    """Return every account, closed ones too, by name."""
    rows = connection.execute(select(tables.account).order_by(_account.name))
    return tuple(
        Account(
            account_id=row.id,
            name=row.name,
            role=Role(row.role),
            created_at=row.created_at,
            closed_at=row.closed_at,
            has_password=row.password_hash is not None,
        )
        for row in rows
    )


def account(connection: Connection, name: str) -> Account:
    """Return one account.

    Raises
    ------
    UnknownName
        Where nobody has that name.
    """
    listed = accounts(connection)
    for each in listed:
        if each.name == name:
            return each
    raise UnknownName("account", name, [each.name for each in listed])


def create(connection: Connection, name: str, role: Role, at: datetime) -> Account:
    """Make an account, which cannot be used before it has a password.

    Raises
    ------
    NotAllowed
        Where the name is taken, or none.
    """
    plain = name.strip()
    if not 0 < len(plain) <= MOST_NAME or not plain.isprintable():
        raise NotAllowed(f"an account needs a name of 1 to {MOST_NAME} characters")
    taken = select(_account.id).where(func.lower(_account.name) == plain.lower())
    if connection.execute(taken).first() is not None:
        raise NotAllowed(f"there is an account {plain!r} already")
    connection.execute(insert(tables.account).values(name=plain, role=role.value, created_at=at))
    return account(connection, plain)


def set_password(connection: Connection, name: str, password: str, salt: bytes) -> None:
    """Give an account a password; every token of it ends.

    Parameters
    ----------
    connection
        Of an open transaction that writes.
    name
        The account.
    password
        In plain words; only its hash is kept.
    salt
        Chance, at least 16 bytes.

    Raises
    ------
    NotAllowed
        Where the password is too short or too long, or the salt is too short.
    UnknownName
        Where nobody has that name.
    """
    found = account(connection, name)
    if not LEAST_PASSWORD <= len(password) <= MOST_PASSWORD:
        raise NotAllowed(
            f"a password has {LEAST_PASSWORD} to {MOST_PASSWORD} characters; choose another"
        )
    if len(salt) < LEAST_SALT:
        raise NotAllowed(f"a salt has at least {LEAST_SALT} bytes of chance")
    hashed = _HASHER.hash(password, salt=salt)
    _change(connection, found, password_hash=hashed)
    end_tokens(connection, found)


def set_role(connection: Connection, name: str, role: Role) -> Account:
    """Give an account another role.

    Raises
    ------
    NotAllowed
        Where nobody would be left who may do everything.
    UnknownName
        Where nobody has that name.
    """
    found = account(connection, name)
    if role is not Role.OWNER:
        _leave_an_owner(connection, found)
    _change(connection, found, role=role.value)
    return account(connection, name)


def close(connection: Connection, name: str, at: datetime) -> Account:
    """Close an account: its tokens end, and what it did stays under its name.

    Raises
    ------
    NotAllowed
        Where nobody would be left who may do everything.
    UnknownName
        Where nobody has that name.
    """
    found = account(connection, name)
    _leave_an_owner(connection, found)
    _change(connection, found, closed_at=at)
    end_tokens(connection, found)
    return account(connection, name)


def reopen(connection: Connection, name: str) -> Account:
    """Open a closed account again.

    Raises
    ------
    UnknownName
        Where nobody has that name.
    """
    _change(connection, account(connection, name), closed_at=None)
    return account(connection, name)


def hash_of(connection: Connection, name: str) -> str | None:
    """Return the password's hash of an open account; None where there is none."""
    found: str | None = connection.execute(
        select(_account.password_hash).where(
            _account.name == name.strip(), _account.closed_at.is_(None)
        )
    ).scalar()
    return found


def matches(kept: str | None, password: str) -> bool:
    """Say whether a password has a hash; takes as long where there is no hash.

    It holds no connection, for it keeps the machine busy for some hundredths of a second.
    """
    try:
        _HASHER.verify(kept or _nobody(), password[: MOST_PASSWORD + 1])
    except (VerificationError, InvalidHashError):
        return False
    return kept is not None


@cache
def _nobody() -> str:
    """Return a hash to verify for a name that nobody has, which takes as long as a real one."""
    return _HASHER.hash("nobody", salt=bytes(LEAST_SALT))


def issue(
    connection: Connection,
    name: str,
    token: str,
    *,
    purpose: Purpose,
    label: str,
    at: datetime,
    expires_at: datetime,
) -> None:
    """Keep a token by which an account is known until it expires.

    Raises
    ------
    UnknownName
        Where nobody has that name.
    NotAllowed
        Where the account is closed.
    """
    found = account(connection, name)
    if found.closed_at is not None:
        raise NotAllowed(f"the account {name!r} is closed")
    connection.execute(delete(tables.token).where(_token.expires_at <= at))
    connection.execute(
        insert(tables.token).values(
            digest=token_digest(token),
            account_id=found.account_id,
            purpose=purpose.value,
            label=label,
            created_at=at,
            expires_at=expires_at,
        )
    )


def holder(connection: Connection, token: str, purpose: Purpose, at: datetime) -> Account | None:
    """Return whose token it is; None where it is nobody's, or has expired."""
    row = connection.execute(
        select(_account.name)
        .join(tables.token, _token.account_id == _account.id)
        .where(
            _token.digest == token_digest(token),
            _token.purpose == purpose.value,
            _token.expires_at > at,
            _account.closed_at.is_(None),
        )
    ).first()
    return None if row is None else account(connection, row.name)


def tokens(connection: Connection, at: datetime) -> tuple[TokenEntry, ...]:
    """Return the tokens that are valid, the newest first."""
    rows = connection.execute(
        select(tables.token, _account.name)
        .join(tables.account, _account.id == _token.account_id)
        .where(_token.expires_at > at)
        .order_by(_token.created_at.desc(), _token.digest)
    )
    return tuple(
        TokenEntry(
            digest=row.digest,
            account=row.name,
            purpose=Purpose(row.purpose),
            label=row.label,
            created_at=row.created_at,
            expires_at=row.expires_at,
        )
        for row in rows
    )


def end_token(connection: Connection, digest: str) -> None:
    """End one token, told by its digest."""
    connection.execute(delete(tables.token).where(_token.digest == digest))


def end_tokens(connection: Connection, of: Account) -> None:
    """End every token of an account."""
    connection.execute(delete(tables.token).where(_token.account_id == of.account_id))


def token_digest(token: str) -> str:
    """Return what is kept of a token."""
    return hashlib.sha256(token.encode()).hexdigest()


def _change(connection: Connection, of: Account, **values: object) -> None:
    mine: ColumnElement[bool] = _account.id == of.account_id
    connection.execute(update(tables.account).where(mine).values(**values))


def _leave_an_owner(connection: Connection, leaving: Account) -> None:
    others = [
        each
        for each in accounts(connection)
        if each.role is Role.OWNER and each.closed_at is None and each.name != leaving.name
    ]
    if leaving.role is Role.OWNER and leaving.closed_at is None and not others:
        raise NotAllowed(f"{leaving.name} is the only owner; make somebody else an owner before")
