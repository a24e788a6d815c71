"""People and log, for owners: who may use the bench, and what was done, by whom, from where."""

import secrets
from collections.abc import Callable
from datetime import UTC, datetime
from functools import partial

from nicegui import run, ui

from coachwright.actions import staff
from coachwright.actions.staff import LogPage, Person
from coachwright.errors import CoachwrightError
from coachwright.store.people import LEAST_PASSWORD, LEAST_SALT
from coachwright.store.records import AuditEntry, Role
from coachwright.web.parts import grid, sheet
from coachwright.web.parts.asking import Asked, Field, ask
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.parts.styled import styled
from coachwright.web.state import Here, refuse

_ROLES = {
    Role.OWNER: "everything, also accounts and this log",
    Role.DESIGNER: "builds, catalogue, papers",
    Role.FLOOR: "reads, and ticks the shop floor's list",
}
_EVERYBODY = "everybody"
_HINT = f"{LEAST_PASSWORD} characters or more"


def create(here: Here) -> None:
    """Fill the page."""
    sheet.styled()
    styled("forms")
    with box("stack"):
        sheet.heading(
            "People and log",
            "Who may use the bench when it listens to other machines, and what was done.",
        )
        _Office(here)


class _Office:
    """The accounts and the log."""

    def __init__(self, here: Here) -> None:
        self.here = here
        with sheet.section("People"):
            self.people = box("stack")
            with box("rowline"):
                tool("Add somebody", self._add, classes="main").mark("add-person")
            for role, may in _ROLES.items():
                words(f"{role}: {may}", "quiet small", tag="p")
        with sheet.section("Log"):
            with box("rowline seek"):
                self.actor = ui.select([_EVERYBODY], label="Who", value=_EVERYBODY)
                self.actor.props("outlined dense options-dense").classes("state")
                self.actor.on_value_change(self.read).mark("log-who")
                self.holding = ui.input("What, about what or from where", on_change=self.read)
                self.holding.props("outlined dense clearable type=search debounce=300")
                self.holding.mark("log-words")
            self.count = words("", "quiet", tag="p").props("role=status")
            self.lines = box("stack")
            self.older = tool("Older lines", self._more).mark("older")
        self.page = LogPage(lines=(), before=None)
        self.draw()

    def draw(self) -> None:
        """Show everything as it is now."""
        bench = self.here.bench
        self.people.clear()
        with self.people:
            self._table(staff.people(bench, at=_now()))
        self.actor.set_options([_EVERYBODY, *staff.actors(bench)])
        self.read()

    def _table(self, found: tuple[Person, ...]) -> None:
        if not found:
            words(
                "There are no accounts: the bench listens to this machine alone, and whoever "
                "sits at it may do everything. Add an owner first; start the bench anew to let "
                "other machines in.",
                tag="p",
            )
            return
        grid.create(
            ("name", "role", "last seen (UTC)", "open sessions and tokens", "state", "change"),
            [self._row(each) for each in found],
            label="People",
        )

    def _row(self, person: Person) -> tuple[grid.Cell, ...]:
        account = person.account
        locked = account.closed_at is not None
        seen = f"{person.last_seen:%Y-%m-%d %H:%M}" if person.last_seen else "never"
        state = f"✗ locked since {account.closed_at:%Y-%m-%d}" if locked else "✓ may sign in"
        held = f"{person.sessions} and {person.tokens}"
        return (account.name, str(account.role), seen, held, state, partial(self._tools, person))

    def _tools(self, person: Person) -> None:
        name, locked = person.account.name, person.account.closed_at is not None
        with box("rowline"):
            role = tool("Role", partial(self._role, person), label=f"Another role for {name}")
            role.mark(f"role-{name}")
            word = tool(
                "Password", partial(self._password, name), label=f"A new password for {name}"
            )
            word.mark(f"password-{name}")
            if locked:
                opened = tool("Unlock", partial(self._unlock, name), label=f"Unlock {name}")
                opened.mark(f"unlock-{name}")
            else:
                shut = tool("Lock", partial(self._lock, name), label=f"Lock {name}")
                shut.mark(f"lock-{name}")

    def _add(self) -> None:
        first = not staff.people(self.here.bench, at=_now())
        role = Role.OWNER if first else Role.DESIGNER

        async def done(given: Asked) -> bool:
            if not self._same(given):
                return False
            return await self._do(
                lambda actor: staff.add(
                    self.here.bench,
                    given["name"],
                    Role(given["role"]),
                    given["password"],
                    salt=secrets.token_bytes(LEAST_SALT),
                    actor=actor,
                    at=_now(),
                )
            )

        fields = (
            Field(id="name", label="Name"),
            Field(id="role", label="Role", value=role, choices=tuple(Role)),
            *_password_fields(),
        )
        ask("Add somebody", fields, done)

    def _role(self, person: Person) -> None:
        name = person.account.name

        async def done(given: Asked) -> bool:
            role = Role(given["role"])
            return await self._do(
                lambda actor: staff.give_role(self.here.bench, name, role, actor=actor, at=_now())
            )

        field = Field(id="role", label="Role", value=person.account.role, choices=tuple(Role))
        ask(f"Another role for {name}", (field,), done, button="Give it")

    def _password(self, name: str) -> None:
        async def done(given: Asked) -> bool:
            if not self._same(given):
                return False
            return await self._do(
                lambda actor: staff.give_password(
                    self.here.bench,
                    name,
                    given["password"],
                    salt=secrets.token_bytes(LEAST_SALT),
                    actor=actor,
                    at=_now(),
                )
            )

        intro = "Every session and token of this account ends with it."
        ask(f"A new password for {name}", _password_fields(), done, button="Set it", intro=intro)

    def _lock(self, name: str) -> None:
        async def done(_: Asked) -> bool:
            return await self._do(
                lambda actor: staff.lock(self.here.bench, name, actor=actor, at=_now())
            )

        intro = "Its sessions and tokens end at once. What it did stays under its name."
        ask(f"Lock {name}", (), done, button="Lock", intro=intro)

    async def _unlock(self, name: str) -> None:
        await self._do(lambda actor: staff.unlock(self.here.bench, name, actor=actor, at=_now()))

    def _same(self, given: Asked) -> bool:
        if given["password"] != given["again"]:
            refuse(self.here, "the two passwords are not the same; type them again")
            return False
        return True

    async def _do(self, deed: Callable[[str], object]) -> bool:
        try:
            await run.io_bound(deed, self.here.actor)
            self.draw()
        except CoachwrightError as error:
            refuse(self.here, str(error))
            return False
        return True

    # ------------------------------------------------------------------------------------- the log

    def read(self) -> None:
        """Show the newest lines of the log that fit."""
        self.lines.clear()
        self._next(None)

    def _more(self) -> None:
        self._next(self.page.before)

    def _next(self, before: int | None) -> None:
        who = str(self.actor.value or _EVERYBODY)
        try:
            self.page = staff.log_page(
                self.here.bench,
                actor="" if who == _EVERYBODY else who,
                holding=str(self.holding.value or ""),
                before=before,
            )
        except CoachwrightError as error:
            refuse(self.here, str(error))
            return
        self.older.set_visibility(self.page.before is not None)
        self.count.set_text("" if self.page.lines else "Nothing of this kind was done.")
        if self.page.lines:
            with self.lines:
                grid.create(
                    ("when (UTC)", "who", "what", "about", "from where"),
                    [_line(each) for each in self.page.lines],
                    label="Log",
                )


def _line(each: AuditEntry) -> tuple[str, ...]:
    place = each.place or "the server itself"
    return (f"{each.at:%Y-%m-%d %H:%M:%S}", each.actor, each.deed, each.about or "—", place)


def _password_fields() -> tuple[Field, ...]:
    return (
        Field(id="password", label="Password", hint=_HINT, secret=True),
        Field(id="again", label="The same again", secret=True),
    )


def _now() -> datetime:
    return datetime.now(UTC)
