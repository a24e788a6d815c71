"""Time and chance come from the shells: the store asks for neither."""

import ast

from tests.support.source import modules

CHANCE = {"random", "secrets", "time", "uuid"}
CLOCKS = {"now", "utcnow", "today", "urandom", "time_ns", "monotonic"}


def _store() -> list[tuple[str, ast.Module]]:
    return [
        (each.path, each.tree) for each in modules() if each.name.startswith("coachwright.store")
    ]


def test_the_store_imports_no_clock_and_no_chance() -> None:
    stray = [
        path
        for path, tree in _store()
        for node in ast.walk(tree)
        if (isinstance(node, ast.Import) and {each.name for each in node.names} & CHANCE)
        or (isinstance(node, ast.ImportFrom) and node.module in CHANCE)
    ]
    assert not stray


def test_the_store_asks_no_clock() -> None:
    stray = [
        f"{path}:{node.lineno}"
        for path, tree in _store()
        for node in ast.walk(tree)
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Attribute)
        and node.func.attr in CLOCKS
    ]
    assert _store()
    assert not stray
