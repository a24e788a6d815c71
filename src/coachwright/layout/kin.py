"""Which fittings belong together: built into each other, carried, hung on a rear door."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from coachwright.model.build import Build, Fitting, Mounting

REAR_DOORS = frozenset({Mounting.REAR_DOOR_LEFT, Mounting.REAR_DOOR_RIGHT})


@dataclass(frozen=True, kw_only=True, slots=True)
class Kin:
    """The relations between the fittings of a build.

    Attributes
    ----------
    nested
        Pairs of names of which one is built into the other, at any depth.
    door
        Name → the rear door that it hangs on, itself or by what carries it.
    carriers
        Name → what carries it, at any depth; those it is built into are left out.
    """

    nested: frozenset[frozenset[str]]
    door: Mapping[str, Mounting]
    carriers: Mapping[str, frozenset[str]]

    def related(self, one: str, other: str) -> bool:
        """Say whether one of two fittings is built into the other, or carries it."""
        return (
            frozenset((one, other)) in self.nested
            or one in self.carriers[other]
            or other in self.carriers[one]
        )


def kin_of(build: Build) -> Kin:
    """Return the relations between the fittings of a build."""
    fittings = {fitted.name: fitted.fitting for fitted in build.fittings}
    nested: set[frozenset[str]] = set()
    door: dict[str, Mounting] = {}
    carriers: dict[str, frozenset[str]] = {}
    for name, fitting in fittings.items():
        trail = tuple(_trail(fitting, fittings))
        into = tuple(_trail(fitting, fittings, only_within=True))
        nested |= {frozenset((name, holder.name)) for holder in into}
        carriers[name] = frozenset(holder.name for holder in trail if holder not in into)
        hung = (each.mounting for each in (fitting, *trail) if each.mounting in REAR_DOORS)
        mounting = next(hung, None)
        if mounting is not None:
            door[name] = mounting
    return Kin(nested=frozenset(nested), door=door, carriers=carriers)


def _trail(
    fitting: Fitting, fittings: Mapping[str, Fitting], *, only_within: bool = False
) -> Iterator[Fitting]:
    """Yield what holds a fitting, what holds that, and so on; a ring ends where it closes."""
    seen = {fitting.name}
    here = fitting
    while True:
        name = here.within or ("" if only_within else here.on)
        if not name or name in seen:
            return
        seen.add(name)
        here = fittings[name]
        yield here
