"""Stages that are measured inside one warm interpreter, on a whole build."""

import statistics
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from coachwright.actions.opening import open_build
from coachwright.catalogue.loading import Catalogue
from coachwright.layout import stage as layout_stage
from coachwright.model.build import Build

WARM_UP = 3
CALLS = 25


@dataclass(frozen=True, kw_only=True, slots=True)
class Stage:
    """One stage, the build that it works on, and the time that it may take, warm."""

    name: str
    build: str
    compute: Callable[[Build], Any]
    budget_ms: float


STAGES: tuple[Stage, ...] = (
    Stage(name="layout", build="demos/night-watch.toml", compute=layout_stage.stage, budget_ms=25),
    Stage(name="layout", build="demos/four-seats.toml", compute=layout_stage.stage, budget_ms=25),
)


def stage_line(stage: Stage, root: Path) -> str:
    """Measure a stage and return its line."""
    build = open_build(root / stage.build, Catalogue()).build
    taken_ms = []
    for call in range(WARM_UP + CALLS):
        begun_s = time.perf_counter()
        stage.compute(build)
        if call >= WARM_UP:
            taken_ms.append((time.perf_counter() - begun_s) * 1e3)
    median_ms = statistics.median(taken_ms)
    name = f"{stage.name} of {stage.build}, {len(build.fittings)} fittings"
    span = f"{min(taken_ms):.1f}-{max(taken_ms):.1f} ms"
    share = f"{median_ms / stage.budget_ms:.0%}"
    return f"{name:<52} {median_ms:>6.1f} ms {span:>15} {stage.budget_ms:>5.0f} ms {share:>6}"
