"""The inside of one build: what every subject about people looks at."""

from collections.abc import Mapping
from dataclasses import dataclass

from coachwright.layout.kin import Kin
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
    kin
        What is built into what, and what carries what.
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
    kin: Kin
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
        related = (name for name in self.solids if self.kin.related(fitted.name, name))
        return self.but(fitted.name, *related)


def room_of(here: Standing) -> Room:
    """Return the living space of a build."""
    build, build_up = here.build, here.build_up
    return Room(
        build=build,
        solids=here.solids,
        arches=here.arches,
        build_up=build_up,
        kin=here.kin,
        placed=here.placed,
        inside=here.living,
        bodies=here.bodies(),
        floor_mm=build_up.floor_mm,
        ceiling_mm=build.vehicle.shell.ceiling_mm - build_up.ceiling_mm,
    )
