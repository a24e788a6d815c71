"""Zones that overlap and may not."""

from collections.abc import Sequence
from itertools import combinations

from coachwright.layout.kin import Kin
from coachwright.layout.model import PlacedZone, ZonePair
from coachwright.layout.solids import apart, overlap, solid
from coachwright.layout.zones import MOVING


def zone_pairs(*, zones: Sequence[PlacedZone], kin: Kin, slack_mm: float) -> tuple[ZonePair, ...]:
    """Return the pairs of zones that overlap although one of them keeps to itself.

    Parameters
    ----------
    zones
        Of the whole build; those given up are left out.
    kin
        Zones of fittings that are built into each other, or carry each other, may share.
    slack_mm
        Overlaps not deeper than this do not count. [mm]

    Notes
    -----
    A zone that says with which purposes it shares keeps to itself against all others.  A zone that
    is always kept free and does not say so shares with those that people use, but not with a
    space that a part of another fitting moves through.
    """
    kept = [zone for zone in zones if zone.waived is None]
    found = []
    for one, other in combinations(kept, 2):
        if apart(one.space, other.space, slack_mm) or _may_share(one, other):
            continue
        if one.fitting == other.fitting or kin.related(one.fitting, other.fitting):
            continue
        shared = overlap(
            solid(one.fitting, (one.space,)),
            solid(other.fitting, (other.space,)),
            slack_mm=slack_mm,
        )
        if shared is not None:
            found.append(ZonePair(one=one, other=other, overlap=shared))
    return tuple(found)


def _may_share(one: PlacedZone, other: PlacedZone) -> bool:
    return _allows(one, other) and _allows(other, one)


def _allows(zone: PlacedZone, other: PlacedZone) -> bool:
    if zone.shares_with is None:
        return not (zone.always and other.purpose in MOVING)
    return other.purpose in zone.shares_with
