"""Results of the coupled year: months, stands, the cold night, the hot day."""

from dataclasses import dataclass
from enum import StrEnum

from coachwright.living.model_days import (
    ColdNight,
    CoolerSupply,
    Drying,
    FreshAir,
    HeatingGrade,
    HotDay,
    InverterBay,
    Picture,
)
from coachwright.model.working import Figure, Working

__all__ = [
    "AWAITED",
    "DRYING_FOLLOWED_H",
    "HEAT_UP_FOLLOWED_H",
    "MILD_INSIDE_DEGC",
    "MILD_OUTSIDE_DEGC",
    "NOT_ASKED",
    "Change",
    "ColdNight",
    "CoolerSupply",
    "Drying",
    "Ending",
    "Envelope",
    "FreshAir",
    "HeatingGrade",
    "HotDay",
    "InverterBay",
    "Living",
    "Loss",
    "MonthOfYear",
    "Picture",
    "SiteYear",
    "Stands",
    "without_years",
]

NOT_ASKED = "the weather, which nobody has asked for"
"""Said by a `Living` that was given no almanac."""
AWAITED = "years, which are being computed"
"""Said by a `Living` whose years are still being computed."""
HEAT_UP_FOLLOWED_H = 24.0
DRYING_FOLLOWED_H = 72.0
"""How long a heat-up and a drying are followed before they are given up."""
MILD_INSIDE_DEGC, MILD_OUTSIDE_DEGC = (74.0 - 32.0) / 1.8, (80.0 - 32.0) / 1.8
"""74 and 80 degF: where common practice, without a source, has a duty of a quarter."""


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
    fuel
        Burnt by the heater, for people; empty where it is electric or there is none.
    fuel_by_mass
        Its litres are kilograms.
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
    fuel: str = ""
    fuel_by_mass: bool = False


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
    def is_told(self) -> bool:
        """Whether everything that can be computed was: false while years are left out."""
        return self.missing not in (AWAITED, NOT_ASKED)

    @property
    def is_awaited(self) -> bool:
        """Whether the years are still being computed."""
        return self.missing == AWAITED

    @property
    def promise(self) -> Stands | None:
        """Stands of the season's poorest month at the first site; None without a year."""
        if not self.years:
            return None
        season = (each for each in self.years[0].stands if each.month in self.season_months)
        return min(season, key=lambda each: (each.p10_d, each.p50_d), default=None)


def without_years(missing: str) -> Living:
    """Return a result that has no years and says why.

    Examples
    --------
    >>> without_years("a site whose weather is known").years
    ()
    """
    return Living(envelope=None, years=(), changes=(), missing=missing, figures=())
