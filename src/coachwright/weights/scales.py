"""The scales: a build's masses and axles, ready to be weighed in any state."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from coachwright.model.build import Build
from coachwright.model.placement import Point
from coachwright.weights.cases import Axles, Weighed, load_case
from coachwright.weights.model import Group, LoadCase, MassItem, Seating


@dataclass(frozen=True, kw_only=True, slots=True)
class Scales:
    """What every load case needs."""

    build: Build
    items: tuple[MassItem, ...]
    axles: Axles
    weighed: Weighed | None
    seating: Seating

    def case(
        self,
        name: str,
        label: str,
        shares_frac: Mapping[str, float],
        *,
        extra: Sequence[MassItem] = (),
        note: str = "",
    ) -> LoadCase:
        """Return a load case, with further items that are aboard in full."""
        return load_case(
            name=name,
            label=label,
            items=(*self.items, *extra),
            shares_frac={**shares_frac, **{item.name: 1.0 for item in extra}},
            axles=self.axles,
            weighed=self.weighed,
            note=note,
        )

    def group_kg(self, groups: frozenset[Group]) -> float:
        """Return the mass of all items of some groups, full."""
        return sum((item.mass_kg for item in self.items if item.group in groups), start=0.0)


def statutory_item(scales: Scales, name: str, mass_kg: float, point_mm: Point) -> MassItem:
    """Return a mass that a rule book states: without tolerance."""
    return MassItem(
        name=name,
        label=name.removeprefix("statement.").replace("-", " "),
        group=Group.LUGGAGE if "luggage" in name else Group.PASSENGER,
        mass_kg=mass_kg,
        tolerance_kg=0.0,
        x_mm=point_mm[0],
        y_mm=point_mm[1],
        z_mm=point_mm[2],
        height_mm=point_mm[2] + scales.build.vehicle.outside.floor_height_mm,
        source="as the statement defines it",
    )
