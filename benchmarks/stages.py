"""Stages that are measured inside one warm interpreter, on a whole build."""

import statistics
import time
from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from coachwright.actions.opening import open_build
from coachwright.assess import assess
from coachwright.catalogue.loading import Catalogue
from coachwright.drawing.atlas import sheet
from coachwright.drawing.content import Content
from coachwright.drawing.svg import svg_sheet
from coachwright.layout import stage as layout_stage
from coachwright.model.build import Build
from coachwright.papers.view_drawings import content_of

WARM_UP = 3
CALLS = 25


@dataclass(frozen=True, kw_only=True, slots=True)
class Stage:
    """One stage, the build that it works on, and the time that it may take, warm.

    Attributes
    ----------
    given
        Makes of the build what the stage works on; not measured.
    """

    name: str
    build: str
    compute: Callable[[Any], Any]
    budget_ms: float
    given: Callable[[Build], Any] = lambda build: build


def _drawn(view: str) -> Callable[[Content], str]:
    """Return what draws a view from the assessed build to the text of its sheet."""
    return lambda content: svg_sheet(sheet(replace(content), view))


VIEWS = ("plan", "plan@hip", "plan@bed", "left", "right", "section@3000", "rear", "rear-open")
VIEWS_OUTSIDE = ("side", "side@right", "roof", "under", "iso")


STAGES: tuple[Stage, ...] = (
    Stage(name="layout", build="demos/night-watch.toml", compute=layout_stage.stage, budget_ms=25),
    Stage(name="layout", build="demos/four-seats.toml", compute=layout_stage.stage, budget_ms=25),
    *(
        Stage(
            name=f"draw {view}",
            build="demos/night-watch.toml",
            compute=_drawn(view),
            budget_ms=30,
            given=lambda build: content_of(assess(build)),
        )
        for view in (*VIEWS, *VIEWS_OUTSIDE)
    ),
)


def stage_line(stage: Stage, root: Path) -> str:
    """Measure a stage and return its line."""
    build = open_build(root / stage.build, Catalogue()).build
    given = stage.given(build)
    taken_ms = []
    for call in range(WARM_UP + CALLS):
        begun_s = time.perf_counter()
        stage.compute(given)
        if call >= WARM_UP:
            taken_ms.append((time.perf_counter() - begun_s) * 1e3)
    median_ms = statistics.median(taken_ms)
    name = f"{stage.name} of {stage.build}, {len(build.fittings)} fittings"
    span = f"{min(taken_ms):.1f}-{max(taken_ms):.1f} ms"
    share = f"{median_ms / stage.budget_ms:.0%}"
    return f"{name:<58} {median_ms:>6.1f} ms {span:>15} {stage.budget_ms:>5.0f} ms {share:>6}"
