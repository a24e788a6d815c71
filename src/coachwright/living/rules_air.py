"""Rules of air: carbon dioxide, fresh air, condensation, the inverter's bay."""

from collections.abc import Iterator

from coachwright.living.model import Living, MonthOfYear
from coachwright.living.rules_days import month_name, season_of, unknown
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity
from coachwright.reference import limit


def _carbon_dioxide(living: Living, row_id: str, *, mean: bool) -> Iterator[Case]:
    row = limit(row_id)
    if not living.years:
        yield unknown(living, "inside", row.value, row.unit)
    for year in living.years:
        months = season_of(living, year)
        worst = max(months, key=_night_ppm if mean else _most_ppm)
        yield Case(
            subject=year.title,
            value=_night_ppm(worst) if mean else _most_ppm(worst),
            limit=row.value,
            unit=row.unit,
            detail=f"in {month_name(worst.month)}, "
            + ("mean while people sleep" if mean else "highest while people are in"),
        )


def _night_ppm(month: MonthOfYear) -> float:
    return month.co2_night_ppm


def _most_ppm(month: MonthOfYear) -> float:
    return month.co2_most_ppm


def _good(_build: Build, living: Living) -> Iterator[Case]:
    return _carbon_dioxide(living, "living.co2-good", mean=True)


def _asleep(_build: Build, living: Living) -> Iterator[Case]:
    return _carbon_dioxide(living, "living.co2-mean", mean=True)


def _at_work(_build: Build, living: Living) -> Iterator[Case]:
    return _carbon_dioxide(living, "living.co2-work", mean=False)


def _fresh_air(_build: Build, living: Living) -> Iterator[Case]:
    found = living.fresh_air
    yield Case(
        subject="inside",
        value=None if found is None else found.open_m3_per_h,
        limit=None if found is None else found.needed_m3_per_h,
        unit="m3/h",
        missing="" if found else living.missing or "the volume of the body",
        working=found.working if found else None,
        detail="with windows and hatches shut",
    )


def _wet(living: Living, where: str, row_id: str) -> Iterator[Case]:
    row = limit(row_id)
    if not living.years:
        yield unknown(living, where, row.value, row.unit)
    for year in living.years:
        months = [each for each in season_of(living, year) if where in each.wet_h]
        if months:
            worst = max(months, key=lambda each: each.wet_h[where])
            yield Case(
                subject=year.title,
                value=worst.wet_h[where],
                limit=row.value,
                unit=row.unit,
                detail=f"in {month_name(worst.month)}" if worst.wet_h[where] else "",
            )


def _wet_lining(_build: Build, living: Living) -> Iterator[Case]:
    return _wet(living, "lining", "living.wet-lining")


def _wet_ribs(_build: Build, living: Living) -> Iterator[Case]:
    return _wet(living, "rib", "living.wet-ribs")


def _wet_glass(_build: Build, living: Living) -> Iterator[Case]:
    return _wet(living, "glass", "living.wet-glass")


def _bay(build: Build, living: Living) -> Iterator[Case]:
    inverters = [fitted.name for fitted in build.having("inverter")]
    row = limit("living.bay-warmest")
    if inverters and not living.years:
        yield unknown(living, ", ".join(inverters), row.value, row.unit)
    for year in living.years:
        if year.bay is not None:
            yield Case(
                subject=year.title,
                value=year.bay.warmest_degc,
                limit=row.value,
                unit=row.unit,
                missing="" if year.bay.warmest_degc is not None else "the room it stands in",
                working=year.bay.working,
                detail=f"in the {year.bay.room}, in the warmest hour of the year",
            )


def _bay_vents(build: Build, living: Living) -> Iterator[Case]:
    bay = next((year.bay for year in living.years if year.bay is not None), None)
    for fitted in build.having("inverter"):
        cabinet = build.fitted(fitted.fitting.within)
        carcass = None if cabinet is None else cabinet.part.carcass
        if cabinet is None:
            continue
        vent_m2 = None if carcass is None else carcass.free_vent_m2
        missing = living.missing or "the inverter's loss" if bay is None else ""
        yield Case(
            subject=fitted.name,
            value=vent_m2,
            limit=None if bay is None else bay.vent_m2,
            unit="m2",
            missing=missing if vent_m2 is not None else f"the free vents of {cabinet.name}",
            working=bay.working if bay else None,
            detail=f"vents of {cabinet.name}, low and high together",
        )


AIR_RULES: tuple[Rule, ...] = (
    Rule(
        id="living.air-good",
        title="While people sleep the air is good, by the German guide to air in schools",
        source=limit("living.co2-good").source,
        severity=Severity.NOTE,
        cases=_good,
        remedy="keep a roof vent and a low vent open, or let the fan run slowly at night",
    ),
    Rule(
        id="living.air-asleep",
        title="While people sleep carbon dioxide is no more than a school's mean",
        source=limit("living.co2-mean").source,
        severity=Severity.CAUTION,
        cases=_asleep,
        remedy="keep a roof vent and a low vent open, or let the fan run slowly at night",
    ),
    Rule(
        id="living.air-at-most",
        title="Carbon dioxide never gets higher than the mean that is allowed at work",
        source=limit("living.co2-work").source,
        severity=Severity.CAUTION,
        cases=_at_work,
        remedy="fit vents that cannot be shut, and open them while cooking and sleeping",
    ),
    Rule(
        id="living.fresh-air",
        title="With everything shut there is the fresh air that a dwelling is given",
        source=limit("living.fresh-air").source,
        severity=Severity.NOTE,
        cases=_fresh_air,
        holds=">=",
        remedy="fit vents that cannot be shut, or let a fan run slowly while people are in",
    ),
    Rule(
        id="living.dry-lining",
        title="The lining is never wet with condensation in the months of travel",
        source=limit("living.wet-lining").source,
        severity=Severity.CAUTION,
        cases=_wet_lining,
        remedy="more insulation without gaps, more fresh air, heat at night, less vapour",
    ),
    Rule(
        id="living.dry-ribs",
        title="Bare ribs are rarely wet with condensation, by common practice",
        source=limit("living.wet-ribs").source,
        severity=Severity.NOTE,
        cases=_wet_ribs,
        remedy="insulate over the ribs, more fresh air, less vapour",
    ),
    Rule(
        id="living.dry-glass",
        title="Glass is wet with condensation for no more than the nights, by common practice",
        source=limit("living.wet-glass").source,
        severity=Severity.NOTE,
        cases=_wet_glass,
        remedy="double panes, blinds that seal, more fresh air; wipe it in the morning",
    ),
    Rule(
        id="living.inverter-bay-warmth",
        title="The air round the inverter stays within its full rating (from memory)",
        source=limit("living.bay-warmest").source,
        severity=Severity.CAUTION,
        cases=_bay,
        remedy="vent the bay, stand the inverter lower, or choose one that is rated for the heat",
    ),
    Rule(
        id="living.inverter-bay-air",
        title="A cabinet with an inverter in it has the vents that carry its heat away",
        source=limit("living.bay-rise").source,
        severity=Severity.NOTE,
        cases=_bay_vents,
        holds=">=",
        remedy="cut vents low and high into the cabinet, as the maker says",
    ),
)
