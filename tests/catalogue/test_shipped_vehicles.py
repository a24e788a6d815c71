"""The shipped base vehicles: each file is read, and each vehicle agrees with itself."""

import tomllib
from itertools import combinations, pairwise
from pathlib import Path

import pytest

import coachwright
from coachwright.model.reading import read_record
from coachwright.model.vehicle import BaseVehicle, Market, UnderbodyZone

FOLDER = Path(coachwright.__file__).parent / "catalogue" / "vehicles"
FILES = sorted(FOLDER.glob("*.toml"))

TYRE_LOAD_KG = {
    105: 925.0,
    107: 975.0,
    109: 1030.0,
    116: 1250.0,
    118: 1320.0,
    120: 1400.0,
    121: 1450.0,
}
"""Load index to load of one tyre: ISO 4000-1, also UN R54 annex 4."""

PRESSURE_EXPONENT = 0.8
"""Load proportional to pressure to the power 0.8: ETRTO, commercial tyres."""


def _read(file: Path) -> BaseVehicle:
    vehicle, faults = read_record(
        BaseVehicle, tomllib.loads(file.read_text(encoding="utf-8")), file.name
    )
    assert vehicle is not None, faults
    return vehicle


VEHICLES = [_read(file) for file in FILES]
each = pytest.mark.parametrize("vehicle", VEHICLES, ids=lambda vehicle: vehicle.id)


def test_there_are_enough_vehicles_for_every_market() -> None:
    assert len(VEHICLES) >= 6
    assert {vehicle.market for vehicle in VEHICLES} == set(Market)


def test_they_cover_lengths_roofs_and_ratings() -> None:
    assert len({round(vehicle.outside.length_mm) for vehicle in VEHICLES}) >= 2
    assert len({round(vehicle.outside.height_mm) for vehicle in VEHICLES}) >= 2
    assert any(vehicle.ratings.gross_kg == 3500.0 for vehicle in VEHICLES)
    assert any(vehicle.ratings.gross_kg > 3500.0 for vehicle in VEHICLES)
    assert any(vehicle.tyre.dual_rear for vehicle in VEHICLES)


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_the_id_is_the_name_of_the_file(file: Path) -> None:
    assert _read(file).id == file.stem


@each
def test_it_weighs_less_than_it_may(vehicle: BaseVehicle) -> None:
    kerb, ratings = vehicle.kerb, vehicle.ratings
    assert kerb.front_kg < ratings.front_axle_kg
    assert kerb.rear_kg < ratings.rear_axle_kg
    # A van without a tonne to load would not be bought for conversion.
    assert ratings.gross_kg - kerb.front_kg - kerb.rear_kg > 1000.0
    assert ratings.gross_train_kg is not None
    assert ratings.gross_train_kg > ratings.gross_kg


@each
def test_its_axles_together_may_carry_the_gross_rating(vehicle: BaseVehicle) -> None:
    """(EU) 1230/2012 Annex I Part A 2; for the US a 49 CFR 567 letter of interpretation."""
    ratings = vehicle.ratings
    assert ratings.front_axle_kg + ratings.rear_axle_kg >= ratings.gross_kg


@each
def test_its_tyres_carry_its_axles_at_the_placard_pressure(vehicle: BaseVehicle) -> None:
    tyre, ratings = vehicle.tyre, vehicle.ratings
    single_kg = TYRE_LOAD_KG[tyre.load_index_single]
    rear_kg = 2 * single_kg
    if tyre.dual_rear:
        assert tyre.load_index_dual is not None
        rear_kg = 4 * TYRE_LOAD_KG[tyre.load_index_dual]
    front_frac = (tyre.front_pressure_kpa / tyre.rated_pressure_kpa) ** PRESSURE_EXPONENT
    rear_frac = (tyre.rear_pressure_kpa / tyre.rated_pressure_kpa) ** PRESSURE_EXPONENT
    assert max(front_frac, rear_frac) <= 1.0
    assert 2 * single_kg * front_frac >= ratings.front_axle_kg
    assert rear_kg * rear_frac >= ratings.rear_axle_kg


@each
def test_its_standard_tyre_is_not_larger_than_the_largest(vehicle: BaseVehicle) -> None:
    size = vehicle.tyre.size
    diameter_mm = size.rim_mm + 2 * size.width_mm * size.aspect_frac
    assert diameter_mm <= vehicle.tyre.largest_diameter_mm <= 1.06 * diameter_mm


@each
def test_its_shell_narrows_upwards_inside_the_body(vehicle: BaseVehicle) -> None:
    shell, outside = vehicle.shell, vehicle.outside
    assert len(shell.half_widths) >= 4
    assert shell.half_widths[0].z_mm == 0.0
    assert shell.half_widths[-1].z_mm == shell.ceiling_mm
    for lower, upper in pairwise(shell.half_widths):
        assert lower.z_mm < upper.z_mm
        assert lower.half_width_mm >= upper.half_width_mm
    assert shell.half_widths[0].half_width_mm < outside.width_mm / 2
    assert outside.floor_height_mm + shell.ceiling_mm < outside.height_mm
    assert 0.0 < shell.cab_line_mm < shell.rear_mm
    assert shell.rear_mm < outside.length_mm - outside.front_overhang_mm


@each
def test_its_wheel_arches_stand_round_the_rear_axle(vehicle: BaseVehicle) -> None:
    (arch,) = vehicle.shell.wheel_arches
    middle_mm = (arch.x_from_mm + arch.x_to_mm) / 2
    assert middle_mm == pytest.approx(vehicle.outside.wheelbase_mm)
    assert arch.inner_y_mm < vehicle.shell.half_widths[0].half_width_mm


@each
def test_its_openings_lie_in_its_walls(vehicle: BaseVehicle) -> None:
    shell = vehicle.shell
    assert {aperture.name for aperture in vehicle.apertures} >= {"sliding door", "rear doors"}
    for aperture in vehicle.apertures:
        end_mm = aperture.from_mm + aperture.clear_width_mm
        assert aperture.sill_mm + aperture.clear_height_mm < shell.ceiling_mm
        if aperture.wall == "rear":
            assert end_mm == pytest.approx(-aperture.from_mm)
            assert end_mm < shell.half_widths[0].half_width_mm
        else:
            assert shell.cab_line_mm <= aperture.from_mm
            assert end_mm <= shell.wheel_arches[0].x_from_mm


@each
def test_people_step_out_on_the_side_of_the_kerb(vehicle: BaseVehicle) -> None:
    side = "left" if vehicle.market is Market.UK else "right"
    (driver,) = [seat for seat in vehicle.seats if seat.driver]
    assert [a.wall for a in vehicle.apertures if a.name == "sliding door"] == [side]
    assert (driver.reference_mm[1] < 0.0) is (side == "right")


@each
def test_its_roof_outline_lies_on_the_roof(vehicle: BaseVehicle) -> None:
    roof, outside = vehicle.roof, vehicle.outside
    assert roof.x_from_mm < roof.x_to_mm < outside.length_mm - outside.front_overhang_mm
    assert roof.half_width_mm <= vehicle.shell.half_widths[-1].half_width_mm


@each
def test_its_underbody_zones_are_apart_and_off_the_ground(vehicle: BaseVehicle) -> None:
    for zone in vehicle.underbody:
        for low_mm, high_mm in zip(zone.from_mm, zone.to_mm, strict=True):
            assert low_mm < high_mm
        assert zone.to_mm[2] < 0.0
        assert zone.from_mm[2] > -vehicle.outside.floor_height_mm + 100.0
    for one, other in combinations(vehicle.underbody, 2):
        assert not _overlap(one, other), (one.name, other.name)
    assert any(zone.use == "free" for zone in vehicle.underbody)


def _overlap(one: UnderbodyZone, other: UnderbodyZone) -> bool:
    return all(
        one.from_mm[axis] < other.to_mm[axis] and other.from_mm[axis] < one.to_mm[axis]
        for axis in range(3)
    )


@each
def test_its_fuel_tank_holds_its_fuel(vehicle: BaseVehicle) -> None:
    (zone,) = [zone for zone in vehicle.underbody if zone.use == "fuel tank"]
    volume_l = 1.0
    for axis in range(3):
        assert zone.from_mm[axis] < vehicle.fuel.centre_mm[axis] < zone.to_mm[axis]
        volume_l *= (zone.to_mm[axis] - zone.from_mm[axis]) / 100.0
    assert volume_l > vehicle.fuel.tank_l


@each
def test_its_spare_wheel_fits_where_it_hangs(vehicle: BaseVehicle) -> None:
    (zone,) = [zone for zone in vehicle.underbody if zone.use == "spare wheel"]
    size = vehicle.tyre.size
    diameter_mm = size.rim_mm + 2 * size.width_mm * size.aspect_frac
    assert zone.to_mm[0] - zone.from_mm[0] >= diameter_mm
    assert zone.to_mm[1] - zone.from_mm[1] >= diameter_mm


@each
def test_its_kerb_mass_is_stated_the_way_of_its_market(vehicle: BaseVehicle) -> None:
    """US: all fluids full, nobody aboard; EU and UK: fuel 90 % and a driver of 75 kg."""
    us = vehicle.market is Market.US
    assert vehicle.kerb.fuel_frac == pytest.approx(1.0 if us else 0.9)
    assert vehicle.kerb.driver_kg == pytest.approx(0.0 if us else 75.0)


@each
def test_its_class_goes_with_its_rating(vehicle: BaseVehicle) -> None:
    """N1 goods vehicles up to 3.5 t, N2 above: (EU) 2018/858 Article 4."""
    if vehicle.market is not Market.US:
        assert vehicle.category == ("N1" if vehicle.ratings.gross_kg <= 3500.0 else "N2")


@each
def test_every_limit_a_designer_asks_for_is_given(vehicle: BaseVehicle) -> None:
    limits = vehicle.limits
    assert limits.roof_moving_kg is not None
    assert limits.roof_standing_kg is not None
    assert limits.roof_moving_kg < limits.roof_standing_kg
    assert limits.rear_door_kg is not None
    assert limits.rear_door_moment_n_m is not None
    assert limits.hitch_kg is not None


@each
def test_its_rear_end_is_where_the_vehicle_ends(vehicle: BaseVehicle) -> None:
    end_mm = vehicle.outside.length_mm - vehicle.outside.front_overhang_mm
    assert vehicle.outside.wheelbase_mm < vehicle.rear_end.lowest_x_mm <= end_mm
    assert vehicle.rear_end.lowest_height_mm < vehicle.outside.floor_height_mm
    assert vehicle.rear_end.door_hinge_y_mm < vehicle.outside.width_mm / 2


@each
def test_its_cab_seats_are_in_the_cab(vehicle: BaseVehicle) -> None:
    for seat in vehicle.seats:
        assert 0.0 < seat.reference_mm[0] < vehicle.shell.cab_line_mm
        assert abs(seat.reference_mm[1]) < vehicle.shell.half_widths[0].half_width_mm
        assert seat.belt == "three-point"


@each
def test_its_lamps_and_plate_are_told_and_lie_on_its_back(vehicle: BaseVehicle) -> None:
    assert {zone.kind for zone in vehicle.rear_end.zones} >= {"lamp", "plate", "camera", "handle"}
    for zone in vehicle.rear_end.zones:
        assert -vehicle.outside.width_mm / 2 <= zone.from_mm[0] < zone.to_mm[0]
        assert zone.to_mm[0] <= vehicle.outside.width_mm / 2
        assert 0.0 < zone.from_mm[1] < zone.to_mm[1]
        assert zone.to_mm[1] < vehicle.outside.height_mm - vehicle.outside.floor_height_mm
    rear = vehicle.rear_end
    assert rear.door_top_mm is not None
    (doors,) = [aperture for aperture in vehicle.apertures if aperture.wall == "rear"]
    assert rear.door_top_mm >= doors.sill_mm + doors.clear_height_mm


@each
def test_its_speedometer_shows_no_less_than_it_goes_and_not_too_much(vehicle: BaseVehicle) -> None:
    """UN R39 5.3: 0 <= shown - true <= true / 10 + 4 km/h."""
    shown_km_per_h = vehicle.tyre.speedometer_at_100_km_per_h
    assert shown_km_per_h is not None
    assert 100.0 <= shown_km_per_h <= 114.0
