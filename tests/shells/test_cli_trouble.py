"""Trouble at the outermost line: one line, an exit code, a traceback only when asked for."""

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from coachwright.cli import main as outermost
from tests.shells.running import Runner


def test_the_version_is_told(run: Runner) -> None:
    ran = run("--version")
    assert ran.code == 0
    assert ran.out.startswith("coachwright 0.")


def test_what_is_unexpected_asks_for_a_report(
    run: Runner, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(outermost, "app", _break)
    ran = run("check", tmp_path)
    assert ran.code == 2
    assert ran.err.splitlines() == [f"{outermost.ISSUE_HINT}: KeyError: 'the gremlin'"]


def test_debugging_shows_where(run: Runner, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(outermost, "app", _break)
    monkeypatch.setenv("COACHWRIGHT_DEBUG", "1")
    with pytest.raises(KeyError):
        outermost.main(["check"])


def _break(*_given: object, **_named: object) -> None:
    raise KeyError("the gremlin")


@pytest.mark.parametrize(
    "arguments",
    [("check",), ("nonsense",), ("check", "a.toml", "--units", "cubits"), ("print", "a.toml")],
)
def test_a_wrong_call_leaves_with_two(run: Runner, arguments: tuple[str, ...]) -> None:
    ran = run(*arguments)
    assert ran.code == 2
    assert "Traceback" not in ran.err


def test_a_shop_that_is_not_there_is_said(run: Runner, tmp_path: Path) -> None:
    ran = run("--shop", tmp_path / "none", "parts", "list")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith(f"the shop's folder {tmp_path / 'none'} is not there")


def test_the_shop_may_come_from_the_environment(
    run: Runner, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("COACHWRIGHT_SHOP", str(tmp_path / "none"))
    assert run("parts", "list").code == 2


@pytest.mark.parametrize("arguments", ["--version", "--help", "check --help", "parts --help"])
def test_help_does_not_wait_for_what_is_heavy(arguments: str) -> None:
    program = (
        "import sys\n"
        "from coachwright.cli.main import main\n"
        "try:\n    main(sys.argv[1:])\nexcept SystemExit:\n    pass\n"
        "heavy = {'coachwright.assess', 'coachwright.model.build', 'typst', 'openpyxl', 'tomlkit'}"
        " & set(sys.modules)\n"
        "assert not heavy, heavy\n"
    )
    command = [sys.executable, "-c", program, *arguments.split()]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_a_terminal_without_all_signs_shows_the_rest(run: Runner) -> None:
    assert run("new", "first.toml").code == 0
    program = "from coachwright.cli.main import main; main()"
    done = subprocess.run(
        [sys.executable, "-c", program, "check", "first.toml"],
        env={**os.environ, "PYTHONIOENCODING": "ascii"},
        capture_output=True,
        text=True,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert "No stop is broken." in done.stdout


def test_a_reader_who_leaves_is_no_broken_stop(run: Runner) -> None:
    assert run("new", "first.toml").code == 0
    program = "from coachwright.cli.main import main; main()"
    with subprocess.Popen(
        [sys.executable, "-c", program, "check", "first.toml", "--json"],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    ) as asked:
        assert asked.stdout is not None
        asked.stdout.close()
        assert asked.wait(30) == -signal.SIGPIPE
