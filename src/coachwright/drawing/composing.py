"""From a draft to a scene: everything written finds a place, or a smaller scale is taken.

Placed in this order: dimension chains, clear widths, marks of findings, labels.  What comes later
keeps off what stands already; the same draft gives the same scene.
"""

from dataclasses import dataclass
from enum import IntEnum

from coachwright.drawing.board import Board
from coachwright.drawing.dimensioning import Dimensioner, thinned
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
_THINNED_MM = 6.0
"""In a crowded drawing, stops nearer to each other than this on the paper are one."""


class NoRoom(CoachwrightError):
    """A drawing and what is written on it do not fit the sheet at any usual scale."""


class Care(IntEnum):
    """How much is written: less only where a drawing is so crowded that all has no room."""

    ALL = 0
    FEWER_DIMENSIONS = 1
    FEWER_LABELS = 2


_LAST_RESORT = SCALES[-1]
ATTEMPTS = (
    *((care, scale) for care in Care for scale in SCALES if scale != _LAST_RESORT),
    *((care, _LAST_RESORT) for care in Care),
)
"""What is tried in turn: rather fewer words than the smallest scale."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Composed:
    """A scene, and how many labels found no room in it."""

    scene: Scene
    left_out: int = 0


def composed(draft: Draft, *, room_mm: Point, system: str) -> Composed:
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
    for care, scale_ratio in ATTEMPTS:
        found = at_scale(draft, scale_ratio=scale_ratio, room_mm=room_mm, system=system, care=care)
        if found is not None:
            return found
    raise NoRoom(f"{draft.title} does not fit the sheet at any of the usual scales")


def at_scale(
    draft: Draft, *, scale_ratio: float, room_mm: Point, system: str, care: Care = Care.ALL
) -> Composed | None:
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
    care
        How much is written.
    """
    bare = on_paper((*draft.low_mm, *draft.high_mm), scale_ratio)
    if not _fits(bare, room_mm):
        return None
    board = Board()
    pen = _Pen(draft=draft, board=board, bare_mm=bare, scale_ratio=scale_ratio, system=system)
    written = pen.written(room_mm, care)
    if written is None:
        return None
    bounds = board.bounds(bare)
    if not _fits(bounds, room_mm):
        return None
    primitives, left_out = written
    scene = Scene(
        primitives=(*draft.primitives, *primitives),
        low_mm=((bounds[0] - _EDGE_MM) * scale_ratio, (bounds[1] - _EDGE_MM) * scale_ratio),
        high_mm=((bounds[2] + _EDGE_MM) * scale_ratio, (bounds[3] + _EDGE_MM) * scale_ratio),
        scale_ratio=scale_ratio,
    )
    return Composed(scene=scene, left_out=left_out)


def _fits(patch: Patch, room_mm: Point) -> bool:
    return (
        patch[2] - patch[0] + 2 * _EDGE_MM <= room_mm[0]
        and patch[3] - patch[1] + 2 * _EDGE_MM <= room_mm[1]
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class _Pen:
    """Writes on a drawing at one scale."""

    draft: Draft
    board: Board
    bare_mm: Patch
    scale_ratio: float
    system: str

    def written(self, room_mm: Point, care: Care) -> tuple[tuple[Primitive, ...], int] | None:
        """Return what is written and how many labels are not; None where there is no room."""
        measures = self._measures(care)
        around = self.board.bounds(self.bare_mm)
        measures += self._widths()
        marks = placed_marks(
            self.draft.marks, self.board, self.scale_ratio, whole=care < Care.FEWER_LABELS
        )
        if marks is None:
            return None
        labels = self._labels()
        found = placed_labels(
            labels,
            board=self.board,
            bare=self.bare_mm,
            around=around,
            room=_room(around, room_mm),
            bands=self.draft.bands if care < Care.FEWER_LABELS else (),
            scale_ratio=self.scale_ratio,
        )
        if found is None:
            return None
        drawn, left_out = found
        return (*drawn, *measures, *marks), left_out

    def _measures(self, care: Care) -> list[Primitive]:
        drawn: list[Primitive] = []
        pen = Dimensioner(self.board, self.bare_mm, self.scale_ratio, self.system)
        least_mm = _THINNED_MM * self.scale_ratio if care else 0.0
        for chain in self.draft.chains:
            # the text of a nearer chain stands on the extension lines of a farther one
            drawn[:0] = pen.chain(thinned(chain, least_mm))
        return drawn

    def _widths(self) -> list[Primitive]:
        pen = Dimensioner(self.board, self.bare_mm, self.scale_ratio, self.system)
        return [p for width in self.draft.widths for p in pen.width(width, self.bare_mm)]

    def _labels(self) -> list[Label]:
        draft, scale = self.draft, self.scale_ratio
        return [
            *(label_of(tag, scale, self.system, sizes=draft.sizes) for tag in draft.tags),
            *(_noted(note, scale) for note in draft.notes),
        ]


def _noted(note: Note, scale_ratio: float) -> Label:
    return Label(
        number="", words=note.words, size=(), places_mm=(on_paper(note.place_mm, scale_ratio),)
    )


def _room(around: Patch, room_mm: Point) -> Patch:
    """Return the room round a drawing that stands in its middle."""
    middle = ((around[0] + around[2]) / 2, (around[1] + around[3]) / 2)
    half = (room_mm[0] / 2 - _EDGE_MM, room_mm[1] / 2 - _EDGE_MM)
    return (middle[0] - half[0], middle[1] - half[1], middle[0] + half[0], middle[1] + half[1])
