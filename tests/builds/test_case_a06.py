"""Case A06: a whole van with ten masses gives its six figures through the command line.

Source of the expected values: moment balance, hand calculation (2200 kg of base vehicle on a
4.0 m wheelbase and nine items; the case states them to 1e-5 m and 1e-3 kg).  It is an exercise
in masses: the van around it is invented, so whether the rules are content with it is no part of
the case.
"""

import json
from pathlib import Path
from typing import Any

import pytest

from coachwright.cli.main import main

CASE = Path(__file__).parent / "case_a06.toml"

ITEMS: tuple[tuple[float, float, float, float], ...] = (
    (75, 1.3, 0.45, 1.0),
    (75, 1.3, -0.45, 1.0),
    (120, 2.2, 0.6, 0.95),
    (60, 2.6, -0.6, 0.75),
    (100, 3.6, -0.55, 0.8),
    (110, 4.2, 0, 1.05),
    (45, 2.8, 0, 2.0),
    (55, 2.9, 0, 2.75),
    (70, 5.6, 0, 1.1),
)
"""The case's items: kg, and x, y and height above the ground in m."""


def _said(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    capsys.readouterr()
    with pytest.raises(SystemExit) as left:
        main(["check", str(CASE), *arguments])
    assert left.value.code in (0, 1, None), "read and assessed, whatever the verdict"
    return capsys.readouterr().out


@pytest.fixture
def weights(capsys: pytest.CaptureFixture[str]) -> dict[str, Any]:
    """Return the weights of ``check --json``."""
    found: dict[str, Any] = json.loads(_said(capsys, "--json"))["weights"]
    return found


def test_the_file_holds_the_masses_of_the_case(weights: dict[str, Any]) -> None:
    found = sorted(
        (item["mass_kg"], item["x_mm"] / 1000, item["y_mm"] / 1000, item["height_mm"] / 1000)
        for item in weights["items"]
        if item["group"] not in ("base vehicle", "fuel")
    )
    assert found == [pytest.approx(item) for item in sorted(ITEMS)]


@pytest.mark.parametrize(
    ("figure", "value", "tolerance"),
    [
        (("total", "nominal_kg"), 2910.0, 1e-5),
        (("front", "nominal_kg"), 1481.375, 1e-5),
        (("rear", "nominal_kg"), 1428.625, 1e-5),
        # stated in metres to 1e-5
        (("cg_x", "nominal_mm"), 1963.75, 0.01),
        (("cg_y", "nominal_mm"), -6.53, 0.01),
        (("cg_height", "nominal_mm"), 827.06, 0.01),
    ],
)
def test_the_six_figures(
    weights: dict[str, Any], figure: tuple[str, str], value: float, tolerance: float
) -> None:
    (case,) = (case for case in weights["cases"] if case["name"] == "travelling")
    assert case[figure[0]][figure[1]] == pytest.approx(value, abs=tolerance)


@pytest.mark.parametrize(
    ("name", "shown"),
    [
        ("weights.total-travelling", "= 2,910 kg"),
        ("weights.front-axle-travelling", "= 1,481.375 kg"),
        ("weights.rear-axle-travelling", "= 1,428.625 kg"),
        ("weights.cg-x", "= 1,963.746 mm"),
        ("weights.cg-y", "= -6.52921 mm"),
        ("weights.cg-height", "= 827.0619 mm"),
    ],
)
def test_the_six_figures_with_their_working(
    capsys: pytest.CaptureFixture[str], name: str, shown: str
) -> None:
    assert shown in _said(capsys, "--working", name)


def test_the_verdict_shows_what_it_comes_to(capsys: pytest.CaptureFixture[str]) -> None:
    verdict = _said(capsys)
    assert "2,910 kg" in verdict
    assert "827 mm" in verdict
