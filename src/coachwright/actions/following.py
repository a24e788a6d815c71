"""What moves along when a fitting is moved: what stands against it, and what it carries."""

from collections.abc import Iterator

from coachwright.model.build import Build, Fitted
from coachwright.model.position import Relation

AXES = (0, 1, 2)


def followers(build: Build, name: str, axis: int) -> tuple[str, ...]:
    """Return the fittings that move with one along an axis, in the order of the build.

    Notes
    -----
    Those whose place on this axis is told by it, and those that it carries or that are built into
    it and stand at a length of their own; and so on from each of them.
    """
    moved = {name}
    more = True
    while more:
        new = {
            fitted.name
            for fitted in build.fittings
            if fitted.name not in moved and (_stands_by(fitted, moved, axis))
        }
        moved |= new
        more = bool(new)
    return tuple(f.name for f in build.fittings if f.name in moved and f.name != name)


def carried_by_length(build: Build, name: str, axis: int) -> Iterator[Fitted]:
    """Yield the followers whose place is a length, which has to be written anew."""
    following = followers(build, name, axis)
    for fitted in build.fittings:
        if fitted.name in following and not isinstance(fitted.fitting.at_mm[axis], Relation):
            yield fitted


def built_into(build: Build, name: str) -> tuple[str, ...]:
    """Return what is built into a fitting or stands on it, and so on from each of them."""
    found = {name}
    more = True
    while more:
        new = {
            fitted.name
            for fitted in build.fittings
            if fitted.name not in found
            and (fitted.fitting.within in found or fitted.fitting.on in found)
        }
        found |= new
        more = bool(new)
    return tuple(f.name for f in build.fittings if f.name in found and f.name != name)


def _stands_by(fitted: Fitted, moved: set[str], axis: int) -> bool:
    place = fitted.fitting.at_mm[axis]
    if isinstance(place, Relation):
        return place.target in moved
    return fitted.fitting.within in moved or fitted.fitting.on in moved
