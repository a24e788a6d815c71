"""The cold night, the hot day and the drying room as labels and values."""

from coachwright.living.model import ColdNight, CoolerSupply, Drying, HotDay, InverterBay
from coachwright.model.build import Build
from coachwright.papers.season_words import named
from coachwright.papers.table import Pair
from coachwright.papers.wording import NONE, show
from coachwright.units import told


def cold_pairs(cold: ColdNight, fuel_unit: str, system: str) -> tuple[Pair, ...]:
    """Return the design cold night."""
    return (
        Pair(label="Outside", value=show(cold.outside_degc, "degC", system)),
        Pair(
            label="Heat needed to hold what the brief wants",
            value=show(cold.need_w, "W", system),
            note=f"up to {show(cold.need_high_w, 'W', system)} with the ribs' range",
        ),
        Pair(label="The heater gives", value=show(cold.heater_w, "W", system)),
        Pair(
            label="Coldest inside, the heater at work",
            value=show(cold.reached_degc, "degC", system),
            note=f"{show(cold.reached_low_degc, 'degC', system)} with the most loss",
        ),
        Pair(
            label="Heating up from cold",
            value="never" if cold.heat_up_h is None else show(cold.heat_up_h, "h", system),
        ),
        Pair(label="Fuel of the night and its day", value=show(cold.fuel_l, fuel_unit, system)),
        Pair(label="Out of the battery in that time", value=show(cold.battery_wh, "Wh", system)),
    )


def hot_pairs(hot: HotDay, system: str) -> tuple[Pair, ...]:
    """Return the design hot day."""
    return (
        Pair(label="Outside, warmest", value=show(hot.outside_degc, "degC", system)),
        Pair(
            label="Hours on a full battery, with its sun",
            value=_hours(hot.hours_h, system),
        ),
        Pair(
            label="Hours on a full battery without sun",
            value=_hours(hot.hours_without_sun_h, system),
        ),
        Pair(
            label="Air conditioner runs",
            value=show(hot.duty_frac, "frac", system),
            note="of the hours in which somebody is in and it is wanted",
        ),
        Pair(
            label="Warmest inside while it runs",
            value=show(hot.reached_degc, "degC", system),
            note=f"{show(hot.without_degc, 'degC', system)} without it",
        ),
        Pair(label="Energy of that day", value=show(hot.day_wh, "Wh", system)),
        Pair(
            label=f"It runs at {told(26.7, 'degC')} outside, {told(23.3, 'degC')} held",
            value=NONE if hot.mild_duty_frac is None else show(hot.mild_duty_frac, "frac", system),
        ),
    )


def supply_pairs(supply: CoolerSupply, system: str) -> tuple[Pair, ...]:
    """Return what the air conditioner takes on that day, and what can give it."""
    source = "the inverter" if supply.through_inverter else "the battery"
    return (
        Pair(label="Power that it takes", value=show(supply.input_w, "W", system)),
        Pair(label=f"Power that {source} can give", value=show(supply.can_give_w, "W", system)),
    )


def bay_pairs(build: Build, bay: InverterBay) -> tuple[Pair, ...]:
    """Return where inverter and chargers lose their heat."""
    system = build.brief.units
    return (
        Pair(
            label="Where inverter and chargers stand",
            value=named(build, bay.room),
            note=", ".join(named(build, each) for each in bay.names),
        ),
        Pair(label="Heat at full power", value=show(bay.most_loss_w, "W", system)),
        Pair(label="Air that carries it away", value=show(bay.flow_m3_per_h, "m3/h", system)),
        Pair(
            label="Openings below and above, together",
            value=show(bay.vent_m2, "m2", system),
            note="for that air to rise by itself",
        ),
        Pair(
            label="Warmest hour of the year there",
            value=show(bay.warmest_degc, "degC", system),
        ),
    )


def _hours(hours_h: float | None, system: str) -> str:
    return "through the day" if hours_h is None else show(hours_h, "h", system)


def drying_pairs(build: Build, drying: Drying) -> tuple[Pair, ...]:
    """Return the drying of wet kit."""
    system = build.brief.units
    return (
        Pair(label="Where it dries", value=named(build, drying.room)),
        Pair(label="Water in the wet kit", value=show(drying.water_kg, "kg", system)),
        Pair(label="The room is brought to", value=show(drying.room_degc, "degC", system)),
        Pair(
            label="Dry after",
            value="never" if drying.hours_h is None else show(drying.hours_h, "h", system),
        ),
        Pair(
            label="Warmest that the room can reach",
            value=show(drying.reachable_degc, "degC", system),
        ),
    )
