"""Cabinets: what fits into them, and which of them are counters."""

from collections.abc import Iterator

from coachwright import reference
from coachwright.layout.free_floor import union_mm
from coachwright.layout.model import Counter, Store
from coachwright.layout.solids import Box
from coachwright.layout.standing import Standing
from coachwright.model.build import INSIDE, Build


def stores(build: Build) -> tuple[Store, ...]:
    """Return what fits into each cabinet inside, as the parts state it."""
    return tuple(
        Store(name=fitted.name, storage_l=fitted.part.carcass.storage_l)
        for fitted in build.having("carcass")
        if fitted.part.carcass is not None and fitted.fitting.mounting in INSIDE
    )


def counters(here: Standing) -> tuple[Counter, ...]:
    """Return the cabinets inside whose top is at working height.

    Notes
    -----
    The length counts along the longer side; what is let into the top or stands on it takes its own
    stretch of that side over the whole depth.
    """
    from_mm, to_mm = _assumed_mm("counter-from"), _assumed_mm("counter-to")
    found = []
    for fitted in here.build.having("carcass"):
        place = here.solids[fitted.name].bounds
        top_mm = place.high_mm[2] - here.build_up.floor_mm
        if fitted.fitting.mounting not in INSIDE or not from_mm <= top_mm <= to_mm:
            continue
        length_mm, width_mm = (place.high_mm[axis] - place.low_mm[axis] for axis in (0, 1))
        axis = 0 if length_mm >= width_mm else 1
        found.append(
            Counter(
                name=fitted.name,
                length_mm=max(length_mm, width_mm),
                taken_mm=union_mm(_taken_mm(here, fitted.name, place, axis)),
                top_mm=top_mm,
            )
        )
    return tuple(found)


def _taken_mm(here: Standing, name: str, top: Box, axis: int) -> Iterator[tuple[float, float]]:
    """Yield the stretches of a counter that something let in or standing there takes."""
    for other, body in here.solids.items():
        if other == name or not here.kin.related(name, other):
            continue
        start_mm = max(top.low_mm[axis], body.bounds.low_mm[axis])
        end_mm = min(top.high_mm[axis], body.bounds.high_mm[axis])
        if body.bounds.high_mm[2] >= top.high_mm[2] and start_mm < end_mm:
            yield start_mm, end_mm


def _assumed_mm(name: str) -> float:
    rows = {row["name"]: row for row in reference.table("layout_assumptions")}
    return float(rows[name]["value"])
