"""What the stage passes on: items, load cases, margins, statements, figures."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.errors import UnknownName
from coachwright.weights.model import Group, Weights
from coachwright.weights.stage import stage
from tests.support.builds import Data, fitting, part
from tests.support.builds import build as build_with

PARTS: list[Data] = [
    part("ballast"),
    part("fresh", tank={"contents": "fresh", "volume": "100 L"}),
    part("grey", tank={"contents": "grey", "volume": "80 L"}),
    part("boiler", water_heater={"volume": "10 L"}),
    part("toilet", toilet={"kind": "cassette", "waste": "18 L", "flush_tank": "8 L"}),
    part("gas", gas_store={"gas": "11 kg"}),
    part("locker", carcass={"contents_limit": "15 kg"}),
    part(
        "bench",
        seat={
            "places": [
                {"name": "left", "reference": ["50 mm", "20 mm", "60 mm"]},
                {"name": "right", "reference": ["50 mm", "80 mm", "60 mm"]},
            ],
            "belt": "three-point",
        },
    ),
    part(
        "wheel",
        body={"size": ["760 mm", "240 mm", "760 mm"], "mass": "32 kg"},
        tyre={
            "size": "225/75R16C",
            "kind": "commercial",
            "load_index_single": 121,
            "speed_symbol": "R",
            "rated_pressure": "525 kPa",
        },
    ),
    part("spare", spare={"size": "225/75R16C"}),
    part(
        "foam",
        body={"size": ["1 m", "1 m", "20 mm"], "mass": "0 kg"},
        insulation={"conductivity": "0.035 W/m/K", "density": "0.04 kg/L", "thickness": "20 mm"},
    ),
    part(
        "ply",
        body={"size": ["1 m", "1 m", "4 mm"], "mass": "0 kg", "source": "estimated"},
        lining={"density": "0.5 kg/L", "thickness": "4 mm"},
    ),
    part("scale", body={"size": ["1 m", "1 m", "1 m"], "mass": "9 kg", "source": "weighed"}),
]

CAMPER: Data = {
    "own_parts": PARTS,
    "brief.travellers.0.luggage": "15 kg",
    "brief.cargo": [{"name": "kayak", "mass": "30 kg", "centre": ["3000 mm", "0 mm", "2200 mm"]}],
    "own_vehicle.apertures": [
        {
            "name": "slider",
            "wall": "right",
            "from": "1500 mm",
            "clear_width": "1200 mm",
            "clear_height": "1700 mm",
            "sill": "0 mm",
        },
        {
            "name": "rear",
            "wall": "rear",
            "from": "-700 mm",
            "clear_width": "1400 mm",
            "clear_height": "1700 mm",
            "sill": "0 mm",
        },
    ],
    "fittings": [
        fitting("tank", "fresh", at=["4350 mm", "-50 mm", "0 mm"]),
        fitting("waste", "grey", at=["2950 mm", "-50 mm", "-300 mm"], mounting="underbody"),
        fitting("boiler", "boiler", at=["3550 mm", "500 mm", "0 mm"]),
        fitting("toilet", "toilet", at=["2450 mm", "-600 mm", "0 mm"]),
        fitting("bottle", "gas", at=["4450 mm", "600 mm", "0 mm"]),
        fitting("locker", "locker", at=["3950 mm", "600 mm", "1400 mm"], contents="12 kg"),
    ],
    "finishes": [
        {"part": "foam", "surface": "walls", "area": "12 m2"},
        {"part": "ply", "surface": "doors", "area": "4 m2", "thickness": "6 mm"},
    ],
}


def camper(changes: Data | None = None) -> Weights:
    return stage(build_with(CAMPER | (changes or {})))


def mass_of(weights: Weights, name: str) -> float:
    return next(item.mass_kg for item in weights.items if item.name == name)


def aboard(weights: Weights, case: str) -> dict[str, float]:
    return {load.item: load.mass_kg for load in weights.case(case).loads}


def test_every_mass_has_its_own_name() -> None:
    names = [item.name for item in camper().items]
    assert len(names) == len(set(names))


@pytest.mark.parametrize(
    ("item", "mass", "why"),
    [
        ("vehicle.dry", 2100 - 0.9 * 75.6 - 75, "kerb less 90 % of 90 L at 0.84 and the driver"),
        ("vehicle.fuel", 75.6, "90 L at 0.84 kg/L"),
        ("tank.water", 100, "1 kg/L"),
        ("waste.water", 80, "1 kg/L"),
        ("boiler.hot-water", 10, "1 kg/L"),
        ("toilet.flush-water", 8, "1 kg/L"),
        ("toilet.waste", 18, "1 kg/L"),
        ("bottle.gas", 11, "the part's gas"),
        ("locker.contents", 12, "as stated"),
        ("finish.1", 12 * 20 * 0.04, "area, thickness, density"),
        ("finish.2", 4 * 6 * 0.5, "the finish's own thickness"),
        ("traveller.ada", 70, "real body mass"),
        ("luggage.ada", 15, "as stated"),
        ("cargo.kayak", 30, "as stated"),
    ],
)
def test_masses_come_from_the_build(item: str, mass: float, why: str) -> None:
    assert mass_of(camper(), item) == pytest.approx(mass), why


def test_heights_are_above_the_ground_and_places_from_the_floor() -> None:
    for item in camper().items:
        assert item.height_mm == pytest.approx(item.z_mm + 560)


def test_a_layer_on_the_doors_lies_between_slider_and_rear_doors() -> None:
    """Areas 1.2·1.7 and 1.4·1.7: x = (1.2·2100 + 1.4·4750)/2.6, y = 1.2·900/2.6 by hand."""
    doors = next(item for item in camper().items if item.name == "finish.2")
    assert doors.x_mm == pytest.approx((1.2 * 2100 + 1.4 * 4750) / 2.6)
    assert doors.y_mm == pytest.approx(1.2 * 900 / 2.6)


def test_a_door_on_the_left_pulls_its_layer_to_the_left() -> None:
    found = camper({"own_vehicle.apertures.0.wall": "left"})
    doors = next(item for item in found.items if item.name == "finish.2")
    assert doors.y_mm == pytest.approx(-1.2 * 900 / 2.6)


def test_each_load_case_has_what_its_name_says() -> None:
    weights = camper()
    travelling, grey = aboard(weights, "travelling"), aboard(weights, "grey-full")
    assert {"tank.water", "boiler.hot-water", "toilet.flush-water"} <= set(travelling)
    assert {"traveller.ada", "traveller.ben", "luggage.ada", "cargo.kayak"} <= set(travelling)
    assert not {"waste.water", "toilet.waste"} & set(travelling)
    assert {"waste.water", "toilet.waste", "boiler.hot-water"} <= set(grey)
    assert not {"tank.water", "toilet.flush-water"} & set(grey)
    delivered, alone = aboard(weights, "as-delivered"), aboard(weights, "driver-only")
    assert delivered["vehicle.fuel"] == pytest.approx(0.9 * 75.6)
    assert alone["vehicle.fuel"] == pytest.approx(75.6)
    assert set(alone) - set(delivered) == {"traveller.ada"}
    assert "bottle.gas" in delivered


def test_waste_water_weighs_what_the_tanks_hold() -> None:
    weights = camper()
    total = {name: weights.case(name).total.nominal_kg for name in ("travelling", "grey-full")}
    assert total["grey-full"] - total["travelling"] == pytest.approx(80 + 18 - 100 - 8)


def test_the_worst_combinations_are_the_extremes_of_every_combination() -> None:
    weights = camper()
    for case in weights.cases:
        if case.name == "all-seats":
            continue
        assert case.front.nominal_kg <= weights.case("front-axle-worst").front.nominal_kg + 1e-9
        assert case.rear.nominal_kg <= weights.case("rear-axle-worst").rear.nominal_kg + 1e-9
        if "traveller.ada" in {load.item for load in case.loads}:
            assert (
                case.front.nominal_kg >= weights.case("front-axle-least").front.nominal_kg - 1e-9
            )


def test_what_stands_behind_the_rear_axle_is_not_in_the_front_axles_worst_case() -> None:
    weights = camper()
    assert "tank.water" not in aboard(weights, "front-axle-worst")
    assert "tank.water" in aboard(weights, "front-axle-least")
    assert "traveller.ben" not in aboard(weights, "front-axle-least")


def test_a_fitted_seat_carries_its_traveller() -> None:
    weights = camper(
        {
            "fittings": [fitting("bench", "bench", at=["2500 mm", "100 mm", "400 mm"])],
            "brief.travellers.1.seat": "bench.left",
        }
    )
    ben = next(item for item in weights.items if item.name == "traveller.ben")
    assert (ben.x_mm, ben.y_mm, ben.z_mm) == (2550, 120, 460)
    assert (weights.seating.belted, weights.seating.travel) == (4, 4)


def test_a_traveller_without_a_seat_is_not_aboard_and_that_is_said() -> None:
    weights = camper({"brief.travellers.1.seat": ""})
    assert "traveller.ben" not in aboard(weights, "travelling")
    assert any("ben has no seat" in note for note in weights.notes)


def test_somebody_always_drives() -> None:
    weights = camper({"brief.travellers.0.seat": "", "brief.jurisdiction": "us"})
    driver = next(item for item in weights.items if item.group is Group.DRIVER)
    assert driver.mass_kg == pytest.approx(68.0389, abs=1e-4)


def test_without_a_marked_drivers_seat_the_first_one_is_taken() -> None:
    weights = camper({"own_vehicle.seats.0.driver": False})
    driver = next(item for item in weights.items if item.group is Group.DRIVER)
    assert driver.name == "traveller.ada"


def test_a_set_of_wheels_is_exchanged_axle_by_axle() -> None:
    """2 · (32 - 28) in front; 4 · (32 - 28) on a dual rear axle; by hand."""
    wheels = [fitting("tyres", "wheel", mounting="wheels")]
    weights = camper({"fittings": wheels, "own_vehicle.tyre.dual_rear": True})
    assert mass_of(weights, "tyres.front-axle") == pytest.approx(8)
    assert mass_of(weights, "tyres.rear-axle") == pytest.approx(16)
    rear = next(item for item in weights.items if item.name == "tyres.rear-axle")
    assert rear.x_mm == 4000
    assert rear.height_mm == pytest.approx((16 * 25.4 + 2 * 225 * 0.75) / 2)
    assert "tyres" not in {item.name for item in weights.items}
    assert weights.added_by_kg("tyres") == pytest.approx(8 + 16)
    assert any("placard's tyres" in note for note in weights.notes)


def test_two_sets_of_wheels_are_not_both_counted() -> None:
    wheels = [fitting(name, "wheel", mounting="wheels") for name in ("summer", "winter")]
    weights = camper({"fittings": wheels})
    assert not any(item.name.startswith("winter") for item in weights.items)
    assert any("summer" in note for note in weights.notes)


def test_a_second_spare_wheel_is_told() -> None:
    weights = camper({"fittings": [fitting("spare", "spare")]})
    assert any("spare" in note for note in weights.notes)


def test_a_measured_mass_replaces_the_catalogues_and_narrows_the_bound() -> None:
    heavy = {"fittings": [fitting("ballast", "ballast", measured_mass="400 kg")]}
    stated = {
        "own_parts": [
            part("ballast", body={"size": ["1 m", "1 m", "1 m"], "mass": "400 kg"}),
            *PARTS[1:],
        ],
        "fittings": [fitting("ballast", "ballast")],
    }
    measured, declared = camper(heavy), camper(stated)
    for weights in (measured, declared):
        assert mass_of(weights, "ballast") == 400
    spread = [
        weights.case("travelling").total.high_kg - weights.case("travelling").total.nominal_kg
        for weights in (measured, declared)
    ]
    assert spread[0] < spread[1]


def test_a_part_that_was_weighed_has_no_systematic_share() -> None:
    weights = camper({"fittings": [fitting("scale", "scale")]})
    item = next(item for item in weights.items if item.name == "scale")
    assert (item.systematic_frac, item.pool) == (0, "")


def test_the_upper_bound_of_one_base_vehicle_is_its_tolerance() -> None:
    """3 % of 2,100 kg is 63 kg two-sided; 63 · 1.645 / 1.960 = 52.9 kg one-sided; by hand."""
    case = stage(build_with({"own_vehicle.kerb.fuel": "0 %"})).case("as-delivered")
    assert case.total.high_kg - case.total.nominal_kg == pytest.approx(52.87, abs=0.05)


def test_margins_are_limit_less_load() -> None:
    weights = camper()
    case = weights.case("travelling")
    left = weights.margin("rear axle", "travelling")
    assert left.left.nominal_kg == pytest.approx(2100 - case.rear.nominal_kg)
    assert left.left.low_kg == pytest.approx(2100 - case.rear.high_kg)


@pytest.mark.parametrize("call", ["case", "statement"])
def test_a_name_that_is_not_there_says_which_are(call: str) -> None:
    with pytest.raises(UnknownName, match="nothing"):
        getattr(camper(), call)("nothing")


def test_a_margin_that_is_not_there_says_which_are() -> None:
    with pytest.raises(UnknownName, match="rear axle travelling"):
        camper().margin("roof", "travelling")


def test_every_statement_is_the_sum_of_its_components() -> None:
    for statement in camper().statements:
        total = sum(part.mass_kg for part in statement.components)
        assert statement.mass.nominal_kg == pytest.approx(total), statement.name
        assert statement.working.result == pytest.approx(total), statement.name


@pytest.mark.parametrize(
    ("name", "extra", "why"),
    [
        ("us-uvw", 75.6 + 11, "full fuel, full LP gas"),
        ("eu-running-order", 68.04 + 11 + 75, "90 % fuel, gas, driver"),
        ("eu-driving-fill", 68.04 + 11 + 75 + 20 + 10 + 8, "20 L, heater, flush tank"),
        ("eu-leergewicht", 68.04 + 11 + 75 + 100 + 10 + 8, "all but waste full"),
        ("uk-kerbside", 75.6, "full fuel, nobody aboard, no gas, no water"),
    ],
)
def test_empty_has_five_meanings(name: str, extra: float, why: str) -> None:
    """Hand calculation from the clauses over the same dry vehicle."""
    weights = camper()
    fixed = sum(
        item.mass_kg
        for item in weights.items
        if item.group in (Group.BASE, Group.FITTING, Group.FINISH)
    )
    assert weights.statement(name).mass.nominal_kg == pytest.approx(fixed + extra), why


def test_a_driving_fill_is_never_more_than_the_tank() -> None:
    small = [part("fresh", tank={"contents": "fresh", "volume": "12 L"}), *PARTS[2:]]
    weights = stage(build_with(CAMPER | {"own_parts": [PARTS[0], *small]}))
    by_name = {part.name: part.mass_kg for part in weights.statement("eu-driving-fill").components}
    assert by_name["fresh water"] == pytest.approx(12)


@pytest.mark.parametrize(
    ("jurisdiction", "people", "luggage"),
    [
        ("us", 2 * 68.0388555, 0.0),
        ("eu", 2 * 68, 2 * 7 + 10 * (2 + 5.99)),
        ("uk", 2 * 68, 2 * 17 + 59.9),
    ],
)
def test_all_seats_taken_as_each_jurisdiction_counts(
    jurisdiction: str, people: float, luggage: float
) -> None:
    weights = camper({"brief.jurisdiction": jurisdiction})
    loads = weights.case("all-seats").loads
    stated = [load for load in loads if load.item.startswith("statement.")]
    assert sum(load.mass_kg for load in stated if load.group is Group.PASSENGER) == pytest.approx(
        people
    )
    assert sum(load.mass_kg for load in stated if load.group is Group.LUGGAGE) == pytest.approx(
        luggage
    )


def test_the_water_line_counts_the_fresh_tanks() -> None:
    assert camper().water_line.label_kg == pytest.approx(100)


def test_what_was_added_is_everything_fitted_while_empty() -> None:
    """Six parts of 1 kg and both layers: 6 + 9.6 + 12, by hand."""
    assert camper().added_kg == pytest.approx(6 + 9.6 + 12)


def test_every_figure_has_a_working_that_ends_in_it() -> None:
    weights = camper()
    names = [figure.name for figure in weights.figures]
    assert len(names) == len(set(names))
    for figure in weights.figures:
        assert figure.working is not None, figure.name
        assert figure.working.result == pytest.approx(figure.value), figure.name
        assert figure.low is not None
        assert figure.high is not None
        assert figure.value is not None
        assert figure.low <= figure.value <= figure.high, figure.name


def test_the_named_figures_are_there() -> None:
    names = {figure.name for figure in camper().figures}
    wanted = (
        "total-travelling front-axle-travelling rear-axle-travelling payload-left "
        "front-axle-left rear-axle-left cg-height cg-x cg-y side-share occc uvw running-order "
        "minimum-pay-mass front-axle-worst rear-axle-worst front-axle-least"
    )
    assert {f"weights.{name}" for name in wanted.split()} <= names


def test_the_sums_in_a_working_give_its_result() -> None:
    for figure in camper().figures:
        working = figure.working
        assert working is not None
        if working.expression.endswith("Σ m·d / WB"):
            moments = sum(given.value for given in working.given if given.symbol == "m·d")
            assert moments / 4000 == pytest.approx(working.result)


def _with_ballast(mass: float, x: float, y: float) -> Weights:
    return camper(
        {
            "fittings": [
                *CAMPER["fittings"],
                fitting(
                    "ballast",
                    "ballast",
                    at=[f"{x:.3f} mm", f"{y:.3f} mm", "0 mm"],
                    measured_mass=f"{mass:.3f} kg",
                ),
            ]
        }
    )


@settings(max_examples=25, deadline=None)
@given(
    st.floats(min_value=1, max_value=400),
    st.floats(min_value=1200, max_value=4000),
    st.floats(min_value=10, max_value=600),
)
def test_a_fitting_moved_rearwards_loads_the_rear_axle(mass: float, x: float, by: float) -> None:
    before, after = _with_ballast(mass, x, 0), _with_ballast(mass, x + by, 0)
    for here, there in zip(before.cases, after.cases, strict=True):
        assert there.rear.nominal_kg > here.rear.nominal_kg
        assert there.front.nominal_kg < here.front.nominal_kg
        assert there.total.nominal_kg == pytest.approx(here.total.nominal_kg)


@settings(max_examples=25, deadline=None)
@given(st.floats(min_value=1, max_value=300), st.floats(min_value=1, max_value=100))
def test_more_mass_never_lowers_a_total_or_its_bound(mass: float, more: float) -> None:
    before, after = _with_ballast(mass, 2500, 0), _with_ballast(mass + more, 2500, 0)
    for here, there in zip(before.cases, after.cases, strict=True):
        assert there.total.nominal_kg > here.total.nominal_kg
        assert there.total.high_kg > here.total.high_kg


@settings(max_examples=25, deadline=None)
@given(st.floats(min_value=1, max_value=300), st.floats(min_value=-800, max_value=700))
def test_every_case_balances(mass: float, y: float) -> None:
    for case in _with_ballast(mass, 2500, y).cases:
        front, rear = case.front_sides, case.rear_sides
        assert case.front.nominal_kg + case.rear.nominal_kg == pytest.approx(case.total.nominal_kg)
        assert front.left_kg + front.right_kg == pytest.approx(case.front.nominal_kg)
        lateral = (
            (front.right_kg - front.left_kg) * 1800 + (rear.right_kg - rear.left_kg) * 1780
        ) / 2
        assert lateral == pytest.approx(case.total.nominal_kg * case.cg_y.nominal_mm, abs=1e-6)


def test_a_mirrored_build_mirrors_its_sides() -> None:
    empty: Data = {
        "own_parts": [part("ballast")],
        "brief.travellers.0.seat": "",
        "brief.travellers.1.seat": "",
        "own_vehicle.kerb.driver": "0 kg",
        "own_vehicle.fuel.centre": ["1600 mm", "0 mm", "-200 mm"],
    }
    shares = []
    for y in ("650 mm", "-750 mm"):
        placed = [fitting("ballast", "ballast", at=["2500 mm", y, "0 mm"], measured_mass="90 kg")]
        case = stage(build_with(empty | {"fittings": placed})).case("as-delivered")
        shares.append(case.front_sides.right_frac)
    assert shares[0] == pytest.approx(1 - shares[1])
    assert shares[0] > 0.5
