"""Where a fitting stands that is told by what it stands against; by hand."""

import pytest

from coachwright.errors import Fault
from coachwright.model.linking import link
from coachwright.model.placement import Point
from tests.support.builds import Data, build, sheet
from tests.support.vans import holding, thing

GALLEY = thing("galley", (900, 500, 880), (2000, -700, 15))
"""x 2000 to 2900, y -700 to -200, z 15 to 895 mm."""
SIZE = (300.0, 200.0, 100.0)
PLAIN = ("3000 mm", "0 mm", "0 mm")


def at(axis: int, words: str, **more: object) -> float:
    """Return one coordinate of a box of 300 by 200 by 100 mm, as worked out."""
    place = [*PLAIN]
    place[axis] = words
    changes: Data = holding(GALLEY, thing("box", SIZE, place)) | more
    return build(changes).fittings[1].at_mm[axis]


def faults(axis: int, words: str) -> tuple[Fault, ...]:
    place = [*PLAIN]
    place[axis] = words
    written = sheet(holding(GALLEY, thing("box", SIZE, place)))
    assert written.own_vehicle is not None
    return link(written, file="a.toml", vehicle=written.own_vehicle, parts={})[1]


@pytest.mark.parametrize(
    ("axis", "words", "expected"),
    [
        (0, "behind galley", 2900),
        (0, "behind galley 20 mm", 2920),
        (0, "ahead of galley 20 mm", 2000 - 20 - 300),
        (0, "flush front galley", 2000),
        (0, "flush front galley 30 mm", 2030),
        (0, "flush rear galley 30 mm", 2900 - 30 - 300),
        (0, "centred on galley", 2450 - 150),
        (0, "centred on galley -10 mm", 2440 - 150),
        (1, "right of galley 10 mm", -190),
        (1, "left of galley 10 mm", -700 - 10 - 200),
        (1, "flush left galley", -700),
        (1, "flush right galley", -400),
        (2, "above galley", 895),
        (2, "under galley", 15 - 100),
        (2, "flush top galley", 795),
        (2, "flush bottom galley 5 mm", 20),
        (0, "against cab line 40 mm", 1190),
        (0, "against rear doors 50 mm", 4750 - 50 - 300),
        (0, "against outside rear", 5040),
        (0, "against outside front 10 mm", -950 - 10 - 300),
        (1, "against centreline", -100),
        (1, "centred on centreline 25 mm", -75),
        (1, "against outside left", -1025 - 200),
        (1, "against outside right 5 mm", 1030),
        (1, "against left wall", -900),
        (1, "against right wall 10 mm", 900 - 10 - 200),
        (2, "against floor", 0),
        (2, "against ceiling 10 mm", 1900 - 10 - 100),
        (2, "against roof", 2090),
        (2, "against ground 100 mm", -460),
    ],
)
def test_a_phrase_is_worked_out(axis: int, words: str, expected: float) -> None:
    assert at(axis, words) == pytest.approx(expected)


def test_a_wall_is_met_where_it_is_narrowest_over_the_fitting_s_height() -> None:
    # z 1400 to 1500 mm: 920 - 140 · 500 / 800 = 832.5 mm at the top
    box = thing("box", SIZE, ["3000 mm", "against left wall", "1400 mm"])
    assert build(holding(box)).fittings[0].at_mm[1] == pytest.approx(-832.5)


def test_finishes_take_their_part() -> None:
    sheets = {"size": ["2500 mm", "1220 mm", "12 mm"], "mass": "20 kg"}
    ply = {"id": "ply", "name": "ply", "body": sheets}
    ply |= {"lining": {"density": "0.6 kg/L", "thickness": "12 mm"}}
    foam = {"id": "foam", "name": "foam", "body": sheets}
    foam |= {
        "insulation": {
            "conductivity": "0.03 W/m/K",
            "density": "0.03 kg/L",
            "thickness": "55 mm",
        }
    }
    finishes = [
        {"part": part, "surface": surface, "area": "5 m2"}
        for part in ("ply", "foam")
        for surface in ("walls", "floor", "ceiling", "doors")
    ]
    words = ["against rear doors", "against left wall", "against floor"]
    box = thing("box", SIZE, words)
    changes = holding(box)
    changes |= {"own_parts": [*changes["own_parts"], ply, foam], "finishes": finishes}
    # ribs of 40 mm: 55 - 40 + 12 = 27 mm stand inwards; on the floor 55 + 12 = 67 mm
    x, y, z = build(changes).fittings[0].at_mm
    assert (x, z) == (4750 - 27 - 300, 67)
    assert y == pytest.approx(-(900 + 20 * 67 / 1000 - 27))


def test_a_fitting_that_moved_takes_the_others_along() -> None:
    chain = [
        thing("one", SIZE, ["2000 mm", "0 mm", "0 mm"]),
        thing("three", SIZE, ["behind two 5 mm", "0 mm", "0 mm"]),
        thing("two", SIZE, ["behind one 10 mm", "0 mm", "0 mm"]),
    ]

    def places(start: str) -> list[Point]:
        made = build(holding(*chain) | {"fittings.0.at": [start, "0 mm", "0 mm"]})
        return [fitted.at_mm for fitted in made.fittings]

    assert places("2000 mm") == [(2000, 0, 0), (2615, 0, 0), (2310, 0, 0)]
    assert places("1900 mm") == [(1900, 0, 0), (2515, 0, 0), (2210, 0, 0)]


def test_against_a_turned_fitting_its_turned_size_counts() -> None:
    turned = thing("galley", (900, 500, 880), (2000, -700, 0), turn="90 deg")
    box = thing("box", SIZE, ["behind galley", "right of galley", "0 mm"])
    assert build(holding(turned, box)).fittings[1].at_mm == (2500, 200, 0)


@pytest.mark.parametrize(
    ("axis", "words", "allowed", "action"),
    [
        (0, "above galley", "on the x axis one of: behind", "x runs rearwards"),
        (0, "behind gally", "the name of another fitting", "did you mean 'galley'?"),
        (1, "against left wal", "left wall, right wall", "did you mean 'left wall'?"),
        (1, "against galley", "left wall, right wall", "against a fitting, say right of or"),
        (
            1,
            "centred on left wall",
            "the name of another fitting or centreline",
            "say against left wall",
        ),
        (0, "behind cab line", "the name of another fitting", "say against cab line"),
        (0, "against roof", "cab line, rear doors", "name one that exists"),
        (2, "above box", "the name of another fitting", "exists"),
    ],
)
def test_a_phrase_that_means_nothing_is_a_fault(
    axis: int, words: str, allowed: str, action: str
) -> None:
    (fault,) = faults(axis, words)
    assert fault.found == f'"{words}"'
    assert allowed in fault.allowed
    assert action in fault.action


def test_a_ring_is_a_fault_of_each_that_is_in_it() -> None:
    one = thing("one", SIZE, ["behind two", "0 mm", "0 mm"])
    two = thing("two", SIZE, ["behind one", "0 mm", "0 mm"])
    three = thing("three", SIZE, ["behind two", "0 mm", "0 mm"])
    written = sheet(holding(one, two, three))
    assert written.own_vehicle is not None
    _, found = link(written, file="a.toml", vehicle=written.own_vehicle, parts={})
    assert [fault.found for fault in found] == [
        "a ring: one → two → one",
        "a ring: two → one → two",
    ]
