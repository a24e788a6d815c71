"""A discipline is known wherever all of them are: nobody finds out at the print shop."""

import dataclasses

import pytest

from coachwright.actions.checking import CheckReport
from coachwright.assess import RULES, Assessment
from coachwright.papers.wording import DISCIPLINE_WORDS
from tests.support.source import ROOT, disciplines, text

each_room = pytest.mark.parametrize("room", disciplines())


@each_room
def test_it_is_assessed_and_its_rules_are_applied(room: str) -> None:
    assert room in {field.name for field in dataclasses.fields(Assessment)}
    assert room in RULES


@each_room
def test_it_has_its_key_in_the_report_and_the_key_is_told(room: str) -> None:
    assert room in {field.name for field in dataclasses.fields(CheckReport)}
    assert f"`{room}`" in text("docs/commands.md")


@each_room
def test_the_papers_have_a_heading_for_it(room: str) -> None:
    assert DISCIPLINE_WORDS.get(room)


@each_room
def test_it_has_a_page_and_tests_of_its_own(room: str) -> None:
    assert text(f"docs/{room}.md")
    assert (ROOT / "tests" / room).is_dir()
    assert text(f"tests/rules/test_{room}_rules.py")


@each_room
def test_the_guide_for_contributors_places_it_on_its_floor(room: str) -> None:
    (row,) = [line for line in text("CONTRIBUTING.md").splitlines() if line.startswith("| 2 ")]
    assert f"`{room}/`" in row
