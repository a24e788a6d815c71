"""Which edges of things a chain of dimensions measures."""

from collections.abc import Iterable, Iterator

from coachwright.drawing.gaze import Gaze
from coachwright.drawing.scene import Layer
from coachwright.drawing.things import Thing
from coachwright.model.build import Mounting

_LEAST_LENGTH_MM = 180.0
"""Shorter things are not in a chain; their place is on the setting-out sheet."""
_UNMEASURED = (Mounting.CAB, Mounting.CEILING)


def measured(thing: Thing) -> bool:
    """Return whether a thing is measured in a chain: what is built in or small is not."""
    return (
        not thing.carriers
        and thing.mounting not in _UNMEASURED
        and (thing.layer is Layer.FURNITURE or max(thing.size_mm[:2]) >= _LEAST_LENGTH_MM)
    )


def across_edges_mm(things: Iterable[Thing], gaze: Gaze) -> Iterator[float]:
    """Yield the left and right edges of things on the drawing."""
    for thing in things:
        yield gaze.flat(thing.low_mm)[0]
        yield gaze.flat(thing.high_mm)[0]


def up_edges_mm(things: Iterable[Thing], gaze: Gaze) -> Iterator[float]:
    """Yield the lower and upper edges of things on the drawing."""
    for thing in things:
        yield gaze.flat(thing.low_mm)[1]
        yield gaze.flat(thing.high_mm)[1]
