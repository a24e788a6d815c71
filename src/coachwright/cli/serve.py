"""Open the bench in the browser."""

import os
import secrets
from pathlib import Path
from typing import Annotated

import typer

from coachwright.cli.choices import catalogue, data_folder, database

PORT = 8710
LOOPBACK = "127.0.0.1"
ALONE = frozenset({LOOPBACK, "::1", "localhost"})
STORAGE_VARIABLE = "NICEGUI_STORAGE_PATH"
"""Where the library keeps what each person has chosen; it reads this when it is imported."""
_OWNER_ONLY = 0o600


def serve(
    context: typer.Context,
    *,
    port: Annotated[int, typer.Option(min=1, max=65535, help="Where it listens.")] = PORT,
    listen: Annotated[
        str, typer.Option(metavar="ADDRESS", help="Address of this machine to listen at.")
    ] = LOOPBACK,
    no_open: Annotated[bool, typer.Option("--no-open", help="Open no browser.")] = False,
) -> None:
    """Open the bench in the browser, at an address that only this machine reaches.

    Example: coachwright serve

    Example: coachwright serve --port 8900 --no-open
    """
    folder = data_folder()
    os.environ.setdefault(STORAGE_VARIABLE, str(folder / "bench"))
    from coachwright.actions.benching import set_up
    from coachwright.errors import CallError
    from coachwright.web.app import start

    if listen not in ALONE:
        raise CallError(
            f"the bench has no people with passwords yet, so it listens to this machine alone; "
            f"leave --listen {listen} out"
        )
    bench = set_up(database(), catalogue(context))
    typer.echo(f"The bench is open at http://{listen}:{port}/ (end it with Ctrl-C)")
    start(bench, host=listen, port=port, secret=_secret(folder), show=not no_open)


def _secret(folder: Path) -> str:
    """Return what signs the cookie that tells browsers apart; made once, readable by its owner."""
    path = folder / "bench" / "secret"
    path.parent.mkdir(parents=True, exist_ok=True)
    if not path.is_file():
        handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, _OWNER_ONLY)
        with os.fdopen(handle, "w", encoding="utf-8") as file:
            file.write(secrets.token_urlsafe(32))
    return path.read_text(encoding="utf-8")
