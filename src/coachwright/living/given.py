"""What one run of the coupled year is given: the body, its people, appliances, bank and sun.

`stage_given` makes it from a build; anything else may make it too.  Arrays of a day hold one value
for each step of the day from midnight, `steps_per_day` long; arrays of a year one for each hour.
"""

from dataclasses import dataclass

from coachwright.climate.model import Hours
from coachwright.living.given_body import Body

STEPS_PER_DAY = 144
"""Ten minutes each."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Day:
    """One kind of day, the same in every such day: people, habits, set points.

    Attributes
    ----------
    sensible_w, latent_g_per_h, co2_l_per_h
        Of people in the cabin.
    gain_w, vapour_g_per_h
        Of cooking, showers and whatever is not an electrical load told elsewhere.
    occupied_frac
        1 where somebody is in; comfort is judged there.
    asleep_frac
        1 where somebody sleeps; carbon dioxide is judged there.
    heat_degc, cool_degc
        Thermostat: warmed below the first, cooled above the second.
    blinds_frac
        1 where blinds are shut.
    dc_w, ac_w
        Loads told by habit, at their own terminals; without heater, cooler, fridges, fans.
    inside_frac
        Share of `dc_w` and `ac_w` that becomes heat in the cabin.
    dark_w
        Light on when it is dark outside and people are awake, direct current.
    fuel_burner_w
        Fuel burnt for cooking and hot water, by its lower heating value.
    vent_m3_per_h
        Fresh air by the clock, besides all else; empty for none.
    """

    sensible_w: tuple[float, ...]
    latent_g_per_h: tuple[float, ...]
    co2_l_per_h: tuple[float, ...]
    gain_w: tuple[float, ...]
    vapour_g_per_h: tuple[float, ...]
    occupied_frac: tuple[float, ...]
    asleep_frac: tuple[float, ...]
    heat_degc: tuple[float, ...]
    cool_degc: tuple[float, ...]
    blinds_frac: tuple[float, ...]
    dc_w: tuple[float, ...]
    ac_w: tuple[float, ...]
    inside_frac: tuple[float, ...]
    dark_w: tuple[float, ...]
    fuel_burner_w: tuple[float, ...]
    vent_m3_per_h: tuple[float, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Seasons:
    """The kinds of day: of the warm and of the cold half-year, parked and on the road."""

    warm: Day
    cold: Day
    driving_warm: Day
    driving_cold: Day


@dataclass(frozen=True, kw_only=True, slots=True)
class Pattern:
    """Parked for some days, then one on the road; some nights with hook-up.

    Attributes
    ----------
    parked_d
        Whole days parked between days on the road; 0 or less for never moving.
    drive_from_h, drive_h
        When it drives on such a day, and for how long.
    hookup_frac
        Share of the nights with hook-up, spread evenly and always on the same nights.
    hookup_w
        What the hook-up gives at most.
    hookup_from_h, hookup_h
        When such a night begins, and for how long.
    """

    parked_d: float = 0.0
    drive_from_h: float = 10.0
    drive_h: float = 0.0
    hookup_frac: float = 0.0
    hookup_w: float = 0.0
    hookup_from_h: float = 18.0
    hookup_h: float = 14.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Air:
    """Fresh air beyond the leaks.

    Attributes
    ----------
    least_m3_per_h
        Kept open whenever somebody is in: vents that cannot be shut, and habit.
    fan_m3_per_h, fan_w
        Of the fans together at full speed.
    hatch_m3_per_h
        Through opened hatches and windows without a fan, when that helps.
    humid_frac
        Relative humidity above which the fan runs while people are in; 1 for never.
    free_cooling
        The fan and hatches run when it is warmer inside than wanted and outside than inside.
    """

    least_m3_per_h: float = 0.0
    fan_m3_per_h: float = 0.0
    fan_w: float = 0.0
    hatch_m3_per_h: float = 0.0
    humid_frac: float = 1.0
    free_cooling: bool = True


@dataclass(frozen=True, kw_only=True, slots=True)
class AirHeater:
    """A heater that modulates between two outputs, and goes on and off below the lower.

    Attributes
    ----------
    most_w, least_w
        Heat into the air at sea level.
    efficiency_frac
        On the lower heating value; 1 for electric.
    draw_most_w, draw_least_w
        Electrical, at those outputs; draw grows evenly between.
    start_wh
        Besides, for each start of a burner.
    electric_ac
        Its heat is drawn through the inverter or from the hook-up.
    altitude_frac_per_km
        Output lost for each kilometre of height.
    second_room, second_frac
        Room that a register leads to, and its share of the heat.
    fuel_mj_per_l
        Lower heating value, for litres (or kilograms where `fuel_by_mass`).
    """

    name: str
    most_w: float
    least_w: float = 0.0
    efficiency_frac: float = 0.83
    fuel: str = "diesel"
    fuel_mj_per_l: float = 35.8
    fuel_by_mass: bool = False
    draw_most_w: float = 0.0
    draw_least_w: float = 0.0
    start_wh: float = 0.0
    electric_ac: bool = False
    altitude_frac_per_km: float = 0.0
    second_room: str = ""
    second_frac: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Cooler:
    """An air conditioner.

    Attributes
    ----------
    rated_w, rated_input_w
        At 35 degC outside, 26.7 degC and 19.4 degC wet bulb inside.
    capacity_factor, input_factor
        Six coefficients each (1, x, x², y, y², xy) of indoor wet bulb x and outdoor dry bulb y in
        degC: capacity over the rated one, and input for each watt of capacity over the rated one.
    wet_low_degc, wet_high_degc, dry_low_degc, dry_high_degc
        Range of the curves; beyond it the edge's value holds.
    cycling_frac
        C_d: part-load factor = 1 − C_d (1 − part load).
    sensible_frac
        At the rating point; the sensible share grows as the air dries.
    ac
        Drawn through the inverter.
    enabled
        May run off-grid at all; else on hook-up alone.
    """

    name: str
    rated_w: float
    rated_input_w: float
    capacity_factor: tuple[float, float, float, float, float, float]
    input_factor: tuple[float, float, float, float, float, float]
    wet_low_degc: float
    wet_high_degc: float
    dry_low_degc: float
    dry_high_degc: float
    cycling_frac: float = 0.22
    sensible_frac: float = 0.75
    ac: bool = False
    standby_w: float = 0.0
    enabled: bool = True


@dataclass(frozen=True, kw_only=True, slots=True)
class Fridge:
    """A cold box whose draw follows the temperature around it.

    Attributes
    ----------
    draw_w
        Of the running compressor.
    duty_frac, at_degc
        Share of the time that it runs, and around which temperature that holds.
    inside_degc
        Kept; duty is 0 where it is as cold outside.
    """

    name: str
    draw_w: float
    duty_frac: float
    at_degc: float
    inside_degc: float = 4.0
    ac: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Bank:
    """The house battery.

    Attributes
    ----------
    capacity_ah
        At 25 degC and the rate that the house draws.
    charge_v
        Pairs of charge share and open-circuit voltage, rising.
    cold_share_frac
        Pairs of battery temperature in degC and capacity share, rising.
    reserve_frac
        Share of the capacity never used by intent: where a stand ends.
    cut_off_frac
        Share below which loads are dropped.
    charge_from_degc
        Coldest at which it may be charged.
    pads_w
        Heating pads, where it has them: run when there is charge to be had and it is too cold.
    heat_j_per_k, ua_w_per_k
        Of the battery against the room it stands in.
    room
        Where it stands; ``"outside"`` for under the floor.
    """

    capacity_ah: float
    charge_v: tuple[tuple[float, float], ...]
    resistance_ohm: float
    charge_limit_a: float
    discharge_limit_a: float
    coulombic_frac: float = 0.99
    cold_share_frac: tuple[tuple[float, float], ...] = ((-40.0, 1.0), (60.0, 1.0))
    reserve_frac: float = 0.2
    cut_off_frac: float = 0.05
    charge_from_degc: float = 0.0
    pads_w: float = 0.0
    heat_j_per_k: float = 50_000.0
    ua_w_per_k: float = 1.5
    room: str = "cabin"
    mass_kg: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Supply:
    """How the bank is charged and how alternating current is made.

    Attributes
    ----------
    sun_w
        Of all panels at their terminals, for each hour of the year, as a flat array.
    sun_limit_w, sun_efficiency_frac
        Of the controllers together.
    drive_w
        Into the bank while driving.
    hookup_charge_w
        Into the bank on hook-up.
    inverter_efficiency_frac, inverter_standby_w, inverter_w
        Alternating-current loads beyond `inverter_w` are not met.
    inverter_always
        Its standby runs all day; else only while it serves.
    standby_w
        Drawn all day by whatever stands ready.
    charger_efficiency_frac
        Of the charger on hook-up.
    losses_room
        Where the losses of inverter and chargers become heat.
    """

    sun_w: Hours
    sun_limit_w: float = 1.0e9
    sun_efficiency_frac: float = 0.97
    drive_w: float = 0.0
    hookup_charge_w: float = 0.0
    inverter_efficiency_frac: float = 0.9
    inverter_standby_w: float = 0.0
    inverter_w: float = 0.0
    inverter_always: bool = True
    standby_w: float = 0.0
    losses_room: str = "cabin"
    charger_efficiency_frac: float = 0.9


@dataclass(frozen=True, kw_only=True, slots=True)
class Frost:
    """A tank or run that can freeze.

    Attributes
    ----------
    place
        The room it stands in, or ``"outside"``.
    ua_w_per_k, heat_j_per_k
        Of its contents against what is round it.
    heated_w
        Of its own heater against frost.
    """

    name: str
    place: str
    ua_w_per_k: float
    heat_j_per_k: float
    heated_w: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Given:
    """Everything that one run of the coupled year is given.

    Attributes
    ----------
    thermostat_room
        Where set points hold.
    warm_from_day, warm_to_day
        Days of the year, from 0, between which the warm half-year lies; wraps in the south.
    radiant_frac
        Share of the gains from people and things that leaves them as radiation.
    comfort_low_degc, comfort_high_degc
        Band in which an occupied hour counts as comfortable.
    """

    body: Body
    seasons: Seasons
    pattern: Pattern
    air: Air
    supply: Supply
    bank: Bank | None = None
    heater: AirHeater | None = None
    cooler: Cooler | None = None
    fridges: tuple[Fridge, ...] = ()
    frost: tuple[Frost, ...] = ()
    thermostat_room: str = "cabin"
    warm_from_day: int = 90
    warm_to_day: int = 273
    heading_deg: float | None = None
    radiant_frac: float = 0.5
    comfort_low_degc: float = 18.0
    comfort_high_degc: float = 27.0
