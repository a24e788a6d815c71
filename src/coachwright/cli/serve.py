"""Open the bench in the browser."""

import contextlib
import os
import secrets
import signal
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from coachwright.actions.listening import USUAL, port_for
from coachwright.cli.choices import (
    almanac,
    catalogue,
    data_folder,
    database,
    shop_folder,
)

if TYPE_CHECKING:
    from coachwright.actions.benching import Bench
    from coachwright.web.door.rules import House

LOOPBACK = "127.0.0.1"
ALONE = frozenset({LOOPBACK, "::1", "localhost"})
EVERYWHERE = frozenset({"0.0.0.0", "::"})  # noqa: S104  # told apart, to ask for a name
STORAGE_VARIABLE = "NICEGUI_STORAGE_PATH"
"""Where the library keeps what each person has chosen; it reads this when it is imported."""
_OWNER_ONLY = 0o600
_PLAIN = (
    "Caution: without --certificate and --key, passwords cross the network in plain words; "
    "do that only behind something that speaks TLS"
)


def serve(
    context: typer.Context,
    *,
    port: Annotated[
        int | None,
        typer.Option(
            min=1,
            max=65535,
            help=f"Where it listens; {USUAL}, or the next free one, where not given.",
        ),
    ] = None,
    listen: Annotated[
        str, typer.Option(metavar="ADDRESS", help="Address of this machine to listen at.")
    ] = LOOPBACK,
    name: Annotated[
        list[str] | None,
        typer.Option(metavar="HOST", help="A name by which browsers call this machine."),
    ] = None,
    certificate: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Certificate for TLS, PEM.")
    ] = None,
    key: Annotated[Path | None, typer.Option(metavar="FILE", help="Its key, PEM.")] = None,
    no_open: Annotated[bool, typer.Option("--no-open", help="Open no browser.")] = False,
) -> None:
    """Open the bench in the browser, at an address that only this machine reaches.

    Other machines reach it at another address; then people sign in (coachwright people).

    Example: coachwright serve

    Example: coachwright serve --port 8900 --no-open

    Example: coachwright serve --listen 192.0.2.10 --certificate bench.pem --key bench.key
    """
    _outlive_visitors()
    folder = data_folder()
    os.environ.setdefault(STORAGE_VARIABLE, str(folder / "bench"))
    from coachwright.actions.benching import set_up
    from coachwright.actions.warming import make_ready
    from coachwright.web.announcing import when_it_answers
    from coachwright.web.app import start

    _check_files(certificate, key)
    with contextlib.suppress(OSError):  # else the bench shows the shipped catalogue alone
        shop_folder(context).mkdir(parents=True, exist_ok=True)
    where = catalogue(context)
    bench = set_up(database(), where, almanac(where))
    with bench.store:
        house = _house(bench, listen, tuple(name or ()), encrypted=certificate is not None)
        listening = _port(listen, port)
        shown = _address(listen, listening, encrypted=house.encrypted)
        if house.guarded and not house.encrypted and listen not in ALONE:
            typer.echo(_PLAIN, err=True)
        make_ready(bench)
        when_it_answers(
            listen,
            listening,
            lambda: typer.echo(f"The bench is open at {shown} (end it with Ctrl-C)"),
        )
        with contextlib.suppress(KeyboardInterrupt):  # the server has closed in order by then
            start(
                bench,
                host=listen,
                port=listening,
                secret=_secret(folder),
                show=not no_open and _has_screen(),
                house=house,
                certificate=str(certificate) if certificate else None,
                key=str(key) if key else None,
            )
    typer.echo("The bench is closed; every edit is kept.")


def _outlive_visitors() -> None:
    """Let no browser that goes away in the midst of an answer end the server.

    The other commands end by this signal, so that their readers may leave.
    """
    if hasattr(signal, "SIGPIPE"):
        signal.signal(signal.SIGPIPE, signal.SIG_IGN)


def _port(listen: str, wanted: int | None) -> int:
    found = port_for(listen, wanted)
    if wanted is None and found != USUAL:
        typer.echo(
            f"Port {USUAL} is taken, perhaps by a bench that is open already; "
            f"this one takes {found}"
        )
    return found


def _address(listen: str, port: int, *, encrypted: bool) -> str:
    host = f"[{listen}]" if ":" in listen else listen
    return f"{'https' if encrypted else 'http'}://{host}:{port}/"


def _has_screen() -> bool:
    """Say whether a browser could be seen here; a server's console is no place for one."""
    if not sys.platform.startswith("linux"):
        return True
    return any(os.environ.get(each) for each in ("DISPLAY", "WAYLAND_DISPLAY", "BROWSER"))


def _house(bench: "Bench", listen: str, names: tuple[str, ...], *, encrypted: bool) -> "House":
    from coachwright.actions.admitting import has_accounts, has_owner
    from coachwright.errors import CallError
    from coachwright.web.door.rules import LOOPBACK as ITSELF
    from coachwright.web.door.rules import House

    if listen not in ALONE and not has_owner(bench):
        raise CallError(
            f"the bench has no people with passwords yet, so it listens to this machine alone; "
            f"leave --listen {listen} out, or make an owner first: coachwright people add NAME "
            "--role owner"
        )
    if listen in EVERYWHERE and not names:
        raise CallError(
            f"--listen {listen} is every address of this machine; say by which name browsers "
            "call it: --name HOST"
        )
    called = {each.lower() for each in names}
    own = set() if listen in EVERYWHERE else {listen.lower()}
    return House(
        hosts=frozenset({*ITSELF, *own, *called}),
        guarded=has_accounts(bench),
        encrypted=encrypted,
    )


def _check_files(certificate: Path | None, key: Path | None) -> None:
    from coachwright.errors import CallError

    if certificate is None and key is None:
        return
    if certificate is None or key is None:
        raise CallError("--certificate and --key go together; give both or neither")
    for file in (certificate, key):
        if not file.is_file():
            raise CallError(f"{file} is not there; name a file in PEM form")
    _check_pair(certificate, key)


def _check_pair(certificate: Path, key: Path) -> None:
    """Try a certificate and its key before anything listens, so that trouble has a sentence."""
    import ssl

    from coachwright.errors import CallError

    def no_password() -> str:
        raise CallError(
            f"{key} is locked with a password, which nobody can type while the server starts; "
            "give a key without one, readable by its owner alone"
        )

    files = {certificate: "-----BEGIN CERTIFICATE-----", key: "PRIVATE KEY-----"}
    for file, sign in files.items():
        try:
            held = file.read_bytes()
        except OSError as error:
            raise CallError(f"{file} cannot be read: {error.strerror}") from error
        if sign.encode() not in held:
            what = "certificate" if file == certificate else "private key"
            raise CallError(f"{file} holds no {what} in PEM form ({sign!r} is not in it)")
    try:
        ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER).load_cert_chain(certificate, key, no_password)
    except ssl.SSLError as error:
        if error.reason == "KEY_VALUES_MISMATCH":
            raise CallError(
                f"the key in {key} is not the one of the certificate in {certificate}; "
                "name the pair that was made together"
            ) from error
        raise CallError(
            f"{certificate} and {key} cannot be used together: the one or the other is damaged"
        ) from error


def _secret(folder: Path) -> str:
    """Return what signs the cookie that tells browsers apart; made once, readable by its owner."""
    path = folder / "bench" / "secret"
    path.parent.mkdir(parents=True, exist_ok=True)
    if not path.is_file():
        handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, _OWNER_ONLY)
        with os.fdopen(handle, "w", encoding="utf-8") as file:
            file.write(secrets.token_urlsafe(32))
    return path.read_text(encoding="utf-8")
