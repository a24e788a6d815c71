"""A scene as SVG, at its scale: one unit is one millimetre of paper."""

from xml.sax.saxutils import escape

from coachwright.drawing.scene import (
    Circle,
    Dimension,
    Layer,
    Line,
    Point,
    Polyline,
    Primitive,
    Rect,
    Scene,
    Text,
    Weight,
)

_STROKE_MM = {Weight.FINE: 0.12, Weight.NORMAL: 0.22, Weight.BOLD: 0.45}
_INK = {
    Layer.BODY: "#16212b",
    Layer.GROUND: "#56626d",
    Layer.FITTING: "#8b96a0",
    Layer.HEAVY: "#16212b",
    Layer.LOAD: "#1d4e79",
    Layer.DIMENSION: "#56626d",
    Layer.CENTRE: "#16212b",
    Layer.CENTRE_FILL: "#16212b",
}
_TONE = {
    Layer.BODY: "#ffffff",
    Layer.GROUND: "none",
    Layer.FITTING: "#eef1f3",
    Layer.HEAVY: "#d5dde4",
    Layer.LOAD: "#1d4e79",
    Layer.DIMENSION: "#56626d",
    Layer.CENTRE: "#ffffff",
    Layer.CENTRE_FILL: "#16212b",
}
_DASHES_MM = "1.6 1.0"
_DIMENSION_LETTERS_MM = 2.3
_GAP_MM = 0.9
_OVERSHOOT_MM = 1.0
_TICK_MM = 0.8


def svg(scene: Scene) -> str:
    """Return a scene as SVG text; the same scene gives the same text."""
    pen = _Pen(scene)
    body = "".join(pen.drawn(primitive) for primitive in scene.primitives)
    width, height = pen.size_mm
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{_n(width)}mm" height="{_n(height)}mm" '
        f'viewBox="0 0 {_n(width)} {_n(height)}" font-family="Inter" fill="none">{body}</svg>'
    )


def _n(length_mm: float) -> str:
    text = f"{length_mm:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


class _Pen:
    """Turns millimetres of the thing into millimetres of paper, downwards."""

    def __init__(self, scene: Scene) -> None:
        self._low = scene.low_mm
        self._high = scene.high_mm
        self._scale = scene.scale_ratio

    @property
    def size_mm(self) -> Point:
        return (
            (self._high[0] - self._low[0]) / self._scale,
            (self._high[1] - self._low[1]) / self._scale,
        )

    def place(self, point: Point) -> Point:
        return (
            (point[0] - self._low[0]) / self._scale,
            (self._high[1] - point[1]) / self._scale,
        )

    def drawn(self, primitive: Primitive) -> str:
        match primitive:
            case Line():
                dash = f' stroke-dasharray="{_DASHES_MM}"' if primitive.dashed else ""
                return self._line(
                    self.place(primitive.start_mm),
                    self.place(primitive.end_mm),
                    primitive.layer,
                    primitive.weight,
                    dash,
                )
            case Polyline():
                return self._polyline(primitive)
            case Rect():
                return self._rect(primitive)
            case Circle():
                return self._circle(primitive)
            case Text():
                return self._text(primitive)
            case Dimension():
                return self._dimension(primitive)

    def _line(self, start: Point, end: Point, layer: Layer, weight: Weight, more: str = "") -> str:
        return (
            f'<line x1="{_n(start[0])}" y1="{_n(start[1])}" x2="{_n(end[0])}" y2="{_n(end[1])}" '
            f'stroke="{_INK[layer]}" stroke-width="{_STROKE_MM[weight]}"{more}/>'
        )

    def _polyline(self, line: Polyline) -> str:
        places = " ".join(f"{_n(x)},{_n(y)}" for x, y in map(self.place, line.points_mm))
        name = "polygon" if line.closed else "polyline"
        fill = f' fill="{_TONE[line.layer]}"' if line.filled else ""
        return (
            f'<{name} points="{places}" stroke="{_INK[line.layer]}" '
            f'stroke-width="{_STROKE_MM[line.weight]}" stroke-linejoin="round"{fill}/>'
        )

    def _rect(self, rect: Rect) -> str:
        left, top = self.place((rect.low_mm[0], rect.high_mm[1]))
        right, bottom = self.place((rect.high_mm[0], rect.low_mm[1]))
        return (
            f'<rect x="{_n(left)}" y="{_n(top)}" width="{_n(right - left)}" '
            f'height="{_n(bottom - top)}" stroke="{_INK[rect.layer]}" '
            f'stroke-width="{_STROKE_MM[rect.weight]}" fill="{_TONE[rect.layer]}"/>'
        )

    def _circle(self, circle: Circle) -> str:
        x, y = self.place(circle.centre_mm)
        fill = f' fill="{_TONE[circle.layer]}"' if circle.filled else ""
        return (
            f'<circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(circle.radius_mm / self._scale)}" '
            f'stroke="{_INK[circle.layer]}" stroke-width="{_STROKE_MM[circle.weight]}"{fill}/>'
        )

    def _text(self, text: Text) -> str:
        x, y = self.place(text.at_mm)
        weight = ' font-weight="600"' if text.strong else ""
        return (
            f'<text x="{_n(x)}" y="{_n(y)}" font-size="{_n(text.height_mm)}" '
            f'text-anchor="{text.anchor}"{weight} '
            f'fill="{_INK[text.layer]}">{escape(text.text)}</text>'
        )

    def _dimension(self, dimension: Dimension) -> str:
        start, end = self.place(dimension.start_mm), self.place(dimension.end_mm)
        if dimension.upright:
            across = self.place((dimension.line_mm, 0.0))[0]
            ends = ((across, start[1]), (across, end[1]))
        else:
            down = self.place((0.0, dimension.line_mm))[1]
            ends = ((start[0], down), (end[0], down))
        layer, fine = dimension.layer, Weight.FINE
        parts = [self._line(*ends, layer, fine)]
        for point, stop in zip((start, end), ends, strict=True):
            parts.append(self._extension(point, stop, layer))
            parts.append(
                self._line(
                    (stop[0] - _TICK_MM, stop[1] + _TICK_MM),
                    (stop[0] + _TICK_MM, stop[1] - _TICK_MM),
                    layer,
                    Weight.NORMAL,
                )
            )
        parts.append(self._measure(ends, dimension))
        return "".join(parts)

    def _extension(self, point: Point, stop: Point, layer: Layer) -> str:
        start = tuple(_away_mm(a, b, _GAP_MM) for a, b in zip(point, stop, strict=True))
        end = tuple(
            _away_mm(b, b + (b - a), _OVERSHOOT_MM) for a, b in zip(point, stop, strict=True)
        )
        return self._line((start[0], start[1]), (end[0], end[1]), layer, Weight.FINE)

    def _measure(self, ends: tuple[Point, Point], dimension: Dimension) -> str:
        across = (ends[0][0] + ends[1][0]) / 2
        down = (ends[0][1] + ends[1][1]) / 2
        letters = (
            f'<text x="{_n(across)}" y="{_n(down - _GAP_MM)}" font-size="{_DIMENSION_LETTERS_MM}" '
            f'text-anchor="middle" fill="{_INK[dimension.layer]}">{escape(dimension.text)}</text>'
        )
        if not dimension.upright:
            return letters
        return f'<g transform="rotate(-90 {_n(across)} {_n(down)})">{letters}</g>'


def _away_mm(from_mm: float, to_mm: float, step_mm: float) -> float:
    """Return a coordinate one step towards another; itself where they are equal."""
    if abs(to_mm - from_mm) <= step_mm:
        return from_mm
    return from_mm + step_mm if to_mm > from_mm else from_mm - step_mm
