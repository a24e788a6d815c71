"""Bars show each load as a share of its rating."""

import pytest

from coachwright.drawing.load_bars import LoadBar, load_bars
from coachwright.drawing.scene import Layer, Line, Rect, Scene, Text


def _bar(load_kg: float, limit_kg: float, spread_kg: float = 50.0) -> LoadBar:
    return LoadBar(
        label="Rear axle",
        value="a load of a rating",
        load_kg=load_kg,
        low_kg=load_kg - spread_kg,
        high_kg=load_kg + spread_kg,
        limit_kg=limit_kg,
    )


def _bars(scene: Scene) -> list[Rect]:
    return [p for p in scene.primitives if isinstance(p, Rect)]


def _rating_x_mm(scene: Scene) -> float:
    return next(p.at_mm[0] for p in scene.primitives if isinstance(p, Text) and p.text == "rating")


def test_a_load_at_half_its_rating_is_half_as_long() -> None:
    scene = load_bars((_bar(1000, 2000), _bar(1750, 3500)), paper_width_mm=174)
    first, second = _bars(scene)
    whole = _rating_x_mm(scene) - first.low_mm[0]
    assert (first.high_mm[0] - first.low_mm[0]) / whole == pytest.approx(0.5)
    assert (second.high_mm[0] - second.low_mm[0]) / whole == pytest.approx(0.5)


@pytest.mark.parametrize("load_kg", [500, 2000, 2600, 9000])
def test_an_overload_stays_on_the_paper_and_passes_the_rating(load_kg: float) -> None:
    scene = load_bars((_bar(load_kg, 2000),), paper_width_mm=174)
    ends = [p.end_mm[0] for p in scene.primitives if isinstance(p, Line)]
    assert max(ends) <= 174 - 46
    assert (_bars(scene)[0].high_mm[0] > _rating_x_mm(scene)) == (load_kg > 2000)


def test_the_bracket_spans_the_bounds() -> None:
    scene = load_bars((_bar(1000, 2000, spread_kg=100),), paper_width_mm=174)
    bracket = [p for p in scene.primitives if isinstance(p, Line) and p.layer is Layer.BODY][1]
    whole = _rating_x_mm(scene) - _bars(scene)[0].low_mm[0]
    assert bracket.end_mm[0] - bracket.start_mm[0] == pytest.approx(whole * 200 / 2000)


def test_no_bar_gives_an_empty_frame() -> None:
    assert not _bars(load_bars((), paper_width_mm=174))
