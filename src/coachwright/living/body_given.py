"""Make the body of rooms from a build: surfaces, panes, masses, air."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from coachwright.living.assumed import assumed
from coachwright.living.cab_given import CAB, Divider, cab_m3, cab_patches, divider
from coachwright.living.envelope import (
    AIR_WH_PER_M3_K,
    J_PER_WH,
    Line,
    behind_w_per_k,
    envelope,
    films,
    held_j_per_k,
    layers_m2k_per_w,
    leak_w_per_k,
)
from coachwright.living.given_body import Body, Layer, Mass, Passage, Plane, Room, Surface, Window
from coachwright.living.model import Envelope
from coachwright.living.panes_given import Pane, panes
from coachwright.living.ribs import bridge_w_per_k
from coachwright.living.rooms_given import CABIN, Stall, furniture_j_per_k, stalls, vents_m3_per_h
from coachwright.living.shell_given import ROOF_DEG, Patch, areas, patches
from coachwright.living.windows import framed_frac, glazing
from coachwright.model.build import Build

_SKY_FRAC = {"up": 1.0, "horizontal": 0.5, "down": 0.0}


def envelope_of(build: Build) -> Envelope:
    """Return the heat that a build's living space loses for each kelvin.

    With the cab open its shell counts in full; behind a divider it counts as what passes both.
    """
    glass = panes(build)
    walls, cab = patches(build, glass), cab_patches(build, glass)
    between = divider(build)
    living = [_pane_line(each) for each in glass if each.room == CABIN]
    front = [*_patch_lines(cab), *(_pane_line(each) for each in glass if each.room == CAB)]
    volume = areas(build).volume_m3
    air = leak_w_per_k(air_m3=volume, leak_per_h=assumed("leak-rate").value)
    air += AIR_WH_PER_M3_K * vents_m3_per_h(build)
    cab_air = leak_w_per_k(air_m3=cab_m3(build), leak_per_h=assumed("cab-leak-rate").value)
    if between.closed:
        front = [_behind(between, front, cab_air)]
    else:
        air += cab_air
    held = furniture_j_per_k(build) + sum(
        held_j_per_k(area_m2=each.area_m2, layers=each.lining or each.layers[:1]) for each in walls
    )
    return envelope(
        lines=(*_patch_lines(walls), *living, *front),
        air_w_per_k=air,
        held_wh_per_k=held / J_PER_WH + volume * AIR_WH_PER_M3_K,
    )


def _patch_lines(every: Iterable[Patch]) -> tuple[Line, ...]:
    """Return one line for each group of patches."""
    groups: dict[str, list[Patch]] = {}
    for each in every:
        groups.setdefault(_told_as(each), []).append(each)
    return tuple(
        Line(
            name=name,
            area_m2=sum(each.area_m2 for each in group),
            u_w_per_m2k=group[0].u_w_per_m2k,
            low_w_per_m2k=group[0].low_w_per_m2k,
            high_w_per_m2k=group[0].high_w_per_m2k,
        )
        for name, group in groups.items()
    )


def _told_as(patch: Patch) -> str:
    """Return a group's name with how it is covered, where not as the rest of it."""
    if patch.room == CAB or not patch.group[-1].isdigit():
        return patch.group
    surface = patch.group.rpartition(" ")[0]
    insulated = any(layer.density_kg_per_m3 < _LIGHT_KG_PER_M3 for layer in _solid(patch))
    if insulated:
        return f"{surface}, part of the finishes"
    return f"{surface}, lining alone" if patch.lining else f"{surface}, bare steel"


_LIGHT_KG_PER_M3 = 150.0
"""Below this a layer insulates."""


def _solid(patch: Patch) -> tuple[Layer, ...]:
    return tuple(layer for layer in patch.layers if layer.density_kg_per_m3 > 0.0)


def _pane_line(pane: Pane) -> Line:
    loss = glazing(pane.kind).u_w_per_m2k
    return Line(
        name=pane.name,
        area_m2=pane.face_m2,
        u_w_per_m2k=loss,
        low_w_per_m2k=loss,
        high_w_per_m2k=loss,
    )


def _behind(between: Divider, front: list[Line], air_w_per_k: float) -> Line:
    """Return the cab as one line: what passes the divider and then the cab's shell."""
    through = divider_w_per_k(between) + AIR_WH_PER_M3_K * between.flow_m3_per_h

    def mean_w_per_m2k(losses_w_per_k: Iterable[float]) -> float:
        whole = sum(losses_w_per_k) + air_w_per_k
        passed = behind_w_per_k(divider_w_per_k=through, cab_w_per_k=whole)
        return passed / between.area_m2

    return Line(
        name="cab behind its divider",
        area_m2=between.area_m2,
        u_w_per_m2k=mean_w_per_m2k(each.area_m2 * each.u_w_per_m2k for each in front),
        low_w_per_m2k=mean_w_per_m2k(each.area_m2 * each.low_w_per_m2k for each in front),
        high_w_per_m2k=mean_w_per_m2k(each.area_m2 * each.high_w_per_m2k for each in front),
    )


def divider_w_per_k(between: Divider) -> float:
    """Return what a divider conducts from air to air [W/K]; 0 for an open doorway."""
    if not between.closed:
        return 0.0
    film = films("horizontal").inner_m2k_per_w
    return between.area_m2 / (between.insulance_m2k_per_w + 2.0 * film)


def body(build: Build, *, heading_deg: float | None = None) -> Body:
    """Return the body of rooms of a build.

    Parameters
    ----------
    build
        With everything found.
    heading_deg
        Where it heads; where None, faces and panes that differ in nothing else are one. [deg]
    """
    glass = panes(build)
    every = (*patches(build, glass), *cab_patches(build, glass))
    surfaces = tuple(_surface(each) for each in every)
    windows = tuple(_window(each) for each in glass)
    if heading_deg is None:
        names = {each.name: each.group for each in every}
        surfaces, windows = _one_of_each(surfaces, names), _one_of_each_pane(windows)
    warmed = stalls(build)
    return Body(
        rooms=_rooms(build, warmed),
        surfaces=(*surfaces, *(_stall_walls(each) for each in warmed)),
        windows=windows,
        masses=_masses(build),
        passages=_passages(build, warmed),
        notes=("Films are means: the wind moves none of them.",),
    )


def _rooms(build: Build, warmed: tuple[Stall, ...]) -> tuple[Room, ...]:
    buffer, floor = assumed("vapour-buffer").value, assumed("floor-sun").value
    volume = areas(build).volume_m3 - sum(each.air_m3 for each in warmed)
    return (
        Room(
            name=CABIN,
            volume_m3=volume,
            leak_per_h=assumed("leak-rate").value + vents_m3_per_h(build) / volume,
            vapour_buffer_ratio=buffer,
            floor_sun_frac=floor,
        ),
        Room(
            name=CAB,
            volume_m3=cab_m3(build),
            leak_per_h=assumed("cab-leak-rate").value,
            vapour_buffer_ratio=buffer,
        ),
        *(
            Room(name=each.name, volume_m3=each.air_m3, leak_per_h=0.0, vapour_buffer_ratio=1.0)
            for each in warmed
        ),
    )


def _surface(patch: Patch) -> Surface:
    film = films(patch.direction)
    plain = Surface(
        name=patch.name,
        area_m2=patch.area_m2,
        layers=patch.layers,
        plane=Plane(
            tilt_deg=patch.tilt_deg,
            bearing_deg=patch.bearing_deg,
            sky_frac=_SKY_FRAC[patch.direction],
            sunlit=patch.sunlit,
        ),
        room=patch.room,
        absorptance_frac=patch.absorptance_frac,
        emittance_frac=assumed("skin-emittance").value,
        inner_film_w_per_m2k=film.inner_w_per_m2k,
    )
    ribs = patch.ribs
    if ribs is None:
        return plain
    rib_m2 = patch.area_m2 * ribs.rib_zone_frac

    def through_w_per_k(mean_w_per_m2k: float) -> float:
        return bridge_w_per_k(
            area_m2=patch.area_m2,
            rib_m2=rib_m2,
            mean_w_per_m2k=mean_w_per_m2k,
            outer_m2k_per_w=film.outer_m2k_per_w,
            inner_m2k_per_w=film.inner_m2k_per_w,
            layers_m2k_per_w=layers_m2k_per_w(patch.layers),
        )

    return replace(
        plain,
        bridge_w_per_k=through_w_per_k(ribs.mean_w_per_m2k),
        bridge_low_w_per_k=through_w_per_k(ribs.low_w_per_m2k),
        bridge_high_w_per_k=through_w_per_k(ribs.high_w_per_m2k),
        bridge_area_m2=rib_m2,
    )


def _window(pane: Pane) -> Window:
    glass = glazing(pane.kind)
    return Window(
        name=pane.name,
        area_m2=pane.face_m2,
        plane=Plane(
            tilt_deg=pane.tilt_deg,
            bearing_deg=pane.bearing_deg,
            sky_frac=1.0 if pane.tilt_deg == ROOF_DEG else 0.5,
        ),
        u_w_per_m2k=glass.u_w_per_m2k,
        shgc_frac=_framed_frac(glass.shgc_frac, pane),
        transmitted_frac=_framed_frac(glass.transmitted_frac, pane),
        room=pane.room,
        blind_frac=pane.shade.passes_frac,
        blind_resistance_m2k_per_w=pane.shade.insulance_m2k_per_w,
        panes=glass.panes,
    )


def _framed_frac(gain_frac: float, pane: Pane) -> float:
    return framed_frac(gain_frac=gain_frac, clear_m2=pane.clear_m2, face_m2=pane.face_m2)


def _one_of_each(surfaces: tuple[Surface, ...], names: dict[str, str]) -> tuple[Surface, ...]:
    """Return surfaces that differ in bearing alone as one."""
    groups: dict[Surface, list[Surface]] = {}
    for each in surfaces:
        alike = replace(
            each,
            name=names[each.name],
            area_m2=0.0,
            plane=replace(each.plane, bearing_deg=0.0),
            bridge_w_per_k=0.0,
            bridge_low_w_per_k=0.0,
            bridge_high_w_per_k=0.0,
            bridge_area_m2=0.0,
        )
        groups.setdefault(alike, []).append(each)
    return tuple(
        replace(
            alike,
            area_m2=sum(each.area_m2 for each in group),
            bridge_w_per_k=sum(each.bridge_w_per_k for each in group),
            bridge_low_w_per_k=sum(each.bridge_low_w_per_k for each in group),
            bridge_high_w_per_k=sum(each.bridge_high_w_per_k for each in group),
            bridge_area_m2=sum(each.bridge_area_m2 for each in group),
        )
        for alike, group in groups.items()
    )


def _one_of_each_pane(windows: tuple[Window, ...]) -> tuple[Window, ...]:
    """Return panes that differ in name, size and bearing alone as one, named after the first."""
    groups: dict[Window, list[Window]] = {}
    for each in windows:
        alike = replace(
            each,
            name="",
            area_m2=0.0,
            shgc_frac=0.0,
            transmitted_frac=0.0,
            plane=replace(each.plane, bearing_deg=0.0),
        )
        groups.setdefault(alike, []).append(each)
    return tuple(_together(alike, group) for alike, group in groups.items())


def _together(alike: Window, group: list[Window]) -> Window:
    area = sum(each.area_m2 for each in group)
    return replace(
        alike,
        name=group[0].name if len(group) == 1 else f"{group[0].name} and {len(group) - 1} more",
        area_m2=area,
        shgc_frac=sum(each.shgc_frac * each.area_m2 for each in group) / area,
        transmitted_frac=sum(each.transmitted_frac * each.area_m2 for each in group) / area,
    )


def _stall_walls(stall: Stall) -> Surface:
    film = films("horizontal")
    return Surface(
        name=f"walls of {stall.name}",
        area_m2=stall.walls_m2,
        layers=(Layer(name="walls", resistance_m2k_per_w=max(stall.insulance_m2k_per_w, 1e-3)),),
        plane=Plane(tilt_deg=90.0, sunlit=False),
        outside=CABIN,
        room=stall.name,
        outer_film_w_per_m2k=film.inner_w_per_m2k,
        inner_film_w_per_m2k=film.inner_w_per_m2k,
    )


def _masses(build: Build) -> tuple[Mass, ...]:
    floor = areas(build).floor_m2
    return (
        Mass(
            name="furniture",
            heat_j_per_k=furniture_j_per_k(build),
            area_m2=assumed("furniture-area").value * floor,
        ),
        Mass(
            name="cab seats",
            heat_j_per_k=assumed("cab-heat").value,
            area_m2=3.0,
            room=CAB,
        ),
    )


def _passages(build: Build, warmed: tuple[Stall, ...]) -> tuple[Passage, ...]:
    between = divider(build)
    return (
        Passage(
            name="doorway to the cab",
            rooms=(CABIN, CAB),
            conductance_w_per_k=divider_w_per_k(between),
            flow_m3_per_h=between.flow_m3_per_h,
        ),
        *(
            Passage(
                name=f"air of {each.name}",
                rooms=(CABIN, each.name),
                conductance_w_per_k=0.0,
                flow_m3_per_h=each.flow_m3_per_h,
            )
            for each in warmed
        ),
    )


def opened_m2(build: Build) -> Iterator[float]:
    """Yield the areas of windows and hatches that open [m2]."""
    for pane in panes(build):
        if pane.opens_m2 > 0.0:
            yield pane.opens_m2
