import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.electrics.battery import (
    arrangement,
    battery_degc,
    cold_factor,
    system_voltage,
    usable_energy,
    usual_cold_points,
)
from coachwright.electrics.lfp_voltage import open_circuit_v
from coachwright.errors import OutOfRange

DEGC = st.floats(-60, 60)
POINTS = st.lists(st.tuples(st.integers(-40, 40), st.floats(0, 1)), min_size=1, max_size=6)


@given(points=POINTS, at=DEGC, colder=st.floats(0, 60))
def test_colder_never_leaves_more(
    points: list[tuple[int, float]], at: float, colder: float
) -> None:
    table = tuple((float(degc), share) for degc, share in points)
    warm = cold_factor(at_degc=at, points=table)
    cold = cold_factor(at_degc=at - colder, points=table)
    assert 0.0 <= cold <= warm + 1e-12


@pytest.mark.parametrize("chemistry", ["LFP", "AGM", "flooded"])
def test_every_chemistry_has_its_usual_table(chemistry: str) -> None:
    points = usual_cold_points(chemistry=chemistry)
    assert cold_factor(at_degc=25, points=points) == 1.0
    assert cold_factor(at_degc=60, points=points) == 1.0
    assert 0.0 <= cold_factor(at_degc=-40, points=points) < 0.5


def test_lead_acid_in_the_cold() -> None:
    # a vendor's table, discharge over one hour: 16 % less at 0 degC
    assert cold_factor(at_degc=0, points=usual_cold_points(chemistry="AGM")) == 0.84


def test_between_two_points_the_line_holds() -> None:
    points = ((25.0, 1.0), (0.0, 0.8), (-20.0, 0.4))
    assert cold_factor(at_degc=-10, points=points) == pytest.approx(0.6)
    assert cold_factor(at_degc=-30, points=points) == pytest.approx(0.2)
    assert cold_factor(at_degc=-60, points=points) == 0.0


def test_one_point_holds_everywhere() -> None:
    assert cold_factor(at_degc=-30, points=((0.0, 0.7),)) == 0.7


def test_no_points_are_refused() -> None:
    with pytest.raises(OutOfRange, match="points is empty"):
        cold_factor(at_degc=0, points=())


@pytest.mark.parametrize(
    ("stated", "class_v"),
    [(12, 12), (12.8, 12), (24, 24), (25.6, 24), (36, 36), (48, 48), (51.2, 48)],
)
def test_a_voltage_belongs_to_a_class(stated: float, class_v: float) -> None:
    assert system_voltage(stated_v=stated, lithium=True).class_v == class_v


def test_the_voltages_of_a_class() -> None:
    # LFP data sheet: 3.2 V nominal and 3.65 V full a cell; lead-acid absorption 2.40 V a cell
    lithium = system_voltage(stated_v=51.2, lithium=True)
    assert lithium.nominal_v == pytest.approx(16 * 3.2)
    assert lithium.charge_v == pytest.approx(16 * 3.65)
    assert system_voltage(stated_v=12, lithium=False).charge_v == pytest.approx(6 * 2.40)


@pytest.mark.parametrize(
    ("count", "battery_v", "system_v", "expected"),
    [
        (2, 12.8, 12, (1, 2, 0)),
        (2, 12.8, 24, (2, 1, 0)),
        (4, 12.8, 48, (4, 1, 0)),
        (1, 51.2, 48, (1, 1, 0)),
        (3, 12.0, 24, (2, 1, 1)),
        (1, 12.0, 24, (2, 0, 1)),
        (4, 3.2, 12, (4, 1, 0)),
    ],
)
def test_batteries_are_joined(
    count: int, battery_v: float, system_v: float, expected: tuple[int, int, int]
) -> None:
    found = arrangement(count=count, battery_v=battery_v, system_v=system_v)
    assert (found.series_count, found.parallel_count, found.spare_count) == expected


@pytest.mark.parametrize(
    ("inside", "heated", "expected"),
    [(False, False, -15.0), (True, False, 12.0), (False, True, 2.0), (True, True, 12.0)],
)
def test_where_a_battery_stands(inside: bool, heated: bool, expected: float) -> None:
    found = battery_degc(
        night_degc=-15.0,
        cabin_degc=12.0,
        in_heated_space=inside,
        heated=heated,
        charge_from_degc=2.0,
    )
    assert found == expected


def test_a_warm_night_is_not_cooled_by_the_cabin() -> None:
    found = battery_degc(
        night_degc=22.0,
        cabin_degc=16.0,
        in_heated_space=True,
        heated=False,
        charge_from_degc=0.0,
    )
    assert found == 22.0


def test_reserve_and_depth_are_not_added() -> None:
    deep = usable_energy(capacity_ah=100, nominal_v=12, reserve_frac=0.2, usable_frac=0.5)
    assert deep.energy_wh == pytest.approx(600)
    careful = usable_energy(capacity_ah=100, nominal_v=12, reserve_frac=0.6, usable_frac=0.5)
    assert careful.energy_wh == pytest.approx(480)


def test_the_cold_scales_what_is_usable() -> None:
    # EL75 the other way round: 616.15 Ah x 12 V x 0.48 x 0.8 = 2 x 1419.6 Wh
    found = usable_energy(
        capacity_ah=616.15, nominal_v=12, reserve_frac=0.2, usable_frac=0.8, cold_factor=0.48
    )
    assert found.energy_wh == pytest.approx(2 * 1419.6, rel=1e-4)


@pytest.mark.parametrize(("charge", "degc"), [(1.0, 45.0), (0.0, -10.0), (1.0, -10.0)])
def test_the_corners_of_the_voltage_table(charge: float, degc: float) -> None:
    expected = {(1.0, 45.0): 3.334, (0.0, -10.0): 3.227, (1.0, -10.0): 3.361}
    found = open_circuit_v(charge_frac=charge, cell_degc=degc)
    assert found == pytest.approx(expected[charge, degc], rel=1e-12)


@pytest.mark.parametrize(("charge", "degc"), [(1.1, 20.0), (0.5, 50.0), (0.5, -20.0)])
def test_outside_the_voltage_table_there_is_no_answer(charge: float, degc: float) -> None:
    with pytest.raises(OutOfRange):
        open_circuit_v(charge_frac=charge, cell_degc=degc)
