"""The ways out of a sleeping area."""

from collections.abc import Sequence
from dataclasses import dataclass

from coachwright.layout.passage import Patch, distance_mm


@dataclass(frozen=True, kw_only=True, slots=True)
class Exit:
    """An opening through which people get out.

    Attributes
    ----------
    place
        Its line or its outline in the plan.
    door
        People walk past it; windows and hatches are passed without a thought.
    direct
        It opens right at the bed.
    walked
        It can be walked to from the bed.
    """

    name: str
    place: Patch
    door: bool
    direct: bool
    walked: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class Counted:
    """Exits that count, nearest first, and those that lie behind another one."""

    exits: tuple[str, ...]
    behind: tuple[str, ...]


def ways_out(*, bed: Patch, exits: Sequence[Exit], near_mm: float) -> Counted:
    """Return the exits of a bed that can be used without passing another exit.

    Parameters
    ----------
    bed
        Its outline in the plan.
    exits
        Every opening of the vehicle.
    near_mm
        A bed that is not further from the plane of its nearest exit may have others behind it.
        [mm]

    Notes
    -----
    An exit counts where it opens at the bed, or where it can be walked to and no door that can be
    walked to lies between: wholly between the bed and it along the vehicle.

    References
    ----------
    [nfpa-1192-2018]

    Examples
    --------
    >>> bed = Patch(name="bed", low_mm=(3400.0, -700.0), high_mm=(5300.0, 700.0))
    >>> slider = Exit(
    ...     name="sliding door", door=True, direct=False, walked=True,
    ...     place=Patch(name="sliding door", low_mm=(1300.0, 900.0), high_mm=(2500.0, 900.0)),
    ... )
    >>> cab = Exit(
    ...     name="cab doors", door=True, direct=False, walked=True,
    ...     place=Patch(name="cab", low_mm=(1200.0, -900.0), high_mm=(1200.0, 900.0)),
    ... )
    >>> ways_out(bed=bed, exits=[slider, cab], near_mm=609.6)
    Counted(exits=('sliding door',), behind=('cab doors',))
    """
    usable = sorted(
        (each for each in exits if each.direct or each.walked),
        key=lambda each: distance_mm(bed, each.place),
    )
    near = bool(usable) and distance_mm(bed, usable[0].place) <= near_mm
    behind = [
        each
        for each in usable
        if not (each.direct or near)
        and any(_between(bed, other.place, each.place) for other in usable if other.door)
    ]
    return Counted(
        exits=tuple(each.name for each in usable if each not in behind),
        behind=tuple(each.name for each in behind),
    )


def _between(bed: Patch, middle: Patch, end: Patch) -> bool:
    """Say whether something lies wholly between the bed and an end along the vehicle."""
    ahead = end.high_mm[0] <= middle.low_mm[0] and middle.high_mm[0] <= bed.low_mm[0]
    astern = bed.high_mm[0] <= middle.low_mm[0] and middle.high_mm[0] <= end.low_mm[0]
    return middle is not end and (ahead or astern)


def opens_at(
    *,
    bed: Patch,
    place: Patch,
    clear_mm: tuple[float, float],
    near_mm: float,
    least_mm: tuple[float, float],
) -> bool:
    """Say whether an opening can be used right from the bed.

    Parameters
    ----------
    bed, place
        Outlines in the plan.
    clear_mm
        Width and height of the opening that are free above the mattress. [mm]
    near_mm
        Furthest from the bed. [mm]
    least_mm
        Shorter and longer side that people get out through. [mm]

    Notes
    -----
    The distance is measured in the plan.

    References
    ----------
    [nfpa-1192-2018]

    Examples
    --------
    >>> bed = Patch(name="bed", low_mm=(3400.0, -700.0), high_mm=(5300.0, 700.0))
    >>> doors = Patch(name="rear doors", low_mm=(5300.0, -780.0), high_mm=(5300.0, 780.0))
    >>> opens_at(
    ...     bed=bed, place=doors, clear_mm=(1400.0, 900.0), near_mm=609.6,
    ...     least_mm=(431.8, 609.6),
    ... )
    True
    """
    short, long = min(clear_mm), max(clear_mm)
    return distance_mm(bed, place) <= near_mm and short >= min(least_mm) and long >= max(least_mm)
