"""Lettering of the SVG backend."""

from xml.sax.saxutils import escape

from coachwright.drawing.lettering import CAP_RATIO, DEPTH_RATIO, text_width_mm
from coachwright.drawing.scene import Anchor, Point, Text

_MARGIN_MM = 0.4
_SHARE_BEFORE_FACTOR = {Anchor.START: 0.0, Anchor.MIDDLE: 0.5, Anchor.END: 1.0}


def lettering(
    at: Point, words: str, height_mm: float, anchor: str, ink: str, *, strong: bool = False
) -> str:
    """Return one line of text whose foot stands at a point of the paper.

    Parameters
    ----------
    at
        Across and down. [mm]
    words
        What it says.
    height_mm
        Em square. [mm]
    anchor
        Which end of it stands there, in SVG's words.
    ink
        Its colour.
    strong
        In the heavier type.
    """
    weight = ' font-weight="600"' if strong else ""
    return (
        f'<text x="{number(at[0])}" y="{number(at[1])}" font-size="{number(height_mm)}" '
        f'text-anchor="{anchor}"{weight} fill="{ink}">{escape(words)}</text>'
    )


def backing(at: Point, text: Text) -> str:
    """Return the patch of paper behind a text."""
    width_mm = text_width_mm(text.text, text.height_mm, strong=text.strong)
    left_mm = at[0] - width_mm * _SHARE_BEFORE_FACTOR[text.anchor] - _MARGIN_MM
    top_mm = at[1] - text.height_mm * CAP_RATIO - _MARGIN_MM
    height_mm = text.height_mm * (CAP_RATIO + DEPTH_RATIO) + _MARGIN_MM
    return (
        f'<rect x="{number(left_mm)}" y="{number(top_mm)}" '
        f'width="{number(width_mm + 2 * _MARGIN_MM)}" height="{number(height_mm)}" '
        'fill="#ffffff"/>'
    )


def turned(at: Point, drawn: str) -> str:
    """Return something turned about a point so that it reads from the right edge."""
    return f'<g transform="rotate(-90 {number(at[0])} {number(at[1])})">{drawn}</g>'


def number(length_mm: float) -> str:
    """Return a length as SVG has it: to a thousandth, without idle zeros.

    Examples
    --------
    >>> number(12.5), number(-0.0001)
    ('12.5', '0')
    """
    text = f"{length_mm:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
