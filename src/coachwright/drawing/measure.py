"""Lengths as a drawing says them: whole millimetres, or inches to the sixteenth."""

import math

_INCH_MM = 25.4
_SIXTEENTHS_PER_INCH_RATIO = 16
UNITS = {"metric": "millimetres", "us": "inches, to the nearest 1/16"}
"""What the title block says of the dimensions, by the system of the brief."""


def length_text(length_mm: float, system: str) -> str:
    """Return a length as a dimension shows it, without its unit.

    Parameters
    ----------
    length_mm
        The length. [mm]
    system
        ``"metric"`` or ``"us"``.

    Notes
    -----
    Rounded half up.  Metric: to the millimetre.  US: to 1/16 in, the finest line of a workshop's
    tape, the fraction in its lowest terms.

    Examples
    --------
    >>> length_text(1219.2, "metric"), length_text(1219.2, "us"), length_text(434.98, "us")
    ('1219', '48', '17 1/8')
    >>> length_text(-12.7, "us")
    '−1/2'
    """
    sign = "−" if length_mm < 0 else ""
    size_mm = abs(length_mm)
    if system != "us":
        whole = math.floor(size_mm + 0.5)
        return f"{sign if whole else ''}{whole}"
    parts = math.floor(size_mm / _INCH_MM * _SIXTEENTHS_PER_INCH_RATIO + 0.5)
    inches, rest = divmod(parts, _SIXTEENTHS_PER_INCH_RATIO)
    if not parts:
        return "0"
    if not rest:
        return f"{sign}{inches}"
    common = math.gcd(rest, _SIXTEENTHS_PER_INCH_RATIO)
    fraction = f"{rest // common}/{_SIXTEENTHS_PER_INCH_RATIO // common}"
    return f"{sign}{inches} {fraction}" if inches else f"{sign}{fraction}"


def size_text(size_mm: tuple[float, ...], system: str) -> str:
    """Return the sides of a thing, such as ``"1219 × 510 × 900"``.

    Examples
    --------
    >>> size_text((1219.2, 508.0), "us")
    '48 × 20'
    """
    return " × ".join(length_text(side_mm, system) for side_mm in size_mm)
