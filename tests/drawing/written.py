"""What is written on a sheet, measured with the font itself and not with the program's table."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any

from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

from coachwright.drawing.scene import Anchor, Circle, Dimension, Layer, Scene, Sheet, Span, Text
from coachwright.papers.render import FONTS

Patch = tuple[float, float, float, float]

DEPTH = 0.2
"""Of the letters that reach below their line, in em."""
BEFORE = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}


@dataclass(frozen=True, kw_only=True)
class Written:
    """One text and what it takes, in mm of the paper."""

    text: str
    patch: Patch
    height_mm: float
    kind: str


@cache
def font(*, strong: bool) -> Any:
    """Return the type of the papers."""
    return TTFont(FONTS / f"Inter-{'SemiBold' if strong else 'Regular'}.otf")


@cache
def _advances(*, strong: bool) -> tuple[dict[int, str], Any, int]:
    type_ = font(strong=strong)
    return type_.getBestCmap(), type_["hmtx"], type_["head"].unitsPerEm


@cache
def em_width(text: str, *, strong: bool = False) -> float:
    """Return how wide a text is, in em."""
    glyphs, widths, units = _advances(strong=strong)
    return float(sum(widths[glyphs[ord(letter)]][0] for letter in text)) / units


def cap_ratio() -> float:
    """Return the height of a capital, in em."""
    type_ = font(strong=False)
    return float(type_["OS/2"].sCapHeight) / float(type_["head"].unitsPerEm)


def written_on(sheet: Sheet) -> Iterator[Written]:
    """Yield every text of a sheet."""
    yield from _of(sheet.frame, (0.0, 0.0))
    for pane in sheet.panes:
        yield from _of(pane.scene, pane.at_mm)


def rings_on(sheet: Sheet) -> Iterator[Patch]:
    """Yield what the rings of position numbers take."""
    for pane in sheet.panes:
        scene = pane.scene
        for primitive in scene.primitives:
            if isinstance(primitive, Circle) and primitive.layer is Layer.LABEL:
                x, y = _place(scene, pane.at_mm, primitive.centre_mm)
                radius = primitive.radius_mm / scene.scale_ratio
                yield (x - radius, y - radius, x + radius, y + radius)


def _place(
    scene: Scene, at: tuple[float, float], point: tuple[float, float]
) -> tuple[float, float]:
    return (
        at[0] + (point[0] - scene.low_mm[0]) / scene.scale_ratio,
        at[1] + (point[1] - scene.low_mm[1]) / scene.scale_ratio,
    )


def _of(scene: Scene, at: tuple[float, float]) -> Iterator[Written]:
    for primitive in scene.primitives:
        match primitive:
            case Text():
                foot = _place(scene, at, primitive.at_mm)
                width = em_width(primitive.text, strong=primitive.strong) * primitive.height_mm
                yield Written(
                    text=primitive.text,
                    patch=_patch(
                        foot,
                        width,
                        primitive.height_mm,
                        BEFORE[primitive.anchor],
                        upright=primitive.upright,
                    ),
                    height_mm=primitive.height_mm,
                    kind="text",
                )
            case Dimension():
                assert primitive.text_at_mm is not None
                foot = _place(scene, at, primitive.text_at_mm)
                width = em_width(primitive.text) * primitive.letters_mm
                yield Written(
                    text=primitive.text,
                    patch=_patch(
                        foot, width, primitive.letters_mm, 0.5, upright=primitive.upright
                    ),
                    height_mm=primitive.letters_mm,
                    kind="dimension",
                )
            case Span():
                foot = _place(scene, at, primitive.text_at_mm)
                width = em_width(primitive.text, strong=True) * primitive.letters_mm
                yield Written(
                    text=primitive.text,
                    patch=_patch(foot, width, primitive.letters_mm, 0.5),
                    height_mm=primitive.letters_mm,
                    kind="dimension",
                )
            case _:
                continue


def _patch(
    foot: tuple[float, float],
    width: float,
    height: float,
    before: float,
    *,
    upright: bool = False,
) -> Patch:
    cap, depth = height * cap_ratio(), height * DEPTH
    start = -width * before
    if upright:
        return (foot[0] - cap, foot[1] + start, foot[0] + depth, foot[1] + start + width)
    return (foot[0] + start, foot[1] - depth, foot[0] + start + width, foot[1] + cap)


def overlaps(one: Patch, other: Patch, slack_mm: float = 0.01) -> bool:
    """Return whether two patches overlap."""
    return (
        one[0] < other[2] - slack_mm
        and other[0] < one[2] - slack_mm
        and one[1] < other[3] - slack_mm
        and other[1] < one[3] - slack_mm
    )
