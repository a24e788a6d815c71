"""What every drawing of a build is made from."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from coachwright.drawing.things import Thing, things_of
from coachwright.layout.model import Layout
from coachwright.model.build import Build
from coachwright.model.finding import Finding


@dataclass(frozen=True, kw_only=True)
class Content:
    """One build with what was computed of it.

    Attributes
    ----------
    findings
        Worst first.
    numbers
        Position numbers by reference name.
    date
        For the title block, as it is to be shown; may be empty.
    tyre_diameter_mm
        Of the tyres fitted.
    """

    build: Build
    layout: Layout
    findings: tuple[Finding, ...]
    numbers: Mapping[str, str]
    tyre_diameter_mm: float
    date: str = ""

    @property
    def system(self) -> str:
        """Units that dimensions are shown in."""
        return self.build.brief.units

    @cached_property
    def things(self) -> tuple[Thing, ...]:
        """Everything that stands somewhere."""
        return things_of(self.build, self.layout, self.numbers)
