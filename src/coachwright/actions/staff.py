"""What an owner does with the people of the bench: accounts, roles, passwords, and the log."""

from dataclasses import dataclass
from datetime import datetime

from coachwright.actions.admitting import make_account
from coachwright.actions.benching import Bench
from coachwright.store.records import Account, AuditEntry, Purpose, Role

LINES = 100
"""Lines of the log that are shown at once."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Person:
    """One account, as an owner sees it.

    Attributes
    ----------
    last_seen
        When they last signed in, edited or ticked; None where they never did.
    sessions, tokens
        How many of each are open now.
    """

    account: Account
    last_seen: datetime | None
    sessions: int
    tokens: int


@dataclass(frozen=True, kw_only=True, slots=True)
class LogPage:
    """Some lines of the log, the newest first.

    Attributes
    ----------
    before
        Number to ask for the next lines with; None where these are the last.
    """

    lines: tuple[AuditEntry, ...]
    before: int | None


def people(bench: Bench, *, at: datetime) -> tuple[Person, ...]:
    """Return every account, those that are locked too.

    Raises
    ------
    NotAllowed
        Where no owner asks.
    """
    bench.owner()
    seen = bench.store.people.last_seen()
    valid = bench.store.people.tokens(at=at)
    return tuple(
        Person(
            account=account,
            last_seen=seen.get(account.name),
            sessions=sum(
                each.account == account.name and each.purpose is Purpose.SESSION for each in valid
            ),
            tokens=sum(
                each.account == account.name and each.purpose is Purpose.PROGRAM for each in valid
            ),
        )
        for account in bench.store.people.accounts()
    )


def add(
    bench: Bench,
    name: str,
    role: Role,
    password: str,
    *,
    salt: bytes,
    actor: str,
    at: datetime,
) -> Account:
    """Make an account; the first is an owner's.

    Raises
    ------
    NotAllowed
        Where no owner asks, the name is taken, or the password too short or too long.
    """
    bench.owner()
    return make_account(bench, name, role, password, salt=salt, actor=actor, at=at)


def give_role(bench: Bench, name: str, role: Role, *, actor: str, at: datetime) -> Account:
    """Give an account another role.

    Raises
    ------
    NotAllowed
        Where no owner asks, or nobody would be left who may do everything.
    """
    return bench.store.people.set_role(name, role, actor=actor, at=at)


def give_password(
    bench: Bench, name: str, password: str, *, salt: bytes, actor: str, at: datetime
) -> None:
    """Give an account another password; its sessions and tokens end.

    Raises
    ------
    NotAllowed
        Where no owner asks, or the password is too short or too long.
    """
    bench.store.people.set_password(name, password, salt=salt, actor=actor, at=at)


def lock(bench: Bench, name: str, *, actor: str, at: datetime) -> None:
    """Lock an account: its sessions and tokens end, what it did stays under its name.

    Raises
    ------
    NotAllowed
        Where no owner asks, or nobody would be left who may do everything.
    """
    bench.store.people.close(name, actor=actor, at=at)


def unlock(bench: Bench, name: str, *, actor: str, at: datetime) -> None:
    """Let a locked account be used again; it signs in with the password that it had.

    Raises
    ------
    NotAllowed
        Where no owner asks.
    """
    bench.store.people.reopen(name, actor=actor, at=at)


def log_page(
    bench: Bench, *, actor: str = "", holding: str = "", before: int | None = None
) -> LogPage:
    """Return some lines of the log.

    Parameters
    ----------
    bench
        Whose log.
    actor
        Only what this person did.
    holding
        Only lines with these words in what was done, about what, or from where.
    before
        Only lines before that number.

    Raises
    ------
    NotAllowed
        Where no owner asks.
    """
    bench.owner()
    found = bench.store.log.lines(
        most=LINES + 1, before=before, actor=actor, holding=holding.strip()
    )
    lines = found[:LINES]
    return LogPage(lines=lines, before=lines[-1].number if len(found) > LINES else None)


def actors(bench: Bench) -> tuple[str, ...]:
    """Return everybody of whom the log tells.

    Raises
    ------
    NotAllowed
        Where no owner asks.
    """
    bench.owner()
    return bench.store.log.actors()
