"""Road figures against published cases.

Each parameter carries the source it was taken from and the tolerance with its reason.  "Hand
calculation" means: from the published formula, by hand, without this program.
"""

import csv
import math
from pathlib import Path

import pytest

from coachwright import reference
from coachwright.road.carried import pulse_force
from coachwright.road.departure import breakover_angle, departure_angle
from coachwright.road.speedometer import speedometer_check, true_speed
from coachwright.road.stability import static_stability_factor
from coachwright.road.tyre_geometry import TyreDimensions, tyre_change, tyre_dimensions
from coachwright.road.tyre_load import (
    axle_capacity,
    load_index_kg,
    passenger_tyre_kg,
    symbol_speed,
)
from coachwright.road.tyre_pressure import pressure_for_load

INCH = 25.4
KM_PER_MILE = 1.609344


def tyre(width_mm: float, aspect: float, rim_in: float) -> TyreDimensions:
    return tyre_dimensions(
        width_mm=width_mm,
        aspect_frac=aspect / 100,
        rim_mm=rim_in * INCH,
        rolling_factor=reference.limit("road.rolling-factor").value,
    )


def geometry_rows() -> list[dict[str, str]]:
    path = Path(__file__).parent / "tyre_geometry.csv"
    with path.open(encoding="utf-8") as lines:
        return list(csv.DictReader(lines))


@pytest.mark.parametrize(
    "row",
    geometry_rows(),
    ids=lambda row: f"{row['section_width_mm']}-{row['aspect_pct']}R{row['rim_in']}",
)
def test_metric_size_geometry_of_a_table_of_sizes(row: dict[str, str]) -> None:
    """D = d + 2H of UN R30 and R54; rolling factor 3.05 from memory; hand calculation."""
    size = tyre(float(row["section_width_mm"]), float(row["aspect_pct"]), float(row["rim_in"]))
    for value, column, half_digit in (
        (size.section_height_mm, "section_height_mm", 0.005),
        (size.diameter_mm, "overall_diameter_mm", 0.05),
        (size.diameter_mm / INCH, "overall_diameter_in", 0.005),
        (size.circumference_mm, "circumference_pi_mm", 0.05),
        (size.revolutions_per_km, "revs_per_km_pi", 0.005),
        (size.revolutions_per_km * KM_PER_MILE, "revs_per_mile_pi", 0.005),
        (size.rolling_circumference_mm, "rolling_circumference_3p05_mm", 0.05),
        (size.rolling_revolutions_per_km, "revs_per_km_3p05", 0.005),
    ):
        assert value == pytest.approx(float(row[column]), abs=half_digit + 1e-9), column


@pytest.mark.parametrize(
    ("size", "diameter_in", "revs_per_mile", "source"),
    [
        (
            (265, 70, 17),
            31.61,
            638.1,
            "public worked example: 31.6 in, 638.13, rounded on the way",
        ),
        ((245, 55, 18), 28.61, None, "public worked example; it prints 28.63 in: a slip"),
    ],
)
def test_public_worked_examples_of_sizes(
    size: tuple[float, float, float],
    diameter_in: float,
    revs_per_mile: float | None,
    source: str,
) -> None:
    """Tolerance 5e-4: the examples round on the way."""
    found = tyre(*size)
    assert found.diameter_mm / INCH == pytest.approx(diameter_in, rel=5e-4), source
    if revs_per_mile is not None:
        per_mile = found.revolutions_per_km * KM_PER_MILE
        assert per_mile == pytest.approx(revs_per_mile, rel=5e-4), source


def test_ratio_of_two_sizes() -> None:
    """245/75R16 on a 225/75R16: 773.9, 743.9, 1.04033; metric size geometry, hand calculation."""
    new, old = tyre(245, 75, 16), tyre(225, 75, 16)
    assert new.diameter_mm == pytest.approx(773.9, rel=1e-5)
    assert old.diameter_mm == pytest.approx(743.9, rel=1e-5)
    change = tyre_change(old_diameter_mm=old.diameter_mm, new_diameter_mm=new.diameter_mm)
    assert change.ratio == pytest.approx(1.04033, rel=1e-5)


def test_rolling_circumference() -> None:
    """245/75R16: 2431.3, 2360.4 mm, 423.66 rev/km; factor 3.05 from memory, hand calculation."""
    size = tyre(245, 75, 16)
    assert size.circumference_mm == pytest.approx(2431.3, rel=1e-4)
    assert size.rolling_circumference_mm == pytest.approx(2360.4, rel=1e-4)
    assert size.rolling_revolutions_per_km == pytest.approx(423.66, rel=1e-4)


def band(shown_km_per_h: float, true_km_per_h: float) -> tuple[bool, float]:
    check = speedometer_check(
        shown_km_per_h=shown_km_per_h,
        true_km_per_h=true_km_per_h,
        share_frac=reference.limit("road.speedometer-share").value,
        constant_km_per_h=reference.limit("road.speedometer-constant").value,
    )
    return check.passes, check.most_shown_km_per_h


@pytest.mark.parametrize(
    ("shown", "passes"),
    [(92.0, True), (93.0, False), (79.9, False)],
    ids=["at the limit", "too high", "too low"],
)
def test_speedometer_band_at_80(shown: float, passes: bool) -> None:
    """UN R39, 5.3; hand calculation from the clause; exact."""
    assert band(shown, 80.0)[0] is passes


@pytest.mark.parametrize(
    ("true", "most_shown"), [(50, 59), (70, 81), (90, 103), (110, 125), (130, 147)]
)
def test_highest_reading(true: float, most_shown: float) -> None:
    """UN R39, 5.3; published examples in a news article; exact but for the float."""
    assert band(true, true)[1] == pytest.approx(most_shown, rel=1e-9)


def test_speedometer_after_a_change_of_tyres() -> None:
    """Shown 103 at a true 100 on 225/75R16; on 245/75R16 true 104.03 and low; UN R39, by hand."""
    ratio = tyre(245, 75, 16).diameter_mm / tyre(225, 75, 16).diameter_mm
    speed = true_speed(shown_km_per_h=103, diameter_ratio=ratio, shown_at_100_km_per_h=103)
    assert speed.true_km_per_h == pytest.approx(104.03, rel=1e-4)
    assert not band(103, speed.true_km_per_h)[0]


def test_axle_capacity_from_the_load_index() -> None:
    """107/105, single and dual: 1950 and 3700 kg; load index table of UN R54; exact."""
    front = axle_capacity(rating_kg=load_index_kg(load_index=107), tyres=2, divisor_factor=1)
    rear = axle_capacity(rating_kg=load_index_kg(load_index=105), tyres=4, divisor_factor=1)
    assert front.capacity_kg == 1950
    assert rear.capacity_kg == 3700


def test_passenger_tyre_on_a_multipurpose_vehicle() -> None:
    """1250 kg: 1136.36 each and 2272.73 kg; 49 CFR 571.110/120, divisor 1.10; by hand."""
    divisor = reference.limit("road.passenger-tyre-divisor").value
    axle = axle_capacity(rating_kg=1250, tyres=2, divisor_factor=divisor)
    assert axle.usable_kg == pytest.approx(1136.36, rel=1e-5)
    assert axle.capacity_kg == pytest.approx(2272.73, rel=1e-5)


@pytest.mark.parametrize(
    ("axle_kg", "tyre_kg", "exponent", "psi", "source"),
    [
        (1100, 750, 1.25, 33.93, "European commercial formula; a public forum prints 34"),
        (1300, 750, 1.25, 41.81, "European commercial formula; a public forum prints 42"),
        (1720, 925, 1.0, 46.49, "Daws 2009, linear model; a public forum prints 46.4, truncated"),
        (1720, 925, 1.25, 45.65, "European commercial formula; hand calculation"),
    ],
)
def test_pressure_for_load(
    axle_kg: float, tyre_kg: float, exponent: float, psi: float, source: str
) -> None:
    """Rated at 50 psi; the formula is linear in the pressure, so psi in gives psi out; 1e-4."""
    advice = pressure_for_load(
        axle_load_kg=axle_kg,
        rating_kg=tyre_kg,
        tyres=2,
        rated_pressure_kpa=50,
        pressure_exponent=exponent,
    )
    assert advice.pressure_kpa == pytest.approx(psi, rel=1e-4), source


@pytest.mark.parametrize(
    ("width", "aspect", "rim", "load_kg", "nearest_index"),
    [(235, 75, 15, 918.7, 105), (205, 75, 15, 726.9, 97), (225, 75, 16, 889.8, 104)],
)
def test_passenger_tyre_load_formula(
    width: float, aspect: float, rim: float, load_kg: float, nearest_index: int
) -> None:
    """Tire and Rim Association, P-metric before 2005, at 240 kPa; by hand; tolerance 1e-3."""
    found = passenger_tyre_kg(
        width_mm=width, aspect_frac=aspect / 100, rim_mm=rim * INCH, pressure_kpa=240
    )
    assert found == pytest.approx(load_kg, rel=1e-3)
    nearest = min(range(60, 131), key=lambda index: abs(load_index_kg(load_index=index) - found))
    assert nearest == nearest_index


def test_the_load_index_table_follows_its_progression() -> None:
    """kg is close to 45·10^(LI/80), within 1.8 % for 60 to 130: arithmetic, by hand."""
    for index in range(60, 131):
        assert load_index_kg(load_index=index) == pytest.approx(45 * 10 ** (index / 80), rel=0.018)


@pytest.mark.parametrize(
    ("index", "load_kg"),
    [(62, 265), (75, 387), (83, 487), (90, 600), (100, 800), (112, 1120), (121, 1450)],
)
def test_load_index_of_public_charts(index: int, load_kg: float) -> None:
    """Public load-index charts (two of them print 165 for 62 and 478 for 83: typing errors)."""
    assert load_index_kg(load_index=index) == load_kg


@pytest.mark.parametrize(
    ("symbol", "km_per_h"),
    [("L", 120), ("Q", 160), ("R", 170), ("S", 180), ("T", 190), ("U", 200), ("H", 210)],
)
def test_speed_symbols(symbol: str, km_per_h: float) -> None:
    """UN R30 and R54 as repeated in public charts; exact."""
    assert symbol_speed(symbol=symbol).top_km_per_h == km_per_h


@pytest.mark.parametrize(("height", "factor"), [(720.0, 1.2153), (827.06, 1.0580)])
def test_static_stability_factor(height: float, factor: float) -> None:
    """SSF = T/2h of NHTSA's rollover chapter, T 1.75 m; hand calculation; tolerance 1e-4."""
    found = static_stability_factor(track_front_mm=1750, track_rear_mm=1750, cg_height_mm=height)
    assert found.stability_ratio == pytest.approx(factor, rel=1e-4)
    assert math.tan(math.radians(found.tip_angle_deg)) == pytest.approx(found.stability_ratio)


def test_departure_angle_by_the_tangent_and_by_the_simple_form() -> None:
    """r 0.36 m, point 1.0 m behind and 0.35 m high: 20.526 and 19.290; 49 CFR 523.2; by hand."""
    angle = departure_angle(behind_axle_mm=1000, height_mm=350, wheel_radius_mm=360)
    assert angle.exact_deg == pytest.approx(20.526, rel=1e-4)
    assert angle.simple_deg == pytest.approx(19.290, rel=1e-4)


def test_breakover_angle() -> None:
    """Wheelbase 3.5 m, r 0.36 m, 0.20 m high mid-way: 13.195; 49 CFR 523.2; hand calculation."""
    angle = breakover_angle(
        behind_front_mm=1750, wheelbase_mm=3500, height_mm=200, wheel_radius_mm=360
    )
    assert angle.exact_deg == pytest.approx(13.195, rel=1e-4)


@pytest.mark.parametrize(("pulse", "force_n"), [(8, 3922.7), (10, 4903.3), (12, 5884.0)])
def test_roof_load_in_a_city_crash_pulse(pulse: float, force_n: float) -> None:
    """50 kg; ISO 11154 5.3.4 and DIN 75302:2019 6.13; hand calculation; half of the last
    digit printed, for 3922.66 N is printed as 3922.7 N."""
    found = pulse_force(mass_kg=50, pulse_factor=pulse)
    assert found.force_n == pytest.approx(force_n, abs=0.05)
