"""Free heights and lengths, by hand."""

import math

import pytest

from coachwright.errors import UnknownName
from coachwright.layout.assumptions import assumed_mm, entry_widths_mm
from coachwright.layout.clear_space import (
    clear_above,
    clear_ahead,
    clear_to_shell,
    wall_reaches_mm,
)
from coachwright.layout.passage import Patch
from coachwright.layout.solids import Solid, box, solid
from tests.support.builds import build

SHELL = build().vehicle.shell
"""Half width 900 mm at the floor, 920 mm at 1000 mm, 780 mm from 1800 mm up."""
FOOTPRINT = Patch(name="bed", low_mm=(1000.0, 0.0), high_mm=(2000.0, 600.0))


def thing(x: tuple[float, float], y: tuple[float, float], z: tuple[float, float]) -> Solid:
    return solid("thing", (box((x[0], y[0], z[0]), (x[1], y[1], z[1])),))


def above_mm(*bodies: Solid) -> float:
    return clear_above(footprint=FOOTPRINT, from_mm=800, ceiling_mm=1900, bodies=bodies).free_mm


def test_the_lowest_underside_ends_it() -> None:
    high = thing((900, 1200), (-100, 100), (1600, 1700))
    low = thing((1500, 1700), (500, 700), (1500, 1800))
    assert above_mm() == 1100
    assert above_mm(high, low) == 700


def test_a_neighbour_that_only_touches_does_not() -> None:
    assert above_mm(thing((2000, 2500), (0, 600), (900, 1000))) == 1100
    assert above_mm(thing((1000, 2000), (0, 600), (500, 800))) == 1100


def test_what_reaches_down_past_it_leaves_nothing() -> None:
    assert above_mm(thing((1500, 2500), (0, 600), (0, 1900))) == 0


FACE = box((1000, 0, 300), (1000, 400, 600))


@pytest.mark.parametrize(
    ("x", "sign", "free"),
    [
        ((1650, 1700), 1.0, 650),
        ((400, 500), 1.0, math.inf),
        ((400, 500), -1.0, 500),
        ((900, 1100), 1.0, 0),
        ((1000, 1200), -1.0, math.inf),
    ],
)
def test_the_nearest_thing_ahead_ends_it(x: tuple[float, float], sign: float, free: float) -> None:
    body = thing(x, (100, 200), (0, 1000))
    assert clear_ahead(face=FACE, axis=0, sign_factor=sign, bodies=[body]).free_mm == free


def test_what_stands_beside_the_face_does_not() -> None:
    beside = thing((1500, 1600), (400, 900), (0, 1000))
    below = thing((1500, 1600), (0, 400), (0, 300))
    assert clear_ahead(face=FACE, axis=0, sign_factor=1.0, bodies=[beside, below]).free_mm > 1e9


def to_shell(axis: int, sign: float) -> tuple[float, str]:
    found = clear_to_shell(
        face=FACE, axis=axis, sign_factor=sign, shell=SHELL, walls_mm=20, doors_mm=10
    )
    return found.free_mm, found.ended_by


def test_the_shell_ends_it_on_all_sides() -> None:
    assert to_shell(1, 1.0) == (906 - 20 - 400, "right wall")
    assert to_shell(1, -1.0) == (906 - 20, "left wall")
    assert to_shell(0, 1.0) == (4740 - 1000, "rear doors")
    assert to_shell(0, -1.0) == (0, "cab line")


def reaches(y_mm: float, from_mm: float = 0.0) -> float:
    return wall_reaches_mm(shell=SHELL, walls_mm=20, y_mm=y_mm, from_mm=from_mm)


def test_a_wall_leans_in_to_a_place() -> None:
    assert reaches(830) == 1000 + 800 * 70 / 140
    assert reaches(-830) == reaches(830)
    assert reaches(890) == 0
    assert reaches(830, 1500) == 1500
    assert reaches(700) == math.inf


def test_what_is_assumed_is_in_the_table() -> None:
    assert assumed_mm("shoes") == 30
    assert entry_widths_mm() == (600, 450, 330)
    with pytest.raises(UnknownName, match="hats"):
        assumed_mm("hats")
