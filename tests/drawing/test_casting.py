"""Bodies along a gaze: cut, seen, hidden and hanging, by hand."""

import math

import pytest

from coachwright.drawing.casting import Casting, cast
from coachwright.drawing.gaze import (
    Gaze,
    fallen,
    forwards,
    from_above,
    plane,
    to_the_left,
    to_the_right,
)
from coachwright.drawing.scene import Area, Layer, Line, Style, Weight
from coachwright.drawing.things import Corner, Thing
from coachwright.model.build import Mounting


def _box(
    name: str,
    low: Corner,
    high: Corner,
    *,
    carriers: tuple[str, ...] = (),
    boxes: tuple[tuple[Corner, Corner], ...] = (),
    round_axis: int | None = None,
) -> Thing:
    return Thing(
        name=name,
        number="1",
        words=name,
        layer=Layer.FURNITURE,
        boxes_mm=boxes or ((low, high),),
        low_mm=low,
        high_mm=high,
        carriers=carriers,
        mounting=Mounting.FLOOR,
        round_axis=round_axis,
    )


def _length(casting: Casting, style: Style, weight: Weight | None = None) -> float:
    return sum(
        math.dist(line.start_mm, line.end_mm)
        for line in casting.lines
        if isinstance(line, Line)
        and line.style is style
        and (weight is None or line.weight is weight)
    )


LOW = _box("low", (0.0, 0.0, 0.0), (1000.0, 400.0, 500.0))
TALL = _box("tall", (600.0, 0.0, 0.0), (1400.0, 400.0, 1800.0))


def test_what_the_plane_cuts_is_drawn_heavy() -> None:
    casting = cast([LOW], from_above(200.0))
    assert _length(casting, Style.SOLID, Weight.BOLD) == pytest.approx(2800.0)
    assert casting.tags[0].cut


def test_what_lies_below_the_plane_is_drawn_lighter() -> None:
    casting = cast([LOW], from_above(900.0))
    assert _length(casting, Style.SOLID, Weight.NORMAL) == pytest.approx(2800.0)
    assert not casting.tags[0].cut


def test_what_hangs_above_the_plane_is_left_out_or_dashed() -> None:
    shelf = _box("shelf", (0.0, 0.0, 1500.0), (1000.0, 400.0, 1800.0))
    assert not cast([shelf], from_above(900.0)).lines
    hung = cast([shelf], from_above(900.0), hanging=True)
    assert _length(hung, Style.DASHED) == pytest.approx(2800.0)
    assert [tag.thing.name for tag in hung.hanging] == ["shelf"]


def test_what_stands_under_something_is_dashed_there() -> None:
    over = _box("over", (600.0, -100.0, 600.0), (1400.0, 500.0, 700.0))
    casting = cast([LOW, over], from_above(900.0))
    # of LOW's outline: 400 mm at its right end, and 400 mm of each long side, lie under `over`
    assert _length(casting, Style.DASHED) == pytest.approx(1200.0, abs=0.5)
    assert _length(casting, Style.SOLID) == pytest.approx(2 * (800 + 600) + 400 + 2 * 600, abs=0.5)


def test_neighbours_that_touch_hide_nothing_of_each_other() -> None:
    beside = _box("beside", (1000.0, 0.0, 0.0), (1500.0, 400.0, 900.0))
    casting = cast([LOW, beside], from_above(1000.0))
    assert _length(casting, Style.DASHED) == 0.0


def test_what_is_built_into_a_cut_carcass_is_seen() -> None:
    tank = _box("tank", (100.0, 100.0, 0.0), (500.0, 300.0, 150.0), carriers=("low",))
    casting = cast([LOW, tank], from_above(200.0))
    assert {tag.thing.name for tag in casting.tags if tag.seen} == {"low", "tank"}


def test_what_is_built_into_a_closed_carcass_is_hidden_or_left_out() -> None:
    tank = _box("tank", (100.0, 100.0, 0.0), (500.0, 300.0, 150.0), carriers=("low",))
    shown = cast([LOW, tank], from_above(900.0))
    assert [tag.seen for tag in shown.tags if tag.thing.name == "tank"] == [False]
    assert [t.thing.name for t in cast([LOW, tank], from_above(900.0), built_in=False).tags] == [
        "low"
    ]


def test_a_face_flush_with_its_carcass_shows_in_it() -> None:
    fridge = _box("fridge", (100.0, 20.0, 0.0), (600.0, 400.0, 450.0), carriers=("low",))
    casting = cast([LOW, fridge], to_the_left(2000.0))
    assert [tag.seen for tag in casting.tags if tag.thing.name == "fridge"] == [True]


def test_a_stepped_body_has_no_edge_where_its_boxes_meet() -> None:
    boxes = (
        ((0.0, 0.0, 0.0), (500.0, 400.0, 300.0)),
        ((500.0, 0.0, 0.0), (1000.0, 400.0, 300.0)),
    )
    whole = _box("ell", (0.0, 0.0, 0.0), (1000.0, 400.0, 300.0), boxes=boxes)
    assert _length(cast([whole], from_above()), Style.SOLID) == pytest.approx(2800.0, abs=0.5)


def test_a_step_has_an_edge() -> None:
    boxes = (
        ((0.0, 0.0, 0.0), (500.0, 400.0, 300.0)),
        ((500.0, 0.0, 0.0), (1000.0, 400.0, 600.0)),
    )
    whole = _box("ell", (0.0, 0.0, 0.0), (1000.0, 400.0, 600.0), boxes=boxes)
    assert _length(cast([whole], from_above()), Style.SOLID) == pytest.approx(3200.0, abs=0.5)


def test_a_cylinder_seen_along_its_axis_is_round() -> None:
    tank = _box("can", (0.0, 0.0, 0.0), (300.0, 300.0, 400.0), round_axis=2)
    round_ = _length(cast([tank], from_above()), Style.SOLID)
    assert round_ == pytest.approx(math.pi * 300.0, rel=0.005)
    assert _length(cast([tank], to_the_left()), Style.SOLID) == pytest.approx(1400.0)


def test_a_wall_hides_what_lies_behind_it_and_parts_the_tones() -> None:
    wall = plane((-2000.0, -2000.0), (2000.0, 2000.0), -1500.0)
    behind = _box("behind", (0.0, 0.0, 0.0), (1000.0, 400.0, 500.0))
    before = _box("before", (1600.0, 0.0, 0.0), (1700.0, 400.0, 500.0))
    casting = cast([behind, before], forwards(), walls=(wall,))
    assert {t.thing.name: t.seen for t in casting.tags} == {"behind": False, "before": True}
    assert len(casting.far_areas) == 1
    assert len(casting.areas) == 1
    assert isinstance(casting.areas[0], Area)


@pytest.mark.parametrize(
    ("gaze", "across"),
    [
        (from_above(), (0.0, 1000.0)),
        (to_the_left(), (-1000.0, 0.0)),
        (to_the_right(), (0.0, 1000.0)),
        (forwards(), (0.0, 400.0)),
    ],
)
def test_each_gaze_has_the_front_where_it_says(gaze: Gaze, across: tuple[float, float]) -> None:
    flat = fallen(LOW, gaze).seen[0]
    assert (flat.low_mm[0], flat.high_mm[0]) == across


def test_a_label_has_the_free_part_of_what_is_covered() -> None:
    casting = cast([LOW, TALL], from_above(2000.0))
    low = next(tag for tag in casting.tags if tag.thing.name == "low")
    assert low.free
    assert low.places_mm[0] == (0.0, 0.0, 600.0, 400.0)
