"""Every version is pinned."""

import re

import pytest

from tests.support.source import pyproject, text

LINE = re.compile(r"([A-Za-z0-9][A-Za-z0-9._-]*)==([A-Za-z0-9.!+_-]+)")


def _plain(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).lower()


def _pins() -> dict[str, str]:
    matches = [LINE.fullmatch(line) for line in text("constraints.txt").splitlines()]
    return {_plain(match[1]): match[2] for match in matches if match}


def _wanted() -> list[str]:
    project = pyproject()
    extras = project["project"]["optional-dependencies"]
    wanted = [
        *project["project"]["dependencies"],
        *project["build-system"]["requires"],
        *(each for extra in extras.values() for each in extra),
        "editables",  # what an editable install of the build back end needs
    ]
    return sorted({_plain(re.split(r"[<>=!~\[; ]", each)[0]) for each in wanted})


def test_constraints_hold_nothing_but_pins() -> None:
    lines = text("constraints.txt").splitlines()
    assert [line for line in lines if not LINE.fullmatch(line)] == []
    assert len(_pins()) == len(lines)


@pytest.mark.parametrize("name", _wanted())
def test_everything_that_is_asked_for_is_pinned(name: str) -> None:
    assert name in _pins()


def test_the_pins_meet_what_is_asked_for_at_least() -> None:
    for each in pyproject()["project"]["dependencies"]:
        name, _, least = each.partition(">=")
        pinned = _pins()[_plain(name)]
        numbers = [int(part) for part in re.findall(r"\d+", pinned)]
        assert numbers >= [int(part) for part in re.findall(r"\d+", least)], each
