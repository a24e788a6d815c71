import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.road.carried import (
    CarriedItem,
    carried_sum,
    hinge_moment,
    pulse_force,
    standing_on,
)

masses = st.floats(min_value=0, max_value=200)
lengths = st.floats(min_value=-3000, max_value=6000)
items = st.lists(
    st.builds(CarriedItem, name=st.just("box"), mass_kg=masses, x_mm=lengths, y_mm=lengths),
    max_size=6,
)


def test_what_stands_on_what_is_followed_to_the_end() -> None:
    carried_by = {"rack": "", "box": "rack", "rope": "box", "lamp": "", "panel": "rack"}
    assert standing_on(carrier="rack", carried_by=carried_by) == ("box", "rope", "panel")
    assert standing_on(carrier="lamp", carried_by=carried_by) == ()


def test_a_ring_of_carriers_ends() -> None:
    assert standing_on(carrier="a", carried_by={"a": "b", "b": "a"}) == ("b",)


def test_nothing_weighs_nothing() -> None:
    total = carried_sum(items=())
    assert (total.mass_kg, total.x_mm, total.y_mm) == (0, 0, 0)
    assert total.working.expression == "m = 0"


def test_a_door_moment_by_hand() -> None:
    # 40 kg, 300 mm behind the hinge line and 400 mm beside it: a = 500 mm;
    # 40 x 9.80665 x 0.5 = 196.133 N m
    found = hinge_moment(mass_kg=40, x_mm=5050, y_mm=-380, hinge_x_mm=4750, hinge_y_mm=-780)
    assert found.arm_mm == pytest.approx(500)
    assert found.moment_n_m == pytest.approx(196.133)


def test_a_negative_mass_is_refused() -> None:
    with pytest.raises(OutOfRange, match="mass_kg"):
        hinge_moment(mass_kg=-1, x_mm=0, y_mm=0, hinge_x_mm=0, hinge_y_mm=0)
    with pytest.raises(OutOfRange, match="mass_kg"):
        pulse_force(mass_kg=-1, pulse_factor=8)
    with pytest.raises(OutOfRange, match="pulse_factor"):
        pulse_force(mass_kg=1, pulse_factor=0)


@given(
    there=items,
    more=st.builds(CarriedItem, name=st.just("more"), mass_kg=masses, x_mm=lengths, y_mm=lengths),
)
def test_mass_added_never_lowers_a_load(there: list[CarriedItem], more: CarriedItem) -> None:
    assert carried_sum(items=[*there, more]).mass_kg >= carried_sum(items=there).mass_kg


@given(there=items.filter(lambda found: sum(item.mass_kg for item in found) > 1))
def test_the_common_centre_balances(there: list[CarriedItem]) -> None:
    total = carried_sum(items=there)
    about = math.fsum(item.mass_kg * (item.x_mm - total.x_mm) for item in there)
    assert about == pytest.approx(0, abs=1e-6 * total.mass_kg * 6000)


@given(mass=masses, more=masses, back=st.floats(0, 500))
def test_heavier_or_further_back_never_lowers_the_moment(
    mass: float, more: float, back: float
) -> None:
    def moment(mass_kg: float, x_mm: float) -> float:
        return hinge_moment(
            mass_kg=mass_kg, x_mm=x_mm, y_mm=-400, hinge_x_mm=4750, hinge_y_mm=-780
        ).moment_n_m

    assert moment(mass + more, 4900) >= moment(mass, 4900)
    assert moment(mass, 4900 + back) >= moment(mass, 4900)
