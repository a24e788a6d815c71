"""The outside of whole builds: by hand, and what must hold for any of them."""

import dataclasses
import math
from typing import Any

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.layout.model_outside import Outside
from coachwright.layout.roof_plan import roof_fall_mm
from coachwright.layout.rules_outside import OUTSIDE_RULES
from coachwright.layout.stage import stage
from coachwright.model.finding import Finding, Outcome, apply_rules
from coachwright.model.vehicle import Roof
from tests.rules.layout_around_cases import EXHAUST, FREE, UNDER
from tests.rules.layout_rear_cases import FACE_MM, TOP, ZONES, behind, hung
from tests.rules.layout_roof_cases import ROOF_MM, case, crown, fan, panel
from tests.support.builds import Data, build
from tests.support.vans import Thing, holding, lengths, thing


def outside(*things: Thing, changes: Data | None = None, **more: Any) -> Outside:
    return stage(build(holding(*things, **more) | (changes or {}))).outside


def figures(found: Outside) -> dict[str, float | None]:
    return {figure.name.removeprefix("layout."): figure.value for figure in found.figures}


def test_a_van_without_anything_outside_finds_nothing() -> None:
    found = outside()
    for field in dataclasses.fields(found):
        if field.name != "figures":
            assert getattr(found, field.name) == (), field.name
    assert figures(found) == {
        "added-length-behind": 0,
        "free-behind": 780,
        "load-floor-height": 560,
    }


def test_the_doors_need_their_own_width_behind_and_a_tray_its_travel() -> None:
    tray = {"slide_out": {"travel": "1500 mm", "load_limit": "90 kg"}}
    found = outside(thing("tray", (1000, 600, 120), (3750, -300, 20), facets=tray), doors=True)
    assert figures(found)["free-behind"] == 4750 + 1500 - FACE_MM


@pytest.mark.parametrize(
    ("turn", "at", "way", "beyond"),
    [
        # 1000 long, 600 wide, travel 800: wall at 920 mm at its widest, skin at 1025 mm
        ("90 deg", (1400, -200, 20), "right", -200 + 1000 + 800 - 1025),
        ("270 deg", (1400, -800, 20), "left", 800 + 800 - 1025),
        ("180 deg", (2000, -300, 20), "front", 0),
    ],
)
def test_a_tray_slides_the_way_it_is_turned(
    turn: str, at: tuple[float, float, float], way: str, beyond: float
) -> None:
    facets = {"slide_out": {"travel": "800 mm", "load_limit": "90 kg"}}
    (tray,) = outside(
        thing("tray", (1000, 600, 120), at, facets=facets, turn=turn), doors=True
    ).trays
    assert (tray.way, tray.beyond_mm) == (way, beyond)
    assert tray.opening == ("sliding door" if way == "right" else "")
    assert (tray.spare_mm is None) == (way != "right")


def test_a_tray_takes_its_load_along_and_meets_neither_it_nor_what_hangs_on_the_doors() -> None:
    facets = {"slide_out": {"travel": "800 mm", "load_limit": "90 kg"}}
    tray = thing("tray", (1000, 600, 120), (3750, -300, 20), facets=facets)
    crate = thing("crate", (400, 400, 500), (4000, -200, 140), on="tray", contents="4 kg")
    post = thing("post", (100, 100, 500), (5300, 0, 100), mounting="hitch")
    (found,) = outside(tray, crate, hung(y=0, z=100), post, doors=True).trays
    assert (found.load, found.load_kg) == (("crate",), 5)
    # the post, 300 mm behind the tray's edge: freed 0 - -300 + ... sideways, or upwards
    assert [(hit.name, hit.shift_mm) for hit in found.hits] == [("post", 250)]


def test_a_tray_with_a_stated_zone_leaves_what_stands_inside_to_the_zones() -> None:
    facets: Data = {"slide_out": {"travel": "800 mm", "load_limit": "90 kg"}}
    zone = {
        "purpose": "slide-out travel",
        "from": lengths((1000, 0, 0)),
        "to": lengths((1800, 600, 120)),
    }
    chest = thing("chest", (300, 600, 400), (3200, -300, 0))
    plain = thing("tray", (1000, 600, 120), (2000, -300, 20), facets=facets)
    stated = thing(
        "tray",
        (1000, 600, 120),
        (2000, -300, 20),
        facets=facets | {"access": {"zones": [zone]}},
    )
    assert [hit.name for hit in outside(plain, chest).trays[0].hits] == ["chest"]
    assert outside(stated, chest).trays[0].hits == ()


def test_the_two_ways_to_hang_a_box_are_compared() -> None:
    """800 wide, 400 deep: the bare door, 780 wide, needs sqrt(780² - 380²) behind the doorway."""
    (found,) = outside(behind(gap=100)).hung
    assert (found.added_length_mm, found.lowest_mm, found.gap_mm) == (500, 760, 100)
    assert found.on_door_mm == 400
    assert figures(outside(behind(gap=100)))["added-length-behind"] == 500
    assert found.on_hitch_mm == pytest.approx(400 + math.sqrt(780**2 - 380**2))


def test_what_hangs_on_a_door_asks_for_more_room_behind_it() -> None:
    """A box 300 deep to the middle: its corner reaches hypot(780, 300) from the hinge line."""
    rack = next(each for each in outside(hung(y=0, z=700), behind()).hung if each.name == "rack")
    assert rack.needed_gap_mm == pytest.approx(math.sqrt(780**2 + 300**2 - 380**2))


def test_a_wide_door_comes_up_against_what_is_on_the_side() -> None:
    """Opened to 270 degrees: a ladder 110 thick, 500 mm ahead of the rear edge, at 180 + atan."""
    ladder = thing("ladder", (300, 110, 1000), (FACE_MM - 800, 1025, 200), mounting="side")
    changes = {"own_vehicle.rear_end.open": "270 deg"}
    found = {swing.door: swing for swing in outside(ladder, changes=changes).swings}
    assert set(found) == {"rear door right"}
    swing = found["rear door right"]
    assert swing.hits == "ladder"
    assert swing.open_deg == pytest.approx(180 + math.degrees(math.atan2(500, 110)))


def test_a_wide_door_lays_its_box_against_the_side() -> None:
    """A box 300 deep, 180 mm from the hinge line: 270 - atan(300 / 180)."""
    changes = {"own_vehicle.rear_end.open": "270 deg"}
    (swing,) = outside(hung(), changes=changes).swings
    assert (swing.moving, swing.hits) == ("box", "the body")
    assert swing.open_deg == pytest.approx(270 - math.degrees(math.atan2(300, 180)))


def test_a_round_spare_hides_as_much_of_a_lamp_as_its_circle_does() -> None:
    """Against shapely's circle; the slabs of a cylinder are right to 0.2 % of its section."""
    spare = thing(
        "spare",
        (220, 700, 700),
        (FACE_MM, -950, 300),
        body={"shape": "cylinder x"},
        mounting="rear door left",
    )
    covered = outside(spare, changes=ZONES).covered
    lamp = next(zone for zone in covered if zone.kind == "lamp")
    circle = shapely.Point(-600, 650).buffer(350, 256)
    target = shapely.box(-1000, 100, -850, 700)
    assert lamp.covered_by == ("spare",)
    assert lamp.covered_frac == pytest.approx(
        circle.intersection(target).area / target.area, rel=0.02
    )


def test_what_a_carrier_repeats_counts_for_what_stands_on_it() -> None:
    rack = behind(width=1000, height=100, repeats=["lamp"])
    crate = thing("crate", (300, 2000, 500), (5140, -1000, 300), on="rack")
    lamp = next(
        zone for zone in outside(rack, crate, changes=ZONES).covered if zone.kind == "lamp"
    )
    assert lamp.covered_by == ("crate",)
    assert lamp.repeated


def test_what_stands_higher_than_a_panel_is_listed_for_its_shading() -> None:
    antenna = thing("antenna", (100, 100, 60), (3700, 0, ROOF_MM), mounting="roof")
    box = thing("box", (100, 300, 30), (2000, 600, ROOF_MM), mounting="roof")
    found = outside(panel(), fan(3650), antenna, box, changes=crown(40)).higher
    assert [(each.name, each.distance_mm, each.rise_mm) for each in found] == [
        ("fan", 50, 120),
        ("antenna", 100, 30),
    ]


def test_a_folding_panel_and_an_awning_are_not_judged_as_what_lies_on_the_roof() -> None:
    awning: Data = {"awning": {"length": "2000 mm", "reach": "1800 mm"}}
    facets = panel()[0]["solar_panel"] | {"folding": True}
    found = outside(
        thing("awning", (2000, 130, 120), (2000, 660, ROOF_MM), facets=awning, mounting="roof"),
        thing(
            "loose",
            (600, 500, 60),
            (2000, 0, ROOF_MM),
            facets={"solar_panel": facets},
            mounting="roof",
        ),
    )
    assert [place.name for place in found.roof] == ["loose"]
    assert found.panels == ()


@given(y=st.floats(-700, 700), height=st.floats(0, 90))
def test_the_roof_falls_alike_on_both_sides_and_never_below_its_crown(
    y: float, height: float
) -> None:
    roof = Roof(x_from_mm=0, x_to_mm=3000, half_width_mm=700, crown_mm=height)
    assert 0 <= roof_fall_mm(y_mm=y, roof=roof) <= height * (1 + 1e-12)
    assert roof_fall_mm(y_mm=y, roof=roof) == roof_fall_mm(y_mm=-y, roof=roof)


def test_the_nearest_free_place_is_named_and_exhausts_are_measured_to_the_nearest() -> None:
    far = FREE | {
        "name": "right side",
        "from": lengths((2000, 500, -350)),
        "to": lengths((3000, 760, -100)),
    }
    tank = thing("tank", (500, 200, 150), (2100, 480, -320), mounting="underbody")
    (place,) = outside(tank, changes={"own_vehicle.underbody": [FREE, far, EXHAUST]}).under
    assert (place.free_zone, place.outside_mm) == ("right side", 20)
    assert place.exhaust_mm == 30


def test_a_tray_in_a_cabinet_does_not_meet_it_and_a_shelf_on_the_wall_is_no_window() -> None:
    facets = {"slide_out": {"travel": "400 mm", "load_limit": "90 kg"}}
    chest = thing("chest", (800, 600, 400), (2000, 300, 0))
    tray = thing("tray", (600, 500, 100), (2100, 350, 100), facets=facets, within="chest")
    shelf = thing("shelf", (500, 200, 200), (2600, 650, 900), mounting="wall")
    found = outside(chest, tray, shelf, doors=True)
    assert found.trays[0].hits == ()
    assert not found.trays[0].leaves
    assert found.beside_doors == ()


# --- what must hold for any build -------------------------------------------------------------

_places = st.tuples(
    st.integers(1200, 4500),
    st.integers(-700, 500),
    st.sampled_from([ROOF_MM, ROOF_MM + 90, 2300.0]),
)
_sizes = st.tuples(st.integers(100, 1500), st.integers(100, 800), st.integers(30, 300))
_on_door = st.tuples(st.integers(-800, 500), st.integers(-100, 1500), st.integers(100, 600))


def _roof_things(placed: list[tuple[Any, Any]]) -> list[Thing]:
    return [
        thing(f"roof-{number}", size, place, mounting="roof")
        for number, (size, place) in enumerate(placed)
    ]


def _rear_things(placed: list[tuple[Any, str]]) -> list[Thing]:
    return [
        thing(
            f"rear-{number}",
            (200, 300, height),
            (FACE_MM + (150 if mounting == "hitch" else 0), y, z),
            mounting=mounting,
        )
        for number, ((y, z, height), mounting) in enumerate(placed)
    ]


def _mirrored(one: Thing) -> Thing:
    """Return a thing on the other side of the van."""
    body, fitting = one
    width = float(body["body"]["size"][1].removesuffix(" mm"))
    x, y, z = fitting["at"]
    other = -float(y.removesuffix(" mm")) - width
    swap = {"rear door left": "rear door right", "rear door right": "rear door left"}
    mounting = fitting["mounting"]
    return body, fitting | {
        "at": [x, f"{other!r} mm", z],
        "mounting": swap.get(mounting, mounting),
    }


def _findings(things: list[Thing], changes: Data) -> list[Finding]:
    made = build(holding(*things, doors=True) | changes)
    return list(apply_rules(OUTSIDE_RULES, made, stage(made)))


def _told(findings: list[Finding]) -> list[tuple[str, str, float | None]]:
    """Return findings without left and right."""
    return sorted(
        (
            found.rule,
            found.subject.replace(" left", "").replace(" right", ""),
            None if found.value is None else round(found.value, 6),
        )
        for found in findings
    )


def _zones(*, mirrored: bool) -> Data:
    zones = [dict(zone) for zone in ZONES["own_vehicle.rear_end.zones"]]
    if mirrored:
        for zone in zones:
            (y0, z0), (y1, z1) = zone["from"], zone["to"]
            zone["from"] = [f"{-float(y1.removesuffix(' mm'))!r} mm", z0]
            zone["to"] = [f"{-float(y0.removesuffix(' mm'))!r} mm", z1]
    return {"own_vehicle.rear_end.zones": zones}


@settings(max_examples=40, deadline=None)
@given(
    roof=st.lists(st.tuples(_sizes, _places), max_size=4),
    rear=st.lists(
        st.tuples(_on_door, st.sampled_from(["rear door left", "rear door right", "hitch"])),
        max_size=3,
    ),
)
def test_a_mirrored_build_gives_mirrored_findings(
    roof: list[tuple[Any, Any]], rear: list[tuple[Any, str]]
) -> None:
    things = [*_roof_things(roof), *_rear_things(rear)]
    plain = _findings(things, TOP | _zones(mirrored=False))
    mirrored = _findings([_mirrored(each) for each in things], TOP | _zones(mirrored=True))
    assert _told(plain) == _told(mirrored)


@settings(max_examples=40, deadline=None)
@given(
    roof=st.lists(st.tuples(_sizes, _places), min_size=1, max_size=4),
    shift=st.integers(-400, 400),
)
def test_moving_the_whole_roof_forwards_changes_nothing_between_its_fittings(
    roof: list[tuple[Any, Any]], shift: int
) -> None:
    moved = [(size, (x + shift, y, z)) for size, (x, y, z) in roof]
    one, other = outside(*_roof_things(roof)), outside(*_roof_things(moved))
    assert one.covers == other.covers
    assert one.gaps == other.gaps


@settings(max_examples=40, deadline=None)
@given(
    tank=st.tuples(st.integers(700, 4000), st.integers(-700, 300), st.integers(-400, -250)),
    smaller=st.tuples(st.integers(0, 300), st.integers(0, 150), st.integers(0, 80)),
)
def test_a_smaller_tank_never_breaks_a_rule_that_the_larger_one_met(
    tank: tuple[int, int, int], smaller: tuple[int, int, int]
) -> None:
    def broken(size: tuple[float, float, float], at: tuple[float, float, float]) -> set[str]:
        things = [thing("tank", size, at, mounting="underbody")]
        return {f.rule for f in _findings(things, UNDER) if f.outcome is Outcome.BROKEN}

    large = broken((600, 300, 160), tank)
    inner = (tank[0] + smaller[0] // 2, tank[1] + smaller[1] // 2, tank[2] + smaller[2] // 2)
    small = broken((600 - smaller[0], 300 - smaller[1], 160 - smaller[2]), inner)
    assert small <= large


def test_a_case_far_from_everything_meets_every_rule_that_applies() -> None:
    outcomes = {f.outcome for f in _findings([case()], {})}
    assert outcomes == {Outcome.MET, Outcome.NOT_APPLICABLE}
