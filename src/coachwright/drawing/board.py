"""The paper under a drawing: what is taken, so that nothing written stands on anything written.

Everything here is in mm of the paper, from where the thing's origin falls.
"""

from dataclasses import dataclass, field
from enum import StrEnum

from coachwright.drawing.hiding import Patch
from coachwright.drawing.lettering import CAP_RATIO, DEPTH_RATIO, text_width_mm
from coachwright.drawing.scene import Point

_AIR_MM = 0.5
"""Between two written things."""


class Over(StrEnum):
    """What a leader may pass behind; every text stands on cleared paper."""

    NOTHING = "nothing"
    SOFT = "labels"
    ALL = "everything"


@dataclass(slots=True)
class Board:
    """What is written so far."""

    taken_mm: list[Patch] = field(default_factory=list)
    soft_mm: list[Patch] = field(default_factory=list)
    """Taken on cleared paper: a leader may pass behind it where there is no other way."""

    def in_the_way(self, over: Over) -> tuple[Patch, ...]:
        """Return what a leader must keep off."""
        if over is Over.ALL:
            return ()
        return tuple(self.taken_mm) if over is Over.SOFT else (*self.taken_mm, *self.soft_mm)

    def free(self, patch: Patch, over: Over = Over.NOTHING) -> bool:
        """Return whether a place is free, with a little air around it."""
        left, low, right, high = (
            patch[0] - _AIR_MM,
            patch[1] - _AIR_MM,
            patch[2] + _AIR_MM,
            patch[3] + _AIR_MM,
        )
        return not any(
            left < other[2] and other[0] < right and low < other[3] and other[1] < high
            for other in self.in_the_way(over)
        )

    def take(self, patch: Patch, *, soft: bool = False) -> None:
        """Keep a place for what is written there."""
        (self.soft_mm if soft else self.taken_mm).append(patch)

    def bounds(self, around: Patch) -> Patch:
        """Return the rectangle around one given and everything written."""
        patches = [around, *self.taken_mm, *self.soft_mm]
        return (
            min(patch[0] for patch in patches),
            min(patch[1] for patch in patches),
            max(patch[2] for patch in patches),
            max(patch[3] for patch in patches),
        )


def text_patch(foot: Point, text: str, height_mm: float, *, strong: bool = False) -> Patch:
    """Return what a text takes whose foot has its middle at a point.

    Parameters
    ----------
    foot
        Middle of the line on which the letters stand. [mm]
    text
        One line.
    height_mm
        Em square. [mm]
    strong
        In the heavier type.
    """
    half_mm = text_width_mm(text, height_mm, strong=strong) / 2
    return (
        foot[0] - half_mm,
        foot[1] - height_mm * DEPTH_RATIO,
        foot[0] + half_mm,
        foot[1] + height_mm * CAP_RATIO,
    )


def upright_patch(foot: Point, text: str, height_mm: float) -> Patch:
    """Return what a text takes that reads from the right edge of the sheet."""
    half_mm = text_width_mm(text, height_mm) / 2
    return (
        foot[0] - height_mm * CAP_RATIO,
        foot[1] - half_mm,
        foot[0] + height_mm * DEPTH_RATIO,
        foot[1] + half_mm,
    )
