"""The coupled year: one design, a thousand designs on two cores, and a general library's job."""

import statistics
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np
from tests.support.plain_box import BANK, LOAD_W, sunny_box
from tests.support.pysam import charge_frac, pvwatts

from benchmarks.twin.running import side_by_side
from coachwright.actions.opening import open_build
from coachwright.actions.site_shelf import arrays_of_site
from coachwright.assess import assess
from coachwright.catalogue.loading import Catalogue
from coachwright.climate.arrays import SiteArrays
from coachwright.climate.panels import PanelSpec, panel_year
from coachwright.climate.stage import power_w
from coachwright.living.given import Given
from coachwright.living.off_grid import stands
from coachwright.living.simulate import Prepared, prepare, year
from coachwright.living.stage_given import given
from coachwright.living.steps import SiteSteps, site_steps

SITE = "greensboro-nc"
BUILD = "demos/night-watch.toml"
PANELS = PanelSpec(rated_w=400.0, coefficient_frac_per_k=-0.0035, bonded=False, coated=True)
CALLS = 7
DESIGNS, TOLD, CORES = 40, 1000, 2
"""So many are run, and the time of so many is told."""
MOST_OFF = 1e-9
"""Of a month's sums, the kernel's twin in C."""


def living_lines(root: Path) -> Iterator[str]:
    """Yield the lines of the coupled year.

    Parameters
    ----------
    root
        Where the demonstration builds are.
    """
    arrays = arrays_of_site(Catalogue(), SITE, None)
    design = _design(root, arrays)
    site = site_steps(body=design.body, sky=arrays, heading_deg=design.heading_deg)
    ready = prepare(design, arrays, site=site)
    name = f"of {BUILD} at {SITE}"
    once_ms = _median_ms(lambda: year(prepare(design, arrays, site=site)))
    yield _line(f"one design-year {name}", once_ms, 2.0)
    off_grid = year(ready, off_grid=True)
    yield _line(f"365 stands {name}", _median_ms(lambda: stands(off_grid)), None)
    many_ms = _designs_ms(design, arrays, site) * TOLD / DESIGNS
    yield _line(f"{TOLD:,} design-years on {CORES} cores, from {DESIGNS}", many_ms, 1000.0)
    yield _line_beside_c(ready)
    yield _line_beside_pysam(arrays)


def _line_beside_c(ready: Prepared) -> str:
    with TemporaryDirectory() as folder:
        off, here_ms, there_ms = side_by_side(ready, Path(folder), CALLS)
    if off > MOST_OFF:
        raise SystemExit(f"the kernel's twin in C is off by {off:.1e}")
    return (
        f"{'the kernel alone, against the same loop in C -O3':<58} {here_ms:>6.1f} ms "
        f"against {there_ms:.1f} ms of processor: {here_ms / there_ms:.2f} x; budget 1.2 x"
    )


def _design(root: Path, arrays: SiteArrays) -> Given:
    build = open_build(root / BUILD, Catalogue()).build
    found = assess(build)
    made = given(
        build,
        found.electrics,
        found.water,
        arrays.weather,
        sun_w=power_w(build, found.layout, arrays),
    )
    if not isinstance(made, Given):
        raise SystemExit(f"{BUILD} lacks {made.missing}")
    return made


def _designs_ms(design: Given, arrays: SiteArrays, site: SiteSteps) -> float:
    """Return how long designs take that differ in their panels, side by side."""

    def one(number: int) -> None:
        sun_w = design.supply.sun_w * (0.5 + number / DESIGNS)
        other = replace(design, supply=replace(design.supply, sun_w=sun_w))
        year(prepare(other, arrays, site=site))

    begun_s = time.perf_counter()
    with ThreadPoolExecutor(CORES) as pool:
        list(pool.map(one, range(DESIGNS)))
    return (time.perf_counter() - begun_s) * 1e3


def _line_beside_pysam(arrays: SiteArrays) -> str:
    """Measure a year of panels and battery, hour by hour, here and there, turn about."""
    weather, rated_kw = arrays.weather, PANELS.rated_w / 1000.0
    box = sunny_box(np.zeros_like(weather.air_degc))
    site = site_steps(body=box.body, sky=arrays, heading_deg=None)

    def ours() -> None:
        sun_w = panel_year(weather=weather, path=arrays.path, panel=PANELS, loss_frac=0.0).power_w
        year(
            prepare(sunny_box(sun_w), arrays, step_min=60.0, site=site),
            series=True,
            precondition_d=0,
        )

    def theirs() -> None:
        sun_w = pvwatts(weather, rated_kw)["dc"]
        charge_frac(BANK, sun_w - np.tile(LOAD_W, 365))

    taken: dict[str, list[float]] = {"ours": [], "theirs": []}
    for _ in range(CALLS):
        for name, job in (("ours", ours), ("theirs", theirs)):
            job()  # each finds the memory as it left it
            taken[name].append(_worked_ms(job))
    # the quickest of each: the short job suffers more from whatever else the machine does
    here_ms, there_ms = (min(each) for each in taken.values())
    return (
        f"{'panels and battery, a year of hours, against NREL-PySAM':<58} {here_ms:>6.1f} ms "
        f"against {there_ms:.1f} ms of processor: {there_ms / here_ms:.0f} x; budget 20 x"
    )


def _worked_ms(job: Callable[[], object]) -> float:
    begun_s = time.process_time()
    job()
    return (time.process_time() - begun_s) * 1e3


def _median_ms(job: Callable[[], object]) -> float:
    job()
    taken_ms = []
    for _ in range(CALLS):
        begun_s = time.perf_counter()
        job()
        taken_ms.append((time.perf_counter() - begun_s) * 1e3)
    return statistics.median(taken_ms)


def _line(name: str, taken_ms: float, budget_ms: float | None) -> str:
    line = f"{name:<58} {taken_ms:>6.1f} ms"
    if budget_ms is None:
        return line
    return f"{line} {'':>15} {budget_ms:>5.0f} ms {taken_ms / budget_ms:>6.0%}"
