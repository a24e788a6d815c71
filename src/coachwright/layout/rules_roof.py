"""Rules of the roof, seen from above."""

from collections.abc import Iterator

from coachwright.layout.model import Layout
from coachwright.layout.model_outside import PanelFit, RoofPlace
from coachwright.model.build import Build
from coachwright.model.finding import Case, Rule, Severity, Source
from coachwright.reference import limit
from coachwright.units import told

_GEOMETRY = Source(key="build-geometry")


def _within_roof(_build: Build, layout: Layout) -> Iterator[Case]:
    for place in layout.outside.roof:
        if place.carrier == "roof":
            yield _outline(place)


def _within_rack(_build: Build, layout: Layout) -> Iterator[Case]:
    for place in layout.outside.roof:
        if place.carrier != "roof":
            yield _outline(place)


def _outline(place: RoofPlace) -> Case:
    where = "over" if place.overhang_mm > 0 else "from"
    edge = f"the {place.side} edge of the {place.carrier}"
    return Case(
        subject=place.name,
        value=max(0.0, place.overhang_mm),
        limit=limit("layout.judged-to").value,
        unit="mm",
        detail=f"{told(abs(place.overhang_mm), 'mm')} {where} {edge}",
    )


def _covers(_build: Build, layout: Layout) -> Iterator[Case]:
    allowed_mm = limit("layout.judged-to").value
    over = [cover for cover in layout.outside.covers if cover.overlap_mm > allowed_mm]
    for cover in over:
        yield Case(
            subject=f"{cover.upper} over {cover.lower}",
            value=cover.overlap_mm,
            limit=allowed_mm,
            unit="mm",
            detail=f"{cover.lower} is free when one of them moves by as much",
        )
    if layout.outside.covers and not over:
        yield Case(subject="roof", value=0.0, limit=allowed_mm, unit="mm")


def _clearance(_build: Build, layout: Layout) -> Iterator[Case]:
    for gap in layout.outside.gaps:
        yield Case(
            subject=gap.name,
            value=gap.gap_mm,
            limit=limit("layout.roof-clearance").value,
            unit="mm",
            detail=f"to {gap.neighbour}",
        )


def _standing(_build: Build, layout: Layout) -> Iterator[Case]:
    for deck in layout.outside.decks:
        yield Case(
            subject=deck.name,
            value=deck.side_mm,
            limit=limit("layout.deck-standing").value,
            unit="mm",
            detail="side of the largest free square on it",
        )


def _no_crown(build: Build) -> str:
    return "" if build.vehicle.roof.crown_mm > 0 else "how much the vehicle's roof is crowned"


def _edge_gap(build: Build, layout: Layout) -> Iterator[Case]:
    for panel in _on_roof_itself(layout, bonded=False):
        yield Case(
            subject=panel.name,
            value=panel.edge_gap_mm,
            limit=limit("layout.panel-edge-gap").value,
            unit="mm",
            missing=_no_crown(build),
            detail=f"the roof falls {told(panel.bow_mm, 'mm')} under the panel",
        )


def _bend(build: Build, layout: Layout) -> Iterator[Case]:
    for panel in _on_roof_itself(layout, bonded=True):
        yield Case(
            subject=panel.name,
            value=panel.bow_share_frac,
            limit=limit("layout.panel-bend").value,
            unit="frac",
            missing=_no_crown(build),
            detail=f"the roof falls {told(panel.bow_mm, 'mm')} under the panel",
        )


def _on_roof_itself(layout: Layout, *, bonded: bool) -> Iterator[PanelFit]:
    for panel in layout.outside.panels:
        if panel.bonded is bonded and not panel.on:
            yield panel


def _panel_edge(_build: Build, layout: Layout) -> Iterator[Case]:
    for panel in layout.outside.panels:
        yield Case(
            subject=panel.name,
            value=panel.edge_mm,
            limit=limit("layout.panel-edge").value,
            unit="mm",
        )


ROOF_RULES: tuple[Rule, ...] = (
    Rule(
        id="layout.roof-outline",
        title="What is on the roof stays within the part of it that can carry something",
        source=Source(key="vehicle-maker-data", clause="roof"),
        severity=Severity.CAUTION,
        cases=_within_roof,
        remedy="move it inwards, turn it or choose a smaller one",
    ),
    Rule(
        id="layout.roof-rack-outline",
        title="What is on a rack stays within the rack",
        source=_GEOMETRY,
        severity=Severity.CAUTION,
        cases=_within_rack,
        remedy="move it inwards or choose a longer rack",
    ),
    Rule(
        id="layout.roof-cover",
        title="Nothing on the roof lies over something else that it does not carry",
        source=_GEOMETRY,
        severity=Severity.CAUTION,
        cases=_covers,
        remedy="move one of them: a covered fan, hatch, antenna or panel does not do its work",
    ),
    Rule(
        id="layout.roof-clearance",
        title="Neighbours on the roof leave room to seal and to clean",
        source=limit("layout.roof-clearance").source,
        severity=Severity.NOTE,
        cases=_clearance,
        holds=">=",
        remedy="move them apart",
    ),
    Rule(
        id="layout.deck-standing",
        title="A deck to stand on has a free place to stand",
        source=limit("layout.deck-standing").source,
        severity=Severity.CAUTION,
        cases=_standing,
        holds=">=",
        remedy="leave a part of the deck free",
    ),
    Rule(
        id="layout.panel-edge-gap",
        title="The roof's curve leaves no more under a rigid panel's edge than brackets bridge",
        source=limit("layout.panel-edge-gap").source,
        severity=Severity.CAUTION,
        cases=_edge_gap,
        remedy="turn the panel lengthwise, move it to the middle, or put it on rails",
    ),
    Rule(
        id="layout.panel-bend",
        title="A glued panel bends no more than flexible panels take",
        source=limit("layout.panel-bend").source,
        severity=Severity.CAUTION,
        cases=_bend,
        remedy="turn the panel lengthwise, or look up how far its maker lets it bend",
    ),
    Rule(
        id="layout.panel-edge",
        title="A panel keeps away from the edge of the roof",
        source=limit("layout.panel-edge").source,
        severity=Severity.NOTE,
        cases=_panel_edge,
        holds=">=",
        remedy="move it inwards, or fit a wind fairing",
    ),
)
