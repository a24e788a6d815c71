"""Back up the store of builds, and put a backup in its place."""

import datetime
import getpass
from pathlib import Path
from typing import Annotated

import typer

from coachwright.cli.choices import data_folder, database


def backup(
    *,
    file: Annotated[
        Path, typer.Argument(metavar="FILE", help="The file to write; it must not be there yet.")
    ],
) -> None:
    """Write every build, revision, attachment and account of the store to one file.

    The bench may be open meanwhile. The file is read again and checked before it counts.

    Example: coachwright backup builds-monday.db
    """
    from coachwright.actions.storing import back_up_store

    back_up_store(database(), file)
    typer.echo(f"{file} holds everything, checked. To put it back: coachwright restore {file}")


def restore(
    *,
    file: Annotated[Path, typer.Argument(metavar="FILE", help="A file that backup has written.")],
) -> None:
    """Put a backup in the place of the store; what the store holds now is kept beside it.

    The file is checked before anything is touched. Close the bench before.

    Example: coachwright restore builds-monday.db
    """
    from coachwright.actions.storing import restore_store

    kept = restore_store(
        database(),
        file,
        kept_in=data_folder(),
        actor=getpass.getuser(),
        at=datetime.datetime.now(datetime.UTC),
    )
    typer.echo(f"The store holds what was in {file}.")
    if kept is not None:
        typer.echo(f"What it held before is in {kept}; coachwright restore takes that file too.")
