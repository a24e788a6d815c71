"""Berths, and who sleeps where."""

from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.wishes.beds import Bunk, berths, sleepers

lengths = st.lists(st.integers(1500, 2100), min_size=1, max_size=4)
statures = st.lists(st.integers(1000, 2050), max_size=4)


def singles(found: list[int]) -> tuple[Bunk, ...]:
    return tuple(
        Bunk(name=f"bed {index}", length_mm=length, berths=1) for index, length in enumerate(found)
    )


def test_berths_are_those_of_all_beds() -> None:
    made = berths(bunks=(Bunk(name="a", length_mm=1900, berths=2), *singles([1800])))
    assert made.count == made.working.result == 3
    assert berths(bunks=()).count == 0


@given(lengths, statures)
def test_no_other_order_lays_people_better(found: list[int], people: list[int]) -> None:
    people = people[: len(found)]
    bunks = singles(found)
    made = sleepers(bunks=bunks, statures_mm=people)
    shortest = min(
        (
            bunk.length_mm - sleeping.longest_stature_mm
            for bunk, sleeping in zip(bunks, made, strict=True)
            if sleeping.longest_stature_mm is not None
        ),
        default=None,
    )
    if shortest is None:
        return
    best = max(
        min(length - person for length, person in zip(order, people, strict=True))
        for order in permutations(found, len(people))
    )
    assert shortest == best


def test_the_tallest_two_share_the_longest_bed() -> None:
    long = Bunk(name="long", length_mm=2000, berths=2)
    short = Bunk(name="short", length_mm=1700, berths=1)
    spare = Bunk(name="spare", length_mm=1600, berths=1)
    made = sleepers(bunks=(short, spare, long), statures_mm=(1600, 1900, 1850))
    assert [(s.name, s.longest_stature_mm) for s in made] == [
        ("short", 1600),
        ("spare", None),
        ("long", 1900),
    ]


def test_a_bed_has_a_berth() -> None:
    with pytest.raises(OutOfRange, match=r"^berths is 0; allowed: at least 1"):
        sleepers(bunks=(Bunk(name="a", length_mm=1900, berths=0),), statures_mm=(1700,))
