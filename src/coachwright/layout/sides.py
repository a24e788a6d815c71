"""The sides: what gets in the way of a sliding door."""

from coachwright.layout.model_outside import BesideDoor
from coachwright.layout.plane import BESIDE, Rectangle, seen, shift_mm
from coachwright.layout.solids import Solid
from coachwright.model.vehicle import Aperture


def beside_door(
    *, body: Solid, door: Aperture, half_width_mm: float, leaf_mm: float, opens: bool
) -> BesideDoor:
    """Return whether a fitting on the side is in the way of a sliding door.

    Parameters
    ----------
    body
        In the vehicle's axes.
    door
        On the same side.
    half_width_mm
        Of the vehicle. [mm]
    leaf_mm
        By which the door itself is larger than its clear opening, on every side. [mm]
    opens
        It is a window that swings out.

    Notes
    -----
    The door slides rearwards by its own width: its path reaches from its front edge to its rear
    edge when open, over its height.  Overlap: the smallest shift that takes the fitting out of
    that path.  A window that lies within the doorway sits in the door itself and moves with it.
    """
    width_mm = door.clear_width_mm + 2 * leaf_mm
    front_mm = door.from_mm - leaf_mm
    path = Rectangle(
        low_mm=(front_mm, door.sill_mm - leaf_mm),
        high_mm=(front_mm + 2 * width_mm, door.sill_mm + door.clear_height_mm + leaf_mm),
    )
    view = seen(body.bounds, BESIDE)
    low_mm, high_mm = body.bounds.low_mm[1], body.bounds.high_mm[1]
    outer_mm = high_mm if door.wall == "right" else -low_mm
    doorway_mm = (door.from_mm, door.from_mm + door.clear_width_mm)
    in_door = opens and doorway_mm[0] <= view.low_mm[0] and view.high_mm[0] <= doorway_mm[1]
    return BesideDoor(
        name=body.name,
        door=door.name,
        thickness_mm=outer_mm - half_width_mm,
        opens=opens,
        overlap_mm=0.0 if in_door else shift_mm(view, path),
    )
