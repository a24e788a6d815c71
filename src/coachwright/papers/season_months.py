"""Tables of the coupled year with a line for each month."""

from collections.abc import Iterable
from dataclasses import replace

from coachwright.living.model import MonthOfYear, SiteYear, Stands
from coachwright.model.build import Build
from coachwright.papers.season_words import (
    PLACE_WORDS,
    SOURCE_WORDS,
    USE_WORDS,
    fuel_unit,
    headed,
    month_word,
)
from coachwright.papers.table import Table
from coachwright.papers.wording import NONE, digits, subject_of

_MONTH = "Month"
_NOT_GIVEN = (
    "Not given: the battery was empty, or more was wanted than inverter or battery can give."
)
_HARDLY = "Of what was wanted, less than can be shown here was not given in any month."
_ALL_GIVEN = "Whatever was wanted was given in every month."


def stands_table(year: SiteYear, system: str) -> Table:
    """Return how long stands last, by the month in which they begin."""
    return Table(
        heading="Days that a stand lasts",
        names=(
            _MONTH,
            "Nine of ten",
            "Five of ten",
            "One of ten",
            headed("Still standing at the end", "frac", system),
            headed("Water ends it first", "frac", system),
        ),
        rows=tuple(_stands_row(each, system) for each in (*year.stands, year.whole_year)),
        note=_followed(year.whole_year, system),
    )


def _followed(stands: Stands, system: str) -> str:
    longest = digits(stands.followed_d, "d", system)
    return (
        "Days that nine, five and one of ten stands last at least. Each is followed for "
        f"{longest} days; what still stands then may last longer. Water: full tanks are empty, or "
        "grey is full, before the battery is at its reserve."
    )


def _stands_row(stands: Stands, system: str) -> tuple[str, ...]:
    return (
        "Whole year" if stands.month is None else month_word(stands.month),
        digits(stands.p10_d, "d", system),
        digits(stands.p50_d, "d", system),
        digits(stands.p90_d, "d", system),
        digits(stands.longest_frac, "frac", system),
        digits(stands.water_limited_frac, "frac", system),
    )


def air_table(year: SiteYear, system: str) -> Table:
    """Return how warm the cabin is, and how much heater and air conditioner run."""
    return _without_nothing(
        Table(
            heading="Warmth by month",
            names=(
                _MONTH,
                headed("Coldest", "degC", system),
                headed("Mean", "degC", system),
                headed("Warmest", "degC", system),
                headed("Comfortable", "frac", system),
                headed("Too cold", "h", system),
                headed("Too warm", "h", system),
                headed("Heater runs", "frac", system),
                headed("Air conditioner runs", "frac", system),
            ),
            rows=tuple(_air_row(each, system) for each in year.months),
            note="Temperatures of the cabin's air at any hour, somebody in or not. Comfortable: "
            "share of the occupied hours between the coldest and the warmest that are wanted.",
        ),
        kept=7,
    )


def _air_row(month: MonthOfYear, system: str) -> tuple[str, ...]:
    return (
        month_word(month.month),
        digits(month.air_low_degc, "degC", system),
        digits(month.air_mean_degc, "degC", system),
        digits(month.air_high_degc, "degC", system),
        digits(month.comfort_frac, "frac", system),
        digits(month.cold_h, "h", system),
        digits(month.hot_h, "h", system),
        digits(month.heater_frac, "frac", system),
        digits(month.cooler_frac, "frac", system),
    )


def _without_nothing(table: Table, *, kept: int) -> Table:
    """Return a table without the columns in which every month has nothing; the first stay."""
    columns = [
        place
        for place in range(len(table.names))
        if place < kept or any(row[place].strip("0.") for row in table.rows)
    ]
    return replace(
        table,
        names=tuple(table.names[place] for place in columns),
        rows=tuple(tuple(row[place] for place in columns) for row in table.rows),
    )


def damp_table(build: Build, year: SiteYear) -> Table:
    """Return hours of condensation and of frost, and carbon dioxide."""
    system = build.brief.units
    places = _names(each.wet_h for each in year.months)
    tanks = _names(each.frost_h for each in year.months)
    return Table(
        heading="Damp, frost and used air by month",
        names=(
            _MONTH,
            *(
                headed(f"Wet: {PLACE_WORDS.get(each, each).lower()}", "h", system)
                for each in places
            ),
            *(headed(f"Frost: {subject_of(build, each)}", "h", system) for each in tanks),
            headed("Carbon dioxide at night", "ppm", system),
            headed("Carbon dioxide, most", "ppm", system),
        ),
        rows=tuple(
            (
                month_word(each.month),
                *(digits(each.wet_h.get(name, 0.0), "h", system) for name in places),
                *(digits(each.frost_h.get(name, 0.0), "h", system) for name in tanks),
                digits(each.co2_night_ppm, "ppm", system),
                digits(each.co2_most_ppm, "ppm", system),
            )
            for each in year.months
        ),
        note="Wet: hours in which water condenses there. Frost: hours in which what is in it is "
        "at the freezing point or below.",
    )


def energy_in_table(year: SiteYear, system: str) -> Table:
    """Return energy in by source."""
    sources = [name for name in SOURCE_WORDS if any(each.in_wh.get(name) for each in year.months)]
    return Table(
        heading="Energy in, by source",
        names=(
            _MONTH,
            *(headed(SOURCE_WORDS[name], "Wh/month", system) for name in sources),
            headed("Sun left over", "Wh/month", system),
            headed("Bank fullest", "frac", system),
            headed("Bank emptiest", "frac", system),
            headed("Bank coldest", "degC", system),
            headed("Too cold to charge", "h", system),
        ),
        rows=tuple(
            (
                month_word(each.month),
                *(digits(each.in_wh.get(name, 0.0), "Wh/month", system) for name in sources),
                digits(each.spilled_wh, "Wh/month", system),
                digits(each.fullest_frac, "frac", system),
                digits(each.emptiest_frac, "frac", system),
                NONE if each.bank_low_degc is None else digits(each.bank_low_degc, "degC", system),
                digits(each.bank_locked_h, "h", system),
            )
            for each in year.months
        ),
        note="Into the battery and the loads, under the stay pattern of the brief.",
    )


def energy_out_table(year: SiteYear, system: str) -> Table:
    """Return energy out by use."""
    uses = [name for name in USE_WORDS if any(each.out_wh.get(name) for each in year.months)]
    return Table(
        heading=headed("Energy out, by use", "Wh/month", system),
        names=(_MONTH, *(USE_WORDS[name] for name in uses)),
        rows=tuple(
            (
                month_word(each.month),
                *(digits(each.out_wh.get(name, 0.0), "Wh/month", system) for name in uses),
            )
            for each in year.months
        ),
    )


def fuel_table(year: SiteYear, system: str) -> Table:
    """Return the fuel of heating, cooking and hot water, and what was wanted and not given."""
    unit = fuel_unit(year)
    table = _without_nothing(
        Table(
            heading="Fuel, and what was wanted and not given",
            names=(
                _MONTH,
                headed(f"Heating, {year.fuel}" if year.fuel else "Heating", unit, system),
                headed("Cooking and hot water, as propane", "kg", system),
                *(
                    headed(f"Not given: {words.lower()}", "Wh/month", system)
                    for words in USE_WORDS.values()
                ),
            ),
            rows=tuple(
                (
                    month_word(each.month),
                    digits(each.fuel_l, unit, system),
                    digits(each.burner_l, "kg", system),
                    *(
                        digits(each.unmet_wh.get(name, 0.0), "Wh/month", system)
                        for name in USE_WORDS
                    ),
                )
                for each in year.months
            ),
        ),
        kept=1,
    )
    if any(name.startswith("Not given") for name in table.names):
        return replace(table, note=_NOT_GIVEN)
    wanting = any(energy for each in year.months for energy in each.unmet_wh.values())
    return replace(table, note=_HARDLY if wanting else _ALL_GIVEN)


def _names(hours_h: Iterable[dict[str, float]]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(name for month in hours_h for name in month))
