import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.electrics.loads import daily_use
from coachwright.errors import OutOfRange

ENERGY = st.floats(0, 1e5)


@given(dc=ENERGY, ac=ENERGY, standby=ENERGY, efficiency=st.floats(0.5, 1.0))
def test_the_day_closes(dc: float, ac: float, standby: float, efficiency: float) -> None:
    day = daily_use(
        dc_wh_per_day=dc,
        ac_wh_per_day=ac,
        shore_only_wh_per_day=5.0,
        efficiency_frac=efficiency,
        inverter_standby_wh_per_day=standby,
    )
    assert day.total_wh_per_day == pytest.approx(dc + ac / efficiency + standby)
    assert day.total_wh_per_day == pytest.approx(
        day.dc_wh_per_day
        + day.ac_wh_per_day
        + day.inverter_loss_wh_per_day
        + day.inverter_standby_wh_per_day
    )
    assert day.working.result == day.total_wh_per_day


@pytest.mark.parametrize("efficiency", [0.0, -0.1, 1.1])
def test_an_impossible_efficiency_is_refused(efficiency: float) -> None:
    with pytest.raises(OutOfRange, match="efficiency_frac is"):
        daily_use(
            dc_wh_per_day=1,
            ac_wh_per_day=1,
            shore_only_wh_per_day=0,
            efficiency_frac=efficiency,
            inverter_standby_wh_per_day=0,
        )
