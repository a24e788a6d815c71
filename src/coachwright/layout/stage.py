"""Take a build apart for the layout's subjects and put their results together."""

from coachwright import reference
from coachwright.layout.aisles import Level, aisles
from coachwright.layout.figures import layout_figures
from coachwright.layout.fit import arch_solids, clashes, shell_fit
from coachwright.layout.model import Layout
from coachwright.layout.solids import solid_of
from coachwright.layout.support import support_of
from coachwright.layout.zones import placed_zones
from coachwright.model.build import INSIDE, Build, Mounting
from coachwright.model.shell import BuildUp, Layer, build_up


def stage(build: Build) -> Layout:
    """Return the layout of a build.

    Parameters
    ----------
    build
        With every fitting placed.
    """
    finished = finished_shell(build)
    solids = {fitted.name: solid_of(fitted) for fitted in build.fittings}
    arches = arch_solids(build.vehicle.shell)
    inside = [fitted for fitted in build.fittings if fitted.fitting.mounting in INSIDE]
    living = [f for f in inside if f.fitting.mounting is not Mounting.CAB]
    found_aisles = aisles(
        bodies=[*(solids[f.name] for f in living), *arches],
        vehicle=build.vehicle,
        build_up=finished,
        levels=_levels(),
    )
    return Layout(
        solids=tuple(solids.values()),
        arches=arches,
        build_up=finished,
        shell_fits=tuple(
            shell_fit(body=solids[f.name], shell=build.vehicle.shell, build_up=finished)
            for f in living
        ),
        clashes=clashes(bodies=tuple(solids.values()), fixed=arches, nested=_nested(build)),
        zones=placed_zones(
            build=build, solids=tuple(solids.values()), fixed=arches, build_up=finished
        ),
        supports=tuple(
            support_of(fitted=f, solids=solids, vehicle=build.vehicle, build_up=finished)
            for f in build.fittings
        ),
        aisles=found_aisles,
        figures=layout_figures(aisles=found_aisles),
    )


def finished_shell(build: Build) -> BuildUp:
    """Return what the finishes of a build take of the shell."""
    layers = []
    for layer in build.finishes:
        facet = layer.part.insulation or layer.part.lining
        if facet is not None:
            layers.append(
                Layer(
                    surface=layer.finish.surface,
                    thickness_mm=layer.finish.thickness_mm or facet.thickness_mm,
                    fills_ribs=layer.part.insulation is not None,
                )
            )
    return build_up(layers, build.vehicle.shell.rib_depth_mm)


def _levels() -> tuple[Level, ...]:
    return tuple(
        Level(name=row["level"], from_mm=float(row["from_mm"]), to_mm=float(row["to_mm"]))
        for row in reference.table("layout_levels")
    )


def _nested(build: Build) -> frozenset[frozenset[str]]:
    """Return the pairs that may share space: a fitting and what it is built into."""
    carriers = {fitted.name: fitted.fitting.within for fitted in build.fittings}
    pairs = set()
    for name, carrier in carriers.items():
        here = carrier
        while here and frozenset((name, here)) not in pairs:
            pairs.add(frozenset((name, here)))
            here = carriers.get(here, "")
    return frozenset(pairs)
