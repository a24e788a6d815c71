"""Imports go down only: the floors of the import contract, read again without its tool."""

import ast
import re
from collections.abc import Iterator

from tests.support.source import SOURCE, Module, modules, pyproject


def _floors() -> dict[str, int]:
    """Return the floor of each room of the package; 0 is the ground."""
    contracts = pyproject()["tool"]["importlinter"]["contracts"]
    layers = next(each["layers"] for each in contracts if each["id"] == "floors")
    return {
        room.strip("() "): floor
        for floor, layer in enumerate(reversed(layers))
        for room in layer.split(":")
    }


def _imported(module: Module) -> Iterator[str]:
    for node in ast.walk(module.tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            yield node.module
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def _room(name: str) -> str:
    match = re.match(r"coachwright\.(\w+)", name)
    return match[1] if match else ""


def test_every_room_has_a_floor() -> None:
    rooms = {_room(module.name) for module in modules()} - {""}
    assert rooms <= set(_floors())


def test_imports_go_down_only() -> None:
    floors = _floors()
    upward = [
        f"{module.path} imports {name}"
        for module in modules()
        for name in _imported(module)
        if _room(module.name) and floors.get(_room(name), -1) > floors[_room(module.name)]
    ]
    assert not upward, "\n".join(upward)


def test_no_import_is_relative() -> None:
    relative = [
        module.path
        for module in modules()
        for node in ast.walk(module.tree)
        if isinstance(node, ast.ImportFrom) and node.level
    ]
    assert not relative


def test_every_discipline_is_in_every_contract() -> None:
    contracts = {each["id"]: each for each in pyproject()["tool"]["importlinter"]["contracts"]}
    rooms = {f"coachwright.{path.parent.name}" for path in SOURCE.glob("*/stage.py")}
    assert rooms <= set(contracts["disciplines"]["modules"])
    assert rooms <= set(contracts["shells"]["forbidden_modules"])


def test_every_room_of_the_core_is_kept_from_input_and_output() -> None:
    contracts = {each["id"]: each for each in pyproject()["tool"]["importlinter"]["contracts"]}
    floors = _floors()
    rooms = {_room(module.name) for module in modules()} - {""}
    core = {f"coachwright.{room}" for room in rooms if floors[room] <= floors["assess"]}
    assert core == set(contracts["no-input-or-output"]["source_modules"])
