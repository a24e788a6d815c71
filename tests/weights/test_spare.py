"""The vehicle's own spare wheel where it is taken off, worked out by hand."""

import pytest

from coachwright.assess import Stages, assess
from coachwright.weights.model import LoadCase, Weights
from coachwright.weights.stage import stage
from tests.support.builds import Data, build, fitting, part

PLACE = {
    "name": "spare wheel",
    "use": "spare wheel",
    "from": ["4170 mm", "-580 mm", "-330 mm"],
    "to": ["4930 mm", "180 mm", "-90 mm"],
}
WITH_PLACE: Data = {"own_vehicle.underbody": [PLACE]}
GONE: Data = {"vehicle_spare_removed": True}
HEAVY_KG = 28.0
"""One wheel with its tyre, of the vehicle in tests/support."""


def _weighed(changes: Data) -> Weights:
    return stage(build(changes))


def _delivered(changes: Data) -> LoadCase:
    return _weighed(changes).case("as-delivered")


def test_the_spare_that_is_taken_off_leaves_its_place() -> None:
    """Moments about the front axle: 28 kg at 4,550 mm, wheelbase 4,000 mm."""
    before, after = _delivered(WITH_PLACE), _delivered(WITH_PLACE | GONE)
    assert before.total.nominal_kg - after.total.nominal_kg == pytest.approx(HEAVY_KG)
    assert before.rear.nominal_kg - after.rear.nominal_kg == pytest.approx(28 * 4550 / 4000)
    assert before.front.nominal_kg - after.front.nominal_kg == pytest.approx(28 - 31.85)


def test_what_is_left_balances_in_height_and_width() -> None:
    """The spare lay at (560 - 210) mm above the ground and 200 mm left of the middle."""
    before, after = _delivered(WITH_PLACE), _delivered(WITH_PLACE | GONE)
    total_kg, left_kg = before.total.nominal_kg, after.total.nominal_kg
    height = before.cg_height.nominal_mm * total_kg - 350 * HEAVY_KG
    right = before.cg_y.nominal_mm * total_kg + 200 * HEAVY_KG
    assert after.cg_height.nominal_mm == pytest.approx(height / left_kg)
    assert after.cg_y.nominal_mm == pytest.approx(right / left_kg)


def test_without_a_known_place_it_hung_at_the_rear_axle_and_a_note_says_so() -> None:
    before, after = _weighed({}), _weighed(GONE)
    rear = [weights.case("as-delivered").rear.nominal_kg for weights in (before, after)]
    front = [weights.case("as-delivered").front.nominal_kg for weights in (before, after)]
    assert rear[0] - rear[1] == pytest.approx(HEAVY_KG)
    assert front[0] == pytest.approx(front[1])
    assert any("rear axle" in note for note in after.notes)
    assert not [note for note in before.notes if "spare" in note]
    assert not [note for note in _weighed(WITH_PLACE | GONE).notes if "spare" in note]


def test_a_second_spare_is_told_only_while_the_first_is_there() -> None:
    second: Data = {
        "own_parts": [part("spare", spare={"size": "225/75R16C"})],
        "fittings": [fitting("spare", "spare")],
    }
    assert [note for note in _weighed(second).notes if "still counts" in note]
    assert not [note for note in _weighed(second | GONE).notes if "still counts" in note]


def test_an_assessment_that_was_kept_is_not_used_for_the_other_vehicle() -> None:
    stages = Stages()
    before, after = (assess(build(changes), stages) for changes in ({}, GONE))
    assert before.weights.case("travelling").total.nominal_kg - after.weights.case(
        "travelling"
    ).total.nominal_kg == pytest.approx(HEAVY_KG)
    assert before.road.spare.source == "vehicle"
    assert after.road.spare.diameter_mm is None
