"""The commands that are measured, and how one of them is run from the shell."""

import subprocess
import sys
import time
from dataclasses import dataclass
from pathlib import Path

DEMO = "demos/night-watch.toml"
COACHWRIGHT = str(Path(sys.executable).parent / "coachwright")


@dataclass(frozen=True, kw_only=True, slots=True)
class Command:
    """One command line and the time that it may take.

    Attributes
    ----------
    words
        The command; ``{out}`` stands for a folder to write into.
    budget_s
        From the shell, warm; None where there is no budget.
    codes
        Exit codes that mean that it did its work.
    """

    name: str
    words: tuple[str, ...]
    budget_s: float | None = None
    codes: tuple[int, ...] = (0,)


COMMANDS: tuple[Command, ...] = (
    Command(name="python -c pass (yardstick)", words=(sys.executable, "-c", "pass")),
    Command(name="coachwright --version", words=(COACHWRIGHT, "--version")),
    Command(
        name=f"coachwright check {DEMO}",
        words=(COACHWRIGHT, "check", DEMO),
        budget_s=0.8,
        codes=(0, 1),
    ),
    Command(
        name=f"coachwright print {DEMO}",
        words=(COACHWRIGHT, "print", DEMO, "-o", "{out}"),
        budget_s=4.0,
        codes=(0, 1),
    ),
)


def run_once(command: Command, root: Path, out: Path) -> float:
    """Run a command from the shell and return the seconds that it took."""
    words = [word.replace("{out}", str(out)) for word in command.words]
    begun_s = time.perf_counter()
    done = subprocess.run(words, cwd=root, capture_output=True, text=True, check=False)  # noqa: S603
    taken_s = time.perf_counter() - begun_s
    if done.returncode not in command.codes:
        raise SystemExit(f"{command.name} ended with {done.returncode}:\n{done.stderr}")
    return taken_s
