"""Every rule has its name, its line in the manual, its cases, and limits that stand in a table."""

import ast
import importlib
import re
from collections import Counter
from collections.abc import Iterator

import pytest

from coachwright.model.brief import Jurisdiction
from coachwright.model.finding import EVERYWHERE, Outcome, Rule, Severity, Status
from coachwright.reference import limits
from coachwright.units import worded
from tests.support.rule_cases import RuleCase
from tests.support.source import disciplines, modules, text

FEWEST_RULES = 45
"""What the main job was promised with, over the three jurisdictions."""


def _rules() -> list[tuple[str, Rule]]:
    return [
        (room, rule)
        for room in disciplines()
        for rule in importlib.import_module(f"coachwright.{room}.rules").RULES
    ]


def _cases(room: str) -> tuple[RuleCase, ...]:
    cases: tuple[RuleCase, ...] = importlib.import_module(f"tests.rules.test_{room}_rules").CASES
    return cases


RULES = _rules()
IDS = [rule.id for _, rule in RULES]
each_rule = pytest.mark.parametrize(("room", "rule"), RULES, ids=IDS)


def test_there_are_as_many_rules_as_promised() -> None:
    assert len(RULES) >= FEWEST_RULES
    for jurisdiction in Jurisdiction:
        assert any(rule.jurisdictions == (jurisdiction,) for _, rule in RULES)


def test_no_two_rules_share_an_id() -> None:
    assert [name for name, count in Counter(IDS).items() if count > 1] == []


@each_rule
def test_an_id_is_words_and_starts_with_its_folder(room: str, rule: Rule) -> None:
    assert re.fullmatch(rf"{room}\.[a-z]+(-[a-z]+)*", rule.id)


@each_rule
def test_a_rule_says_what_must_hold_and_what_can_be_done(room: str, rule: Rule) -> None:
    assert rule.title, room
    assert not rule.title.endswith(".")
    assert rule.remedy


@each_rule
def test_a_stop_rests_on_a_source_that_was_read(room: str, rule: Rule) -> None:
    assert rule.severity is not Severity.STOP or rule.source.status is Status.READ, room


@each_rule
def test_a_rule_has_its_line_in_the_manual(room: str, rule: Rule) -> None:
    lines = [line for line in text(f"docs/{room}.md").splitlines() if f"`{rule.id}`" in line]
    rows = [line for line in lines if line.startswith("|")]
    assert len(rows) == 1, f"one table row with `{rule.id}` in docs/{room}.md"
    row = rows[0]
    assert worded(rule.title) in row
    assert f"| {rule.severity} |" in row
    assert f"| {rule.source.status} |" in row
    assert rule.source.key in row
    assert rule.source.clause in row
    if rule.jurisdictions != EVERYWHERE:
        assert all(jurisdiction in row for jurisdiction in rule.jurisdictions)


@each_rule
def test_a_rule_has_cases_for_met_and_for_broken(room: str, rule: Rule) -> None:
    outcomes = {case.outcome for case in _cases(room) if case.rule == rule.id}
    assert {Outcome.MET, Outcome.BROKEN} <= outcomes


@pytest.mark.parametrize("room", disciplines())
def test_every_case_is_about_a_rule_that_exists(room: str) -> None:
    assert {case.rule for case in _cases(room)} <= set(IDS)


@pytest.mark.parametrize("room", disciplines())
def test_the_manual_names_no_rule_that_is_gone(room: str) -> None:
    named = set(re.findall(rf"^\| `({room}\.[a-z-]+)`", text(f"docs/{room}.md"), re.MULTILINE))
    assert named <= set(IDS)


def _strings() -> Iterator[str]:
    for module in modules():
        for node in ast.walk(module.tree):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                yield node.value


def test_every_limit_is_used() -> None:
    assert sorted(set(limits()) - set(_strings())) == []


def test_no_two_limits_share_an_id() -> None:
    rows = [
        row.split(",")[0]
        for room in disciplines()
        for row in text(f"src/coachwright/reference/limits_{room}.csv").splitlines()[1:]
    ]
    assert [name for name, count in Counter(rows).items() if count > 1] == []
