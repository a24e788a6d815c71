"""Where the sun goes that came through the glass."""

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True, slots=True)
class Face:
    """A face inside a room.

    Attributes
    ----------
    first_frac
        Share of the sun that falls on it before all else: of furniture.
    """

    node: int
    area_m2: float
    is_floor: bool
    absorptance_frac: float
    first_frac: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Pane:
    """A window as light sees it.

    Attributes
    ----------
    through_m2
        Area times transmittance at straight incidence.
    lost_m2
        Area times transmittance for even light: what goes out again.
    """

    column: int
    through_m2: float
    lost_m2: float


def shares_frac(
    *, faces: Sequence[Face], panes: Sequence[Pane], floor_frac: float | None
) -> tuple[float, ...]:
    """Return the share of a room's sun that each face takes in; what lacks to 1 went out again.

    Parameters
    ----------
    faces
        Of the room.
    panes
        Its windows, through which light is lost.
    floor_frac
        Share that falls on the floor first; None for none.

    Notes
    -----
    Furniture takes its share, the floor absorbs α of its own; what it throws back, and the rest,
    is even light that each face takes by area times absorptance and each window lets out by area
    times transmittance.

    Examples
    --------
    >>> floor = Face(node=0, area_m2=10.0, is_floor=True, absorptance_frac=0.6)
    >>> wall = Face(node=1, area_m2=50.0, is_floor=False, absorptance_frac=0.6)
    >>> pane = Pane(column=3, through_m2=1.0, lost_m2=4.0)
    >>> found = shares_frac(faces=(floor, wall), panes=(pane,), floor_frac=1.0)
    >>> [round(each, 3) for each in found]
    [0.66, 0.3]
    """
    first = [face.first_frac for face in faces]
    left_frac = max(1.0 - sum(first), 0.0)
    floors_m2 = sum(face.area_m2 for face in faces if face.is_floor)
    to_floor = left_frac * (floor_frac or 0.0) if floors_m2 > 0.0 else 0.0
    taken = [
        to_floor * face.area_m2 / floors_m2 * face.absorptance_frac if face.is_floor else 0.0
        for face in faces
    ]
    even_frac = left_frac - sum(taken)
    weights = [face.area_m2 * face.absorptance_frac for face in faces]
    whole = sum(weights) + sum(pane.lost_m2 for pane in panes)
    if whole <= 0.0:
        return tuple(first)
    return tuple(
        own + direct + even_frac * weight / whole
        for own, direct, weight in zip(first, taken, weights, strict=True)
    )
