"""Energy through the year: in by source, out by use, fuel, what one change would do."""

from dataclasses import dataclass

from coachwright.assess import Assessment
from coachwright.drawing.month_energy import month_energy
from coachwright.drawing.svg import svg
from coachwright.living.model import Living, SiteYear
from coachwright.model.build import Build
from coachwright.papers.frame import FrameView, frame
from coachwright.papers.season_months import (
    energy_in_table,
    energy_out_table,
    fuel_table,
)
from coachwright.papers.season_words import (
    fuel_unit,
    missing_words,
    poorest,
    promise_words,
    weather_words,
)
from coachwright.papers.table import Pair, Table, figure_pairs
from coachwright.papers.view_climate import PICTURE_MM
from coachwright.papers.wording import ended, show


@dataclass(frozen=True, kw_only=True, slots=True)
class YearBlock:
    """What the paper says of one site."""

    site: str
    title: str
    promise: str
    caution: str
    attribution: str
    drawing: str
    into: Table
    out: Table
    fuel: Table


@dataclass(frozen=True, kw_only=True, slots=True)
class YearView:
    """Everything on the paper."""

    frame: FrameView
    headline: tuple[Pair, ...]
    missing: str
    basis: str
    sites: tuple[YearBlock, ...]
    changes: Table


def year_view(assessment: Assessment) -> YearView:
    """Return the energy through the year of a build."""
    return year_of(assessment.build, assessment.living)


def year_of(build: Build, living: Living) -> YearView:
    """Return the energy through the year that a coupled year makes.

    Parameters
    ----------
    build
        For names and units.
    living
        Of that build.
    """
    return YearView(
        frame=frame(build, title="Energy through the year", cautions=("weather", "electricity")),
        headline=figure_pairs(build, living.figures, "living"),
        missing=missing_words(build, living),
        basis="The typical year at each site under the stay pattern of the brief, in steps of ten "
        "minutes: weather, cabin, appliances and battery together.",
        sites=tuple(_block(build, living, year) for year in living.years),
        changes=_changes(living, build.brief.units),
    )


def _block(build: Build, living: Living, year: SiteYear) -> YearBlock:
    system = build.brief.units
    promise = poorest(year, living.season_months)
    return YearBlock(
        site=year.site,
        title=year.title,
        promise=promise_words(year, promise, system) if promise else "",
        caution=ended(year.caution) if year.caution else "",
        attribution=weather_words(year),
        drawing=svg(month_energy(year.months, system=system, paper_width_mm=PICTURE_MM)),
        into=energy_in_table(year, system),
        out=energy_out_table(year, system),
        fuel=fuel_table(year, system),
    )


def _changes(living: Living, system: str) -> Table:
    unit = fuel_unit(living.years[0]) if living.years else "L"
    return Table(
        heading="What one change would do",
        names=(
            "Change",
            "Nine of ten stays",
            "now",
            "Fuel in the year",
            "now",
            "Comfortable",
            "now",
        ),
        rows=tuple(
            (
                f"{change.name[:1].upper()}{change.name[1:]}",
                show(change.nine_of_ten_d, "d", system),
                show(change.was_nine_of_ten_d, "d", system),
                show(change.fuel_l, unit, system),
                show(change.was_fuel_l, unit, system),
                show(change.comfort_frac, "frac", system),
                show(change.was_comfort_frac, "frac", system),
            )
            for change in living.changes
        ),
        note="Each is the whole year run anew. Days: in the poorest month of the season.",
    )
