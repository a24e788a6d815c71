"""The layout of whole builds: what the stage passes on, and what must never depend on the side."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.layout.model import Layout
from coachwright.layout.stage import stage
from coachwright.units import SUFFIXES
from tests.support.builds import Data, build
from tests.support.vans import APERTURES, Thing, access, holding, lengths, thing, zone

PURPOSES = ("drawer", "standing", "exit", "ventilation")
OTHER_SIDE = {"left": "right", "right": "left", "rear": "rear"}


@st.composite
def pieces(draw: st.DrawFn) -> Data:
    """Return size, place, turn and zone of one fitting, in whole millimetres."""
    size = [float(draw(st.integers(60, 700))) for _ in range(3)]
    at = [float(draw(st.integers(*span))) for span in ((1100, 4500), (-950, 700), (0, 1500))]
    turn = draw(st.sampled_from([0, 90, 180, 270]))
    return {
        "size": size,
        "at": at,
        "turn": turn,
        "mirror": draw(st.booleans()),
        "mounting": draw(st.sampled_from(["floor", "wall", "ceiling"])),
        "purpose": draw(st.sampled_from(PURPOSES)),
        "depth": float(draw(st.integers(50, 600))),
        "stepped": draw(st.booleans()),
    }


def _things(given: list[Data], *, mirrored: bool) -> list[Thing]:
    return [
        _thing(f"piece-{chr(97 + i)}", piece, mirrored=mirrored) for i, piece in enumerate(given)
    ]


def _thing(name: str, piece: Data, *, mirrored: bool) -> Thing:
    size, (x, y, z), turn, mirror = piece["size"], piece["at"], piece["turn"], piece["mirror"]
    width = size[0] if turn in (90, 270) else size[1]
    if mirrored:
        y, turn, mirror = -y - width, -turn % 360, not mirror
    body: Data = {}
    if piece["stepped"]:
        half = size[1] / 2
        body = {
            "shape": "steps",
            "steps": [
                {"from": lengths((0.0, 0.0, 0.0)), "to": lengths((size[0], half, size[2]))},
                {
                    "from": lengths((0.0, half, size[2] / 2)),
                    "to": lengths((size[0], size[1], size[2])),
                },
            ],
        }
    ahead = zone(
        piece["purpose"],
        (0.0, size[1], 0.0),
        (size[0], size[1] + piece["depth"], size[2]),
        always=piece["purpose"] in ("exit", "ventilation"),
    )
    return thing(
        name,
        (size[0], size[1], size[2]),
        (x, y, z),
        body=body,
        facets=access(ahead),
        turn=f"{turn} deg",
        mirror=mirror,
        mounting=piece["mounting"],
    )


def _layout(given: list[Data], *, mirrored: bool = False, **more: Any) -> Layout:
    apertures = [
        each | {"wall": OTHER_SIDE[each["wall"]]} if mirrored else each for each in APERTURES
    ]
    changes = holding(*_things(given, mirrored=mirrored), arches=True)
    return stage(build(changes | {"own_vehicle.apertures": apertures} | more))


def _swapped(name: str) -> str:
    """Return the name of the same thing on the other side."""
    for side in ("left", "right"):
        if f"{side} w" in name:
            return name.replace(f"{side} w", f"{OTHER_SIDE[side]} w")
    return name


@settings(max_examples=60, deadline=None)
@given(st.lists(pieces(), max_size=5))
def test_a_mirrored_build_gives_mirrored_results(given: list[Data]) -> None:
    one, other = _layout(given), _layout(given, mirrored=True)
    assert _clashes(other) == pytest.approx(
        {frozenset(map(_swapped, names)): v for names, v in _clashes(one).items()}
    )
    for here, there in zip(one.shell_fits, other.shell_fits, strict=True):
        assert there.spare_mm == pytest.approx(here.spare_mm)
    for held, held_there in zip(one.supports, other.supports, strict=True):
        assert held_there.gap_mm == pytest.approx(held.gap_mm)
    for zone_here, zone_there in zip(one.zones, other.zones, strict=True):
        assert zone_there.free_frac == pytest.approx(zone_here.free_frac)
        assert {_swapped(i.name): i.depth_mm for i in zone_here.intrusions} == pytest.approx(
            {i.name: i.depth_mm for i in zone_there.intrusions}
        )
    for way, way_there in zip(one.aisles, other.aisles, strict=True):
        assert (way_there.way, way_there.level) == (way.way, way.level)
        assert way_there.passage.width_mm == pytest.approx(way.passage.width_mm)
    assert other.free_floor.free_m2 == pytest.approx(one.free_floor.free_m2)


def _clashes(layout: Layout) -> dict[frozenset[str], float]:
    return {frozenset((c.one, c.other)): c.overlap.volume_l for c in layout.clashes}


@settings(max_examples=40, deadline=None)
@given(st.lists(pieces(), max_size=5), st.tuples(*[st.integers(-3000, 3000)] * 3))
def test_moving_everything_changes_no_pairwise_clash(
    given: list[Data], shift: tuple[int, int, int]
) -> None:
    def moved(piece: Data) -> Data:
        return piece | {"at": [a + s for a, s in zip(piece["at"], shift, strict=True)]}

    bare: Data = {"own_vehicle.shell.wheel_arches": []}
    one = _layout(given, **bare)
    other = _layout([moved(piece) for piece in given], **bare)
    assert _clashes(other) == pytest.approx(_clashes(one))
    assert [c.overlap.shift_mm for c in other.clashes] == pytest.approx(
        [c.overlap.shift_mm for c in one.clashes]
    )


@settings(max_examples=40, deadline=None)
@given(st.lists(pieces(), min_size=1, max_size=5), st.integers(0, 40))
def test_a_smaller_solid_never_adds_a_clash_or_stands_further_out(
    given: list[Data], less: int
) -> None:
    # it keeps its front left lower corner; contact with what holds it may be lost, space is not
    small = given[0] | {"size": [side - less for side in given[0]["size"]], "turn": 0}
    large = given[0] | {"turn": 0, "mirror": False, "stepped": False}
    small |= {"mirror": False, "stepped": False}
    before, after = _layout([large, *given[1:]]), _layout([small, *given[1:]])
    assert set(_clashes(after)) <= set(_clashes(before))
    for here, there in zip(before.shell_fits, after.shell_fits, strict=True):
        assert there.spare_mm >= here.spare_mm - 1e-9
    for zone_here, zone_there in zip(before.zones[1:], after.zones[1:], strict=True):
        assert set(zone_there.blocked_by) <= set(zone_here.blocked_by)
    for way, way_there in zip(before.aisles, after.aisles, strict=True):
        assert way_there.passage.width_mm >= way.passage.width_mm - 1e-9


@settings(max_examples=40, deadline=None)
@given(st.lists(pieces(), min_size=1, max_size=5))
def test_one_more_fitting_widens_no_way_and_frees_no_zone(given: list[Data]) -> None:
    before, after = _layout(given[:-1]), _layout(given)
    for way, way_there in zip(before.aisles, after.aisles, strict=True):
        assert way_there.passage.width_mm <= way.passage.width_mm
    for zone_here, zone_there in zip(before.zones, after.zones, strict=False):
        assert set(zone_here.blocked_by) <= set(zone_there.blocked_by)
    assert after.free_floor.free_m2 <= before.free_floor.free_m2 + 1e-9


def test_figures_carry_their_workings() -> None:
    layout = _layout([])
    core = [figure for figure in layout.figures if figure.working is not None]
    assert {figure.name for figure in core} >= {
        "layout.aisle-cab-to-sliding-door",
        "layout.aisle-cab-to-rear-doors",
        "layout.aisle-sliding-door-to-rear-doors",
        "layout.free-floor-area",
        "layout.storage-volume",
        "layout.counter-length",
    }
    for figure in core:
        assert figure.working is not None
        assert figure.working.result == figure.value
        assert figure.unit in SUFFIXES.values()


def test_the_aisle_figure_is_the_narrowest_of_its_heights() -> None:
    block: Data = {
        "size": [400.0, 1500.0, 1000.0],
        "at": [2700.0, -900.0, 0.0],
        "turn": 0,
        "mirror": False,
        "mounting": "floor",
        "purpose": "standing",
        "depth": 50.0,
        "stepped": False,
    }
    layout = _layout([block])
    figure = next(f for f in layout.figures if f.name == "layout.aisle-cab-to-rear-doors")
    # half width 920 - 140 · 150 / 800 mm at the upper edge of hip height, less 600 mm
    assert figure.value == pytest.approx(293.75)
    assert figure.working is not None
    assert {given.symbol: given.value for given in figure.working.given} == {
        "floor": pytest.approx(300.4),  # 900 + 20 · 20 / 1000 - 600 mm at its lower edge
        "hip": pytest.approx(893.75 - 600),
        "shoulder": 1500,
    }
    assert "piece-a" in figure.working.note


def test_finishes_move_floor_and_walls_inwards() -> None:
    sheet = {"size": ["2500 mm", "1220 mm", "12 mm"], "mass": "20 kg"}
    lining = {"id": "ply", "name": "ply", "body": sheet}
    lining |= {"lining": {"density": "0.6 kg/L", "thickness": "12 mm"}}
    finishes = [
        {"part": "ply", "surface": surface, "area": "5 m2"} for surface in ("floor", "walls")
    ]
    layout = stage(build({"own_parts": [lining], "finishes": finishes}))
    assert (layout.build_up.floor_mm, layout.build_up.walls_mm) == (12, 12)
    assert layout.free_floor.width_mm == pytest.approx(2 * (900 + 20 * 0.032 - 12))
