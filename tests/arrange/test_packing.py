"""Packing, held against every way of packing a few rectangles."""

from collections.abc import Iterator, Sequence
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.arrange.packing import Block, Field, Kind, Packed, Spot, pack
from coachwright.arrange.patterns import Axis, places_mm, sums_mm
from coachwright.arrange.solving import Search
from coachwright.errors import OutOfRange

SEARCH = Search(limit_s=20)


def _area(spot: Spot) -> int:
    return spot.kind.length_mm * spot.kind.width_mm


def _packed(field: Field, kinds: Sequence[Kind]) -> Packed:
    return pack(field=field, kinds=kinds, value_of=_area, search=SEARCH)


Rectangle = tuple[int, int, int, int]


def _everywhere(field: Field, kind: Kind) -> Iterator[Rectangle]:
    sizes = {(kind.length_mm, kind.width_mm)}
    if kind.turns:
        sizes.add((kind.width_mm, kind.length_mm))
    for length, width in sizes:
        for x, y in product(
            range(field.length_mm - length + 1), range(field.width_mm - width + 1)
        ):
            if not any(
                x < block.high_mm[0]
                and x + length > block.low_mm[0]
                and y < block.high_mm[1]
                and y + width > block.low_mm[1]
                for block in field.blocks
            ):
                yield x, y, x + length, y + width


def _apart(one: Rectangle, other: Rectangle, gap: int) -> bool:
    return (
        one[2] + gap <= other[0]
        or other[2] + gap <= one[0]
        or one[3] + gap <= other[1]
        or other[3] + gap <= one[1]
    )


def _best_by_trying_all(field: Field, kinds: Sequence[Kind]) -> int:
    """Return the largest area of all packings at whole millimetres, each kind once."""
    places = [(kind, tuple(_everywhere(field, kind))) for kind in kinds]

    def best(index: int, taken: tuple[Rectangle, ...]) -> int:
        if index == len(places):
            return 0
        kind, spots = places[index]
        most = best(index + 1, taken)
        for spot in spots:
            if all(_apart(spot, other, field.gap_mm) for other in taken):
                most = max(most, kind.length_mm * kind.width_mm + best(index + 1, (*taken, spot)))
        return most

    return best(0, ())


@settings(max_examples=60, deadline=None)
@given(
    size=st.tuples(st.integers(3, 7), st.integers(3, 6)),
    pieces=st.lists(st.tuples(st.integers(1, 5), st.integers(1, 4)), min_size=1, max_size=3),
    block=st.tuples(st.integers(0, 5), st.integers(0, 4), st.integers(1, 3), st.integers(1, 3)),
    gap=st.integers(0, 2),
    turns=st.booleans(),
)
def test_nothing_is_better_than_the_best_of_all_packings(
    size: tuple[int, int],
    pieces: list[tuple[int, int]],
    block: Rectangle,
    gap: int,
    turns: bool,
) -> None:
    field = Field(
        length_mm=size[0],
        width_mm=size[1],
        gap_mm=gap,
        blocks=(
            Block(
                name="fan",
                low_mm=(block[0], block[1]),
                high_mm=(block[0] + block[2], block[1] + block[3]),
            ),
        ),
    )
    kinds = [
        Kind(name=f"p{n}", length_mm=length, width_mm=width, most=1, turns=turns)
        for n, (length, width) in enumerate(pieces)
    ]
    packed = _packed(field, kinds)
    assert packed.proof.proven
    assert packed.proof.value == _best_by_trying_all(field, kinds)


@settings(max_examples=40, deadline=None)
@given(
    pieces=st.lists(st.tuples(st.integers(2, 9), st.integers(2, 9)), min_size=1, max_size=4),
    gap=st.integers(0, 3),
)
def test_what_is_packed_keeps_apart_and_inside(pieces: list[tuple[int, int]], gap: int) -> None:
    field = Field(length_mm=20, width_mm=12, gap_mm=gap)
    kinds = [
        Kind(name=f"p{n}", length_mm=length, width_mm=width, most=2)
        for n, (length, width) in enumerate(pieces)
    ]
    spots = [(*spot.low_mm, *spot.high_mm) for spot in _packed(field, kinds).spots]
    for number, spot in enumerate(spots):
        assert min(spot) >= 0
        assert spot[2] <= 20
        assert spot[3] <= 12
        assert all(_apart(spot, other, gap) for other in spots[:number])


def test_no_more_of_a_kind_than_there_are() -> None:
    packed = _packed(
        Field(length_mm=100, width_mm=10), [Kind(name="p", length_mm=10, width_mm=10, most=3)]
    )
    assert len(packed.spots) == 3


def test_no_more_kinds_than_wanted() -> None:
    kinds = [
        Kind(name="long", length_mm=60, width_mm=10, most=1),
        Kind(name="short", length_mm=40, width_mm=10, most=1),
    ]
    mixed = _packed(Field(length_mm=100, width_mm=10), kinds)
    plain = _packed(Field(length_mm=100, width_mm=10, most_kinds=1), kinds)
    assert mixed.proof.value == 1000
    assert [spot.kind.name for spot in plain.spots] == ["long"]


def test_no_heavier_than_allowed() -> None:
    kinds = [Kind(name="p", length_mm=10, width_mm=10, most=5, mass_g=6000)]
    packed = _packed(Field(length_mm=100, width_mm=10, most_g=20_000), kinds)
    assert len(packed.spots) == 3


def test_nothing_stands_half_on_a_platform() -> None:
    deck = Block(name="deck", low_mm=(30, 0), high_mm=(70, 10), platform=True)
    kinds = [Kind(name="p", length_mm=20, width_mm=10, most=9, turns=False)]
    packed = _packed(Field(length_mm=100, width_mm=10, blocks=(deck,)), kinds)
    assert [spot.low_mm[0] for spot in packed.spots if 30 <= spot.low_mm[0] < 70] == [30, 50]
    assert len(packed.spots) == 4  # 30 mm on either side take one each


def test_a_stop_holds_up_those_that_may_not_pass_it() -> None:
    kinds = [Kind(name="p", length_mm=10, width_mm=4, most=1, turns=False)]
    packed = pack(
        field=Field(length_mm=10, width_mm=20, stops_mm=(9, 14)),
        kinds=kinds,
        value_of=_area,
        search=SEARCH,
        allowed=lambda spot: spot.low_mm[1] >= 9 and spot.high_mm[1] <= 14,
    )
    assert [spot.low_mm for spot in packed.spots] in ([(0, 9)], [(0, 10)])


def test_worth_may_depend_on_the_place() -> None:
    packed = pack(
        field=Field(length_mm=30, width_mm=10),
        kinds=[Kind(name="p", length_mm=10, width_mm=10, most=1)],
        value_of=lambda spot: 1 + spot.low_mm[0],
        search=SEARCH,
    )
    assert packed.spots[0].low_mm == (20, 0)


def test_a_size_of_nothing_is_refused() -> None:
    with pytest.raises(OutOfRange, match=r"thin is \(0, 5, 1\)"):
        _packed(
            Field(length_mm=10, width_mm=10), [Kind(name="thin", length_mm=0, width_mm=5, most=1)]
        )


def test_nothing_to_pack_is_proven_at_once() -> None:
    packed = _packed(
        Field(length_mm=5, width_mm=5), [Kind(name="p", length_mm=9, width_mm=9, most=1)]
    )
    assert packed.spots == ()
    assert packed.proof.proven


def test_sums_take_each_rectangle_once() -> None:
    assert sums_mm(starts_mm=[0], sizes={3: 1, 5: 1}, most_mm=20) == {0, 3, 5, 8}


def test_places_stand_against_edges_from_both_sides() -> None:
    axis = Axis(size_mm=100, edges_low_mm=(40,), edges_high_mm=(60,), sizes={30: 4})
    places = set(places_mm(axis, [30])[30])
    assert places & {0, 10}  # before the obstacle: against the border or against the obstacle
    assert places & {60, 70}  # behind it
