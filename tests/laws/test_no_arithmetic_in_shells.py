"""No arithmetic on quantities or money in what only shows: what it lacks, the assessment gains."""

import ast
from collections.abc import Iterator

from tests.support.source import Module, functions, modules

SHELLS = ("cli", "web", "papers")

OPERATORS = (ast.Add, ast.Sub, ast.Mult, ast.Div, ast.FloorDiv, ast.Mod, ast.Pow)
CALLS = frozenset({"sum", "round", "divmod", "pow", "fsum"})

EXCEPTIONS: dict[str, str] = {}
"""Dotted name of a function from the package on → why it computes something."""


def _is_text(node: ast.expr) -> bool:
    """Say whether an operand is surely text or a list, for which + and * only join."""
    if isinstance(node, ast.Constant):
        return isinstance(node.value, str)
    return isinstance(node, ast.JoinedStr | ast.List | ast.Tuple | ast.ListComp)


def _computes(node: ast.AST) -> bool:
    if isinstance(node, ast.BinOp) and isinstance(node.op, OPERATORS):
        return not (_is_text(node.left) or _is_text(node.right))
    if isinstance(node, ast.AugAssign) and isinstance(node.op, OPERATORS):
        return not _is_text(node.value)
    if isinstance(node, ast.Call):
        function = node.func
        name = function.attr if isinstance(function, ast.Attribute) else ""
        return (function.id if isinstance(function, ast.Name) else name) in CALLS
    return False


def _places(module: Module) -> Iterator[tuple[str, int]]:
    """Yield function and line of every computation; outside functions under the module's name."""
    room = module.name.removeprefix("coachwright.")
    spans = [
        (function.lineno, function.end_lineno or function.lineno, f"{room}.{name}")
        for name, function in functions(module.tree)
    ]
    for node in ast.walk(module.tree):
        if isinstance(node, ast.expr | ast.stmt) and _computes(node):
            line = node.lineno
            around = [name for first, last, name in spans if first <= line <= last]
            yield (around[-1] if around else room), line


def _found() -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for module in modules():
        if module.name.split(".")[1:2] and module.name.split(".")[1] in SHELLS:
            for name, line in _places(module):
                found.setdefault(name, []).append(f"{module.path}:{line}")
    return found


def test_shells_compute_nothing() -> None:
    stray = [
        f"{place} in {name}"
        for name, places in _found().items()
        if name not in EXCEPTIONS
        for place in places
    ]
    assert not stray, "let the assessment or an action bring this:\n" + "\n".join(stray)


def test_no_exception_is_left_over() -> None:
    assert not sorted(set(EXCEPTIONS) - set(_found()))
