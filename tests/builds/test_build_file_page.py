"""The examples of the page about build files can be read, and the first of them opens."""

import re
import tomllib
from pathlib import Path

import pytest

from coachwright.actions.opening import open_build
from coachwright.catalogue.loading import Catalogue
from coachwright.model.build import BuildSheet
from coachwright.model.position import AXIS_FACES, AXIS_WORDS
from coachwright.model.reading import read_record
from tests.support.source import text

PAGE = "docs/build-file.md"
EXAMPLES = re.findall(r"```toml\n(.*?)```", text(PAGE), re.DOTALL)
SMALLEST = EXAMPLES[0]
each_example = pytest.mark.parametrize(
    "example", EXAMPLES, ids=[f"{number}" for number in range(len(EXAMPLES))]
)


def test_the_smallest_build_opens(tmp_path: Path) -> None:
    path = tmp_path / "day-van.toml"
    path.write_text(SMALLEST, encoding="utf-8")
    build = open_build(path, Catalogue()).build
    assert [fitted.name for fitted in build.fittings] == ["bench", "battery"]


@each_example
def test_an_example_is_read_without_a_fault(example: str) -> None:
    """What an example leaves out is taken from the smallest build."""
    data = tomllib.loads(SMALLEST) | tomllib.loads(example)
    _, faults = read_record(BuildSheet, data, PAGE)
    assert faults == ()


@each_example
def test_an_example_names_only_what_there_is(example: str) -> None:
    catalogue = Catalogue()
    own = set(re.findall(r'^id = "([^"]+)"', example, re.MULTILINE))
    for part in re.findall(r'part = "([^"]+)"', example):
        assert part in own or part in catalogue.part_ids()
    for standard in re.findall(r'^standard = "([^"]+)"', example, re.MULTILINE):
        assert standard in catalogue.standard_ids()


def test_the_example_of_a_standard_build_resolves(tmp_path: Path) -> None:
    (example,) = [each for each in EXAMPLES if each.startswith("standard = ")]
    brief = SMALLEST[SMALLEST.index("[brief]") : SMALLEST.index("[[fittings]]")]
    path = tmp_path / "own.toml"
    path.write_text(f'format = 1\nname = "Own"\n{example}\n{brief}', encoding="utf-8")
    build = open_build(path, Catalogue()).build
    assert build.conflicts == ()
    assert build.fitted("rear-seat") is not None
    assert build.fitted("window-galley") is None


def test_every_word_of_a_position_is_told() -> None:
    page = text(PAGE)
    for words in AXIS_WORDS:
        for word in words:
            assert f"`{word}" in page
    for faces in AXIS_FACES:
        for face in faces:
            assert f"against {face}" in page
