"""What every drawing of a build is made from."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from coachwright.drawing.things import Thing, things_of
from coachwright.layout.model import Layout
from coachwright.model.build import Build
from coachwright.model.finding import Finding


@dataclass(frozen=True, kw_only=True, eq=False)
class Content:
    """One build with what was computed of it; two are the same only if they are one.

    Attributes
    ----------
    findings
        Worst first.
    numbers
        Position numbers by reference name.
    program
        Its name and version, for the title block.
    date
        For the title block, as it is to be shown; may be empty.
    tyre_diameter_mm
        Of the tyres fitted.
    lift_mm
        How much higher the vehicle stands on them than on its own.
    """

    build: Build
    layout: Layout
    findings: tuple[Finding, ...]
    numbers: Mapping[str, str]
    tyre_diameter_mm: float
    lift_mm: float = 0.0
    program: str = "Coachwright"
    date: str = ""

    @property
    def floor_height_mm(self) -> float:
        """Load floor above the ground, unladen, on the tyres fitted."""
        return self.build.vehicle.outside.floor_height_mm + self.lift_mm

    @property
    def system(self) -> str:
        """Units that dimensions are shown in."""
        return self.build.brief.units

    @cached_property
    def things(self) -> tuple[Thing, ...]:
        """Everything that stands somewhere."""
        return things_of(self.build, self.layout, self.numbers)

    @cached_property
    def _by_name(self) -> dict[str, Thing]:
        return {thing.name: thing for thing in self.things}

    def has_thing(self, name: str) -> bool:
        """Return whether there is a thing of a name."""
        return name in self._by_name

    def thing(self, name: str) -> Thing:
        """Return the thing of a name that there is."""
        return self._by_name[name]
