"""From a draft to a scene: everything written finds a place, or a smaller scale is taken.

Placed in this order: dimension chains, clear widths, marks of findings, labels.  What comes later
keeps off what stands already; the same draft gives the same scene.
"""

from coachwright.drawing.board import Board
from coachwright.drawing.dimensioning import Dimensioner
from coachwright.drawing.drafting import Draft, Note
from coachwright.drawing.hiding import Patch
from coachwright.drawing.labelling import placed_labels
from coachwright.drawing.labels import Label, label_of, on_paper
from coachwright.drawing.marking import placed_marks
from coachwright.drawing.scene import Point, Primitive, Scene
from coachwright.errors import CoachwrightError

SCALES = (5.0, 10.0, 20.0, 25.0, 50.0)
"""The usual scales of a workshop drawing; the largest that fits is taken."""
_EDGE_MM = 1.5
"""Between what is drawn or written and the edge of the room."""


class NoRoom(CoachwrightError):
    """A drawing and what is written on it do not fit the sheet at any usual scale."""


def composed(draft: Draft, *, room_mm: Point, system: str) -> Scene:
    """Return a draft at the largest usual scale at which everything fits.

    Parameters
    ----------
    draft
        What is drawn and written.
    room_mm
        Width and height that the sheet offers. [mm]
    system
        Units shown.

    Raises
    ------
    NoRoom
        Where it fits at no usual scale.
    """
    for scale_ratio in SCALES:
        scene = at_scale(draft, scale_ratio=scale_ratio, room_mm=room_mm, system=system)
        if scene is not None:
            return scene
    raise NoRoom(f"{draft.title} does not fit the sheet at any of the usual scales")


def at_scale(draft: Draft, *, scale_ratio: float, room_mm: Point, system: str) -> Scene | None:
    """Return a draft at one scale, or None where it does not fit.

    Parameters
    ----------
    draft
        What is drawn and written.
    scale_ratio
        Millimetres of the thing for one of the paper.
    room_mm
        Width and height that the sheet offers. [mm]
    system
        Units shown.
    """
    bare = on_paper((*draft.low_mm, *draft.high_mm), scale_ratio)
    if not _fits(bare, room_mm):
        return None
    board = Board()
    written = _written(draft, board, bare, room_mm=room_mm, scale_ratio=scale_ratio, system=system)
    if written is None:
        return None
    bounds = board.bounds(bare)
    if not _fits(bounds, room_mm):
        return None
    return Scene(
        primitives=(*draft.primitives, *written),
        low_mm=((bounds[0] - _EDGE_MM) * scale_ratio, (bounds[1] - _EDGE_MM) * scale_ratio),
        high_mm=((bounds[2] + _EDGE_MM) * scale_ratio, (bounds[3] + _EDGE_MM) * scale_ratio),
        scale_ratio=scale_ratio,
    )


def _fits(patch: Patch, room_mm: Point) -> bool:
    return (
        patch[2] - patch[0] + 2 * _EDGE_MM <= room_mm[0]
        and patch[3] - patch[1] + 2 * _EDGE_MM <= room_mm[1]
    )


def _written(
    draft: Draft, board: Board, bare: Patch, *, room_mm: Point, scale_ratio: float, system: str
) -> tuple[Primitive, ...] | None:
    measures: list[Primitive] = []
    pen = Dimensioner(board, bare, scale_ratio, system)
    for chain in draft.chains:
        # the text of a nearer chain stands on the extension lines of a farther one
        measures[:0] = pen.chain(chain)
    around = board.bounds(bare)
    for width in draft.widths:
        measures.extend(pen.width(width, bare))
    marks = placed_marks(draft.marks, board, scale_ratio)
    if marks is None:
        return None
    labels = placed_labels(
        [
            *(label_of(tag, scale_ratio, system, sizes=draft.sizes) for tag in draft.tags),
            *(_noted(note, scale_ratio) for note in draft.notes),
        ],
        board=board,
        bare=bare,
        around=around,
        room=_room(around, room_mm),
        bands=draft.bands,
        scale_ratio=scale_ratio,
    )
    return None if labels is None else (*labels, *measures, *marks)


def _noted(note: Note, scale_ratio: float) -> Label:
    return Label(
        number="", words=note.words, size=(), places_mm=(on_paper(note.place_mm, scale_ratio),)
    )


def _room(around: Patch, room_mm: Point) -> Patch:
    """Return the room round a drawing that stands in its middle."""
    middle = ((around[0] + around[2]) / 2, (around[1] + around[3]) / 2)
    half = (room_mm[0] / 2 - _EDGE_MM, room_mm[1] / 2 - _EDGE_MM)
    return (middle[0] - half[0], middle[1] - half[1], middle[0] + half[0], middle[1] + half[1])
