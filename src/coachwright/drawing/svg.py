"""A scene or a sheet as SVG, at its scale: one unit is one millimetre of paper."""

import math
from collections.abc import Iterable

from coachwright.drawing.scene import (
    Arc,
    Area,
    Circle,
    Dimension,
    Layer,
    Line,
    Point,
    Polyline,
    Primitive,
    Rect,
    Scene,
    Sheet,
    Span,
    Style,
    Text,
    Weight,
)
from coachwright.drawing.svg_ink import DASHES_MM, INK, PATTERNS, STROKE_MM, TONE
from coachwright.drawing.svg_text import backing, lettering, turned
from coachwright.drawing.svg_text import number as _n

_GAP_MM = 0.9
_OVERSHOOT_MM = 1.0
_TICK_MM = 0.8


def svg(scene: Scene) -> str:
    """Return a scene as SVG text; the same scene gives the same text."""
    pen = _Pen(scene, (0.0, (scene.high_mm[1] - scene.low_mm[1]) / scene.scale_ratio))
    size = (
        (scene.high_mm[0] - scene.low_mm[0]) / scene.scale_ratio,
        (scene.high_mm[1] - scene.low_mm[1]) / scene.scale_ratio,
    )
    return _document(size, scene.primitives, [pen])


def svg_sheet(sheet: Sheet) -> str:
    """Return a sheet with its frame and everything on it; the same sheet gives the same text."""
    height_mm = sheet.size_mm[1]
    panes = ((pane.scene, pane.at_mm) for pane in sheet.panes)
    placed = [(sheet.frame, (0.0, 0.0)), *panes]
    pens = [_Pen(scene, (at_mm[0], height_mm - at_mm[1])) for scene, at_mm in placed]
    primitives = tuple(p for scene, _ in placed for p in scene.primitives)
    return _document(sheet.size_mm, primitives, pens, background=True)


def _document(
    size: Point, primitives: Iterable[Primitive], pens: list["_Pen"], *, background: bool = False
) -> str:
    used = {p.pattern for p in primitives if isinstance(p, Area)}
    patterns = "".join(text for pattern, text in PATTERNS.items() if pattern in used)
    defs = f"<defs>{patterns}</defs>" if patterns else ""
    width, height = _n(size[0]), _n(size[1])
    paper = f'<rect width="{width}" height="{height}" fill="#ffffff"/>' if background else ""
    body = "".join(pen.drawing() for pen in pens)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}" font-family="Inter" fill="none">{defs}{paper}{body}</svg>'
    )


class _Pen:
    """Turns millimetres of the thing into millimetres of paper, downwards."""

    def __init__(self, scene: Scene, corner: Point) -> None:
        """Keep where the scene's lower left corner stands, counted downwards."""
        self._scene = scene
        self._scale = scene.scale_ratio
        self._corner = corner

    def drawing(self) -> str:
        return "".join(self.drawn(primitive) for primitive in self._scene.primitives)

    def place(self, point: Point) -> Point:
        low = self._scene.low_mm
        return (
            self._corner[0] + (point[0] - low[0]) / self._scale,
            self._corner[1] - (point[1] - low[1]) / self._scale,
        )

    def drawn(self, primitive: Primitive) -> str:
        match primitive:
            case Line():
                start, end = self.place(primitive.start_mm), self.place(primitive.end_mm)
                text = _line(start, end, primitive.layer, primitive.weight, primitive.style)
            case Polyline():
                text = self._polyline(primitive)
            case Area():
                text = self._area(primitive)
            case Rect():
                text = self._rect(primitive)
            case Circle():
                text = self._circle(primitive)
            case Arc():
                text = self._arc(primitive)
            case Text():
                text = self._text(primitive)
            case Dimension():
                text = self._dimension(primitive)
            case Span():
                text = self._span(primitive)
        return text

    def _places(self, points: Iterable[Point]) -> str:
        return " ".join(f"{_n(x)},{_n(y)}" for x, y in map(self.place, points))

    def _polyline(self, line: Polyline) -> str:
        name = "polygon" if line.closed else "polyline"
        fill = f' fill="{TONE[line.layer]}"' if line.filled else ""
        return (
            f'<{name} points="{self._places(line.points_mm)}" stroke="{INK[line.layer]}" '
            f'stroke-width="{STROKE_MM[line.weight]}" stroke-linejoin="round"'
            f"{_dash(line.style)}{fill}/>"
        )

    def _area(self, area: Area) -> str:
        fill = TONE[area.layer] if area.pattern is None else f"url(#{area.pattern})"
        return f'<polygon points="{self._places(area.points_mm)}" fill="{fill}"/>'

    def _rect(self, rect: Rect) -> str:
        left, top = self.place((rect.low_mm[0], rect.high_mm[1]))
        right, bottom = self.place((rect.high_mm[0], rect.low_mm[1]))
        return (
            f'<rect x="{_n(left)}" y="{_n(top)}" width="{_n(right - left)}" '
            f'height="{_n(bottom - top)}" stroke="{INK[rect.layer]}" '
            f'stroke-width="{STROKE_MM[rect.weight]}" fill="{TONE[rect.layer]}"/>'
        )

    def _circle(self, circle: Circle) -> str:
        x, y = self.place(circle.centre_mm)
        fill = f' fill="{TONE[circle.layer]}"' if circle.filled else ""
        return (
            f'<circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(circle.radius_mm / self._scale)}" '
            f'stroke="{INK[circle.layer]}" stroke-width="{STROKE_MM[circle.weight]}"{fill}/>'
        )

    def _arc(self, arc: Arc) -> str:
        start, end = (
            self.place(
                (
                    arc.centre_mm[0] + arc.radius_mm * math.cos(math.radians(deg)),
                    arc.centre_mm[1] + arc.radius_mm * math.sin(math.radians(deg)),
                )
            )
            for deg in (arc.from_deg, arc.to_deg)
        )
        radius = _n(arc.radius_mm / self._scale)
        wide = int(arc.to_deg - arc.from_deg > 180)  # noqa: PLR2004  # half a turn
        return (
            f'<path d="M{_n(start[0])} {_n(start[1])}A{radius} {radius} 0 {wide} 0 '
            f'{_n(end[0])} {_n(end[1])}" stroke="{INK[arc.layer]}" '
            f'stroke-width="{STROKE_MM[arc.weight]}"{_dash(arc.style)}/>'
        )

    def _text(self, text: Text) -> str:
        at = self.place(text.at_mm)
        letters = lettering(
            at, text.text, text.height_mm, str(text.anchor), INK[text.layer], strong=text.strong
        )
        behind = backing(at, text) if text.backed else ""
        return turned(at, behind + letters) if text.upright else behind + letters

    def _dimension(self, dimension: Dimension) -> str:
        start, end = self.place(dimension.start_mm), self.place(dimension.end_mm)
        if dimension.upright:
            across = self.place((dimension.line_mm, 0.0))[0]
            ends = ((across, start[1]), (across, end[1]))
        else:
            down = self.place((0.0, dimension.line_mm))[1]
            ends = ((start[0], down), (end[0], down))
        layer = dimension.layer
        parts = [_line(*ends, layer, Weight.FINE)]
        for point, stop in zip((start, end), ends, strict=True):
            parts.append(_extension(point, stop, layer))
            parts.append(_tick(stop, layer))
        parts.append(self._measure(ends, dimension))
        return "".join(parts)

    def _measure(self, ends: tuple[Point, Point], dimension: Dimension) -> str:
        middle = ((ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2)
        if dimension.text_at_mm is not None:
            foot = self.place(dimension.text_at_mm)
        elif dimension.upright:
            foot = (middle[0] - _GAP_MM, middle[1])
        else:
            foot = (middle[0], middle[1] - _GAP_MM)
        ink = INK[dimension.layer]
        letters = lettering(foot, dimension.text, dimension.letters_mm, "middle", ink)
        if dimension.text_at_mm is not None:
            text = Text(
                at_mm=foot,
                text=dimension.text,
                layer=dimension.layer,
                height_mm=dimension.letters_mm,
            )
            letters = backing(foot, text) + letters
        return turned(foot, letters) if dimension.upright else letters

    def _span(self, span: Span) -> str:
        start, end = self.place(span.start_mm), self.place(span.end_mm)
        layer = span.layer
        text = Text(
            at_mm=span.text_at_mm,
            text=span.text,
            layer=layer,
            height_mm=span.letters_mm,
            strong=True,
            backed=True,
        )
        return (
            _line(start, end, layer, Weight.FINE)
            + _tick(start, layer)
            + _tick(end, layer)
            + self._text(text)
        )


def _line(
    start: Point, end: Point, layer: Layer, weight: Weight, style: Style = Style.SOLID
) -> str:
    return (
        f'<line x1="{_n(start[0])}" y1="{_n(start[1])}" x2="{_n(end[0])}" y2="{_n(end[1])}" '
        f'stroke="{INK[layer]}" stroke-width="{STROKE_MM[weight]}"{_dash(style)}/>'
    )


def _dash(style: Style) -> str:
    return f' stroke-dasharray="{DASHES_MM[style]}"' if style in DASHES_MM else ""


def _tick(at: Point, layer: Layer) -> str:
    start = (at[0] - _TICK_MM, at[1] + _TICK_MM)
    return _line(start, (at[0] + _TICK_MM, at[1] - _TICK_MM), layer, Weight.NORMAL)


def _extension(point: Point, stop: Point, layer: Layer) -> str:
    start = tuple(_away_mm(a, b, _GAP_MM) for a, b in zip(point, stop, strict=True))
    end = tuple(_away_mm(b, b + (b - a), _OVERSHOOT_MM) for a, b in zip(point, stop, strict=True))
    return _line((start[0], start[1]), (end[0], end[1]), layer, Weight.FINE)


def _away_mm(from_mm: float, to_mm: float, step_mm: float) -> float:
    """Return a coordinate one step towards another; itself where they are equal."""
    if abs(to_mm - from_mm) <= step_mm:
        return from_mm
    return from_mm + step_mm if to_mm > from_mm else from_mm - step_mm
