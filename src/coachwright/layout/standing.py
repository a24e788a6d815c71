"""What stands where in a build: the solids and relations that every subject of layout looks at."""

from collections.abc import Mapping
from dataclasses import dataclass

from coachwright import reference
from coachwright.layout.doors import swung
from coachwright.layout.fit import arch_solids
from coachwright.layout.kin import Kin, kin_of
from coachwright.layout.solids import Solid, solid_of
from coachwright.model.build import INSIDE, Build, Fitted, Mounting
from coachwright.model.positioning import layer_of
from coachwright.model.shell import BuildUp, build_up


@dataclass(frozen=True, kw_only=True, slots=True)
class Standing:
    """A build with its fittings as solids.

    Attributes
    ----------
    build_up
        What the finishes take of the shell.
    placed
        The fittings but the tyres on the wheels, which have no place of their own.
    living
        Those of them in the living space, not in the cab.
    solids
        The placed fittings as solids, by name, with the doors closed.
    opened
        Those that hang on a rear door, with the doors fully open.
    arches
        Wheel arches.
    kin
        What is built into what, and what carries what.
    slack_mm
        Overlaps not deeper than this do not count.
    """

    build: Build
    build_up: BuildUp
    placed: tuple[Fitted, ...]
    living: tuple[Fitted, ...]
    solids: Mapping[str, Solid]
    opened: Mapping[str, Solid]
    arches: tuple[Solid, ...]
    kin: Kin
    slack_mm: float

    def bodies(self) -> tuple[Solid, ...]:
        """Return what stands in the living space, wheel arches too."""
        return (*(self.solids[fitted.name] for fitted in self.living), *self.arches)


def standing(build: Build) -> Standing:
    """Return a build with its fittings as solids."""
    kin = kin_of(build)
    placed = tuple(f for f in build.fittings if f.fitting.mounting is not Mounting.WHEELS)
    solids = {fitted.name: solid_of(fitted) for fitted in placed}
    open_deg = build.vehicle.rear_end.open_deg
    return Standing(
        build=build,
        build_up=finished_shell(build),
        placed=placed,
        living=tuple(f for f in placed if in_living_space(f)),
        solids=solids,
        opened={
            name: swung(solids[name], build.vehicle, door, open_deg)
            for name, door in kin.door.items()
        },
        arches=arch_solids(build.vehicle.shell),
        kin=kin,
        slack_mm=reference.limit("layout.judged-to").value,
    )


def in_living_space(fitted: Fitted) -> bool:
    """Say whether a fitting stands behind the cab line and inside."""
    mounting = fitted.fitting.mounting
    return mounting in INSIDE and mounting is not Mounting.CAB


def finished_shell(build: Build) -> BuildUp:
    """Return what the finishes of a build take of the shell."""
    layers = [layer_of(layer.finish, layer.part) for layer in build.finishes]
    return build_up(
        [layer for layer in layers if layer is not None], build.vehicle.shell.rib_depth_mm
    )
