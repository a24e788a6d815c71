"""What a view brings to the paper before anything is placed: bodies, measures, labels, marks."""

from dataclasses import dataclass, field
from typing import Literal

from coachwright.drawing.casting import Tag
from coachwright.drawing.dimensioning import Chain, Side, Width
from coachwright.drawing.hiding import Patch
from coachwright.drawing.scene import Layer, Point, Primitive

Front = Literal["left", "right", "away", "towards", "none"]
"""Where the front of the vehicle lies on the paper."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Note:
    """A label for what is no fitting, such as a door."""

    words: str
    place_mm: Patch
    layer: Layer = Layer.VEHICLE


@dataclass(frozen=True, kw_only=True, slots=True)
class Mark:
    """A finding where it is: a triangle for a stop, a diamond for a caution."""

    number: str
    stop: bool
    at_mm: Point


@dataclass(frozen=True, kw_only=True, slots=True)
class Draft:
    """A view before it is placed.

    Attributes
    ----------
    primitives
        From the back to the front, in mm of the thing.
    low_mm, high_mm
        Corners of what is drawn, without what is written.
    sizes
        Labels of furniture also give its size.
    bands
        Sides of the drawing on which labels may stand.
    """

    title: str
    subtitle: str
    primitives: tuple[Primitive, ...]
    low_mm: Point
    high_mm: Point
    front: Front
    tags: tuple[Tag, ...] = ()
    notes: tuple[Note, ...] = ()
    chains: tuple[Chain, ...] = ()
    widths: tuple[Width, ...] = ()
    marks: tuple[Mark, ...] = ()
    sizes: bool = False
    bands: tuple[Side, ...] = field(default=("above", "below"))
