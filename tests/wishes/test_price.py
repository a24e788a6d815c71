"""What the parts cost together."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.wishes.price import Item, sheets, total


def test_a_missing_price_makes_the_sum_unknown() -> None:
    made = total(
        items=(
            Item(name="pump", count=2, price_minor=8450),
            Item(name="sink", count=1, price_minor=None),
        )
    )
    assert made.total_minor is None
    assert made.known_minor == 16_900
    assert made.without_price == ("sink",)


@given(st.lists(st.tuples(st.integers(0, 9), st.integers(0, 10**7)), max_size=9))
def test_the_sum_is_exact(found: list[tuple[int, int]]) -> None:
    items = [Item(name="part", count=n, price_minor=p) for n, p in found]
    assert total(items=items).total_minor == sum(n * p for n, p in found)


@pytest.mark.parametrize(
    ("area_m2", "expected"), [(0.5, 1), (1.0, 1), (2.0, 2), (2.01, 3), (0.1 + 0.2 + 0.7, 1)]
)
def test_sheets_are_whole(area_m2: float, expected: int) -> None:
    assert sheets(area_m2=area_m2, length_mm=1000, width_mm=1000) == expected


@given(st.floats(0.1, 100))
def test_the_sheets_cover_the_area_and_one_less_does_not(area: float) -> None:
    count = sheets(area_m2=area, length_mm=2500, width_mm=1220)
    assert count * 3.05 >= area - 1e-6
    assert (count - 1) * 3.05 < area


def test_a_sheet_has_an_area() -> None:
    with pytest.raises(OutOfRange, match=r"^sheet is 0 x 1000 mm"):
        sheets(area_m2=1, length_mm=0, width_mm=1000)
