"""What an edit costs the coupled year: the living stage anew, or nothing at all."""

import statistics
import time
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

from coachwright.actions.opening import open_build
from coachwright.actions.site_shelf import arrays_of_site
from coachwright.actions.year_shelf import almanac_of
from coachwright.assess import Stages, assess
from coachwright.catalogue.loading import Catalogue
from coachwright.climate.arrays import SiteArrays
from coachwright.model.build import Build

BUILD = "demos/night-watch.toml"
CUPBOARD = "overhead-left"
CALLS = 5
BUDGET_MS = 40.0


def edit_lines(root: Path) -> Iterator[str]:
    """Yield what a warmer set point costs, and what a cupboard moved by 10 mm does.

    Parameters
    ----------
    root
        Where the demonstration builds are.
    """
    build = open_build(root / BUILD, Catalogue()).build
    began: list[str] = []

    @cache
    def arrays_of(site_id: str) -> SiteArrays:
        return arrays_of_site(Catalogue(), site_id, None)

    almanac = replace(
        almanac_of(Catalogue(), None, began=lambda: began.append("a year")), arrays_of=arrays_of
    )
    stages = Stages()
    assess(build, stages, almanac)
    taken_ms = []
    for number in range(CALLS):
        warmer = _warmer(build, 0.1 * (number + 1))
        begun_s = time.perf_counter()
        assess(warmer, stages, almanac)
        with_years_ms = (time.perf_counter() - begun_s) * 1e3
        begun_s = time.perf_counter()
        assess(_warmer(build, 0.01 * (number + 1)), stages)
        taken_ms.append(with_years_ms - (time.perf_counter() - begun_s) * 1e3)
    median_ms = statistics.median(taken_ms)
    name = f"living stage on an edit of {BUILD}, {len(build.sites)} sites"
    yield (
        f"{name:<58} {median_ms:>6.1f} ms {'':>15} {BUDGET_MS:>5.0f} ms "
        f"{median_ms / BUDGET_MS:>6.0%}"
    )
    assess(build, stages, almanac)
    began.clear()
    assess(_moved(build), stages, almanac)
    yield f"{f'years run anew where {CUPBOARD} moves by 10 mm':<58} {len(began):>6}; budget 0"


def _warmer(build: Build, by_k: float) -> Build:
    """Return the build with a day that is wanted warmer."""
    habits = build.brief.habits
    warmer = habits.model_copy(update={"day_degc": habits.day_degc + by_k})
    return build.model_copy(update={"brief": build.brief.model_copy(update={"habits": warmer})})


def _moved(build: Build) -> Build:
    """Return the build with a cupboard moved towards the rear."""
    fittings = tuple(
        fitted.model_copy(update={"at_mm": (fitted.at_mm[0] + 10.0, *fitted.at_mm[1:])})
        if fitted.name == CUPBOARD
        else fitted
        for fitted in build.fittings
    )
    return build.model_copy(update={"fittings": fittings})
