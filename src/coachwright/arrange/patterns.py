"""Where rectangles need to be tried: the normal patterns of one axis.

A packing stays one when each rectangle is pushed towards the origin until it touches the border,
an obstacle or another rectangle.  Its place is then the edge of one of those plus sizes of other
rectangles, so that only such sums need to be tried.  From a threshold on it is pushed the other
way instead, which leaves fewer places still.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

THRESHOLDS = 24
"""Thresholds that are tried on an axis; any of them keeps every packing's value."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Axis:
    """One axis of a field.

    Attributes
    ----------
    size_mm
        From 0.
    edges_low_mm, edges_high_mm
        Lower and upper edges of what does not move, against which rectangles can be pushed.
    sizes
        Size of a rectangle on this axis [mm] → how many of that size there may be.
    """

    size_mm: int
    edges_low_mm: tuple[int, ...]
    edges_high_mm: tuple[int, ...]
    sizes: Mapping[int, int]


def sums_mm(*, starts_mm: Iterable[int], sizes: Mapping[int, int], most_mm: int) -> set[int]:
    """Return every start plus sizes of different rectangles, up to a limit. [mm].

    Parameters
    ----------
    starts_mm
        Edges to begin from.
    sizes
        Size → how many of it there may be.
    most_mm
        Larger sums are left out.

    Examples
    --------
    >>> sorted(sums_mm(starts_mm=[0], sizes={4: 1, 7: 2}, most_mm=15))
    [0, 4, 7, 11, 14]
    """
    found = {start for start in starts_mm if 0 <= start <= most_mm}
    for size, count in sizes.items():
        newest = found
        for _ in range(count):
            newest = {sum_ + size for sum_ in newest if sum_ + size <= most_mm} - found
            if not newest:
                break
            found = found | newest
    return found


def places_mm(axis: Axis, sizes_mm: Sequence[int]) -> dict[int, tuple[int, ...]]:
    """Return for each size the places on an axis that need to be tried. [mm].

    Parameters
    ----------
    axis
        Border, obstacles and all rectangles.
    sizes_mm
        Sizes to give places for.

    Notes
    -----
    Meet in the middle: below a threshold t the places a + Σ sizes (a: 0 or an upper edge), from t
    on e − Σ sizes − own size (e: the border or a lower edge).  Rectangles that begin below t are
    pushed down and touch none that begin at or above it from above; the others are pushed up.  So
    every packing has one of the same rectangles at these places, whatever t is; the t with the
    fewest places is taken.  Holds where a rectangle's worth does not depend on its place.

    References
    ----------
    [cote-iori-2018], [christofides-whitlock-1977]

    Examples
    --------
    >>> places_mm(Axis(size_mm=20, edges_low_mm=(), edges_high_mm=(), sizes={7: 2}), [7])
    {7: (6, 13)}
    """
    up = sums_mm(starts_mm=(0, *axis.edges_high_mm), sizes=axis.sizes, most_mm=axis.size_mm)
    ends = [0, *(axis.size_mm - edge for edge in axis.edges_low_mm)]
    down = {
        axis.size_mm - sum_
        for sum_ in sums_mm(starts_mm=ends, sizes=axis.sizes, most_mm=axis.size_mm)
    }
    step_mm = max(1, axis.size_mm // THRESHOLDS)
    tried = (
        {size: _from_both(axis, size, up, down, threshold) for size in sizes_mm}
        for threshold in range(0, axis.size_mm + step_mm, step_mm)
    )
    return min(tried, key=lambda places: sum(len(each) for each in places.values()))


def _from_both(
    axis: Axis, size_mm: int, up: set[int], down: set[int], threshold_mm: int
) -> tuple[int, ...]:
    low = {place for place in up if place < threshold_mm and place + size_mm <= axis.size_mm}
    high = {end - size_mm for end in down if end - size_mm >= threshold_mm}
    return tuple(sorted(low | high))
