"""Panels against PVWatts as pvlib programs it; balances of shade and clipping."""

import numpy as np
import pytest
from pvlib import iam, pvsystem, temperature

from coachwright.climate.panels import (
    BONDED,
    FREE,
    PanelSpec,
    cell_degc,
    controlled_w,
    incidence_frac,
    monthly_wh,
    panel_year,
)
from coachwright.climate.shading import Face, Obstacle, mask
from coachwright.climate.sun import sun_path
from coachwright.errors import OutOfRange
from tests.climate.years import measured

PANEL = PanelSpec(rated_w=200.0, coefficient_frac_per_k=-0.0035, bonded=False)
YEAR = measured("greensboro")
PATH = sun_path(place=YEAR.place, sun_min=YEAR.sun_min)
LIGHT = YEAR.ghi_w_per_m2
UNIT = Obstacle(name="unit", low_mm=(1700.0, -350.0, 0.0), high_mm=(2700.0, 350.0, 270.0))
FACE = Face(low_mm=(0.0, -500.0), high_mm=(1600.0, 500.0), z_mm=20.0)


@pytest.mark.parametrize(
    ("mounting", "theirs"),
    [(BONDED, "insulated_back_glass_polymer"), (FREE, "open_rack_glass_polymer")],
)
def test_cells_are_as_warm_as_the_library_says(mounting: str, theirs: str) -> None:
    # pvlib temperature.sapm_cell with its own parameter sets (1e-9)
    parameters = temperature.TEMPERATURE_MODEL_PARAMETERS["sapm"][theirs]
    wanted = temperature.sapm_cell(LIGHT, YEAR.air_degc, YEAR.wind_m_per_s, **parameters)
    found = cell_degc(
        light_w_per_m2=LIGHT,
        air=YEAR.air_degc,
        wind_m_per_s=YEAR.wind_m_per_s,
        mounting=mounting,
    )
    assert found == pytest.approx(wanted, rel=1e-9)
    with pytest.raises(OutOfRange, match="mounting is floating"):
        cell_degc(
            light_w_per_m2=LIGHT,
            air=YEAR.air_degc,
            wind_m_per_s=YEAR.wind_m_per_s,
            mounting="floating",
        )


def test_the_year_of_a_free_panel_is_pvwatts_of_the_library() -> None:
    # pvlib pvsystem.pvwatts_dc over cells of its sapm_cell and light through its iam.physical,
    # beam and sky apart (1e-6): an independent composition of the same published models
    found = panel_year(weather=YEAR, path=PATH, panel=PANEL, loss_frac=0.0)
    zenith = 90.0 - PATH.altitude_deg
    sky = np.minimum(YEAR.dhi_w_per_m2, LIGHT)
    up = PATH.altitude_deg > 0.0
    beam = np.where(up, LIGHT - sky, 0.0)
    sky = np.where(up, sky, LIGHT)
    even = iam.marion_diffuse("physical", 0.0)["sky"]
    effective = beam * iam.physical(np.clip(zenith, 0, 90)) + sky * even
    wanted = pvsystem.pvwatts_dc(effective, found.cell_degc, 200.0, -0.0035)
    assert found.power_w == pytest.approx(np.nan_to_num(wanted), rel=1e-6, abs=1e-6)
    assert found.power_w == pytest.approx(found.free_w)


def test_a_bonded_panel_is_warmer_and_gives_less() -> None:
    free = panel_year(weather=YEAR, path=PATH, panel=PANEL, loss_frac=0.0)
    bonded = panel_year(
        weather=YEAR,
        path=PATH,
        panel=PanelSpec(rated_w=200.0, coefficient_frac_per_k=-0.0035, bonded=True),
        loss_frac=0.0,
    )
    assert bonded.cell_degc.max() > free.cell_degc.max() + 15.0
    share = bonded.power_w.sum() / free.power_w.sum()
    # Sandia's coefficients part the two by 28 K in full sun and calm, half of it over a year: 4
    # to 8 % at -0.35 %/K
    assert 0.92 < share < 0.96


def test_losses_and_power_are_in_proportion() -> None:
    whole = panel_year(weather=YEAR, path=PATH, panel=PANEL, loss_frac=0.0).power_w
    less = panel_year(weather=YEAR, path=PATH, panel=PANEL, loss_frac=0.14).power_w
    assert less == pytest.approx(0.86 * whole)
    assert monthly_wh(power_w=whole).sum() == pytest.approx(whole.sum())


def test_shade_takes_from_beam_and_sky_and_sections_take_more() -> None:
    made = mask(face=FACE, obstacles=(UNIT,))
    for heading in (0.0, 180.0):
        found = panel_year(
            weather=YEAR, path=PATH, panel=PANEL, loss_frac=0.1, made=made, heading_deg=heading
        )
        assert (found.least_w <= found.power_w + 1e-9).all()
        assert (found.power_w <= found.free_w + 1e-9).all()
        assert found.power_w.sum() < found.free_w.sum()
    north = panel_year(weather=YEAR, path=PATH, panel=PANEL, loss_frac=0.1, made=made)
    south = panel_year(
        weather=YEAR, path=PATH, panel=PANEL, loss_frac=0.1, made=made, heading_deg=180.0
    )
    # heading north the unit stands south of the panel, where the sun is
    assert north.power_w.sum() < south.power_w.sum()


def test_a_controller_clips_and_loses_nothing_else() -> None:
    power = panel_year(weather=YEAR, path=PATH, panel=PANEL, loss_frac=0.0).power_w
    given, lost = controlled_w(panels_w=power, efficiency_frac=0.97, limit_w=120.0)
    assert given.max() == 120.0
    assert given + lost == pytest.approx(0.97 * power)


def test_incidence_is_whole_from_above_and_nothing_along_the_glass() -> None:
    found = incidence_frac(angle_deg=np.array([0.0, 60.0, 90.0, 120.0]))
    # De Soto 2006, figure 4: about 0.95 at 60 deg
    assert found == pytest.approx([1.0, 0.95, 0.0, 0.0], abs=0.015)
