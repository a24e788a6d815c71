"""The store: two writers at one build, and writers that are killed in the midst of it."""

import subprocess
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from threading import Barrier
from xml.etree import ElementTree

from tests.store.sheets import NOW, SHEET

from benchmarks.figures import Row
from coachwright.store.edits import Edit, Put
from coachwright.store.opening import open_store
from coachwright.store.records import Appended
from coachwright.store.store import Store

EACH = 100
_SHARED_EVERY = 5
_KILLING = "tests/store/test_killing.py"
_KILLED = "test_a_writer_killed_at_any_moment_loses_at_most_the_edit_in_flight"


def rows(root: Path) -> Iterator[Row]:
    """Measure, and yield each row as it is known."""
    with tempfile.TemporaryDirectory() as folder:
        yield _two_writers(Path(folder) / "two.db")
        yield _killed(root, Path(folder) / "killed.xml")


def _two_writers(file: Path) -> Row:
    """Let two threads edit one build; every fifth edit of both is of the same place."""
    with open_store(file) as store:
        build = store.create_build(SHEET, actor="ann", at=NOW).build_id
        with ThreadPoolExecutor(2) as both:
            abreast = Barrier(2)
            begun = [both.submit(_write, store, build, each, abreast) for each in ("ann", "bob")]
            counted = [each.result() for each in begun]
        events = store.build(build).head - 1
    total: Counter[str] = sum(counted, Counter())
    lost = total["kept"] - events + total["gone"]
    return Row(
        name=f"two writers at one build, {2 * EACH} edits at the store",
        said=f"kept {total['kept']}, of them merged {total['merged']}, "
        f"asked {total['asked']}, lost {lost}",
        budget="lost 0",
    )


def _write(store: Store, build: int, actor: str, abreast: Barrier) -> Counter[str]:
    """Edit together with another, each time both begin with what they saw last."""
    counted: Counter[str] = Counter()
    seen = 1
    own, shared = {"ann": "galley", "bob": "fridge"}[actor], "customer"
    for number in range(EACH):
        words = f"{actor} {number}"
        path = (shared,) if number % _SHARED_EVERY == 0 else ("fittings", own, "note")
        edits: tuple[Edit, ...] = (Put(path=path, value=words),)
        abreast.wait(timeout=60)
        answer = store.append(build, seen, edits, actor=actor, at=NOW)
        if isinstance(answer, Appended):
            counted["kept"] += 1
            counted["merged"] += bool(answer.merged)
            counted["gone"] += words not in store.sheet(build, answer.sheet.event).text
            seen = answer.sheet.event
        else:
            counted["asked"] += 1
            seen = answer.theirs.event
    return counted


def _killed(root: Path, report: Path) -> Row:
    """Run the test that kills writers, and read the figure that it gives."""
    words = [sys.executable, "-m", "pytest", "-q", f"{_KILLING}::{_KILLED}", "-k", "sqlite"]
    done = subprocess.run(  # noqa: S603
        [*words, "-o", "junit_family=xunit1", f"--junitxml={report}"],
        cwd=root,
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode:
        raise SystemExit(done.stdout)
    told = ElementTree.parse(report).getroot().find(".//property[@name='figure']")  # noqa: S314
    said = "" if told is None else str(told.get("value"))
    name, _, figures = said.partition(" killed, ")
    return Row(name=f"kill -9 while writing: {name}", said=figures, budget="lost 0")
