"""A scene becomes SVG at its scale, right way up, and safe to embed."""

import xml.etree.ElementTree as ET

from coachwright.drawing.scene import (
    Anchor,
    Circle,
    Dimension,
    Layer,
    Line,
    Polyline,
    Primitive,
    Rect,
    Scene,
    Style,
    Text,
)
from coachwright.drawing.svg import svg

SVG = "{http://www.w3.org/2000/svg}"


def _drawn(*primitives: Primitive) -> ET.Element:
    scene = Scene(
        primitives=primitives, low_mm=(-100.0, -50.0), high_mm=(900.0, 450.0), scale_ratio=10.0
    )
    return ET.fromstring(svg(scene))  # noqa: S314  # our own text


def test_the_paper_is_the_thing_over_the_scale() -> None:
    root = _drawn()
    assert (root.get("width"), root.get("height")) == ("100mm", "50mm")
    assert root.get("viewBox") == "0 0 100 50"


def test_up_in_the_thing_is_up_on_the_paper() -> None:
    line = _drawn(Line(start_mm=(0.0, 0.0), end_mm=(400.0, 450.0), layer=Layer.BODY))[0]
    assert [line.get(name) for name in ("x1", "y1", "x2", "y2")] == ["10", "45", "50", "0"]


def test_a_rectangle_keeps_its_size() -> None:
    rect = _drawn(Rect(low_mm=(100.0, 0.0), high_mm=(300.0, 150.0), layer=Layer.HEAVY))[0]
    assert [rect.get(name) for name in ("x", "y", "width", "height")] == ["20", "30", "20", "15"]


def test_a_circle_is_scaled() -> None:
    circle = _drawn(Circle(centre_mm=(0.0, 0.0), radius_mm=372.0, layer=Layer.BODY))[0]
    assert circle.get("r") == "37.2"


def test_lettering_is_measured_on_the_paper_and_escaped() -> None:
    text = _drawn(
        Text(at_mm=(0.0, 0.0), text="a < b & c", layer=Layer.BODY, anchor=Anchor.END, strong=True)
    )[0]
    assert text.text == "a < b & c"
    assert text.get("font-size") == "2.5"
    assert text.get("text-anchor") == "end"
    assert text.get("font-weight") == "600"


def test_an_open_line_is_not_closed_and_a_closed_one_is() -> None:
    points = ((0.0, 0.0), (100.0, 0.0), (100.0, 100.0))
    open_one, closed = _drawn(
        Polyline(points_mm=points, layer=Layer.BODY),
        Polyline(points_mm=points, layer=Layer.BODY, closed=True, filled=True),
    )
    assert (open_one.tag, closed.tag) == (f"{SVG}polyline", f"{SVG}polygon")
    assert open_one.get("fill") is None


def test_a_flat_dimension_spans_its_two_points() -> None:
    root = _drawn(
        Dimension(start_mm=(0.0, 0.0), end_mm=(400.0, 0.0), line_mm=-30.0, text="400 mm")
    )
    line = root[0]
    assert (line.get("x1"), line.get("x2")) == ("10", "50")
    assert line.get("y1") == line.get("y2") == "48"
    assert root[-1].text == "400 mm"


def test_an_upright_dimension_turns_its_text() -> None:
    root = _drawn(
        Dimension(
            start_mm=(0.0, 0.0), end_mm=(0.0, 400.0), line_mm=-50.0, text="400 mm", upright=True
        )
    )
    assert (root[0].get("x1"), root[0].get("x2")) == ("5", "5")
    assert root[-1].get("transform", "").startswith("rotate(-90")


def test_the_same_scene_gives_the_same_text() -> None:
    line = Line(start_mm=(0.0, 1 / 3), end_mm=(2 / 3, 0.0), layer=Layer.LOAD, style=Style.DASHED)
    assert ET.tostring(_drawn(line)) == ET.tostring(_drawn(line))
