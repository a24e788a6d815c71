"""Packings against optimal values that others published.

The cutting instances are those of Beasley (1985) in the form of an open collection of cutting and
packing data; their optimal values are those that a public library of packing problems lists for
that paper (PackLib2, "NGCUT1" to "NGCUT12").  The squared rectangles are those of Moroń (1925).
The smallest rectangles for the squares 1 to n are from Korf (2004), as listed in sequence A081287
of the encyclopedia of integer sequences.
"""

import pytest

from coachwright.arrange.packing import Field, Kind, Packed, pack
from coachwright.arrange.solving import Search

# stock, pieces (length, width, most, value), optimal value
Piece = tuple[int, int, int, int]
CUTTING: dict[str, tuple[tuple[int, int], tuple[Piece, ...], int]] = {
    "ngcut1": (
        (10, 10),
        ((3, 7, 2, 35), (8, 2, 2, 40), (10, 2, 1, 27), (5, 4, 3, 23), (2, 9, 2, 43)),
        164,
    ),
    "ngcut2": (
        (10, 10),
        (
            (1, 10, 3, 28),
            (5, 3, 2, 40),
            (9, 3, 3, 63),
            (6, 1, 3, 13),
            (3, 8, 3, 31),
            (4, 1, 1, 10),
            (7, 3, 2, 44),
        ),
        230,
    ),
    "ngcut3": (
        (10, 10),
        (
            (3, 2, 2, 7),
            (7, 2, 3, 20),
            (4, 5, 2, 60),
            (4, 1, 2, 9),
            (1, 10, 1, 14),
            (8, 4, 1, 79),
            (4, 2, 2, 11),
            (3, 7, 3, 52),
            (6, 2, 3, 13),
            (9, 1, 2, 21),
        ),
        247,
    ),
    "ngcut4": (
        (15, 10),
        ((15, 2, 2, 34), (7, 3, 1, 27), (9, 1, 1, 14), (8, 3, 1, 71), (12, 2, 2, 61)),
        268,
    ),
    "ngcut5": (
        (15, 10),
        (
            (10, 3, 2, 34),
            (9, 3, 1, 48),
            (12, 2, 3, 72),
            (11, 3, 1, 91),
            (12, 3, 3, 37),
            (11, 1, 3, 15),
            (2, 10, 1, 36),
        ),
        358,
    ),
    "ngcut6": (
        (15, 10),
        (
            (2, 9, 1, 50),
            (10, 2, 3, 29),
            (2, 4, 1, 11),
            (2, 8, 2, 30),
            (3, 8, 1, 46),
            (4, 1, 1, 7),
            (6, 4, 3, 32),
            (10, 3, 1, 74),
            (11, 2, 1, 48),
            (4, 5, 1, 32),
        ),
        289,
    ),
    "ngcut7": (
        (20, 20),
        ((1, 9, 3, 26), (16, 3, 1, 113), (18, 3, 1, 127), (20, 2, 1, 104), (3, 1, 2, 4)),
        430,
    ),
    "ngcut10": (
        (30, 30),
        ((1, 30, 3, 75), (25, 7, 1, 279), (27, 9, 3, 409), (30, 2, 3, 65), (26, 7, 3, 235)),
        1452,
    ),
}
SQUARED = {
    "order 9": ((33, 32), (1, 4, 7, 8, 9, 10, 14, 15, 18)),
    "order 10": ((65, 47), (3, 5, 6, 11, 17, 19, 22, 23, 24, 25)),
}
SMALLEST = {6: (9, 11), 7: (11, 14), 8: (14, 15)}
"""n → sides of the smallest rectangle that holds the squares 1 to n."""


def _squares(sides: tuple[int, ...], into: tuple[int, int]) -> Packed:
    return pack(
        field=Field(length_mm=into[0], width_mm=into[1]),
        kinds=[Kind(name=f"s{n}", length_mm=n, width_mm=n, most=1) for n in sides],
        value_of=lambda spot: spot.kind.length_mm**2,
        search=Search(limit_s=60),
    )


@pytest.mark.slow
@pytest.mark.parametrize("name", CUTTING)
def test_a_cutting_pattern_is_as_good_as_the_published_optimum(name: str) -> None:
    stock, pieces, optimum = CUTTING[name]
    values = {f"piece-{n}": value for n, (_, _, _, value) in enumerate(pieces)}
    packed = pack(
        field=Field(length_mm=stock[0], width_mm=stock[1]),
        kinds=[
            Kind(name=f"piece-{n}", length_mm=length, width_mm=width, most=most, turns=False)
            for n, (length, width, most, _) in enumerate(pieces)
        ],
        value_of=lambda spot: values[spot.kind.name],
        search=Search(limit_s=60),
    )
    assert packed.proof.proven
    assert packed.proof.value == optimum
    assert sum(values[spot.kind.name] for spot in packed.spots) == optimum


@pytest.mark.slow
@pytest.mark.parametrize("name", SQUARED)
def test_a_squared_rectangle_is_filled_without_a_gap(name: str) -> None:
    into, sides = SQUARED[name]
    packed = _squares(sides, into)
    assert packed.proof.proven
    assert packed.proof.value == into[0] * into[1]


@pytest.mark.slow
@pytest.mark.parametrize("most", SMALLEST)
def test_the_smallest_rectangle_holds_all_squares_and_no_smaller_one_does(most: int) -> None:
    sides = tuple(range(1, most + 1))
    area = sum(n * n for n in sides)
    into = SMALLEST[most]
    assert _squares(sides, into).proof.value == area
    smaller = [
        (short, long)
        for short in range(most, into[0] + into[1])
        for long in range(short, area)
        if long >= most + most - 1 and area <= short * long < into[0] * into[1]
    ]
    assert all(_squares(sides, each).proof.value < area for each in smaller)
