"""How files may look: not too long, nothing left undone, no machine and no registry in them."""

import ast
import re
from functools import cache
from pathlib import Path

from tests.support.source import ROOT, functions, modules

MOST_LINES = 400
MOST_FUNCTION_LINES = 40
OWN = "tests/laws/test_files.py"
"""This file has to spell what it looks for."""

TEXT = {".py", ".md", ".toml", ".txt", ".csv", ".typ", ".cfg", ".ini", ".json", ".yml", ""}

UNDONE = re.compile(r"\b(?:TODO|FIXME|XXX|NotImplementedError)\b|pytest\.mark\.(?:skip|xfail)")
WAITING = re.compile(r"pytest\.(?:skip|xfail|importorskip)\(|time\.sleep|importorskip")
MACHINE = re.compile(r"(?:^|[\s\"'(=])/(?:work|home|root|tmp|opt|Users)/")
REGISTRY = re.compile(
    r"py[p]i\.|python[h]osted|--?(?:extra-)?index-url|find-links|trusted-host|/simple\b",
    re.IGNORECASE,
)


FOLDERS = (".ci", "benchmarks", "changelog.d", "demos", "docs", "src", "tests")


@cache
def _files() -> tuple[str, ...]:
    """Return every file of the project by its path from the root, without what tools leave."""
    below = (path for folder in FOLDERS for path in (ROOT / folder).rglob("*"))
    top = (path for path in ROOT.glob("*") if not path.name.startswith(".coverage"))
    kept = (path for path in (*top, *below) if "__pycache__" not in path.parts)
    return tuple(sorted(str(path.relative_to(ROOT)) for path in kept if path.is_file()))


def _lines_with(pattern: re.Pattern[str], only: tuple[str, ...] = ("",)) -> list[str]:
    found = []
    for name in _files():
        path = Path(name)
        if path.suffix not in TEXT or name == OWN or not name.startswith(only):
            continue
        lines = (ROOT / name).read_text(encoding="utf-8").splitlines()
        found += [
            f"{name}:{number}" for number, line in enumerate(lines, 1) if pattern.search(line)
        ]
    return found


def test_no_source_file_is_too_long() -> None:
    long = [
        name
        for name in _files()
        if name.startswith("src/")
        and name.endswith(".py")
        and len((ROOT / name).read_text(encoding="utf-8").splitlines()) > MOST_LINES
    ]
    assert not long, "split these by subject"


def test_no_function_is_too_long() -> None:
    long = []
    for module in modules():
        for name, function in functions(module.tree):
            body = function.body[1:] if ast.get_docstring(function) else function.body
            if body and (function.end_lineno or 0) - body[0].lineno >= MOST_FUNCTION_LINES:
                long.append(f"{module.path}: {name}")
    assert not long, "split these functions"


def test_nothing_is_left_undone() -> None:
    assert not _lines_with(UNDONE, only=("src/", "tests/", "demos/", "docs/"))
    assert not _lines_with(WAITING, only=("src/", "tests/"))


def test_no_file_names_a_place_on_a_machine() -> None:
    assert not _lines_with(MACHINE)


def test_no_file_names_a_registry() -> None:
    assert not _lines_with(REGISTRY)


def test_no_file_is_a_drawer_for_odds_and_ends() -> None:
    assert not [name for name in _files() if Path(name).stem in {"utils", "helpers", "misc"}]
