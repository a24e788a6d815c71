"""No shell shows a quantity that was told and not yet said, or one in other units than asked."""

import dataclasses
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from coachwright.actions.writing import record_text
from coachwright.assess import Assessment, assess
from coachwright.papers.pack import VIEWS
from coachwright.papers.purchase import purchase_lines
from tests.shells.running import Runner
from tests.support.builds import build, sheet
from tests.support.paper_build import PAPERS, PAPERS_US

MARK = "⟦"
BUILDS = {"eu": PAPERS, "us": PAPERS_US}
PLACES = sorted(BUILDS)
METRIC = re.compile(
    r"\d[\s\N{NO-BREAK SPACE}]?"
    r"(?:kg|mm|cm|m|km/h|L|L/min|kPa|bar|°C|degC|K|m2|m²|mm2|mm²|cm2|N|N·m|mL|kg·m|m/s)(?![\w·/²])"
)
CUSTOMARY = re.compile(
    r"\d[\s\N{NO-BREAK SPACE}]?"
    r"(?:lb|in(?! series| parallel)|ft|mph|US gal|psi|°F|ft²|in²|lbf|lbf·ft)(?![\w·/²])"
)
FORMULAS = frozenset({"expression", "symbol", "again", "result", "drawing", "bars", "sources"})
"""Fields that hold formulas, or values in the formula's units beside the reader's; drawings; and
titles of sources as printed."""
CONSTANTS = ("9.80665 m/s2", "998.2 kg/m3")
"""Stand in the note of a formula, which holds in metric units."""


@cache
def _assessment(place: str) -> Assessment:
    return assess(build(BUILDS[place]))


def _texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, list | tuple):
        for each in value:
            yield from _texts(each)
    elif isinstance(value, dict):
        for key, each in value.items():
            if key not in FORMULAS:
                yield from _texts(each)


@cache
def _printed(place: str) -> tuple[str, ...]:
    """Return every text of every paper but formulas."""
    assessment = _assessment(place)
    views = [view(assessment) for _, view in VIEWS.values()]
    return tuple(text for view in views for text in _texts(dataclasses.asdict(view)))


def _as_printed_by_others(assessment: Assessment) -> set[str]:
    """Return names of parts, and what the rule books of another country put in their own units."""
    names = {fitted.part.name for fitted in assessment.build.fittings}
    names |= {layer.part.name for layer in assessment.build.finishes}
    own = str(assessment.build.brief.jurisdiction)
    for statement in assessment.weights.statements:
        if own not in statement.jurisdictions:
            names |= {part.name for part in statement.components}
            names |= {statement.note, statement.title}
    return {name for name in names if name}


@pytest.mark.parametrize("place", PLACES)
def test_nothing_stays_untold_on_paper(place: str) -> None:
    assessment = _assessment(place)
    views = [dataclasses.asdict(view(assessment)) for _, view in VIEWS.values()]
    assert MARK not in repr(views)
    assert MARK not in repr(purchase_lines(assessment))


@pytest.mark.parametrize(
    ("place", "foreign"), [("us", METRIC), ("eu", CUSTOMARY)], ids=["us", "eu"]
)
def test_papers_speak_in_the_units_of_the_brief(place: str, foreign: re.Pattern[str]) -> None:
    printed = _as_printed_by_others(_assessment(place))
    stray = []
    for said in _printed(place):
        text = said
        for known in sorted({*printed, *CONSTANTS}, key=len, reverse=True):
            text = re.sub(re.escape(known), "", text, flags=re.IGNORECASE)
        if foreign.search(text):
            stray.append(said)
    assert not stray


@pytest.fixture(params=PLACES)
def written(request: pytest.FixtureRequest, tmp_path: Path) -> tuple[str, Path]:
    """Return a place and a build file of it."""
    path = tmp_path / f"{request.param}.toml"
    path.write_text(record_text(sheet(BUILDS[request.param])), encoding="utf-8")
    return request.param, path


def test_nothing_stays_untold_on_the_screen(run: Runner, written: tuple[str, Path]) -> None:
    place, path = written
    said = [
        run("check", path, "--all").out,
        run("check", path, "--all", "--units", "us").out,
        run("check", path, "--json").out,
        run("check", path, "--working", "list").out,
    ]
    for figure in _assessment(place).figures:
        said.append(run("check", path, "--working", figure.name).out)
        said.append(run("check", path, "--working", figure.name, "--json").out)
    assert all(said)
    assert not [text for text in said if MARK in text]


def test_nothing_stays_untold_where_builds_are_compared(run: Runner, tmp_path: Path) -> None:
    light, heavy = tmp_path / "light.toml", tmp_path / "heavy.toml"
    light.write_text(record_text(sheet({})), encoding="utf-8")
    heavy.write_text(record_text(sheet(PAPERS)), encoding="utf-8")
    said = [
        run("compare", light, heavy, "--all").out,
        run("compare", light, heavy, "--all", "--units", "us").out,
        run("compare", light, heavy, "--json").out,
    ]
    assert all(said)
    assert not [text for text in said if MARK in text]


def test_the_screen_speaks_in_the_units_that_were_asked_for(
    run: Runner, written: tuple[str, Path]
) -> None:
    _, path = written
    metric = run("check", path, "--all", "--units", "metric").out
    customary = run("check", path, "--all", "--units", "us").out
    assert "round it" in metric
    for said, wanted, other in ((metric, "°C", "°F"), (customary, "°F", "°C")):
        assert wanted in said
        assert other not in said
