"""What can be drawn of a build: fittings and wheel arches as boxes, with trade and number."""

from collections.abc import Mapping
from dataclasses import dataclass

from coachwright.drawing.scene import Layer
from coachwright.drawing.trades import trade_of
from coachwright.layout.model import Layout
from coachwright.model.build import INSIDE, TURNS_DEG, Build, Fitted, Mounting

Corner = tuple[float, float, float]
"""x, y and z in the vehicle's axes. [mm]"""

_TURNED_ACROSS_DEG = (TURNS_DEG[1], TURNS_DEG[3])


@dataclass(frozen=True, kw_only=True, slots=True)
class Thing:
    """One body to be drawn.

    Attributes
    ----------
    number
        Position number; empty for what is no fitting.
    words
        What its label says.
    boxes_mm
        Corners of the disjoint boxes that make it up.
    low_mm, high_mm
        Of the box around them.
    round_axis
        0, 1 or 2 where it is a cylinder along x, y or z.
    carriers
        Names of what it is built into, the nearest first.
    mounting
        None for a part of the vehicle.
    """

    name: str
    number: str
    words: str
    layer: Layer
    boxes_mm: tuple[tuple[Corner, Corner], ...]
    low_mm: Corner
    high_mm: Corner
    round_axis: int | None = None
    carriers: tuple[str, ...] = ()
    mounting: Mounting | None = None

    @property
    def inside(self) -> bool:
        """Whether it stands in the living space or the cab, or is part of the shell."""
        return self.mounting is None or self.mounting in INSIDE

    @property
    def size_mm(self) -> Corner:
        """Length, width and height of the box around it."""
        low, high = self.low_mm, self.high_mm
        return (high[0] - low[0], high[1] - low[1], high[2] - low[2])


def things_of(build: Build, layout: Layout, numbers: Mapping[str, str]) -> tuple[Thing, ...]:
    """Return everything that stands somewhere, in the order of the parts list.

    Parameters
    ----------
    build
        For trades and mountings.
    layout
        Solids in the vehicle's axes.
    numbers
        Position numbers by reference name.
    """
    bodies = {body.name: body for body in layout.solids}
    found = [
        Thing(
            name=fitted.name,
            number=numbers.get(fitted.name, ""),
            words=fitted.name.replace("-", " "),
            layer=trade_of(fitted),
            boxes_mm=tuple((box.low_mm, box.high_mm) for box in bodies[fitted.name].boxes),
            low_mm=bodies[fitted.name].bounds.low_mm,
            high_mm=bodies[fitted.name].bounds.high_mm,
            round_axis=_round_axis(fitted),
            carriers=_carriers(build, fitted),
            mounting=fitted.fitting.mounting,
        )
        for fitted in build.fittings
        if fitted.name in bodies and fitted.fitting.mounting is not Mounting.WHEELS
    ]
    arches = [
        Thing(
            name=arch.name,
            number="",
            words=arch.name,
            layer=Layer.SHELL,
            boxes_mm=tuple((box.low_mm, box.high_mm) for box in arch.boxes),
            low_mm=arch.bounds.low_mm,
            high_mm=arch.bounds.high_mm,
        )
        for arch in layout.arches
    ]
    return (*arches, *found)


def _round_axis(fitted: Fitted) -> int | None:
    shape = fitted.part.body.shape
    if not shape.startswith("cylinder"):
        return None
    axis = "xyz".index(shape[-1])
    if fitted.fitting.turn_deg in _TURNED_ACROSS_DEG:
        return (1, 0, 2)[axis]
    return axis


def _carriers(build: Build, fitted: Fitted) -> tuple[str, ...]:
    found: list[str] = []
    here = fitted.fitting.within
    while here and here not in found:
        found.append(here)
        carrier = build.fitted(here)
        here = carrier.fitting.within if carrier else ""
    return tuple(found)
