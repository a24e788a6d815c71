"""Primitives as DXF entities."""

import math
from collections.abc import Iterable
from typing import Any

from coachwright.drawing.dimensioning import LETTERS_MM
from coachwright.drawing.dxf_style import (
    DIMENSION_STYLE,
    LAYER_OF,
    TEXT_STYLE,
    WEIGHTS,
    line_type,
)
from coachwright.drawing.lettering import CAP_RATIO
from coachwright.drawing.measure import length_text
from coachwright.drawing.scene import (
    Anchor,
    Arc,
    Area,
    Circle,
    Dimension,
    Layer,
    Line,
    Pattern,
    Point,
    Polyline,
    Primitive,
    Rect,
    Span,
    Style,
    Text,
    Weight,
)

_HATCHES = {Pattern.DIAGONAL: ("ANSI31", 0.45, 7), Pattern.CROSSED: ("ANSI37", 0.5, 8)}
"""Pattern of the library, its scale for 1 mm of paper, its colour."""
_MEASURED = "<>"
"""Stands for the measured length in a dimension's text."""


class Writer:
    """Writes primitives into one layout of a document."""

    def __init__(
        self,
        layout: Any,
        *,
        scale_ratio: float,
        system: str,
        on_paper: bool = False,
        shift_mm: float = 0.0,
    ) -> None:
        """Keep the layout, the scale of its lettering and how far everything moves across."""
        self._layout = layout
        self._scale = scale_ratio
        self._system = system
        self._on_paper = on_paper
        self._shift = shift_mm

    def write(self, primitives: Iterable[Primitive]) -> None:
        """Add primitives in their order; tones are left out."""
        for primitive in primitives:
            match primitive:
                case Line() | Polyline() | Rect() | Arc():
                    self._stroke(primitive)
                case Area():
                    self._area(primitive)
                case Circle():
                    self._circle(primitive)
                case Text():
                    self._text(primitive)
                case Dimension():
                    self._dimension(primitive)
                case Span():
                    self._span(primitive)

    def _stroke(self, drawn: Line | Polyline | Rect | Arc) -> None:
        style = Style.SOLID if isinstance(drawn, Rect) else drawn.style
        attributes = self._attributes(drawn.layer, drawn.weight, style)
        match drawn:
            case Line():
                ends = self._at(drawn.start_mm), self._at(drawn.end_mm)
                self._layout.add_line(*ends, attributes)
            case Polyline():
                self._outline(drawn.points_mm, attributes, closed=drawn.closed)
            case Rect():
                low, high = drawn.low_mm, drawn.high_mm
                corners = (low, (high[0], low[1]), high, (low[0], high[1]))
                self._outline(corners, attributes, closed=True)
            case Arc():
                self._layout.add_arc(
                    self._at(drawn.centre_mm),
                    drawn.radius_mm,
                    drawn.from_deg,
                    drawn.to_deg,
                    dxfattribs=attributes,
                )

    def _at(self, point: Point) -> Point:
        return (point[0] + self._shift, point[1])

    def _attributes(
        self, layer: Layer, weight: Weight, style: Style = Style.SOLID
    ) -> dict[str, Any]:
        return {
            "layer": LAYER_OF[layer],
            "lineweight": WEIGHTS[weight],
            "linetype": line_type(style, on_paper=self._on_paper),
        }

    def _outline(
        self, points: tuple[Point, ...], attributes: dict[str, Any], *, closed: bool
    ) -> None:
        self._layout.add_lwpolyline(
            [self._at(point) for point in points], close=closed, dxfattribs=attributes
        )

    def _area(self, area: Area) -> None:
        if area.pattern is None and area.layer is not Layer.CENTRE_FILL:
            return
        hatch = self._layout.add_hatch(dxfattribs={"layer": LAYER_OF[area.layer]})
        if area.pattern is not None:
            name, scale, colour = _HATCHES[area.pattern]
            hatch.set_pattern_fill(name, color=colour, scale=scale * self._scale)
        hatch.paths.add_polyline_path([self._at(p) for p in area.points_mm], is_closed=True)

    def _circle(self, circle: Circle) -> None:
        attributes = self._attributes(circle.layer, circle.weight)
        centre = self._at(circle.centre_mm)
        if circle.layer is not Layer.CENTRE_FILL:
            self._layout.add_circle(centre, circle.radius_mm, attributes)
            return
        # a ring as wide as its radius is a full disc
        half = circle.radius_mm / 2
        points = [(centre[0] - half, centre[1], 1.0), (centre[0] + half, centre[1], 1.0)]
        disc = self._layout.add_lwpolyline(points, format="xyb", close=True, dxfattribs=attributes)
        disc.dxf.const_width = circle.radius_mm

    def _text(self, text: Text) -> None:
        from ezdxf.enums import TextEntityAlignment  # noqa: PLC0415  # heavy

        where = {
            Anchor.START: TextEntityAlignment.LEFT,
            Anchor.MIDDLE: TextEntityAlignment.CENTER,
            Anchor.END: TextEntityAlignment.RIGHT,
        }
        entity = self._layout.add_text(
            text.text,
            height=text.height_mm * CAP_RATIO * self._scale,
            rotation=90.0 if text.upright else 0.0,
            dxfattribs={"layer": LAYER_OF[text.layer], "style": TEXT_STYLE},
        )
        entity.set_placement(self._at(text.at_mm), align=where[text.anchor])

    def _dimension(self, dimension: Dimension) -> None:
        start, end = self._at(dimension.start_mm), self._at(dimension.end_mm)
        axis = 1 if dimension.upright else 0
        base = (
            (dimension.line_mm + self._shift, start[1])
            if dimension.upright
            else (start[0], dimension.line_mm)
        )
        made = self._layout.add_linear_dim(
            base=base,
            p1=start,
            p2=end,
            angle=90.0 if dimension.upright else 0.0,
            text=self._measured(dimension.text, abs(end[axis] - start[axis])),
            dimstyle=DIMENSION_STYLE,
            dxfattribs={"layer": LAYER_OF[dimension.layer]},
        )
        self._placed(made, dimension.text_at_mm, upright=dimension.upright)

    def _span(self, span: Span) -> None:
        start, end = self._at(span.start_mm), self._at(span.end_mm)
        made = self._layout.add_aligned_dim(
            p1=start,
            p2=end,
            distance=0.0,
            text=self._measured(span.text, math.dist(start, end)),
            dimstyle=DIMENSION_STYLE,
            dxfattribs={"layer": LAYER_OF[span.layer]},
        )
        self._placed(made, span.text_at_mm, upright=False, level=True)

    def _placed(
        self, made: Any, foot: Point | None, *, upright: bool, level: bool = False
    ) -> None:
        """Put a dimension's text where the scene has it."""
        if foot is not None:
            half = LETTERS_MM * CAP_RATIO * self._scale / 2
            x, y = self._at(foot)
            made.set_location((x - half, y) if upright else (x, y + half))
        if level:
            made.dimension.dxf.text_rotation = 0.0
        made.render()

    def _measured(self, text: str, length_mm: float) -> str:
        """Return a text in which the measured length stays alive, where that shows the same."""
        own = length_text(length_mm, self._system)
        if self._system == "metric" and text.endswith(own):
            return f"{text[: len(text) - len(own)]}{_MEASURED}"
        return text
