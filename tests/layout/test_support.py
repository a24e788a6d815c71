"""What holds a fitting, and how far it is from it; by hand."""

from typing import Any

import pytest
from hypothesis import given

from coachwright.layout.model import Support
from coachwright.layout.solids import Box, Solid, box, moved, solid
from coachwright.layout.stage import stage
from coachwright.layout.support import LEAST_CONTACT_MM, contact_gap_mm
from tests.layout.shapes import solids
from tests.support.builds import Data, build
from tests.support.vans import DOORS, Thing, Triple, holding, thing

SIZE = (500.0, 400.0, 300.0)
CUBE = solid("cube", (box((0, 0, 0), (100, 100, 100)),))


def support(*things: Thing, **more: Any) -> Support:
    """Return the support of the last of some things."""
    return stage(build(holding(*things, **more))).supports[-1]


def held(at: Triple, mounting: str, size: Triple = SIZE, changes: Data | None = None) -> Support:
    return support(thing("piece", size, at, mounting=mounting), **(changes or {}))


@pytest.mark.parametrize(
    ("low", "gap"),
    [
        ((100, 0, 0), 0),  # face to face
        ((0, 0, 100), 0),
        ((50, 50, 50), 0),  # they overlap
        ((130, 0, 0), 30),
        ((130, 95, 0), 30),  # and 5 mm short of the least face
        ((100, 95, 0), 5),
        ((100, 100, 0), LEAST_CONTACT_MM),  # edge to edge is no contact
        ((100, 100, 100), LEAST_CONTACT_MM),
        ((0, 150, 240), 140),
    ],
)
def test_two_fittings_touch_by_a_face(low: Triple, gap: float) -> None:
    assert contact_gap_mm(CUBE, moved(CUBE, low)) == gap


def test_a_small_thing_needs_no_more_than_its_own_size() -> None:
    button = solid("button", (box((100, 40, 40), (104, 44, 44)),))
    assert contact_gap_mm(CUBE, button) == 0


@given(solids("one"), solids("other"))
def test_contact_is_mutual_and_clears_with_the_gap(one: Solid, other: Solid) -> None:
    gap = contact_gap_mm(one, other)
    assert contact_gap_mm(other, one) == gap
    grown = tuple(
        Box(
            low_mm=(p.low_mm[0] - gap, p.low_mm[1] - gap, p.low_mm[2] - gap),
            high_mm=(p.high_mm[0] + gap, p.high_mm[1] + gap, p.high_mm[2] + gap),
        )
        for p in one.boxes
    )
    assert contact_gap_mm(Solid(name="grown", boxes=grown, bounds=one.bounds), other) == 0


def test_a_fitting_stands_on_the_finished_floor() -> None:
    assert held((2000, 0, 0), "floor") == Support(
        name="piece", carrier="floor", gap_mm=0, outside=False
    )
    assert held((2000, 0, 35), "floor").gap_mm == 35


@pytest.mark.parametrize(
    ("at", "wall", "gap"),
    [
        ((2700, -900, 0), "left wall", 0),
        # half width 910 mm at 500 mm, 916 mm at 800 mm: nearest at its lower edge
        ((2700, -850, 500), "left wall", 60),
        ((2700, 480, 500), "right wall", 30),
        ((2700, -950, 500), "left wall", 0),  # in the wall: the shell's affair
    ],
)
def test_a_fitting_on_the_wall_hangs_on_the_nearer_one(at: Triple, wall: str, gap: float) -> None:
    found = held(at, "wall")
    assert found.carrier == wall
    assert found.gap_mm == pytest.approx(gap)


def test_a_door_is_no_wall() -> None:
    # sliding door x 1300 to 2500 mm, z 20 to 1720 mm: 100 mm to its rear edge, and 10 mm of face
    assert held((1900, 510, 500), "wall", changes=DOORS).gap_mm == pytest.approx(110)
    # 20 mm over its lintel: half width 920 - 140 · 740 / 800 = 790.5 mm at 1740 mm
    assert held((1900, 380, 1440), "wall", changes=DOORS).gap_mm == pytest.approx(10.5)
    # half over its rear edge there is wall enough
    assert held((2300, 510, 500), "wall", changes=DOORS).gap_mm == pytest.approx(0)


def test_a_fitting_hangs_under_the_finished_ceiling() -> None:
    assert held((2000, 0, 1600), "ceiling").gap_mm == 0
    assert held((2000, 0, 1560), "ceiling").gap_mm == 40


@pytest.mark.parametrize(
    ("z", "gap"),
    [
        (2090, 0),  # on the crown
        (2060, 0),  # between the roof's edge and its crown
        (2130, 40),
        (1900, 0),  # let into the roof
        (1650, 110),  # 2090 - 30 - 1950 mm under it
    ],
)
def test_a_fitting_on_the_roof_stands_between_edge_and_crown(z: float, gap: float) -> None:
    found = held((2000, 0, z), "roof", changes={"own_vehicle.roof.crown": "30 mm"})
    assert (found.gap_mm, found.outside) == (gap, True)


@pytest.mark.parametrize(("x", "gap"), [(5040, 0), (5100, 60), (4250, 0), (4200, 50), (4800, 0)])
def test_a_fitting_on_a_rear_door_touches_its_inner_or_outer_face(x: float, gap: float) -> None:
    # inner face 4750 mm, rear end 5040 mm; the fitting is 500 mm long
    assert held((x, -500, 500), "rear door left").gap_mm == gap


@pytest.mark.parametrize(("y", "gap"), [(1025, 0), (1100, 75), (-1500, 75), (600, 0), (400, 100)])
def test_a_fitting_on_the_side_touches_the_skin(y: float, gap: float) -> None:
    # the skin is 1025 mm from the middle, the inner face 900 mm at the floor
    assert held((2000, y, 0), "side").gap_mm == pytest.approx(gap)


def test_a_fitting_under_the_floor_hangs_from_its_free_place() -> None:
    place = {"from": ["1500 mm", "-700 mm", "-400 mm"], "to": ["3000 mm", "0 mm", "-110 mm"]}
    free: Data = {"own_vehicle.underbody": [{"name": "left", "use": "free"} | place]}
    taken: Data = {"own_vehicle.underbody": [{"name": "left", "use": "exhaust"} | place]}
    assert held((2000, -500, -430), "underbody", changes=free).gap_mm == 20
    assert held((2000, -500, -430), "underbody", changes=taken).gap_mm == 130
    assert held((2000, 100, -430), "underbody", changes=free).gap_mm == 130  # beside it
    assert held((2000, -500, -300), "underbody").gap_mm == 0


def test_what_the_hitch_carries_is_near_the_hitch_point() -> None:
    # 5050 mm behind the axle, 400 - 560 mm over the load floor
    assert held((5050, -200, -200), "hitch").gap_mm == 0
    assert held((5150, -200, -200), "hitch").gap_mm == 100
    assert held((5050, 50, -200), "hitch").gap_mm == 50
    assert held((5050, -200, 0), "hitch").gap_mm == 160
    unknown = held((5050, 0, 0), "hitch", changes={"own_vehicle.rear_end.hitch_height": None})
    assert (unknown.gap_mm, unknown.missing) == (None, "the vehicle's hitch point")


def test_what_the_record_does_not_describe_is_not_judged() -> None:
    cab = thing("shelf", SIZE, (600, 0, 1500), mounting="cab")
    assert stage(build(holding(cab))).supports == ()


def test_a_carrier_holds_what_is_on_it_and_what_is_within_it() -> None:
    chest = thing("chest", (900, 500, 800), (2000, 0, 0))
    on = support(chest, thing("oven", SIZE, (2100, 50, 830), on="chest"))
    assert (on.carrier, on.gap_mm) == ("chest", 30)
    within = support(chest, thing("sink", (300, 300, 150), (2100, 50, 650), within="chest"))
    assert (within.carrier, within.gap_mm) == ("chest", 0)
    lost = support(chest, thing("sink", (300, 300, 150), (3400, 50, 650), within="chest"))
    assert lost.gap_mm == 500
