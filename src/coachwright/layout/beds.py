"""Who sleeps where, and the space above each bed."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import combinations

from coachwright.errors import OutOfRange
from coachwright.layout.clear_space import SLACK_MM, Clear
from coachwright.layout.passage import Patch
from coachwright.layout.solids import Box, Solid

MOST_SLEEPERS = 12
"""More are not laid: the search looks at every group for every bed."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Mattress:
    """One bed: a pair of singles counts as two."""

    name: str
    length_mm: float
    width_mm: float
    berths: int


@dataclass(frozen=True, kw_only=True, slots=True)
class Person:
    """One who wants a berth."""

    name: str
    stature_mm: float
    shoulders_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Lying:
    """Who lies in one bed."""

    mattress: Mattress
    people: tuple[Person, ...]


def sleepers(*, mattresses: Sequence[Mattress], people: Sequence[Person]) -> tuple[Lying, ...]:
    """Return who sleeps in which bed so that as few millimetres as possible are missing.

    Parameters
    ----------
    mattresses
        The beds.
    people
        Those who want a berth.

    Returns
    -------
    tuple of Lying
        One for each bed, in the order given; people for whom there is no berth are left out.

    Raises
    ------
    OutOfRange
        Where there are more than `MOST_SLEEPERS` people.

    Notes
    -----
    As many as possible are laid; then the least sum over all beds of Σ max(0, stature - length)
    and max(0, Σ shoulders - width); then those named first lie in the beds named first.  Exact:
    every group is tried in every bed.

    References
    ----------
    [geometry]

    Examples
    --------
    >>> beds = [
    ...     Mattress(name="bunk", length_mm=1700, width_mm=650, berths=1),
    ...     Mattress(name="bed", length_mm=1900, width_mm=700, berths=1),
    ... ]
    >>> tall = Person(name="tall", stature_mm=1850, shoulders_mm=520)
    >>> small = Person(name="small", stature_mm=1650, shoulders_mm=450)
    >>> [lying.people[0].name for lying in sleepers(mattresses=beds, people=[tall, small])]
    ['small', 'tall']
    """
    if len(people) > MOST_SLEEPERS:
        raise OutOfRange("people", len(people), f"at most {MOST_SLEEPERS}")

    @cache
    def best(index: int, left: tuple[int, ...]) -> tuple[float, tuple[tuple[int, ...], ...]]:
        """Return cost and groups of the beds from one on, for the people who are left."""
        if index == len(mattresses):
            return _UNLAID_MM * len(left), ()
        choices = []
        for size in range(min(mattresses[index].berths, len(left)), -1, -1):
            for group in combinations(left, size):
                rest = tuple(person for person in left if person not in group)
                cost_mm, groups = best(index + 1, rest)
                choices.append(
                    (
                        _missing_mm(mattresses[index], [people[i] for i in group]) + cost_mm,
                        group,
                        groups,
                    )
                )
        cost_mm, group, groups = min(choices, key=lambda choice: choice[0])
        return cost_mm, (group, *groups)

    _, groups = best(0, tuple(range(len(people))))
    return tuple(
        Lying(mattress=mattress, people=tuple(people[i] for i in group))
        for mattress, group in zip(mattresses, groups, strict=True)
    )


_UNLAID_MM = 1e7
"""More than can be missing of all beds together."""


def _missing_mm(mattress: Mattress, group: Sequence[Person]) -> float:
    along_mm = sum(max(0.0, person.stature_mm - mattress.length_mm) for person in group)
    across_mm = sum(person.shoulders_mm for person in group) - mattress.width_mm
    return along_mm + max(0.0, across_mm)


@dataclass(frozen=True, kw_only=True, slots=True)
class _Over:
    """A rectangle over the bed and its underside."""

    part: Box
    name: str


def best_to_sit(
    *,
    mattress: Patch,
    top_mm: float,
    ceiling_mm: float,
    square_mm: float,
    bodies: Iterable[Solid],
) -> Clear:
    """Return the clear height above a mattress where it is best to sit up.

    Parameters
    ----------
    mattress
        In the plan.
    top_mm
        Its top above the load floor. [mm]
    ceiling_mm
        Finished ceiling above the load floor. [mm]
    square_mm
        Side of the square that a sitting person needs. [mm]
    bodies
        What may hang over it.

    Returns
    -------
    Clear
        0 where something stands on all of the mattress.

    Notes
    -----
    The greatest h for which a square of the plan within the mattress lies clear of everything
    whose underside is lower than h.  Squares in the corners between the things overhead are tried:
    a free one can always be pushed into such a corner.  A bed that is narrower than the square
    takes it across its whole width.

    References
    ----------
    [geometry]

    Examples
    --------
    >>> bed = Patch(name="bed", low_mm=(0.0, 0.0), high_mm=(1900.0, 1300.0))
    >>> best_to_sit(
    ...     mattress=bed, top_mm=900.0, ceiling_mm=1850.0, square_mm=600.0, bodies=[]
    ... ).free_mm
    950.0
    """
    over = _over(mattress, top_mm, bodies)
    height_mm, name = next(
        (height_mm, name)
        for height_mm, name in _heights(over, ceiling_mm)
        if _free_square(
            mattress, [item.part for item in over if item.part.low_mm[2] < height_mm], square_mm
        )
    )
    return Clear(free_mm=max(0.0, height_mm - top_mm), ended_by=name)


def _over(mattress: Patch, top_mm: float, bodies: Iterable[Solid]) -> list[_Over]:
    """Return what hangs over a mattress, lowest first."""
    found = [
        _Over(part=part, name=body.name)
        for body in bodies
        for part in body.boxes
        if part.high_mm[2] > top_mm + SLACK_MM
        and all(
            part.low_mm[axis] < mattress.high_mm[axis] - SLACK_MM
            and part.high_mm[axis] > mattress.low_mm[axis] + SLACK_MM
            for axis in (0, 1)
        )
    ]
    return sorted(found, key=lambda item: item.part.low_mm[2])


def _heights(over: Sequence[_Over], ceiling_mm: float) -> list[tuple[float, str]]:
    """Return the heights at which something ends the space, highest first."""
    ends = [(item.part.low_mm[2], item.name) for item in over if item.part.low_mm[2] < ceiling_mm]
    return sorted([(ceiling_mm, "ceiling"), *ends], key=lambda end: -end[0])


def _free_square(mattress: Patch, taken: Sequence[Box], square_mm: float) -> bool:
    starts: list[set[float]] = []
    for axis in (0, 1):
        low_mm = mattress.low_mm[axis]
        last_mm = max(low_mm, mattress.high_mm[axis] - square_mm)
        beside = {part.high_mm[axis] for part in taken}
        beside |= {part.low_mm[axis] - square_mm for part in taken}
        starts.append({low_mm, last_mm} | {start for start in beside if low_mm < start < last_mm})
    return any(
        not any(
            part.low_mm[0] < x_mm + square_mm - SLACK_MM
            and part.high_mm[0] > x_mm + SLACK_MM
            and part.low_mm[1] < y_mm + square_mm - SLACK_MM
            and part.high_mm[1] > y_mm + SLACK_MM
            for part in taken
        )
        for x_mm in starts[0]
        for y_mm in starts[1]
    )
