"""Run a command as the shell does, inside the test."""

from dataclasses import dataclass
from pathlib import Path

import pytest

from coachwright.cli.main import main


@dataclass(frozen=True, kw_only=True)
class Ran:
    """What a command left behind."""

    code: int
    out: str
    err: str


class Runner:
    """Runs commands; the user's own data folder is kept away."""

    def __init__(self, capsys: pytest.CaptureFixture[str]) -> None:
        self._capsys = capsys

    def __call__(self, *arguments: str | Path) -> Ran:
        """Run one command."""
        self._capsys.readouterr()
        with pytest.raises(SystemExit) as left:
            main([str(argument) for argument in arguments])
        said = self._capsys.readouterr()
        code = left.value.code
        return Ran(code=code if isinstance(code, int) else 0, out=said.out, err=said.err)
