"""Stalls and lockers with an air of their own, furniture that holds heat, and who stands where."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.living.assumed import assumed
from coachwright.living.cab_given import CAB
from coachwright.living.heating import outlet_m3_per_h
from coachwright.model.build import INSIDE, Build, Fitted, Mounting
from coachwright.model.placement import placed

CABIN, OUTSIDE = "cabin", "outside"
MM2_PER_M2 = 1e6
MM3_PER_M3 = 1e9
_L_PER_M3, _MIN_PER_H, S_PER_H = 1000.0, 60.0, 3600.0
WATER_J_PER_L_K = 4186.0 * 0.9982
"""[coolprop-water]"""


@dataclass(frozen=True, kw_only=True, slots=True)
class Stall:
    """A stall or locker that a warm-air outlet leads into.

    Attributes
    ----------
    walls_m2
        Front, two sides and top: its back and foot are the shell's.
    flow_m3_per_h
        Exchanged with the living space: through its openings, and what the outlet blows into it.
    share_frac
        Of the air heater's heat.
    """

    name: str
    air_m3: float
    walls_m2: float
    insulance_m2k_per_w: float
    flow_m3_per_h: float
    share_frac: float


def stalls(build: Build) -> tuple[Stall, ...]:
    """Return the stalls and lockers that a warm-air outlet leads into, by the largest share."""
    return tuple(sorted(_stalls(build), key=lambda each: -each.share_frac))


def _stalls(build: Build) -> Iterator[Stall]:
    for fitted in build.having("enclosure"):
        enclosure = fitted.part.enclosure
        share = sum(
            each.part.warm_air_outlet.share_frac
            for each in build.having("warm_air_outlet")
            if each.part.warm_air_outlet is not None and each.fitting.within == fitted.name
        )
        if enclosure is None or share <= 0.0:
            continue
        length, width, height = sorted(fitted.part.body.size_mm)
        yield Stall(
            name=fitted.name,
            air_m3=length * width * height / MM3_PER_M3,
            walls_m2=(width * height + 2.0 * length * height + length * width) / MM2_PER_M2,
            insulance_m2k_per_w=enclosure.insulance_m2k_per_w,
            flow_m3_per_h=enclosure.exchange_l_per_min * _MIN_PER_H / _L_PER_M3
            + _blown_m3_per_h(build, share),
            share_frac=min(1.0, share),
        )


def _blown_m3_per_h(build: Build, share_frac: float) -> float:
    """Return what an outlet of the largest air heater blows, taken as blowing all the time."""
    outputs = [each.part.heater.output_w for each in build.having("heater") if each.part.heater]
    return outlet_m3_per_h(
        output_w=max(outputs, default=0.0),
        share_frac=min(1.0, share_frac),
        rise_k=assumed("outlet-rise").value,
    )


def room_of(build: Build, fitted: Fitted) -> str:
    """Return where a fitting stands: a room's name, or ``"outside"``.

    What is built into something stands where that stands; before the cab's line it is the cab.
    """
    carrier = build.fitted(fitted.fitting.within) if fitted.fitting.within else None
    if carrier is not None and carrier.fitting.mounting != fitted.fitting.mounting:
        return room_of(build, carrier)
    if fitted.fitting.mounting not in INSIDE:
        return OUTSIDE
    if fitted.fitting.mounting is Mounting.CAB:
        return CAB
    in_front = placed(fitted).centre_mm[0] < build.vehicle.shell.cab_line_mm
    return CAB if in_front else CABIN


def vents_m3_per_h(build: Build) -> float:
    """Return the air through vents of the living space that stay open [m3/h].

    Notes
    -----
    Half of the area lets air in, at a mean speed from memory.  Vents of lockers and cabinets,
    which are fitted within them, are left out.

    References
    ----------
    [shop-practice-living]
    """
    area = sum(_open_m2(fitted) for fitted in build.having("opening"))
    return area / 2.0 * assumed("vent-speed").value * S_PER_H


def _open_m2(fitted: Fitted) -> float:
    opening = fitted.part.opening
    if opening is None or opening.free_vent_m2 is None or fitted.fitting.within:
        return 0.0
    return opening.free_vent_m2


def furniture_j_per_k(build: Build) -> float:
    """Return the heat that furniture, contents and water of the living space hold [J/K].

    Batteries are told apart.
    """
    each_kg = assumed("contents-heat").value
    level = assumed("tank-level").value
    held = 0.0
    for fitted in build.fittings:
        if fitted.part.battery is not None or room_of(build, fitted) != CABIN:
            continue
        held += (fitted.mass_kg + fitted.fitting.contents_kg) * each_kg
        if fitted.part.tank is not None:
            held += fitted.part.tank.volume_l * level * WATER_J_PER_L_K
        if fitted.part.water_heater is not None:
            held += fitted.part.water_heater.volume_l * WATER_J_PER_L_K
    return held
