"""Opening the bench from the shell: an address that answers, a free port, an orderly end."""

import os
import re
import signal
import socket
import struct
import subprocess
import sys
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from coachwright.actions import listening
from coachwright.errors import CallError
from tests.web.serving import environment_of, serving

ROOT = Path(__file__).parents[2]
COMMAND = str(Path(sys.executable).parent / "coachwright")
LOOPBACK = "127.0.0.1"


@contextmanager
def _taken() -> Iterator[int]:
    """Listen at a port, so that nobody else can."""
    with socket.socket() as mine:
        mine.bind((LOOPBACK, 0))
        mine.listen()
        yield int(mine.getsockname()[1])


def _made(*words: str) -> str:
    """Return what make would do."""
    plain = {name: value for name, value in os.environ.items() if not name.startswith("MAKE")}
    done = subprocess.run(
        ["make", "-n", *words],  # noqa: S607  # whichever make there is
        cwd=ROOT,
        env=plain,
        capture_output=True,
        text=True,
        check=True,
    )
    return done.stdout


def _ignores(pid: int, told: signal.Signals) -> bool:
    """Say whether a process is deaf to a signal, as the kernel tells it (proc(5))."""
    status = Path(f"/proc/{pid}/status").read_text(encoding="ascii")
    found = re.search(r"^SigIgn:\s*([0-9a-f]+)$", status, re.MULTILINE)
    assert found is not None
    return bool(int(found[1], 16) >> (told - 1) & 1)


def test_the_address_that_is_printed_answers_and_ctrl_c_ends_it_in_order(tmp_path: Path) -> None:
    process = subprocess.Popen(
        [COMMAND, "serve"],
        env=environment_of(tmp_path),
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    try:
        assert process.stdout is not None
        said = next(line for line in process.stdout if line.startswith("The bench is open at "))
        found = re.search(r"http://127\.0\.0\.1:\d+/", said)
        assert found is not None
        with urllib.request.urlopen(found[0], timeout=60) as answer:  # noqa: S310  # loopback
            assert answer.status == 200
        assert _ignores(process.pid, signal.SIGPIPE)  # a visitor who leaves ends no server
        process.send_signal(signal.SIGINT)
        left, _ = process.communicate(timeout=60)
    finally:
        process.kill()
        process.wait()
    assert left.endswith("The bench is closed; every edit is kept.\n")
    assert process.returncode == 0


def test_visitors_who_leave_in_the_midst_of_an_answer_end_nothing(tmp_path: Path) -> None:
    with serving(tmp_path) as address:
        host, _, port = address.removeprefix("http://").partition(":")
        ask = f"GET / HTTP/1.1\r\nHost: {host}:{port}\r\n\r\n".encode()
        for _ in range(60):
            with socket.create_connection((host, int(port)), timeout=60) as visitor:
                visitor.sendall(ask * 4)
                visitor.recv(1)
                visitor.shutdown(socket.SHUT_WR)
                visitor.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, struct.pack("ii", 1, 0))
        with urllib.request.urlopen(address, timeout=60) as answer:  # noqa: S310  # loopback
            assert answer.status == 200


def test_a_port_that_is_wanted_and_taken_is_refused_with_a_sentence(tmp_path: Path) -> None:
    with _taken() as port:
        done = subprocess.run(
            [COMMAND, "serve", "--port", f"{port}"],
            env=environment_of(tmp_path),
            capture_output=True,
            text=True,
            check=False,
        )
    assert done.returncode == 2
    assert f"port {port} of 127.0.0.1 is taken by another program" in done.stderr
    assert "The bench is open" not in done.stdout


def test_the_next_free_port_is_taken_where_none_is_wanted(monkeypatch: pytest.MonkeyPatch) -> None:
    with _taken() as port:
        monkeypatch.setattr(listening, "USUAL", port)
        assert port < listening.port_for(LOOPBACK, None) < port + 20


def test_where_all_are_taken_the_sentence_says_which(monkeypatch: pytest.MonkeyPatch) -> None:
    with _taken() as port:
        monkeypatch.setattr(listening, "USUAL", port)
        monkeypatch.setattr(listening, "_MOST_TRIED", 1)
        with pytest.raises(CallError, match=f"the ports {port} to {port} of {LOOPBACK} are all"):
            listening.port_for(LOOPBACK, None)


def test_an_address_of_another_machine_is_refused_with_a_sentence() -> None:
    with pytest.raises(CallError, match=r"cannot listen at 192\.0\.2\.1, port 8900: "):
        listening.port_for("192.0.2.1", 8900)  # RFC 5737 keeps this address for documents


def test_make_run_ends_with_the_bench_unless_a_script_wants_none() -> None:
    opened = _made("run")
    assert opened.index("check demos") < opened.index("print demos") < opened.index("serve")
    assert "coachwright serve --port 8900" in _made("run", "ARGS=--port 8900")
    for_scripts = _made("run", "ARGS=--no-serve")
    assert "print demos" in for_scripts
    assert "coachwright serve" not in for_scripts
