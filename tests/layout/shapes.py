"""Boxes and patches for the layout's tests, by hypothesis and as shapely's polygons."""

from itertools import pairwise

import shapely
from hypothesis import strategies as st
from shapely.geometry.base import BaseGeometry

from coachwright.layout.passage import Patch
from coachwright.layout.solids import Box, Solid, box, parted, solid

EDGES = st.integers(-40, 40).map(lambda tens: tens * 10.0)
SIDES = st.integers(2, 40).map(lambda tens: tens * 10.0)


@st.composite
def boxes(draw: st.DrawFn) -> Box:
    """Return a box of 20 to 400 mm on each side, on a grid of 10 mm."""
    x, y, z = draw(EDGES), draw(EDGES), draw(EDGES)
    return box((x, y, z), (x + draw(SIDES), y + draw(SIDES), z + draw(SIDES)))


def solids(name: str, most: int = 3) -> st.SearchStrategy[Solid]:
    """Return solids of several boxes, which overlapped before they were parted."""
    return st.lists(boxes(), min_size=1, max_size=most).map(lambda made: solid(name, parted(made)))


def section(body: Solid, height_mm: float) -> BaseGeometry:
    """Return the horizontal section of a solid, by shapely."""
    return shapely.union_all(
        [
            shapely.box(*part.low_mm[:2], *part.high_mm[:2])
            for part in body.boxes
            if part.low_mm[2] < height_mm < part.high_mm[2]
        ]
    )


def slices(*bodies: Solid) -> list[tuple[float, float]]:
    """Return middle and thickness of every slice in which no section changes."""
    parts = [part for body in bodies for part in body.boxes]
    heights = sorted({edge for part in parts for edge in (part.low_mm[2], part.high_mm[2])})
    return [((low + high) / 2, high - low) for low, high in pairwise(heights)]


def polygon(patch: Patch) -> BaseGeometry:
    """Return a patch as shapely's polygon, line or point."""
    return shapely.box(*patch.low_mm, *patch.high_mm)
