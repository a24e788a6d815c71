"""Back up the store of builds, and put a backup in its place."""

from datetime import datetime
from pathlib import Path

from coachwright.store.opening import back_up, open_store, put_back


def back_up_store(address: str | Path, file: Path) -> None:
    """Write everything that the store holds to one file; the bench may be in use.

    Raises
    ------
    CannotWrite
        Where the file is there already, or cannot be written.
    StoreError
        Where the store cannot be read, or holds nothing.
    """
    back_up(address, file)


def restore_store(
    address: str | Path, file: Path, *, kept_in: Path, actor: str, at: datetime
) -> Path | None:
    """Put a backup in the place of the store, and write that into the log.

    Parameters
    ----------
    address
        The store.
    file
        What was backed up.
    kept_in
        Folder for what the store held before.
    actor, at
        Who does it, and when.

    Returns
    -------
    Path
        Where the old content is; None where there was none.

    Raises
    ------
    StoreError
        Where the file is no whole backup, or the store is in use; the store is then as it was.
    CannotWrite
        Where there is no room; the store is then as it was.
    """
    kept = put_back(address, file, kept_in)
    with open_store(address, backups=kept_in) as store:
        store.note(actor=actor, deed="backup put back", about=file.name, at=at)
    return kept
