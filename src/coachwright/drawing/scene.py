"""A drawing as primitives: positions in mm of the thing drawn, lettering in mm of the paper."""

from dataclasses import dataclass
from enum import StrEnum

Point = tuple[float, float]
"""Across and up. [mm]"""


class Layer(StrEnum):
    """What a primitive shows: in the weight statement, or the trade that builds it."""

    BODY = "body"
    GROUND = "ground"
    FITTING = "fitting"
    HEAVY = "heavy"
    LOAD = "load"
    DIMENSION = "dimension"
    CENTRE = "centre"
    CENTRE_FILL = "centre fill"
    VEHICLE = "vehicle"
    SHELL = "shell"
    FURNITURE = "furniture"
    ELECTRICAL = "electrical"
    PLUMBING = "plumbing"
    GAS = "gas"
    AIR = "air"
    ROOF = "roof"
    OUTSIDE = "outside"
    INTERIOR = "interior"
    ZONE = "zone"
    LABEL = "label"
    FINDING = "finding"
    SHEET = "sheet"


TRADES = (
    Layer.FURNITURE,
    Layer.ELECTRICAL,
    Layer.PLUMBING,
    Layer.GAS,
    Layer.AIR,
    Layer.ROOF,
    Layer.OUTSIDE,
    Layer.INTERIOR,
)
"""Layers of what is fitted."""


class Weight(StrEnum):
    """How heavy a line is drawn."""

    FINE = "fine"
    NORMAL = "normal"
    BOLD = "bold"


class Style(StrEnum):
    """How a line is broken: seen, hidden, or the bounds of a space."""

    SOLID = "solid"
    DASHED = "dashed"
    DASH_DOT = "dash-dot"


class Pattern(StrEnum):
    """What a cut surface is filled with."""

    DIAGONAL = "diagonal"
    CROSSED = "crossed"


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
    style: Style = Style.SOLID


@dataclass(frozen=True, kw_only=True, slots=True)
class Polyline:
    """Several lines joined; filled with its layer's tone where closed and `filled`."""

    points_mm: tuple[Point, ...]
    layer: Layer
    weight: Weight = Weight.NORMAL
    closed: bool = False
    filled: bool = False
    style: Style = Style.SOLID


@dataclass(frozen=True, kw_only=True, slots=True)
class Area:
    """A closed outline filled and not stroked: with its layer's tone, or with a pattern."""

    points_mm: tuple[Point, ...]
    layer: Layer
    pattern: Pattern | None = None


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
class Arc:
    """A part of a circle, anticlockwise from one direction to another; 0 points to the right."""

    centre_mm: Point
    radius_mm: float
    from_deg: float
    to_deg: float
    layer: Layer
    weight: Weight = Weight.FINE
    style: Style = Style.SOLID


@dataclass(frozen=True, kw_only=True, slots=True)
class Text:
    """Lettering; its height is measured on the paper.

    Attributes
    ----------
    height_mm
        Of the letters' em square, on the paper.
    backed
        The paper is cleared behind it.
    upright
        Read from the right edge of the sheet.
    """

    at_mm: Point
    text: str
    layer: Layer
    anchor: Anchor = Anchor.MIDDLE
    height_mm: float = 2.5
    strong: bool = False
    backed: bool = False
    upright: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Dimension:
    """A measured length: extension lines from two points to a line beside them, and its text.

    Attributes
    ----------
    line_mm
        Where the dimension line stands: its height where it lies flat, else how far across.
    upright
        Measured upwards.
    text_at_mm
        Foot of the text's middle; beside the middle of the line where not given.
    letters_mm
        Em square of the text, on the paper.
    """

    start_mm: Point
    end_mm: Point
    line_mm: float
    text: str
    upright: bool = False
    layer: Layer = Layer.DIMENSION
    text_at_mm: Point | None = None
    letters_mm: float = 2.3


@dataclass(frozen=True, kw_only=True, slots=True)
class Span:
    """A clear width measured straight from one point to another, inside the drawing."""

    start_mm: Point
    end_mm: Point
    text: str
    text_at_mm: Point
    letters_mm: float
    layer: Layer = Layer.DIMENSION


Primitive = Line | Polyline | Area | Rect | Circle | Arc | Text | Dimension | Span


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


@dataclass(frozen=True, kw_only=True, slots=True)
class Pane:
    """A scene on a sheet; `at_mm` is its lower left corner on the paper."""

    scene: Scene
    at_mm: Point


@dataclass(frozen=True, kw_only=True, slots=True)
class Sheet:
    """A sheet of paper with its frame, its title block and what is drawn on it.

    Attributes
    ----------
    frame
        Frame, title block and keys, in mm of the paper.
    panes
        What is drawn, each to its own scale.
    """

    name: str
    title: str
    size_mm: Point
    frame: Scene
    panes: tuple[Pane, ...]
