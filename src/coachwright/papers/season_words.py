"""Words of the coupled year: months, the promise, names of uses and places."""

from coachwright.living.model import Living, SiteYear, Stands
from coachwright.model.build import Build
from coachwright.model.site import MONTHS
from coachwright.papers.wording import ended, part_and_position, show, spoken, subject_of
from coachwright.units import shown_number

SOURCE_WORDS = {"sun": "Sun", "drive": "Driving", "hookup": "Hook-up"}
USE_WORDS = {
    "heater": "Heater",
    "cooler": "Air conditioner",
    "fridge": "Fridge",
    "fans": "Fans",
    "light": "Light",
    "direct": "Other battery loads",
    "alternating": "Behind the inverter",
    "inverter": "Lost in the inverter",
    "standby": "Standing by",
    "pads": "Battery pads",
    "bank": "Lost in the battery",
}
PLACE_WORDS = {"glass": "Glass", "rib": "Ribs", "lining": "Lining"}


def month_word(month: int) -> str:
    """Return the name of a month, counted from 1."""
    return dict(enumerate(MONTHS, start=1))[month]


def missing_words(build: Build, living: Living) -> str:
    """Return why there is no year; empty where there is one."""
    if living.is_awaited:
        return "The year is being computed."
    if not living.missing:
        return ""
    return f"There is no year. Missing: {ended(spoken(build, living.missing))}"


def poorest(year: SiteYear, season: tuple[int, ...]) -> Stands | None:
    """Return the stands of the poorest month of a season; None where there are none.

    Parameters
    ----------
    year
        At one site.
    season
        Months in which they travel, from 1.
    """
    inside = (each for each in year.stands if each.month in season)
    return min(inside, key=lambda each: (each.p10_d, each.p50_d), default=None)


def promise_words(year: SiteYear, stands: Stands, system: str) -> str:
    """Return the promise of one month in a sentence.

    Parameters
    ----------
    year
        At one site.
    stands
        Of a month.
    system
        ``"metric"`` or ``"us"``.
    """
    month = "" if stands.month is None else f"{month_word(stands.month)} "
    return (
        f"Five of ten {month}stays last at least {days_words(stands.p50_d, stands, system)} at "
        f"{year.title}; nine of ten at least {days_words(stands.p10_d, stands, system)}."
    )


def days_words(stand_d: float, stands: Stands, system: str) -> str:
    """Return days of a stand; those followed to the end are told as such."""
    text = show(stand_d, "d", system)
    return f"{text} or more" if stand_d >= stands.followed_d else text


def weather_words(year: SiteYear) -> str:
    """Return where a year's weather comes from, and whom to thank for it."""
    return ended(f"Weather: {year.origin}" + (f"; {year.attribution}" if year.attribution else ""))


def fuel_unit(year: SiteYear) -> str:
    """Return the unit in which a year counts its fuel."""
    return "kg" if year.fuel_by_mass else "L"


def headed(words: str, unit: str, system: str) -> str:
    """Return the head of a column with its unit.

    Examples
    --------
    >>> headed("Coldest", "degC", "us")
    'Coldest, °F'
    """
    _, symbol = shown_number(0.0, unit, system)
    return f"{words}, {symbol}"


def named(build: Build, name: str) -> str:
    """Return what a customer calls a tank, a run or a room."""
    words = part_and_position(build, name)
    return subject_of(build, name) if words == name else words
