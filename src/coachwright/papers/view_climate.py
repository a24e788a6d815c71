"""The climate sheet: how long, how warm, how cool, how dry, in which month."""

from dataclasses import dataclass, replace

from coachwright.assess import Assessment
from coachwright.drawing.day_picture import day_picture
from coachwright.drawing.month_air import month_air
from coachwright.drawing.month_stands import month_stands
from coachwright.drawing.svg import svg
from coachwright.living.model import Envelope, Living, Picture, SiteYear
from coachwright.model.build import Build
from coachwright.model.working import Working
from coachwright.papers.frame import FrameView, SourceLine, frame, source_lines
from coachwright.papers.season_months import air_table, damp_table, stands_table
from coachwright.papers.season_parts import (
    bay_pairs,
    cold_pairs,
    drying_pairs,
    hot_pairs,
    supply_pairs,
)
from coachwright.papers.season_words import (
    fuel_unit,
    headed,
    missing_words,
    poorest,
    promise_words,
    weather_words,
)
from coachwright.papers.table import Pair, Table
from coachwright.papers.wording import (
    NONE,
    SourceNumbers,
    digits,
    ended,
    show,
    span,
    words_of,
)
from coachwright.units import told

PICTURE_MM = 174.0
HOT_ROOM = (
    f"The room can grow warmer than {told(60.0, 'degC')}. Heat of that kind is dangerous to "
    "children, to animals and to anybody whose heart or circulation is not sound; whoever stays "
    "in it does so at their own and their doctor's judgement, never alone, never locked in. Cloth "
    "near a hot outlet can catch fire: keep the distance that the heater's maker asks for, and "
    "stay in reach."
)
"""Told wherever the drying room can grow hot; the figure is that of the living model."""


@dataclass(frozen=True, kw_only=True, slots=True)
class ClimateBlock:
    """What the sheet says of one site."""

    site: str
    title: str
    promise: str
    promise_note: str
    caution: str
    attribution: str
    stands_drawing: str
    stands: Table
    air_drawing: str
    air: Table
    damp: Table
    cold: tuple[Pair, ...]
    cold_sources: str
    cold_drawing: str
    hot: tuple[Pair, ...]
    hot_sources: str
    hot_drawing: str
    drying: tuple[Pair, ...]
    drying_caution: str
    bay: tuple[Pair, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class ClimateView:
    """Everything on the climate sheet."""

    frame: FrameView
    missing: str
    basis: str
    sites: tuple[ClimateBlock, ...]
    body_heading: str
    body_intro: str
    envelope: Table
    envelope_pairs: tuple[Pair, ...]
    grades: Table
    fresh_air: tuple[Pair, ...]
    sources: tuple[SourceLine, ...]


def climate_view(assessment: Assessment) -> ClimateView:
    """Return the climate sheet of a build."""
    return climate_of(assessment.build, assessment.living)


def climate_of(build: Build, living: Living) -> ClimateView:
    """Return the climate sheet that a coupled year makes.

    Parameters
    ----------
    build
        For names, units and what the brief wants.
    living
        Of that build.
    """
    system = build.brief.units
    numbers = SourceNumbers()
    return ClimateView(
        frame=frame(
            build, title="Climate sheet", cautions=("weather", "warmth", "electricity", "gas")
        ),
        missing=missing_words(build, living),
        basis="A stand begins at midnight of each day of the year with a full battery and goes on "
        "without driving and hook-up until the battery reaches its reserve. What is told of a "
        "month follows the stay pattern of the brief.",
        sites=tuple(_block(build, living, year, numbers) for year in living.years),
        body_heading="The body",
        body_intro="What the vehicle loses, wherever it stands, and what the heater makes of it.",
        envelope=_envelope(living.envelope, system),
        envelope_pairs=_envelope_pairs(living.envelope, system, numbers),
        grades=_grades(living, system, numbers),
        fresh_air=_fresh_air(living, system, numbers),
        sources=source_lines(numbers),
    )


def _block(build: Build, living: Living, year: SiteYear, numbers: SourceNumbers) -> ClimateBlock:
    system = build.brief.units
    promise = poorest(year, living.season_months)
    cold, hot, drying = year.cold_night, year.hot_day, year.drying
    return ClimateBlock(
        site=year.site,
        title=year.title,
        promise=promise_words(year, promise, system) if promise else "",
        promise_note=_promise_note(living, year, system),
        caution=ended(year.caution) if year.caution else "",
        attribution=weather_words(year),
        stands_drawing=_stands_drawing(build, living, year),
        stands=stands_table(year, system),
        air_drawing=_air_drawing(build, year),
        air=air_table(year, system),
        damp=damp_table(build, year),
        cold=cold_pairs(cold, fuel_unit(year), system) if cold else (),
        cold_sources=_from(cold.working, numbers) if cold else "",
        cold_drawing=_day(cold.picture, system) if cold else "",
        hot=_hot(year, system),
        hot_sources=_from(hot.working, numbers) if hot else "",
        hot_drawing=_day(hot.picture, system) if hot else "",
        drying=drying_pairs(build, drying) if drying else (),
        drying_caution=HOT_ROOM if drying and drying.hot else "",
        bay=bay_pairs(build, year.bay) if year.bay else (),
    )


def _hot(year: SiteYear, system: str) -> tuple[Pair, ...]:
    if year.hot_day is None:
        return ()
    supplied = supply_pairs(year.supply, system) if year.supply else ()
    return (*hot_pairs(year.hot_day, system), *supplied)


def _from(working: Working, numbers: SourceNumbers) -> str:
    return numbers.of_all(working.references)


def _promise_note(living: Living, year: SiteYear, system: str) -> str:
    whole = promise_words(year, year.whole_year, system)
    if len(living.season_months) == len(year.stands):
        return f"That is the poorest month. Over the whole year: {_small_first(whole)}"
    return (
        f"That is the poorest of the months of travel. Over the whole year: {_small_first(whole)}"
    )


def _small_first(text: str) -> str:
    return f"{text[:1].lower()}{text[1:]}"


def _stands_drawing(build: Build, living: Living, year: SiteYear) -> str:
    scene = month_stands(
        year.stands,
        wanted_d=build.brief.independence_wanted_d,
        travelled=living.season_months,
        system=build.brief.units,
        paper_width_mm=PICTURE_MM,
    )
    return svg(scene)


def _air_drawing(build: Build, year: SiteYear) -> str:
    habits = build.brief.habits
    scene = month_air(
        year.months,
        coldest_degc=min(habits.day_degc, habits.night_degc),
        warmest_degc=habits.most_degc,
        system=build.brief.units,
        paper_width_mm=PICTURE_MM,
    )
    return svg(scene)


def _day(picture: Picture, system: str) -> str:
    return svg(day_picture(_known(picture), system=system, paper_width_mm=PICTURE_MM))


def _known(picture: Picture) -> Picture:
    """Return a picture without its bank where that was not followed: its charge never moves."""
    if len(set(picture.charge_frac)) > 1:
        return picture
    nodes = {name: values for name, values in picture.nodes_degc.items() if name != "bank"}
    return replace(picture, charge_frac=(), nodes_degc=nodes)


def _envelope(envelope: Envelope | None, system: str) -> Table:
    losses = envelope.losses if envelope else ()
    return Table(
        heading="Where the heat goes",
        names=(
            "Surface",
            headed("Area", "m2", system),
            headed("Loss", "W/K", system),
            headed("From", "W/K", system),
            headed("To", "W/K", system),
            headed("Share", "frac", system),
        ),
        rows=tuple(
            (
                words_of(loss.name).capitalize(),
                digits(loss.area_m2, "m2", system) if loss.area_m2 else NONE,
                digits(loss.ua_w_per_k, "W/K", system),
                digits(loss.low_w_per_k, "W/K", system),
                digits(loss.high_w_per_k, "W/K", system),
                digits(loss.share_frac, "frac", system),
            )
            for loss in losses
        ),
        note="Heat lost for each kelvin between cabin and outside. From and to: the range that "
        "the steel ribs cause, which no drawing of the lining shows.",
    )


def _envelope_pairs(
    envelope: Envelope | None, system: str, numbers: SourceNumbers
) -> tuple[Pair, ...]:
    if envelope is None:
        return ()
    return (
        Pair(
            label="Heat lost for each kelvin",
            value=show(envelope.ua_w_per_k, "W/K", system),
            note=f"{span(envelope.ua_low_w_per_k, envelope.ua_high_w_per_k, 'W/K', system)} with "
            f"the ribs' range {_from(envelope.working, numbers)}".rstrip(),
        ),
        Pair(
            label="Mean of all surfaces",
            value=show(envelope.mean_u_w_per_m2k, "W/m2/K", system),
            note=span(
                envelope.mean_u_low_w_per_m2k, envelope.mean_u_high_w_per_m2k, "W/m2/K", system
            ),
        ),
        Pair(label="Of that through leaks", value=show(envelope.leak_w_per_k, "W/K", system)),
        Pair(
            label="Heat stored for each kelvin", value=show(envelope.heat_wh_per_k, "Wh/K", system)
        ),
    )


def _grades(living: Living, system: str, numbers: SourceNumbers) -> Table:
    return Table(
        heading="Heating grades, heater at full, nobody inside",
        names=("Grade", "Outside", "Reached inside", "With most loss", "Heating up", "Source"),
        rows=tuple(
            (
                f"{grade.grade}, wanted" if grade.wanted else str(grade.grade),
                show(grade.outside_degc, "degC", system),
                show(grade.reached_degc, "degC", system),
                show(grade.reached_low_degc, "degC", system),
                NONE if grade.heat_up_h is None else show(grade.heat_up_h, "h", system),
                _from(grade.working, numbers),
            )
            for grade in living.grades
        ),
    )


def _fresh_air(living: Living, system: str, numbers: SourceNumbers) -> tuple[Pair, ...]:
    air = living.fresh_air
    if air is None:
        return ()
    return (
        Pair(
            label="Fresh air with windows and hatches shut",
            value=show(air.open_m3_per_h, "m3/h", system),
            note=f"{air.people_count} people",
        ),
        Pair(
            label="Fresh air asked for",
            value=show(air.needed_m3_per_h, "m3/h", system),
            note=_from(air.working, numbers),
        ),
    )
