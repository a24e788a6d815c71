"""What hangs outside: loads of a place, what stands on what, a door's moment, a crash pulse."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working

STANDARD_GRAVITY_M_PER_S2 = 9.80665
"""Standard acceleration of free fall [m/s2]; exact by definition, [bipm-si]."""


@dataclass(frozen=True, kw_only=True, slots=True)
class CarriedItem:
    """One fitting outside, with its contents, water and gas, and its centre of mass.

    Attributes
    ----------
    x_mm, y_mm
        From the front axle rearwards, and from the centreline to the right.
    """

    name: str
    mass_kg: float
    x_mm: float
    y_mm: float


@dataclass(frozen=True, kw_only=True, slots=True)
class CarriedSum:
    """Mass and common centre of mass of several items."""

    mass_kg: float
    x_mm: float
    y_mm: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class HingeMoment:
    """Moment of a door's load about its hinge line.

    Attributes
    ----------
    arm_mm
        Horizontal distance of the load's centre of mass from the hinge line.
    """

    moment_n_m: float
    arm_mm: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class PulseForce:
    """Force of a load on its fixings."""

    force_n: float
    working: Working


def standing_on(*, carrier: str, carried_by: Mapping[str, str]) -> tuple[str, ...]:
    """Return what stands on a carrier, and on everything that stands on that.

    Parameters
    ----------
    carrier
        Reference name.
    carried_by
        Name of each fitting → name of what carries it; empty where nothing does.

    Returns
    -------
    tuple of str
        In the order of `carried_by`, without the carrier.

    Notes
    -----
    Follows each chain of carriers to its end; a ring ends where it began.

    References
    ----------
    [part-maker-data]

    Examples
    --------
    >>> standing_on(carrier="rack", carried_by={"rack": "", "box": "rack", "rope": "box"})
    ('box', 'rope')
    """
    return tuple(
        name
        for name in carried_by
        if name != carrier and carrier in _chain(name=name, carried_by=carried_by)
    )


def _chain(*, name: str, carried_by: Mapping[str, str]) -> Iterator[str]:
    seen = {name}
    here = carried_by.get(name, "")
    while here and here not in seen:
        yield here
        seen.add(here)
        here = carried_by.get(here, "")


def carried_sum(*, items: Sequence[CarriedItem]) -> CarriedSum:
    """Return the mass of several items and where their common centre of mass is.

    Parameters
    ----------
    items
        What hangs on one place.

    Returns
    -------
    CarriedSum
        With the working of the mass; the centre is 0, 0 where there is no mass.

    Notes
    -----
    m = Σ m_i; x = Σ m_i·x_i / m.

    References
    ----------
    [vehicle-maker-data], [part-maker-data]

    Examples
    --------
    >>> carried_sum(
    ...     items=(
    ...         CarriedItem(name="wheel", mass_kg=30, x_mm=5000, y_mm=-400),
    ...         CarriedItem(name="ladder", mass_kg=10, x_mm=5100, y_mm=-600),
    ...     )
    ... ).x_mm
    5025.0
    """
    mass = math.fsum(item.mass_kg for item in items)
    moment_x = math.fsum(item.mass_kg * item.x_mm for item in items)
    moment_y = math.fsum(item.mass_kg * item.y_mm for item in items)
    return CarriedSum(
        mass_kg=mass,
        x_mm=moment_x / mass if mass else 0.0,
        y_mm=moment_y / mass if mass else 0.0,
        working=Working(
            expression="m = " + (" + ".join(f"m{i + 1}" for i in range(len(items))) or "0"),
            given=tuple(
                Given(symbol=f"m{i + 1}", meaning=item.name, value=item.mass_kg, unit="kg")
                for i, item in enumerate(items)
            ),
            result=mass,
            unit="kg",
            references=("part-maker-data",),
            note="each with its contents, and with its water and gas when full",
        ),
    )


def hinge_moment(
    *, mass_kg: float, x_mm: float, y_mm: float, hinge_x_mm: float, hinge_y_mm: float
) -> HingeMoment:
    """Return the moment with which a door's load pulls on its hinges.

    Parameters
    ----------
    mass_kg
        Of everything on the door. [kg]
    x_mm
        Its centre of mass behind the front axle, door closed. [mm]
    y_mm
        Its centre of mass right of the centreline, door closed. [mm]
    hinge_x_mm
        The hinge line behind the front axle. [mm]
    hinge_y_mm
        The hinge line right of the centreline. [mm]

    Returns
    -------
    HingeMoment
        With the arm and the working.

    Raises
    ------
    OutOfRange
        Where the mass is negative.

    Notes
    -----
    M = m·g·a with a = sqrt((x - x_h)² + (y - y_h)²): weight times the horizontal distance of the
    load's centre of mass from the vertical hinge line.  The pair of hinges resists it as one pulls
    and the other pushes.  The door hangs free, as when it is open; a closed lock would carry a
    share.  The door's own mass and dynamic loads are not in it.

    References
    ----------
    [vehicle-maker-data], [bipm-si]

    Examples
    --------
    >>> round(
    ...     hinge_moment(
    ...         mass_kg=40, x_mm=4900, y_mm=-400, hinge_x_mm=4750, hinge_y_mm=-780
    ...     ).moment_n_m,
    ...     1,
    ... )
    160.3
    """
    if mass_kg < 0:
        raise OutOfRange("mass_kg", mass_kg, "at least 0")
    arm = math.hypot(x_mm - hinge_x_mm, y_mm - hinge_y_mm)
    moment = mass_kg * STANDARD_GRAVITY_M_PER_S2 * arm / 1000
    return HingeMoment(
        moment_n_m=moment,
        arm_mm=arm,
        working=Working(
            expression="M = m·g·sqrt((x - x_h)² + (y - y_h)²)",
            given=(
                Given(symbol="m", meaning="mass on the door", value=mass_kg, unit="kg"),
                Given(symbol="x", meaning="its centre behind front axle", value=x_mm, unit="mm"),
                Given(
                    symbol="x_h", meaning="hinge behind front axle", value=hinge_x_mm, unit="mm"
                ),
                Given(symbol="y", meaning="its centre right of middle", value=y_mm, unit="mm"),
                Given(symbol="y_h", meaning="hinge right of middle", value=hinge_y_mm, unit="mm"),
            ),
            result=moment,
            unit="N m",
            references=("vehicle-maker-data", "bipm-si"),
            note="g = 9.80665 m/s2, lengths in m; the door hanging free; without the door's own "
            "mass and without shocks",
        ),
    )


def pulse_force(*, mass_kg: float, pulse_factor: float) -> PulseForce:
    """Return the force of a load on its fixings in a crash pulse.

    Parameters
    ----------
    mass_kg
        Of the load and its carrier. [kg]
    pulse_factor
        Deceleration in multiples of standard gravity. [1]

    Returns
    -------
    PulseForce
        With its working.

    Raises
    ------
    OutOfRange
        Where the mass is negative or the pulse not positive.

    Notes
    -----
    F = m·n·g, the load moving with the vehicle; a loose load strikes harder.

    References
    ----------
    [iso-11154], [din-75302], [bipm-si]

    Examples
    --------
    >>> round(pulse_force(mass_kg=50, pulse_factor=8).force_n, 1)
    3922.7
    """
    if mass_kg < 0:
        raise OutOfRange("mass_kg", mass_kg, "at least 0")
    if pulse_factor <= 0:
        raise OutOfRange("pulse_factor", pulse_factor, "more than 0")
    force = mass_kg * pulse_factor * STANDARD_GRAVITY_M_PER_S2
    return PulseForce(
        force_n=force,
        working=Working(
            expression="F = m·n·g",
            given=(
                Given(symbol="m", meaning="roof load", value=mass_kg, unit="kg"),
                Given(symbol="n", meaning="pulse in g", value=pulse_factor, unit="1"),
            ),
            result=force,
            unit="N",
            references=("iso-11154", "din-75302", "bipm-si"),
            note="g = 9.80665 m/s2; for the choice of fixings, no proof of them",
        ),
    )
