"""Bars of a day's energy are as long as their figures, and say what is unknown."""

import pytest

from coachwright.drawing.day_bars import DayBar, DayGroup, day_bars
from coachwright.drawing.scene import Rect, Scene, Text


def _bar(label: str, summer_wh_per_day: float | None, winter_wh_per_day: float | None) -> DayBar:
    return DayBar(
        label=label,
        summer=f"{summer_wh_per_day}",
        winter=f"{winter_wh_per_day}",
        summer_wh_per_day=summer_wh_per_day,
        winter_wh_per_day=winter_wh_per_day,
    )


def _lengths(scene: Scene) -> list[float]:
    key = 2
    bars = [each for each in scene.primitives if isinstance(each, Rect)][key:]
    return [bar.high_mm[0] - bar.low_mm[0] for bar in bars]


def test_all_bars_have_one_scale() -> None:
    groups = (
        DayGroup(heading="in", bars=(_bar("sun", 2000.0, 500.0),)),
        DayGroup(heading="out", bars=(_bar("loads", 1000.0, 250.0),)),
    )
    lengths = _lengths(day_bars(groups, paper_width_mm=180.0))
    assert [each / lengths[0] for each in lengths] == pytest.approx([1.0, 0.25, 0.5, 0.125])


def test_what_is_unknown_has_no_bar_and_says_so() -> None:
    scene = day_bars((DayGroup(heading="in", bars=(_bar("sun", None, 0.0),)),), paper_width_mm=180)
    assert _lengths(scene) == []
    assert "unknown" in [each.text for each in scene.primitives if isinstance(each, Text)]
