"""Tolerances combine in quadrature, common parts first by adding."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.weights.tolerance import (
    ONE_SIDED_FACTOR,
    TWO_SIDED_FACTOR,
    Deviation,
    combine,
)

values = st.lists(st.floats(min_value=-100, max_value=100), min_size=1, max_size=10)


def _deviations(given_values: list[float], share: float, pool: str = "p") -> list[Deviation]:
    return [
        Deviation(value=value, unit="kg", systematic_frac=share, pool=pool)
        for value in given_values
    ]


def test_the_factors_are_those_of_the_normal_distribution() -> None:
    """1.645 and 1.960: any table of the normal distribution."""
    assert pytest.approx(1.6449, abs=5e-5) == ONE_SIDED_FACTOR
    assert pytest.approx(1.9600, abs=5e-5) == TWO_SIDED_FACTOR


@given(values)
def test_independent_parts_add_in_quadrature(given_values: list[float]) -> None:
    found = combine(deviations=_deviations(given_values, 0.0), unit="kg")
    assert found.value == pytest.approx(math.hypot(*given_values))


@given(values)
def test_common_parts_add_with_their_signs(given_values: list[float]) -> None:
    found = combine(deviations=_deviations(given_values, 1.0), unit="kg")
    assert found.value == pytest.approx(abs(sum(given_values)), abs=1e-9)


@given(st.floats(min_value=0.1, max_value=100), st.floats(min_value=0, max_value=1))
def test_one_part_alone_keeps_its_tolerance(value: float, share: float) -> None:
    found = combine(deviations=_deviations([value], share), unit="kg")
    assert found.value == pytest.approx(value)
    assert found.margin == pytest.approx(value * 1.6449 / 1.9600, rel=1e-4)


@given(st.lists(st.floats(min_value=0, max_value=100), min_size=1, max_size=10))
def test_a_common_share_never_makes_a_sum_more_certain(given_values: list[float]) -> None:
    apart = combine(deviations=_deviations(given_values, 0.0), unit="kg")
    together = combine(deviations=_deviations(given_values, 0.5), unit="kg")
    assert together.value >= apart.value - 1e-9
    assert together.value <= sum(given_values) + 1e-9


def test_two_pools_are_independent_of_each_other() -> None:
    deviations = [*_deviations([3.0], 1.0, "a"), *_deviations([4.0], 1.0, "b")]
    assert combine(deviations=deviations, unit="kg").value == pytest.approx(5.0)


def test_a_share_without_a_pool_is_independent() -> None:
    found = combine(deviations=_deviations([3.0, 4.0], 1.0, ""), unit="kg")
    assert found.value == pytest.approx(5.0)


def test_units_are_not_mixed() -> None:
    with pytest.raises(OutOfRange, match="every deviation in mm"):
        combine(deviations=_deviations([1.0], 0.0), unit="mm")
