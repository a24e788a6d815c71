"""Berths, and who sleeps in which bed."""

from collections.abc import Sequence
from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working
from coachwright.wishes.seats import Count


@dataclass(frozen=True, kw_only=True, slots=True)
class Bunk:
    """A bed: its length and how many sleep in it."""

    name: str
    length_mm: float
    berths: int


@dataclass(frozen=True, kw_only=True, slots=True)
class Sleeping:
    """A bed with the longest of those who sleep in it; None for an empty bed."""

    name: str
    longest_stature_mm: float | None


def berths(*, bunks: Sequence[Bunk]) -> Count:
    """Return the berths of all beds.

    Parameters
    ----------
    bunks
        The beds.

    Returns
    -------
    Count
        Their sum.

    Notes
    -----
    n = Σ b.  A bed that is made up from seats counts like any other.

    References
    ----------
    [customer-brief]

    Examples
    --------
    >>> berths(bunks=(Bunk(name="bed", length_mm=1900, berths=2),)).count
    2
    """
    count = sum(bunk.berths for bunk in bunks)
    working = Working(
        expression=" + ".join(f"b{i}" for i, _ in enumerate(bunks, start=1)) or "0",
        given=tuple(
            Given(symbol=f"b{i}", meaning=f"berths of {b.name}", value=b.berths, unit="count")
            for i, b in enumerate(bunks, start=1)
        ),
        result=count,
        unit="count",
        references=("customer-brief",),
    )
    return Count(count=count, working=working)


def sleepers(*, bunks: Sequence[Bunk], statures_mm: Sequence[float]) -> tuple[Sleeping, ...]:
    """Give the longest beds to the tallest people and return who is longest in each.

    Parameters
    ----------
    bunks
        The beds.
    statures_mm
        Of those who want a berth. [mm]

    Returns
    -------
    tuple of Sleeping
        One for each bed, in the order given.

    Raises
    ------
    OutOfRange
        Where a bed has no berth.

    Notes
    -----
    Nobody can be laid better: exchanging two people only puts a taller one into a shorter bed.
    People lie straight along the bed.

    References
    ----------
    [customer-brief]

    Examples
    --------
    >>> bed = Bunk(name="bed", length_mm=1900, berths=2)
    >>> sleepers(bunks=(bed,), statures_mm=(1700, 1810))[0].longest_stature_mm
    1810
    """
    left = sorted(statures_mm, reverse=True)
    longest: dict[str, float | None] = {}
    for bunk in sorted(bunks, key=lambda each: each.length_mm, reverse=True):
        if bunk.berths < 1:
            raise OutOfRange("berths", bunk.berths, "at least 1")
        longest[bunk.name] = left[0] if left else None
        left = left[bunk.berths :]
    return tuple(Sleeping(name=bunk.name, longest_stature_mm=longest[bunk.name]) for bunk in bunks)
