import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.electrics.cell_temperature import cell_degc
from coachwright.electrics.solar import (
    array_output,
    combined_loss_frac,
    flat_power_w,
    panel_power_w,
    sun_day,
)
from coachwright.electrics.strings import (
    circuit_current,
    cold_voltage_by_coefficient,
    cold_voltage_by_table,
    reverse_current_a,
    series_count,
)
from coachwright.errors import OutOfRange

POWER = st.floats(0, 5000)


@given(powers=st.lists(POWER, max_size=5), more=POWER, limit=POWER, hours=st.floats(0, 12))
def test_more_panels_never_bring_less(
    powers: list[float], more: float, limit: float, hours: float
) -> None:
    named = {f"array {at}": power for at, power in enumerate(powers)}
    before = sun_day(powers_w=named, limit_w=limit, sun_h_per_day=hours)
    after = sun_day(powers_w=named | {"more": more}, limit_w=limit, sun_h_per_day=hours)
    assert after.energy_wh_per_day >= before.energy_wh_per_day * (1 - 1e-12)


@given(warm=POWER, more=POWER, limit=POWER)
def test_more_power_into_a_controller_never_gives_less(
    warm: float, more: float, limit: float
) -> None:
    def given_w(power_w: float) -> float:
        return array_output(
            warm_power_w=power_w, loss_frac=0.09, efficiency_frac=0.97, limit_w=limit
        ).power_w

    assert given_w(warm) <= given_w(warm + more) <= limit


def test_nothing_offered_loses_nothing() -> None:
    found = array_output(warm_power_w=0, loss_frac=0.1, efficiency_frac=0.9, limit_w=100)
    assert (found.power_w, found.clipped_frac) == (0.0, 0.0)


def test_no_array_brings_nothing() -> None:
    found = sun_day(powers_w={}, limit_w=100, sun_h_per_day=5)
    assert (found.energy_wh_per_day, found.working.expression) == (0, "E = min(0, P_bank)·h")


def test_losses_multiply() -> None:
    assert combined_loss_frac(losses_frac=(0.5, 0.5)) == 0.75
    assert combined_loss_frac(losses_frac=()) == 0.0


@given(air=st.floats(-30, 45))
def test_a_bonded_panel_gives_no_more_than_one_with_air_behind(air: float) -> None:
    def power_w(*, bonded: bool) -> float:
        return flat_power_w(
            rated_w=100,
            air_degc=air,
            wind_m_per_s=1,
            bonded=bonded,
            coefficient_frac_per_k=-0.0045,
        )

    assert power_w(bonded=True) <= power_w(bonded=False) <= 100


def test_bonding_costs_an_eighth() -> None:
    # SAPM by hand: 28.1 K hotter at 1000 W/m2 and 1 m/s; x 0.45 %/K = 12.7 % of the rating
    open_w, bonded_w = (
        flat_power_w(
            rated_w=100,
            air_degc=30,
            wind_m_per_s=1,
            bonded=bonded,
            coefficient_frac_per_k=-0.0045,
        )
        for bonded in (False, True)
    )
    assert open_w - bonded_w == pytest.approx(12.66, abs=0.01)


def test_a_panel_never_gives_less_than_nothing() -> None:
    found = panel_power_w(
        rated_w=100, irradiance_w_per_m2=1000, panel_degc=300, coefficient_frac_per_k=-0.005
    )
    assert found == 0.0


def test_an_unknown_mounting_is_refused() -> None:
    with pytest.raises(OutOfRange, match="rack is a kite; allowed: open rack"):
        cell_degc(irradiance_w_per_m2=1, air_degc=1, wind_m_per_s=1, rack="a kite")  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("cold", "factor"),
    # NEC Table 690.7(A), row by row at its edges; between rows the colder one
    [(30, 1.0), (24, 1.02), (4, 1.10), (0, 1.10), (-0.5, 1.12), (-5.5, 1.14), (-40, 1.25)],
)
def test_the_table_of_the_code(cold: float, factor: float) -> None:
    found = cold_voltage_by_table(open_circuit_v=100, series_count=1, cold_degc=cold)
    assert found.factor == factor
    assert found.voltage_v == pytest.approx(100 * factor)


def test_below_the_table_there_is_no_answer() -> None:
    with pytest.raises(OutOfRange, match=r"cold_degc is -41; allowed: -40 degC or warmer"):
        cold_voltage_by_table(open_circuit_v=20, series_count=1, cold_degc=-41)


@given(cold=st.floats(-40, 40), colder=st.floats(0, 30))
def test_colder_never_lowers_the_voltage(cold: float, colder: float) -> None:
    def volts_v(at_degc: float) -> float:
        return cold_voltage_by_coefficient(
            open_circuit_v=40, series_count=2, coefficient_frac_per_k=-0.003, cold_degc=at_degc
        ).voltage_v

    assert volts_v(cold) <= volts_v(cold - colder)


def test_warmth_gives_no_credit() -> None:
    found = cold_voltage_by_coefficient(
        open_circuit_v=40, series_count=1, coefficient_frac_per_k=-0.003, cold_degc=35
    )
    assert found.voltage_v == 40


def test_strings_are_as_short_as_will_do() -> None:
    assert series_count(rated_v=18, charge_v=14.6) == 1
    assert series_count(rated_v=18, charge_v=29.2) == 2
    assert series_count(rated_v=18, charge_v=58.4) == 4


def test_one_string_has_nothing_to_fear() -> None:
    assert reverse_current_a(short_circuit_a=10, parallel_count=1, factor=1.25) == 0
    assert circuit_current(short_circuit_a=10, parallel_count=2, factor=1.25).most_a == 25
