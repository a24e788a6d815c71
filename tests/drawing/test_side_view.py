"""The side view shows what is fitted where it is, at a usual scale, with every word given."""

from dataclasses import replace
from math import dist

import pytest

from coachwright.drawing.scene import Circle, Dimension, Layer, Rect, Scene, Text
from coachwright.drawing.side_view import (
    SCALES,
    AxleNote,
    SideViewMeasures,
    SideViewNotes,
    side_view,
)
from tests.support.builds import build, fitting, part

MEASURES = SideViewMeasures(
    wheel_diameter_mm=744.0,
    centre_x_mm=1850.0,
    centre_height_mm=840.0,
    length_mm=5990.0,
    height_mm=2700.0,
)
NOTES = SideViewNotes(
    front=AxleNote(name="front axle", load="1,643 kg", limit="rating 1,850 kg"),
    rear=AxleNote(name="rear axle", load="1,702 kg", limit="rating 2,100 kg"),
    wheelbase="wheelbase 4,000 mm",
    length="overall length 5,990 mm",
    height="overall height 2,700 mm",
    centre_x="1,850 mm",
    centre_height="840 mm",
)
CHANGES = {
    "own_parts": [
        part("bank", body={"size": ["500 mm", "300 mm", "250 mm"], "mass": "60 kg"}),
        part("light-box"),
    ],
    "fittings": [
        fitting("battery", "bank", at=["3000 mm", "0 mm", "100 mm"]),
        fitting("battery-two", "bank", at=["3000 mm", "400 mm", "100 mm"]),
        fitting("box", "light-box"),
        fitting("wheel-set", "light-box", mounting="wheels"),
    ],
}


def _scene(width_mm: float = 174.0, height_mm: float = 112.0, **measures: float) -> Scene:
    return side_view(
        build(CHANGES),
        measures=replace(MEASURES, **measures),
        notes=NOTES,
        numbers={"battery": "1", "battery-two": "2"},
        paper_width_mm=width_mm,
        paper_height_mm=height_mm,
    )


def _words(scene: Scene) -> set[str]:
    return {p.text for p in scene.primitives if isinstance(p, Text | Dimension)}


def test_every_word_is_on_the_drawing() -> None:
    words = _words(_scene())
    assert {"front axle", "1,643 kg", "rating 1,850 kg", "rear axle", "1,702 kg"} <= words
    assert {"wheelbase 4,000 mm", "overall length 5,990 mm", "840 mm", "1", "2"} <= words


def test_a_fitting_stands_where_it_is_above_the_ground() -> None:
    heavy = [p for p in _scene().primitives if isinstance(p, Rect) and p.layer is Layer.HEAVY]
    # floor 560 mm above the ground, so 100 mm above the floor is 660 mm
    assert heavy[0].low_mm == (3000.0, 660.0)
    assert heavy[0].high_mm == (3500.0, 910.0)


def test_wheels_are_drawn_as_wheels_and_not_as_a_box() -> None:
    light = [p for p in _scene().primitives if isinstance(p, Rect) and p.layer is Layer.FITTING]
    assert len(light) == 1


def test_the_wheels_stand_on_the_ground_at_the_axles() -> None:
    tyres = [
        p.centre_mm
        for p in _scene().primitives
        if isinstance(p, Circle) and p.radius_mm == pytest.approx(372.0)
    ]
    assert tyres == [(0.0, 372.0), (4000.0, 372.0)]


def test_two_numbers_never_cover_each_other() -> None:
    scene = _scene()
    spots = [p.at_mm for p in scene.primitives if isinstance(p, Text) and p.text in {"1", "2"}]
    assert abs(spots[0][0] - spots[1][0]) + abs(spots[0][1] - spots[1][1]) > 4 * scene.scale_ratio


def test_many_fittings_at_one_place_still_give_a_drawing() -> None:
    names = [f"battery-{index}" for index in range(40)]
    scene = side_view(
        build(CHANGES | {"fittings": [fitting(name, "bank") for name in names]}),
        measures=MEASURES,
        notes=NOTES,
        numbers={name: str(index) for index, name in enumerate(names)},
        paper_width_mm=174.0,
        paper_height_mm=112.0,
    )
    assert {str(index) for index in range(40)} <= _words(scene)


@pytest.mark.parametrize("length_mm", [4500.0, 5990.0, 7400.0, 11000.0])
def test_the_largest_usual_scale_that_fits_is_taken(length_mm: float) -> None:
    scene = _scene(length_mm=length_mm)
    width = (scene.high_mm[0] - scene.low_mm[0]) / scene.scale_ratio
    assert scene.scale_ratio in SCALES
    assert width <= 174.0
    smaller = [scale for scale in SCALES if scale < scene.scale_ratio]
    if smaller:
        tall = MEASURES.height_mm / smaller[-1] + 38
        assert length_mm / smaller[-1] + 19 > 174.0 or tall > 112.0


def test_what_fits_no_scale_is_drawn_at_the_smallest() -> None:
    assert _scene(width_mm=10.0).scale_ratio == SCALES[-1]


@pytest.mark.parametrize("centre_mm", [(3250.0, 785.0), (3200.0, 800.0), (3100.0, 700.0)])
def test_no_number_stands_in_the_centre_of_gravity(centre_mm: tuple[float, float]) -> None:
    scene = _scene(centre_x_mm=centre_mm[0], centre_height_mm=centre_mm[1])
    numbers = [p for p in scene.primitives if isinstance(p, Circle) and p.layer is Layer.BODY]
    (mark,) = [p for p in scene.primitives if isinstance(p, Circle) and p.layer is Layer.CENTRE]
    bubbles = [p for p in numbers if p.radius_mm == 2.0 * scene.scale_ratio]
    assert len(bubbles) == 2
    for bubble in bubbles:
        apart = dist(bubble.centre_mm, mark.centre_mm)
        assert apart >= bubble.radius_mm + mark.radius_mm


def test_a_number_stands_on_its_own_face_where_there_is_room() -> None:
    scene = _scene()
    faces = [p for p in scene.primitives if isinstance(p, Rect) and p.layer is Layer.HEAVY]
    bubbles = [
        p
        for p in scene.primitives
        if isinstance(p, Circle)
        and p.layer is Layer.BODY
        and p.radius_mm == 2.0 * scene.scale_ratio
    ]
    for bubble in bubbles:
        x, height = bubble.centre_mm
        assert any(
            face.low_mm[0] <= x <= face.high_mm[0] and face.low_mm[1] <= height <= face.high_mm[1]
            for face in faces
        )


def test_no_number_is_crossed_by_the_line_under_the_centre_of_gravity() -> None:
    scene = _scene(centre_x_mm=3250.0, centre_height_mm=2000.0)
    for bubble in scene.primitives:
        if isinstance(bubble, Circle) and bubble.radius_mm == 2.0 * scene.scale_ratio:
            assert abs(bubble.centre_mm[0] - 3250.0) >= bubble.radius_mm
