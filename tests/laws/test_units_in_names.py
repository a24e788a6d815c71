"""Every float says its unit in its name."""

import ast
import builtins
import dataclasses
import inspect
import sys
import typing
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from pydantic import BaseModel

from coachwright.units import SUFFIXES, shown_number, unit_of
from tests.support.source import Function, Module, arguments, functions, modules

GENERIC = frozenset({"value", "limit", "margin", "low", "high", "result", "factor"})
"""Names that may stand without a unit beside a field or an argument that says the unit."""

UNIT_SAYERS = frozenset({"unit", "kind"})

EXCEPTIONS = {
    "unit_table.Unit.offset": "of the unit that the row is about",
    "unit_display.Display.offset": "of the unit that the row is about",
    "unit_display.Display.fine_below": "in the unit that the row shows",
    "cli.showing.plain.value": "in the unit that is printed beside it",
    "units.parse": "in the unit of the kind that was asked for",
    "units._sum_terms": "in the unit of the kind that was asked for",
    "units._decimal.number": "a bare number: a factor or an offset",
    "climate.raw._cell": "in the unit of the column",
    "climate.raw.number": "in the unit of the heading",
    "climate.raw.without.missing": "in the unit of the column",
    "climate.read_pvgis._place.where": "two angles and an altitude, told apart in one line",
    "living.kernel_damp._mixed.outside": "in the unit of what is mixed: vapour or carbon dioxide",
    "living.kernel_damp._mixed.per": "turns a flow of air into that of what is mixed",
    "living.kernel_damp._mixed.source": "in the unit of what is mixed",
    "living.kernel_physics.bank_step": "seven values told apart in one line",
    "living.kernel_physics.cooling": "four values told apart in one line",
    "living.window_nodes.pane_films": "two films and a resistance, told apart in its text",
    "living.simulate.Run.whole": "in the unit that the name asked for says",
    "model.position._written.position": "in mm, or told by something else",
    "model.position.read_position": "in mm, or told by something else",
    "model.record.Quantity.least": "in the unit of the quantity's kind",
    "model.record.Quantity.most": "in the unit of the quantity's kind",
    "model.record.Quantity.above": "in the unit of the quantity's kind",
    "model.record.Quantity._read": "in the unit of the quantity's kind",
    "model.record.Quantity._within.number": "in the unit of the quantity's kind",
}
"""Dotted name from the package on → why its name has no unit."""


MAPPINGS = frozenset({"dict", "Mapping", "MutableMapping"})
UNIONS = frozenset({"Union", "UnionType"})


def _is_float(annotation: Any) -> bool:
    """Say whether a type is a float, perhaps none, or a row of floats; a mixed row is not."""
    arguments = [each for each in typing.get_args(annotation) if each is not Ellipsis]
    if annotation is float or not arguments:
        return annotation is float
    origin = typing.get_origin(annotation)
    kind = getattr(origin, "__name__", type(annotation).__name__)
    if hasattr(annotation, "__metadata__"):
        return _is_float(arguments[0])
    if kind in MAPPINGS:
        return _is_float(arguments[-1])
    if kind in UNIONS:
        return any(_is_float(argument) for argument in arguments)
    return all(_is_float(argument) for argument in arguments)


class _ForCheckingOnly(dict[str, Any]):
    """Gives Any for a name that a module imports for the type checker alone."""

    def __init__(self, kind: type) -> None:
        super().__init__()
        self._known = vars(sys.modules[kind.__module__])

    def __missing__(self, name: str) -> Any:
        if name in self._known or hasattr(builtins, name):
            raise KeyError(name)
        return Any


def _fields(kind: type) -> dict[str, Any]:
    own = inspect.get_annotations(kind)
    if issubclass(kind, BaseModel):
        return {name: field.annotation for name, field in kind.model_fields.items() if name in own}
    if dataclasses.is_dataclass(kind):
        hints = typing.get_type_hints(kind, localns=_ForCheckingOnly(kind))
        return {field.name: hints[field.name] for field in dataclasses.fields(kind)}
    if issubclass(kind, tuple) and hasattr(kind, "_fields"):
        return typing.get_type_hints(kind)
    return {}


def _unnamed_fields(module: Module) -> Iterator[str]:
    here = module.imported()
    for name, kind in inspect.getmembers(here, inspect.isclass):
        if kind.__module__ != module.name:
            continue
        fields = _fields(kind)
        said = not UNIT_SAYERS.isdisjoint(fields)
        for field, annotation in fields.items():
            if _is_float(annotation) and not _named(field, said=said):
                yield f"{name}.{field}"


def _annotated_float(node: ast.expr | None) -> bool:
    """Say of an annotation what `_is_float` says of a type."""
    if isinstance(node, ast.BinOp):
        return _annotated_float(node.left) or _annotated_float(node.right)
    if isinstance(node, ast.Subscript):
        kind = node.value.id if isinstance(node.value, ast.Name) else ""
        inside = node.slice.elts if isinstance(node.slice, ast.Tuple) else [node.slice]
        entries = [each for each in inside if not _is_dots(each)]
        if kind in MAPPINGS:
            return _annotated_float(entries[-1])
        return all(_annotated_float(each) for each in entries)
    return isinstance(node, ast.Name) and node.id == "float"


def _is_dots(node: ast.expr) -> bool:
    return isinstance(node, ast.Constant) and node.value is Ellipsis


def _unnamed_in(name: str, function: Function) -> Iterator[str]:
    said = any(argument.arg in UNIT_SAYERS for argument in arguments(function))
    for argument in arguments(function):
        if _annotated_float(argument.annotation) and not _named(argument.arg, said=said):
            yield f"{name}.{argument.arg}"
    if _annotated_float(function.returns) and not _named(function.name, said=said):
        yield name


def _named(name: str, *, said: bool) -> bool:
    return unit_of(name) is not None or (said and name in GENERIC)


def _unnamed() -> Iterator[str]:
    for module in modules():
        room = module.name.removeprefix("coachwright.")
        for field in _unnamed_fields(module):
            yield f"{room}.{field}"
        for name, function in functions(module.tree):
            for found in _unnamed_in(name, function):
                yield f"{room}.{found}"


def test_every_float_says_its_unit_last() -> None:
    stray = sorted(set(_unnamed()) - set(EXCEPTIONS))
    assert not stray, "end these names with a suffix of units.SUFFIXES:\n" + "\n".join(stray)


def test_no_exception_is_left_over() -> None:
    assert not sorted(set(EXCEPTIONS) - set(_unnamed()))


def _said_units() -> Iterator[tuple[str, str]]:
    """Yield every unit that stands as text in a case, a figure or a working."""
    for module in modules():
        for node in ast.walk(module.tree):
            if isinstance(node, ast.keyword) and node.arg == "unit":
                chosen = node.value
                either = (
                    [chosen.body, chosen.orelse] if isinstance(chosen, ast.IfExp) else [chosen]
                )
                for part in either:
                    if isinstance(part, ast.Constant) and isinstance(part.value, str):
                        yield f"{module.path}:{part.lineno}", part.value


def test_every_unit_that_is_said_can_be_shown() -> None:
    stray = []
    for place, unit in _said_units():
        try:
            shown_number(1.0, unit)
        except KeyError:
            stray.append(f"{place}: {unit!r}")
    assert not stray, "use a unit of units.SUFFIXES:\n" + "\n".join(stray)


@pytest.mark.parametrize(
    ("annotation", "flagged"),
    [
        ("float", True),
        ("float | None", True),
        ("tuple[float, ...]", True),
        ("tuple[float | None, float]", True),
        ("dict[str, float]", True),
        ("list[tuple[float, float]]", True),
        ("float | str", True),
        ("tuple[str, float]", False),
        ("Callable[[float], float]", False),
        ("int", False),
        ("None", False),
    ],
)
def test_the_law_sees_floats_in_types_and_in_text(annotation: str, flagged: bool) -> None:
    node = ast.parse(annotation, mode="eval").body
    assert _annotated_float(node) is flagged
    assert _is_float(eval(annotation, {"Callable": Callable})) is flagged  # noqa: S307


@pytest.mark.parametrize("suffix", sorted(SUFFIXES))
def test_a_suffix_is_found_at_the_end_of_a_name(suffix: str) -> None:
    assert unit_of(f"thing_{suffix}") == SUFFIXES[suffix]
