"""What the inside gives people, from a whole build: passing on, and the same in the mirror."""

from dataclasses import fields, is_dataclass
from typing import Any

import pytest

from coachwright.layout.model_interior import Interior
from coachwright.layout.stage import stage
from tests.rules.layout_interior_cases import bed, box, galley, table, tap, toilet
from tests.rules.layout_safety_cases import alarm, burner, extinguisher, seat, step, vent, window
from tests.support.builds import Data, build, changed, part
from tests.support.vans import APERTURES, Thing, Triple, holding, thing


def interior(*things: Thing, doors: bool = True, **changes: Any) -> Interior:
    return stage(build(holding(*things, doors=doors) | changes)).interior


def figures(*things: Thing, **changes: Any) -> dict[str, float | None]:
    return {each.name: each.value for each in interior(*things, **changes).figures}


def test_knees_reach_through_the_door_of_a_stall() -> None:
    """The stall ends 600 mm from the back of the toilet; with its door open the wall is far."""
    stall = thing("stall", (1000.0, 620.0, 1880.0), (2500, -900, 0))
    (found,) = interior(stall, toilet(within="stall", x_mm=2800.0)).toilets
    assert found.stall == "stall"
    assert found.knees_mm == 600
    assert found.knees_open_mm == 1805
    assert found.reach_mm == 129
    assert found.shoulders_mm == 960
    assert found.side_mm == pytest.approx(470)


@pytest.mark.parametrize(
    ("turn", "mirror", "expected"),
    [
        ("0 deg", False, "right wall"),
        ("180 deg", False, "left wall"),
        ("90 deg", False, "cab line"),
        ("270 deg", False, "rear doors"),
        ("0 deg", True, "left wall"),
    ],
)
def test_a_toilet_faces_the_way_of_its_zone(turn: str, mirror: bool, expected: str) -> None:
    part_data, fitting_data = toilet()
    turned = fitting_data | {
        "at": ["2000 mm", "-200 mm", "0 mm"],
        "turn": turn,
        "mirror": mirror,
    }
    (found,) = interior((part_data, turned)).toilets
    assert found.in_front == expected


@pytest.mark.parametrize(
    ("turn", "faces"),
    [("0 deg", "forward"), ("90 deg", "left"), ("180 deg", "rearward"), ("270 deg", "right")],
)
def test_a_turned_seat_faces_another_way(turn: str, faces: str) -> None:
    (found,) = interior(seat(turn=turn)).seats
    assert found.faces == faces
    assert found.entry_mm >= 450


def test_a_seat_right_behind_the_cab_line_has_its_floor_in_the_cab() -> None:
    (found,) = interior(seat(x_mm=1160.0)).seats
    assert found.entry_mm > 0


def test_a_seat_by_the_wall_has_the_wall_over_it() -> None:
    part_data, fitting_data = seat()
    aside = fitting_data | {"at": ["2500 mm", "400 mm", "0 mm"]}
    (found,) = interior((part_data, aside)).seats
    assert found.head_under == "wall that leans in"
    assert found.head_mm == pytest.approx(1000 + 800 * (920 - 790) / 140 - 480 + 102)


def test_a_round_body_counts_as_the_box_round_it() -> None:
    tank = thing("tank", (600.0, 600.0, 900.0), (1160, -300, 0), body={"shape": "cylinder z"})
    assert interior(tank).loading.big == ("tank",)
    (way, *_) = interior(tank).headrooms
    assert way.clear_mm == 1900


def test_a_pair_of_singles_sleeps_one_in_each() -> None:
    pair: Data = {
        "bed": {"length": "1900 mm", "width": "700 mm", "berths": 2, "beds": 2},
    }
    beds = thing("pair", (1900.0, 1700.0, 200.0), (2850, -850, 300), facets=pair)
    found = interior(beds).bedfellows
    assert [each.travellers for each in found] == [("ada",), ("ben",)]
    assert all(each.shoulders_mm == 567 for each in found)


@pytest.mark.parametrize(
    ("made", "missing"),
    [
        (bed(1900.0, mounting="ceiling"), "how far bed comes down"),
        (bed(2000.0, mounting="roof"), "where bed lies"),
        (
            thing(
                "bed",
                (1100.0, 600.0, 120.0),
                (2000, 0, 0),
                facets={"bed": {"length": "1850 mm", "width": "1100 mm", "berths": 2}},
            ),
            "where bed lies",
        ),
    ],
)
def test_a_bed_that_is_not_made_up_where_it_stands_is_not_measured(
    made: Thing, missing: str
) -> None:
    found = interior(made)
    assert found.bed_spaces[0].top_mm is None
    assert missing in found.bed_spaces[0].missing
    assert missing in found.ways_out[0].missing


def test_a_hatch_over_the_bed_is_a_way_out() -> None:
    opening: Data = {
        "opening": {
            "kind": "hatch",
            "clear_width": "660 mm",
            "clear_height": "460 mm",
            "escape": True,
        }
    }
    hatch = thing(
        "hatch", (800.0, 600.0, 140.0), (3400, -300, 1900), facets=opening, mounting="roof"
    )
    wall = box("bulkhead", (100.0, 1800.0, 1800.0), (2700, -900, 0))
    assert interior(bed(700.0), hatch, wall).ways_out[0].exits == ("rear doors", "hatch")


def test_without_side_doors_the_rear_doors_are_the_main_door() -> None:
    rear_only: Data = {"own_vehicle.apertures": [APERTURES[1]]}
    found = interior(**rear_only).entry
    assert found is not None
    assert (found.door, found.height_mm) == ("rear doors", 570)
    assert interior(doors=False).entry is None


def test_windows_are_not_carried_in() -> None:
    names = [each.name for each in interior(window(830.0, 480.0), *galley(890.0)).loading.passes]
    assert names == ["galley", "outlet"]


def test_finishes_lower_the_ceiling_and_raise_the_floor() -> None:
    lining = part("board", lining={"density": "0.7 kg/L", "thickness": "10 mm"})
    wood = part("ply", lining={"density": "0.7 kg/L", "thickness": "15 mm"})
    changes = holding(doors=True)
    changes["own_parts"] = [lining, wood]
    changes["finishes"] = [
        {"part": "board", "surface": "ceiling", "area": "6 m2"},
        {"part": "ply", "surface": "floor", "area": "6 m2"},
    ]
    found = stage(build(changes)).interior
    assert found.headrooms[0].clear_mm == 1900 - 10 - 15
    assert found.entry is not None
    assert found.entry.height_mm == 560 + 20, "the sill stays higher than the floor"


def test_the_figures_name_who_fits() -> None:
    found = figures(*galley(890.0), bed(800.0), toilet(x_mm=1300.0))
    assert found["layout.worktop-galley"] == 890
    assert found["layout.bed-bed-suits-men"] == pytest.approx(0.9771, abs=1e-3)
    assert found["layout.sitting-bed-suits-women"] == pytest.approx(1.0)
    assert found["layout.knees-toilet-suits-men"] == pytest.approx(1.0)
    assert found["layout.entry-risers-stair"] == 3


def test_without_doors_there_is_no_way_and_no_figure() -> None:
    assert interior(doors=False).headrooms == ()
    names = [each.name for each in interior(doors=False).figures]
    assert names == []


# ------------------------------------------------------------------------------- in the mirror

THINGS: tuple[Thing, ...] = (
    *galley(890.0),
    toilet(x_mm=3400.0),
    bed(700.0, x_mm=2850.0),
    seat(x_mm=1400.0),
    table(720.0, 1200.0, 400.0),
    window(830.0, 480.0),
    burner(),
    alarm(["smoke"], 1860),
    vent(80),
    extinguisher(1350),
    step(),
    box("locker", (500.0, 340.0, 310.0), (3000, 440, 1450), mounting="wall"),
)


def _mm(text: str) -> float:
    return float(text.removesuffix(" mm"))


def mirrored(made: Thing) -> Thing:
    part_data, fitting_data = made
    x, y, z = fitting_data["at"]
    width = _mm(part_data["body"]["size"][1])
    return part_data, fitting_data | {"at": [x, f"{-_mm(y) - width!r} mm", z], "mirror": True}


def _same(one: Any, other: Any, where: str) -> None:
    """Compare, with left and right exchanged in words."""
    if is_dataclass(one):
        for field in fields(one):
            if field.name not in ("figures", "headrooms"):
                _same(getattr(one, field.name), getattr(other, field.name), field.name)
    elif isinstance(one, tuple):
        assert len(one) == len(other), where
        for mine, its in zip(one, other, strict=True):
            _same(mine, its, where)
    elif isinstance(one, str):
        words = one.replace("left", "L").replace("right", "left").replace("L", "right")
        assert words == other, where
    elif isinstance(one, float):
        assert other == pytest.approx(one, abs=1e-6), where
    else:
        assert one == other, where


def test_a_mirrored_van_gives_the_same_to_people() -> None:
    left: Data = {"own_vehicle.apertures": changed({"a": APERTURES}, {"a.0.wall": "left"})["a"]}
    here = interior(*THINGS)
    there = interior(*(mirrored(made) for made in THINGS), **left)
    _same(here, there, "interior")
    assert _ways(here) == _ways(there)


def _ways(found: Interior) -> dict[frozenset[str], float]:
    return {frozenset(each.way.split(" to ")): each.clear_mm for each in found.headrooms}


def test_the_mirrored_van_was_not_empty() -> None:
    here = interior(*THINGS)
    for field in fields(here):
        if field.name not in ("showers", "vents"):
            assert getattr(here, field.name), field.name


SIZE: Triple = (500.0, 400.0, 500.0)


def test_everything_moved_alike_meets_the_same_things() -> None:
    """A galley and what stands before it, both 200 mm further back."""

    def knees(by_mm: float) -> float | None:
        before = box("box", SIZE, (2000 + by_mm, 0, 0))
        (found,) = interior(toilet(x_mm=2000 + by_mm), before).toilets
        return found.knees_mm

    assert knees(0) == knees(200) == 900


def test_a_tap_in_a_stall_makes_no_worktop() -> None:
    stall = thing("stall", (800.0, 700.0, 1850.0), (2000, -750, 0))
    assert interior(stall, tap("stall")).worktops == ()
