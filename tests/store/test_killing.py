"""Processes are killed in the midst of their work: nothing breaks, at most one edit is lost.

Killed by the signal that no process can catch or delay, at moments that chance draws, from a seed.
What the power cut adds to it (a disk that lies about having written) no test in one machine shows.
"""

import multiprocessing
import random
import signal
import threading
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest
from sqlalchemy import text

from coachwright.store import schema
from coachwright.store.engine import Database
from coachwright.store.opening import back_up, open_store
from tests.store import victims
from tests.store.sheets import NOW, SHEET, galley_to, kept

KILLS = {"sqlite": 200, "postgresql": 20}
SEED = 20_270_301
LONGEST_S = 0.08


@dataclass(frozen=True, kw_only=True, slots=True)
class Killed:
    """A process that was killed: the numbers it said, and whether it was at work still."""

    said: tuple[int, ...]
    at_work: bool


def _kill(target: Callable[..., None], arguments: tuple[object, ...], after_s: float) -> Killed:
    """Run something in a process; kill it some time after the first number that it says."""
    context = multiprocessing.get_context("forkserver")
    context.set_forkserver_preload(["tests.store.victims", "alembic.runtime.environment"])
    hear, say = context.Pipe(duplex=False)
    process = context.Process(target=target, args=(*arguments, say), daemon=True)
    process.start()
    say.close()
    said: list[int] = [hear.recv()]
    threading.Event().wait(after_s)
    process.kill()  # SIGKILL; nothing happens where it has ended by itself
    process.join()
    try:
        while True:
            said.append(hear.recv())
    except (EOFError, OSError):
        hear.close()
    return Killed(said=tuple(said), at_work=process.exitcode == -signal.SIGKILL)


@pytest.mark.slow
def test_a_writer_killed_at_any_moment_loses_at_most_the_edit_in_flight(
    address: str, record_property: Callable[[str, object], None]
) -> None:
    kind = "postgresql" if address.startswith("postgresql") else "sqlite"
    chance = random.Random(SEED)  # noqa: S311  # nothing is kept secret with it
    with open_store(address) as store:
        build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    in_flight = {"kept": 0, "lost": 0}
    for _ in range(KILLS[kind]):
        killed = _kill(victims.write_without_end, (address, build), chance.uniform(0, LONGEST_S))
        assert killed.at_work
        with open_store(address) as store:  # which checks that the file is whole
            head = store.build(build).head
            last = killed.said[-1]
            assert last <= head <= last + 1
            in_flight["kept" if head > last else "lost"] += 1
            assert f'note = "edit {head} ' in store.sheet(build).text
            assert store.history(build, most=1)[0].number == head
            kept(store.append(build, head, victims.note_of(head + 1), actor="bob", at=NOW))
    with open_store(address) as store:
        head = store.build(build).head
        assert [each.number for each in store.history(build)] == list(range(head, 0, -1))
        for event in range(2, head + 1, 7):
            assert f'note = "edit {event} ' in store.sheet(build, event).text
    record_property(
        "figure",
        f"store on {kind}: {KILLS[kind]} writers killed, {head} edits kept, damaged 0, "
        f"acknowledged edits lost 0, of the edits in flight {in_flight['kept']} kept",
    )


@pytest.mark.slow
def test_a_migration_killed_at_any_moment_is_made_whole_at_the_next_start(
    tmp_path: Path, record_property: Callable[[str, object], None]
) -> None:
    chance = random.Random(SEED)  # noqa: S311
    at_work = 0
    for number in range(25):
        address = tmp_path / f"{number}" / "bench.db"
        database = Database(address)
        database.make_folder()
        with database.writing() as connection:
            schema.upgrade(connection, "0001")
            connection.execute(
                text(
                    "INSERT INTO build (name, customer, created_at, created_by, changed_at, head) "
                    "VALUES ('Old', '', '2026-01-01T00:00:00.000000Z', 'ann', "
                    "'2026-01-01T00:00:00.000000Z', 0)"
                )
            )
        database.close()
        killed = _kill(victims.bring_up_to_date, (str(address),), chance.uniform(0, LONGEST_S))
        at_work += killed.at_work
        with open_store(address) as store:
            assert [each.name for each in store.builds()] == ["Old"]
            assert store.audit() == ()
    record_property(
        "figure", f"store on sqlite: 25 migrations, {at_work} killed midway, damaged 0"
    )


@pytest.mark.slow
def test_a_restore_killed_at_any_moment_leaves_the_old_store_or_the_new(
    tmp_path: Path, record_property: Callable[[str, object], None]
) -> None:
    chance = random.Random(SEED)  # noqa: S311
    address, backup = tmp_path / "bench.db", tmp_path / "copy.db"
    with open_store(address) as store:
        build = store.create_build(SHEET, actor="ann", at=NOW).build_id
    back_up(address, backup)
    at_work = 0
    for number in range(25):
        with open_store(address) as store:
            head = store.build(build).head
            new = kept(store.append(build, head, galley_to(1300 + number), actor="a", at=NOW))
        killed = _kill(
            victims.put_a_backup_back, (str(address), str(backup)), chance.uniform(0, 0.03)
        )
        at_work += killed.at_work
        with open_store(address) as store:
            assert store.sheet(build).text in (SHEET, new.sheet.text)
    record_property("figure", f"store on sqlite: 25 restores, {at_work} killed midway, damaged 0")
