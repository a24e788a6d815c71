"""Take the build's tyres apart and call the subjects: set, axles, speedometer, spare."""

from coachwright import reference
from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build, Fitted, Mounting
from coachwright.model.facets import Tyre
from coachwright.model.tyre_size import TyreSize
from coachwright.model.vehicle import StandardTyre
from coachwright.road.model import AxleTyres, SpareWheel, Speedometer, TyreSet
from coachwright.road.speedometer import shown_speed, speedometer_check, true_speed
from coachwright.road.tyre_geometry import TyreDimensions, tyre_change, tyre_dimensions
from coachwright.road.tyre_load import (
    AxleCapacity,
    axle_capacity,
    load_index_kg,
    symbol_speed,
)
from coachwright.road.tyre_pressure import (
    PressureForLoad,
    advised_pressure,
    pressure_for_load,
)
from coachwright.weights.model import MassBand, Weights

_US_CATEGORIES = frozenset({"MPV", "truck"})
_PRESSURE_KINDS = frozenset({"commercial", "light truck"})
"""Kinds of tyre that the European commercial pressure formula is used for."""


def tyre_set(build: Build) -> TyreSet:
    """Return the tyres that the vehicle stands on: the fitted set, else the placard's."""
    placard = build.vehicle.tyre
    fitted = _fitted_set(build)
    tyre: Tyre | StandardTyre = placard
    if fitted is not None and fitted.part.tyre is not None:
        tyre = fitted.part.tyre
    dimensions = _dimensions(tyre.size)
    speed = symbol_speed(symbol=tyre.speed_symbol)
    return TyreSet(
        fitting="" if fitted is None else fitted.name,
        size=tyre.size.text,
        kind=tyre.kind,
        load_index_single=tyre.load_index_single,
        load_index_dual=tyre.load_index_dual,
        speed_symbol=tyre.speed_symbol,
        rated_pressure_kpa=tyre.rated_pressure_kpa,
        dual_rear=placard.dual_rear,
        top_speed_km_per_h=speed.top_km_per_h,
        top_speed_status=speed.status,
        dimensions=dimensions,
        change=tyre_change(
            old_diameter_mm=_dimensions(placard.size).diameter_mm,
            new_diameter_mm=dimensions.diameter_mm,
        ),
        placard_differences=_differences(tyre.size, placard.size),
        largest_diameter_mm=placard.largest_diameter_mm,
        clearance_left_mm=placard.largest_diameter_mm - dimensions.diameter_mm,
    )


def axle_tyres(build: Build, weights: Weights, tyres: TyreSet) -> tuple[AxleTyres, ...]:
    """Return both axles' tyres against what the axles carry."""
    ratings, placard = build.vehicle.ratings, build.vehicle.tyre
    travelling = weights.case("travelling")
    return (
        _axle(
            axle="front axle",
            divisor_factor=_divisor_factor(build, tyres),
            tyres=tyres,
            dual=False,
            load=travelling.front,
            worst=weights.case("front-axle-worst").front,
            rating_kg=ratings.front_axle_kg,
            placard_kpa=placard.front_pressure_kpa,
        ),
        _axle(
            axle="rear axle",
            divisor_factor=_divisor_factor(build, tyres),
            tyres=tyres,
            dual=tyres.dual_rear,
            load=travelling.rear,
            worst=weights.case("rear-axle-worst").rear,
            rating_kg=ratings.rear_axle_kg,
            placard_kpa=placard.rear_pressure_kpa,
        ),
    )


def speedometer(build: Build, tyres: TyreSet) -> Speedometer:
    """Return what the speedometer shows on the tyres."""
    stated = build.vehicle.tyre.speedometer_at_100_km_per_h
    at_100 = 100.0 if stated is None else stated
    top = build.vehicle.top_speed_km_per_h
    ratio = tyres.change.ratio
    shown = shown_speed(true_km_per_h=top, diameter_ratio=ratio, shown_at_100_km_per_h=at_100)
    return Speedometer(
        known=stated is not None,
        at_100=true_speed(
            shown_km_per_h=100.0, diameter_ratio=ratio, shown_at_100_km_per_h=at_100
        ),
        at_top=speedometer_check(
            shown_km_per_h=shown.shown_km_per_h,
            true_km_per_h=top,
            share_frac=reference.limit("road.speedometer-share").value,
            constant_km_per_h=reference.limit("road.speedometer-constant").value,
        ),
    )


def spare_wheel(build: Build, tyres: TyreSet) -> SpareWheel:
    """Return the spare wheel: a fitted one, else the vehicle's own, else none."""
    for fitted in build.having("spare"):
        if fitted.part.spare is not None:
            return _spare(
                fitted.name,
                fitted.part.spare.size,
                tyres,
                full_size=fitted.part.spare.full_size,
            )
    if build.vehicle.tyre.spare_carried and not build.vehicle_spare_removed:
        return _spare("vehicle", build.vehicle.tyre.size, tyres, full_size=True)
    return SpareWheel(source="", size="", diameter_mm=None, full_size=False, difference_frac=None)


def _fitted_set(build: Build) -> Fitted | None:
    for fitted in build.having("tyre"):
        if fitted.fitting.mounting is Mounting.WHEELS:
            return fitted
    return None


def _dimensions(size: TyreSize) -> TyreDimensions:
    return tyre_dimensions(
        width_mm=size.width_mm,
        aspect_frac=size.aspect_frac,
        rim_mm=size.rim_mm,
        rolling_factor=reference.limit("road.rolling-factor").value,
    )


def _differences(size: TyreSize, placard: TyreSize) -> int:
    return sum(
        getattr(size, name) != getattr(placard, name)
        for name in ("width_mm", "aspect_frac", "rim_mm", "marking")
    )


def _divisor_factor(build: Build, tyres: TyreSet) -> float:
    american = (
        build.brief.jurisdiction is Jurisdiction.US or build.vehicle.category in _US_CATEGORIES
    )
    if american and tyres.kind == "passenger":
        return reference.limit("road.passenger-tyre-divisor").value
    return 1.0


def _axle(
    *,
    axle: str,
    divisor_factor: float,
    tyres: TyreSet,
    dual: bool,
    load: MassBand,
    worst: MassBand,
    rating_kg: float,
    placard_kpa: float,
) -> AxleTyres:
    count = 4 if dual else 2
    index = tyres.load_index_dual if dual else tyres.load_index_single
    capacity = None
    if index is not None:
        capacity = axle_capacity(
            rating_kg=load_index_kg(load_index=index), tyres=count, divisor_factor=divisor_factor
        )
    heaviest_kg = max(load.high_kg, worst.high_kg)
    pressure = _pressure(tyres, capacity, count, heaviest_kg)
    needed = pressure if isinstance(pressure, PressureForLoad) else None
    advised = (
        None
        if needed is None
        else advised_pressure(needed_kpa=needed.pressure_kpa, placard_kpa=placard_kpa)
    )
    return AxleTyres(
        axle=axle,
        tyres=count,
        load_index=index,
        rating_kg=None if index is None else load_index_kg(load_index=index),
        divisor_factor=divisor_factor,
        capacity_kg=None if capacity is None else capacity.capacity_kg,
        load_kg=load.nominal_kg,
        load_high_kg=load.high_kg,
        worst_kg=worst.nominal_kg,
        worst_high_kg=worst.high_kg,
        heaviest_kg=heaviest_kg,
        axle_rating_kg=rating_kg,
        needed_pressure_kpa=None if needed is None else needed.pressure_kpa,
        placard_pressure_kpa=placard_kpa,
        advised_pressure_kpa=None if advised is None else advised.pressure_kpa,
        capacity_working=None if capacity is None else capacity.working,
        pressure_working=None if needed is None else needed.working,
        advised_working=None if advised is None else advised.working,
        missing="" if capacity is not None else "the tyre's load index for dual fitting",
        pressure_missing=pressure if isinstance(pressure, str) else "",
    )


def _pressure(
    tyres: TyreSet, capacity: AxleCapacity | None, count: int, axle_load_kg: float
) -> PressureForLoad | str:
    if capacity is None:
        return "the tyre's load index for dual fitting"
    if tyres.kind not in _PRESSURE_KINDS:
        return f"the tyre maker's pressure table for {tyres.kind} tyres"
    if axle_load_kg > capacity.capacity_kg:
        return "a load that the tyres can carry"
    return pressure_for_load(
        axle_load_kg=axle_load_kg,
        rating_kg=capacity.usable_kg,
        tyres=count,
        rated_pressure_kpa=tyres.rated_pressure_kpa,
        pressure_exponent=reference.limit("road.pressure-exponent").value,
    )


def _spare(source: str, size: TyreSize, tyres: TyreSet, *, full_size: bool) -> SpareWheel:
    diameter = _dimensions(size).diameter_mm
    ratio = tyre_change(
        old_diameter_mm=tyres.dimensions.diameter_mm, new_diameter_mm=diameter
    ).ratio
    return SpareWheel(
        source=source,
        size=size.text,
        diameter_mm=diameter,
        full_size=full_size,
        difference_frac=abs(ratio - 1),
    )
