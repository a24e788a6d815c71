"""Labels above and below a drawing, like flags: upright leaders that cross no label.

Leaders stand side by side; a flag flies to one side of its leader.  Where another leader passes
under a flag, that other label stands nearer to the drawing, so nothing is crossed.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from coachwright.drawing.board import Board, Over
from coachwright.drawing.hiding import Patch, covered
from coachwright.drawing.labels import RING_MM, Label, leader, lettered
from coachwright.drawing.scene import Point, Primitive

_ROW_MM = 6.0
_FIRST_MM = 1.6
_BETWEEN_MM = 1.6
"""Between two masts."""
_SMALL_MM = 6.0
"""In a smaller place fewer spots are tried."""
_AIR_MM = 1.4
_SHARES = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.03, 0.97)
_SHIFTS_MM = tuple(sign * 1.5 * step for step in range(1, 9) for sign in (1.0, -1.0))
_CROWDED_FACTOR = 0.06
_BENT_FACTOR = 0.5
"""How much less a bent leader is liked, as a share of the drawing's height."""


@dataclass(frozen=True, kw_only=True, slots=True)
class _Flag:
    """A label with its leader.

    Attributes
    ----------
    dot_mm
        Where the leader begins.
    mast_mm
        Where it stands upright beside the drawing; there it is bent where this differs.
    right
        It flies to the right of its mast.
    """

    label: Label
    dot_mm: Point
    mast_mm: float
    right: bool = True

    @property
    def reach_mm(self) -> Point:
        """From where to where it goes across."""
        width = self.label.extent_mm(self.label.row)[0]
        ring = RING_MM if self.label.number else 0.5
        if self.right:
            return (self.mast_mm - ring, self.mast_mm - ring + width)
        return (self.mast_mm + ring - width, self.mast_mm + ring)


def flags(
    labels: Sequence[Label],
    *,
    board: Board,
    bare: Patch,
    around: Patch,
    room: Patch,
    scale_ratio: float,
) -> tuple[Primitive, ...] | None:
    """Return labels above and below a drawing, or None where there is no room for them.

    Parameters
    ----------
    labels
        In the order of their numbers.
    board
        What is written so far; taken places are added.
    bare
        The drawing itself.
    around
        The drawing with its dimensions.
    room
        What the paper offers.
    scale_ratio
        Of the drawing.
    """
    bands: dict[bool, list[_Flag]] = {True: [], False: []}
    for label in sorted(labels, key=lambda label: (_middle(label.places_mm[0]), label.number)):
        found = _stand(label, board, (bare, around), bands)
        if found is None:
            return None
        above, flag = found
        bands[above].append(flag)
    drawn: list[Primitive] = []
    for above, band in bands.items():
        flown = _flown(band, room)
        if flown is None:
            return None
        bend_mm = bare[3] if above else bare[1]
        drawn.extend(_drawn(flown, above, board, (bend_mm, around), scale_ratio))
    return tuple(drawn)


def _middle(place: Patch) -> Point:
    return ((place[0] + place[2]) / 2, (place[1] + place[3]) / 2)


def _stand(
    label: Label, board: Board, frames: tuple[Patch, Patch], bands: dict[bool, list[_Flag]]
) -> tuple[bool, _Flag] | None:
    """Return the band of a label and how its leader runs: short, and clear of what is there.

    Where no upright leader is clear it is bent, and at last it may pass behind what is written.
    """
    bare, around = frames
    best: tuple[float, bool, _Flag] | None = None
    for over in Over:
        for above in (True, False):
            ends = (bare[3], around[3]) if above else (bare[1], around[1])
            standing = [flag.mast_mm for flag in bands[above]]
            flag = _leading(label, board, ends, standing, over=over)
            if flag is None:
                continue
            height = around[3] - around[1]
            cost = abs(ends[1] - flag.dot_mm[1]) / height + _CROWDED_FACTOR * len(standing)
            cost += _BENT_FACTOR if flag.mast_mm != flag.dot_mm[0] else 0.0
            cost += _BENT_FACTOR * [*Over].index(over)
            if best is None or cost < best[0] - 1e-9:
                best = (cost, above, flag)
        if best is not None and best[0] < _BENT_FACTOR:
            break
    return None if best is None else (best[1], best[2])


def _leading(
    label: Label,
    board: Board,
    ends: Point,
    standing_mm: list[float],
    *,
    over: Over,
) -> _Flag | None:
    """Return the first leader that is clear: upright ones first."""
    bend, edge = ends
    for dot in _dots(label):
        if _mast_clear(board, dot[0], (dot[1], edge), standing_mm, over=over):
            return _Flag(label=label, dot_mm=dot, mast_mm=dot[0])
    dot = _middle(label.places_mm[0])
    for shift in _SHIFTS_MM:
        mast = dot[0] + shift
        if _mast_clear(board, mast, (bend, edge), standing_mm, over=over) and not any(
            covered(dot, (mast, bend), patch) for patch in board.in_the_way(over)
        ):
            return _Flag(label=label, dot_mm=dot, mast_mm=mast)
    return None


def _mast_clear(
    board: Board,
    mast_mm: float,
    run: Point,
    standing_mm: list[float],
    *,
    over: Over,
) -> bool:
    if any(abs(mast_mm - other) < _BETWEEN_MM for other in standing_mm):
        return False
    patch = (mast_mm - 0.1, min(run), mast_mm + 0.1, max(run))
    return board.free(patch, over=over)


def _dots(label: Label) -> Iterator[Point]:
    """Yield where a leader may begin, the middle first; spots that nearly coincide only once."""
    for place in label.places_mm[:3]:
        width, height = place[2] - place[0], place[3] - place[1]
        ups = (0.5, 0.8, 0.2) if height > _SMALL_MM else (0.5,)
        shares = _SHARES if width > _SMALL_MM else (0.5, 0.1, 0.9)
        for up in ups:
            for share in shares if width > _BETWEEN_MM else (0.5,):
                yield (place[0] + width * share, place[1] + height * up)


def _flown(band: list[_Flag], room: Patch) -> list[_Flag] | None:
    """Return the flags all flying to a side on which they stay on the paper."""
    ordered = sorted(band, key=lambda flag: flag.mast_mm)
    # with a part that flies left on the left and the rest to the right, the two never meet
    for middle in (0, len(band), *range(1, len(band))):
        flown = [replace(flag, right=index >= middle) for index, flag in enumerate(ordered)]
        if all(flag.reach_mm[0] >= room[0] and flag.reach_mm[1] <= room[2] for flag in flown):
            return flown
    return None


def _drawn(
    band: list[_Flag],
    above: bool,
    board: Board,
    frame: tuple[float, Patch],
    scale_ratio: float,
) -> Iterator[Primitive]:
    bend, around = frame
    sign = 1.0 if above else -1.0
    edge = around[3] if above else around[1]
    for flag, row in _rows(band):
        middle = edge + sign * (_FIRST_MM + RING_MM + row * _ROW_MM)
        low_across, high_across = flag.reach_mm
        form = flag.label.row
        height = flag.label.extent_mm(form)[1]
        patch = (low_across, middle - height / 2, high_across, middle + height / 2)
        board.take(patch)
        end = middle - sign * (RING_MM if flag.label.number else 1.9)
        bent = ((flag.mast_mm, bend),) if flag.mast_mm != flag.dot_mm[0] else ()
        yield from leader((flag.dot_mm, *bent, (flag.mast_mm, end)), scale_ratio)
        yield from lettered(flag.label, form, patch, scale_ratio, ring_last=not flag.right)


def _rows(band: list[_Flag]) -> list[tuple[_Flag, int]]:
    """Return each flag's row: beyond every flag whose leader passes under it.

    Flags are taken from the end that they fly to, so that those which must stand nearer to the
    drawing have their row already.
    """
    rows: dict[int, int] = {}
    order = sorted(
        range(len(band)),
        key=lambda index: -band[index].mast_mm if band[index].right else band[index].mast_mm,
    )
    for index in order:
        low, high = band[index].reach_mm[0] - _AIR_MM, band[index].reach_mm[1] + _AIR_MM
        row = 0
        taken = set()
        for other, other_row in rows.items():
            start, end = band[other].reach_mm
            if low < band[other].mast_mm < high:
                row = max(row, other_row + 1)
            if low < end and start < high:
                taken.add(other_row)
        while row in taken:
            row += 1
        rows[index] = row
    return [(band[index], rows[index]) for index in range(len(band))]
