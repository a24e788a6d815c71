"""Who may use the bench: accounts, signing in, sessions and tokens of other programs."""

from collections import OrderedDict
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from coachwright.actions.benching import Bench
from coachwright.errors import NotAllowed, UnknownName
from coachwright.store.attaching import shown_name
from coachwright.store.auditing import REFUSED
from coachwright.store.records import Account, AuditEntry, Purpose, Role, TokenEntry

SESSION = timedelta(hours=12)
"""A working day; then somebody signs in again."""
TOKEN = timedelta(days=365)
FREE_TRIES = 5
"""So many wrong passwords in a row cost no waiting."""
FIRST_WAIT = timedelta(seconds=30)
LONGEST_WAIT = timedelta(minutes=15)
_FORGOTTEN_AFTER = timedelta(hours=1)
_MOST_REMEMBERED = 10_000


@dataclass(frozen=True, kw_only=True, slots=True)
class Who:
    """Somebody at the bench, or a program of the shop.

    Attributes
    ----------
    name
        Of the account; empty where the bench has no accounts and everybody is the one user.
    place
        From where they reach the bench; empty where that is not known.
    """

    name: str
    role: Role
    place: str = field(default="", compare=False)

    @property
    def may_edit(self) -> bool:
        """Whether builds and the catalogue may be changed."""
        return self.role is not Role.FLOOR

    @property
    def may_manage(self) -> bool:
        """Whether accounts may be changed and the log be read."""
        return self.role is Role.OWNER


ALONE = Who(name="", role=Role.OWNER)
"""The one user of a bench without accounts."""


@dataclass(slots=True)
class _Tries:
    wrong: int
    last_at: datetime


@dataclass(slots=True)
class Tries:
    """Wrong passwords of late, by name and by where they come from."""

    _kept: OrderedDict[str, _Tries] = field(default_factory=OrderedDict)

    def wait(self, keys: tuple[str, ...], at: datetime) -> timedelta:
        """Return how long to wait before the next try; nothing where it may be made now."""
        return max((self._wait(key, at) for key in keys), default=timedelta())

    def failed(self, keys: tuple[str, ...], at: datetime) -> None:
        """Remember a wrong password."""
        for key in keys:
            there = self._kept.pop(key, None)
            wrong = 0 if there is None or at - there.last_at > _FORGOTTEN_AFTER else there.wrong
            self._kept[key] = _Tries(wrong=wrong + 1, last_at=at)
        while len(self._kept) > _MOST_REMEMBERED:
            self._kept.popitem(last=False)

    def succeeded(self, keys: tuple[str, ...]) -> None:
        """Forget the wrong ones before."""
        for key in keys:
            self._kept.pop(key, None)

    def _wait(self, key: str, at: datetime) -> timedelta:
        there = self._kept.get(key)
        if there is None or there.wrong < FREE_TRIES:
            return timedelta()
        doubled: timedelta = FIRST_WAIT * (1 << min(there.wrong - FREE_TRIES, 10))
        until = there.last_at + min(doubled, LONGEST_WAIT)
        return max(until - at, timedelta())


@dataclass(slots=True)
class Allowance:
    """How many bytes a request may still have."""

    left: int

    def take(self, count: int) -> bool:
        """Take some of it; say whether there was as much."""
        self.left -= count
        return self.left >= 0


def has_accounts(bench: Bench) -> bool:
    """Say whether anybody has an account that is open."""
    return any(each.closed_at is None for each in bench.store.people.accounts())


def has_owner(bench: Bench) -> bool:
    """Say whether somebody with a password may do everything."""
    return any(
        each.closed_at is None and each.has_password and each.role is Role.OWNER
        for each in bench.store.people.accounts()
    )


def sign_in(
    bench: Bench,
    tries: Tries,
    *,
    name: str,
    password: str,
    token: str,
    place: str,
    at: datetime,
) -> Who | timedelta | None:
    """Let somebody in by name and password.

    Parameters
    ----------
    bench
        Whose accounts.
    tries
        Wrong passwords of late.
    name, password
        As typed.
    token
        Chance; what the session is known by from then on.
    place
        Where the request comes from.
    at
        When.

    Returns
    -------
    Who or timedelta or None
        Who it is; how long to wait before the next try; or None for a wrong name or password,
        which are not told apart.
    """
    keys = (f"name:{name.strip().lower()[:80]}", f"place:{place}")
    waiting = tries.wait(keys, at)
    if waiting:
        return waiting
    account = bench.store.people.verified(name, password)
    if account is None:
        tries.failed(keys, at)
        told = shown_name(name.strip()) if name.strip() else "nobody"
        bench.store.log.note(actor=told, deed=REFUSED, about="", at=at, place=place)
        return None
    tries.succeeded(keys)
    bench.store.people.begin_session(
        account.name, token, at=at, expires_at=at + SESSION, label=place
    )
    return Who(name=account.name, role=account.role)


def sign_out(bench: Bench, token: str, who: Who, *, at: datetime) -> None:
    """End a session."""
    bench.store.people.end_session(token, actor=who.name, at=at)


def known_by(bench: Bench, token: str, *, program: bool, at: datetime) -> Who | None:
    """Return whose session or program's token this is; None where it is nobody's any more."""
    purpose = Purpose.PROGRAM if program else Purpose.SESSION
    account = bench.store.people.holder(token, at=at, purpose=purpose)
    return None if account is None else Who(name=account.name, role=account.role)


def accounts(bench: Bench) -> tuple[Account, ...]:
    """Return every account, closed ones too."""
    return bench.store.people.accounts()


def make_account(
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
        Where the name is taken, the password too short or too long, or the first is no owner.
    """
    if role is not Role.OWNER and not has_owner(bench):
        raise NotAllowed("the first account is an owner's; make that before the others")
    return bench.store.people.create(name, role, password, salt=salt, actor=actor, at=at)


def issue_token(
    bench: Bench, name: str, token: str, *, label: str, days: int, actor: str, at: datetime
) -> datetime:
    """Let a program act for an account, and return until when.

    Raises
    ------
    NotAllowed
        Where it should last no time, or longer than a year.
    UnknownName
        Where nobody has that name.
    """
    lasting = timedelta(days=days)
    if not timedelta() < lasting <= TOKEN:
        raise NotAllowed(f"a token lasts 1 to {TOKEN.days} days")
    until = at + lasting
    bench.store.people.issue_token(name, token, label=label, actor=actor, at=at, expires_at=until)
    return until


def tokens(bench: Bench, *, at: datetime) -> tuple[TokenEntry, ...]:
    """Return the sessions and tokens that are valid."""
    return bench.store.people.tokens(at=at)


def end_token(bench: Bench, beginning: str, *, actor: str, at: datetime) -> TokenEntry:
    """End the session or token whose digest begins so, and return which it was.

    Raises
    ------
    UnknownName
        Where none does, or more than one.
    """
    valid = tokens(bench, at=at)
    found = [each for each in valid if beginning and each.digest.startswith(beginning)]
    if len(found) != 1:
        raise UnknownName("token", beginning, [each.digest[:12] for each in valid])
    bench.store.people.end_token(found[0].digest, actor=actor, at=at)
    return found[0]


def log(bench: Bench, *, most: int) -> tuple[AuditEntry, ...]:
    """Return lines of what was done, the newest first."""
    return bench.store.audit(most=most)


def as_seen_by(bench: Bench, known: Callable[[], Who | None], place: str = "") -> Bench:
    """Return the bench as somebody may use it; looked at anew before every change.

    Parameters
    ----------
    bench
        The bench.
    known
        Says who it is; None from when the session has ended.
    place
        From where they use it, for the log.
    """

    def check_session() -> Who:
        who = known()
        if who is None:
            raise NotAllowed("your session has ended; sign in again")
        return who

    def check() -> None:
        who = check_session()
        if not who.may_edit:
            raise NotAllowed(f"{who.name} may read this and change nothing")

    def check_floor() -> None:
        check_session()

    def check_owner() -> None:
        who = check_session()
        if not who.may_manage:
            raise NotAllowed("accounts and the log are for owners")

    return bench.checked(check, floor=check_floor, owner=check_owner, place=place)
