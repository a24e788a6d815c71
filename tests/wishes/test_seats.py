"""Which way seats face and which count."""

from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.errors import OutOfRange
from coachwright.model.placement import turned_point_mm
from coachwright.wishes.seats import belted_seats, facing, regulations_named

TURNS = (0.0, 90.0, 180.0, 270.0)


@pytest.mark.parametrize(
    ("faces_deg", "turn_deg", "expected"),
    [
        (0, 0, "forward"),
        (0, 180, "rearward"),
        (180, 0, "rearward"),
        (180, 180, "forward"),
        (90, 90, "forward"),
        (90, 270, "rearward"),
        (0, 90, "side"),
        (10, 0, "forward"),
        (11, 0, "side"),
        (-169, 0, "side"),
        (-170, 0, "rearward"),
    ],
)
def test_a_seat_turns_with_its_fitting(faces_deg: float, turn_deg: float, expected: str) -> None:
    found = facing(faces_deg=faces_deg, turn_deg=turn_deg, mirror=False, tolerance_deg=10)
    assert found == expected


@pytest.mark.parametrize("mirror", [False, True])
@pytest.mark.parametrize("turn_deg", TURNS)
@pytest.mark.parametrize("faces", ["ahead", "right", "back", "left"])
def test_a_seat_faces_where_its_body_is_turned(faces: str, turn_deg: float, mirror: bool) -> None:
    # The same turn as the body's: a point one step ahead of the middle shows the way
    step_mm = {"ahead": (-1, 0), "right": (0, 1), "back": (1, 0), "left": (0, -1)}[faces]
    faces_deg = {"ahead": 0, "right": 90, "back": 180, "left": -90}[faces]
    size = (100.0, 100.0, 100.0)
    middle = turned_point_mm((50.0, 50.0, 0.0), size, turn_deg, mirror=mirror)
    point = (50.0 + step_mm[0], 50.0 + step_mm[1], 0.0)
    ahead = turned_point_mm(point, size, turn_deg, mirror=mirror)
    moved = (round(ahead[0] - middle[0]), round(ahead[1] - middle[1]))
    ways: dict[tuple[int, int], Literal["forward", "rearward", "side"]] = {
        (-1, 0): "forward",
        (1, 0): "rearward",
        (0, 1): "side",
        (0, -1): "side",
    }
    found = facing(faces_deg=faces_deg, turn_deg=turn_deg, mirror=mirror, tolerance_deg=10)
    assert found == ways[moved]


@given(st.integers(0, 9), st.integers(0, 9))
def test_belts_add_up(factory: int, fitted: int) -> None:
    made = belted_seats(factory=factory, fitted=fitted)
    assert made.count == made.working.result == factory + fitted


@pytest.mark.parametrize(
    ("evidence", "count"),
    [("UN R14, R17", 2), ("un r 14", 1), ("R.17 and R.14", 2), ("", 0), ("pull test", 0)],
)
def test_regulations_are_found_however_they_are_written(evidence: str, count: int) -> None:
    assert regulations_named(evidence=evidence, wanted=("R14", "R17")) == count


def test_what_cannot_be_is_refused_by_name() -> None:
    with pytest.raises(OutOfRange, match=r"^tolerance_deg is 91"):
        facing(faces_deg=0, turn_deg=0, mirror=False, tolerance_deg=91)
