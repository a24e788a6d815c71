"""The inside of one build: what every subject about people looks at."""

from collections.abc import Mapping
from dataclasses import dataclass

from coachwright.layout.solids import Solid
from coachwright.layout.standing import Standing
from coachwright.model.build import Build, Fitted
from coachwright.model.shell import BuildUp


@dataclass(frozen=True, kw_only=True, slots=True)
class Room:
    """The living space with what stands in it.

    Attributes
    ----------
    solids
        Every fitting with a place of its own, by name.
    placed
        Every fitting with a place of its own.
    inside
        Fittings of the living space, without the cab.
    bodies
        Their solids, and the wheel arches.
    floor_mm, ceiling_mm
        Finished floor and ceiling above the load floor.
    """

    build: Build
    solids: Mapping[str, Solid]
    arches: tuple[Solid, ...]
    build_up: BuildUp
    placed: tuple[Fitted, ...]
    inside: tuple[Fitted, ...]
    bodies: tuple[Solid, ...]
    floor_mm: float
    ceiling_mm: float

    def but(self, *names: str) -> tuple[Solid, ...]:
        """Return the bodies without those of some names."""
        return tuple(body for body in self.bodies if body.name not in names)

    def around(self, fitted: Fitted) -> tuple[Solid, ...]:
        """Return the bodies without a fitting, what holds it and what it holds."""
        return self.but(*held_with(self.build, fitted))


def room_of(here: Standing) -> Room:
    """Return the living space of a build."""
    build, build_up = here.build, here.build_up
    return Room(
        build=build,
        solids=here.solids,
        arches=here.arches,
        build_up=build_up,
        placed=here.placed,
        inside=here.living,
        bodies=here.bodies(),
        floor_mm=build_up.floor_mm,
        ceiling_mm=build.vehicle.shell.ceiling_mm - build_up.ceiling_mm,
    )


def held_with(build: Build, fitted: Fitted) -> frozenset[str]:
    """Return a fitting's name, those of what holds it, and of what it holds, at any depth."""
    holders: set[str] = {fitted.name}
    here = fitted
    while here.fitting.within or here.fitting.on:
        name = here.fitting.within or here.fitting.on
        found = build.fitted(name)
        if name in holders or found is None:
            break
        holders.add(name)
        here = found
    held = {fitted.name}
    grown = True
    while grown:
        more = {
            other.name
            for other in build.fittings
            if other.name not in held
            and (other.fitting.within in held or other.fitting.on in held)
        }
        held |= more
        grown = bool(more)
    return frozenset(holders | held)
