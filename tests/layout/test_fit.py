"""Fittings against the shell and against each other, by hand."""

import pytest

from coachwright.layout.fit import arch_solids, clashes, shell_fit
from coachwright.layout.model import Layout
from coachwright.layout.solids import box, solid
from coachwright.layout.stage import stage
from coachwright.model.shell import BuildUp
from tests.support.builds import build
from tests.support.vans import ARCHES, WITH_ARCHES, Triple, holding, thing

SHELL = build(WITH_ARCHES).vehicle.shell
BARE = BuildUp()
LINED = BuildUp(walls_mm=20, ceiling_mm=15, floor_mm=12, doors_mm=18)


@pytest.mark.parametrize(
    ("corners", "build_up", "face", "spare", "corner"),
    [
        (((2000, -880, 0), (2500, 0, 500)), BARE, "floor", 0, (2000, -880, 0)),
        (((2000, -910, 0), (2500, 0, 500)), BARE, "left wall", -10, (2000, -910, 0)),
        # half width at 1400 mm: 920 - 140 · 400 / 800 = 850 mm
        (((2000, 300, 900), (2500, 860, 1400)), BARE, "right wall", -10, (2000, 860, 1400)),
        (((2000, 300, 900), (2500, 860, 1400)), LINED, "right wall", -30, (2000, 860, 1400)),
        (((4300, 0, 100), (4760, 300, 500)), BARE, "rear doors", -10, (4760, 0, 100)),
        (((4300, 0, 100), (4760, 300, 500)), LINED, "rear doors", -28, (4760, 0, 100)),
        (((1100, 0, 100), (1500, 300, 500)), BARE, "cab line", -50, (1100, 0, 100)),
        (((2000, 0, 1500), (2500, 300, 1890)), LINED, "ceiling", -5, (2000, 0, 1890)),
        (((2000, 0, 0), (2500, 300, 890)), LINED, "floor", -12, (2000, 0, 0)),
    ],
)
def test_the_nearest_face_and_how_far_it_is(
    corners: tuple[Triple, Triple], build_up: BuildUp, face: str, spare: float, corner: Triple
) -> None:
    body = solid("body", (box(*corners),))
    found = shell_fit(body=body, shell=SHELL, build_up=build_up)
    assert (found.face, found.corner_mm) == (face, corner)
    assert found.spare_mm == pytest.approx(spare)


def test_a_wall_that_bulges_out_is_met_where_it_is_narrowest() -> None:
    # 900 mm at the floor and 780 mm at 1800 mm; between them the wall is further out
    body = solid("tall", (box((2000, -850, 0), (2500, 0, 1800)),))
    found = shell_fit(body=body, shell=SHELL, build_up=BARE)
    assert found.spare_mm == pytest.approx(-70)
    assert found.corner_mm == (2000, -850, 1800)


def test_a_wall_that_leans_in_and_out_again_is_met_at_the_bend() -> None:
    bent = build(
        {
            "own_vehicle.shell.half_widths": [
                {"z": "0 mm", "half_width": "900 mm"},
                {"z": "600 mm", "half_width": "850 mm"},
                {"z": "1200 mm", "half_width": "900 mm"},
            ]
        }
    ).vehicle.shell
    body = solid("body", (box((2000, 0, 100), (2500, 870, 1100)),))
    found = shell_fit(body=body, shell=bent, build_up=BARE)
    assert (found.spare_mm, found.corner_mm) == (-20, (2000, 870, 600))


def test_a_step_over_the_arch_is_judged_by_each_of_its_boxes() -> None:
    body = solid(
        "step", (box((2000, -700, 0), (2500, 0, 300)), box((2000, -950, 300), (2500, 0, 500)))
    )
    found = shell_fit(body=body, shell=SHELL, build_up=BARE)
    assert found.face == "left wall"
    assert found.spare_mm == pytest.approx(906 - 950)  # 900 + 20 · 300 / 1000


def test_an_arch_reaches_from_its_inner_face_to_the_shell() -> None:
    left, right = arch_solids(SHELL)
    assert left.boxes == (box((3600, -906, 0), (4400, -700, 300)),)
    assert right.boxes == (box((3600, 700, 0), (4400, 906, 300)),)
    assert (left.name, right.name) == ("left wheel arch", "right wheel arch")


def test_two_pairs_of_arches_are_numbered() -> None:
    two = build({"own_vehicle.shell.wheel_arches": ARCHES * 2}).vehicle.shell
    assert [arch.name for arch in arch_solids(two)] == [
        "left wheel arch 1",
        "right wheel arch 1",
        "left wheel arch 2",
        "right wheel arch 2",
    ]


def test_clashes_come_largest_first_and_named_in_the_order_of_the_build() -> None:
    late = solid("late", (box((0, 0, 0), (100, 100, 100)),))
    early = solid("early", (box((-50, 0, 0), (10, 100, 100)),))
    small = solid("small", (box((95, 0, 0), (200, 100, 100)),))
    wall = solid("wall", (box((150, 0, 0), (300, 100, 100)),))
    found = clashes(bodies=[late, early, small], fixed=[wall], nested=frozenset(), slack_mm=0.5)
    assert [(clash.one, clash.other) for clash in found] == [
        ("small", "wall"),
        ("late", "early"),
        ("late", "small"),
    ]


def _names(layout: Layout) -> set[frozenset[str]]:
    return {frozenset((clash.one, clash.other)) for clash in layout.clashes}


def test_what_is_built_in_at_any_depth_may_share_space_but_not_with_its_neighbour() -> None:
    layout = stage(
        build(
            holding(
                thing("cabinet", (900, 500, 800), (2000, -500, 0)),
                thing("drawer", (400, 400, 300), (2100, -450, 100), within="cabinet"),
                thing("inset", (100, 100, 100), (2150, -400, 150), within="drawer"),
                thing("pump", (200, 200, 200), (2450, -450, 100), within="cabinet"),
            )
        )
    )
    assert _names(layout) == {frozenset(("drawer", "pump"))}


def test_what_stands_on_another_may_not_reach_into_it() -> None:
    layout = stage(
        build(
            holding(
                thing("chest", (900, 500, 800), (2000, -500, 0)),
                thing("oven", (400, 400, 300), (2100, -450, 790), on="chest"),
            )
        )
    )
    assert _names(layout) == {frozenset(("chest", "oven"))}


def test_tyres_on_the_wheels_stand_nowhere() -> None:
    tyres = thing("tyres", (700, 225, 700), (2000, 0, 0), mounting="wheels")
    layout = stage(build(holding(tyres, thing("chest", (900, 500, 800), (2000, -200, 0)))))
    assert [body.name for body in layout.solids] == ["chest"]
    assert layout.clashes == ()
    assert [support.name for support in layout.supports] == ["chest"]
