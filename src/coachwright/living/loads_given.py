"""Which loads are told by habit, which answer to the year, and what lights and water take."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.electrics.model import Electrics, LoadLine, Season, Supply
from coachwright.living.cab_given import CAB
from coachwright.living.clock import DAY_H
from coachwright.living.day_profiles import Use
from coachwright.living.rooms_given import CABIN, room_of
from coachwright.model.build import Build, Fitted, Mounting
from coachwright.water.model import HotWater, Water

_WITHIN = (CABIN, CAB)


@dataclass(frozen=True, kw_only=True, slots=True)
class Lights:
    """The lamps inside, as one that burns while it is dark and people are awake."""

    draw_w: float


def answers_to_the_year(fitted: Fitted) -> bool:
    """Say whether the kernel makes a fitting's draw: it is not told by habit then."""
    part = fitted.part
    return (
        part.heater is not None
        or part.air_conditioner is not None
        or part.fridge is not None
        or part.battery is not None
        or (part.tank is not None and part.tank.heated)
        or airs(fitted)
        or lights(fitted)
    )


def airs(fitted: Fitted) -> bool:
    """Say whether a fan moves air out of or into the living space."""
    has_way = fitted.part.opening is not None or fitted.fitting.mounting is Mounting.ROOF
    return fitted.part.fan is not None and has_way


def lights(fitted: Fitted) -> bool:
    """Say whether a fitting lights the inside."""
    return fitted.part.light is not None and fitted.part.light.place == "inside"


def habit_lines(build: Build, electrics: Electrics) -> Iterator[LoadLine]:
    """Yield the lines of the budget that are told by habit: no standby, no shore-only loads.

    Water heaters that the water sheet computes are not among them.
    """
    for line in electrics.loads:
        fitted = build.fitted(line.subject)
        if line.standby or line.supply is Supply.SHORE:
            continue
        if fitted is not None and (answers_to_the_year(fitted) or fitted.part.water_heater):
            continue
        yield line


def standby_w(build: Build, electrics: Electrics, supply: Supply) -> float:
    """Return what stands ready all day on one supply, inverters' own draw not counted [W]."""
    return sum(
        line.draw_w
        for line in electrics.loads
        if line.standby and line.supply is supply and not _is_inverter(build, line.subject)
    )


def inverter_standby_w(build: Build, electrics: Electrics) -> float:
    """Return what the inverters draw with nothing connected [W].

    0 where nothing on them is used, or they sleep.
    """
    return sum(
        line.winter_wh_per_day / DAY_H
        if line.winter_wh_per_day >= line.summer_wh_per_day
        else line.summer_wh_per_day / DAY_H
        for line in electrics.loads
        if line.standby and _is_inverter(build, line.subject)
    )


def _is_inverter(build: Build, subject: str) -> bool:
    fitted = build.fitted(subject)
    return fitted is not None and fitted.part.inverter is not None


def uses(
    build: Build, electrics: Electrics, water: Water, season: Season
) -> dict[Supply, list[Use]]:
    """Return what loads use on a day of a season, at their own terminals, by supply."""
    made: dict[Supply, list[Use]] = {Supply.DC: [], Supply.INVERTER: []}
    for line in habit_lines(build, electrics):
        energy, hours = _of_season_wh_and_h(line, season)
        made[line.supply].append(
            Use(
                energy_wh=energy,
                use_h=hours,
                draw_w=line.draw_w,
                inside_frac=_inside_frac(build, line),
            )
        )
    for each in electric_water(build, water):
        made[each.supply].append(each.use)
    return made


def _of_season_wh_and_h(line: LoadLine, season: Season) -> tuple[float, float]:
    """Return energy [Wh] and hours of use [h] of one day."""
    if season is Season.SUMMER:
        return line.summer_wh_per_day, line.summer_use_h_per_day
    return line.winter_wh_per_day, line.winter_use_h_per_day


def _inside_frac(build: Build, line: LoadLine) -> float:
    """Return the share that warms the living space: what travellers bring is inside."""
    fitted = build.fitted(line.subject)
    return 1.0 if fitted is None or room_of(build, fitted) in _WITHIN else 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class ElectricWater:
    """Hot water made by electricity of the house."""

    name: str
    supply: Supply
    use: Use


def electric_water(build: Build, water: Water) -> Iterator[ElectricWater]:
    """Yield the water heaters that the bank feeds, with the water sheet's energy of a day."""
    for hot in water.hot_water:
        fitted = build.fitted(hot.name)
        if fitted is None or hot.fuel or not hot.battery_wh_per_day:
            continue
        facet = fitted.part.water_heater
        load = fitted.part.ac_load or fitted.part.dc_load
        if facet is None or load is None:
            continue
        energy = hot.day_heat_wh_per_day
        yield ElectricWater(
            name=hot.name,
            supply=Supply.INVERTER if fitted.part.ac_load is not None else Supply.DC,
            use=Use(
                energy_wh=energy,
                use_h=energy / facet.electric_w,
                draw_w=facet.electric_w,
                inside_frac=_lost_frac(build, fitted, facet.loss_w, energy),
            ),
        )


def _lost_frac(build: Build, fitted: Fitted, loss_w: float, energy_wh: float) -> float:
    """Return the share of hot water's energy that the vessel loses into the living space."""
    if room_of(build, fitted) not in _WITHIN or energy_wh <= 0.0:
        return 0.0
    return min(1.0, loss_w * DAY_H / energy_wh)


def burnt_for_water(water: Water) -> Iterator[tuple[HotWater, float]]:
    """Yield the water heaters with a burner and the fuel's heat of a day [Wh]."""
    for hot in water.hot_water:
        if hot.fuel and hot.efficiency_frac > 0.0:
            yield hot, hot.day_heat_wh_per_day / hot.efficiency_frac


def light_w(build: Build, electrics: Electrics, season: Season) -> float:
    """Return the lamps inside as one that burns while it is dark and people are awake [W].

    Notes
    -----
    P = Σ E / h, h the hours of the lamp that burns longest: in a night as long as the budget's
    it takes the budget's energy; in shorter or longer ones less or more.
    """
    told = [
        _of_season_wh_and_h(line, season)
        for line in electrics.loads
        if not line.standby and _lit(build, line.subject) and line.supply is Supply.DC
    ]
    longest = max((hours for _, hours in told), default=0.0)
    return sum(energy for energy, _ in told) / longest if longest > 0.0 else 0.0


def _lit(build: Build, subject: str) -> bool:
    fitted = build.fitted(subject)
    return fitted is not None and lights(fitted)
