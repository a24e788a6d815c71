"""The project's own source, as the laws read it."""

import ast
import importlib
import tomllib
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import Any, NamedTuple

ROOT = Path(__file__).parents[2]
SOURCE = ROOT / "src" / "coachwright"

Function = ast.FunctionDef | ast.AsyncFunctionDef


class Module(NamedTuple):
    """One module of the source: its dotted name, its path from the root, and its tree."""

    name: str
    path: str
    tree: ast.Module

    def imported(self) -> ModuleType:
        """Return the module, imported."""
        return importlib.import_module(self.name)


@cache
def modules() -> tuple[Module, ...]:
    """Return every module under src/coachwright, sorted by path.

    The migrations are left out: they are scripts that only run inside the migration tool.
    """
    return tuple(
        _module(path)
        for path in sorted(SOURCE.rglob("*.py"))
        if "migrations" not in path.relative_to(SOURCE).parts
    )


def _module(path: Path) -> Module:
    parts = ("coachwright", *path.relative_to(SOURCE).with_suffix("").parts)
    name = ".".join(parts).removesuffix(".__init__")
    tree = ast.parse(path.read_text(encoding="utf-8"))
    return Module(name, str(path.relative_to(ROOT)), tree)


def functions(tree: ast.Module) -> Iterator[tuple[str, Function]]:
    """Yield every function of a module with its dotted name, methods and inner ones too."""
    yield from _functions(tree, "")


def _functions(node: ast.AST, prefix: str) -> Iterator[tuple[str, Function]]:
    for child in ast.iter_child_nodes(node):
        if isinstance(child, Function):
            yield prefix + child.name, child
        if isinstance(child, ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef):
            yield from _functions(child, f"{prefix}{child.name}.")
        else:
            yield from _functions(child, prefix)


def arguments(function: Function) -> tuple[ast.arg, ...]:
    """Return a function's arguments without `self` and `cls`."""
    given = function.args
    listed = [*given.posonlyargs, *given.args, *given.kwonlyargs]
    listed += [each for each in (given.vararg, given.kwarg) if each is not None]
    return tuple(each for each in listed if each.arg not in ("self", "cls"))


def disciplines() -> tuple[str, ...]:
    """Return the folders that hold rules."""
    return tuple(sorted(path.parent.name for path in SOURCE.glob("*/rules.py")))


def pyproject() -> dict[str, Any]:
    """Return what stands in pyproject.toml."""
    return tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))


def text(path: str) -> str:
    """Return the text of a file named from the root; empty where there is none."""
    file = ROOT / path
    return file.read_text(encoding="utf-8") if file.is_file() else ""
