"""Take the roof of a build apart."""

from collections.abc import Iterator

from coachwright.layout.model_outside import Deck, HigherNeighbour, PanelFit, RoofPlace
from coachwright.layout.outside_groups import Groups
from coachwright.layout.plane import ABOVE, largest_square_mm, seen
from coachwright.layout.roof_plan import higher_neighbours, panel_fit, roof_outline, roof_place
from coachwright.model.build import Fitted, Mounting


def on_roof(groups: Groups) -> tuple[Fitted, ...]:
    """Return what is on the roof."""
    return groups.at(Mounting.ROOF)


def roof_places(groups: Groups) -> Iterator[RoofPlace]:
    """Yield how far each fitting stands over the edge of the roof, or of its rack.

    Awnings hang over the edge by their nature and are left out.
    """
    outline = roof_outline(groups.build.vehicle.roof)
    for fitted in on_roof(groups):
        if fitted.part.awning is not None:
            continue
        body = groups.solids[fitted.name]
        carrier = groups.build.fitted(fitted.fitting.on) if fitted.fitting.on else None
        if carrier is not None and carrier.part.roof_rack is not None:
            rack = seen(groups.solids[carrier.name].bounds, ABOVE)
            yield roof_place(body=body, carrier=carrier.name, outline=rack)
        else:
            yield roof_place(body=body, carrier="roof", outline=outline)


def decks(groups: Groups) -> Iterator[Deck]:
    """Yield the racks that may be stood on, with the largest free square on each."""
    for fitted in on_roof(groups):
        rack = fitted.part.roof_rack
        if rack is None or rack.standing_limit_kg is None:
            continue
        deck = groups.solids[fitted.name]
        taken = [
            seen(part, ABOVE)
            for other in groups.bodies(on_roof(groups))
            if other.name != deck.name and other.bounds.high_mm[2] > deck.bounds.high_mm[2]
            for part in other.boxes
        ]
        yield Deck(name=fitted.name, side_mm=largest_square_mm(seen(deck.bounds, ABOVE), taken))


def panels(groups: Groups) -> Iterator[PanelFit]:
    """Yield how each fixed panel lies on the roof."""
    outside = groups.build.vehicle.outside
    for fitted in _fixed_panels(groups):
        panel = fitted.part.solar_panel
        yield panel_fit(
            body=groups.solids[fitted.name],
            on=fitted.fitting.on,
            bonded=panel is not None and panel.bonded,
            roof=groups.build.vehicle.roof,
            roof_mm=outside.height_mm - outside.floor_height_mm,
        )


def higher(groups: Groups) -> Iterator[HigherNeighbour]:
    """Yield what stands higher than each fixed panel."""
    bodies = groups.bodies(on_roof(groups))
    for fitted in _fixed_panels(groups):
        yield from higher_neighbours(panel=groups.solids[fitted.name], bodies=bodies)


def _fixed_panels(groups: Groups) -> Iterator[Fitted]:
    for fitted in on_roof(groups):
        if fitted.part.solar_panel is not None and not fitted.part.solar_panel.folding:
            yield fitted
