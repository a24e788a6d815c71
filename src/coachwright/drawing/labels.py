"""A label: position number in a ring, reference name, and where there is room the size."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from coachwright.drawing.casting import Tag
from coachwright.drawing.hiding import Patch
from coachwright.drawing.lettering import CAP_RATIO, text_width_mm
from coachwright.drawing.measure import length_text
from coachwright.drawing.scene import (
    Anchor,
    Circle,
    Layer,
    Line,
    Point,
    Primitive,
    Text,
    Weight,
)

LETTERS_MM = 3.3
"""Em square of a label."""
RING_MM = 2.6
_NUMBER_LETTERS_MM = 2.9
_AIR_MM = 0.9
_LINE_MM = 4.2
_DOT_MM = 0.45


@dataclass(frozen=True, kw_only=True, slots=True)
class Form:
    """One way to set a label.

    Attributes
    ----------
    lines
        What stands in it.
    stacked
        The ring stands above the words, not before them.
    """

    lines: tuple[str, ...]
    stacked: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Label:
    """What a label says and what it points at.

    Attributes
    ----------
    size
        Length, width and height; empty where none is shown.
    places_mm
        Where it may point at or stand in, on the paper, the largest first.
    """

    number: str
    words: str
    size: tuple[str, ...]
    places_mm: tuple[Patch, ...]

    def forms(self) -> Iterator[Form]:
        """Yield the ways in which it may be set, the fullest first."""
        broken = _halved(self.words)
        if self.size:
            plan, high = " × ".join(self.size[:2]), f"× {self.size[2]}"
            for sized in ((self.words, f"{plan} {high}"), (self.words, plan, high)):
                yield Form(lines=sized)
                if self.number:
                    yield Form(lines=sized, stacked=True)
        yield self.row
        if self.number:
            yield Form(lines=(self.words,), stacked=True)
        if broken:
            yield Form(lines=broken)
            if self.number:
                yield Form(lines=broken, stacked=True)

    @property
    def row(self) -> Form:
        """The way it is set beside the drawing: ring and name in one line."""
        return Form(lines=(self.words,))

    def extent_mm(self, form: Form) -> Point:
        """Return how wide and high it is when set in a form."""
        ring = 2 * RING_MM if self.number else 0.0
        words = max(text_width_mm(line, LETTERS_MM) for line in form.lines)
        high = LETTERS_MM * CAP_RATIO + (len(form.lines) - 1) * _LINE_MM + 1.4
        if form.stacked:
            return (max(ring, words), ring + _AIR_MM + high - 0.7)
        return (ring + (_AIR_MM if ring else 0.0) + words, max(ring, high))


def _halved(words: str) -> tuple[str, ...]:
    """Return a name of several words broken into two lines, as even as can be."""
    parts = words.split()
    if len(parts) < 2:  # noqa: PLR2004  # one word
        return ()
    ways = [(" ".join(parts[:cut]), " ".join(parts[cut:])) for cut in range(1, len(parts))]
    return min(ways, key=lambda way: max(len(way[0]), len(way[1])))


def label_of(tag: Tag, scale_ratio: float, system: str, *, sizes: bool) -> Label:
    """Return the label of a thing.

    Parameters
    ----------
    tag
        What it points at.
    scale_ratio
        Of the drawing.
    system
        Units shown.
    sizes
        With the size, where it is furniture.
    """
    furniture = sizes and tag.thing.layer is Layer.FURNITURE
    return Label(
        number=tag.thing.number,
        words=tag.thing.words,
        size=tuple(length_text(side, system) for side in tag.thing.size_mm) if furniture else (),
        places_mm=tuple(on_paper(place, scale_ratio) for place in tag.places_mm),
    )


def on_paper(patch: Patch, scale_ratio: float) -> Patch:
    """Return a rectangle of the drawing in mm of the paper."""
    return (
        patch[0] / scale_ratio,
        patch[1] / scale_ratio,
        patch[2] / scale_ratio,
        patch[3] / scale_ratio,
    )


def lettered(
    label: Label, form: Form, patch: Patch, scale_ratio: float, *, ring_last: bool = False
) -> Iterator[Primitive]:
    """Yield a label's ring and words within its place.

    Parameters
    ----------
    label
        What it says.
    form
        How it is set.
    patch
        Where it stands, on the paper.
    scale_ratio
        Of the drawing.
    ring_last
        The ring stands behind the words.
    """
    left, low, right, high = patch
    middle = (low + high) / 2
    centred = form.stacked or not label.number
    if label.number and form.stacked:
        yield from ring(label.number, ((left + right) / 2, high - RING_MM), scale_ratio)
        middle = (low + high - 2 * RING_MM - _AIR_MM) / 2
    elif label.number:
        at = (right if ring_last else left + 2 * RING_MM) - RING_MM
        yield from ring(label.number, (at, middle), scale_ratio)
        left += 0.0 if ring_last else 2 * RING_MM + _AIR_MM
    top = middle + (len(form.lines) - 1) * _LINE_MM / 2
    for index, line in enumerate(form.lines):
        foot = top - index * _LINE_MM - LETTERS_MM * CAP_RATIO / 2
        across = (left + right) / 2 if centred else left
        yield Text(
            at_mm=(across * scale_ratio, foot * scale_ratio),
            text=line,
            layer=Layer.LABEL,
            anchor=Anchor.MIDDLE if centred else Anchor.START,
            height_mm=LETTERS_MM,
            backed=True,
        )


def ring(number: str, middle: Point, scale_ratio: float) -> Iterator[Primitive]:
    """Yield a position number in its ring, whose middle is given on the paper."""
    yield Circle(
        centre_mm=(middle[0] * scale_ratio, middle[1] * scale_ratio),
        radius_mm=RING_MM * scale_ratio,
        layer=Layer.LABEL,
        weight=Weight.NORMAL,
    )
    foot = middle[1] - _NUMBER_LETTERS_MM * CAP_RATIO / 2
    yield Text(
        at_mm=(middle[0] * scale_ratio, foot * scale_ratio),
        text=number,
        layer=Layer.LABEL,
        height_mm=_NUMBER_LETTERS_MM,
        strong=True,
    )


def leader(points: Sequence[Point], scale_ratio: float) -> Iterator[Primitive]:
    """Yield a leader from a dot in the thing to its label, by points on the paper."""
    for start, end in pairwise(points):
        yield Line(
            start_mm=(start[0] * scale_ratio, start[1] * scale_ratio),
            end_mm=(end[0] * scale_ratio, end[1] * scale_ratio),
            layer=Layer.LABEL,
            weight=Weight.FINE,
        )
    dot = points[0]
    yield Circle(
        centre_mm=(dot[0] * scale_ratio, dot[1] * scale_ratio),
        radius_mm=_DOT_MM * scale_ratio,
        layer=Layer.CENTRE_FILL,
        weight=Weight.FINE,
    )
