"""The strings that the papers place, whole: golden, so a change of a figure or a word is seen.

Run once with ``COACHWRIGHT_UPDATE_GOLDEN=1`` to write them anew, then read the difference.
"""

import dataclasses
import json
import os
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from coachwright.assess import Assessment, assess
from coachwright.papers.pack import VIEWS
from tests.support.builds import build
from tests.support.paper_build import PAPERS, PAPERS_US

GOLDEN = Path(__file__).parent / "golden"
UPDATE = os.environ.get("COACHWRIGHT_UPDATE_GOLDEN") == "1"
BUILDS = {"eu": PAPERS, "us": PAPERS_US}
CASES = [(place, name) for place in BUILDS for name in VIEWS]


@cache
def _assessment(place: str) -> Assessment:
    return assess(build(BUILDS[place]))


@cache
def _data(place: str, name: str) -> Any:
    """Return the template's data as it arrives there."""
    view = VIEWS[name][1](_assessment(place))
    return json.loads(json.dumps(dataclasses.asdict(view), ensure_ascii=False))


@pytest.mark.parametrize(("place", "name"), CASES)
def test_the_template_data_is_as_it_was(place: str, name: str) -> None:
    path = GOLDEN / f"{Path(name).stem}-{place}.json"
    now = json.dumps(_data(place, name), ensure_ascii=False, indent=1, sort_keys=True) + "\n"
    if UPDATE:
        path.write_text(now, encoding="utf-8")
    assert json.loads(path.read_text(encoding="utf-8")) == json.loads(now)


def test_no_golden_file_is_left_over() -> None:
    wanted = {f"{Path(name).stem}-{place}.json" for place, name in CASES}
    assert {path.name for path in GOLDEN.glob("*.json")} == wanted


FORMULA_FIELDS = frozenset({"expression", "symbol", "drawing", "bars"})
"""Fields that are not read as prose: formulas and drawings."""


SECTION = re.compile(r"\bCFR \d+\.\d+|\b\d{3,4}\.\d+\([a-z]\)")
"""A section of the federal regulations, alone or with its paragraph, which looks like a figure."""
PROGRAM_NAME = re.compile(r"\b[a-z]{2,}(?:_[a-z0-9]+)+\b")


def _strings(data: Any) -> Iterator[str]:
    if isinstance(data, str):
        yield data
    elif isinstance(data, list):
        for item in data:
            yield from _strings(item)
    elif isinstance(data, dict):
        for key, item in data.items():
            if key not in FORMULA_FIELDS:
                yield from _strings(item)


@pytest.mark.parametrize(("place", "name"), CASES)
def test_no_figure_is_shown_with_too_many_decimals(place: str, name: str) -> None:
    figures = re.compile(r"\d+\.\d{4,}")
    constants = ("9.80665", "0.9982")
    long = [
        text
        for text in _strings(_data(place, name))
        if any(found not in constants for found in figures.findall(SECTION.sub("", text)))
    ]
    assert not long


@pytest.mark.parametrize(("place", "name"), CASES)
def test_no_name_of_the_program_is_shown(place: str, name: str) -> None:
    rules = {finding.rule for finding in _assessment(place).findings}
    figures = {figure.name for figure in _assessment(place).figures}
    texts = list(_strings(_data(place, name)))
    assert not [text for text in texts if PROGRAM_NAME.search(text)]
    assert not [text for text in texts for known in rules | figures if known in text]
    assert not [text for text in texts if "None" in text or "nan" in text.split()]


@pytest.mark.parametrize(("place", "name"), CASES)
def test_units_are_those_of_the_brief(place: str, name: str) -> None:
    if name == "calculation-appendix.pdf":
        return
    value = re.compile(
        r"^[−0-9.,]+\N{NO-BREAK SPACE}(kg|mm|L|km/h|kPa|m²|lb|in|US gal|mph|psi|ft²)$"
    )
    units = {found[1] for text in _strings(_data(place, name)) if (found := value.match(text))}
    metric = {"kg", "mm", "L", "km/h", "kPa", "m²"}
    assert not (units & metric if place == "us" else units - metric)
