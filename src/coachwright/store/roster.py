"""The people of the store: accounts, passwords, sessions, tokens; each step is logged."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime

from sqlalchemy import Connection

from coachwright.store import auditing, people
from coachwright.store.engine import Database
from coachwright.store.records import Account, Purpose, Role, TokenEntry


class Roster:
    """Who may use the bench; `Store.people` is one."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def accounts(self) -> tuple[Account, ...]:
        """Return every account, closed ones too, by name."""
        with self._database.reading() as connection:
            return people.accounts(connection)

    def create(
        self, name: str, role: Role, password: str, *, salt: bytes, actor: str, at: datetime
    ) -> Account:
        """Make an account with a password; `salt` is at least 16 bytes of chance.

        Raises
        ------
        NotAllowed
            Where the name is taken or empty, or the password too short or too long.
        """
        with self._noted(actor, f"account made: {role}", name, at) as connection:
            made = people.create(connection, name, role, at)
            people.set_password(connection, made.name, password, salt)
            return people.account(connection, made.name)

    def set_password(
        self, name: str, password: str, *, salt: bytes, actor: str, at: datetime
    ) -> None:
        """Give an account another password; its sessions and tokens end.

        Raises
        ------
        NotAllowed
            Where the password is too short or too long.
        UnknownName
            Where nobody has that name.
        """
        with self._noted(actor, "password set", name, at) as connection:
            people.set_password(connection, name, password, salt)

    def set_role(self, name: str, role: Role, *, actor: str, at: datetime) -> Account:
        """Give an account another role.

        Raises
        ------
        NotAllowed
            Where nobody would be left who may do everything.
        """
        with self._noted(actor, f"role set: {role}", name, at) as connection:
            return people.set_role(connection, name, role)

    def close(self, name: str, *, actor: str, at: datetime) -> Account:
        """Close an account; its sessions and tokens end, what it did stays.

        Raises
        ------
        NotAllowed
            Where nobody would be left who may do everything.
        """
        with self._noted(actor, "account closed", name, at) as connection:
            return people.close(connection, name, at)

    def reopen(self, name: str, *, actor: str, at: datetime) -> Account:
        """Open a closed account again."""
        with self._noted(actor, "account opened again", name, at) as connection:
            return people.reopen(connection, name)

    def verified(self, name: str, password: str) -> Account | None:
        """Return the account whose name and password these are; None where they are not."""
        with self._database.reading() as connection:
            kept = people.hash_of(connection, name)
        if not people.matches(kept, password):
            return None
        with self._database.reading() as connection:
            return people.account(connection, name.strip())

    def last_seen(self) -> dict[str, datetime]:
        """Return when each person last signed in, edited or ticked anything."""
        with self._database.reading() as connection:
            return auditing.last_seen(connection)

    def begin_session(
        self, name: str, token: str, *, at: datetime, expires_at: datetime, label: str = ""
    ) -> None:
        """Let a person be known by a token, which comes from chance, until it expires."""
        with self._noted(name, "session begun", "", at, label) as connection:
            people.issue(
                connection,
                name,
                token,
                purpose=Purpose.SESSION,
                label=label,
                at=at,
                expires_at=expires_at,
            )

    def issue_token(
        self,
        name: str,
        token: str,
        *,
        label: str,
        actor: str,
        at: datetime,
        expires_at: datetime,
    ) -> None:
        """Let another program act for an account by a token until it expires."""
        with self._noted(actor, "token issued", f"{name}: {label}", at) as connection:
            people.issue(
                connection,
                name,
                token,
                purpose=Purpose.PROGRAM,
                label=label,
                at=at,
                expires_at=expires_at,
            )

    def holder(
        self, token: str, *, at: datetime, purpose: Purpose = Purpose.SESSION
    ) -> Account | None:
        """Return whose token it is; None where it is nobody's, has expired or was ended."""
        with self._database.reading() as connection:
            return people.holder(connection, token, purpose, at)

    def tokens(self, *, at: datetime) -> tuple[TokenEntry, ...]:
        """Return the sessions and tokens that are valid, the newest first."""
        with self._database.reading() as connection:
            return people.tokens(connection, at)

    def end_session(self, token: str, *, actor: str, at: datetime) -> None:
        """End the session of a token."""
        self.end_token(people.token_digest(token), actor=actor, at=at)

    def end_token(self, digest: str, *, actor: str, at: datetime) -> None:
        """End a session or token, told by the digest that `tokens` shows."""
        with self._noted(actor, "token ended", digest[:12], at) as connection:
            people.end_token(connection, digest)

    @contextmanager
    def _noted(
        self, actor: str, deed: str, about: str, at: datetime, place: str | None = None
    ) -> Iterator[Connection]:
        with self._database.writing() as connection:
            yield connection
            auditing.note(connection, actor=actor, deed=deed, about=about, at=at, place=place)
