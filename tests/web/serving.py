"""A real server of the bench in a process of its own, and a real browser to look at it."""

import os
import socket
import ssl
import subprocess
import sys
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from threading import Event

from playwright.sync_api import Browser, ConsoleMessage, Page, Playwright, Request

CHROMIUM = "/usr/bin/chromium"
FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
_TRIES = 1800
_BETWEEN_S = 0.1
"""Three minutes: where all processors are taken, half a minute goes before it has begun."""
_INSIDE = ("data:", "blob:", "about:")


def launch(playwright: Playwright) -> Browser:
    """Return a browser: Debian's where it is installed, else Playwright's own."""
    path = CHROMIUM if Path(CHROMIUM).exists() else None
    return playwright.chromium.launch(executable_path=path, args=list(FLAGS))


@contextmanager
def serving(folder: Path, *more: str, trust: ssl.SSLContext | None = None) -> Iterator[str]:
    """Serve a bench whose data stand in a folder; give its address.

    Parameters
    ----------
    folder
        Of its data.
    more
        Words after the command.
    trust
        By which its certificate is verified, where it has one.
    """
    port = _free_port()
    command = str(Path(sys.executable).parent / "coachwright")
    words = [command, "serve", "--no-open", "--port", str(port), *more]
    log = folder / "serve.log"
    with log.open("wb") as out:
        process = subprocess.Popen(words, env=environment_of(folder), stdout=out, stderr=out)
    address = f"{'https' if trust else 'http'}://127.0.0.1:{port}"
    try:
        _wait(address, process, log, trust)
        yield address
    finally:
        process.terminate()
        process.wait(timeout=20)


def environment_of(folder: Path) -> dict[str, str]:
    """Return the environment of a server whose data stand in a folder, as a person has it."""
    environment = {name: value for name, value in os.environ.items() if "PYTEST" not in name}
    environment["XDG_DATA_HOME"] = str(folder)
    environment["XDG_CACHE_HOME"] = str(folder / "kept")
    for name in ("COACHWRIGHT_DATABASE", "DISPLAY", "WAYLAND_DISPLAY", "BROWSER"):
        environment.pop(name, None)
    return environment


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def _wait(
    address: str, process: subprocess.Popen[bytes], log: Path, trust: ssl.SSLContext | None
) -> None:
    never = Event()
    for _ in range(_TRIES):
        try:
            urllib.request.urlopen(address, timeout=2, context=trust).close()  # noqa: S310  # loopback
        except urllib.error.HTTPError:
            return  # it answers, and asks to sign in
        except (urllib.error.URLError, OSError):
            assert process.poll() is None, log.read_text(encoding="utf-8")
            never.wait(_BETWEEN_S)
        else:
            return
    raise AssertionError(log.read_text(encoding="utf-8"))


@dataclass(kw_only=True)
class Seat:
    """Somebody at the bench: a browser page, and everything that went wrong on it.

    Attributes
    ----------
    trouble
        Errors and warnings of the console, and requests that left this machine.
    """

    page: Page
    address: str
    trouble: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.page.on("console", self._console)
        self.page.on("pageerror", lambda error: self.trouble.append(str(error)))
        self.page.on("request", self._request)

    def go(self, path: str) -> None:
        """Open a page of the bench and wait until it answers."""
        self.page.goto(f"{self.address}{path}")
        self.ready()

    def ready(self) -> None:
        """Wait until the page is linked to the server."""
        self.page.wait_for_function("window.socket && window.socket.connected")

    def _console(self, message: ConsoleMessage) -> None:
        if message.type in ("error", "warning"):
            self.trouble.append(message.text)

    def _request(self, request: Request) -> None:
        host = request.url.partition("://")[2]
        if not request.url.startswith(_INSIDE) and not host.startswith("127.0.0.1:"):
            self.trouble.append(f"left this machine: {request.url}")
