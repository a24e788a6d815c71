"""Where masses sit that have no fitting of their own: linings and luggage."""

from collections.abc import Sequence
from dataclasses import dataclass

from coachwright.errors import OutOfRange

SURFACES = ("walls", "ceiling", "floor", "doors")


@dataclass(frozen=True, kw_only=True, slots=True)
class Place:
    """A point in the vehicle's axes, z from the load floor."""

    x_mm: float
    y_mm: float
    z_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class DoorArea:
    """A door opening's middle and size."""

    middle: Place
    area_m2: float


def surface_place(
    *,
    surface: str,
    cab_line_mm: float,
    rear_mm: float,
    ceiling_mm: float,
    doors: Sequence[DoorArea] = (),
) -> Place:
    """Return the centre of one surface of the shell.

    Parameters
    ----------
    surface
        ``walls``, ``ceiling``, ``floor`` or ``doors``.
    cab_line_mm, rear_mm
        Where the living space begins and ends. [mm]
    ceiling_mm
        Height of the ceiling above the load floor. [mm]
    doors
        Openings; the layer on the doors is spread over them by area.

    Returns
    -------
    Place
        Walls: both together on the centreline at half height.  Doors without any opening stated:
        the rear wall.

    Raises
    ------
    OutOfRange
        Where there is no such surface.

    Notes
    -----
    x = (x_cab + x_rear) / 2; doors: x = Σ A·x / Σ A, and so for y and z.

    Examples
    --------
    >>> surface_place(surface="ceiling", cab_line_mm=1000, rear_mm=4000, ceiling_mm=1900)
    Place(x_mm=2500.0, y_mm=0.0, z_mm=1900)
    """
    if surface not in SURFACES:
        raise OutOfRange("surface", surface, ", ".join(SURFACES))
    middle_mm = (cab_line_mm + rear_mm) / 2
    if surface == "floor":
        return Place(x_mm=middle_mm, y_mm=0.0, z_mm=0.0)
    if surface == "ceiling":
        return Place(x_mm=middle_mm, y_mm=0.0, z_mm=ceiling_mm)
    if surface == "walls":
        return Place(x_mm=middle_mm, y_mm=0.0, z_mm=ceiling_mm / 2)
    area_m2 = sum(door.area_m2 for door in doors)
    if not area_m2:
        return Place(x_mm=rear_mm, y_mm=0.0, z_mm=ceiling_mm / 2)
    return Place(
        x_mm=sum(door.area_m2 * door.middle.x_mm for door in doors) / area_m2,
        y_mm=sum(door.area_m2 * door.middle.y_mm for door in doors) / area_m2,
        z_mm=sum(door.area_m2 * door.middle.z_mm for door in doors) / area_m2,
    )


def luggage_place(
    *, cab_line_mm: float, rear_mm: float, reach_frac: float, height_mm: float
) -> Place:
    """Return where luggage sits for want of anything better: the rear third of the floor.

    Parameters
    ----------
    cab_line_mm, rear_mm
        Where the living space begins and ends. [mm]
    reach_frac
        Share of the floor from the cab line; 5/6 is the middle of its rear third. [frac]
    height_mm
        Above the load floor. [mm]

    Returns
    -------
    Place
        On the centreline.

    Notes
    -----
    x = x_cab + reach · (x_rear - x_cab).

    Examples
    --------
    >>> luggage_place(cab_line_mm=1000, rear_mm=4000, reach_frac=0.5, height_mm=300)
    Place(x_mm=2500.0, y_mm=0.0, z_mm=300)
    """
    return Place(x_mm=cab_line_mm + reach_frac * (rear_mm - cab_line_mm), y_mm=0.0, z_mm=height_mm)
