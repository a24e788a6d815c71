"""What charts share: months along the foot, fills told apart without colour, keys, labels."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from coachwright.drawing.lettering import text_width_mm
from coachwright.drawing.scene import (
    Anchor,
    Area,
    Layer,
    Line,
    Pattern,
    Point,
    Polyline,
    Primitive,
    Style,
    Text,
    Weight,
)

LETTERS_MM = 2.8
SMALL_MM = 2.3
LEFT_MM = 15.0
"""Room for the figures of an axis."""
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_SWATCH_MM = (5.0, 2.6)
_KEY_LINE_MM = 4.2
_LABEL_STEP_MM = 3.0
_HALF_CAP_MM = 0.85


@dataclass(frozen=True, kw_only=True, slots=True)
class Fill:
    """How a kind of thing is filled: a tone, perhaps hatched, and a letter."""

    letter: str
    words: str
    layer: Layer
    pattern: Pattern | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Stroke:
    """How a curve is drawn."""

    words: str
    layer: Layer
    weight: Weight = Weight.NORMAL
    style: Style = Style.SOLID


@dataclass(frozen=True, kw_only=True, slots=True)
class Columns:
    """Twelve months side by side."""

    left_mm: float
    right_mm: float

    @property
    def step_mm(self) -> float:
        """Width of one."""
        return (self.right_mm - self.left_mm) / len(MONTHS)

    def middle_mm(self, month: int) -> float:
        """Return the middle of a month, from 1."""
        return self.left_mm + (month - 0.5) * self.step_mm


def heading(text: str, at_mm: Point) -> Text:
    """Return the title of a chart."""
    return Text(
        at_mm=at_mm,
        text=text,
        layer=Layer.BODY,
        anchor=Anchor.START,
        height_mm=LETTERS_MM,
        strong=True,
    )


def small(
    text: str, at_mm: Point, anchor: Anchor = Anchor.MIDDLE, *, strong: bool = False
) -> Text:
    """Return small lettering."""
    return Text(
        at_mm=at_mm, text=text, layer=Layer.BODY, anchor=anchor, height_mm=SMALL_MM, strong=strong
    )


def month_names(
    columns: Columns, foot_mm: float, strong: tuple[int, ...] = ()
) -> Iterator[Primitive]:
    """Yield the names of the months, some in the heavier type."""
    for month, name in enumerate(MONTHS, start=1):
        yield small(name, (columns.middle_mm(month), foot_mm), strong=month in strong)


def block(low_mm: Point, high_mm: Point, fill: Fill) -> Iterator[Primitive]:
    """Yield an upright rectangle with its fill, and its letter where that fits."""
    corners = (low_mm, (high_mm[0], low_mm[1]), high_mm, (low_mm[0], high_mm[1]))
    yield from shape(corners, fill)
    wide, high = high_mm[0] - low_mm[0], high_mm[1] - low_mm[1]
    if fill.letter and wide > _SWATCH_MM[1] and high > _SWATCH_MM[1]:
        yield Text(
            at_mm=((low_mm[0] + high_mm[0]) / 2, (low_mm[1] + high_mm[1]) / 2 - _HALF_CAP_MM),
            text=fill.letter,
            layer=Layer.BODY,
            height_mm=SMALL_MM,
            strong=True,
            backed=True,
        )


def shape(corners_mm: tuple[Point, ...], fill: Fill) -> Iterator[Primitive]:
    """Yield a closed outline with its fill."""
    yield Area(points_mm=corners_mm, layer=fill.layer)
    if fill.pattern is not None:
        yield Area(points_mm=corners_mm, layer=fill.layer, pattern=fill.pattern)
    yield Polyline(points_mm=corners_mm, layer=fill.layer, weight=Weight.FINE, closed=True)


def key_height_mm(fills: Iterable[Fill | Stroke], width_mm: float) -> float:
    """Return how high a key is that has a width for itself."""
    return _KEY_LINE_MM * len(_lines(tuple(fills), width_mm))


def key(fills: Iterable[Fill | Stroke], at_mm: Point, width_mm: float) -> Iterator[Primitive]:
    """Yield a key: swatch and words one after the other, in as many lines as it needs.

    Parameters
    ----------
    fills
        What it explains.
    at_mm
        Its upper left corner.
    width_mm
        Room for it. [mm]
    """
    for index, line in enumerate(_lines(tuple(fills), width_mm)):
        across, foot = at_mm[0], at_mm[1] - _KEY_LINE_MM * (index + 1) + 1.0
        for each in line:
            yield from _swatch(each, (across, foot))
            text = _key_words(each)
            yield small(text, (across + _SWATCH_MM[0] + 1.2, foot + 0.4), Anchor.START)
            across += _key_width_mm(each)


def _swatch(each: Fill | Stroke, at_mm: Point) -> Iterator[Primitive]:
    far = (at_mm[0] + _SWATCH_MM[0], at_mm[1] + _SWATCH_MM[1])
    if isinstance(each, Fill):
        yield from shape((at_mm, (far[0], at_mm[1]), far, (at_mm[0], far[1])), each)
    else:
        middle = (at_mm[1] + far[1]) / 2
        yield Line(
            start_mm=(at_mm[0], middle),
            end_mm=(far[0], middle),
            layer=each.layer,
            weight=each.weight,
            style=each.style,
        )


def _key_words(each: Fill | Stroke) -> str:
    letter = each.letter if isinstance(each, Fill) else ""
    return f"{letter}  {each.words}" if letter else each.words


def _key_width_mm(each: Fill | Stroke) -> float:
    return _SWATCH_MM[0] + text_width_mm(_key_words(each), SMALL_MM) + 5.0


def _lines(fills: tuple[Fill | Stroke, ...], width_mm: float) -> list[list[Fill | Stroke]]:
    lines: list[list[Fill | Stroke]] = []
    room = 0.0
    for each in fills:
        wide = _key_width_mm(each)
        if not lines or wide > room:
            lines.append([])
            room = width_mm
        lines[-1].append(each)
        room -= wide
    return lines


def side_labels(
    ends: Iterable[tuple[Point, str, Layer]], *, across_mm: float, foot_mm: float, head_mm: float
) -> Iterator[Primitive]:
    """Yield a label for each curve beside its last point; those too near are moved apart.

    Parameters
    ----------
    ends
        Last point of each curve, its words and its layer.
    across_mm
        Where the words begin. [mm]
    foot_mm, head_mm
        Between which they stand. [mm]
    """
    ordered = sorted(ends, key=lambda each: each[0][1])
    heights: list[float] = []
    for (_, high), _, _ in ordered:
        least = heights[-1] + _LABEL_STEP_MM if heights else foot_mm
        heights.append(max(high, least))
    ceiling = head_mm
    for index in reversed(range(len(heights))):
        heights[index] = min(heights[index], ceiling)
        ceiling = heights[index] - _LABEL_STEP_MM
    for (end, text, layer), height in zip(ordered, heights, strict=True):
        yield Line(
            start_mm=end,
            end_mm=(across_mm - 0.8, height),
            layer=Layer.FITTING,
            weight=Weight.FINE,
        )
        yield Text(
            at_mm=(across_mm, height - _HALF_CAP_MM),
            text=text,
            layer=layer,
            anchor=Anchor.START,
            height_mm=SMALL_MM,
        )
