"""Take the panels and what stands around them out of a build, and put them under a site's sun."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.arrays import SiteArrays
from coachwright.climate.model import HOURS, Hours, ObstacleCost, PanelSun, RoofSun
from coachwright.climate.panels import (
    PanelSpec,
    PanelYear,
    flat_loss_frac,
    monthly_wh,
    panel_year,
    sky_hours,
)
from coachwright.climate.shading import Face, Mask, Obstacle, mask
from coachwright.layout.model import Layout
from coachwright.model.build import Build, Fitted
from coachwright.model.placement import placed


@dataclass(frozen=True, kw_only=True, slots=True)
class _Laid:
    """A panel as it lies, and what stands higher than it."""

    fitted: Fitted
    spec: PanelSpec
    face: Face
    around: tuple[Obstacle, ...]


def stage(
    build: Build, layout: Layout, arrays: SiteArrays, heading_deg: float | None = None
) -> RoofSun:
    """Return what the fixed panels of a build give at a site, and what each neighbour costs.

    Parameters
    ----------
    build
        With everything found.
    layout
        Of that build.
    arrays
        Of the site.
    heading_deg
        Where the vehicle heads, clockwise from north; None for the mean of eight headings. [deg]
    """
    laid = tuple(_laid(build, layout))
    costs: dict[str, float] = {}
    panels = []
    worth = _worth(laid, arrays, heading_deg)
    for each in laid:
        made = mask(face=each.face, obstacles=each.around)
        panels.append(_panel(each, made, _year(each, made, arrays, heading_deg)))
        for obstacle in each.around:
            rest = [other for other in each.around if other is not obstacle]
            without = mask(face=each.face, obstacles=rest)
            freed = (made.shaded_frac - without.shaded_frac) * worth[each.spec]
            costs[obstacle.name] = costs.get(obstacle.name, 0.0) + float(freed.sum())
    weather = arrays.weather
    return RoofSun(
        site=weather.title,
        origin=weather.origin,
        heading_deg=heading_deg,
        panels=tuple(panels),
        obstacles=tuple(
            ObstacleCost(name=name, lost_wh=lost)
            for name, lost in sorted(costs.items(), key=lambda cost: (-cost[1], cost[0]))
        ),
        attribution=weather.attribution,
        caution=weather.caution,
    )


def power_w(
    build: Build, layout: Layout, arrays: SiteArrays, heading_deg: float | None = None
) -> Hours:
    """Return what all fixed panels give together in each hour, before their controllers [W].

    Parameters
    ----------
    build
        With everything found.
    layout
        Of that build.
    arrays
        Of the site.
    heading_deg
        Where the vehicle heads, clockwise from north; None for the mean of eight headings. [deg]
    """
    together = np.zeros(HOURS)
    for each in _laid(build, layout):
        made = mask(face=each.face, obstacles=each.around)
        together += _year(each, made, arrays, heading_deg).power_w
    return together


def _worth(
    laid: Iterable[_Laid], arrays: SiteArrays, heading_deg: float | None
) -> dict[PanelSpec, NDArray[np.float64]]:
    """Return what each part of the sky gives in a year to each kind of panel [Wh]."""
    return {
        spec: spec.rated_w
        * sky_hours(
            weather=arrays.weather,
            path=arrays.path,
            panel=spec,
            loss_frac=flat_loss_frac(),
            heading_deg=heading_deg,
        ).cells_h.sum(axis=0)
        for spec in {each.spec for each in laid}
    }


def _laid(build: Build, layout: Layout) -> Iterator[_Laid]:
    on_roof = {each.name for each in layout.outside.panels}
    for fitted in build.having("solar_panel"):
        panel = fitted.part.solar_panel
        if panel is None or fitted.name not in on_roof:
            continue
        where = placed(fitted)
        yield _Laid(
            fitted=fitted,
            spec=PanelSpec(
                rated_w=panel.rated_w,
                coefficient_frac_per_k=panel.power_coefficient_frac_per_k,
                bonded=panel.bonded,
            ),
            face=Face(low_mm=where.low_mm[:2], high_mm=where.high_mm[:2], z_mm=where.high_mm[2]),
            around=tuple(
                Obstacle(name=each.name, low_mm=each.space.low_mm, high_mm=each.space.high_mm)
                for each in layout.outside.higher
                if each.panel == fitted.name
            ),
        )


def _year(laid: _Laid, made: Mask, arrays: SiteArrays, heading_deg: float | None) -> PanelYear:
    return panel_year(
        weather=arrays.weather,
        path=arrays.path,
        panel=laid.spec,
        loss_frac=flat_loss_frac(),
        made=made,
        heading_deg=heading_deg,
    )


def _panel(laid: _Laid, made: Mask, year: PanelYear) -> PanelSun:
    return PanelSun(
        name=laid.fitted.name,
        year_wh=float(year.power_w.sum()),
        least_wh=float(year.least_w.sum()),
        free_wh=float(year.free_w.sum()),
        month_wh=tuple(float(each) for each in monthly_wh(power_w=year.power_w)),
        sky_frac=made.sky_frac,
    )
