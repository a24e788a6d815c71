"""Gas lockers, gas days and fixed vents."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.water.gas import (
    GasLoad,
    burned_wh_per_day,
    gas_days,
    heating_range,
    round_hole_mm,
    vent_mm2,
)
from coachwright.water.vents import free_mm2, plan_m2, vents_needed


def test_a_hundred_millimetre_hole_is_too_small() -> None:
    # pi/4 x 100 mm squared = 78.5 cm2
    assert round_hole_mm(area_mm2=7854) == pytest.approx(100, abs=0.01)
    assert round_hole_mm(area_mm2=10_000) > 100


@given(st.floats(0.01, 3), st.floats(1, 3))
def test_a_larger_locker_never_needs_less(floor: float, factor: float) -> None:
    small = vent_mm2(floor_m2=floor, share_frac=0.02, least_mm2=10_000)
    large = vent_mm2(floor_m2=floor * factor, share_frac=0.02, least_mm2=10_000)
    assert large >= small >= 10_000


@given(st.floats(0.5, 40), st.floats(100, 20_000), st.floats(0, 20_000))
def test_more_load_never_gives_more_days(gas: float, heat: float, more: float) -> None:
    cooking = GasLoad(what="cooking", heat_wh_per_day=heat, efficiency_frac=0.55)
    heating = GasLoad(what="heating", heat_wh_per_day=more, efficiency_frac=0.8)
    alone = gas_days(gas_kg=gas, loads=(cooking,))
    both = gas_days(gas_kg=gas, loads=(cooking, heating))
    assert both.days_d <= alone.days_d
    assert both.working.result == both.days_d
    assert alone.working.expression.endswith("(E1/η1)")


@given(st.floats(100, 6000), st.floats(0, 6000), st.floats(0, 24), st.floats(0, 24))
def test_a_heater_gives_no_more_than_a_day_at_full_output(
    output: float, least: float, full: float, other: float
) -> None:
    heat = heating_range(
        output_w=output, least_output_w=least, full_h_per_day=full, other_h_per_day=other
    )
    assert output * full <= heat.least_wh_per_day * (1 + 1e-12)
    assert heat.least_wh_per_day <= heat.most_wh_per_day * (1 + 1e-12)
    assert heat.most_wh_per_day <= output * 24 * (1 + 1e-12)


def test_a_fridge_burns_by_itself() -> None:
    # 300 W for 12 h
    assert burned_wh_per_day(input_w=300, running_h_per_day=12) == 3600


def test_areas_add_up() -> None:
    assert free_mm2(areas_m2=()) == 0
    assert free_mm2(areas_m2=(0.001, 0.002)) == pytest.approx(3000)
    assert plan_m2(length_mm=5990, width_mm=2050) == pytest.approx(12.28, abs=0.01)


@pytest.mark.parametrize(
    ("area_m2", "roof_mm2"), [(5, 7_500), (5.01, 10_000), (10, 10_000), (10.01, 12_500)]
)
def test_a_row_holds_up_to_its_larger_area(area_m2: float, roof_mm2: float) -> None:
    # EN 721: "up to 5", "over 5 to 10" (read); "10 to 15" (from memory)
    needed = vents_needed(area_m2=area_m2, unsealed_burner=True)
    assert needed is not None
    assert needed.roof_mm2 == roof_mm2
    assert needed.status == ("memory" if area_m2 > 10 else "read")


@given(st.floats(0.1, 60), st.floats(0.1, 60))
def test_a_larger_plan_never_needs_less(one: float, other: float) -> None:
    small = vents_needed(area_m2=min(one, other), unsealed_burner=True)
    large = vents_needed(area_m2=max(one, other), unsealed_burner=True)
    assert small is not None
    assert large is not None
    assert small.roof_mm2 <= large.roof_mm2
    assert small.low_mm2 <= large.low_mm2


def test_there_is_no_row_for_a_large_plan_without_a_burner() -> None:
    assert vents_needed(area_m2=10.5, unsealed_burner=False) is None


def test_what_cannot_be_is_refused_by_name() -> None:
    with pytest.raises(OutOfRange, match=r"^floor_m2 is 0"):
        vent_mm2(floor_m2=0, share_frac=0.02)
    with pytest.raises(OutOfRange, match=r"^area_mm2 is -1"):
        round_hole_mm(area_mm2=-1)
    with pytest.raises(OutOfRange, match=r"^loads is 0"):
        gas_days(gas_kg=11, loads=())
