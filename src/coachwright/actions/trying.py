"""What a trial came to, in words and as a picture, beside the build as it is."""

from collections.abc import Mapping
from dataclasses import dataclass

from coachwright.actions.seasons import Dial, Grounds, try_out
from coachwright.drawing.month_stands import month_stands
from coachwright.drawing.svg import svg
from coachwright.living.model import Living, SiteYear, Stands
from coachwright.living.trials import Tried
from coachwright.model.build import Build
from coachwright.papers.season_words import days_words, fuel_unit, month_word
from coachwright.papers.table import Table
from coachwright.papers.wording import show

_WIDE_MM = 174.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Answer:
    """What a page shows of a trial.

    Attributes
    ----------
    said
        In one sentence, for those who listen.
    drawing
        Days that stands last, as SVG.
    """

    said: str
    table: Table
    drawing: str


def answer(
    *,
    build: Build,
    living: Living,
    year: SiteYear,
    ground: Grounds,
    shown_dials: tuple[Dial, ...],
    turned: Mapping[str, int],
    system: str,
) -> Answer:
    """Run the year with the dials turned, and tell what it came to.

    Parameters
    ----------
    build, living, year
        As they are.
    ground
        The build at the site of `year`.
    shown_dials, turned
        Of the build, and where they stand.
    system
        ``"metric"`` or ``"us"``.
    """
    found = try_out(ground, shown_dials, turned)
    return Answer(
        said=_said(found, living.season_months, system),
        table=_table(found, ground.as_built, living.season_months, year, system),
        drawing=svg(
            month_stands(
                found.stands,
                wanted_d=build.brief.independence_wanted_d,
                travelled=living.season_months,
                system=system,
                paper_width_mm=_WIDE_MM,
            )
        ),
    )


def _poorest(found: Tried, season: tuple[int, ...]) -> Stands:
    inside = [each for each in found.stands if each.month in season]
    return min(inside or found.stands, key=lambda each: (each.p10_d, each.p50_d))


def _said(found: Tried, season: tuple[int, ...], system: str) -> str:
    poorest = _poorest(found, season)
    month = "" if poorest.month is None else f"{month_word(poorest.month)} "
    return (
        f"Five of ten {month}stays would last at least "
        f"{days_words(poorest.p50_d, poorest, system)}; nine of ten at least "
        f"{days_words(poorest.p10_d, poorest, system)}."
    )


def _table(
    found: Tried, was: Tried, season: tuple[int, ...], year: SiteYear, system: str
) -> Table:
    new, old = _poorest(found, season), _poorest(was, season)
    unit = fuel_unit(year)
    return Table(
        heading="Tried, and as the build is",
        names=("", "Tried", "As the build is"),
        rows=(
            (
                "Nine of ten stays, poorest month",
                days_words(new.p10_d, new, system),
                days_words(old.p10_d, old, system),
            ),
            (
                "Five of ten stays, poorest month",
                days_words(new.p50_d, new, system),
                days_words(old.p50_d, old, system),
            ),
            (
                "Comfortable, of the occupied hours",
                show(found.comfort_frac, "frac", system),
                show(was.comfort_frac, "frac", system),
            ),
            (
                "Fuel for heating in the year",
                show(found.fuel_l, unit, system),
                show(was.fuel_l, unit, system),
            ),
            (
                "Wanted and not given in the year",
                show(found.unmet_wh, "Wh/month", system),
                show(was.unmet_wh, "Wh/month", system),
            ),
        ),
        note="Each is the whole year run anew. The controllers stay as they are; insulation is "
        "added wherever the skin is covered, the steel ribs go through it; what is tried is not "
        "kept in the build.",
    )
