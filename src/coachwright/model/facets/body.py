"""What a part is made of: body, sheet material, price, labour."""

from typing import Literal

from pydantic import Field

from coachwright.model.money import MoneyText
from coachwright.model.record import (
    Conductivity,
    Days,
    Density,
    Fraction,
    LengthNonNeg,
    LengthPos,
    Mass,
    Record,
    Time,
)


class Step(Record):
    """One box of a stepped or L-shaped body, from the unturned body's smallest corner."""

    from_mm: tuple[LengthNonNeg, LengthNonNeg, LengthNonNeg]
    to_mm: tuple[LengthNonNeg, LengthNonNeg, LengthNonNeg]


class Body(Record):
    """The part as a thing with a size and a mass."""

    size_mm: tuple[LengthNonNeg, LengthNonNeg, LengthNonNeg]
    """Length (x), width (y) and height (z) before it is turned."""
    shape: Literal["box", "cylinder x", "cylinder y", "cylinder z", "steps"] = "box"
    """A box, a cylinder along one axis of the unturned body, or the `steps`."""
    steps: tuple[Step, ...] = ()
    """The boxes that make up a stepped body, such as a cabinet over the wheel arch."""
    mass_kg: Mass
    mass_tolerance_frac: Fraction = 0.05
    """Half-width of the 95 % band of the mass, as a share of it."""
    centre_mm: tuple[LengthNonNeg, LengthNonNeg, LengthNonNeg] | None = None
    """Centre of mass from the corner with the smallest x, y, z; the middle where not given."""
    source: str = "declared"
    """Where the mass comes from: ``weighed``, ``declared`` or ``estimated``."""

    def centre_of_mass_mm(self) -> tuple[float, float, float]:
        """Return the centre of mass [mm] from the unturned body's smallest corner."""
        if self.centre_mm is not None:
            return self.centre_mm
        return (self.size_mm[0] / 2, self.size_mm[1] / 2, self.size_mm[2] / 2)


class Insulation(Record):
    """Sheet, batt or foam that insulates; its mass comes from the area in the finishes."""

    conductivity_w_per_m_k: Conductivity
    density_kg_per_l: Density
    thickness_mm: LengthPos


class Lining(Record):
    """Board, carpet or floor covering; its mass comes from the area in the finishes."""

    density_kg_per_l: Density
    thickness_mm: LengthPos
    conductivity_w_per_m_k: Conductivity | None = None
    """Taken as that of plywood of its density where not given."""


class Price(Record):
    """What the part costs the shop and the customer, in each currency that is known."""

    price: tuple[MoneyText, ...] = ()
    """To the customer, without tax; one for each currency."""
    cost: tuple[MoneyText, ...] = ()
    """To the shop."""
    lead_time_d: Days = 0.0


class LabourStep(Record):
    """One operation that fitting the part takes."""

    operation: str
    trade: str
    work_h: Time


class Labour(Record):
    """The work of fitting the part."""

    steps: tuple[LabourStep, ...] = Field(min_length=1)
