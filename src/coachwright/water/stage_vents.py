"""Take the fixed vents of a build to their subject."""

from collections.abc import Iterator

from coachwright.model.build import INSIDE, Build, Fitted, Mounting
from coachwright.model.placement import placed
from coachwright.reference import limit
from coachwright.water.model import FixedVents
from coachwright.water.vents import free_mm2, plan_m2, vents_needed

_HIGH_IN_ROOF = (Mounting.ROOF, Mounting.CEILING)


def take_vents(build: Build) -> FixedVents:
    """Return the fixed vents of the living space."""
    outside = build.vehicle.outside
    area = plan_m2(length_mm=outside.length_mm, width_mm=outside.width_mm)
    unsealed = any(_unsealed(fitted) for fitted in build.fittings)
    needed = vents_needed(area_m2=area, unsealed_burner=unsealed)
    vents = list(_vents(build))
    roof = [m2 for where, m2 in vents if where == "roof"]
    wall = [m2 for where, m2 in vents if where == "wall"]
    wall_will_do = needed is not None and needed.wall_mm2 is not None
    in_roof = bool(roof) or not wall or not wall_will_do
    high_needed = None if needed is None else (needed.roof_mm2 if in_roof else needed.wall_mm2)
    return FixedVents(
        plan_m2=area,
        unsealed_burner=unsealed,
        in_roof=in_roof,
        high_needed_mm2=high_needed,
        low_needed_mm2=None if needed is None else needed.low_mm2,
        high_mm2=free_mm2(areas_m2=roof if in_roof else wall) if vents else None,
        low_mm2=free_mm2(areas_m2=[m2 for where, m2 in vents if where == "low"])
        if vents
        else None,
        status="read" if needed is None else needed.status,
    )


def _unsealed(fitted: Fitted) -> bool:
    if fitted.fitting.mounting not in INSIDE:
        return False
    burner, heater = fitted.part.gas_appliance, fitted.part.heater
    open_heater = heater is not None and heater.fuel != "electric" and not heater.room_sealed
    return open_heater or (burner is not None and not burner.room_sealed)


def _vents(build: Build) -> Iterator[tuple[str, float]]:
    """Yield where each vent that cannot be closed sits, and its free area."""
    low_mm = limit("water.low-vent-height").value
    clear_mm = limit("water.high-vent-over-bed").value
    beds = [placed(fitted).high_mm[2] for fitted in build.having("bed")]
    for fitted in build.fittings:
        area_m2 = _fixed_m2(fitted)
        if area_m2 is None:
            continue
        lower_edge_mm = placed(fitted).low_mm[2]
        if fitted.fitting.mounting in _HIGH_IN_ROOF:
            yield "roof", area_m2
        elif lower_edge_mm <= low_mm:
            yield "low", area_m2
        elif lower_edge_mm - max(beds, default=0.0) >= clear_mm:
            yield "wall", area_m2
        else:
            yield "between", area_m2


def _fixed_m2(fitted: Fitted) -> float | None:
    opening, fan = fitted.part.opening, fitted.part.fan
    if opening is not None and opening.free_vent_m2 is not None:
        return opening.free_vent_m2
    return fan.free_area_m2 if fan is not None and not fan.closable else None
