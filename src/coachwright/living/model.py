"""Results of the coupled year: months, stands, the cold night, the hot day."""

from dataclasses import dataclass
from enum import StrEnum

from coachwright.model.working import Figure, Working


class Ending(StrEnum):
    """What ended a stand."""

    RESERVE = "reserve"
    """The bank reached its reserve."""
    LONGEST = "longest"
    """It lasted as long as stands are followed."""


@dataclass(frozen=True, kw_only=True, slots=True)
class MonthOfYear:
    """One month of the typical year under the brief's stay pattern.

    Attributes
    ----------
    in_wh
        Energy into the bank and loads by source: ``sun``, ``drive``, ``hookup``.
    out_wh
        Energy by use: ``heater``, ``cooler``, ``fridge``, ``fans``, ``light``, ``direct``,
        ``alternating``, ``inverter``, ``standby``, ``pads``, ``bank`` (lost in it).
    unmet_wh
        Wanted and not given, by the same uses.
    spilled_wh
        Sun that nobody could take.
    fuel_l
        By the heater (kilograms for a gas); `burner_l` by cooking and hot water.
    comfort_frac
        Share of the occupied hours between the brief's coldest and warmest.
    cold_h, hot_h
        Occupied hours below and above.
    heater_frac, cooler_frac
        Share of the month that they run.
    wet_h
        Hours with condensation, by ``glass``, ``rib``, ``lining``.
    frost_h
        Hours below 0 degC, by tank or run.
    co2_most_ppm, co2_night_ppm
        Highest, and mean while people sleep.
    fullest_frac, emptiest_frac
        Of the bank.
    bank_low_degc
        Coldest of the bank; None without one.
    bank_locked_h
        Hours in which there was charge to be had and the bank was too cold to take it.
    """

    month: int
    in_wh: dict[str, float]
    out_wh: dict[str, float]
    unmet_wh: dict[str, float]
    spilled_wh: float
    fuel_l: float
    burner_l: float
    comfort_frac: float
    occupied_h: float
    cold_h: float
    hot_h: float
    heater_frac: float
    cooler_frac: float
    wet_h: dict[str, float]
    frost_h: dict[str, float]
    co2_most_ppm: float
    co2_night_ppm: float
    fullest_frac: float
    emptiest_frac: float
    air_mean_degc: float
    air_low_degc: float
    air_high_degc: float
    bank_low_degc: float | None = None
    bank_locked_h: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Stands:
    """Stands begun on every day of a month (or of the year), full, without driving or hook-up.

    Attributes
    ----------
    p10_d, p50_d, p90_d
        Days that one, five and nine of ten stands do not outlast.
    nine_of_ten_d
        Nine of ten last at least this long: the promise; equal to `p10_d`.
    longest_frac
        Share that were still standing when following ended.
    water_limited_frac
        Share that the tanks ended before the bank.
    """

    month: int | None
    count: int
    p10_d: float
    p50_d: float
    p90_d: float
    longest_frac: float
    water_limited_frac: float
    followed_d: float

    @property
    def nine_of_ten_d(self) -> float:
        """Days that nine of ten stands last at least."""
        return self.p10_d


@dataclass(frozen=True, kw_only=True, slots=True)
class Picture:
    """Twenty-four hours (or a week) step by step, for a drawing; all tuples equally long.

    Attributes
    ----------
    flows_w
        By name, into the bank positive: ``sun``, ``drive``, ``hookup``, and uses negative.
    nodes_degc
        By name: ``outside``, ``cabin``, ``glass``, ``rib``, ``stall`` and whatever else there is.
    """

    title: str
    day: int
    step_min: float
    nodes_degc: dict[str, tuple[float, ...]]
    charge_frac: tuple[float, ...]
    flows_w: dict[str, tuple[float, ...]]
    humidity_frac: tuple[float, ...]
    co2_ppm: tuple[float, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Loss:
    """One line of the heat loss.

    Attributes
    ----------
    low_w_per_k, high_w_per_k
        Range that the ribs cause.
    """

    name: str
    area_m2: float
    ua_w_per_k: float
    low_w_per_k: float
    high_w_per_k: float
    share_frac: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Envelope:
    """The heat that the body loses for each kelvin."""

    losses: tuple[Loss, ...]
    ua_w_per_k: float
    ua_low_w_per_k: float
    ua_high_w_per_k: float
    mean_u_w_per_m2k: float
    mean_u_low_w_per_m2k: float
    mean_u_high_w_per_m2k: float
    leak_w_per_k: float
    heat_wh_per_k: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class HeatingGrade:
    """A heating grade of the standard for motor caravans: the heater at full, nobody inside.

    Attributes
    ----------
    wanted
        The brief asks for this grade.
    reached_degc
        Inside, for good, with the mean loss.
    reached_low_degc
        The same with the greatest loss that the ribs may cause.
    heat_up_h
        From the temperature outside, for as many kelvin as the grade's test asks; None where it
        is never reached, or the grade has no such test.
    """

    grade: int
    wanted: bool
    outside_degc: float
    reached_degc: float
    reached_low_degc: float
    heat_up_h: float | None
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class FreshAir:
    """Fresh air while people are in, with windows and hatches shut.

    Attributes
    ----------
    open_m3_per_h
        Through what cannot be shut or is kept open, and through leaks.
    needed_m3_per_h
        That the standard for dwellings asks for.
    """

    people_count: int
    open_m3_per_h: float
    needed_m3_per_h: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class CoolerSupply:
    """What an air conditioner takes on the design hot day, and what can give it.

    Attributes
    ----------
    through_inverter
        Else it is fed by the bank directly.
    can_give_w
        The inverters' continuous power, or the bank's at its discharge limit; None where there is
        none.
    """

    name: str
    input_w: float
    through_inverter: bool
    can_give_w: float | None
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class InverterBay:
    """Where inverter and chargers lose their heat.

    Attributes
    ----------
    most_loss_w
        At the inverter's continuous power.
    flow_m3_per_h
        Of air that carries that heat away within the rise allowed.
    warmest_degc
        Of the room that it stands in, in the warmest hour of the year.
    """

    room: str
    names: tuple[str, ...]
    built_in: tuple[str, ...]
    most_loss_w: float
    flow_m3_per_h: float
    warmest_degc: float | None
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class ColdNight:
    """The design cold night with the heater at work."""

    outside_degc: float
    need_w: float
    need_high_w: float
    heater_w: float
    reached_degc: float
    reached_low_degc: float
    heat_up_h: float | None
    fuel_l: float
    battery_wh: float
    picture: Picture
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class HotDay:
    """The design hot day with the air conditioner at work, from a full bank, without sun on it.

    Attributes
    ----------
    hours_h
        That a full bank holds it, sun counted; None where it holds through the day.
    hours_without_sun_h
        The same without any sun on the panels.
    duty_frac
        Share of the occupied hot hours that it runs.
    reached_degc
        Warmest in the cabin while it runs; `without_degc` the warmest with it off.
    mild_duty_frac
        Duty when 23.3 degC (74 degF) is held at 26.7 degC (80 degF) outside.
    """

    outside_degc: float
    hours_h: float | None
    hours_without_sun_h: float | None
    duty_frac: float
    reached_degc: float
    without_degc: float
    day_wh: float
    mild_duty_frac: float | None
    picture: Picture
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class Drying:
    """Drying wet kit in the second room.

    Attributes
    ----------
    room_degc
        That the register brings it to on the design cold night's day and on a mild one.
    hours_h
        Until the load of water is gone; None where it never is.
    hot
        Warmer than 60 degC can be reached: shown with its caution.
    """

    room: str
    water_kg: float
    room_degc: float
    hours_h: float | None
    reachable_degc: float
    hot: bool
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class Change:
    """What one change to the build would do: a real run.

    Attributes
    ----------
    name
        Such as ``"one more panel"``.
    nine_of_ten_d, was_nine_of_ten_d
        Days that nine of ten stands last in the poorest month of the season.
    """

    name: str
    nine_of_ten_d: float
    was_nine_of_ten_d: float
    fuel_l: float
    was_fuel_l: float
    comfort_frac: float
    was_comfort_frac: float


@dataclass(frozen=True, kw_only=True, slots=True)
class SiteYear:
    """A year at one site.

    Attributes
    ----------
    caution
        How far the weather may be off.
    """

    site: str
    title: str
    origin: str
    attribution: str
    caution: str
    months: tuple[MonthOfYear, ...]
    stands: tuple[Stands, ...]
    whole_year: Stands
    cold_night: ColdNight | None
    hot_day: HotDay | None
    drying: Drying | None
    balance_error_ratio: float
    supply: CoolerSupply | None = None
    bay: InverterBay | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Living:
    """Everything that the coupled year says about a build.

    Attributes
    ----------
    missing
        Why there are no years: no site in the brief, no battery, ...
    season_months
        Months, from 1, in which they travel; promises are for the poorest of them.
    """

    envelope: Envelope | None
    years: tuple[SiteYear, ...]
    changes: tuple[Change, ...]
    missing: str
    figures: tuple[Figure, ...]
    grades: tuple[HeatingGrade, ...] = ()
    fresh_air: FreshAir | None = None
    season_months: tuple[int, ...] = tuple(range(1, 13))

    @property
    def promise(self) -> Stands | None:
        """Stands of the season's poorest month at the first site; None without a year."""
        if not self.years:
            return None
        season = (each for each in self.years[0].stands if each.month in self.season_months)
        return min(season, key=lambda each: (each.p10_d, each.p50_d), default=None)
