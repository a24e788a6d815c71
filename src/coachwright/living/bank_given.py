"""Make the bank and how it is charged from a build."""

from collections.abc import Iterator

from coachwright import reference
from coachwright.climate.model import Hours
from coachwright.electrics.model import Bank as SteadyBank
from coachwright.electrics.model import ChargeLimit, Electrics
from coachwright.electrics.model import Supply as Way
from coachwright.living.assumed import assumed
from coachwright.living.given import Bank, Supply
from coachwright.living.loads_given import inverter_standby_w, standby_w
from coachwright.living.rooms_given import CABIN, OUTSIDE, room_of
from coachwright.model.build import Build, Fitted
from coachwright.model.facets import Battery

CELL_V = 3.2
"""Nominal, of lithium iron phosphate. [battery-voltages]"""
TABLE_DEGC = 25
_LEAD_PER_12_V = ((0.0, 11.6), (0.2, 11.9), (0.4, 12.15), (0.6, 12.35), (0.8, 12.55), (1.0, 12.75))
"""Open-circuit voltage of a 12 V lead block by charge, from memory. [battery-voltages]"""
LEAD_V = 12.0
_STANDARD_V, _STANDARD_AH = 12.8, 100.0
_CUT_OFF_FRAC = 0.05
_NO_LIMIT_W = 1.0e9


def bank(build: Build, electrics: Electrics) -> Bank | None:
    """Return the house battery; None where the electrics have none."""
    steady = electrics.bank
    if steady is None:
        return None
    every = [(fitted, fitted.part.battery) for fitted in build.having("battery")]
    told = [(fitted, battery) for fitted, battery in every if battery is not None]
    first = told[0][1]
    mass = sum(fitted.mass_kg for fitted, _ in told)
    return Bank(
        capacity_ah=steady.capacity_ah * _rate_factor(electrics, steady),
        charge_v=tuple(_charge_v(steady)),
        resistance_ohm=_resistance_ohm(steady, first),
        charge_limit_a=steady.charge_limit_a,
        discharge_limit_a=steady.discharge_limit_a,
        coulombic_frac=steady.charge_efficiency_frac,
        cold_share_frac=_cold_share_frac(first),
        reserve_frac=1.0 - steady.depth_frac,
        cut_off_frac=min(_CUT_OFF_FRAC, 1.0 - steady.depth_frac),
        charge_from_degc=max(battery.charge_from_degc for _, battery in told),
        pads_w=sum(_pads_w(fitted) for fitted, battery in told if battery.heated),
        heat_j_per_k=mass * assumed("battery-heat").value,
        ua_w_per_k=sum(_skin_m2(fitted) for fitted, _ in told) * assumed("battery-film").value,
        room=bank_room(build),
        mass_kg=mass,
    )


def bank_room(build: Build) -> str:
    """Return the coldest place in which a battery stands: outside, cab, cabin."""
    rooms = {room_of(build, fitted) for fitted in build.having("battery")}
    return next((place for place in (OUTSIDE, "cab", CABIN) if place in rooms), CABIN)


def _rate_factor(electrics: Electrics, steady: SteadyBank) -> float:
    """Return how the usual draw moves the capacity, as the budget of the warm season has it."""
    usable = electrics.summer.usable_wh
    return 1.0 if usable is None or steady.usable_wh <= 0.0 else usable / steady.usable_wh


def _charge_v(steady: SteadyBank) -> Iterator[tuple[float, float]]:
    """Yield charge share and open-circuit voltage, rising."""
    if steady.chemistry != "LFP":
        blocks = steady.nominal_v / LEAD_V
        yield from ((share, volt * blocks) for share, volt in _LEAD_PER_12_V)
        return
    cells = round(steady.nominal_v / CELL_V)
    rows = sorted(reference.table("lfp_ocv"), key=lambda row: float(row["soc_percent"]))
    highest = 0.0
    for row in rows:
        highest = max(highest, float(row[f"cell_v_at_{TABLE_DEGC}degc"]))
        yield float(row["soc_percent"]) / 100.0, highest * cells


def _resistance_ohm(steady: SteadyBank, battery: Battery) -> float:
    """Return the bank's resistance: stated, else by size from memory."""
    one = battery.resistance_ohm
    if one is None:
        kind = "block-resistance" if steady.chemistry == "LFP" else "lead-resistance"
        scale = battery.nominal_v / _STANDARD_V * _STANDARD_AH / battery.capacity_ah
        one = assumed(kind).value * scale
    return one * steady.series_count / steady.parallel_count


def _cold_share_frac(battery: Battery) -> tuple[tuple[float, float], ...]:
    own = [(each.battery_degc, each.capacity_frac) for each in battery.cold_capacity]
    usual = [
        (float(row["battery_degc"]), float(row["capacity_frac"]))
        for row in reference.table("battery_cold_capacity")
        if row["chemistry"] == battery.chemistry
    ]
    return tuple(sorted(own or usual))


def _pads_w(fitted: Fitted) -> float:
    load = fitted.part.dc_load
    return max((mode.draw_w for mode in load.modes), default=0.0) if load else 0.0


def _skin_m2(fitted: Fitted) -> float:
    """Return the faces of a battery's box that air reaches: all but its foot [m2]."""
    length, width, height = fitted.part.body.size_mm
    return (length * width + 2.0 * height * (length + width)) / 1e6


def supply(build: Build, electrics: Electrics, sun_w: Hours) -> Supply:
    """Return how the bank is charged and how alternating current is made.

    Parameters
    ----------
    build
        With everything found.
    electrics
        Of that build.
    sun_w
        Of all fixed panels at their terminals, for each hour of the year. [W]
    """
    steady = electrics.bank
    inverters = [each.part.inverter for each in build.having("inverter")]
    found = [each for each in inverters if each is not None]
    controllers = [each.part.solar_controller for each in build.having("solar_controller")]
    told = [each for each in controllers if each is not None]
    limit = sum(each.charge_limit_a for each in told) * steady.charge_v if steady else 0.0
    chargers = [each.part.shore_charger for each in build.having("shore_charger")]
    duty = electrics.inverter
    standing = [room_of(build, each) for each in build.having("inverter")]
    return Supply(
        sun_w=sun_w if told and steady else sun_w * 0.0,
        sun_limit_w=limit if told else _NO_LIMIT_W,
        sun_efficiency_frac=min((each.efficiency_frac for each in told), default=1.0),
        drive_w=_most_w(electrics, "driving"),
        hookup_charge_w=_most_w(electrics, "hook-up"),
        inverter_efficiency_frac=duty.efficiency_frac if duty else 1.0,
        inverter_standby_w=inverter_standby_w(build, electrics),
        inverter_w=sum(each.continuous_w for each in found),
        inverter_always=True,
        standby_w=standby_w(build, electrics, Way.DC),
        losses_room=standing[0] if standing and standing[0] != OUTSIDE else CABIN,
        charger_efficiency_frac=min(
            (each.efficiency_frac for each in chargers if each is not None), default=0.9
        ),
    )


def _most_w(electrics: Electrics, source: str) -> float:
    """Return what a source brings into a bank that is warm enough [W]."""
    limits: tuple[ChargeLimit, ...] = electrics.summer.limits
    return next((each.power_w for each in limits if each.source == source), 0.0)
