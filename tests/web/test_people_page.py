"""People and log: what an owner does with accounts, and that nobody else sees them."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from fastapi import FastAPI
from nicegui.testing import User

from coachwright.actions import staff
from coachwright.actions.admitting import (
    Tries,
    Who,
    as_seen_by,
    issue_token,
    known_by,
    make_account,
    sign_in,
)
from coachwright.actions.benching import Bench, set_up
from coachwright.catalogue.loading import Catalogue
from coachwright.errors import NotAllowed
from coachwright.store.records import Purpose, Role
from coachwright.web.door.rules import House
from coachwright.web.door.seating import open_door
from tests.web.benches import NOW, lay
from tests.web.calling import Program

PASSWORD = "correct horse battery"  # noqa: S105  # of accounts in tests
SALT = b"s" * 16
PLACE = "192.0.2.7"


@pytest.fixture
def staffed(tmp_path: Path) -> Iterator[Bench]:
    """Return a bench with an owner, a designer and somebody of the floor."""
    made = set_up(tmp_path / "staffed.db", Catalogue())
    with made.store:
        for name, role in (("olga", Role.OWNER), ("dora", Role.DESIGNER), ("finn", Role.FLOOR)):
            make_account(made, name, role, PASSWORD, salt=SALT, actor="test", at=NOW)
        yield made


def _as(bench: Bench, name: str, role: Role) -> Bench:
    return as_seen_by(bench, lambda: Who(name=name, role=role), PLACE)


def _session(bench: Bench, name: str, token: str) -> None:
    sign_in(bench, Tries(), name=name, password=PASSWORD, token=token, place=PLACE, at=NOW)


def test_an_owner_sees_everybody_with_role_and_when_they_were_last_here(staffed: Bench) -> None:
    later = NOW + timedelta(hours=1)
    _session(staffed, "dora", "d" * 40)
    issue_token(staffed, "dora", "k" * 40, label="stock", days=1, actor="olga", at=later)
    found = {each.account.name: each for each in staff.people(staffed, at=later)}
    assert [found[name].account.role for name in ("olga", "dora", "finn")] == [
        Role.OWNER,
        Role.DESIGNER,
        Role.FLOOR,
    ]
    assert found["dora"].last_seen == NOW
    assert (found["dora"].sessions, found["dora"].tokens) == (1, 1)
    assert found["olga"].last_seen == later
    assert found["finn"].last_seen is None


def test_a_refused_sign_in_does_not_count_as_being_here(staffed: Bench) -> None:
    sign_in(staffed, Tries(), name="finn", password="wrong", token="x", place=PLACE, at=NOW)  # noqa: S106
    found = {each.account.name: each for each in staff.people(staffed, at=NOW)}
    assert found["finn"].last_seen is None


def test_a_lock_ends_sessions_and_an_unlock_lets_in_again(staffed: Bench) -> None:
    _session(staffed, "dora", "d" * 40)
    mine = _as(staffed, "olga", Role.OWNER)
    staff.lock(mine, "dora", actor="olga", at=NOW)
    assert known_by(staffed, "d" * 40, program=False, at=NOW) is None
    assert staffed.store.people.verified("dora", PASSWORD) is None
    staff.unlock(mine, "dora", actor="olga", at=NOW)
    assert staffed.store.people.verified("dora", PASSWORD) is not None
    assert staffed.store.people.holder("d" * 40, at=NOW, purpose=Purpose.SESSION) is None


def test_a_role_and_a_password_are_given(staffed: Bench) -> None:
    mine = _as(staffed, "olga", Role.OWNER)
    assert staff.give_role(mine, "finn", Role.DESIGNER, actor="olga", at=NOW).role == "designer"
    other = PASSWORD[::-1]
    staff.give_password(mine, "finn", other, salt=SALT, actor="olga", at=NOW)
    assert staffed.store.people.verified("finn", PASSWORD) is None
    assert staffed.store.people.verified("finn", other) is not None
    line = staffed.store.audit(most=1)[0]
    assert (line.actor, line.deed, line.about, line.place) == (
        "olga",
        "password set",
        "finn",
        PLACE,
    )


def test_the_last_owner_stays(staffed: Bench) -> None:
    mine = _as(staffed, "olga", Role.OWNER)
    with pytest.raises(NotAllowed, match="only owner"):
        staff.lock(mine, "olga", actor="olga", at=NOW)
    with pytest.raises(NotAllowed, match="only owner"):
        staff.give_role(mine, "olga", Role.FLOOR, actor="olga", at=NOW)


@pytest.mark.parametrize("role", [Role.DESIGNER, Role.FLOOR])
def test_nobody_but_an_owner_reads_or_changes_people(staffed: Bench, role: Role) -> None:
    mine = _as(staffed, "dora", role)
    before = staffed.store.people.accounts(), staffed.store.audit(most=1000)
    for read in (lambda: staff.people(mine, at=NOW), lambda: staff.actors(mine)):
        with pytest.raises(NotAllowed, match="for owners"):
            read()
    with pytest.raises(NotAllowed, match="for owners"):
        staff.log_page(mine)
    with pytest.raises(NotAllowed, match="for owners"):
        staff.add(mine, "eve", Role.OWNER, PASSWORD, salt=SALT, actor="dora", at=NOW)
    with pytest.raises(NotAllowed, match="for owners"):
        staff.give_role(mine, "dora", Role.OWNER, actor="dora", at=NOW)
    with pytest.raises(NotAllowed, match="for owners"):
        staff.give_password(mine, "olga", PASSWORD, salt=SALT, actor="dora", at=NOW)
    with pytest.raises(NotAllowed, match="for owners"):
        staff.lock(mine, "finn", actor="dora", at=NOW)
    with pytest.raises(NotAllowed, match="for owners"):
        staff.unlock(mine, "finn", actor="dora", at=NOW)
    assert (staffed.store.people.accounts(), staffed.store.audit(most=1000)) == before


def test_the_log_is_filtered_and_read_on(staffed: Bench) -> None:
    for number in range(staff.LINES + 5):
        staffed.store.log.note(
            actor="dora",
            deed="paper printed",
            about=f"build 100% {number}",
            at=NOW,
            place=PLACE,
        )
    first = staff.log_page(staffed, actor="dora")
    assert (len(first.lines), first.before is not None) == (staff.LINES, True)
    rest = staff.log_page(staffed, actor="dora", before=first.before)
    assert (len(rest.lines), rest.before) == (5, None)
    assert {each.number for each in first.lines}.isdisjoint(each.number for each in rest.lines)
    assert len(staff.log_page(staffed, holding="100% 104").lines) == 1
    assert len(staff.log_page(staffed, holding="ACCOUNT MADE").lines) == 3
    assert staff.log_page(staffed, holding=PLACE, actor="test").lines == ()
    assert (
        staff.log_page(staffed, holding="%").lines == staff.log_page(staffed, actor="dora").lines
    )
    assert staff.actors(staffed) == ("dora", "test")


def test_what_a_program_does_is_logged_with_from_where(staffed: Bench) -> None:
    lay(staffed)
    now = datetime.now(UTC)
    issue_token(staffed, "finn", "k" * 40, label="scanner", days=1, actor="olga", at=now)
    app = FastAPI()
    open_door(app, staffed, House(guarded=True))
    program = Program(app=app, headers={"Authorization": f"Bearer {'k' * 40}"})
    made = program.post("builds/1/ticks", json={"thing": "galley", "step": "here"})
    assert made.status_code == 201
    assert staffed.store.audit(most=1)[0].place == "127.0.0.1"


# ------------------------------------------------------------------------------------- the page


async def test_the_one_user_adds_the_first_owner(user: User, bench: Bench) -> None:
    await user.open("/people")
    await user.should_see("There are no accounts")
    user.find(marker="add-person").click()
    user.find("Name").type("olga")
    user.find("Password").type(PASSWORD)
    user.find("The same again").type(PASSWORD)
    user.find(marker="do-it").click()
    await user.should_see("✓ may sign in", retries=100)
    await user.should_see("account made: owner")
    assert bench.store.people.verified("olga", PASSWORD) is not None


async def test_two_passwords_that_differ_are_refused(user: User, bench: Bench) -> None:
    await user.open("/people")
    user.find(marker="add-person").click()
    user.find("Name").type("olga")
    user.find("Password").type(PASSWORD)
    user.find("The same again").type(PASSWORD + "!")
    user.find(marker="do-it").click()
    await user.should_see("not the same")
    assert bench.store.people.accounts() == ()


async def test_a_person_is_locked_and_unlocked_on_the_page(user: User, bench: Bench) -> None:
    for name, role in (("olga", Role.OWNER), ("finn", Role.FLOOR)):
        make_account(bench, name, role, PASSWORD, salt=SALT, actor="test", at=NOW)
    await user.open("/people")
    user.find(marker="lock-finn").click()
    user.find(marker="do-it").click()
    await user.should_see("✗ locked since", retries=50)
    user.find(marker="unlock-finn").click()
    await user.should_not_see("✗ locked since")
    user.find(marker="log-words").type("account closed")
    await user.should_see("account closed")
    await user.should_not_see("account made: floor")
