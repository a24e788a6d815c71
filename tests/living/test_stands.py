"""Days of independence by month: order statistics that can be counted by hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as some

from coachwright.errors import OutOfRange
from coachwright.living.stands import MONTH_DAYS, stands_by_month

FOLLOWED_D = 21.0


def test_nine_of_ten_stands_of_january_last_at_least_the_first_figure() -> None:
    january = [float(day) for day in range(31, 0, -1)]
    made = stands_by_month(lasted_d=january + [9.0] * 334, water_d=None, followed_d=50.0)
    first = made.months[0]
    assert first.p10_d == 4.0  # 28 of 31 last 4 days or more: 90.3 %
    assert first.p50_d == 16.0  # 16 of 31 last 16 days or more
    assert first.p90_d == 28.0  # 4 of 31 last 28 days or more
    assert first.nine_of_ten_d == first.p10_d


def test_each_stand_counts_in_the_month_in_which_it_begins() -> None:
    lasted = [float(month) for month, days in enumerate(MONTH_DAYS, start=1) for _ in range(days)]
    made = stands_by_month(lasted_d=lasted, water_d=None, followed_d=FOLLOWED_D)
    assert [each.p50_d for each in made.months] == [float(month) for month in range(1, 13)]
    assert [each.count for each in made.months] == list(MONTH_DAYS)
    assert [each.month for each in made.months] == list(range(1, 13))
    assert made.whole_year.month is None
    assert made.whole_year.count == 365


def test_water_ends_those_stands_that_the_bank_would_outlast() -> None:
    lasted = [3.0] * 20 + [8.0] * 11 + [21.0] * 334
    made = stands_by_month(lasted_d=lasted, water_d=5.0, followed_d=FOLLOWED_D)
    assert made.months[0].water_limited_frac == pytest.approx(11 / 31)
    assert made.months[5].water_limited_frac == 1.0
    assert made.months[5].longest_frac == 1.0
    assert made.months[0].longest_frac == 0.0


def test_a_year_has_three_hundred_and_sixty_five_stands() -> None:
    with pytest.raises(OutOfRange, match="12 stands"):
        stands_by_month(lasted_d=[1.0] * 12, water_d=None, followed_d=FOLLOWED_D)


@given(some.lists(some.floats(0.0, 21.0), min_size=365, max_size=365))
def test_the_shares_hold_for_any_year(lasted: list[float]) -> None:
    made = stands_by_month(lasted_d=lasted, water_d=None, followed_d=FOLLOWED_D)
    for each in (*made.months, made.whole_year):
        assert each.p10_d <= each.p50_d <= each.p90_d <= FOLLOWED_D
    assert sum(day >= made.whole_year.p10_d for day in lasted) >= 0.9 * 365
    assert sum(day >= made.whole_year.p50_d for day in lasted) >= 0.5 * 365
