"""The nomenclature lists every suffix, and only names that are in use."""

import ast
import re

from coachwright.units import SUFFIXES
from tests.support.source import modules, text

PAGE = text("docs/nomenclature.md")


def _names_in_source() -> set[str]:
    names: set[str] = set()
    for module in modules():
        for node in ast.walk(module.tree):
            if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
                names.add(node.target.id)
            elif isinstance(node, ast.arg):
                names.add(node.arg)
            elif isinstance(node, ast.FunctionDef):
                names.add(node.name)
    return names


def test_every_suffix_has_its_row() -> None:
    rows = re.findall(r"^\| `_(\w+)` \| ([^|]+?) \|", PAGE, re.MULTILINE)
    assert dict(rows) == SUFFIXES


def test_every_name_is_in_use() -> None:
    rows = re.findall(r"^\| `([a-z]\w+)` \|", PAGE, re.MULTILINE)
    assert rows
    assert sorted(set(rows) - _names_in_source()) == []


def test_no_name_stands_twice() -> None:
    rows = re.findall(r"^\| `(\w+)` \|", PAGE, re.MULTILINE)
    assert len(rows) == len(set(rows))
