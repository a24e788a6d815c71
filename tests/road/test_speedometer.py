import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.road.speedometer import shown_speed, speedometer_check, true_speed

ratios = st.floats(min_value=0.8, max_value=1.25)
speeds = st.floats(min_value=5, max_value=200)


def test_an_exact_speedometer_reads_low_on_larger_tyres() -> None:
    # by hand: 100 x 1.04 = 104 true; 100 - 104 = -4
    speed = true_speed(shown_km_per_h=100, diameter_ratio=1.04)
    check = speedometer_check(
        shown_km_per_h=100, true_km_per_h=speed.true_km_per_h, share_frac=0.1, constant_km_per_h=4
    )
    assert speed.true_km_per_h == pytest.approx(104)
    assert check.reads_low
    assert not check.reads_high
    assert check.excess_km_per_h == pytest.approx(-4)


def test_a_speedometer_that_showed_more_may_stay_in_the_band() -> None:
    # by hand: 105 shown at 100; on a tyre 4 % larger 100 true shows 105 / 1.04 = 100.96
    shown = shown_speed(true_km_per_h=100, diameter_ratio=1.04, shown_at_100_km_per_h=105)
    assert shown.shown_km_per_h == pytest.approx(100.9615, rel=1e-6)
    assert speedometer_check(
        shown_km_per_h=shown.shown_km_per_h, true_km_per_h=100, share_frac=0.1, constant_km_per_h=4
    ).passes


@pytest.mark.parametrize("name", ["shown_km_per_h", "diameter_ratio", "shown_at_100_km_per_h"])
def test_true_speed_needs_numbers_above_nothing(name: str) -> None:
    given = {"shown_km_per_h": 100.0, "diameter_ratio": 1.0, "shown_at_100_km_per_h": 100.0}
    with pytest.raises(OutOfRange, match=name):
        true_speed(**(given | {name: 0.0}))


@pytest.mark.parametrize("name", ["true_km_per_h", "diameter_ratio", "shown_at_100_km_per_h"])
def test_shown_speed_needs_numbers_above_nothing(name: str) -> None:
    given = {"true_km_per_h": 100.0, "diameter_ratio": 1.0, "shown_at_100_km_per_h": 100.0}
    with pytest.raises(OutOfRange, match=name):
        shown_speed(**(given | {name: 0.0}))


@pytest.mark.parametrize("name", ["shown_km_per_h", "true_km_per_h"])
def test_the_band_needs_speeds_above_nothing(name: str) -> None:
    given = {
        "shown_km_per_h": 50.0,
        "true_km_per_h": 50.0,
        "share_frac": 0.1,
        "constant_km_per_h": 4.0,
    }
    with pytest.raises(OutOfRange, match=name):
        speedometer_check(**(given | {name: 0.0}))


@given(shown=speeds, ratio=ratios, larger=st.floats(min_value=0.001, max_value=0.3))
def test_a_larger_tyre_is_faster_at_the_same_reading(
    shown: float, ratio: float, larger: float
) -> None:
    small = true_speed(shown_km_per_h=shown, diameter_ratio=ratio)
    large = true_speed(shown_km_per_h=shown, diameter_ratio=ratio + larger)
    assert large.true_km_per_h > small.true_km_per_h


@given(true=speeds, ratio=ratios, at_100=st.floats(min_value=90, max_value=115))
def test_reading_and_true_speed_undo_each_other(true: float, ratio: float, at_100: float) -> None:
    shown = shown_speed(true_km_per_h=true, diameter_ratio=ratio, shown_at_100_km_per_h=at_100)
    back = true_speed(
        shown_km_per_h=shown.shown_km_per_h, diameter_ratio=ratio, shown_at_100_km_per_h=at_100
    )
    assert back.true_km_per_h == pytest.approx(true)
