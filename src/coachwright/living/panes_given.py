"""From openings and the cab's glass to panes."""

from collections.abc import Iterator
from dataclasses import dataclass

from coachwright.living.assumed import assumed
from coachwright.living.windows import Shade, best_shade
from coachwright.model.build import Build, Fitted, Mounting
from coachwright.model.facets import Opening
from coachwright.model.placement import placed

MM2_PER_M2 = 1e6
FRONT_DEG, RIGHT_DEG, REAR_DEG, LEFT_DEG = 0.0, 90.0, 180.0, 270.0
ROOF_DEG, WALL_DEG = 0.0, 90.0
_REAR = (Mounting.REAR_DOOR_LEFT, Mounting.REAR_DOOR_RIGHT)
_NOT_SAID = "single acrylic"


@dataclass(frozen=True, kw_only=True, slots=True)
class Pane:
    """A pane where it stands.

    Attributes
    ----------
    kind
        A row of the table of glazing.
    place
        ``"left"``, ``"right"``, ``"left door"``, ``"right door"``, ``"rear"``, ``"roof"``,
        ``"cab"``.
    face_m2, clear_m2
        Cut out of the shell, and that light comes through.
    opens_m2
        That air comes through when it is open.
    """

    name: str
    kind: str
    place: str
    face_m2: float
    clear_m2: float
    opens_m2: float
    tilt_deg: float
    bearing_deg: float
    shade: Shade
    room: str = "cabin"


def panes(build: Build) -> tuple[Pane, ...]:
    """Return the panes of the living space and of the cab.

    Vents and flaps are no panes.  A window in a door counts with the door.
    """
    return (*_openings(build), *_cab(build))


def _openings(build: Build) -> Iterator[Pane]:
    for fitted in build.having("opening"):
        opening = fitted.part.opening
        if opening is None or opening.kind not in ("window", "hatch"):
            continue
        place, tilt, bearing = _place(build, fitted)
        if not place:
            continue
        clear = opening.clear_width_mm * opening.clear_height_mm / MM2_PER_M2
        yield Pane(
            name=fitted.name,
            kind=opening.pane or _NOT_SAID,
            place=place,
            face_m2=max(_face_m2(fitted), clear),
            clear_m2=clear,
            opens_m2=clear if opening.opens else 0.0,
            tilt_deg=tilt,
            bearing_deg=bearing,
            shade=_shade(build, opening),
        )


def _place(build: Build, fitted: Fitted) -> tuple[str, float, float]:
    """Return where an opening stands, its tilt and where it looks; "" where it is no pane."""
    mounting = fitted.fitting.mounting
    if mounting in (Mounting.ROOF, Mounting.CEILING):
        return "roof", ROOF_DEG, 0.0
    if mounting in _REAR:
        return "rear", WALL_DEG, REAR_DEG
    if mounting not in (Mounting.WALL, Mounting.SIDE):
        return "", 0.0, 0.0
    x_mm, y_mm, _ = placed(fitted).centre_mm
    wall, bearing = ("left", LEFT_DEG) if y_mm < 0.0 else ("right", RIGHT_DEG)
    for each in build.vehicle.apertures:
        if each.wall == wall and each.from_mm <= x_mm <= each.from_mm + each.clear_width_mm:
            return f"{wall} door", WALL_DEG, bearing
    return wall, WALL_DEG, bearing


def _face_m2(fitted: Fitted) -> float:
    """Return the largest face of a part's box [m2]."""
    _, middle, longest = sorted(fitted.part.body.size_mm)
    return middle * longest / MM2_PER_M2


def _shade(build: Build, opening: Opening) -> Shade:
    covers = "hatches" if opening.kind == "hatch" else "windows"
    own = [_own_blind()] if opening.own_blind else []
    return best_shade((*own, *_blinds(build, covers)))


def _own_blind() -> Shade:
    return Shade(
        passes_frac=assumed("blind-passes").value,
        insulance_m2k_per_w=assumed("blind-insulance").value,
    )


def _blinds(build: Build, covers: str) -> Iterator[Shade]:
    for fitted in build.having("blind"):
        blind = fitted.part.blind
        if blind is not None and covers in blind.covers:
            yield Shade(
                passes_frac=blind.passes_frac, insulance_m2k_per_w=blind.insulance_m2k_per_w
            )


def _cab(build: Build) -> Iterator[Pane]:
    """Yield windscreen and door glass; what the vehicle does not state is assumed."""
    glass, width = build.vehicle.cab_glass, build.vehicle.outside.width_mm
    shade = best_shade(tuple(_blinds(build, "cab")))
    screen = glass.windscreen_m2 or (
        width * assumed("windscreen-width").value * assumed("windscreen-height").value / MM2_PER_M2
    )
    door = glass.door_m2 or assumed("cab-door-glass").value
    for name, kind, area, tilt, bearing in (
        ("windscreen", "windscreen", screen, assumed("windscreen-tilt").value, FRONT_DEG),
        ("left cab door glass", "tinted glass", door, WALL_DEG, LEFT_DEG),
        ("right cab door glass", "tinted glass", door, WALL_DEG, RIGHT_DEG),
    ):
        yield Pane(
            name=name,
            kind=kind,
            place="cab",
            face_m2=area,
            clear_m2=area,
            opens_m2=0.0,
            tilt_deg=tilt,
            bearing_deg=bearing,
            shade=shade,
            room="cab",
        )
