"""What the processes do that the tests kill; each in a process of its own."""

from multiprocessing.connection import Connection
from pathlib import Path

from coachwright.store.edits import Put
from coachwright.store.opening import open_store, put_back
from coachwright.store.records import Appended
from tests.store.sheets import later


def note_of(event: int) -> tuple[Put, ...]:
    """Return the edit that leads to an event of a number: its note says so."""
    return (Put(path=("fittings", "galley", "note"), value=f"edit {event} " + "x" * (event % 90)),)


def write_without_end(address: str, build: int, say: Connection) -> None:
    """Append edits as fast as the store takes them; say the number of each that was kept."""
    store = open_store(address)
    event = store.build(build).head
    while True:
        answer = store.append(build, event, note_of(event + 1), actor="ann", at=later(event))
        assert isinstance(answer, Appended)
        event = answer.sheet.event
        say.send(event)
        if event % 10 == 0:
            store.name_revision(build, event, f"{event}", actor="ann", at=later(event))


def bring_up_to_date(address: str, say: Connection) -> None:
    """Open an older store."""
    say.send(0)
    open_store(address, backups=Path(address).parent).close()


def put_a_backup_back(address: str, file: str, say: Connection) -> None:
    """Put a backup in the place of a store."""
    say.send(0)
    put_back(address, Path(file), Path(address).parent)
