"""Shares of people, at and between the percentiles of the survey."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import UnknownName
from coachwright.layout.people import PERCENTILES, percentile_mm, suits_up_to
from coachwright.reference import table

DIMENSIONS = sorted({row["dimension"] for row in table("anthropometry") if row["unit"] == "mm"})
each_dimension = pytest.mark.parametrize("dimension", DIMENSIONS)


@each_dimension
def test_at_a_percentile_its_own_share_suits(dimension: str) -> None:
    for percentile, share in PERCENTILES:
        men = suits_up_to(
            dimension=dimension,
            length_mm=percentile_mm(dimension=dimension, sex="men", percentile=percentile),
        )
        women = suits_up_to(
            dimension=dimension,
            length_mm=percentile_mm(dimension=dimension, sex="women", percentile=percentile),
        )
        assert men.men_frac == pytest.approx(share)
        assert women.women_frac == pytest.approx(share)


@each_dimension
def test_percentiles_rise(dimension: str) -> None:
    for sex in ("men", "women"):
        values = [
            percentile_mm(dimension=dimension, sex=sex, percentile=name) for name, _ in PERCENTILES
        ]
        assert values == sorted(set(values))


@given(st.floats(0, 3000), st.floats(0, 3000))
def test_more_room_never_suits_fewer(one: float, other: float) -> None:
    small, large = sorted((one, other))
    less, more = (suits_up_to(dimension="stature", length_mm=length) for length in (small, large))
    assert 0 <= less.men_frac <= more.men_frac <= 1
    assert 0 <= less.women_frac <= more.women_frac <= 1


def test_an_unknown_dimension_or_percentile_is_refused() -> None:
    with pytest.raises(UnknownName, match="body dimension"):
        suits_up_to(dimension="wingspan", length_mm=1)
    with pytest.raises(UnknownName, match="percentile"):
        percentile_mm(dimension="stature", sex="men", percentile="p42")
    with pytest.raises(UnknownName, match="body dimension"):
        percentile_mm(dimension="stature", sex="children", percentile="p50")
