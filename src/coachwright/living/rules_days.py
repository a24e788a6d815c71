"""Rules of days and energy: independence, what is left unserved, cold charging, cooling."""

from collections.abc import Iterator

from coachwright.living.model import Living, MonthOfYear, SiteYear, Stands
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source
from coachwright.model.site import MONTHS
from coachwright.reference import limit

BRIEF = Source(key="customer-brief")
MAKER = Source(key="part-maker-data")
_WHOLE_DAY_H = 24.0


def season_of(living: Living, year: SiteYear) -> tuple[MonthOfYear, ...]:
    """Return the months of a year in which they travel."""
    return tuple(each for each in year.months if each.month in living.season_months)


def poorest(living: Living, year: SiteYear) -> Stands | None:
    """Return the stands of the season's poorest month at a site."""
    found = (each for each in year.stands if each.month in living.season_months)
    return min(found, key=lambda each: (each.p10_d, each.p50_d), default=None)


def month_name(number: int | None) -> str:
    """Return a month's name.

    Examples
    --------
    >>> month_name(1), month_name(None)
    ('January', 'the year')
    """
    return "the year" if number is None else MONTHS[number - 1]


def _stays(build: Build, living: Living, *, nine: bool) -> Iterator[Case]:
    wanted = build.brief.independence_wanted_d
    if wanted is None:
        return
    if not living.years:
        yield Case(
            subject="stay", value=None, limit=wanted, unit="d", missing=living.missing or "a site"
        )
    for year in living.years:
        found = poorest(living, year)
        yield Case(
            subject=year.title,
            value=None if found is None else (found.p10_d if nine else found.p50_d),
            limit=wanted,
            unit="d",
            missing="a bank whose stands could be followed" if found is None else "",
            detail="" if found is None else _month_of(found, year),
        )


def _month_of(found: Stands, year: SiteYear) -> str:
    return f"stays begun in {month_name(found.month)}, the poorest month; {year.origin} weather"


def _nine_of_ten(build: Build, living: Living) -> Iterator[Case]:
    return _stays(build, living, nine=True)


def _five_of_ten(build: Build, living: Living) -> Iterator[Case]:
    return _stays(build, living, nine=False)


def _unmet(_build: Build, living: Living) -> Iterator[Case]:
    if not living.years:
        yield unknown(living, "loads", limit("living.unmet").value, "Wh")
    for year in living.years:
        months = season_of(living, year)
        worst = max(months, key=lambda each: sum(each.unmet_wh.values()))
        largest = max(worst.unmet_wh, key=lambda name: worst.unmet_wh[name], default="")
        yield Case(
            subject=year.title,
            value=sum(worst.unmet_wh.values()),
            limit=limit("living.unmet").value,
            unit="Wh",
            detail=f"in {month_name(worst.month)}, most of it for the {largest}"
            if worst.unmet_wh.get(largest)
            else "over the stay pattern",
        )


def unknown(living: Living, subject: str, value: float, unit: str) -> Case:
    """Return a case that cannot be judged because there is no year."""
    return Case(
        subject=subject,
        value=None,
        limit=value,
        unit=unit,
        missing=living.missing or "a site whose weather is known",
    )


def _locked(build: Build, living: Living) -> Iterator[Case]:
    if not any(True for _ in build.having("battery")):
        return
    row = limit("living.bank-locked")
    if not living.years:
        yield unknown(living, "bank", row.value, row.unit)
    for year in living.years:
        months = season_of(living, year)
        worst = max(months, key=lambda each: each.bank_locked_h)
        yield Case(
            subject=year.title,
            value=worst.bank_locked_h,
            limit=row.value,
            unit=row.unit,
            detail=f"in {month_name(worst.month)}" if worst.bank_locked_h else "",
        )


def _supply(build: Build, living: Living) -> Iterator[Case]:
    coolers = [fitted.name for fitted in build.having("air_conditioner")]
    if coolers and not living.years:
        yield unknown(living, coolers[0], 0.0, "W")
    for year in living.years:
        if year.supply is not None:
            what = "inverter" if year.supply.through_inverter else "bank"
            yield Case(
                subject=year.supply.name,
                value=year.supply.input_w,
                limit=year.supply.can_give_w,
                unit="W",
                missing=""
                if year.supply.can_give_w is not None
                else f"an {what} that feeds it"
                if what == "inverter"
                else "a bank that feeds it",
                working=year.supply.working,
                detail=f"on the design hot day at {year.title}, from the {what}",
            )


def _cooler_hours(build: Build, living: Living) -> Iterator[Case]:
    row = limit("living.cooler-hours")
    coolers = [fitted.name for fitted in build.having("air_conditioner")]
    if not coolers:
        return
    if not living.years:
        yield unknown(living, coolers[0], row.value, row.unit)
    for year in living.years:
        if year.hot_day is not None:
            held = year.hot_day.hours_without_sun_h
            yield Case(
                subject=year.title,
                value=_WHOLE_DAY_H if held is None else held,
                limit=row.value,
                unit=row.unit,
                working=year.hot_day.working,
                detail="on the design hot day, without sun on the panels"
                if held is not None
                else "held through the whole design hot day without sun on the panels",
            )


DAYS_RULES: tuple[Rule, ...] = (
    Rule(
        id="living.nine-of-ten-stays",
        title="Nine of ten stays last the days wanted in the season's poorest month",
        source=BRIEF,
        severity=Severity.CAUTION,
        cases=_nine_of_ten,
        holds=">=",
        remedy="more panels, a larger bank, less use, or a season that leaves the month out",
    ),
    Rule(
        id="living.five-of-ten-stays",
        title="Five of ten stays last the days wanted in the season's poorest month",
        source=BRIEF,
        severity=Severity.CAUTION,
        cases=_five_of_ten,
        holds=">=",
        remedy="more panels, a larger bank, less use, or a season that leaves the month out",
    ),
    Rule(
        id="living.loads-served",
        title="Over the stay pattern no load goes without power in the months of travel",
        source=limit("living.unmet").source,
        severity=Severity.CAUTION,
        cases=_unmet,
        remedy="more panels, longer drives, more hook-up, a larger bank, or less use",
    ),
    Rule(
        id="living.bank-takes-charge",
        title="The bank is never too cold for the charge that is there in the months of travel",
        source=limit("living.bank-locked").source,
        severity=Severity.CAUTION,
        cases=_locked,
        remedy="stand the battery in the heated room, or use one with heating pads",
    ),
    Rule(
        id="living.cooler-supplied",
        title="Inverter or bank can give what the air conditioner takes on the design hot day",
        source=MAKER,
        severity=Severity.CAUTION,
        cases=_supply,
        remedy="a larger inverter, or a bank with a higher discharge limit",
    ),
    Rule(
        id="living.cooler-hours",
        title="A full bank carries the air conditioner for a night's sleep on the design hot day",
        source=limit("living.cooler-hours").source,
        severity=Severity.NOTE,
        cases=_cooler_hours,
        holds=">=",
        remedy="a larger bank, shade, blinds, more insulation, or hook-up on such nights",
    ),
)
