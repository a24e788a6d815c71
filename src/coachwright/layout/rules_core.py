"""Rules of what stands where: shell, shared space, support and ways."""

from collections.abc import Callable, Iterator

from coachwright.layout.model import Aisle, Clash, Layout, Support
from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source
from coachwright.model.placement import Point
from coachwright.reference import limit
from coachwright.units import told

_GEOMETRY = Source(key="build-geometry")
_DIRECTIONS = (("forwards", "rearwards"), ("left", "right"), ("down", "up"))
_EUROPE = (Jurisdiction.EU, Jurisdiction.UK)


def _inside_shell(_build: Build, layout: Layout) -> Iterator[Case]:
    allowed_mm = limit("layout.judged-to").value
    for fit in layout.shell_fits:
        out = fit.spare_mm < 0
        yield Case(
            subject=fit.name,
            value=max(0.0, -fit.spare_mm),
            limit=allowed_mm,
            unit="mm",
            detail=f"{'through' if out else f'{_mm(fit.spare_mm)} from'} the {fit.face} "
            f"at {_at(fit.corner_mm)}",
        )


def _one_place(build: Build, layout: Layout) -> Iterator[Case]:
    allowed_mm = limit("layout.judged-to").value
    arches = {arch.name for arch in layout.arches}
    found = [clash for clash in layout.clashes if clash.other not in arches]
    for clash in found:
        yield _clash_case(clash, f"{clash.one} and {clash.other}", allowed_mm)
    if not found and len(build.fittings) > 1:
        yield Case(subject="fittings", value=0, limit=allowed_mm, unit="mm")


def _wheel_arches(_build: Build, layout: Layout) -> Iterator[Case]:
    allowed_mm = limit("layout.judged-to").value
    arches = {arch.name for arch in layout.arches}
    found = [clash for clash in layout.clashes if clash.other in arches]
    for clash in found:
        yield _clash_case(clash, clash.one, allowed_mm)
    if arches and not found and layout.shell_fits:
        yield Case(subject="wheel arches", value=0, limit=allowed_mm, unit="mm")


def _clash_case(clash: Clash, subject: str, allowed_mm: float) -> Case:
    shared = clash.overlap
    way = _DIRECTIONS[shared.axis][shared.sign_factor > 0]
    return Case(
        subject=subject,
        value=shared.shift_mm,
        limit=allowed_mm,
        unit="mm",
        detail=f"{clash.one} and {clash.other} share {told(shared.volume_l, 'L')} from "
        f"{_at(shared.where.low_mm)}; {clash.one} is free of it {_mm(shared.shift_mm)} "
        f"further {way}",
    )


def _supported(_build: Build, layout: Layout) -> Iterator[Case]:
    yield from _held([s for s in layout.supports if not s.outside], "layout.gap")


def _carried_outside(_build: Build, layout: Layout) -> Iterator[Case]:
    yield from _held([s for s in layout.supports if s.outside], "layout.bracket-reach")


def _held(supports: list[Support], limit_id: str) -> Iterator[Case]:
    for support in supports:
        yield Case(
            subject=support.name,
            value=support.gap_mm,
            limit=limit(limit_id).value,
            unit="mm",
            missing=support.missing,
            detail=f"from the {support.carrier}",
        )


def _ways(limit_id: str, *, worst_only: bool) -> Callable[[Build, Layout], Iterator[Case]]:
    """Return the cases of a width that each way must have.

    Furniture closes a way to the rear on purpose, such as a bed from wall to wall; where people
    cannot pass it at any one height it is no way, and says so.
    """

    def cases(_build: Build, layout: Layout) -> Iterator[Case]:
        needed_mm = limit(limit_id).value
        for way in dict.fromkeys(aisle.way for aisle in layout.aisles):
            levels = [aisle for aisle in layout.aisles if aisle.way == way]
            narrowest = min(levels, key=lambda aisle: aisle.passage.width_mm)
            closed = _closed(narrowest)
            whole = worst_only or bool(closed)
            for aisle in [narrowest] if whole else levels:
                yield Case(
                    subject=way if whole else f"{way}, {aisle.level}",
                    value=aisle.passage.width_mm,
                    limit=needed_mm,
                    unit="mm",
                    detail=_narrow(aisle),
                    not_applicable=closed,
                )

    return cases


def _closed(narrowest: Aisle) -> str:
    """Return why a way is none, where it leads to the rear and people cannot pass."""
    if not narrowest.rear or narrowest.passage.width_mm >= limit("layout.way-difficult").value:
        return ""
    return f"no way for people: {_narrow(narrowest)}"


def _narrow(aisle: Aisle) -> str:
    one, other = aisle.passage.between
    x_mm, y_mm = aisle.passage.from_mm
    return (
        f"{_mm(aisle.passage.width_mm)} between {one} and {other} at {aisle.level} height, "
        f"x {_mm(x_mm)}, y {_mm(y_mm)}"
    )


def _at(point: Point) -> str:
    return ", ".join(f"{axis} {_mm(place)}" for axis, place in zip("xyz", point, strict=True))


def _mm(length_mm: float) -> str:
    return told(length_mm, "mm")


CORE_RULES: tuple[Rule, ...] = (
    Rule(
        id="layout.inside-shell",
        title="A fitting stands within the finished shell",
        source=_GEOMETRY,
        severity=Severity.STOP,
        cases=_inside_shell,
        remedy="move it inwards, make it smaller at that height, or take a thinner lining",
    ),
    Rule(
        id="layout.one-place",
        title="No two fittings stand in one place",
        source=_GEOMETRY,
        severity=Severity.STOP,
        cases=_one_place,
        remedy="move or shorten one of them, or say that one is built into the other",
    ),
    Rule(
        id="layout.wheel-arches",
        title="Nothing stands in a wheel arch",
        source=_GEOMETRY,
        severity=Severity.STOP,
        cases=_wheel_arches,
        remedy="move it, or give it a step over the arch",
    ),
    Rule(
        id="layout.supported",
        title="What stands inside touches what holds it",
        source=_GEOMETRY,
        severity=Severity.STOP,
        cases=_supported,
        remedy="move it to its floor, wall, ceiling or carrier, or name another carrier",
    ),
    Rule(
        id="layout.carried-outside",
        title="What hangs outside is within reach of what holds it, by common practice",
        source=limit("layout.bracket-reach").source,
        severity=Severity.CAUTION,
        cases=_carried_outside,
        remedy="move it to its carrier, or enter the bracket or rack as a fitting",
    ),
    Rule(
        id="layout.way-passable",
        title="People can pass each way through the living space",
        source=limit("layout.way-difficult").source,
        severity=Severity.CAUTION,
        cases=_ways("layout.way-difficult", worst_only=False),
        holds=">=",
        remedy="move or shorten one of the two fittings that form the narrow place",
    ),
    Rule(
        id="layout.way-reasonable",
        title="Each way through the living space is reasonably wide",
        source=limit("layout.way-reasonable").source,
        severity=Severity.NOTE,
        cases=_ways("layout.way-reasonable", worst_only=False),
        holds=">=",
        remedy="move or shorten one of the two fittings that form the narrow place",
    ),
    Rule(
        id="layout.escape-aisle",
        title="The way out is wide enough to escape, by a public article on the standard",
        source=limit("layout.escape-width").source,
        severity=Severity.CAUTION,
        cases=_ways("layout.escape-width", worst_only=True),
        holds=">=",
        remedy="widen the aisle, or ask whoever inspects the vehicle which ways count",
        jurisdictions=_EUROPE,
    ),
)
