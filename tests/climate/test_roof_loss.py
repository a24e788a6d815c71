"""The field of losses over a roof against the masks of single panels."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.climate.panels import PanelSpec, panel_year, sky_hours
from coachwright.climate.roof_loss import TILE_MM, Patch, loss, reaches
from coachwright.climate.shading import ALTITUDES, BEARINGS, Face, Obstacle, mask
from coachwright.climate.sun import sun_path
from tests.climate.years import measured

YEAR = measured("greensboro")
PATH = sun_path(place=YEAR.place, sun_min=YEAR.sun_min)
PANEL = PanelSpec(rated_w=250.0, coefficient_frac_per_k=-0.0035, bonded=False)
ROOF = Patch(low_mm=(0.0, -600.0), high_mm=(4000.0, 600.0))
UNIT = Obstacle(name="unit", low_mm=(2500.0, -350.0, 1880.0), high_mm=(3400.0, 350.0, 2150.0))
FAN = Obstacle(name="fan", low_mm=(200.0, -500.0, 1880.0), high_mm=(600.0, -100.0, 2050.0))
FACE_MM = 1920.0
CELLS_H = sky_hours(
    weather=YEAR, path=PATH, panel=PANEL, loss_frac=0.08, heading_deg=120.0
).cells_h.sum(axis=0)


@pytest.mark.parametrize("heading", [None, 0.0, 155.0])
def test_the_sky_s_hours_are_the_panel_s_year_summed_another_way(heading: float | None) -> None:
    face = Face(low_mm=(900.0, -500.0), high_mm=(2400.0, 500.0), z_mm=FACE_MM)
    made = mask(face=face, obstacles=(UNIT, FAN))
    hours = sky_hours(
        weather=YEAR, path=PATH, panel=PANEL, loss_frac=0.08, heading_deg=heading
    ).cells_h
    year = panel_year(
        weather=YEAR, path=PATH, panel=PANEL, loss_frac=0.08, made=made, heading_deg=heading
    )
    kept_wh = PANEL.rated_w * (hours * (1.0 - made.shaded_frac)).sum()
    assert kept_wh == pytest.approx(year.power_w.sum(), rel=1e-9)
    assert PANEL.rated_w * hours.sum() == pytest.approx(year.free_w.sum(), rel=1e-9)


@pytest.mark.parametrize("low", [(800.0, -300.0), (2200.0, 400.0), (3500.0, -100.0)])
def test_eight_squares_of_the_field_are_the_mask_of_eight_points(low: tuple[float, float]) -> None:
    # a panel of 200 mm has its 8 by 8 rays where the squares of 25 mm have their middles
    high = (low[0] + 8 * TILE_MM, low[1] + 8 * TILE_MM)
    made = mask(face=Face(low_mm=low, high_mm=high, z_mm=FACE_MM), obstacles=(UNIT, FAN))
    around = reaches(patch=ROOF, obstacles=(UNIT, FAN))
    found = loss(patch=ROOF, around=around, cells_h=CELLS_H, face_mm=FACE_MM)
    assert found.mean_h(low, high) == pytest.approx((CELLS_H * made.shaded_frac).sum(), rel=1e-6)


def test_parts_of_squares_count_by_their_area() -> None:
    around = reaches(patch=ROOF, obstacles=(UNIT,))
    found = loss(patch=ROOF, around=around, cells_h=CELLS_H, face_mm=FACE_MM)
    whole = found.mean_h((1500.0, -400.0), (2410.0, 500.0))
    first = found.mean_h((1500.0, -400.0), (2010.0, 500.0))
    second = found.mean_h((2010.0, -400.0), (2410.0, 500.0))
    assert whole == pytest.approx((first * 510.0 + second * 400.0) / 910.0)
    assert second > first > 0.0
    assert found.mean_h((5000.0, 0.0), (5400.0, 200.0)) == 0.0


def test_a_roof_whose_things_are_lower_loses_nothing() -> None:
    around = reaches(patch=ROOF, obstacles=(UNIT, FAN))
    found = loss(patch=ROOF, around=around, cells_h=CELLS_H, face_mm=2200.0)
    assert found.summed.max() == 0.0


def test_under_an_obstacle_all_is_lost() -> None:
    around = reaches(patch=ROOF, obstacles=(UNIT,))
    found = loss(patch=ROOF, around=around, cells_h=CELLS_H, face_mm=FACE_MM)
    assert found.mean_h((2600.0, -200.0), (3300.0, 200.0)) == pytest.approx(CELLS_H.sum())


@settings(max_examples=15)
@given(st.floats(1950.0, 2300.0), st.floats(1.0, 300.0), st.floats(-600.0, 400.0))
def test_higher_or_more_things_never_take_less(top: float, more: float, y: float) -> None:
    def field(*boxes: Obstacle) -> np.ndarray:
        even = np.full((BEARINGS, ALTITUDES), 1.0)
        return loss(
            patch=ROOF,
            around=reaches(patch=ROOF, obstacles=boxes),
            cells_h=even,
            face_mm=FACE_MM,
        ).summed

    def box(top_mm: float) -> Obstacle:
        return Obstacle(
            name="box", low_mm=(2000.0, y, 1880.0), high_mm=(2300.0, y + 200.0, top_mm)
        )

    alone = field(box(top))
    assert (field(box(top + more)) >= alone).all()
    assert (field(box(top), FAN) >= alone).all()
