"""The headline figures of the coupled year, each with its working."""

from collections.abc import Iterator
from dataclasses import replace

from coachwright.living.model import (
    MILD_INSIDE_DEGC,
    MILD_OUTSIDE_DEGC,
    Living,
    SiteYear,
    Stands,
)
from coachwright.living.rules_days import month_name, poorest
from coachwright.model.site import SiteOrigin
from coachwright.model.working import Figure, Given, Working
from coachwright.units import told

_SYNTHETIC = "synthetic weather"
_WHOLE_DAY_H = 24.0


def figures(made: Living) -> Living:
    """Return the result with its figures: those of the first site, then of the others."""
    found = [*_envelope(made)]
    if not made.years:
        found += _missing(made.missing)
    for place, year in enumerate(made.years):
        suffix = "" if place == 0 else f"-at-{year.site}"
        found += [_weathered(year, figure) for figure in _year(made, year, suffix)]
    return replace(made, figures=tuple(found))


def sentence(stands: Stands, title: str) -> str:
    """Return the promise of a month's stands, to be worded for a reader.

    Parameters
    ----------
    stands
        Of a month.
    title
        Of the site.

    Examples
    --------
    >>> from coachwright.units import worded
    >>> made = Stands(
    ...     month=1, count=31, p10_d=2.3, p50_d=4.5, p90_d=21, longest_frac=0.2,
    ...     water_limited_frac=0, followed_d=21,
    ... )
    >>> worded(sentence(made, "Oslo"))
    'five of ten January stays last at least 4.5 days at Oslo; nine of ten at least 2.3 days'
    """
    month = "" if stands.month is None else f"{month_name(stands.month)} "
    half, most = (_at_least(each, stands) for each in (stands.p50_d, stands.p10_d))
    return f"five of ten {month}stays last {half} at {title}; nine of ten {most}"


def _at_least(lasted_d: float, stands: Stands) -> str:
    if lasted_d >= stands.followed_d:
        return f"{told(stands.followed_d, 'd')} or more"
    return f"at least {told(lasted_d, 'd')}"


def _figure(
    name: str,
    label: str,
    value: float | None,
    unit: str,
    *,
    working: Working | None = None,
    missing: str = "",
) -> Figure:
    return Figure(
        name=f"living.{name}",
        label=label,
        value=value,
        unit=unit,
        working=None if value is None else working,
        missing=missing if value is None else "",
    )


def _missing(missing: str) -> Iterator[Figure]:
    for name, label in (
        ("nine-of-ten-days", "Nine of ten stays last at least"),
        ("five-of-ten-days", "Five of ten stays last at least"),
    ):
        yield _figure(name, label, None, "d", missing=missing)


def _envelope(made: Living) -> Iterator[Figure]:
    found = made.envelope
    if found is None:
        return
    yield replace(
        _figure(
            "heat-loss",
            "Heat lost for each kelvin",
            found.ua_w_per_k,
            "W/K",
            working=found.working,
        ),
        low=found.ua_low_w_per_k,
        high=found.ua_high_w_per_k,
    )
    yield replace(
        _figure(
            "mean-u", "Average U-value", found.mean_u_w_per_m2k, "W/m2/K", working=found.working
        ),
        low=found.mean_u_low_w_per_m2k,
        high=found.mean_u_high_w_per_m2k,
    )


def _year(made: Living, year: SiteYear, suffix: str) -> Iterator[Figure]:
    yield from _stays(made, year, suffix)
    yield from _cold(year, suffix)
    yield from _hot(year, suffix)
    yield from _dry(year, suffix)
    yield from _sums(year, suffix)


def _cold(year: SiteYear, suffix: str) -> Iterator[Figure]:
    night, at = year.cold_night, _at(year)
    if night is None:
        return
    yield _figure(
        f"cold-night-need{suffix}",
        f"Heat that the design cold night takes{at}",
        night.need_w,
        "W",
        working=night.working,
    )
    yield _figure(
        f"coldest-inside{suffix}",
        f"Coldest inside on the design cold night{at}",
        night.reached_degc,
        "degC",
        working=_run(
            "T = min T_i", "T_i", "inside, while somebody is in", night.reached_degc, "degC"
        ),
    )


def _hot(year: SiteYear, suffix: str) -> Iterator[Figure]:
    day, at = year.hot_day, _at(year)
    if day is None:
        return
    held_h = _WHOLE_DAY_H if day.hours_h is None else day.hours_h
    more = ", or longer" if day.hours_h is None else ""
    yield _figure(
        f"hot-day-hours{suffix}",
        f"A full bank carries the air conditioner on the design hot day{more}{at}",
        held_h,
        "h",
        working=_run("t = Σ Δt", "Δt", "steps from its first use to the reserve", held_h, "h"),
    )
    yield _figure(
        f"hot-day-duty{suffix}",
        f"Duty of the air conditioner on the design hot day{at}",
        day.duty_frac,
        "frac",
        working=day.working,
    )
    mild = day.mild_duty_frac
    yield _figure(
        f"mild-duty{suffix}",
        f"Duty with {told(MILD_INSIDE_DEGC, 'degC')} inside and "
        f"{told(MILD_OUTSIDE_DEGC, 'degC')} outside{at}",
        mild,
        "frac",
        working=None if mild is None else replace(day.working, result=mild),
    )


def _dry(year: SiteYear, suffix: str) -> Iterator[Figure]:
    kit = year.drying
    if kit is not None:
        yield _figure(
            f"drying-time{suffix}",
            f"Time until wet kit is dry in the {kit.room}{_at(year)}",
            kit.hours_h,
            "h",
            working=kit.working,
            missing="heat or air that dries it within three days",
        )


def _stays(made: Living, year: SiteYear, suffix: str) -> Iterator[Figure]:
    found = poorest(made, year)
    month = "the poorest month" if found is None else month_name(found.month)
    for name, share, q_frac, value in (
        ("nine", "Nine", 0.1, None if found is None else found.p10_d),
        ("five", "Five", 0.5, None if found is None else found.p50_d),
    ):
        missing = "a battery" if found is None else ""
        yield _figure(
            f"{name}-of-ten-days{suffix}",
            f"{share} of ten stays in {month} last at least{_at(year)}",
            value,
            "d",
            working=None
            if found is None or value is None
            else _counted(found, year, value, q_frac),
            missing=missing,
        )


def _counted(found: Stands, year: SiteYear, lasted_d: float, share_frac: float) -> Working:
    return Working(
        expression="d = D(⌊q · n⌋)",
        given=(
            Given(
                symbol="D",
                meaning="days of the stands, the shortest first, counted from 0",
                value=float(found.count),
                unit="count",
                source=f"{year.title}, {year.origin} year",
            ),
            Given(symbol="q", meaning="share that may be shorter", value=share_frac, unit="frac"),
            Given(symbol="n", meaning="stands", value=float(found.count), unit="count"),
        ),
        result=lasted_d,
        unit="d",
        references=("order-statistics",),
        note=f"{sentence(found, year.title)}; full at the start, without driving or hook-up, down "
        f"to the reserve, followed for {told(found.followed_d, 'd')}",
    )


def _sums(year: SiteYear, suffix: str) -> Iterator[Figure]:
    at = _at(year)
    if year.fuel:
        fuel = sum(each.fuel_l for each in year.months)
        unit = "kg" if year.fuel_by_mass else "L"
        yield _figure(
            f"fuel{suffix}",
            f"{year.fuel[:1].upper()}{year.fuel[1:]} for heat in a year of the stay pattern{at}",
            fuel,
            unit,
            working=_run("V = Σ V_m", "V_m", "of all months", fuel, unit),
        )
    occupied_h = sum(each.occupied_h for each in year.months)
    within_h = sum(each.comfort_frac * each.occupied_h for each in year.months)
    if occupied_h:
        yield _figure(
            f"comfort{suffix}",
            f"Occupied hours within the wanted temperatures{at}",
            within_h / occupied_h,
            "frac",
            working=Working(
                expression="s = Σ h / Σ H",
                given=(
                    Given(symbol="h", meaning="hours within them", value=within_h, unit="h"),
                    Given(symbol="H", meaning="occupied hours", value=occupied_h, unit="h"),
                ),
                result=within_h / occupied_h,
                unit="frac",
                references=("energy-balance",),
            ),
        )


def _run(expression: str, symbol: str, meaning: str, value: float, unit: str) -> Working:
    return Working(
        expression=expression,
        given=(Given(symbol=symbol, meaning=meaning, value=value, unit=unit),),
        result=value,
        unit=unit,
        references=("energy-balance",),
    )


def _at(year: SiteYear) -> str:
    synthetic = f", {_SYNTHETIC}" if year.origin == SiteOrigin.SYNTHETIC else ""
    return f" ({year.title}{synthetic})"


def _weathered(year: SiteYear, figure: Figure) -> Figure:
    """Return a figure whose working says how far the weather may be off."""
    working = figure.working
    if working is None or not year.caution:
        return figure
    note = f"{working.note}. {year.caution}" if working.note else year.caution
    return replace(figure, working=replace(working, note=note))
