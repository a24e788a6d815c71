import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange, UnknownName
from coachwright.road.tyre_load import (
    advised_pressure,
    axle_capacity,
    load_index_kg,
    passenger_tyre_kg,
    pressure_for_load,
    symbol_speed,
)


def test_a_load_index_outside_the_table_is_refused() -> None:
    with pytest.raises(UnknownName, match="no load index '131'"):
        load_index_kg(load_index=131)


def test_an_unknown_speed_symbol_is_refused() -> None:
    with pytest.raises(UnknownName, match="no speed symbol 'X'"):
        symbol_speed(symbol="X")


def test_h_stands_between_u_and_v() -> None:
    speeds = [symbol_speed(symbol=symbol).top_km_per_h for symbol in "UHV"]
    assert speeds == sorted(speeds)


def test_the_status_of_a_symbol_is_handed_on() -> None:
    assert symbol_speed(symbol="N").status == "memory"
    assert symbol_speed(symbol="R").status == "read"


@given(index=st.integers(min_value=60, max_value=129))
def test_a_higher_load_index_carries_more(index: int) -> None:
    assert load_index_kg(load_index=index + 1) > load_index_kg(load_index=index)


@pytest.mark.parametrize(
    ("changes", "name"),
    [
        ({"rating_kg": 0.0}, "rating_kg"),
        ({"tyres": 3}, "tyres"),
        ({"divisor_factor": 0.9}, "divisor_factor"),
    ],
)
def test_an_impossible_axle_is_refused(changes: dict[str, float], name: str) -> None:
    given: dict[str, float] = {"rating_kg": 1000.0, "tyres": 2, "divisor_factor": 1.0}
    with pytest.raises(OutOfRange, match=f"{name} is"):
        axle_capacity(**(given | changes))  # type: ignore[arg-type]


def test_the_working_gives_the_capacity_again() -> None:
    axle = axle_capacity(rating_kg=925, tyres=4, divisor_factor=1.1)
    n, w, k = (put.value for put in axle.working.given)
    assert axle.working.result == pytest.approx(n * w / k) == axle.capacity_kg


@pytest.mark.parametrize(
    "changes",
    [
        {"axle_load_kg": 0.0},
        {"rating_kg": 0.0},
        {"tyres": 0},
        {"rated_pressure_kpa": 0.0},
        {"axle_load_kg": 2001.0},
    ],
)
def test_a_load_that_has_no_pressure_is_refused(changes: dict[str, float]) -> None:
    given: dict[str, float] = {
        "axle_load_kg": 1500.0,
        "rating_kg": 1000.0,
        "tyres": 2,
        "rated_pressure_kpa": 500.0,
        "pressure_exponent": 1.25,
    }
    with pytest.raises(OutOfRange):
        pressure_for_load(**(given | changes))  # type: ignore[arg-type]


@given(load=st.floats(min_value=100, max_value=1999), more=st.floats(min_value=0.1, max_value=500))
def test_more_load_never_asks_for_less_pressure(load: float, more: float) -> None:
    def pressure(axle_kg: float, exponent: float = 1.25) -> float:
        return pressure_for_load(
            axle_load_kg=axle_kg,
            rating_kg=1000,
            tyres=2,
            rated_pressure_kpa=500,
            pressure_exponent=exponent,
        ).pressure_kpa

    heavier = min(load + more, 2000)
    assert pressure(heavier) >= pressure(load)
    assert pressure(load, 1.0) >= pressure(load, 1.25)  # the stiffness model asks for more
    assert pressure(2000) == 500


@pytest.mark.parametrize("name", ["width_mm", "aspect_frac", "rim_mm", "pressure_kpa"])
def test_a_passenger_tyre_without_extent_is_refused(name: str) -> None:
    given = {"width_mm": 225.0, "aspect_frac": 0.75, "rim_mm": 406.4, "pressure_kpa": 240.0}
    with pytest.raises(OutOfRange, match=name):
        passenger_tyre_kg(**(given | {name: 0.0}))


@given(needed=st.floats(50, 600), placard=st.floats(200, 550))
def test_the_advice_is_never_below_the_placard_nor_below_the_need(
    needed: float, placard: float
) -> None:
    advice = advised_pressure(needed_kpa=needed, placard_kpa=placard)
    assert advice.pressure_kpa >= placard
    assert advice.pressure_kpa >= needed
    assert advice.pressure_kpa in (needed, placard)


@pytest.mark.parametrize("name", ["needed_kpa", "placard_kpa"])
def test_no_pressure_is_no_advice(name: str) -> None:
    with pytest.raises(OutOfRange, match=name):
        advised_pressure(**({"needed_kpa": 300.0, "placard_kpa": 300.0} | {name: 0.0}))
