"""Where a pump and a pipe meet."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.water.pump import (
    OperatingPoint,
    best_power_w,
    operating_point,
    pump_power_w,
    pump_pressure_kpa,
)

lengths = st.floats(100, 30_000)
bores = st.floats(4, 25)
rises = st.floats(-2000, 30_000)


def point(
    *, length_mm: float = 6000, bore_mm: float = 10, rise_mm: float = 500, open_flow: float = 10
) -> OperatingPoint:
    return operating_point(
        open_flow_l_per_min=open_flow,
        cut_out_kpa=240,
        rise_mm=rise_mm,
        length_mm=length_mm,
        bore_mm=bore_mm,
    )


@given(lengths, bores, rises)
def test_pressures_balance(length_mm: float, bore_mm: float, rise_mm: float) -> None:
    made = point(length_mm=length_mm, bore_mm=bore_mm, rise_mm=rise_mm)
    given_kpa = pump_pressure_kpa(
        flow_l_per_min=made.flow_l_per_min, open_flow_l_per_min=10, cut_out_kpa=240
    )
    assert 0 <= made.flow_l_per_min <= 10
    if 0 < made.flow_l_per_min < 10:
        # between laminar and turbulent the loss jumps: the point then lies on the jump
        assert given_kpa >= made.pressure_kpa - 1e-6
        if made.speed_m_per_s * bore_mm / 1000 / 1.004e-6 > 2400:
            assert given_kpa == pytest.approx(made.pressure_kpa, abs=1e-6)


@given(lengths, st.floats(1.0, 4.0), bores, rises)
def test_a_longer_pipe_never_gives_more_flow(
    length_mm: float, factor: float, bore_mm: float, rise_mm: float
) -> None:
    short = point(length_mm=length_mm, bore_mm=bore_mm, rise_mm=rise_mm)
    long = point(length_mm=length_mm * factor, bore_mm=bore_mm, rise_mm=rise_mm)
    assert long.flow_l_per_min <= short.flow_l_per_min + 1e-9


@given(rises, st.floats(0, 3000))
def test_a_higher_outlet_never_gives_more_flow(rise_mm: float, more_mm: float) -> None:
    lower, higher = point(rise_mm=rise_mm), point(rise_mm=rise_mm + more_mm)
    assert higher.flow_l_per_min <= lower.flow_l_per_min + 1e-9


def test_the_point_is_where_a_hand_calculation_puts_it() -> None:
    # By hand at 8.67 L/min: pump 240 (1 - 0.867) = 31.9 kPa; v = 1.840 m/s, Re 18 325,
    # f = 0.0267; loss 0.0267 x 600 x 0.9982 x 1.840^2 / 2 = 27.1 kPa; lift 4.9 kPa; sum 32.0 kPa
    made = point()
    assert made.flow_l_per_min == pytest.approx(8.67, abs=0.02)
    assert made.static_kpa == pytest.approx(4.9, abs=0.05)
    assert made.loss_kpa == pytest.approx(27.1, abs=0.2)


def test_a_pump_cannot_lift_above_its_cut_out() -> None:
    made = point(rise_mm=25_000)
    assert made.flow_l_per_min == 0
    assert made.loss_kpa == 0


def test_an_outlet_far_below_the_pump_gets_the_open_flow() -> None:
    assert point(rise_mm=-2000, length_mm=100, bore_mm=25).flow_l_per_min == 10


def test_the_working_gives_the_flow() -> None:
    made = point()
    assert made.working.result == made.flow_l_per_min
    assert {number.symbol for number in made.working.given} == {
        "p0",
        "Q0",
        "h",
        "L",
        "D",
        "f",
        "v",
    }


@given(st.floats(0, 10))
def test_no_point_of_the_line_takes_more_power_than_the_best(flow: float) -> None:
    pressure = pump_pressure_kpa(flow_l_per_min=flow, open_flow_l_per_min=10, cut_out_kpa=240)
    best = best_power_w(open_flow_l_per_min=10, cut_out_kpa=240, efficiency_frac=0.4)
    power = pump_power_w(flow_l_per_min=flow, pressure_kpa=pressure, efficiency_frac=0.4)
    assert power <= best + 1e-9


def test_what_cannot_be_is_refused_by_name() -> None:
    with pytest.raises(OutOfRange, match=r"^efficiency_frac is 0; allowed: above 0, up to 1"):
        pump_power_w(flow_l_per_min=1, pressure_kpa=1, efficiency_frac=0)
    with pytest.raises(OutOfRange, match=r"^open_flow_l_per_min is 0"):
        pump_pressure_kpa(flow_l_per_min=0, open_flow_l_per_min=0, cut_out_kpa=1)
