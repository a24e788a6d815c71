"""Days on the tanks, and the water's mass."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.water.tanks import (
    grey_needed_l,
    tank_days,
    usable_l,
    waste_l_per_day,
    water_mass,
)

volumes = st.floats(0, 500)
uses = st.floats(0.5, 60)
people = st.integers(1, 9)


@given(volumes, people, people, uses)
def test_more_people_never_gives_more_days(
    volume: float, some: int, more: int, use: float
) -> None:
    few = tank_days(usable_l=volume, travellers=some, use_l_per_day=use)
    many = tank_days(usable_l=volume, travellers=some + more, use_l_per_day=use)
    assert many.days_d <= few.days_d


@given(volumes, people, uses)
def test_what_is_used_in_those_days_is_the_tank(volume: float, count: int, use: float) -> None:
    days = tank_days(usable_l=volume, travellers=count, use_l_per_day=use)
    assert days.days_d * count * use == pytest.approx(volume)
    assert days.working.result == days.days_d


def test_the_dregs_are_not_counted() -> None:
    assert usable_l(volume_l=90, unusable_l=5) == 85
    assert usable_l(volume_l=5, unusable_l=9) == 0


def test_grey_takes_fresh_and_heater() -> None:
    assert grey_needed_l(fresh_l=100, heater_l=10) == 110


def test_a_litre_weighs_a_little_less_than_a_kilogram() -> None:
    # Density of water at 20 degC, 998.2 kg/m3
    made = water_mass(volume_l=100, shell_kg=7)
    assert made.water_kg == pytest.approx(99.82)
    assert made.total_kg == made.working.result == pytest.approx(106.82)


def test_flush_water_counts_as_waste() -> None:
    # Common practice, no source: 1.7 L and five flushes
    found = waste_l_per_day(waste_alone_l_per_day=1.7, flush_l=0.3, flushes=5)
    assert found == pytest.approx(3.2)


@pytest.mark.parametrize(
    ("name", "usable", "travellers", "use"),
    [("travellers", 1, 0, 1), ("use_l_per_day", 1, 1, 0), ("usable_l", -1, 1, 1)],
)
def test_what_cannot_be_is_refused_by_name(
    name: str, usable: float, travellers: int, use: float
) -> None:
    with pytest.raises(OutOfRange, match=f"^{name} is .*; allowed: "):
        tank_days(usable_l=usable, travellers=travellers, use_l_per_day=use)
