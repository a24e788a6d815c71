"""Every source that is named exists in docs/references.toml, and every entry is named."""

import ast
import csv
import importlib
import re
import tomllib
from collections.abc import Iterator

import pytest

from tests.support.source import SOURCE, disciplines, functions, modules, text

ENTRIES = tomllib.loads(text("docs/references.toml"))
KEY = re.compile(r"\[([a-z0-9]+(?:-[a-z0-9]+)*)\]")
SECTION = re.compile(r"\n\s*References\n\s*-{3,}\n(.*?)(?:\n\s*\n\s*\w+\n\s*-{3,}|\Z)", re.DOTALL)


def _docstrings() -> Iterator[tuple[str, str]]:
    for module in modules():
        classes = (node for node in ast.walk(module.tree) if isinstance(node, ast.ClassDef))
        for node in (module.tree, *classes, *(each for _, each in functions(module.tree))):
            yield module.path, ast.get_docstring(node) or ""


def _in_docstrings() -> Iterator[tuple[str, str]]:
    for path, docstring in _docstrings():
        for section in SECTION.finditer("\n" + docstring):
            for key in KEY.findall(section[1]):
                yield path, key


def _in_workings() -> Iterator[tuple[str, str]]:
    """Yield keys given as ``references=("key", ...)`` and ``Source(key="key")``."""
    for module in modules():
        for node in ast.walk(module.tree):
            if isinstance(node, ast.keyword) and node.arg == "references":
                for part in ast.walk(node.value):
                    if isinstance(part, ast.Constant) and isinstance(part.value, str):
                        yield module.path, part.value


def _in_rules() -> Iterator[tuple[str, str]]:
    for room in disciplines():
        for rule in importlib.import_module(f"coachwright.{room}.rules").RULES:
            yield rule.id, rule.source.key


def _in_tables() -> Iterator[tuple[str, str]]:
    """Yield the sources of every row of a published table; rooms may hold data of their own."""
    for path in sorted(SOURCE.rglob("*.csv")):
        published = path.parent.name == "reference"
        with path.open(encoding="utf-8") as lines:
            for number, row in enumerate(csv.DictReader(lines), start=2):
                if published or "source" in row:
                    for key in re.split(r"[;,\s]+", row.get("source") or ""):
                        yield f"{path.name}:{number}", key


def _named() -> list[tuple[str, str]]:
    return [*_in_docstrings(), *_in_workings(), *_in_rules(), *_in_tables()]


def test_every_source_that_is_named_exists() -> None:
    stray = sorted({f"{where}: {key!r}" for where, key in _named() if key not in ENTRIES})
    assert not stray, "add these to docs/references.toml:\n" + "\n".join(stray)


def test_every_entry_is_named_somewhere() -> None:
    orphans = sorted(set(ENTRIES) - {key for _, key in _named()})
    assert not orphans


@pytest.mark.parametrize("key", sorted(ENTRIES))
def test_an_entry_says_what_the_source_is(key: str) -> None:
    entry = ENTRIES[key]
    assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", key)
    assert entry.get("title", "").strip()
    assert {"edition", "year", "note"} & set(entry), (
        "say the edition or year, or why there is none"
    )
    assert set(entry) <= {"author", "title", "edition", "year", "page", "note"}


def test_every_table_states_the_source_and_status_of_each_row() -> None:
    stray = []
    for path in sorted((SOURCE / "reference").glob("*.csv")):
        with path.open(encoding="utf-8") as lines:
            for number, row in enumerate(csv.DictReader(lines), start=2):
                if not row.get("source") or row.get("status") not in (
                    "read",
                    "memory",
                    "practice",
                ):
                    stray.append(f"{path.name}:{number}")
    assert not stray
