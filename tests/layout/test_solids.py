"""Solids of boxes: shared volume against shapely's sections, shifts by trying them."""

import math
from typing import Any

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from coachwright.layout.solids import (
    SLABS,
    Box,
    Solid,
    box,
    common_box,
    moved,
    overlap,
    parted,
    solid,
    solid_of,
    volume_l,
)
from tests.layout.shapes import boxes, section, slices, solids
from tests.support.builds import Data, build
from tests.support.vans import holding, thing

STEPS: Data = {
    "shape": "steps",
    "steps": [
        {"from": ["0 mm", "0 mm", "0 mm"], "to": ["600 mm", "200 mm", "500 mm"]},
        {"from": ["0 mm", "0 mm", "300 mm"], "to": ["600 mm", "400 mm", "500 mm"]},
    ],
}
"""An L on its head, its two boxes overlapping."""


def _solid(body: Data, *, at: tuple[float, float, float] = (0, 0, 0), **fields: Any) -> Solid:
    made = build(holding(thing("piece", (600, 400, 500), at, body=body, **fields)))
    return solid_of(made.fittings[0])


def _volume_l(body: Solid) -> float:
    return sum(volume_l(part) for part in body.boxes)


def test_a_box_stands_from_its_smallest_corner() -> None:
    assert _solid({}, at=(1000, -200, 30)).boxes == (
        Box(low_mm=(1000, -200, 30), high_mm=(1600, 200, 530)),
    )


def test_overlapping_steps_count_their_space_once() -> None:
    assert _volume_l(_solid(STEPS)) == pytest.approx(0.6 * 0.2 * 0.5 * 1e3 + 0.6 * 0.2 * 0.2 * 1e3)


def test_steps_without_boxes_are_the_whole_box() -> None:
    assert _solid({"shape": "steps"}).boxes == _solid({}).boxes


def test_a_turned_step_stands_where_it_is_turned_to() -> None:
    # a quarter turn anticlockwise seen from above takes the overhang at large y to small x
    turned = _solid(STEPS, turn="90 deg")
    assert turned.bounds == Box(low_mm=(0, 0, 0), high_mm=(400, 600, 500))
    assert min(part.low_mm[0] for part in turned.boxes if part.low_mm[2] == 0) == 200


def test_a_mirrored_step_has_its_overhang_on_the_other_side() -> None:
    mirrored = _solid(STEPS, mirror=True)
    assert min(part.low_mm[1] for part in mirrored.boxes if part.low_mm[2] == 0) == 200


@pytest.mark.parametrize("axis", [0, 1, 2])
def test_a_cylinder_is_right_within_what_is_said(axis: int) -> None:
    size = [400.0, 400.0, 400.0]
    size[axis] = 700.0
    body = _solid({"shape": f"cylinder {'xyz'[axis]}", "size": [f"{side} mm" for side in size]})
    assert _volume_l(body) == pytest.approx(math.pi / 4 * 0.4**2 * 0.7 * 1e3, rel=0.004)
    assert len(body.boxes) == SLABS
    first, second = (each for each in range(3) if each != axis)
    outline = shapely.union_all(
        [
            shapely.box(p.low_mm[first], p.low_mm[second], p.high_mm[first], p.high_mm[second])
            for p in body.boxes
        ]
    )
    circle = shapely.Point(200, 200).buffer(200, quad_segs=256)
    assert (
        shapely.hausdorff_distance(outline.boundary, circle.boundary, densify=0.01) <= 0.021 * 400
    )


def test_a_clash_names_the_smallest_shift() -> None:
    one = solid("one", (box((0, 0, 0), (100, 100, 100)),))
    other = solid("other", (box((-50, 70, -300), (300, 500, 300)),))
    found = overlap(one, other, slack_mm=0.5)
    assert found is not None
    assert (found.shift_mm, found.axis, found.sign_factor) == (30, 1, -1.0)
    assert found.volume_l == pytest.approx(0.1 * 0.03 * 0.1 * 1e3)
    assert found.where == Box(low_mm=(0, 70, 0), high_mm=(100, 100, 100))


def test_a_shift_goes_past_everything_in_its_way() -> None:
    one = solid("one", (box((0, 0, 0), (100, 100, 100)),))
    # along x the first post is left after 60 mm, but then the second stands in the way
    other = solid(
        "other",
        (box((50, 0, 0), (60, 100, 100)), box((120, 0, 0), (200, 100, 100))),
    )
    wall = solid("wall", (box((-10, -900, -900), (60, 900, 900)),))
    assert overlap(one, other, slack_mm=0.5) is not None
    found = overlap(one, other, slack_mm=0.5)
    assert found is not None
    assert (found.shift_mm, found.axis, found.sign_factor) == (50, 0, -1.0)
    past = overlap(one, wall, slack_mm=0.5)
    assert past is not None
    assert (past.shift_mm, past.axis, past.sign_factor) == (60, 0, 1.0)


def test_what_only_touches_on_the_way_is_no_hindrance() -> None:
    one = solid("one", (box((0, 0, 0), (100, 100, 100)),))
    other = solid("other", (box((90, 0, 0), (200, 100, 100)), box((-300, 99.9, 0), (0, 200, 100))))
    found = overlap(one, other, slack_mm=0.5)
    assert found is not None
    assert found.shift_mm == 10


@pytest.mark.parametrize("gap", [0.0, -0.5])
def test_touching_and_less_than_the_slack_is_no_clash(gap: float) -> None:
    one = solid("one", (box((0, 0, 0), (100, 100, 100)),))
    other = solid("other", (box((100 + gap, 0, 0), (200, 100, 100)),))
    assert overlap(one, other, slack_mm=0.5) is None


def test_notches_that_fit_into_each_other_are_no_clash() -> None:
    lower = solid("lower", (box((0, 0, 0), (100, 100, 50)), box((0, 0, 50), (50, 100, 100))))
    upper = solid("upper", (box((50, 0, 50), (100, 100, 100)),))
    assert overlap(lower, upper, slack_mm=0.5) is None


def test_a_sheet_thinner_than_the_slack_takes_no_space() -> None:
    sheet = box((0, 0, 10), (100, 100, 10.2))
    assert common_box(sheet, box((0, 0, 0), (100, 100, 100)), slack_mm=0.5) is None


@given(st.lists(boxes(), min_size=1, max_size=5))
def test_parted_boxes_fill_the_same_space_once(made: list[Box]) -> None:
    # outside check: shapely's union of the sections, slice by slice
    body = solid("body", parted(made))
    whole = solid("whole", tuple(made))
    expected = sum(section(whole, z).area * thick for z, thick in slices(whole)) / 1e6
    assert _volume_l(body) == pytest.approx(expected)
    for index, one in enumerate(body.boxes):
        assert all(common_box(one, other) is None for other in body.boxes[index + 1 :])


@given(solids("one"), solids("other"))
def test_the_shared_volume_is_that_of_shapely(one: Solid, other: Solid) -> None:
    # outside check: shapely's intersection of the sections, slice by slice
    expected = (
        sum(
            section(one, z).intersection(section(other, z)).area * thick
            for z, thick in slices(one, other)
        )
        / 1e6
    )
    found = overlap(one, other, slack_mm=0.0)
    assert (0.0 if found is None else found.volume_l) == pytest.approx(expected, abs=1e-9)


@given(solids("one"), solids("other"))
def test_a_clash_is_gone_after_its_shift_and_not_before(one: Solid, other: Solid) -> None:
    found = overlap(one, other, slack_mm=0.5)
    if found is None:
        return
    for share, clear in ((1.0, True), (0.9, False)):
        shift = [0.0, 0.0, 0.0]
        shift[found.axis] = share * found.shift_mm * found.sign_factor
        there = moved(one, (shift[0], shift[1], shift[2]))
        assert (overlap(there, other, slack_mm=0.5) is None) is clear


@given(solids("one"), solids("other"))
def test_the_second_of_two_is_freed_by_the_opposite_shift(one: Solid, other: Solid) -> None:
    found, back = overlap(one, other, slack_mm=0.5), overlap(other, one, slack_mm=0.5)
    assert (found is None) is (back is None)
    if found is not None and back is not None:
        assert back.shift_mm == pytest.approx(found.shift_mm)
        assert back.volume_l == pytest.approx(found.volume_l)


@given(solids("one"), solids("other"), st.tuples(*[st.integers(-5000, 5000)] * 3))
def test_moving_both_changes_nothing(
    one: Solid, other: Solid, shift: tuple[int, int, int]
) -> None:
    there = overlap(moved(one, shift), moved(other, shift), slack_mm=0.5)
    here = overlap(one, other, slack_mm=0.5)
    assert (here is None) is (there is None)
    if here is not None and there is not None:
        assert (there.volume_l, there.shift_mm) == pytest.approx((here.volume_l, here.shift_mm))
        assert (there.axis, there.sign_factor) == (here.axis, here.sign_factor)


@given(boxes(), solids("other"), st.tuples(*[st.integers(0, 9)] * 6))
def test_shrinking_never_adds_a_clash(
    large: Box, other: Solid, cut: tuple[int, int, int, int, int, int]
) -> None:
    # each face moves inwards by up to 9 of at least 20 mm
    low, high = large.low_mm, large.high_mm
    small = box(
        (low[0] + cut[0], low[1] + cut[1], low[2] + cut[2]),
        (high[0] - cut[3], high[1] - cut[4], high[2] - cut[5]),
    )
    before = overlap(solid("large", (large,)), other, slack_mm=0.5)
    after = overlap(solid("small", (small,)), other, slack_mm=0.5)
    if before is None:
        assert after is None
    elif after is not None:
        assert after.volume_l <= before.volume_l + 1e-9
        assert after.shift_mm <= before.shift_mm + 1e-9
