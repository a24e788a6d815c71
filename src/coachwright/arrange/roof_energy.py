"""Panels for a roof by what they give at a site, under the shade of what stands around them."""

from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass, replace
from functools import cache
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from coachwright.arrange.model import PanelPlace, RoofEnergy, RoofPlan
from coachwright.arrange.roof import ValueOf, propose_roof
from coachwright.arrange.roof_field import RoofField, RoofWish, roof_field
from coachwright.arrange.solving import Better, Search
from coachwright.climate.arrays import SiteArrays
from coachwright.climate.model import PanelSun, RoofSun
from coachwright.climate.panels import PanelSpec, flat_loss_frac, sky_hours
from coachwright.climate.roof_loss import Loss, Patch, loss, reaches
from coachwright.climate.shading import Obstacle
from coachwright.climate.stage import stage as climate_stage
from coachwright.layout.solids import solid_of
from coachwright.layout.stage import stage as layout_stage
from coachwright.model.build import Build, Mounting
from coachwright.model.part import Part
from coachwright.model.site import MONTHS
from coachwright.units import told

By = Literal["year", "month"]
STEP_WH = 10.0
"""The search counts energy in whole steps of this."""
_SAID_FRAC = 0.01
"""Shade of panels on panels is told from this share of the energy on."""


@dataclass(frozen=True, kw_only=True, slots=True)
class RoofSite:
    """Where the vehicle stands, and what counts there.

    Attributes
    ----------
    by
        The whole year, or the month in which a flat panel gives least.
    heading_deg
        Where the vehicle heads, clockwise from north; None for the mean of eight headings.
    """

    arrays: SiteArrays
    by: By = "year"
    heading_deg: float | None = None


def propose_roof_at(
    build: Build,
    wish: RoofWish,
    search: Search,
    *,
    site: RoofSite,
    on_better: Better | None = None,
    on_obstacle: Callable[[str], None] = lambda _name: None,
) -> RoofPlan:
    """Return the panels that give the most energy at a site, and what each obstacle costs.

    Parameters
    ----------
    build
        As it is; its panels on the roof are exchanged.
    wish
        Panels to choose from.
    search
        Limits of each single search.
    site
        Where it stands, and what counts.
    on_better
        Told of each better result of the first search.
    on_obstacle
        Told which obstacle is left out next.

    Raises
    ------
    CallError
        Where there is no panel to choose from.

    Notes
    -----
    A panel counts rating · (Σ W − mean of the field of losses over its area), W being what each
    part of the sky is worth to a panel of its kind, in whole steps of 10 Wh.  Panels are taken
    not to shade each other; the proposal is judged with that shade, too, and where it takes a
    hundredth or more a note says so.
    """
    month = _poorest_month(wish, site) if site.by == "month" else None
    value_without = _value_without(build, roof_field(build, wish), site, month)
    plan = propose_roof(
        build,
        wish,
        search,
        value_of=value_without(frozenset()),
        value_without=value_without,
        on_better=on_better,
        on_obstacle=on_obstacle,
    )
    return _told(plan, build, site, month)


def _spec(part: Part) -> PanelSpec:
    panel = part.solar_panel
    return PanelSpec(
        rated_w=1.0,
        coefficient_frac_per_k=0.0 if panel is None else panel.power_coefficient_frac_per_k,
        bonded=panel is not None and panel.bonded,
    )


def _rated_w(part: Part) -> float:
    return 0.0 if part.solar_panel is None else part.solar_panel.rated_w


def _poorest_month(wish: RoofWish, site: RoofSite) -> int | None:
    """Return the month, from 0, in which a free panel of the first kind gives least."""
    if not wish.panels:
        return None
    weather, path = site.arrays.weather, site.arrays.path
    worth = sky_hours(
        weather=weather, path=path, panel=_spec(wish.panels[0]), loss_frac=flat_loss_frac()
    )
    return int(worth.cells_h.sum(axis=(1, 2)).argmin())


def _value_without(
    build: Build, roof: RoofField, site: RoofSite, month: int | None
) -> Callable[[frozenset[str]], ValueOf]:
    """Return what tells a panel's energy where some obstacles are left out."""
    patch, standing = _patch(build), _standing(build, roof.replaced)
    around = reaches(patch=patch, obstacles=standing)

    @cache
    def cells_of(spec: PanelSpec) -> tuple[float, NDArray[np.float64]]:
        made = sky_hours(
            weather=site.arrays.weather,
            path=site.arrays.path,
            panel=spec,
            loss_frac=flat_loss_frac(),
            heading_deg=site.heading_deg,
        ).cells_h
        cells = made.sum(axis=0) if month is None else made[month]
        return float(cells.sum()), cells

    @cache
    def lost(out: frozenset[str], spec: PanelSpec, face_mm: float) -> Loss:
        return loss(
            patch=patch,
            around={name: each for name, each in around.items() if name not in out},
            cells_h=cells_of(spec)[1],
            face_mm=face_mm,
        )

    def without(out: frozenset[str]) -> ValueOf:
        def value(part: Part, place: PanelPlace) -> int:
            spec = _spec(part)
            lost_h = lost(out, spec, place.face_mm).mean_h(place.low_mm, place.high_mm)
            return round(_rated_w(part) * (cells_of(spec)[0] - lost_h) / STEP_WH)

        return value

    return without


def _patch(build: Build) -> Patch:
    roof = build.vehicle.roof
    return Patch(
        low_mm=(roof.x_from_mm, -roof.half_width_mm), high_mm=(roof.x_to_mm, roof.half_width_mm)
    )


def _standing(build: Build, replaced: Collection[str]) -> tuple[Obstacle, ...]:
    """Return what stays on the roof, as boxes."""
    return tuple(
        Obstacle(name=fitted.name, low_mm=bounds.low_mm, high_mm=bounds.high_mm)
        for fitted in build.fittings
        if fitted.fitting.mounting is Mounting.ROOF and fitted.name not in replaced
        for bounds in (solid_of(fitted).bounds,)
    )


def _told(plan: RoofPlan, build: Build, site: RoofSite, month: int | None) -> RoofPlan:
    """Return the proposal with its energy, judged with the shade of panels on panels, too."""
    new = _roof_sun(plan.build, site)
    now = _roof_sun(build, site)
    months = tuple(sum(each.month_wh[at] for each in new.panels) for at in range(12))
    names = {panel.name for panel in plan.panels}
    energy = RoofEnergy(
        site=new.site,
        by=site.by,
        month="" if month is None else MONTHS[month],
        counted_wh=sum(panel.value for panel in plan.panels) * STEP_WH,
        year_wh=sum(each.year_wh for each in new.panels),
        month_wh=months,
        free_wh=sum(each.free_wh for each in new.panels),
        present_wh=sum(each.year_wh for each in now.panels),
        attribution=new.attribution,
        caution=new.caution,
    )
    judged_wh = sum(_counted_wh(each, month) for each in new.panels if each.name in names)
    return replace(
        plan,
        energy=energy,
        obstacles=tuple(
            replace(cost, cost_wh=cost.cost_value * STEP_WH) for cost in plan.obstacles
        ),
        notes=(*plan.notes, *energy_notes(energy, judged_wh=judged_wh, month=month)),
    )


def _roof_sun(build: Build, site: RoofSite) -> RoofSun:
    return climate_stage(build, layout_stage(build), site.arrays, site.heading_deg)


def _counted_wh(panel: PanelSun, month: int | None) -> float:
    return panel.year_wh if month is None else panel.month_wh[month]


def energy_notes(energy: RoofEnergy, *, judged_wh: float, month: int | None) -> Iterator[str]:
    """Yield where the energy that was counted and the one that was judged part.

    Parameters
    ----------
    energy
        Of the proposal.
    judged_wh
        What the search counted, with finer rays and the shade of panels on panels. [Wh]
    month
        Which it counted, from 0; None for the year.
    """
    if abs(energy.counted_wh - judged_wh) >= _SAID_FRAC * energy.counted_wh > 0.0:
        yield (
            f"the search counted {told(energy.counted_wh, 'Wh/year')}, the check with the shade "
            f"of panels on panels {told(judged_wh, 'Wh/year')}"
        )
    poorest = min(range(12), key=lambda at: energy.month_wh[at])
    if month is not None and poorest != month and max(energy.month_wh) > 0.0:
        yield (
            f"the search counted {MONTHS[month]}; with its shade the poorest month is "
            f"{MONTHS[poorest]}"
        )
