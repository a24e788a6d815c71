"""Areas, coverage, ribs and films: the shell of the living space as numbers."""

import pytest
from hypothesis import given
from hypothesis import strategies as some

from coachwright.errors import OutOfRange, UnknownName
from coachwright.living.assumed import assumed
from coachwright.living.coverage import Told, coverage
from coachwright.living.envelope import behind_w_per_k, envelope, films, held_j_per_k
from coachwright.living.given_body import Layer
from coachwright.living.materials import gap_m2k_per_w, material, wood_w_per_m_k
from coachwright.living.ribs import bridge_w_per_k, bridged
from coachwright.living.shell_areas import Arch, shell_areas
from coachwright.living.windows import Shade, best_shade, framed_frac, glazing
from coachwright.reference import table

FOAM = Layer(name="foam", thickness_mm=40.0, conductivity_w_per_m_k=0.024)
PLY = Layer(name="ply", thickness_mm=4.0, conductivity_w_per_m_k=0.13)


def test_a_box_has_the_faces_of_a_box() -> None:
    box = shell_areas(
        half_widths_mm=[(0.0, 900.0), (2000.0, 900.0)],
        ceiling_mm=2000.0,
        length_mm=3000.0,
        arches=[],
    )
    assert (box.wall_m2, box.roof_m2, box.floor_m2) == pytest.approx((6.0, 5.4, 5.4))
    assert (box.rear_m2, box.volume_m3, box.arches_m2) == pytest.approx((3.6, 10.8, 0.0))


def test_walls_that_lean_in_are_longer_than_they_are_high() -> None:
    """3-4-5: 400 mm in over 300 mm of height."""
    found = shell_areas(
        half_widths_mm=[(0.0, 900.0), (300.0, 500.0)],
        ceiling_mm=300.0,
        length_mm=1000.0,
        arches=[],
    )
    assert found.wall_m2 == pytest.approx(0.5)
    assert found.roof_m2 == pytest.approx(1.0)
    assert found.rear_m2 == pytest.approx(0.42)


@pytest.mark.parametrize(
    ("half_widths_mm", "roof_m2"),
    [
        pytest.param([(0.0, 900.0), (1000.0, 800.0)], 1.6, id="roof above the last width"),
        pytest.param([(0.0, 900.0), (4000.0, 500.0)], 1.4, id="roof between two widths"),
        pytest.param([(500.0, 900.0), (1000.0, 800.0)], 1.6, id="no width at the floor"),
    ],
)
def test_widths_hold_beyond_the_ends(
    half_widths_mm: list[tuple[float, float]], roof_m2: float
) -> None:
    found = shell_areas(
        half_widths_mm=half_widths_mm, ceiling_mm=2000.0, length_mm=1000.0, arches=[]
    )
    assert found.roof_m2 == pytest.approx(roof_m2)
    assert found.floor_m2 == pytest.approx(1.8)


def test_an_arch_takes_floor_and_wall_and_adds_its_own_faces() -> None:
    arch = Arch(length_mm=800.0, width_mm=200.0, height_mm=300.0)
    found = shell_areas(
        half_widths_mm=[(0.0, 900.0), (2000.0, 900.0)],
        ceiling_mm=2000.0,
        length_mm=3000.0,
        arches=[arch],
    )
    assert found.floor_m2 == pytest.approx(5.4 - 2 * 0.16)
    assert found.wall_m2 == pytest.approx(6.0 - 0.24)
    assert found.arches_m2 == pytest.approx(2 * (0.16 + 0.24 + 2 * 0.06))
    assert found.volume_m3 == pytest.approx(10.8 - 2 * 0.048)


def test_what_nothing_covers_is_bare() -> None:
    found = coverage(area_m2=4.0, told=[])
    assert [each.share_frac for each in found] == [1.0]
    assert not found[0].insulation
    assert not found[0].lining
    assert coverage(area_m2=0.0, told=[]) == ()


def test_a_strip_counts_with_what_is_covered_worse_or_else_with_the_rest() -> None:
    foam = Told(area_m2=6.0, layer=FOAM, insulates=True)
    board = Told(area_m2=6.1, layer=PLY, insulates=False)
    strip = coverage(area_m2=6.46, told=[foam, board])
    assert [(len(each.insulation), len(each.lining)) for each in strip] == [(1, 1), (0, 0)]
    assert strip[1].share_frac == pytest.approx(0.46 / 6.46)
    whole = coverage(area_m2=6.15, told=[foam, board])
    assert [each.share_frac for each in whole] == [pytest.approx(1.0)]


@given(some.lists(some.tuples(some.floats(0.0, 30.0), some.booleans()), max_size=6))
def test_shares_add_up_and_more_area_covers_more(finishes: list[tuple[float, bool]]) -> None:
    told = [
        Told(area_m2=area, layer=FOAM if insulates else PLY, insulates=insulates)
        for area, insulates in finishes
    ]
    found = coverage(area_m2=12.0, told=told)
    assert sum(each.share_frac for each in found) == pytest.approx(1.0, abs=1e-5)
    layers = [len(each.insulation) + len(each.lining) for each in found]
    assert layers == sorted(layers, reverse=True)


@given(
    fill_mm=some.floats(5.0, 100.0),
    rib_frac=some.floats(0.0, 0.3),
    cover_mm=some.floats(0.0, 20.0),
    fill=some.floats(0.015, 0.06),
)
def test_ribs_lie_between_their_bounds(
    fill_mm: float, rib_frac: float, cover_mm: float, fill: float
) -> None:
    wall = bridged(
        outside_m2k_per_w=0.04,
        fill_mm=fill_mm,
        fill_w_per_m_k=fill,
        inside_m2k_per_w=0.13 + cover_mm / 130.0,
        cover_mm=cover_mm,
        rib_frac=rib_frac,
        rib_mm=40.0,
        sheet_mm=0.9,
        metal_w_per_m_k=50.0,
    )
    assert wall.clear_w_per_m2k <= wall.low_w_per_m2k + 1e-12
    assert wall.low_w_per_m2k <= wall.mean_w_per_m2k <= wall.high_w_per_m2k
    assert 0.0 <= wall.rib_zone_frac <= 1.0


@pytest.mark.parametrize(("rib_frac", "fill_mm"), [(-0.1, 25.0), (1.0, 25.0), (0.1, 0.0)])
def test_a_wall_of_nothing_but_ribs_is_refused(rib_frac: float, fill_mm: float) -> None:
    with pytest.raises(OutOfRange):
        bridged(
            outside_m2k_per_w=0.04,
            fill_mm=fill_mm,
            fill_w_per_m_k=0.03,
            inside_m2k_per_w=0.16,
            cover_mm=4.0,
            rib_frac=rib_frac,
            rib_mm=40.0,
            sheet_mm=0.9,
            metal_w_per_m_k=50.0,
        )


@given(mean=some.floats(0.5, 1.8), rib_m2=some.floats(1.0, 4.0))
def test_the_bridge_makes_the_mean_that_was_wanted(mean: float, rib_m2: float) -> None:
    """Resistances in series and side by side, put together again by hand."""
    area, out, inner, layers = 10.0, 0.04, 0.13, 1.7
    bridge = bridge_w_per_k(
        area_m2=area,
        rib_m2=rib_m2,
        mean_w_per_m2k=mean,
        outer_m2k_per_w=out,
        inner_m2k_per_w=inner,
        layers_m2k_per_w=layers,
    )
    beside = 1.0 / (layers / area + inner / (area - rib_m2))
    through = 1.0 / (1.0 / bridge + inner / rib_m2) if bridge > 0.0 else 0.0
    whole = 1.0 / (out / area + 1.0 / (beside + through))
    if 0.0 < bridge < rib_m2 / 0.001 * 0.999:
        assert whole / area == pytest.approx(mean, rel=1e-9)
    elif bridge == 0.0:
        assert whole / area >= mean - 1e-12
    else:
        assert whole / area <= mean + 1e-12


@pytest.mark.parametrize("rib_m2", [0.0, 10.0])
def test_a_bridge_needs_faces_on_both(rib_m2: float) -> None:
    with pytest.raises(OutOfRange, match="rib_m2"):
        bridge_w_per_k(
            area_m2=10.0,
            rib_m2=rib_m2,
            mean_w_per_m2k=1.0,
            outer_m2k_per_w=0.04,
            inner_m2k_per_w=0.13,
            layers_m2k_per_w=1.5,
        )


def test_a_divider_and_the_cab_stand_in_series() -> None:
    assert behind_w_per_k(divider_w_per_k=20.0, cab_w_per_k=0.0) == 0.0
    assert behind_w_per_k(divider_w_per_k=30.0, cab_w_per_k=30.0) == 15.0


def test_layers_hold_heat() -> None:
    """9 mm of plywood of 500 kg/m3 hold 7.2 kJ/(m2 K): EN 12524."""
    board = Layer(name="ply", thickness_mm=9.0, density_kg_per_m3=500.0, heat_j_per_kg_k=1600.0)
    assert held_j_per_k(area_m2=1.0, layers=[board]) == pytest.approx(7200.0)


def test_an_envelope_of_nothing_is_refused() -> None:
    with pytest.raises(OutOfRange, match="area_m2"):
        envelope(lines=[], air_w_per_k=1.0, held_wh_per_k=1.0)


def test_wood_and_gaps_hold_beyond_their_rows() -> None:
    """EN 12524: plywood of 300 kg/m3 0.09, of 1000 kg/m3 0.24 W/(m K)."""
    assert wood_w_per_m_k(density_kg_per_m3=200.0) == 0.09
    assert wood_w_per_m_k(density_kg_per_m3=1300.0) == 0.24
    assert wood_w_per_m_k(density_kg_per_m3=600.0) == pytest.approx(0.15)
    assert gap_m2k_per_w(gap_mm=1.0) == 0.11
    assert gap_m2k_per_w(gap_mm=20.0) == pytest.approx(0.175)


def test_unknown_names_say_what_there_is() -> None:
    for ask, match in (
        (lambda: assumed("nothing"), "rib-share"),
        (lambda: material("cheese"), "plywood"),
        (lambda: films("sideways"), "horizontal"),
        (lambda: glazing("paper"), "double acrylic"),
    ):
        with pytest.raises(UnknownName, match=match):
            ask()


@pytest.mark.parametrize("row", table("living_assumptions"), ids=lambda row: row["id"])
def test_an_assumption_lies_in_its_range_and_says_how_well_it_is_known(
    row: dict[str, str],
) -> None:
    found = assumed(row["id"])
    assert found.low <= found.value <= found.high
    assert found.title
    assert found.source


def test_the_darkest_blind_is_used() -> None:
    thin = Shade(passes_frac=0.1, insulance_m2k_per_w=0.1)
    thick = Shade(passes_frac=0.01, insulance_m2k_per_w=0.4)
    assert best_shade((thin, thick)) is thick
    assert best_shade(()).passes_frac == 1.0


def test_a_frame_takes_sun() -> None:
    assert framed_frac(gain_frac=0.6, clear_m2=0.2, face_m2=0.1) == 0.6
    assert framed_frac(gain_frac=0.6, clear_m2=0.05, face_m2=0.1) == pytest.approx(0.3)
