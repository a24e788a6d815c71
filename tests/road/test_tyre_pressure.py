import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.road.tyre_pressure import advised_pressure, pressure_for_load


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
