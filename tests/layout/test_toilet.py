"""Room for knees and shoulders, by hand from the survey's percentiles."""

import pytest

from coachwright.errors import OutOfRange
from coachwright.layout.model_interior import ToiletSpace
from coachwright.layout.toilet import Knees, toilet_space

BUTTOCK_KNEE_MM = 669.0
"""95th percentile of men, ANSUR II."""


def space(
    knees: Knees | None, left_mm: float | None = 380.0, right_mm: float | None = 380.0
) -> ToiletSpace:
    return toilet_space(
        name="toilet",
        stall="stall",
        stowed=False,
        seat_mm=450.0,
        knees=knees,
        left_mm=left_mm,
        right_mm=right_mm,
        buttock_knee_mm=BUTTOCK_KNEE_MM,
        back_mm=60.0,
        shoulders_mm=567.0,
    )


def test_knees_come_through_the_door_of_a_short_stall() -> None:
    found = space(Knees(room_mm=650, open_room_mm=1200, in_front="galley"))
    assert found.knees_needed_mm == 729
    assert found.reach_mm == 79


def test_knees_stay_inside_a_long_one() -> None:
    assert space(Knees(room_mm=800, open_room_mm=1200, in_front="galley")).reach_mm == 0


def test_without_a_stall_there_is_nothing_to_reach_through() -> None:
    assert space(Knees(room_mm=500, open_room_mm=None, in_front="galley")).reach_mm == 0


def test_shoulders_have_both_sides_and_the_middle_its_nearer_one() -> None:
    found = space(Knees(room_mm=800, open_room_mm=None, in_front=""), 300.0, 500.0)
    assert (found.shoulders_mm, found.side_mm) == (800, 300)


def test_without_a_zone_nothing_is_known() -> None:
    found = space(None, None, None)
    assert found.knees_mm is None
    assert found.shoulders_mm is None
    assert "zone for the knees of toilet" in found.missing


def test_half_of_it_is_refused() -> None:
    with pytest.raises(OutOfRange, match="knees and both sides"):
        space(None)
    with pytest.raises(OutOfRange, match="knees and both sides"):
        space(Knees(room_mm=800, open_room_mm=None, in_front=""), 300.0, None)
