"""Run every command some rounds, side by side, and show the figures beside the budgets.

The commands take turns within each round, so that a busy machine burdens all of them alike; the
bare interpreter runs along as the yardstick.  Nothing here passes or fails: timings depend on the
machine, and whoever reads them judges.
"""

import argparse
import statistics
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

from benchmarks import browser, keeping
from benchmarks.climate import climate_lines
from benchmarks.commands import COMMANDS, Command, run_once
from benchmarks.edits import edit_lines
from benchmarks.living import living_lines
from benchmarks.stages import CALLS, STAGES, stage_line

ROOT = Path(__file__).parents[1]


def main() -> int:
    """Measure, and print one line for each command."""
    parser = argparse.ArgumentParser(prog="python -m benchmarks", description=__doc__)
    parser.add_argument("--rounds", type=int, default=5, help="measured rounds after a warm-up")
    parser.add_argument("--only", choices=tuple(_PARTS), help="one part alone")
    given = parser.parse_args()
    rounds: int = given.rounds
    for name, measure in _PARTS.items():
        if given.only in (None, name):
            measure(rounds)
    return 0


def _commands(rounds: int) -> None:
    with tempfile.TemporaryDirectory() as folder:
        taken_s = _measure(rounds, Path(folder))
    yardstick_s = statistics.median(taken_s[COMMANDS[0].name])
    print(f"{rounds} rounds, warm, median of each; budgets are those of the design")
    print(f"{'what':<44} {'median':>8} {'range':>15} {'budget':>8} {'of it':>6} {'x bare':>7}")
    for command in COMMANDS:
        print(_line(command, taken_s[command.name], yardstick_s))


def _stages(_rounds: int) -> None:
    print(f"\nstages inside one interpreter, {CALLS} calls, warm, median of each")
    for stage in STAGES:
        print(stage_line(stage, ROOT))
    for line in climate_lines(ROOT):
        print(line)


def _year(_rounds: int) -> None:
    print("\nthe coupled year, its compiler loaded")
    for line in (*living_lines(ROOT), *edit_lines(ROOT)):
        print(line, flush=True)


def _browser(_rounds: int) -> None:
    print("\nthe bench in the browser, from key or drop to the last change in the page")
    for row in browser.rows():
        print(row.line(), flush=True)


def _store(_rounds: int) -> None:
    print("\nthe store")
    for row in keeping.rows(ROOT):
        print(row.line(), flush=True)


_PARTS: dict[str, Callable[[int], None]] = {
    "commands": _commands,
    "stages": _stages,
    "year": _year,
    "browser": _browser,
    "store": _store,
}


def _measure(rounds: int, out: Path) -> dict[str, list[float]]:
    """Return the seconds of every measured round; the first round only warms up."""
    taken_s: dict[str, list[float]] = {command.name: [] for command in COMMANDS}
    for measured in range(rounds + 1):
        for command in COMMANDS:
            seconds = run_once(command, ROOT, out)
            if measured:
                taken_s[command.name].append(seconds)
        print(f"round {measured} of {rounds}", end="\r", file=sys.stderr, flush=True)
    return taken_s


def _line(command: Command, taken_s: list[float], yardstick_s: float) -> str:
    median_s = statistics.median(taken_s)
    span = f"{min(taken_s):.2f}-{max(taken_s):.2f} s"
    budget = share = ""
    if command.budget_s is not None:
        budget = f"{command.budget_s:.1f} s"
        share = f"{median_s / command.budget_s:.0%}"
    ratio = f"{median_s / yardstick_s:.1f}"
    return f"{command.name:<44} {median_s:>6.2f} s {span:>15} {budget:>8} {share:>6} {ratio:>7}"


if __name__ == "__main__":
    raise SystemExit(main())
