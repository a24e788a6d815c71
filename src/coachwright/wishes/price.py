"""What the parts cost together."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from coachwright.errors import OutOfRange


@dataclass(frozen=True, kw_only=True, slots=True)
class Item:
    """So many of one part; `price_minor` None where it has no price in the currency."""

    name: str
    count: int
    price_minor: int | None


@dataclass(frozen=True, kw_only=True, slots=True)
class Total:
    """The sum, None where a price is missing, and what is known of it."""

    total_minor: int | None
    known_minor: int
    without_price: tuple[str, ...]


def sheets(*, area_m2: float, length_mm: float, width_mm: float) -> int:
    """Return the whole sheets that an area takes.

    Parameters
    ----------
    area_m2
        To be covered. [m2]
    length_mm
        Of a sheet. [mm]
    width_mm
        Of a sheet. [mm]

    Returns
    -------
    int
        Area over area, rounded up.

    Raises
    ------
    OutOfRange
        Where a sheet has no area.

    Notes
    -----
    Without offcuts: a real cutting plan takes as many or more.

    References
    ----------
    [geometry]

    Examples
    --------
    >>> sheets(area_m2=6.2, length_mm=2500, width_mm=1220)
    3
    """
    if length_mm <= 0 or width_mm <= 0:
        raise OutOfRange("sheet", f"{length_mm} x {width_mm} mm", "more than 0 mm each way")
    whole = area_m2 * 1e6 / (length_mm * width_mm)
    # an area that is a whole number of sheets must not be pushed over it by the last bit
    return math.ceil(whole - 1e-9)


def total(*, items: Sequence[Item]) -> Total:
    """Return the sum of the parts' prices.

    Parameters
    ----------
    items
        All of one currency.

    Returns
    -------
    Total
        Whole minor units.

    Notes
    -----
    Σ n · p in whole cents or pence; nothing is rounded.

    References
    ----------
    [customer-brief]

    Examples
    --------
    >>> total(items=(Item(name="pump", count=2, price_minor=8450),)).total_minor
    16900
    """
    known = sum(item.count * item.price_minor for item in items if item.price_minor is not None)
    without = tuple(item.name for item in items if item.price_minor is None)
    return Total(total_minor=None if without else known, known_minor=known, without_price=without)
