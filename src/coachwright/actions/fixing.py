"""Edits that say what a fitting is fixed to, what it is built into, and what carries it."""

from coachwright.actions.following import built_into
from coachwright.actions.placing import Wanted, edits_for, fitted_of, refuse_pinned
from coachwright.model.build import INSIDE, Build, BuildSheet, Fitted, Mounting
from coachwright.store.edits import Edit

MOUNTINGS: dict[str, str] = {str(mounting): str(mounting).capitalize() for mounting in Mounting}
"""What a fitting can be fixed to: as the record has it → for a list to choose from."""
HEIGHTS: dict[Mounting, str] = {
    Mounting.FLOOR: "against floor",
    Mounting.CAB: "against floor",
    Mounting.WALL: "against floor 1200 mm",
    Mounting.CEILING: "against ceiling",
    Mounting.ROOF: "against roof",
    Mounting.UNDERBODY: "against ground 350 mm",
    Mounting.HITCH: "against ground 450 mm",
    Mounting.SIDE: "against floor 400 mm",
    Mounting.REAR_DOOR_LEFT: "against floor 400 mm",
    Mounting.REAR_DOOR_RIGHT: "against floor 400 mm",
    Mounting.WHEELS: "against ground",
}
"""Where something usually stands upwards that is fixed there: a first place, to be changed."""
BEHIND_DOORS = frozenset({Mounting.HITCH, Mounting.REAR_DOOR_LEFT, Mounting.REAR_DOOR_RIGHT})
OUTSIDE_REAR = "against outside rear"


def fix_to(sheet: BuildSheet, build: Build, name: str, mounting: Mounting) -> tuple[Edit, ...]:
    """Return the edits that fix a fitting to something else, and put it where that is.

    What it was built into or stood on is forgotten where it goes out of the living space or in.

    Raises
    ------
    UnknownName
        Where there is no such fitting.
    CannotEdit
        Where it is pinned.
    """
    here = fitted_of(build, name)
    old = here.fitting.mounting
    if old is mounting:
        return ()
    refuse_pinned(build, name)
    wanted: Wanted = {name: {"mounting": str(mounting), 2: HEIGHTS[mounting]}}
    wanted[name] |= _flat(here, mounting)
    if (old in INSIDE) is not (mounting in INSIDE):
        wanted[name] |= {field: "" for field in ("within", "on") if getattr(here.fitting, field)}
    return edits_for(sheet, build, wanted)


def side_word(y_mm: float) -> str:
    """Return the side of the vehicle on which something stands."""
    return "left" if y_mm < 0 else "right"


def carriers(build: Build, name: str) -> dict[str, str]:
    """Return what a fitting can be built into or stand on, by name, for a list to choose from."""
    own = {name, *built_into(build, name)}
    return {
        fitted.name: fitted.name.replace("-", " ")
        for fitted in sorted(build.fittings, key=lambda each: each.name)
        if fitted.name not in own
    }


def build_into(sheet: BuildSheet, build: Build, name: str, carrier: str) -> tuple[Edit, ...]:
    """Return the edits that say what a fitting is built into; nothing with an empty name."""
    return _told(sheet, build, name, "within", carrier)


def stand_on(sheet: BuildSheet, build: Build, name: str, carrier: str) -> tuple[Edit, ...]:
    """Return the edits that say which fitting carries another; none with an empty name."""
    return _told(sheet, build, name, "on", carrier)


def _told(
    sheet: BuildSheet, build: Build, name: str, field: str, carrier: str
) -> tuple[Edit, ...]:
    here = fitted_of(build, name)
    if carrier:
        fitted_of(build, carrier)
    if getattr(here.fitting, field) == carrier:
        return ()
    return edits_for(sheet, build, {name: {field: carrier}})


def _flat(here: Fitted, mounting: Mounting) -> dict[int | str, str]:
    """Return the place along and across for what is fixed there, where it must be another."""
    old = here.fitting.mounting
    side = side_word(here.at_mm[1] + here.part.body.size_mm[1] / 2)
    found: dict[int | str, str] = {}
    if mounting in BEHIND_DOORS:
        found[0] = OUTSIDE_REAR
    elif old in BEHIND_DOORS:
        found[0] = "against rear doors"
    if mounting is Mounting.SIDE:
        found[1] = f"against outside {side}"
    elif mounting is Mounting.WALL or old is Mounting.SIDE:
        found[1] = f"against {side} wall"
    return found
