"""Rules of the rear: doors, what must stay visible, and what hangs behind."""

from collections.abc import Callable, Iterator

from coachwright import reference
from coachwright.layout.model import Layout
from coachwright.layout.model_outside import CoveredZone, DoorSwing
from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source
from coachwright.reference import limit
from coachwright.units import told

Cases = Callable[[Build, Layout], Iterator[Case]]
_GEOMETRY = Source(key="build-geometry")
_ALWAYS = ("lamp", "plate")
"""What every vehicle has at its rear."""
_TILTS = "how far the carrier tilts away"


def _outline(_build: Build, layout: Layout) -> Iterator[Case]:
    for place in layout.outside.door_places:
        over = {
            "the hinge line": place.beyond_hinge_mm,
            "the top": place.above_mm if place.above_mm is not None else 0.0,
            "the bottom": place.below_mm,
        }
        worst = max(over, key=lambda edge: over[edge])
        known = over[worst] > limit("layout.judged-to").value or place.above_mm is not None
        yield Case(
            subject=place.name,
            value=max(0.0, over[worst]),
            limit=limit("layout.judged-to").value,
            unit="mm",
            missing="" if known else "the top of the vehicle's rear doors",
            detail=f"nearest to {worst} of the {place.door}",
        )


def _middle(_build: Build, layout: Layout) -> Iterator[Case]:
    for place in layout.outside.door_places:
        yield Case(
            subject=place.name,
            value=max(0.0, place.beyond_middle_mm),
            limit=limit("layout.judged-to").value,
            unit="mm",
            detail=f"from the {place.door} over the other door",
        )


def _hidden(kind: str, limit_id: str) -> Cases:
    def cases(_build: Build, layout: Layout) -> Iterator[Case]:
        zones = [zone for zone in layout.outside.covered if zone.kind == kind]
        allowed_frac = limit(limit_id).value
        for zone in zones:
            yield _hidden_case(zone, allowed_frac)
        everywhere = kind in _ALWAYS or not layout.outside.covered
        if layout.outside.hung and not zones and everywhere:
            yield Case(
                subject="rear end",
                value=None,
                limit=allowed_frac,
                unit="frac",
                missing=f"where the vehicle has its {kind}",
            )

    return cases


def _hidden_case(zone: CoveredZone, allowed_frac: float) -> Case:
    names = ", ".join(zone.covered_by) or "free"
    return Case(
        subject=zone.zone,
        value=0.0 if zone.repeated else zone.covered_frac,
        limit=allowed_frac,
        unit="frac",
        detail=f"behind {names}, which repeats it"
        if zone.repeated
        else f"{names}; seen from straight behind, not from its sides",
    )


def _opens(_build: Build, layout: Layout) -> Iterator[Case]:
    needed_deg = limit("layout.door-opens").value
    for swing in layout.outside.swings:
        yield Case(
            subject=swing.door,
            value=swing.open_deg,
            limit=min(needed_deg, swing.full_deg),
            unit="deg",
            missing=_TILTS if swing.tilts and swing.open_deg < needed_deg else "",
            detail=_meeting(swing),
        )


def _opens_fully(_build: Build, layout: Layout) -> Iterator[Case]:
    for swing in layout.outside.swings:
        yield Case(
            subject=swing.door,
            value=swing.open_deg,
            limit=swing.full_deg,
            unit="deg",
            missing=_TILTS if swing.tilts else "",
            detail=_meeting(swing),
        )


def _meeting(swing: DoorSwing) -> str:
    return f"{swing.moving} comes up against {swing.hits}" if swing.hits else ""


def _hitch_gap(_build: Build, layout: Layout) -> Iterator[Case]:
    for item in layout.outside.hung:
        if item.gap_mm is not None:
            yield Case(
                subject=item.name,
                value=item.gap_mm,
                limit=item.needed_gap_mm,
                unit="mm",
                missing=_TILTS if item.tilts else "",
                detail="free depth behind the closed doors; it would add "
                f"{told(item.on_door_mm, 'mm')} of length on a door and "
                f"{told(item.on_hitch_mm, 'mm')} on the hitch clear of bare doors",
            )


def _kerb(_build: Build, layout: Layout) -> Iterator[Case]:
    for item in layout.outside.hung:
        yield Case(
            subject=item.name,
            value=item.lowest_mm,
            limit=limit("layout.kerb").value,
            unit="mm",
            detail="its lowest edge above the ground, unladen",
        )


def _parking(_build: Build, layout: Layout) -> Iterator[Case]:
    for item in layout.outside.hung:
        for row in reference.table("layout_parking"):
            yield Case(
                subject=item.name,
                value=item.lowest_mm,
                limit=float(row["height_mm"]),
                unit="mm",
                detail=f"over {row['title']}; where it does not pass over, parking needs "
                f"{told(item.added_length_mm, 'mm')} more",
            )


def _visible(
    rule_id: str,
    kind: str,
    severity: Severity,
    title: str,
    *,
    remedy: str,
    where: tuple[Jurisdiction, ...] = tuple(Jurisdiction),
) -> Rule:
    """Return the rule that something at the rear is not hidden; its limit has the rule's id."""
    return Rule(
        id=rule_id,
        title=title,
        source=limit(rule_id).source,
        severity=severity,
        cases=_hidden(kind, rule_id),
        remedy=remedy,
        jurisdictions=where,
    )


_REPEAT = "move it, or carry lamps of the same kind on the carrier"
_VISIBLE = (
    _visible(
        "layout.covered-lamp-eu",
        "lamp",
        Severity.STOP,
        "What hangs behind hides no lamp that it does not repeat (Germany)",
        remedy=_REPEAT,
        where=(Jurisdiction.EU,),
    ),
    _visible(
        "layout.covered-lamp-uk",
        "lamp",
        Severity.STOP,
        "What hangs behind obscures no rear lamp",
        remedy=_REPEAT,
        where=(Jurisdiction.UK,),
    ),
    _visible(
        "layout.covered-lamp-us",
        "lamp",
        Severity.STOP,
        "What the shop fits behind hides no lamp that it does not repeat",
        remedy=_REPEAT,
        where=(Jurisdiction.US,),
    ),
    _visible(
        "layout.covered-plate-eu",
        "plate",
        Severity.STOP,
        "What hangs behind hides no part of the plate, or repeats it (Germany)",
        remedy="move it, or repeat the plate with its lamp on the carrier",
        where=(Jurisdiction.EU,),
    ),
    _visible(
        "layout.covered-plate",
        "plate",
        Severity.CAUTION,
        "What hangs behind hides no part of the plate",
        remedy="move it, or move the plate where the law of the place lets it be",
        where=(Jurisdiction.UK, Jurisdiction.US),
    ),
    _visible(
        "layout.covered-camera",
        "camera",
        Severity.CAUTION,
        "What hangs behind hides no camera",
        remedy="move it, or move the camera to its outside",
    ),
    _visible(
        "layout.covered-handle",
        "handle",
        Severity.CAUTION,
        "What hangs behind leaves the door handle free",
        remedy="move it, or fit a handle beside it",
    ),
    _visible(
        "layout.covered-window",
        "window",
        Severity.NOTE,
        "What hangs behind leaves half of each rear window free",
        remedy="fit a reversing camera",
    ),
)

REAR_RULES: tuple[Rule, ...] = (
    Rule(
        id="layout.rear-door-outline",
        title="What hangs on a rear door stays between its hinge line, top and bottom",
        source=_GEOMETRY,
        severity=Severity.CAUTION,
        cases=_outline,
        remedy="move it towards the middle of the door or choose a smaller one",
    ),
    Rule(
        id="layout.rear-door-middle",
        title="What hangs on a rear door does not cross to the other door",
        source=_GEOMETRY,
        severity=Severity.CAUTION,
        cases=_middle,
        remedy="move it towards the hinges: neither door opens by itself now",
    ),
    *_VISIBLE,
    Rule(
        id="layout.rear-door-opens",
        title="A rear door opens to a right angle with everything in place",
        source=limit("layout.door-opens").source,
        severity=Severity.CAUTION,
        cases=_opens,
        holds=">=",
        remedy="move what it comes up against, or carry it where it swings or tilts away",
    ),
    Rule(
        id="layout.rear-door-opens-fully",
        title="A rear door opens as far as it does bare",
        source=_GEOMETRY,
        severity=Severity.NOTE,
        cases=_opens_fully,
        holds=">=",
        remedy="move it away from the hinges, choose a flatter one, or fit a door stay",
    ),
    Rule(
        id="layout.hitch-gap",
        title="What hangs on the hitch leaves the rear doors room to open to a right angle",
        source=_GEOMETRY,
        severity=Severity.NOTE,
        cases=_hitch_gap,
        holds=">=",
        remedy="use a longer or swinging arm, or hang it on a door",
    ),
    Rule(
        id="layout.hangs-above-kerb",
        title="What hangs behind passes over a kerb",
        source=limit("layout.kerb").source,
        severity=Severity.CAUTION,
        cases=_kerb,
        holds=">=",
        remedy="hang it higher",
    ),
    Rule(
        id="layout.hangs-over-parking",
        title="What hangs behind passes over what stands behind when parking",
        source=Source(key="shop-practice-layout", status=limit("layout.kerb").source.status),
        severity=Severity.NOTE,
        cases=_parking,
        holds=">=",
        remedy="hang it higher, or tell the customer how much longer the vehicle has become",
    ),
)
