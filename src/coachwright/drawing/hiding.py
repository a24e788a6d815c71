"""Which parts of an edge are seen and which are hidden behind something nearer."""

from collections.abc import Iterable, Sequence

from coachwright.drawing.scene import Point

Patch = tuple[float, float, float, float]
"""A rectangle: smallest across and up, largest across and up. [mm]"""
Stretch = tuple[float, float]
"""A part of an edge: from and to, as shares of its length."""

_WHOLE: tuple[Stretch, ...] = ((0.0, 1.0),)
_LEAST_MM = 0.5
"""Shorter pieces of an edge are not drawn."""
_LEAST_SIDE_MM = 15.0
"""A free place that is narrower is of no use to a label."""
_MOST_PLACES = 10


def covered(start: Point, end: Point, patch: Patch) -> Stretch | None:
    """Return the part of an edge inside a rectangle, or None.

    Examples
    --------
    >>> covered((0.0, 5.0), (10.0, 5.0), (2.0, 0.0, 4.0, 10.0))
    (0.2, 0.4)
    """
    first, last = 0.0, 1.0
    for axis in (0, 1):
        origin = start[axis]
        step = end[axis] - origin
        low, high = patch[axis], patch[axis + 2]
        if step == 0.0:
            if not low < origin < high:
                return None
            continue
        one, other = (low - origin) / step, (high - origin) / step
        if one > other:
            one, other = other, one
        first = max(first, one)
        last = min(last, other)
        if first >= last:
            return None
    return (first, last)


def without(parts: Sequence[Stretch], gone: Stretch) -> tuple[Stretch, ...]:
    """Return stretches with one taken out of them.

    Examples
    --------
    >>> without([(0.0, 1.0)], (0.2, 0.4))
    ((0.0, 0.2), (0.4, 1.0))
    """
    kept: list[Stretch] = []
    for part in parts:
        if gone[1] <= part[0] or gone[0] >= part[1]:
            kept.append(part)
            continue
        if part[0] < gone[0]:
            kept.append((part[0], gone[0]))
        if gone[1] < part[1]:
            kept.append((gone[1], part[1]))
    return tuple(kept)


def stretches(
    start: Point,
    end: Point,
    *,
    dropped: Iterable[tuple[Point, Point, Patch]],
    hiders: Iterable[tuple[Point, Point, Patch]],
) -> tuple[tuple[Stretch, ...], tuple[Stretch, ...]]:
    """Return the seen and the hidden stretches of an edge.

    Parameters
    ----------
    start, end
        Of the edge.
    dropped
        Rectangles inside which the edge is no edge at all, each with the ends to test: the edge
        moved outwards a little.
    hiders
        Rectangles that hide it, each with the ends to test: the edge moved inwards a little.
    """
    kept = _WHOLE
    for one, other, patch in dropped:
        gone = covered(one, other, patch)
        if gone is not None:
            kept = without(kept, gone)
    seen = kept
    for one, other, patch in hiders:
        if not seen:
            break
        gone = covered(one, other, patch)
        if gone is not None:
            seen = without(seen, gone)
    hidden = kept
    for part in seen:
        hidden = without(hidden, part)
    length_mm = max(abs(end[0] - start[0]), abs(end[1] - start[1]))
    return _long(seen, length_mm), _long(hidden, length_mm)


def _long(parts: Iterable[Stretch], length_mm: float) -> tuple[Stretch, ...]:
    return tuple(part for part in parts if (part[1] - part[0]) * length_mm >= _LEAST_MM)


def free_places(patch: Patch, covers: Iterable[Patch]) -> tuple[Patch, ...]:
    """Return the largest rectangles inside one that no cover touches, the largest first.

    Notes
    -----
    Each cover splits what it overlaps into the up to four rectangles beside it; those that lie in
    another or are too narrow for a label are left out.

    Examples
    --------
    >>> free_places((0.0, 0.0, 100.0, 50.0), [(60.0, 0.0, 100.0, 50.0)])
    ((0.0, 0.0, 60.0, 50.0),)
    """
    places = [patch]
    for cover in covers:
        if not any(_meet(place, cover) for place in places):
            continue
        pieces = [piece for place in places for piece in _beside(place, cover)]
        pieces.sort(key=lambda piece: (-_size_mm2(piece), piece))
        places = []
        for piece in pieces:
            if not any(_holds(place, piece) for place in places):
                places.append(piece)
        del places[_MOST_PLACES:]
    return tuple(sorted(places, key=lambda piece: (-_size_mm2(piece), piece)))


def _meet(one: Patch, other: Patch) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def _beside(place: Patch, cover: Patch) -> Iterable[Patch]:
    if not _meet(place, cover):
        yield place
        return
    left, low, right, high = place
    for piece in (
        (left, low, min(right, cover[0]), high),
        (max(left, cover[2]), low, right, high),
        (left, low, right, min(high, cover[1])),
        (left, max(low, cover[3]), right, high),
    ):
        if piece[2] - piece[0] >= _LEAST_SIDE_MM and piece[3] - piece[1] >= _LEAST_SIDE_MM:
            yield piece


def _holds(place: Patch, piece: Patch) -> bool:
    return (
        place[0] <= piece[0]
        and place[1] <= piece[1]
        and place[2] >= piece[2]
        and place[3] >= piece[3]
    )


def _size_mm2(piece: Patch) -> float:
    return (piece[2] - piece[0]) * (piece[3] - piece[1])
