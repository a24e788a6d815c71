"""Masses, axle loads and statements against published cases.

Each case carries the source it was taken from and the tolerance with its reason.  "Hand
calculation" means: from the published formula or clause, by hand, without this program.
"""

from dataclasses import dataclass

import pytest

from coachwright.model.build import Build
from coachwright.unit_table import LB, US_GAL
from coachwright.weights import europe, us
from coachwright.weights.masses import liquid_mass_kg
from coachwright.weights.model import Weights
from coachwright.weights.moments import (
    PointMass,
    axle_share,
    balance,
    height_by_lift,
    on_grade,
    side_split,
)
from coachwright.weights.stage import stage
from tests.support.builds import Data, fitting, part
from tests.support.builds import build as build_with

MM = 1000.0


@dataclass(frozen=True, kw_only=True)
class Published:
    """One published figure: what was computed, what is printed, and how near it must be."""

    found: float
    printed: float
    relative: float
    source: str


def _check(*cases: Published) -> None:
    for case in cases:
        assert case.found == pytest.approx(case.printed, rel=case.relative), case.source


def test_minimum_pay_mass() -> None:
    clause = "(EU) 1230/2012 Annex I Part A 2.6.4.1.2"
    _check(
        Published(
            found=europe.minimum_pay_mass(people=4, length_mm=7450).least_kg,
            printed=114.5,
            relative=1e-9,
            source=f"{clause}; published worked example",
        ),
        Published(
            found=europe.minimum_pay_mass(people=4, length_mm=5990).least_kg,
            printed=99.9,
            relative=1e-9,
            source=f"{clause}; hand calculation",
        ),
    )


def test_personal_effects_of_the_older_european_standard() -> None:
    """EN 1646-2, older edition: 10 kg/seat + 10 kg/m + 30 kg; published worked example."""
    found = europe.older_effects(seats=3, passengers=3, length_mm=6000)
    assert found.effects_kg == pytest.approx(120, rel=1e-9)
    assert found.passengers_kg == pytest.approx(225, rel=1e-9)
    assert found.total_kg == pytest.approx(345, rel=1e-9)


def test_load_of_the_uk_individual_approval() -> None:
    """M1 individual-approval manual, axle-weight calculation; hand calculation."""
    found = europe.approval_load(seats=4, length_mm=6000, fresh_kg=100, gas_kg=20)
    assert (
        found.occupants_kg,
        found.luggage_kg,
        found.seat_extra_kg,
        found.length_extra_kg,
        found.water_kg,
        found.gas_kg,
        found.total_kg,
    ) == pytest.approx((272, 28, 40, 60, 90, 18, 508), rel=1e-9)


EMPTY_VAN: Data = {
    # 2,700 kg dry; the cylinder of 18 kg is taken as gas, as the case counts it full or not at all
    "own_vehicle.kerb": {
        "front": "1500 kg",
        "rear": "1200 kg",
        "fuel": "0 %",
        "driver": "0 kg",
        "cg_height": "720 mm",
    },
    "own_parts": [
        part("tank-100", body=part("x")["body"] | {"mass": "0 kg"}, tank={
            "contents": "fresh", "volume": "100 L"}),
        part("boiler-10", body=part("x")["body"] | {"mass": "0 kg"}, water_heater={
            "volume": "10 L"}),
        part("toilet-8", body=part("x")["body"] | {"mass": "0 kg"}, toilet={
            "kind": "cassette", "waste": "18 L", "flush_tank": "8 L"}),
        part("cylinder-18", body=part("x")["body"] | {"mass": "0 kg"}, gas_store={
            "gas": "18 kg"}),
    ],
    "fittings": [
        fitting("fresh", "tank-100"),
        fitting("boiler", "boiler-10"),
        fitting("toilet", "toilet-8"),
        fitting("cylinder", "cylinder-18"),
    ],
}  # fmt: skip


@pytest.mark.parametrize(
    ("name", "printed", "source"),
    [
        ("us-uvw", 2793.60, "49 CFR 571.110/120 practice"),
        ("eu-running-order", 2861.04, "(EU) 1230/2012 Art 2(4)"),
        ("eu-driving-fill", 2899.04, "EN 1646-2 driving fill"),
        ("eu-leergewicht", 2979.04, "StVZO 42(3)"),
    ],
)
def test_one_van_has_four_definitions_of_empty(name: str, printed: float, source: str) -> None:
    """Hand calculation from the clauses; 1e-6 relative as the case states it."""
    found = stage(build_with(EMPTY_VAN)).statement(name)
    assert found.mass.nominal_kg == pytest.approx(printed, rel=1e-6), source


def test_fuel_in_running_order() -> None:
    """90 % rule; diesel 0.84 kg/L of the UK approval manual; hand calculation."""
    found = liquid_mass_kg(volume_l=90 * 0.90, density_kg_per_l=0.84)
    assert found == pytest.approx(68.04, rel=1e-9)


def test_tolerance_of_a_declared_mass() -> None:
    """5 % permitted deviation; high side published, low side hand calculation."""
    band = europe.declared_band(declared_kg=3017)
    assert (band.lowest_kg, band.highest_kg) == pytest.approx((2866.15, 3167.85), rel=1e-9)


def test_minimum_gross_rating() -> None:
    """49 CFR 567.4(g)(3); case in NHTSA letter aiam2225, the sum by hand."""
    found = us.least_gross(unloaded_kg=9180 * LB, cargo_kg=0, seats=6)
    assert found.least_kg / LB == pytest.approx(10080, rel=1e-9)
    assert found.least_kg > 9000 * LB, "the stated rating of 9,000 lb does not comply"


@pytest.mark.parametrize(
    ("unloaded_lb", "capacity_lb", "covers"), [(7600, 1450, True), (8500, 550, False)]
)
def test_occc_and_belted_seats(unloaded_lb: float, capacity_lb: float, covers: bool) -> None:
    """49 CFR 571.110/120; NHTSA letter 08-003469; hand calculation from the clause."""
    found = us.occc(gross_kg=9050 * LB, unloaded_kg=unloaded_lb * LB, belts=4)
    assert found.occc_kg / LB == pytest.approx(capacity_lb, rel=1e-4)
    assert found.occupants_kg / LB == pytest.approx(600, rel=1e-9)
    assert found.covers_belts is covers


def test_occc_in_kilograms() -> None:
    """The same case printed in kg; 1e-4: printed with two decimals."""
    found = us.occc(gross_kg=9050 * LB, unloaded_kg=7600 * LB, belts=4)
    assert found.occc_kg == pytest.approx(657.71, rel=1e-4)


def test_water_line_of_the_label() -> None:
    """OCCC label text: 8.3 lb/gal and 1 kg/L; hand calculation, not exact conversions."""
    found = us.water_line(fresh_l=30 * US_GAL)
    assert found.label_lb_kg / LB == pytest.approx(249.0, rel=1e-4)
    assert found.label_kg == pytest.approx(113.56, rel=1e-4)


@pytest.mark.parametrize(("gross_lb", "threshold_lb"), [(9050, 100), (6000, 90), (6666.67, 100.0)])
def test_relabel_threshold(gross_lb: float, threshold_lb: float) -> None:
    """72 FR 68442: lesser of 1.5 % GVWR and 100 lb; hand calculation; break-even at 6,666.67."""
    found = us.relabel_threshold(gross_kg=gross_lb * LB)
    assert found.threshold_kg / LB == pytest.approx(threshold_lb, rel=1e-6)


def test_vehicle_capacity_weight() -> None:
    """49 CFR 571.110 S3; hand calculation from the definition."""
    assert us.capacity_weight_kg(cargo_kg=400, seats=4) == pytest.approx(672, rel=1e-9)


@pytest.mark.parametrize(("seats", "rows"), [(4, (2,)), (6, (2, 1)), (12, (2, 1, 1, 1))])
def test_normal_occupants(seats: int, rows: tuple[int, ...]) -> None:
    """49 CFR 571.110 Table I; table look-up."""
    found = us.normal_occupants(seats=seats)
    assert found.rows == rows
    assert found.total == sum(rows)


@dataclass(frozen=True, kw_only=True)
class OneLoad:
    """One load on two axles, in the units of its source; the formula has no unit of its own."""

    mass: float
    x: float
    wheelbase: float
    rear: float
    front: float
    relative: float
    source: str


ONE_LOAD = (
    OneLoad(
        mass=100,
        x=133,
        wheelbase=214,
        rear=62.15,
        front=37.85,
        relative=1e-3,
        source="body-builder manual App. B; its printed 38.86 is a slip: 100 - 62.14 = 37.86",
    ),
    OneLoad(
        mass=14500,
        x=156,
        wheelbase=214,
        rear=10570.09,
        front=3929.91,
        relative=1e-5,
        source="body-builder manual App. B; printed 10570 and 3929.9",
    ),
    OneLoad(
        mass=100,
        x=5.2,
        wheelbase=4.0,
        rear=130.0,
        front=-30.0,
        relative=1e-9,
        source="load behind the rear axle: moment balance; hand calculation",
    ),
    OneLoad(
        mass=100,
        x=4.8,
        wheelbase=3.6,
        rear=133.33,
        front=-33.33,
        relative=1e-4,
        source="hitch load: moment balance; hand calculation",
    ),
)


HALF_DIGIT = 0.005
"""The loads are printed to two decimals; -33.33 stands for -33.333."""


@pytest.mark.parametrize("load", ONE_LOAD, ids=[load.source for load in ONE_LOAD])
def test_axle_share_of_one_load(load: OneLoad) -> None:
    found = axle_share(mass_kg=load.mass, x_mm=load.x, wheelbase_mm=load.wheelbase)
    for value, printed in ((found.rear_kg, load.rear), (found.front_kg, load.front)):
        assert value == pytest.approx(printed, rel=load.relative, abs=HALF_DIGIT), load.source


def test_static_axle_loads() -> None:
    """Jazar, Vehicle Dynamics, ch. 2 exercise 1 (inputs); hand calculation."""
    found = balance(masses=[PointMass(mass_kg=1765, x_mm=1220)], wheelbase_mm=2840)
    assert found.front_kg == pytest.approx(1006.80, rel=1e-5)
    assert found.rear_kg == pytest.approx(758.20, rel=1e-5)


WHOLE_VAN_ITEMS = (
    # name, kg, x rearwards, y to the right, z above the ground [m]
    ("front-left-person", 75, 1.3, 0.45, 1.0),
    ("front-right-person", 75, 1.3, -0.45, 1.0),
    ("galley", 120, 2.2, 0.6, 0.95),
    ("wardrobe", 60, 2.6, -0.6, 0.75),
    ("bench", 100, 3.6, -0.55, 0.8),
    ("bed", 110, 4.2, 0.0, 1.05),
    ("lockers", 45, 2.8, 0.0, 2.0),
    ("roof-load", 55, 2.9, 0.0, 2.75),
    ("rear-carrier", 70, 5.6, 0.0, 1.1),
)
"""The nine loads of the published whole-van case; the names are ours."""

FLOOR_M = 0.56
"""Load floor of the test vehicle above the ground."""


def _corner(centre_m: float) -> str:
    """Return the low corner of a 100 mm cube whose middle is at a place."""
    return f"{centre_m * MM - 50:.6f} mm"


def whole_van(items: tuple[tuple[str, float, float, float, float], ...]) -> Build:
    """Return the published van as a build: own parts with measured masses, no fuel, no driver."""
    return build_with(
        {
            "own_vehicle.kerb": {
                "front": "1300 kg",
                "rear": "900 kg",
                "fuel": "0 %",
                "driver": "0 kg",
                "cg_height": "720 mm",
            },
            "own_parts": [part("thing")],
            "fittings": [
                fitting(
                    name,
                    "thing",
                    at=[_corner(x), _corner(y), _corner(z - FLOOR_M)],
                    measured_mass=f"{mass} kg",
                )
                for name, mass, x, y, z in items
            ],
        }
    )


WHOLE_VAN = (2910.0, 1481.375, 1428.625, 1.96375, -0.00653, 0.82706)
"""Total, front, rear [kg]; x, y, z of the centre of gravity [m]; moment balance by hand."""


def _six(weights: Weights) -> tuple[float, ...]:
    case = weights.case("as-delivered")
    return (
        case.total.nominal_kg,
        case.front.nominal_kg,
        case.rear.nominal_kg,
        case.cg_x.nominal_mm / MM,
        case.cg_y.nominal_mm / MM,
        case.cg_height.nominal_mm / MM,
    )


@pytest.mark.parametrize(("place", "printed"), list(enumerate(WHOLE_VAN)))
def test_whole_van_by_numbers(place: int, printed: float) -> None:
    """Moment balance; hand calculation; 1e-5 relative, y printed to 5 decimals of a metre."""
    masses = [
        PointMass(mass_kg=1300, x_mm=0, height_mm=720),
        PointMass(mass_kg=900, x_mm=4000, height_mm=720),
        *(
            PointMass(mass_kg=mass, x_mm=x * MM, y_mm=y * MM, height_mm=z * MM)
            for _, mass, x, y, z in WHOLE_VAN_ITEMS
        ),
    ]
    found = balance(masses=masses, wheelbase_mm=4000)
    six = (
        found.total_kg,
        found.front_kg,
        found.rear_kg,
        found.cg_x_mm / MM,
        found.cg_y_mm / MM,
        found.cg_height_mm / MM,
    )
    assert six[place] == pytest.approx(printed, rel=1e-5, abs=5e-6)


@pytest.mark.parametrize(("place", "printed"), list(enumerate(WHOLE_VAN)))
def test_whole_van_as_a_build(place: int, printed: float) -> None:
    """The same case through the whole discipline: load case as delivered, no fuel, no driver."""
    found = _six(stage(whole_van(WHOLE_VAN_ITEMS)))
    assert found[place] == pytest.approx(printed, rel=1e-5, abs=5e-6)


def test_whole_van_as_figures() -> None:
    """The same case as the figures that the command line and the papers show."""
    figures = {figure.name: figure.value for figure in stage(whole_van(WHOLE_VAN_ITEMS)).figures}
    names = ("total", "front-axle", "rear-axle", "cg-x", "cg-y", "cg-height")
    for name, printed in zip(names, WHOLE_VAN, strict=True):
        value = figures[f"weights.{name}-as-delivered"]
        assert value is not None
        found = value / MM if name.startswith("cg") else value
        assert found == pytest.approx(printed, rel=1e-5, abs=5e-6), name


def test_front_axle_minimum() -> None:
    """M1/N1 rule: front axle >= 30 % of the maximum mass; hand calculation from the clause."""
    found = europe.front_axle_least(gross_kg=3500, rear_axle_kg=2100)
    assert found.front_kg == pytest.approx(1400, rel=1e-9)
    assert found.least_kg == pytest.approx(1050, rel=1e-9)
    assert found.front_kg >= found.least_kg


def test_lateral_split() -> None:
    """Moment balance; hand calculation."""
    found = side_split(axle_kg=200, cg_y_mm=600, track_mm=1750)
    assert found.right_kg == pytest.approx(168.57, rel=1e-5)
    assert found.left_kg == pytest.approx(31.43, abs=0.005), "printed to 0.01 kg"


def test_height_by_axle_lift() -> None:
    """h = r + L dWf/(W tan theta), sin theta = H/L; hand calculation."""
    found = height_by_lift(
        total_kg=2500,
        front_level_kg=1200,
        front_lifted_kg=1281,
        wheelbase_mm=3500,
        wheel_radius_mm=360,
        lift_mm=600,
    )
    assert found.angle_deg == pytest.approx(9.8709, rel=1e-4)
    assert found.cg_height_mm / MM == pytest.approx(1.0117, rel=1e-4)


def test_roof_and_high_loads_raise_the_centre_of_gravity() -> None:
    """The whole van without lockers and roof load; moment balance; hand calculation."""
    low = tuple(item for item in WHOLE_VAN_ITEMS if item[0] not in ("lockers", "roof-load"))
    assert _six(stage(whole_van(low)))[5] == pytest.approx(0.77064, rel=1e-5)


def test_axle_loads_on_a_grade() -> None:
    """Wf = W(c cos - h sin)/L; hand calculation."""
    found = on_grade(
        total_kg=2500, cg_x_mm=1900, cg_height_mm=900, wheelbase_mm=4000, rise_frac=0.15
    )
    assert found.front_kg == pytest.approx(1214.54, rel=1e-5)
    assert found.rear_kg == pytest.approx(1257.80, rel=1e-5)
