"""Which zones may not overlap; by hand."""

from typing import Any

import pytest

from coachwright.layout.model import Layout
from coachwright.layout.stage import stage
from tests.support.builds import build
from tests.support.vans import Thing, access, holding, thing, zone

FRONT = ((0.0, 500.0, 0.0), (600.0, 900.0, 800.0))


def left(purpose: str = "drawer", **more: Any) -> Thing:
    made = access(zone(purpose, *FRONT, **more))
    return thing("left", (600, 500, 800), (2700, -900, 0), facets=made)


def right(purpose: str = "drawer", y: float = 200, **fields: Any) -> Thing:
    """Return a chest turned to face the other; the zones overlap by 200 mm."""
    made = access(zone(purpose, *FRONT))
    return thing("right", (600, 500, 800), (2700, y, 0), facets=made, turn="180 deg", **fields)


def pairs(*things: Thing, **more: Any) -> list[tuple[str, str]]:
    layout: Layout = stage(build(holding(*things, **more)))
    return [(pair.one.fitting, pair.other.fitting) for pair in layout.zone_pairs]


def test_how_much_they_overlap() -> None:
    (pair,) = stage(build(holding(left(shares_with=[]), right()))).zone_pairs
    assert pair.overlap.shift_mm == 200
    assert pair.overlap.volume_l == pytest.approx(0.6 * 0.2 * 0.8 * 1e3)


@pytest.mark.parametrize(
    ("fields", "purpose", "apart"),
    [
        ({}, "drawer", True),
        ({"shares_with": []}, "standing", False),
        ({"shares_with": ["standing"]}, "standing", True),
        ({"always": True}, "standing", True),
        ({"always": True}, "hatch swing", False),
        ({"always": True, "shares_with": ["hatch swing"]}, "hatch swing", True),
    ],
)
def test_who_may_share(fields: dict[str, Any], purpose: str, apart: bool) -> None:
    expected = [] if apart else [("left", "right")]
    assert pairs(left(**fields), right(purpose)) == expected


def test_zones_that_do_not_meet_never_collide() -> None:
    assert pairs(left(shares_with=[]), right(y=400)) == []


def test_what_was_given_up_collides_with_nothing() -> None:
    waiver = {"fitting": "right", "purpose": "drawer", "role": "designer", "reason": "one a time"}
    assert pairs(left(shares_with=[]), right(), waivers=[waiver]) == []


def test_zones_of_one_fitting_and_of_its_kin_may_overlap() -> None:
    both = access(zone("drawer", *FRONT, shares_with=[]), zone("standing", *FRONT))
    assert pairs(thing("left", (600, 500, 800), (2700, -900, 0), facets=both)) == []
    assert pairs(left(shares_with=[]), right(on="left")) == []


def test_a_zone_without_depth_overlaps_nothing() -> None:
    flat = access(zone("drawer", (0, 500, 0), (600, 500.5, 800), shares_with=[]))
    assert pairs(thing("left", (600, 500, 800), (2700, -900, 0), facets=flat), right(y=50)) == []
