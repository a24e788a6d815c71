"""What a size limit counts, and what it leaves out."""

from dataclasses import dataclass
from typing import Literal

Kind = Literal["antenna", "mirror", "lamp", "step", "spray guard", "awning", "ladder", "other"]
Place = Literal["us", "eu", "uk"]

_NEVER_WIDER_EUROPE = frozenset({"mirror", "lamp", "step"})
_NEVER_WIDER_US = frozenset({"mirror", "lamp", "spray guard"})
_CARRIES_NOTHING = frozenset({"antenna", "step", "awning", "ladder"})


@dataclass(frozen=True, kw_only=True, slots=True)
class Counting:
    """Which dimensions count a fitting, and why where one does not."""

    in_length: bool
    in_width: bool
    in_height: bool
    why_not: str


def what_counts(
    *,
    place: Place,
    kind: Kind,
    beyond_rear_mm: float,
    beyond_side_mm: float,
    allowance_mm: float,
) -> Counting:
    """Return which of the vehicle's dimensions count a fitting.

    Parameters
    ----------
    place
        Whose rules apply.
    kind
        What the fitting is; ``other`` counts everywhere.
    beyond_rear_mm
        How far it sticks out over the vehicle's front or rear. [mm]
    beyond_side_mm
        How far it sticks out over the vehicle's side. [mm]
    allowance_mm
        What a device without load may stick out in the United States. [mm]

    Returns
    -------
    Counting
        With the reason, where one dimension leaves it out.

    Notes
    -----
    Germany, taken for the EU and the UK: devices for indirect vision, lamps and retractable
    steps do not count in the width; antennas not in the height.  United States: mirrors, lamps
    and spray guards do not count in length and width; another device that carries no load does
    not count up to the allowance.  No federal rule leaves anything out of the height.

    References
    ----------
    [de-stvzo], [us-23cfr658]

    Examples
    --------
    >>> what_counts(
    ...     place="eu", kind="antenna", beyond_rear_mm=0, beyond_side_mm=0, allowance_mm=76.2
    ... ).in_height
    False
    """
    if place == "us":
        return _united_states(kind, beyond_rear_mm, beyond_side_mm, allowance_mm)
    in_width = kind not in _NEVER_WIDER_EUROPE
    in_height = kind != "antenna"
    why = "" if in_width and in_height else f"{kind}: {'height' if in_width else 'width'}"
    return Counting(in_length=True, in_width=in_width, in_height=in_height, why_not=why)


def _united_states(
    kind: Kind, beyond_rear_mm: float, beyond_side_mm: float, allowance_mm: float
) -> Counting:
    never = kind in _NEVER_WIDER_US
    small = kind in _CARRIES_NOTHING
    out_of_length = never or (small and 0 < beyond_rear_mm <= allowance_mm)
    out_of_width = never or (small and 0 < beyond_side_mm <= allowance_mm)
    left_out = [
        name for name, is_out in (("length", out_of_length), ("width", out_of_width)) if is_out
    ]
    return Counting(
        in_length=not out_of_length,
        in_width=not out_of_width,
        in_height=True,
        why_not=f"{kind}: {' and '.join(left_out)}" if left_out else "",
    )
