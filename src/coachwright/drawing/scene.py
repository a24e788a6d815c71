"""A drawing as primitives: positions in mm of the thing drawn, lettering in mm of the paper."""

from dataclasses import dataclass
from enum import StrEnum

Point = tuple[float, float]
"""Across and up. [mm]"""


class Layer(StrEnum):
    """What a primitive shows."""

    BODY = "body"
    GROUND = "ground"
    FITTING = "fitting"
    HEAVY = "heavy"
    LOAD = "load"
    DIMENSION = "dimension"
    CENTRE = "centre"
    CENTRE_FILL = "centre fill"


class Weight(StrEnum):
    """How heavy a line is drawn."""

    FINE = "fine"
    NORMAL = "normal"
    BOLD = "bold"


class Anchor(StrEnum):
    """Which end of a text stands at its point."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True, kw_only=True, slots=True)
class Line:
    """A straight line."""

    start_mm: Point
    end_mm: Point
    layer: Layer
    weight: Weight = Weight.NORMAL
    dashed: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Polyline:
    """Several lines joined; filled with its layer's tone where closed and `filled`."""

    points_mm: tuple[Point, ...]
    layer: Layer
    weight: Weight = Weight.NORMAL
    closed: bool = False
    filled: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Rect:
    """An upright rectangle, filled with its layer's tone."""

    low_mm: Point
    high_mm: Point
    layer: Layer
    weight: Weight = Weight.FINE


@dataclass(frozen=True, kw_only=True, slots=True)
class Circle:
    """A circle, filled with its layer's tone or with the paper."""

    centre_mm: Point
    radius_mm: float
    layer: Layer
    weight: Weight = Weight.NORMAL
    filled: bool = True


@dataclass(frozen=True, kw_only=True, slots=True)
class Text:
    """Lettering; its height is measured on the paper.

    Attributes
    ----------
    height_mm
        Of the letters' em square, on the paper.
    """

    at_mm: Point
    text: str
    layer: Layer
    anchor: Anchor = Anchor.MIDDLE
    height_mm: float = 2.5
    strong: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Dimension:
    """A measured length: extension lines from two points to a line beside them, and its text.

    Attributes
    ----------
    line_mm
        Where the dimension line stands: its height where it lies flat, else how far across.
    upright
        Measured upwards.
    """

    start_mm: Point
    end_mm: Point
    line_mm: float
    text: str
    upright: bool = False
    layer: Layer = Layer.DIMENSION


Primitive = Line | Polyline | Rect | Circle | Text | Dimension


@dataclass(frozen=True, kw_only=True, slots=True)
class Scene:
    """A drawing: what is behind comes first.

    Attributes
    ----------
    low_mm, high_mm
        Corners of what must be seen.
    scale_ratio
        Millimetres of the thing for one millimetre of paper.
    """

    primitives: tuple[Primitive, ...]
    low_mm: Point
    high_mm: Point
    scale_ratio: float
