"""Disinfection and the air gap."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.water.hygiene import air_gap_mm, bleach_ml, chlorine_mg_per_l


@given(st.floats(5, 500), st.floats(1, 200), st.floats(10, 150))
def test_the_bleach_gives_the_dose(volume: float, dose: float, strength: float) -> None:
    measure = bleach_ml(volume_l=volume, dose_mg_per_l=dose, strength_g_per_l=strength)
    found = chlorine_mg_per_l(volume_l=volume, bleach_ml=measure, strength_g_per_l=strength)
    assert found == pytest.approx(dose)


@pytest.mark.parametrize(
    ("bore_mm", "expected"),
    # US plumbing codes' fixture table, inches: 1/2 -> 1, 3/4 -> 1.5, 1 -> 2
    [(12.7, 25.4), (19.05, 38.1), (25.4, 50.8), (6, 25)],
)
def test_the_gap_is_two_bores_and_no_less_than_an_inch(bore_mm: float, expected: float) -> None:
    assert air_gap_mm(bore_mm=bore_mm, bores_factor=2, least_mm=25) == pytest.approx(expected)


def test_what_cannot_be_is_refused_by_name() -> None:
    with pytest.raises(OutOfRange, match=r"^strength_g_per_l is 0"):
        bleach_ml(volume_l=1, dose_mg_per_l=1, strength_g_per_l=0)
    with pytest.raises(OutOfRange, match=r"^volume_l is 0"):
        chlorine_mg_per_l(volume_l=0, bleach_ml=1, strength_g_per_l=1)
