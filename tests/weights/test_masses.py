"""Masses and places that no data sheet gives."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange, UnknownName
from coachwright.weights.assumptions import assumption
from coachwright.weights.margins import right_side_frac, side_difference_frac
from coachwright.weights.masses import (
    dry_vehicle,
    exchanged_wheels_kg,
    fitting_tolerance,
    liquid_mass_kg,
    sheet_mass_kg,
    wheel_centre_mm,
)
from coachwright.weights.moments import PointMass, balance
from coachwright.weights.places import DoorArea, Place, luggage_place, surface_place
from coachwright.weights.us import label_standard, normal_occupants, occc


@given(
    st.floats(min_value=800, max_value=2000),
    st.floats(min_value=500, max_value=2000),
    st.floats(min_value=0, max_value=90),
    st.floats(min_value=0, max_value=100),
)
def test_dry_vehicle_fuel_and_driver_make_the_kerb_figures(
    front: float, rear: float, fuel_kg: float, driver_kg: float
) -> None:
    fuel = PointMass(mass_kg=fuel_kg, x_mm=1600, y_mm=-500, height_mm=360)
    driver = PointMass(mass_kg=driver_kg, x_mm=650, y_mm=-450, height_mm=910)
    dry = dry_vehicle(
        kerb_front_kg=front,
        kerb_rear_kg=rear,
        cg_y_mm=12,
        cg_height_mm=720,
        wheelbase_mm=4000,
        fuel=fuel,
        driver=driver,
    )
    found = balance(masses=[dry, fuel, driver], wheelbase_mm=4000)
    assert found.front_kg == pytest.approx(front)
    assert found.rear_kg == pytest.approx(rear)
    assert found.cg_y_mm == pytest.approx(12)
    assert found.cg_height_mm == pytest.approx(720)


def test_a_vehicle_is_more_than_its_fuel() -> None:
    with pytest.raises(OutOfRange, match="more than the fuel and driver it includes"):
        dry_vehicle(
            kerb_front_kg=50,
            kerb_rear_kg=50,
            cg_y_mm=0,
            cg_height_mm=700,
            wheelbase_mm=4000,
            fuel=PointMass(mass_kg=60, x_mm=0),
            driver=PointMass(mass_kg=60, x_mm=0),
        )


def test_a_litre_of_water_is_a_kilogram() -> None:
    assert liquid_mass_kg(volume_l=110, density_kg_per_l=1.0) == 110


def test_a_square_metre_of_plywood() -> None:
    """9 mm at 0.5 kg/L is 4.5 kg: hand calculation."""
    assert sheet_mass_kg(area_m2=1, thickness_mm=9, density_kg_per_l=0.5) == pytest.approx(4.5)


def test_lighter_wheels_take_mass_off() -> None:
    assert exchanged_wheels_kg(new_kg=26, old_kg=28, wheels=4) == -8


def test_a_wheel_centre_stands_half_a_diameter_high() -> None:
    """265/70R17: 802.8 mm, published worked example."""
    found = wheel_centre_mm(rim_mm=17 * 25.4, width_mm=265, aspect_frac=0.70)
    assert 2 * found == pytest.approx(802.8, rel=5e-4)


def test_a_measured_mass_is_more_certain() -> None:
    def tolerance(declared: float, *, measured: bool) -> float:
        return fitting_tolerance(
            mass_kg=200,
            declared_frac=declared,
            measured=measured,
            measured_frac=0.01,
            systematic_frac=0.3,
        ).tolerance_kg

    assert tolerance(0.05, measured=False) == 10
    assert tolerance(0.05, measured=True) == 2
    assert tolerance(0.005, measured=True) == 1, "never less certain than the part says"


def _surface(surface: str, *doors: DoorArea) -> Place:
    return surface_place(
        surface=surface, cab_line_mm=1000, rear_mm=4000, ceiling_mm=1900, doors=doors
    )


def test_surfaces_lie_where_they_are() -> None:
    assert _surface("floor") == Place(x_mm=2500, y_mm=0, z_mm=0)
    assert _surface("walls") == Place(x_mm=2500, y_mm=0, z_mm=950)
    assert _surface("ceiling") == Place(x_mm=2500, y_mm=0, z_mm=1900)
    assert _surface("doors") == Place(x_mm=4000, y_mm=0, z_mm=950)


def test_a_layer_on_the_doors_is_spread_by_area() -> None:
    rear = DoorArea(middle=Place(x_mm=4000, y_mm=0, z_mm=900), area_m2=3)
    side = DoorArea(middle=Place(x_mm=2000, y_mm=900, z_mm=900), area_m2=1)
    assert _surface("doors", rear, side) == Place(x_mm=3500, y_mm=225, z_mm=900)


def test_there_is_no_other_surface() -> None:
    with pytest.raises(OutOfRange, match="walls, ceiling, floor, doors"):
        _surface("bonnet")


def test_luggage_lies_in_the_middle_of_the_rear_third() -> None:
    found = luggage_place(cab_line_mm=1000, rear_mm=4000, reach_frac=5 / 6, height_mm=300)
    assert found.x_mm == pytest.approx((3000 + 4000) / 2)


def test_an_assumption_that_is_not_there_says_which_are() -> None:
    with pytest.raises(UnknownName, match="tolerance-person"):
        assumption("nothing")


def test_sides() -> None:
    assert side_difference_frac(left_kg=500, right_kg=500) == 0
    assert side_difference_frac(left_kg=550, right_kg=450) == pytest.approx(0.1)
    even = right_side_frac(
        front_kg=1200, rear_kg=900, cg_y_mm=0, track_front_mm=1800, track_rear_mm=1700
    )
    assert even == 0.5


@pytest.mark.parametrize("seats", [1, 23])
def test_the_table_of_occupants_ends(seats: int) -> None:
    with pytest.raises(OutOfRange, match="2 to 22"):
        normal_occupants(seats=seats)


def test_the_heavier_label_standard_begins_above_ten_thousand_pounds() -> None:
    """NHTSA letter 08-003469: 4,536 kg (10,000 lb)."""
    assert label_standard(gross_kg=4535.9237) == "us-49cfr571-110"
    assert label_standard(gross_kg=4540) == "us-49cfr571-120"


@pytest.mark.parametrize("gross_kg", [4105.0, 5003.0])
def test_the_carrying_capacity_cites_the_standard_that_governs_the_vehicle(
    gross_kg: float,
) -> None:
    """NHTSA letter 08-003469: motor homes over 10,000 lb are labelled under 571.120."""
    found = occc(gross_kg=gross_kg, unloaded_kg=3400, belts=2)
    assert label_standard(gross_kg=gross_kg) in found.working.references
