"""Take a build apart for the layout's subjects and put their results together."""

from collections.abc import Iterator

from coachwright.layout.aisles import aisles, levels
from coachwright.layout.figures import layout_figures
from coachwright.layout.fit import clashes, shell_fit
from coachwright.layout.free_floor import free_floor
from coachwright.layout.model import Layout, ShellFit
from coachwright.layout.sharing import zone_pairs
from coachwright.layout.stage_interior import interior_of
from coachwright.layout.stage_outside import outside_of
from coachwright.layout.standing import Standing, standing
from coachwright.layout.stores import counters, stores
from coachwright.layout.support import NOT_JUDGED, support_of
from coachwright.layout.zones import placed_zones
from coachwright.model.build import Build


def stage(build: Build) -> Layout:
    """Return the layout of a build.

    Parameters
    ----------
    build
        With every fitting placed.
    """
    here = standing(build)
    vehicle, finished, slack_mm = build.vehicle, here.build_up, here.slack_mm
    bodies, heights = here.bodies(), levels()
    zones = placed_zones(here)
    ways = aisles(bodies=bodies, vehicle=vehicle, build_up=finished, levels=heights)
    floor = free_floor(bodies=bodies, vehicle=vehicle, build_up=finished, level=heights[0])
    held, at_work = stores(build), counters(here)
    interior, outside = interior_of(here), outside_of(here)
    solids = tuple(here.solids.values())
    return Layout(
        solids=solids,
        opened=tuple(here.opened.values()),
        arches=here.arches,
        build_up=finished,
        shell_fits=tuple(_shell_fits(here)),
        clashes=clashes(
            bodies=solids, fixed=here.arches, nested=here.kin.nested, slack_mm=slack_mm
        ),
        zones=zones,
        zone_pairs=zone_pairs(zones=zones, kin=here.kin, slack_mm=slack_mm),
        supports=tuple(
            support_of(fitted=f, solids=here.solids, vehicle=vehicle, build_up=finished)
            for f in here.placed
            if f.fitting.mounting not in NOT_JUDGED
        ),
        aisles=ways,
        free_floor=floor,
        stores=held,
        counters=at_work,
        interior=interior,
        outside=outside,
        figures=(
            *layout_figures(aisles=ways, free_floor=floor, stores=held, counters=at_work),
            *interior.figures,
            *outside.figures,
        ),
    )


def _shell_fits(here: Standing) -> Iterator[ShellFit]:
    """Yield how far what stands in the living space is within the shell."""
    for fitted in here.living:
        if fitted.part.opening is None:
            yield shell_fit(
                body=here.solids[fitted.name],
                shell=here.build.vehicle.shell,
                build_up=here.build_up,
            )
