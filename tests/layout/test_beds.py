"""Who sleeps where, and sitting up in bed, against trying everything."""

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.layout.beds import Lying, Mattress, Person, best_to_sit, sleepers
from coachwright.layout.passage import Patch
from coachwright.layout.solids import Solid, box, solid

BED = Patch(name="bed", low_mm=(0.0, 0.0), high_mm=(1900.0, 1300.0))


def person(name: str, stature_mm: float, shoulders_mm: float = 500.0) -> Person:
    return Person(name=name, stature_mm=stature_mm, shoulders_mm=shoulders_mm)


def mattress(name: str, length_mm: float, width_mm: float, berths: int) -> Mattress:
    return Mattress(name=name, length_mm=length_mm, width_mm=width_mm, berths=berths)


def names(found: tuple[Lying, ...]) -> list[tuple[str, ...]]:
    return [tuple(person.name for person in lying.people) for lying in found]


def test_the_tall_one_gets_the_long_bed() -> None:
    found = sleepers(
        mattresses=[mattress("short", 1700, 700, 1), mattress("long", 1950, 700, 1)],
        people=[person("tall", 1900), person("small", 1600)],
    )
    assert names(found) == [("small",), ("tall",)]


def test_two_broad_people_do_not_share_a_narrow_bed_while_another_is_free() -> None:
    found = sleepers(
        mattresses=[mattress("narrow", 1900, 1000, 2), mattress("single", 1900, 700, 1)],
        people=[person("one", 1700, 567), person("other", 1700, 567)],
    )
    assert names(found) == [("one",), ("other",)] or names(found) == [("other",), ("one",)]


def test_nobody_is_laid_twice_and_those_without_a_berth_are_left_out() -> None:
    found = sleepers(
        mattresses=[mattress("bed", 1900, 1300, 2)],
        people=[person("a", 1700), person("b", 1700), person("c", 1700)],
    )
    assert len(found[0].people) == 2


def test_empty_beds_stay_empty() -> None:
    assert names(sleepers(mattresses=[mattress("bed", 1900, 1300, 2)], people=[])) == [()]
    assert sleepers(mattresses=[], people=[person("a", 1700)]) == ()


def test_a_coach_load_is_refused() -> None:
    with pytest.raises(OutOfRange, match="at most 12"):
        sleepers(mattresses=[], people=[person("x", 1700)] * 13)


def missing_mm(lying: tuple[Lying, ...]) -> float:
    total = 0.0
    for each in lying:
        total += sum(max(0, p.stature_mm - each.mattress.length_mm) for p in each.people)
        total += max(0, sum(p.shoulders_mm for p in each.people) - each.mattress.width_mm)
    return total


beds = st.builds(
    mattress,
    st.just("bed"),
    st.integers(15, 20).map(lambda n: n * 100.0),
    st.integers(6, 14).map(lambda n: n * 100.0),
    st.integers(1, 2),
)
people = st.builds(
    person,
    st.uuids().map(str),
    st.integers(15, 20).map(lambda n: n * 100.0 - 30),
    st.integers(40, 60).map(lambda n: n * 10.0),
)


@settings(max_examples=60)
@given(st.lists(beds, min_size=1, max_size=3), st.lists(people, max_size=4))
def test_no_other_way_of_laying_them_is_better(
    mattresses: list[Mattress], everybody: list[Person]
) -> None:
    found = sleepers(mattresses=mattresses, people=everybody)
    laid = sum(len(lying.people) for lying in found)
    best: dict[int, float] = {}
    for places in product(range(-1, len(mattresses)), repeat=len(everybody)):
        groups = tuple(
            Lying(
                mattress=bed,
                people=tuple(
                    p for p, place in zip(everybody, places, strict=True) if place == index
                ),
            )
            for index, bed in enumerate(mattresses)
        )
        if all(len(lying.people) <= lying.mattress.berths for lying in groups):
            count = sum(len(lying.people) for lying in groups)
            best[count] = min(best.get(count, float("inf")), missing_mm(groups))
    assert laid == max(best)
    assert missing_mm(found) == pytest.approx(best[laid])


def over(name: str, x: tuple[float, float], y: tuple[float, float], z_mm: float) -> Solid:
    return solid(name, (box((x[0], y[0], z_mm), (x[1], y[1], z_mm + 300)),))


def sit_mm(*bodies: Solid, square_mm: float = 600.0, bed: Patch = BED) -> float:
    return best_to_sit(
        mattress=bed, top_mm=900, ceiling_mm=1850, square_mm=square_mm, bodies=bodies
    ).free_mm


def test_lockers_along_both_sides_leave_the_middle() -> None:
    lockers = (over("l", (0, 1900), (0, 340), 1500), over("r", (0, 1900), (960, 1300), 1500))
    assert sit_mm(*lockers) == 950
    assert sit_mm(*lockers, square_mm=650.0) == 600


def test_a_bunk_over_all_of_it_ends_it() -> None:
    found = best_to_sit(
        mattress=BED,
        top_mm=900,
        ceiling_mm=1850,
        square_mm=600,
        bodies=[over("bunk", (0, 1900), (0, 1300), 1500)],
    )
    assert (found.free_mm, found.ended_by) == (600, "bunk")


def test_what_stands_on_all_of_it_leaves_nothing() -> None:
    assert sit_mm(over("chest", (0, 1900), (0, 1300), 850)) == 0


def test_what_is_below_or_above_the_ceiling_does_not_count() -> None:
    assert sit_mm(over("garage", (0, 1900), (0, 1300), 300)) == 950
    assert sit_mm(over("fan", (0, 1900), (0, 1300), 1900)) == 950


def test_a_narrow_bed_takes_the_square_across() -> None:
    bunk = Patch(name="bunk", low_mm=(0.0, 0.0), high_mm=(1800.0, 500.0))
    assert sit_mm(bed=bunk) == 950
    assert sit_mm(over("l", (0, 1800), (0, 100), 1500), bed=bunk) == 600


@st.composite
def overheads(draw: st.DrawFn) -> Solid:
    x, y = draw(st.integers(0, 18)) * 100, draw(st.integers(0, 12)) * 100
    return over(
        "thing",
        (x, x + draw(st.integers(1, 15)) * 100),
        (y, y + draw(st.integers(1, 12)) * 100),
        draw(st.integers(9, 18)) * 100,
    )


@given(st.lists(overheads(), max_size=6))
def test_no_square_of_a_fine_grid_is_higher(bodies: list[Solid]) -> None:
    best = 0.0
    for x in range(0, 1301, 100):
        for y in range(0, 701, 100):
            undersides = [
                b.bounds.low_mm[2]
                for b in bodies
                if b.bounds.low_mm[0] < x + 600
                and b.bounds.high_mm[0] > x
                and b.bounds.low_mm[1] < y + 600
                and b.bounds.high_mm[1] > y
            ]
            best = max(best, min([1850.0, *undersides]) - 900)
    assert sit_mm(*bodies) == best
