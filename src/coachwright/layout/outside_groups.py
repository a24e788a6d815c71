"""Which fittings are where outside, themselves or by what carries them."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from coachwright.layout.kin import REAR_DOORS
from coachwright.layout.solids import Solid
from coachwright.layout.standing import Standing
from coachwright.model.build import Build, Fitted, Mounting


@dataclass(frozen=True, kw_only=True, slots=True)
class Groups:
    """The fittings of a build by where they are outside, in the order of the file.

    Attributes
    ----------
    here
        What stands where.
    chains
        Name → the fitting and everything that carries it.
    """

    here: Standing
    chains: Mapping[str, tuple[Fitted, ...]]

    @property
    def build(self) -> Build:
        """The build."""
        return self.here.build

    @property
    def solids(self) -> Mapping[str, Solid]:
        """Every fitting but the tyres, by name, with the doors closed."""
        return self.here.solids

    def at(self, *mountings: Mounting) -> tuple[Fitted, ...]:
        """Return what is mounted in one of these places; what is built in is left out."""
        return tuple(
            chain[0]
            for chain in self.chains.values()
            if not chain[0].fitting.within
            and any(each.fitting.mounting in mountings for each in chain)
        )

    def behind(self) -> tuple[Fitted, ...]:
        """Return what hangs on the rear doors and the hitch and stands out behind."""
        rear_mm = rear_face_mm(self.build)
        return tuple(
            fitted
            for fitted in self.at(*REAR_DOORS, Mounting.HITCH)
            if self.solids[fitted.name].bounds.high_mm[0] > rear_mm
        )

    def bodies(self, fittings: Iterable[Fitted]) -> tuple[Solid, ...]:
        """Return fittings as solids."""
        return tuple(self.solids[fitted.name] for fitted in fittings)


def groups_of(here: Standing) -> Groups:
    """Return the fittings of a build by where they are outside."""
    by_name = {fitted.name: fitted for fitted in here.build.fittings}
    chains = {
        fitted.name: (
            fitted,
            *(by_name[carrier] for carrier in sorted(here.kin.carriers[fitted.name])),
        )
        for fitted in here.placed
    }
    return Groups(here=here, chains=chains)


def rear_face_mm(build: Build) -> float:
    """Return x of the closed rear doors' outer face. [mm]."""
    outside = build.vehicle.outside
    return outside.length_mm - outside.front_overhang_mm
