"""Panels by their energy under shade: a field of 2000 by 1000 mm at measured and made-up sites."""

from dataclasses import replace
from typing import Any

import pytest

from coachwright.arrange.model import RoofEnergy
from coachwright.arrange.roof import propose_roof
from coachwright.arrange.roof_energy import STEP_WH, RoofSite, energy_notes, propose_roof_at
from coachwright.arrange.roof_field import RoofWish
from coachwright.arrange.solving import Search
from coachwright.climate.arrays import site_arrays
from coachwright.climate.panels import PanelSpec, flat_loss_frac, panel_year
from coachwright.climate.shading import Face, Obstacle, mask
from coachwright.climate.stage import stage as climate_stage
from coachwright.errors import CallError
from coachwright.layout.stage import stage as layout_stage
from coachwright.model.build import Build
from tests.arrange.roofs import panel, panel_data, roof_build
from tests.climate.years import measured
from tests.support import builds

SEARCH = Search(limit_s=20)
ARRAYS = site_arrays(weather=measured("greensboro"))
YEAR = RoofSite(arrays=ARRAYS)
SMALL = panel("p", (490, 490), 50)


def with_tower(x_mm: float = 2800.0) -> Build:
    """Return the roof with a tower of 200 by 200 mm and 600 mm in its middle line."""
    tower = builds.part("tower", body={"size": ["200 mm", "200 mm", "600 mm"], "mass": "5 kg"})
    at = [f"{x_mm} mm", "-100 mm", "against roof"]
    return roof_build(
        fittings=[builds.fitting("tower", "tower", at=at, mounting="roof")], parts=[tower]
    )


def test_a_free_roof_gives_what_its_panels_give() -> None:
    plan = propose_roof_at(roof_build(), RoofWish(panels=(SMALL,)), SEARCH, site=YEAR)
    watts = propose_roof(roof_build(), RoofWish(panels=(SMALL,)), SEARCH)
    assert plan.total_w == watts.total_w == 6 * 50
    alone = panel_year(
        weather=ARRAYS.weather,
        path=ARRAYS.path,
        panel=PanelSpec(rated_w=50.0, coefficient_frac_per_k=-0.0035, bonded=False),
        loss_frac=flat_loss_frac(),
    ).power_w.sum()
    assert plan.energy is not None
    assert plan.energy.counted_wh == pytest.approx(6 * alone, abs=6 * STEP_WH)
    assert plan.energy.year_wh == pytest.approx(6 * alone, rel=1e-9)
    assert plan.energy.free_wh == pytest.approx(plan.energy.year_wh)
    assert sum(plan.energy.month_wh) == pytest.approx(plan.energy.year_wh)
    assert plan.energy.present_wh == 0.0
    assert (plan.proof.proven, plan.faults) == (True, ())


def test_one_panel_lies_where_every_place_tried_out_gives_least_shade() -> None:
    # the tower stands near the rear: every place of a grid of 40 mm judged by its own mask, which
    # knows nothing of the field; the plan's place may be worse by the places that are not tried
    build = with_tower()
    plan = propose_roof_at(build, RoofWish(panels=(SMALL,), most=1), SEARCH, site=YEAR)
    (place,) = plan.panels
    roof_mm = build.vehicle.outside.height_mm - build.vehicle.outside.floor_height_mm
    tower = Obstacle(
        name="tower", low_mm=(2800.0, -100.0, roof_mm), high_mm=(3000.0, 100.0, roof_mm + 600.0)
    )

    def kept_wh(low: tuple[float, float]) -> float:
        face = Face(low_mm=low, high_mm=(low[0] + 490.0, low[1] + 490.0), z_mm=roof_mm + 30.0)
        return float(
            panel_year(
                weather=ARRAYS.weather,
                path=ARRAYS.path,
                panel=PanelSpec(rated_w=50.0, coefficient_frac_per_k=-0.0035, bonded=False),
                loss_frac=flat_loss_frac(),
                made=mask(face=face, obstacles=(tower,)),
                heading_deg=None,
            ).power_w.sum()
        )

    everywhere = [
        kept_wh((float(x), float(y))) for x in range(1025, 2300, 80) for y in (-500, -250, 0, 10)
    ]
    assert kept_wh(place.low_mm) >= max(everywhere) * (1 - 2e-3)
    assert place.low_mm[0] < 1100
    assert place.face_mm == pytest.approx(roof_mm + 30.0)
    assert place.value * STEP_WH == pytest.approx(kept_wh(place.low_mm), rel=5e-3)


def test_an_obstacle_that_takes_no_room_costs_its_shade() -> None:
    # two rows of two pass the tower on both sides: no watt is lost, but light is
    build = with_tower(2000.0)
    wish = RoofWish(panels=(panel("p", (990, 380), 80),), most=4)
    plan = propose_roof_at(build, wish, SEARCH, site=YEAR)
    (cost,) = plan.obstacles
    assert (cost.name, cost.cost_w, cost.proven) == ("tower", 0.0, True)
    assert cost.cost_wh is not None
    assert cost.cost_wh == cost.cost_value * STEP_WH
    free = propose_roof_at(roof_build(), wish, SEARCH, site=YEAR)
    assert plan.energy is not None
    assert free.energy is not None
    assert cost.cost_wh == pytest.approx(free.energy.counted_wh - plan.energy.counted_wh)
    # the masks of the check cost the same within a quarter of it
    judged = free.energy.year_wh - plan.energy.year_wh
    assert cost.cost_wh == pytest.approx(judged, rel=0.25)


def test_what_is_told_is_the_climate_s_own_figure() -> None:
    plan = propose_roof_at(with_tower(), RoofWish(panels=(SMALL,)), SEARCH, site=YEAR)
    sun = climate_stage(plan.build, layout_stage(plan.build), ARRAYS)
    assert plan.energy is not None
    assert plan.energy.year_wh == pytest.approx(sum(each.year_wh for each in sun.panels))
    assert plan.energy.site == ARRAYS.weather.title
    assert plan.energy.attribution == ARRAYS.weather.attribution


def test_the_poorest_month_counts_where_asked() -> None:
    site = RoofSite(arrays=ARRAYS, by="month")
    plan = propose_roof_at(with_tower(), RoofWish(panels=(SMALL,)), SEARCH, site=site)
    assert plan.energy is not None
    assert plan.energy.month == "December"
    assert plan.energy.counted_wh == pytest.approx(plan.energy.month_wh[11], rel=0.01)
    assert plan.energy.counted_wh < plan.energy.year_wh / 12


def test_heading_away_from_the_shadow_costs_less() -> None:
    # heading south the tower in the rear stands to the north of the panels
    wish = RoofWish(panels=(SMALL,))
    energies = {}
    for heading in (0.0, 180.0):
        site = RoofSite(arrays=ARRAYS, heading_deg=heading)
        energies[heading] = propose_roof_at(with_tower(), wish, SEARCH, site=site).energy
    north, south = energies[0.0], energies[180.0]
    assert north is not None
    assert south is not None
    assert south.counted_wh > north.counted_wh


def test_a_panel_on_high_rails_in_the_light_of_a_glued_one_is_said() -> None:
    high = builds.sheet(
        {
            "own_parts": [
                builds.part("legs", body={"size": ["480 mm", "480 mm", "900 mm"], "mass": "3 kg"})
            ]
        }
    ).own_parts[0]
    wish = RoofWish(
        panels=(SMALL, panel("glued", (1480, 490), 150, bonded=True)), mount=high, most=2
    )
    plan = propose_roof_at(roof_build(), wish, SEARCH, site=YEAR)
    assert {place.part for place in plan.panels} == {"p", "glued"}
    assert {round(place.face_mm) for place in plan.panels} == {2120, 3020}
    assert any("shade of panels on panels" in note for note in plan.notes)


def test_a_rack_s_height_counts() -> None:
    rack: dict[str, Any] = builds.part(
        "rack",
        body={"size": ["1000 mm", "1000 mm", "100 mm"], "mass": "20 kg"},
        roof_rack={"load_limit": "80 kg"},
    )
    build = roof_build(
        fittings=[
            builds.fitting(
                "rack", "rack", at=["1025 mm", "-500 mm", "against roof"], mounting="roof"
            ),
            builds.fitting(
                "old", "old", at=["1100 mm", "0 mm", "above rack"], mounting="roof", on="rack"
            ),
        ],
        parts=[rack, panel_data("old", (700, 400), 80)],
    )
    plan = propose_roof_at(
        build, RoofWish(panels=(panel("p", (990, 490), 100),)), SEARCH, site=YEAR
    )
    placed = {fitted.name: fitted for fitted in plan.build.fittings}
    for place in plan.panels:
        fitted = placed[place.name]
        assert place.face_mm == pytest.approx(fitted.at_mm[2] + fitted.part.body.size_mm[2])
    assert len({place.face_mm for place in plan.panels}) == 2
    assert plan.energy is not None
    assert plan.energy.present_wh > 0.0


def test_another_poorest_month_is_said() -> None:
    energy = RoofEnergy(
        site="",
        by="month",
        month="December",
        counted_wh=90.0,
        year_wh=1190.0,
        month_wh=(80.0, *(100.0,) * 10, 90.0),
        free_wh=1200.0,
        present_wh=0.0,
        attribution="",
        caution="",
    )
    (note,) = energy_notes(energy, judged_wh=90.0, month=11)
    assert note == "the search counted December; with its shade the poorest month is January"
    assert list(energy_notes(replace(energy, by="year"), judged_wh=90.0, month=None)) == []


def test_something_must_be_there_to_choose_from_for_energy_too() -> None:
    for site in (YEAR, RoofSite(arrays=ARRAYS, by="month")):
        with pytest.raises(CallError, match="no panel to choose from"):
            propose_roof_at(roof_build(), RoofWish(panels=()), SEARCH, site=site)
