"""The first year of a new site: weather, sun, shade on a roof, kept on the disk."""

import statistics
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from coachwright.actions.opening import open_build
from coachwright.actions.site_shelf import arrays_of_site
from coachwright.catalogue.loading import Catalogue
from coachwright.climate.stage import stage
from coachwright.climate.sun import sun_path
from coachwright.layout.stage import stage as layout_stage

SITES = ("greensboro-nc", "miami-fl", "denver-us")
"""A year of each kind of file, and a synthetic one."""
BUILD = "demos/night-watch.toml"
CALLS = 9
BUDGET_MS = 150.0


def climate_lines(root: Path) -> Iterator[str]:
    """Yield a line for each site: wall clock, and processor time beside it.

    Parameters
    ----------
    root
        Where the demonstration builds are.
    """
    build = open_build(root / BUILD, Catalogue()).build
    layout = layout_stage(build)
    for site in SITES:
        taken_ms, worked_ms = [], []
        for call in range(CALLS + 1):
            sun_path.cache_clear()  # a site that nobody has asked for yet
            with tempfile.TemporaryDirectory() as folder:
                begun_s, worked_s = time.perf_counter(), time.process_time()
                arrays = arrays_of_site(Catalogue(), site, Path(folder))
                stage(build, layout, arrays)
                if call:  # the first loads libraries
                    taken_ms.append((time.perf_counter() - begun_s) * 1e3)
                    worked_ms.append((time.process_time() - worked_s) * 1e3)
        median_ms = statistics.median(taken_ms)
        name = f"first year of {site}, roof of {BUILD}"
        span = f"{min(taken_ms):.1f}-{max(taken_ms):.1f} ms"
        yield (
            f"{name:<58} {median_ms:>6.1f} ms {span:>15} {BUDGET_MS:>5.0f} ms "
            f"{median_ms / BUDGET_MS:>6.0%}  processor {statistics.median(worked_ms):.1f} ms"
        )
