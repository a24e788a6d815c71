"""The cab: its shell as it comes, and what closes it off from the living space."""

from dataclasses import dataclass

from coachwright.living.assumed import assumed
from coachwright.living.given_body import Layer
from coachwright.living.materials import material
from coachwright.living.panes_given import Pane
from coachwright.living.shell_given import (
    ACROSS,
    DOWN,
    FLOOR_DEG,
    LEFT_DEG,
    RIGHT_DEG,
    ROOF_DEG,
    UP,
    WALL_DEG,
    Patch,
    air_gap,
    areas,
    colour_frac,
    skin,
)
from coachwright.model.build import Build

MM2_PER_M2 = 1e6
MM3_PER_M3 = 1e9
CAB = "cab"
_GAP_MM = 25.0
_L_PER_M3, _MIN_PER_H = 1000.0, 60.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Divider:
    """What stands between cab and living space.

    Attributes
    ----------
    insulance_m2k_per_w
        0 where nothing does.
    flow_m3_per_h
        Air that passes each way.
    """

    area_m2: float
    insulance_m2k_per_w: float
    flow_m3_per_h: float
    closed: bool


def divider(build: Build) -> Divider:
    """Return what closes the cab off; an open doorway where nothing does."""
    found = [fitted.part.cab_divider for fitted in build.having("cab_divider")]
    told = [each for each in found if each is not None]
    area = areas(build).rear_m2
    if not told:
        flow = assumed("open-cab-flow").value
        return Divider(area_m2=area, insulance_m2k_per_w=0.0, flow_m3_per_h=flow, closed=False)
    return Divider(
        area_m2=area,
        insulance_m2k_per_w=sum(each.insulance_m2k_per_w for each in told),
        flow_m3_per_h=min(each.exchange_l_per_min for each in told) * _MIN_PER_H / _L_PER_M3,
        closed=True,
    )


def cab_m3(build: Build) -> float:
    """Return the cab's air [m3]."""
    width = 2.0 * build.vehicle.shell.half_widths[0].half_width_mm
    return width * assumed("cab-length").value * assumed("cab-height").value / MM3_PER_M3


def cab_patches(build: Build, panes: tuple[Pane, ...]) -> tuple[Patch, ...]:
    """Return the cab's shell: roof, sides, front and floor, trimmed as they come."""
    length, height = assumed("cab-length").value, assumed("cab-height").value
    width = 2.0 * build.vehicle.shell.half_widths[0].half_width_mm
    side = length * height / MM2_PER_M2
    glass = {
        bearing: sum(
            pane.face_m2 for pane in panes if pane.room == CAB and pane.bearing_deg == bearing
        )
        for bearing in (0.0, LEFT_DEG, RIGHT_DEG)
    }
    flat = width * length / MM2_PER_M2
    across = width * height / MM2_PER_M2
    told = (
        ("cab roof", UP, ROOF_DEG, 0.0, flat),
        ("cab left", ACROSS, WALL_DEG, LEFT_DEG, max(0.1, side - glass[LEFT_DEG])),
        ("cab right", ACROSS, WALL_DEG, RIGHT_DEG, max(0.1, side - glass[RIGHT_DEG])),
        ("cab front", ACROSS, WALL_DEG, 0.0, max(0.1, across - glass[0.0])),
        ("cab floor", DOWN, FLOOR_DEG, 0.0, flat),
    )
    trim = _trim()
    return tuple(
        Patch(
            name=name,
            group="cab sides" if name in ("cab left", "cab right") else name,
            area_m2=area,
            layers=(skin(build), air_gap(_GAP_MM), trim),
            direction=direction,
            tilt_deg=tilt,
            bearing_deg=bearing,
            absorptance_frac=colour_frac(build, roof=direction == UP),
            room=CAB,
            lining=(trim,),
            sunlit=name not in ("cab front", "cab floor"),
        )
        for name, direction, tilt, bearing, area in told
    )


def _trim() -> Layer:
    felt = material("textile")
    return Layer(
        name="trim",
        thickness_mm=assumed("cab-trim").value,
        conductivity_w_per_m_k=felt.conductivity_w_per_m_k,
        density_kg_per_m3=felt.density_kg_per_m3,
        heat_j_per_kg_k=felt.heat_j_per_kg_k,
    )
