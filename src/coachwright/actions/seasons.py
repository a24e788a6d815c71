"""Look into a build's year: any week of it, and what a change would make of it."""

import threading
from collections import OrderedDict
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

from coachwright.actions.site_shelf import arrays_of_site
from coachwright.assess import Assessment
from coachwright.catalogue.loading import Catalogue
from coachwright.climate.arrays import SiteArrays
from coachwright.climate.stage import power_w
from coachwright.drawing.calendar import date_words
from coachwright.drawing.day_picture import day_picture
from coachwright.drawing.svg import svg
from coachwright.living.given import Given
from coachwright.living.model import Picture
from coachwright.living.pictures import picture
from coachwright.living.simulate import Run, prepare, year
from coachwright.living.stage_given import given
from coachwright.living.steps import SiteSteps, site_steps
from coachwright.living.stretch import stretch
from coachwright.living.trials import Trial, Tried, tried, tried_given
from coachwright.units import shown

WEEK_D = 7
LAST_DAY = 365 - WEEK_D
"""Last day of the year, from 0, on which a week can begin."""
_MOST_SITES = 8
_MOST_GROUNDS = 4
_WIDE_MM = 174.0


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Grounds:
    """A build at a site, ready to be looked into.

    Attributes
    ----------
    built
        What trials start from.
    run
        The typical year, step by step.
    as_built
        What the year comes to without any change.
    """

    arrays: SiteArrays
    given: Given
    site: SiteSteps
    built: Trial
    run: Run
    as_built: Tried
    water_d: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class Dial:
    """Something that can be turned in a trial, in even steps.

    Attributes
    ----------
    name
        Field of `Trial`.
    low, high
        Ends, in `unit`.
    steps
        Between the ends.
    at
        Where it stands for the build as it is.
    """

    name: str
    label: str
    unit: str
    low: float
    high: float
    steps: int
    at: int


_kept: OrderedDict[tuple[str, str], Grounds] = OrderedDict()
_lock = threading.Lock()


def built_trial(assessment: Assessment) -> Trial:
    """Return what a build has of everything that can be tried."""
    electrics = assessment.electrics
    return Trial(
        panels_w=sum(array.rated_w for array in electrics.arrays),
        bank_ah=electrics.bank.capacity_ah if electrics.bank else 0.0,
        insulation_mm=0.0,
        heat_degc=assessment.build.brief.habits.day_degc,
        shade_frac=0.0,
    )


def dials(assessment: Assessment) -> tuple[Dial, ...]:
    """Return what can be turned for a build, standing where the build is.

    Panels go from none to twice as many, the bank from half to two and a half times; a build
    without them has no such dial.
    """
    built = built_trial(assessment)
    panels, bank, warm = built.panels_w, built.bank_ah, built.heat_degc
    every = (
        _dial("panels_w", "Solar panels", 20, 10, low=0.0, high=2.0 * panels, unit="W"),
        _dial("bank_ah", "House battery", 20, 5, low=0.5 * bank, high=2.5 * bank, unit="Ah"),
        _dial("insulation_mm", "More insulation", 12, 0, low=0.0, high=60.0, unit="mm"),
        _dial("heat_degc", "Heated to by day", 28, 16, low=warm - 8, high=warm + 6, unit="degC"),
        _dial("shade_frac", "Sun taken by trees", 18, 0, low=0.0, high=0.9, unit="frac"),
    )
    return tuple(each for each in every if each.high > each.low)


def _dial(name: str, label: str, steps: int, at: int, **ends: Any) -> Dial:
    return Dial(name=name, label=label, steps=steps, at=at, **ends)


def all_words(dial: Dial, system: str) -> tuple[str, ...]:
    """Return what a dial says at each of its places."""
    return tuple(
        shown(dial.low + (dial.high - dial.low) * at / dial.steps, dial.unit, system)
        for at in range(dial.steps + 1)
    )


def grounds(assessment: Assessment, site_id: str, catalogue: Catalogue) -> Grounds:
    """Return a build at a site, ready to be looked into; the last few are kept.

    Parameters
    ----------
    assessment
        Of the build.
    site_id
        One of its sites.
    catalogue
        Where sites are found.
    """
    key = (assessment.build.digest, site_id)
    with _lock:
        if key not in _kept:
            _kept[key] = _grounds(assessment, site_id, catalogue)
            while len(_kept) > _MOST_GROUNDS:
                _kept.popitem(last=False)
        _kept.move_to_end(key)
        return _kept[key]


@lru_cache(maxsize=_MOST_SITES)
def _arrays(catalogue: Catalogue, site_id: str) -> SiteArrays:
    return arrays_of_site(catalogue, site_id, None)


def _grounds(assessment: Assessment, site_id: str, catalogue: Catalogue) -> Grounds:
    arrays = _arrays(catalogue, site_id)
    made = given(
        assessment.build,
        assessment.electrics,
        assessment.water,
        arrays.weather,
        sun_w=power_w(assessment.build, assessment.layout, arrays),
    )
    site = site_steps(body=made.body, sky=arrays, heading_deg=made.heading_deg)
    water_d = assessment.water.stores.days_d
    return Grounds(
        arrays=arrays,
        given=made,
        site=site,
        built=built_trial(assessment),
        run=year(prepare(made, arrays, site=site), series=True),
        as_built=tried(given=made, sky=arrays, site=site, water_d=water_d),
        water_d=water_d,
    )


def week(ground: Grounds, day: int) -> Picture:
    """Return the week of the typical year that begins on a day, from 0."""
    run = stretch(ground.run, from_day=min(day, LAST_DAY), days=WEEK_D)
    return picture(run=run, title="A week of the typical year")


def week_drawing(ground: Grounds, day: int, system: str) -> str:
    """Return the picture of a week as SVG."""
    scene = day_picture(week(ground, day), system=system, paper_width_mm=_WIDE_MM)
    return svg(scene)


def week_words(day: int) -> str:
    """Return which week begins on a day of the year, from 0.

    Examples
    --------
    >>> week_words(14)
    '15 Jan to 21 Jan'
    """
    return f"{date_words(day)} to {date_words(day + WEEK_D - 1)}"


def every_week() -> tuple[str, ...]:
    """Return every week of the year in words, by the day on which it begins."""
    return tuple(week_words(day) for day in range(LAST_DAY + 1))


def week_beside(day: int, *, forwards: bool) -> int:
    """Return the day on which the week after begins, or the one before, within the year."""
    return max(0, min(LAST_DAY, day + WEEK_D if forwards else day - WEEK_D))


def try_out(ground: Grounds, shown_dials: tuple[Dial, ...], turned: Mapping[str, int]) -> Tried:
    """Return what a year comes to with the dials turned.

    Parameters
    ----------
    ground
        The build at a site.
    shown_dials
        Of the build.
    turned
        Where dials stand, by name; those left out stand where the build is.
    """
    values = {
        dial.name: dial.low + (dial.high - dial.low) * turned[dial.name] / dial.steps
        for dial in shown_dials
        if dial.name in turned and turned[dial.name] != dial.at
    }
    changed = tried_given(
        given=ground.given, built=ground.built, trial=replace(ground.built, **values)
    )
    return tried(given=changed, sky=ground.arrays, site=ground.site, water_d=ground.water_d)
