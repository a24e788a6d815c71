"""The stage hands panels and their neighbours on, and says what each neighbour costs."""

import pytest

from coachwright.climate.arrays import site_arrays
from coachwright.climate.panels import PanelSpec, flat_loss_frac, panel_year
from coachwright.climate.stage import power_w, stage
from coachwright.layout.stage import stage as layout_stage
from coachwright.model.build import Build
from tests.climate.years import measured
from tests.support.builds import build, fitting, part
from tests.support.electrics import PANEL

ARRAYS = site_arrays(weather=measured("greensboro"))
ROOF_MM = 2090
"""Height over the floor less the floor's over the ground."""


def made(*, unit: bool = True, folding: bool = False) -> Build:
    parts = [
        part(
            "panel",
            solar_panel=PANEL | {"folding": folding},
            body={"size": ["1400 mm", "700 mm", "35 mm"], "mass": "10 kg"},
        ),
        part("unit", body={"size": ["900 mm", "700 mm", "250 mm"], "mass": "35 kg"}),
        part("fan", body={"size": ["400 mm", "400 mm", "120 mm"], "mass": "4 kg"}),
    ]
    at = f"{ROOF_MM} mm"
    fittings = [
        fitting("sun", "panel", at=["1300 mm", "-350 mm", at], mounting="roof"),
        fitting("fan", "fan", at=["4200 mm", "-200 mm", at], mounting="roof"),
    ]
    if unit:
        fittings.append(fitting("cooler", "unit", at=["2800 mm", "-350 mm", at], mounting="roof"))
    return build({"own_parts": parts, "fittings": fittings})


def test_each_neighbour_costs_something_and_the_nearest_most() -> None:
    one = made()
    found = stage(one, layout_stage(one), ARRAYS)
    (panel,) = found.panels
    assert panel.name == "sun"
    assert panel.least_wh < panel.year_wh < panel.free_wh
    assert sum(panel.month_wh) == pytest.approx(panel.year_wh)
    assert [cost.name for cost in found.obstacles] == ["cooler", "fan"]
    assert found.obstacles[0].lost_wh > 10 * found.obstacles[1].lost_wh >= 0.0
    assert found.heading_deg is None
    assert found.site == ARRAYS.weather.title


def test_a_panel_alone_is_the_subject_s_own() -> None:
    one = made(unit=False)
    layout = layout_stage(one)
    (panel,) = stage(one, layout, ARRAYS, heading_deg=90.0).panels
    alone = panel_year(
        weather=ARRAYS.weather,
        path=ARRAYS.path,
        panel=PanelSpec(rated_w=180.0, coefficient_frac_per_k=-0.0035, bonded=False),
        loss_frac=flat_loss_frac(),
    )
    assert panel.free_wh == pytest.approx(alone.power_w.sum())
    assert panel.year_wh > 0.98 * panel.free_wh


def test_heading_away_from_the_cooler_s_shadow_gives_more() -> None:
    one = made()
    layout = layout_stage(one)
    north, south = (stage(one, layout, ARRAYS, heading_deg=way).panels[0] for way in (0.0, 180.0))
    assert south.year_wh > north.year_wh
    assert south.free_wh == pytest.approx(north.free_wh)


def test_folding_panels_are_not_on_the_roof() -> None:
    one = made(folding=True)
    found = stage(one, layout_stage(one), ARRAYS)
    assert found.panels == ()
    assert found.obstacles == ()


def test_the_hours_of_all_panels_add_up_to_their_years() -> None:
    one = made()
    layout = layout_stage(one)
    for heading in (None, 30.0):
        years = sum(each.year_wh for each in stage(one, layout, ARRAYS, heading).panels)
        assert power_w(one, layout, ARRAYS, heading).sum() == pytest.approx(years)


def test_what_a_neighbour_costs_is_the_year_without_it_less_the_year_with_it() -> None:
    with_it, without = made(), made(unit=False)
    costs = {
        each.name: each.lost_wh for each in stage(with_it, layout_stage(with_it), ARRAYS).obstacles
    }
    years = [power_w(each, layout_stage(each), ARRAYS).sum() for each in (with_it, without)]
    assert costs["cooler"] == pytest.approx(years[1] - years[0], rel=1e-6)
