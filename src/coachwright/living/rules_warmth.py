"""Rules of warmth: heating grades, the cold night, comfort, frost, drying, burners."""

from collections.abc import Iterator

from coachwright.living.model import (
    DRYING_FOLLOWED_H,
    HEAT_UP_FOLLOWED_H,
    Drying,
    HeatingGrade,
    Living,
)
from coachwright.living.rules_days import BRIEF, month_name, season_of, unknown
from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity
from coachwright.reference import limit
from coachwright.units import told

_EUROPE = (Jurisdiction.EU, Jurisdiction.UK)
_BURNING = ("diesel", "petrol", "LPG", "wood")
_TWO, _THREE = 2, 3
"""Heating grades that ask for something."""


def _heaters(build: Build) -> tuple[str, ...]:
    return tuple(fitted.name for fitted in build.having("heater"))


def _grade(living: Living, grade: int) -> HeatingGrade | None:
    found = (each for each in living.grades if each.grade == grade)
    return next(found, None)


def _inside(living: Living, grade: int) -> Iterator[Case]:
    row = limit("living.grade-inside")
    found = _grade(living, grade)
    if found is None:
        missing = living.missing or "the heat loss of the body and the heater's output"
        yield Case(subject="inside", value=None, limit=row.value, unit=row.unit, missing=missing)
        return
    yield Case(
        subject="inside",
        value=found.reached_degc,
        limit=row.value,
        unit=row.unit,
        working=found.working,
        detail="computed, with the heater at full; the standard asks for a measured test",
    )


def _grade_two(build: Build, living: Living) -> Iterator[Case]:
    if build.brief.climate.heating_grade in (_TWO, _THREE):
        yield from _inside(living, _TWO)


def _grade_two_unasked(build: Build, living: Living) -> Iterator[Case]:
    if build.brief.climate.heating_grade is None and _heaters(build):
        yield from _inside(living, _TWO)


def _grade_three(build: Build, living: Living) -> Iterator[Case]:
    if build.brief.climate.heating_grade == _THREE:
        yield from _inside(living, _THREE)


def _heat_up(build: Build, living: Living) -> Iterator[Case]:
    if build.brief.climate.heating_grade != _THREE:
        return
    row = limit("living.grade-three-heat-up")
    found = _grade(living, _THREE)
    never = found is not None and found.heat_up_h is None
    yield Case(
        subject="inside",
        value=HEAT_UP_FOLLOWED_H if found and never else found.heat_up_h if found else None,
        limit=row.value,
        unit=row.unit,
        missing="" if found else living.missing or "the heat loss of the body and the heater",
        working=found.working if found else None,
        detail=f"not within {told(HEAT_UP_FOLLOWED_H, 'h')}, where following ended"
        if never
        else "",
    )


def _mean_u(build: Build, living: Living) -> Iterator[Case]:
    grade = build.brief.climate.heating_grade or 0
    rows = {_TWO: limit("living.grade-two-mean-u"), _THREE: limit("living.grade-three-mean-u")}
    if grade not in rows:
        return
    envelope = living.envelope
    yield Case(
        subject="body",
        value=None if envelope is None else envelope.mean_u_w_per_m2k,
        limit=rows[grade].value,
        unit=rows[grade].unit,
        missing="" if envelope else living.missing or "the layers of the body",
        working=envelope.working if envelope else None,
        detail=f"for heating grade {grade}; the ribs make it a range",
    )


def _heater_enough(build: Build, living: Living) -> Iterator[Case]:
    return _heater(build, living, at_worst=False)


def _heater_at_worst(build: Build, living: Living) -> Iterator[Case]:
    return _heater(build, living, at_worst=True)


def _heater(build: Build, living: Living, *, at_worst: bool) -> Iterator[Case]:
    heaters = _heaters(build)
    if not heaters:
        return
    if not living.years:
        yield unknown(living, ", ".join(heaters), 0.0, "W")
    for year in living.years:
        night = year.cold_night
        if night is not None:
            yield Case(
                subject=year.title,
                value=night.heater_w,
                limit=night.need_high_w if at_worst else night.need_w,
                unit="W",
                working=night.working,
                detail="with the greatest loss that the ribs may cause"
                if at_worst
                else f"with the mean loss; up to {told(night.need_high_w, 'W')} if the ribs "
                "conduct as much as they may",
            )


def _coldest(build: Build, living: Living) -> Iterator[Case]:
    wanted = build.brief.habits.night_degc
    if not living.years:
        yield unknown(living, "inside", wanted, "degC")
    for year in living.years:
        if year.cold_night is not None:
            yield Case(
                subject=year.title,
                value=year.cold_night.reached_low_degc,
                limit=wanted,
                unit="degC",
                working=year.cold_night.working,
                detail="with the greatest loss that the ribs may cause",
            )


def _warmest(build: Build, living: Living) -> Iterator[Case]:
    coolers = [fitted.name for fitted in build.having("air_conditioner")]
    wanted = build.brief.habits.most_degc
    if not coolers:
        return
    if not living.years:
        yield unknown(living, coolers[0], wanted, "degC")
    for year in living.years:
        if year.hot_day is not None:
            yield Case(
                subject=year.title,
                value=year.hot_day.reached_degc,
                limit=wanted,
                unit="degC",
                working=year.hot_day.working,
                detail="on the design hot day, while the air conditioner runs",
            )


def _comfort(_build: Build, living: Living) -> Iterator[Case]:
    row = limit("living.comfort-share")
    if not living.years:
        yield unknown(living, "inside", row.value, row.unit)
    for year in living.years:
        worst = min(season_of(living, year), key=lambda each: each.comfort_frac)
        yield Case(
            subject=year.title,
            value=worst.comfort_frac,
            limit=row.value,
            unit=row.unit,
            detail=f"in {month_name(worst.month)}, the least comfortable month",
        )


def _frost(_build: Build, living: Living) -> Iterator[Case]:
    row = limit("living.frost-time")
    if not living.years:
        yield unknown(living, "tanks and runs", row.value, row.unit)
    for year in living.years:
        months = season_of(living, year)
        for name in dict.fromkeys(name for month in months for name in month.frost_h):
            worst = max(months, key=lambda each: each.frost_h.get(name, 0.0))
            hours = worst.frost_h.get(name, 0.0)
            yield Case(
                subject=name,
                value=hours,
                limit=row.value,
                unit=row.unit,
                detail=f"at {year.title}" + (f" in {month_name(worst.month)}" if hours else ""),
            )


def _dryings(living: Living) -> Iterator[tuple[str, Drying]]:
    for year in living.years:
        if year.drying is not None:
            yield year.title, year.drying


def _dry_in_time(build: Build, living: Living) -> Iterator[Case]:
    wanted = build.brief.habits.dry_within_h
    if wanted is None:
        return
    found = tuple(_dryings(living))
    if not found:
        missing = living.missing or "a room for drying that the heater leads into"
        yield Case(subject="wet kit", value=None, limit=wanted, unit="h", missing=missing)
    for title, drying in found:
        never = drying.hours_h is None
        yield Case(
            subject=title,
            value=DRYING_FOLLOWED_H if never else drying.hours_h,
            limit=wanted,
            unit="h",
            working=drying.working,
            detail=f"not within {told(DRYING_FOLLOWED_H, 'h')}, where following ended"
            if never
            else f"in the {drying.room}",
        )


def _stall_warm(_build: Build, living: Living) -> Iterator[Case]:
    row = limit("living.stall-warm")
    for title, drying in _dryings(living):
        yield Case(
            subject=drying.room,
            value=drying.reachable_degc,
            limit=row.value,
            unit=row.unit,
            working=drying.working,
            detail=f"with the heater at full, at {title}; people's use is at their own and their "
            "doctor's judgement",
        )


def _room_sealed(build: Build, _living: Living) -> Iterator[Case]:
    row = limit("living.room-sealed")
    for fitted in build.having("heater"):
        heater = fitted.part.heater
        if heater is not None and heater.fuel in _BURNING:
            yield Case(
                subject=fitted.name,
                value=float(heater.room_sealed),
                limit=row.value,
                unit=row.unit,
                detail=f"burns {heater.fuel}",
            )


WARMTH_RULES: tuple[Rule, ...] = (
    Rule(
        id="living.heating-grade-two",
        title="Heating grade 2, as wanted: warm inside with frost outside",
        source=limit("living.grade-two-outside").source,
        severity=Severity.CAUTION,
        cases=_grade_two,
        holds=">=",
        remedy="a stronger heater, or less loss: insulation, fewer bare ribs, less glass",
    ),
    Rule(
        id="living.heating-grade-two-unasked",
        title="Heating grade 2 would be reached, though the brief asks for none",
        source=limit("living.grade-two-outside").source,
        severity=Severity.NOTE,
        cases=_grade_two_unasked,
        holds=">=",
        remedy="a stronger heater, or less loss; agree with the customer on a grade",
        jurisdictions=_EUROPE,
    ),
    Rule(
        id="living.heating-grade-three",
        title="Heating grade 3, as wanted: warm inside in hard frost",
        source=limit("living.grade-three-outside").source,
        severity=Severity.CAUTION,
        cases=_grade_three,
        holds=">=",
        remedy="a stronger heater, or less loss: insulation, fewer bare ribs, less glass",
    ),
    Rule(
        id="living.heat-up",
        title="Heating grade 3, as wanted: warm from the cold within the time",
        source=limit("living.grade-three-heat-up").source,
        severity=Severity.CAUTION,
        cases=_heat_up,
        remedy="a stronger heater, or less loss and less heavy furniture",
    ),
    Rule(
        id="living.average-u",
        title="The average U-value is no more than the grade wanted asks for (from memory)",
        source=limit("living.grade-two-mean-u").source,
        severity=Severity.CAUTION,
        cases=_mean_u,
        remedy="thicker insulation, strips over the ribs, less or double glass",
    ),
    Rule(
        id="living.heater-enough",
        title="The heater gives what the design cold night takes",
        source=BRIEF,
        severity=Severity.CAUTION,
        cases=_heater_enough,
        holds=">=",
        remedy="a stronger heater, or less loss: insulation, fewer bare ribs, less glass",
    ),
    Rule(
        id="living.heater-enough-at-worst",
        title="The heater gives what the design cold night takes if ribs conduct as they may",
        source=BRIEF,
        severity=Severity.NOTE,
        cases=_heater_at_worst,
        holds=">=",
        remedy="strips of foam over the ribs make the range small; or a stronger heater",
    ),
    Rule(
        id="living.night-warm-enough",
        title="On the design cold night it stays as warm inside as is wanted",
        source=BRIEF,
        severity=Severity.CAUTION,
        cases=_coldest,
        holds=">=",
        remedy="a stronger heater, or less loss: insulation, fewer bare ribs, less glass",
    ),
    Rule(
        id="living.day-cool-enough",
        title="On the design hot day the air conditioner keeps it as cool inside as is wanted",
        source=BRIEF,
        severity=Severity.CAUTION,
        cases=_warmest,
        remedy="a stronger air conditioner, blinds, a lighter roof, more insulation",
    ),
    Rule(
        id="living.comfort",
        title="In the months of travel nearly all occupied hours are as warm as wanted",
        source=limit("living.comfort-share").source,
        severity=Severity.NOTE,
        cases=_comfort,
        holds=">=",
        remedy="where it is cold a stronger heater; where it is hot fans, hatches, shade, cooling",
    ),
    Rule(
        id="living.no-frost",
        title="No tank or run is below freezing in the months of travel while they live aboard",
        source=limit("living.frost-time").source,
        severity=Severity.CAUTION,
        cases=_frost,
        remedy="stand it in the heated room, heat it, or drain it when there is frost",
    ),
    Rule(
        id="living.kit-dry",
        title="Wet kit is dry within the time wanted",
        source=BRIEF,
        severity=Severity.CAUTION,
        cases=_dry_in_time,
        remedy="more of the heater's air into the stall, and more of its air led outside",
    ),
    Rule(
        id="living.stall-heat",
        title="A heated stall cannot get hotter than people and kit bear, by common practice",
        source=limit("living.stall-warm").source,
        severity=Severity.CAUTION,
        cases=_stall_warm,
        remedy="a thermostat in the stall, a smaller share of the heater's air, or a vent",
    ),
    Rule(
        id="living.burner-room-sealed",
        title="An air heater that burns takes its air from outside and sends its exhaust there",
        source=limit("living.room-sealed").source,
        severity=Severity.CAUTION,
        cases=_room_sealed,
        holds=">=",
        remedy="use a room-sealed heater; lead its exhaust gas-tight away from windows, vents and "
        "intakes, and its fuel line away from heat, as its maker and local codes say",
    ),
)
