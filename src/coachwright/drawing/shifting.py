"""Primitives moved, and mirrored about the vertical."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from coachwright.drawing.scene import Arc, Circle, Line, Point, Polyline, Primitive


def shifted(
    primitives: Iterable[Primitive], *, up_mm: float, across_factor: float = 1.0
) -> Iterator[Primitive]:
    """Yield lines, outlines, arcs and circles moved upwards, and mirrored for a factor of -1.0.

    Parameters
    ----------
    primitives
        Of other kinds than these nothing comes back.
    up_mm
        How far they move. [mm]
    across_factor
        1.0, or -1.0 to mirror them about the vertical through 0.
    """

    def moved(point: Point) -> Point:
        return (across_factor * point[0], point[1] + up_mm)

    for primitive in primitives:
        match primitive:
            case Line():
                yield replace(
                    primitive, start_mm=moved(primitive.start_mm), end_mm=moved(primitive.end_mm)
                )
            case Polyline():
                yield replace(primitive, points_mm=tuple(map(moved, primitive.points_mm)))
            case Circle():
                yield replace(primitive, centre_mm=moved(primitive.centre_mm))
            case Arc() if across_factor > 0:
                yield replace(primitive, centre_mm=moved(primitive.centre_mm))
            case Arc():
                yield replace(
                    primitive,
                    centre_mm=moved(primitive.centre_mm),
                    from_deg=180.0 - primitive.to_deg,
                    to_deg=180.0 - primitive.from_deg,
                )
            case _:
                continue
