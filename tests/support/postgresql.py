"""A PostgreSQL server of the tests' own, where PostgreSQL is installed."""

import os
import pwd
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path

_DEBIAN = Path("/usr/lib/postgresql")
_ACCOUNT = "postgres"
"""A server refuses to run as root; Debian's package brings this account."""


@cache
def programs() -> Path | None:
    """Return the folder of the newest server's programs; None where there is none to run."""
    if os.geteuid() == 0 and not _has_account():
        return None
    debian = sorted(_DEBIAN.glob("*/bin/initdb"), key=lambda path: int(path.parts[-3]))
    on_path = shutil.which("initdb")
    found = [*([Path(on_path)] if on_path else []), *debian]
    return found[-1].parent if found else None


def version() -> str:
    """Return what the server calls itself."""
    folder = programs()
    assert folder is not None
    said = subprocess.run(
        [folder / "postgres", "--version"], check=True, capture_output=True, text=True
    )
    return said.stdout.strip()


@contextmanager
def server() -> Iterator[str]:
    """Run a server that listens on a socket in a folder of its own; give an address without name.

    What it writes need not survive the machine, so it does not wait for the disk.
    """
    folder = programs()
    assert folder is not None
    home = Path(tempfile.mkdtemp(prefix="cw-pg-"))
    account = _ACCOUNT if os.geteuid() == 0 else None
    if account is not None:
        shutil.chown(home, account)
    data = home / "data"
    made: list[Path | str] = [folder / "initdb", "-D", data, "-U", "shop", "-A", "trust"]
    _run([*made, "-E", "UTF8", "-N"], account)
    settings = f"-k {home} -c listen_addresses= -c fsync=off -c max_connections=40"
    control: list[Path | str] = [folder / "pg_ctl", "-D", data, "-w", "-l", home / "log"]
    _run([*control, "-o", settings, "start"], account)
    try:
        yield f"postgresql://shop@/NAME?host={home}"
    finally:
        _run([*control, "-m", "immediate", "stop"], account)
        shutil.rmtree(home, ignore_errors=True)


def _run(command: list[Path | str], account: str | None) -> None:
    subprocess.run(
        command,
        check=True,
        user=account,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        cwd="/",
        env={"PATH": os.environ.get("PATH", ""), "LC_ALL": "C.UTF-8"},
    )


def _has_account() -> bool:
    try:
        pwd.getpwnam(_ACCOUNT)
    except KeyError:
        return False
    return True
