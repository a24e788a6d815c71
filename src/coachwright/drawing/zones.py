"""Access zones as thin dash-dotted outlines."""

from collections.abc import Container, Iterator

from coachwright.drawing.gaze import Gaze
from coachwright.drawing.scene import Layer, Polyline, Primitive, Style, Weight
from coachwright.layout.model import Layout

_LEAST_MM = 0.5


def zone_outlines(layout: Layout, gaze: Gaze, names: Container[str]) -> Iterator[Primitive]:
    """Yield the access zones of the fittings that a view shows, behind its plane or cut by it.

    Parameters
    ----------
    layout
        For the zones.
    gaze
        From where they are looked at.
    names
        Fittings whose zones are wanted.
    """
    for zone in layout.zones:
        if zone.fitting not in names or zone.waived:
            continue
        space = zone.space
        depth = max(gaze.away_mm(space.low_mm), gaze.away_mm(space.high_mm))
        if gaze.cut_mm is not None and depth <= _LEAST_MM:
            continue
        one, other = gaze.flat(space.low_mm), gaze.flat(space.high_mm)
        yield Polyline(
            points_mm=(one, (other[0], one[1]), other, (one[0], other[1])),
            layer=Layer.ZONE,
            weight=Weight.FINE,
            closed=True,
            style=Style.DASH_DOT,
        )
