import pytest

from coachwright.errors import UnknownName
from coachwright.road.model import Road
from coachwright.road.stage import stage
from tests.road.given_weights import weights
from tests.support.builds import Data, build, fitting, part

TYRE: Data = {
    "size": "245/75R16C",
    "kind": "commercial",
    "load_index_single": 120,
    "load_index_dual": 116,
    "speed_symbol": "Q",
    "rated_pressure": "525 kPa",
}


def road(changes: Data | None = None, **given: float) -> Road:
    return stage(build(changes), weights(**given))


def with_parts(*pairs: tuple[Data, Data]) -> Data:
    return {"own_parts": [each for each, _ in pairs], "fittings": [each for _, each in pairs]}


def box(name: str, at: list[str], mounting: str, **fields: object) -> tuple[Data, Data]:
    body = {"size": ["400 mm", "600 mm", "500 mm"], "mass": "20 kg"}
    return part(name, body=body), fitting(name, name, at=at, mounting=mounting, **fields)


def tyres(**changes: object) -> Data:
    return with_parts(
        (part("tyres", tyre=TYRE | changes), fitting("tyres", "tyres", mounting="wheels"))
    )


def value(found: Road, name: str) -> float | None:
    (figure,) = (figure for figure in found.figures if figure.name == name)
    return figure.value


def test_the_placard_tyre_counts_where_no_set_is_fitted() -> None:
    found = road()
    assert found.tyres.fitting == ""
    assert found.tyres.change.ratio == 1
    # load index 118 is 1320 kg: two of them
    assert value(found, "road.front-tyre-capacity") == 2640
    assert value(found, "road.speed-true-at-100") == 100


def test_a_fitted_set_replaces_the_placard_tyre() -> None:
    found = road(tyres())
    # load index 120 is 1400 kg; 773.9 mm on 743.9 mm
    assert value(found, "road.front-tyre-capacity") == 2800
    assert value(found, "road.speed-true-at-100") == pytest.approx(104.0328, rel=1e-5)
    assert value(found, "road.overall-height") == pytest.approx(2665)  # 2650 + 15
    assert found.tyres.placard_differences == 1
    assert any("taken as exact" in note for note in found.notes)


def test_a_tyre_set_that_is_only_carried_along_does_not_count() -> None:
    carried = with_parts((part("tyres", tyre=TYRE), fitting("tyres", "tyres")))
    assert road(carried).tyres.fitting == ""


def test_a_dual_axle_has_four_tyres_with_the_second_index() -> None:
    found = road({"own_vehicle.tyre.dual_rear": True})
    # load index 116 is 1250 kg: four of them; the front stays at 2 x 1320
    assert found.axle("rear axle").capacity_kg == 5000
    assert found.axle("front axle").capacity_kg == 2640


def test_a_dual_axle_without_the_second_index_is_unknown() -> None:
    found = road({"own_vehicle.tyre.dual_rear": True, "own_vehicle.tyre.load_index_dual": None})
    assert found.axle("rear axle").capacity_kg is None
    assert "dual" in found.axle("rear axle").missing
    assert "dual" in found.axle("rear axle").pressure_missing


@pytest.mark.parametrize(
    ("jurisdiction", "category", "divisor"),
    [("us", "N1", 1.1), ("eu", "MPV", 1.1), ("eu", "N1", 1.0), ("uk", "M1", 1.0)],
)
def test_the_divisor_is_for_passenger_tyres_in_the_united_states(
    jurisdiction: str, category: str, divisor: float
) -> None:
    found = road(
        {
            "brief.jurisdiction": jurisdiction,
            "own_vehicle.category": category,
            "own_vehicle.tyre.kind": "passenger",
        }
    )
    assert found.axle("front axle").divisor_factor == divisor
    assert found.axle("front axle").capacity_kg == pytest.approx(2640 / divisor)
    assert road({"brief.jurisdiction": jurisdiction}).axle("front axle").divisor_factor == 1


def test_the_pressure_is_for_the_heaviest_state_and_never_below_the_placard() -> None:
    whole = road(rear_kg=1700)
    found = whole.axle("rear axle")
    # heaviest: 1700 + 50 worst, + 40 bound = 1790; 525 x (1790/2640)^1.25 = 323.0
    assert found.heaviest_kg == 1790
    assert found.needed_pressure_kpa == pytest.approx(323.0, abs=0.1)
    assert found.advised_pressure_kpa == 500
    assert value(whole, "road.rear-tyre-pressure") == 500


@pytest.mark.parametrize("kind", ["passenger", "camper"])
def test_no_pressure_is_given_for_kinds_that_the_formula_is_not_for(kind: str) -> None:
    axle = road({"own_vehicle.tyre.kind": kind}).axle("front axle")
    assert axle.needed_pressure_kpa is None
    assert kind in axle.pressure_missing


def test_no_pressure_is_given_for_overloaded_tyres() -> None:
    axle = road(rear_kg=2700).axle("rear axle")
    assert axle.needed_pressure_kpa is None
    assert axle.pressure_missing == "a load that the tyres can carry"


def test_a_stated_speedometer_is_used() -> None:
    found = road(tyres() | {"own_vehicle.tyre.speedometer_at_100": "105 km/h"})
    assert found.speedometer.known
    # 100 x 1.040328 x 100/105 = 99.079
    assert value(found, "road.speed-true-at-100") == pytest.approx(99.0789, rel=1e-5)


def test_a_box_behind_lengthens_and_takes_departure_angle() -> None:
    hung = box("box", ["5000 mm", "-900 mm", "-160 mm"], "rear door left")
    alone, found = road(), road(with_parts(hung))
    assert value(alone, "road.overall-length") == 5990
    assert value(found, "road.overall-length") == 6350  # 950 + 5000 + 400
    assert found.angles.equipped is not None
    assert found.angles.equipped.point.of == "box"
    assert found.angles.equipped.point.height_mm == 400  # 560 - 160
    before, after = (value(each, "road.departure-angle") for each in (alone, found))
    assert before is not None
    assert after is not None
    assert after < before == value(found, "road.departure-angle-alone")


def test_things_inside_do_not_change_the_size() -> None:
    inside = box("box", ["5000 mm", "-900 mm", "3000 mm"], "floor")
    assert value(road(with_parts(inside)), "road.overall-length") == 5990
    assert value(road(with_parts(inside)), "road.overall-height") == 2650


def test_a_part_on_something_outside_is_outside_itself() -> None:
    rack = box("rack", ["2000 mm", "-300 mm", "2100 mm"], "roof")
    crate = box("crate", ["2000 mm", "-300 mm", "2600 mm"], "floor", on="rack")
    found = road(with_parts(rack, crate))
    assert value(found, "road.overall-height") == 3660  # 2600 + 500 + 560
    assert value(found, "road.roof-load") == 40


def test_what_a_fitting_is_decides_whether_it_counts() -> None:
    on_roof = ["0 mm", "0 mm", "2400 mm"]
    kinds: dict[str, Data] = {
        "mast": {"outside_device": {"kind": "antenna"}},
        "awning": {"awning": {"length": "3000 mm", "reach": "2500 mm"}},
        "ladder": {"ladder": {"first_rung": "500 mm", "clear_width": "300 mm"}},
        "lamp": {"light": {"place": "outside"}},
        "plain": {},
    }
    pairs = [
        (part(name, **facet), fitting(name, name, at=on_roof, mounting="roof"))
        for name, facet in kinds.items()
    ]
    found = road(with_parts(*pairs))
    assert found.not_counted == ("mast (antenna: height)", "lamp (lamp: width)")


def test_the_stability_factor_has_bounds_and_stands_on_the_fitted_tyres() -> None:
    # by hand: (1800 + 1780)/2 / (2 x 800) = 1.11875; at 815 on the taller tyres 1.09816
    found = road(cg_height_mm=800).stability
    assert found.travelling.stability_ratio == pytest.approx(1.11875)
    assert found.low_ratio == pytest.approx(1790 / 1640)
    assert found.high_ratio == pytest.approx(1790 / 1560)
    taller = road(tyres(), cg_height_mm=800).stability
    assert taller.travelling.stability_ratio == pytest.approx(1790 / 1630)


def test_the_doors_carry_their_own_loads_and_what_stands_on_them() -> None:
    left = box("carrier", ["4800 mm", "-900 mm", "200 mm"], "rear door left", contents="5 kg")
    wheel = box("wheel", ["5000 mm", "-900 mm", "300 mm"], "floor", on="carrier")
    right = box("crate", ["4800 mm", "200 mm", "200 mm"], "rear door right")
    found = road(with_parts(left, wheel, right))
    assert value(found, "road.rear-door-left-load") == 45
    assert value(found, "road.rear-door-right-load") == 20
    # left: x = (25 x 5000 + 20 x 5200)/45 = 5088.89, y = -600; hinge at 4750, -780
    # a = sqrt(338.89^2 + 180^2) = 383.73; 45 x 9.80665 x 0.38373 = 169.34
    assert value(found, "road.rear-door-left-moment") == pytest.approx(169.34, abs=0.01)


def test_an_empty_door_has_no_moment() -> None:
    assert value(road(), "road.rear-door-left-moment") == 0


def test_water_and_gas_count_when_full() -> None:
    tank = (
        part("tank", tank={"contents": "fresh", "volume": "40 L"}),
        fitting("tank", "tank", mounting="roof"),
    )
    bottle = (
        part("bottle", gas_store={"gas": "11 kg"}),
        fitting("bottle", "bottle", mounting="hitch"),
    )
    heater = (
        part("heater", water_heater={"volume": "10 L"}),
        fitting("heater", "heater", mounting="side", at=["2000 mm", "-1200 mm", "0 mm"]),
    )
    found = road(with_parts(tank, bottle, heater))
    assert value(found, "road.roof-load") == 41
    assert value(found, "road.hitch-load") == 12
    assert found.zone("side left").load_kg == 11


def test_cargo_above_the_roof_is_roof_load_and_cargo_behind_is_said() -> None:
    found = road(
        {
            "brief.cargo": [
                {"name": "boat", "mass": "30 kg", "centre": ["2000 mm", "0 mm", "2300 mm"]},
                {"name": "chest", "mass": "30 kg", "centre": ["5500 mm", "0 mm", "500 mm"]},
                {"name": "tools", "mass": "30 kg", "centre": ["3000 mm", "0 mm", "200 mm"]},
            ]
        }
    )
    assert value(found, "road.roof-load") == 30
    assert [note for note in found.notes if note.startswith("chest")]


def test_a_deck_carries_one_person_the_heaviest() -> None:
    rack = (
        part("rack", roof_rack={"load_limit": "150 kg", "standing_limit": "200 kg"}),
        fitting("rack", "rack", mounting="roof"),
    )
    crate = box("crate", ["2000 mm", "0 mm", "2300 mm"], "roof", on="rack")
    found = road(with_parts(rack, crate))
    # rack 1, crate 20, the heaviest traveller 82
    assert found.zone("roof standing").load_kg == 103
    (carrier,) = found.carriers
    assert (carrier.load_kg, carrier.standing_kg) == (20, 102)
    light = {"brief.travellers": [{"name": "eva", "mass": "50 kg", "stature": "1600 mm"}]}
    assert road(with_parts(rack, crate) | light).zone("roof standing").person_kg == 75


def test_a_rack_that_nobody_stands_on_has_no_standing_case() -> None:
    rack = (
        part("rack", roof_rack={"load_limit": "150 kg"}),
        fitting("rack", "rack", mounting="roof", contents="12 kg"),
    )
    found = road(with_parts(rack))
    assert "roof standing" not in {zone.zone for zone in found.zones}
    (carrier,) = found.carriers
    assert (carrier.load_kg, carrier.standing_kg) == (12, None)
    with pytest.raises(UnknownName, match="roof standing"):
        found.zone("roof standing")


def test_the_roof_load_has_its_crash_force() -> None:
    found = road(with_parts(box("crate", ["2000 mm", "0 mm", "2300 mm"], "roof")))
    # by hand: 20 kg x 8 x 9.80665 = 1569.064 N
    assert value(found, "road.roof-crash-force-iso") == pytest.approx(1569.064)
    assert road().crash == ()


def test_underbody_fittings_give_a_ramp_angle() -> None:
    tank = box("tank", ["1800 mm", "-300 mm", "-350 mm"], "underbody")
    found = road(with_parts(tank))
    assert found.angles.between is not None
    assert found.angles.between.point.of == "tank"
    assert found.angles.lowest_between_mm == 210
    assert any("own underside" in note for note in found.notes)
    assert value(road(), "road.breakover-angle") is None


def test_the_spare_is_the_fitted_one_or_the_vehicles_own_or_none() -> None:
    spare = (part("spare", spare={"size": "245/75R16C"}), fitting("spare", "spare"))
    assert road(with_parts(spare)).spare.source == "spare"
    assert road().spare.source == "vehicle"
    assert road().spare.difference_frac == 0
    assert road({"own_vehicle.tyre.spare_carried": False}).spare.diameter_mm is None
    gone = {"vehicle_spare_removed": True}
    assert road(gone).spare.diameter_mm is None
    assert road(with_parts(spare) | gone).spare.source == "spare"


def test_two_tyre_sets_are_said() -> None:
    double = with_parts(
        (part("tyres", tyre=TYRE), fitting("tyres", "tyres", mounting="wheels")),
    )
    double["fittings"].append(fitting("more", "tyres", mounting="wheels"))
    assert any("more than one tyre set" in note for note in road(double).notes)


def test_figures_have_unlike_names_and_a_working_or_what_is_missing() -> None:
    found = road()
    names = [figure.name for figure in found.figures]
    assert len(names) == len(set(names))
    for figure in found.figures:
        assert figure.working is not None or figure.missing, figure.name
        if figure.working is not None:
            assert figure.working.result == figure.value


def test_an_unknown_axle_is_refused() -> None:
    with pytest.raises(UnknownName, match="middle axle"):
        road().axle("middle axle")
