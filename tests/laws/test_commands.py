"""Every command is documented with an example that works, and no page names one that is gone."""

import re
from collections.abc import Iterator

import pytest
from typer.core import TyperCommand, TyperGroup
from typer.main import get_command

from coachwright.cli.main import app
from tests.support.source import text

MANUAL = "docs/commands.md"
PAGES = ("README.md", "CONTRIBUTING.md", MANUAL)
PROMISED = {
    "new",
    "check",
    "compare",
    "print",
    "parts list",
    "parts show",
    "parts import",
    "vehicles list",
    "vehicles show",
    "schema",
}


def _commands(found: object, path: str = "") -> Iterator[tuple[str, TyperCommand]]:
    if isinstance(found, TyperGroup):
        for name, command in found.commands.items():
            yield from _commands(command, f"{path} {name}".strip())
    elif isinstance(found, TyperCommand):
        yield path, found


COMMANDS = dict(_commands(get_command(app)))
each_command = pytest.mark.parametrize("name", sorted(COMMANDS))


def test_the_promised_commands_are_there() -> None:
    assert set(COMMANDS) >= PROMISED


@each_command
def test_a_command_is_in_the_manual(name: str) -> None:
    assert re.search(rf"coachwright {name}\b", text(MANUAL))


@each_command
def test_the_options_of_a_command_are_in_the_manual(name: str) -> None:
    options = [
        option
        for parameter in COMMANDS[name].params
        for option in parameter.opts
        if option.startswith("--") and option != "--help"
    ]
    missing = [option for option in options if option not in text(MANUAL)]
    assert not missing


@each_command
def test_a_help_text_has_an_example(name: str) -> None:
    assert f"coachwright {name}" in (COMMANDS[name].help or "")


@pytest.mark.parametrize("page", PAGES)
def test_a_page_names_only_commands_that_exist(page: str) -> None:
    first_words = {name.split()[0] for name in COMMANDS}
    named = re.findall(r"^(?:\$ )?(?:\S*/)?coachwright ([a-z]+)\b", text(page), re.MULTILINE)
    assert set(named) <= first_words
