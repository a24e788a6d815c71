"""Where labels stand: inside what they name where they fit, else beside the drawing.

No label stands on anything that is written.
"""

from collections.abc import Sequence

from coachwright.drawing.board import Board
from coachwright.drawing.columns import columns
from coachwright.drawing.dimensioning import Side
from coachwright.drawing.flags import flags
from coachwright.drawing.hiding import Patch
from coachwright.drawing.labels import Form, Label, lettered
from coachwright.drawing.scene import Point, Primitive

_MARGIN_MM = 0.8


def placed_labels(
    labels: Sequence[Label],
    *,
    board: Board,
    bare: Patch,
    around: Patch,
    room: Patch,
    bands: tuple[Side, ...],
    scale_ratio: float,
) -> tuple[tuple[Primitive, ...], int] | None:
    """Return labels where nothing else is written, and how many found no room; None for no room.

    Parameters
    ----------
    labels
        In the order of their numbers.
    board
        What is written so far; taken places are added.
    bare
        The drawing itself.
    around
        The drawing with its dimensions: labels beside it stand outside of this.
    room
        What the paper offers.
    bands
        Sides on which labels may stand; where there are none, those that do not fit inside what
        they name are left out.
    scale_ratio
        Of the drawing.
    """
    drawn: list[Primitive] = []
    left: list[Label] = []
    for label in sorted(labels, key=lambda label: -_size_mm2(label)):
        found = _inside(label, board)
        if found is None:
            left.append(label)
            continue
        patch, form = found
        board.take(patch, soft=True)
        drawn.extend(lettered(label, form, patch, scale_ratio))
    if not left or not bands:
        return tuple(drawn), len(left)
    spread = flags if "above" in bands else columns
    outside = spread(
        sorted(left, key=_order),
        board=board,
        bare=bare,
        around=around,
        room=room,
        scale_ratio=scale_ratio,
    )
    if outside is None:
        return None
    return (*outside, *drawn), 0


def _order(label: Label) -> tuple[int, str]:
    return (int(label.number or "0"), label.words)


def _size_mm2(label: Label) -> float:
    place = label.places_mm[0]
    return (place[2] - place[0]) * (place[3] - place[1])


def _inside(label: Label, board: Board) -> tuple[Patch, Form] | None:
    """Return where a label fits inside what it names, and how it is set there."""
    for form in label.forms():
        width, height = label.extent_mm(form)
        for place in label.places_mm[:3]:
            spare = (
                place[2] - place[0] - width - 2 * _MARGIN_MM,
                place[3] - place[1] - height - 2 * _MARGIN_MM,
            )
            if min(spare) < 0:
                continue
            for share in _SHARES:
                left = place[0] + spare[0] * share[0] + _MARGIN_MM
                low = place[1] + spare[1] * share[1] + _MARGIN_MM
                patch = (left, low, left + width, low + height)
                if board.free(patch):
                    return patch, form
    return None


_SHARES: tuple[Point, ...] = (
    (0.5, 0.5),
    (0.5, 0.75),
    (0.5, 0.25),
    (0.5, 1.0),
    (0.5, 0.0),
    (0.2, 0.5),
    (0.8, 0.5),
    (0.0, 1.0),
    (1.0, 1.0),
    (0.0, 0.0),
    (1.0, 0.0),
)
"""Where in a free place a label is tried: share of what is spare, across and up."""
