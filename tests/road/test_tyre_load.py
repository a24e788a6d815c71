import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange, UnknownName
from coachwright.road.tyre_load import (
    axle_capacity,
    load_index_kg,
    passenger_tyre_kg,
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


@pytest.mark.parametrize("name", ["width_mm", "aspect_frac", "rim_mm", "pressure_kpa"])
def test_a_passenger_tyre_without_extent_is_refused(name: str) -> None:
    given = {"width_mm": 225.0, "aspect_frac": 0.75, "rim_mm": 406.4, "pressure_kpa": 240.0}
    with pytest.raises(OutOfRange, match=name):
        passenger_tyre_kg(**(given | {name: 0.0}))
