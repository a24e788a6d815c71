from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.electrics.rate import (
    capacity_at_ah,
    depletion_ratio,
    peukert_h,
    rate_factor,
)
from coachwright.electrics.runtime import running
from coachwright.errors import OutOfRange

CURRENT = st.floats(0.01, 500)
SHARE = st.floats(0.01, 1)
EXPONENT = st.floats(1.0, 1.4)


def _hours(**numbers: Any) -> float:
    return running(**({"capacity_ah": 200.0, "depth_frac": 0.8, "draw_a": 10.0} | numbers)).clock_h


@given(draw=CURRENT, more=CURRENT, duty=SHARE, base=st.floats(0, 50), exponent=EXPONENT)
def test_more_load_never_runs_longer(
    draw: float, more: float, duty: float, base: float, exponent: float
) -> None:
    said = {"draw_a": draw, "duty_frac": duty, "base_a": base, "exponent": exponent}
    before = _hours(**said)
    assert _hours(**(said | {"draw_a": draw + more})) <= before * (1 + 1e-12)
    assert _hours(**(said | {"base_a": base + more})) <= before * (1 + 1e-12)
    assert _hours(**(said | {"duty_frac": min(1.0, duty * 1.5)})) <= before * (1 + 1e-12)


@given(draw=CURRENT, duty=SHARE, exponent=EXPONENT, share=SHARE)
def test_less_capacity_never_runs_longer(
    draw: float, duty: float, exponent: float, share: float
) -> None:
    said = {"draw_a": draw, "duty_frac": duty, "exponent": exponent}
    assert _hours(**said, capacity_ah=200 * share) <= _hours(**said) * (1 + 1e-12)


def test_the_reserve_shortens_it() -> None:
    assert _hours(depth_frac=1.0) == pytest.approx(20)
    assert _hours(depth_frac=0.8) == pytest.approx(16)


def test_drawing_hours_are_the_share_of_the_clock() -> None:
    found = running(capacity_ah=200, depth_frac=1, draw_a=100, duty_frac=0.25)
    assert (found.clock_h, found.drawing_h) == (8.0, 2.0)


def test_a_fast_discharge_gives_less() -> None:
    # hand: x = 100 A x 20 h / 200 Ah = 10; 20 h / 10^1.05 = 1.7825 h instead of 2 h
    assert _hours(depth_frac=1.0, draw_a=100, exponent=1.05) == pytest.approx(1.78250, rel=1e-5)


def test_a_slow_discharge_gives_no_more_than_rated() -> None:
    assert _hours(depth_frac=1.0, draw_a=1, exponent=1.3) == pytest.approx(200)
    assert depletion_ratio(draw_a=1, capacity_ah=200, rated_h=20, exponent=1.3) == 0.1
    assert rate_factor(draw_a=1, capacity_ah=200, rated_h=20, exponent=1.3) == 1.0


def test_the_rate_factor_is_what_peukert_leaves() -> None:
    # EL38 by hand: 100 Ah at 10 A lasts 8.706 h, so 87.06 Ah
    assert rate_factor(draw_a=10, capacity_ah=100, rated_h=20, exponent=1.2) == pytest.approx(
        0.8706, rel=1e-4
    )


def test_a_capacity_is_restated_for_another_time() -> None:
    five = capacity_at_ah(capacity_ah=100, rated_h=20, exponent=1.2, wanted_h=5)
    # the battery of 100 Ah at 20 h, emptied in 5 h, gives that much
    assert peukert_h(capacity_ah=100, draw_a=five / 5, rated_h=20, exponent=1.2) == pytest.approx(
        5
    )


@pytest.mark.parametrize(
    ("numbers", "name"),
    [
        ({"draw_a": 0.0}, "draw_a"),
        ({"draw_a": -1.0, "base_a": 5.0}, "draw_a"),
        ({"capacity_ah": 0.0}, "capacity_ah"),
        ({"rated_h": 0.0}, "rated_h"),
        ({"depth_frac": 1.2}, "depth_frac"),
        ({"duty_frac": -0.1}, "duty_frac"),
    ],
)
def test_an_impossible_draw_is_refused(numbers: dict[str, float], name: str) -> None:
    with pytest.raises(OutOfRange, match=f"{name} is"):
        _hours(**numbers)


@pytest.mark.parametrize(
    ("numbers", "name"),
    [({"draw_a": 0.0}, "draw_a"), ({"exponent": 0.9}, "exponent"), ({"rated_h": 0.0}, "rated_h")],
)
def test_peukert_refuses_what_has_no_meaning(numbers: dict[str, float], name: str) -> None:
    said = {"capacity_ah": 100.0, "draw_a": 5.0, "rated_h": 20.0, "exponent": 1.1} | numbers
    with pytest.raises(OutOfRange, match=f"{name} is"):
        peukert_h(**said)
