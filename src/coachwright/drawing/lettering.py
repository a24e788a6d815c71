"""How wide a text is in the type of the papers, so that it can be placed before it is set."""

import csv
from functools import cache
from importlib import resources

CAP_RATIO = 2048 / 2816
"""Height of a capital for one em square of the type."""
DEPTH_RATIO = 0.21
"""How far letters reach below their line, for one em."""
_UNITS_PER_EM_RATIO = 2816.0
_UNKNOWN_EM_RATIO = 1.0
"""A letter that the table lacks is taken as wide as it is high."""


def text_width_mm(text: str, height_mm: float, *, strong: bool = False) -> float:
    """Return how wide a text is.

    Parameters
    ----------
    text
        One line.
    height_mm
        Em square of the type. [mm]
    strong
        In the heavier type.

    Notes
    -----
    Sum of the advance widths of the type in `lettering.csv`; kerning, which only brings letters
    closer, is left out.

    Examples
    --------
    >>> round(text_width_mm("1,219", 2816 / 1000), 3)
    6.864
    """
    widths = _widths_ratio()[1 if strong else 0]
    return height_mm * sum(widths.get(letter, _UNKNOWN_EM_RATIO) for letter in text)


def shortened(text: str, height_mm: float, room_mm: float, *, strong: bool = False) -> str:
    """Return a text that fits a width: cut at its end with three dots where it is too long.

    Examples
    --------
    >>> shortened("overhead locker left", 3.0, 20.0), shortened("sink", 3.0, 20.0)
    ('overhead lo…', 'sink')
    """
    if text_width_mm(text, height_mm, strong=strong) <= room_mm:
        return text
    kept = text
    while kept and text_width_mm(f"{kept}…", height_mm, strong=strong) > room_mm:
        kept = kept[:-1].rstrip()
    return f"{kept}…"


def wrapped(text: str, height_mm: float, room_mm: float) -> tuple[str, ...]:
    """Return a text broken into lines that fit a width.

    Examples
    --------
    >>> wrapped("check every dimension in the vehicle", 3.0, 30.0)
    ('check every', 'dimension in the', 'vehicle')
    """
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width_mm(longer, height_mm) <= room_mm:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines)


@cache
def _widths_ratio() -> tuple[dict[str, float], dict[str, float]]:
    """Return the advance widths of both types, in em."""
    regular: dict[str, float] = {}
    strong: dict[str, float] = {}
    table = resources.files(__package__).joinpath("lettering.csv").read_text(encoding="utf-8")
    for row in csv.DictReader(table.splitlines()):
        letter = chr(int(row["code_point"]))
        regular[letter] = int(row["regular_per_2816"]) / _UNITS_PER_EM_RATIO
        strong[letter] = int(row["semibold_per_2816"]) / _UNITS_PER_EM_RATIO
    return regular, strong
