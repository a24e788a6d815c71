"""What is aboard in each load case."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from coachwright.weights.model import Group, MassItem

ALWAYS = frozenset({Group.BASE, Group.WHEELS, Group.FITTING, Group.FINISH, Group.CORRECTION})
"""Aboard in every state."""

WATER = frozenset({Group.FRESH, Group.HOT_WATER, Group.FLUSH_WATER})
"""Water before it is used."""


@dataclass(frozen=True, kw_only=True, slots=True)
class State:
    """A load case's name and the share of each variable group that is aboard.

    Attributes
    ----------
    full
        Groups that are full or aboard, besides fuel and gas; others are empty.
    fuel_frac, gas_frac
        Shares of a full tank and of the full gas store.
    """

    name: str
    label: str
    full: frozenset[Group]
    fuel_frac: float
    gas_frac: float
    note: str = ""


PACKED = frozenset({Group.DRIVER, Group.PASSENGER, Group.LUGGAGE, Group.CONTENTS, Group.CARGO})
"""People and their things."""


def driving_states(*, kerb_fuel_frac: float) -> tuple[State, ...]:
    """Return the states that are the same for every build.

    Parameters
    ----------
    kerb_fuel_frac
        Share of the fuel tank that the maker's kerb figures include. [frac]

    Returns
    -------
    tuple of State
        As delivered, driver only, travelling, grey full.

    Notes
    -----
    *As delivered* has the fuel of the kerb figures, so a vehicle stated without fuel is delivered
    without fuel; gas full, no water, nobody aboard.  Everything else has a full fuel tank.

    Examples
    --------
    >>> [state.name for state in driving_states(kerb_fuel_frac=0.9)]
    ['as-delivered', 'driver-only', 'travelling', 'grey-full']
    """
    return (
        State(
            name="as-delivered",
            label="As delivered",
            full=frozenset(),
            fuel_frac=kerb_fuel_frac,
            gas_frac=1.0,
            note="fuel as in the kerb figures, gas full, no water, nobody aboard",
        ),
        State(
            name="driver-only",
            label="Driver only",
            full=frozenset({Group.DRIVER}),
            fuel_frac=1.0,
            gas_frac=1.0,
            note="fuel and gas full, no water, only the driver",
        ),
        State(
            name="travelling",
            label="Travelling",
            full=PACKED | WATER,
            fuel_frac=1.0,
            gas_frac=1.0,
            note="people at their seats, luggage, contents, cargo; fuel, gas and fresh water "
            "full, waste empty",
        ),
        State(
            name="grey-full",
            label="Waste full, fresh empty",
            full=PACKED | {Group.WASTE, Group.HOT_WATER},
            fuel_frac=1.0,
            gas_frac=1.0,
            note="as travelling, with waste tanks full, fresh and flush water used up",
        ),
    )


def state_shares_frac(state: State, items: Iterable[MassItem]) -> dict[str, float]:
    """Return how much of each item is aboard in a state, by name; nothing where it is not."""
    return group_shares_frac(
        items,
        dict.fromkeys(state.full, 1.0) | {Group.FUEL: state.fuel_frac, Group.GAS: state.gas_frac},
    )


def group_shares_frac(
    items: Iterable[MassItem], groups_frac: Mapping[Group, float]
) -> dict[str, float]:
    """Return how much of each item is aboard where whole groups are switched.

    Parameters
    ----------
    items
        Every mass.
    groups_frac
        Share of each variable group; a group that is not named is not aboard. [frac]
    """
    shares = {
        item.name: 1.0 if item.group in ALWAYS else groups_frac.get(item.group, 0.0)
        for item in items
    }
    return {name: share for name, share in shares.items() if share}


def worst_shares_frac(
    items: Sequence[MassItem], *, wheelbase_mm: float, axle: str, least: bool = False
) -> dict[str, float]:
    """Return the combination of variable items that loads an axle most, or least.

    Parameters
    ----------
    items
        Every mass.
    wheelbase_mm
        Distance of the axles. [mm]
    axle
        ``front`` or ``rear``.
    least
        The combination that loads it least.

    Returns
    -------
    dict
        1 for every item that is aboard.  The driver always is.

    Notes
    -----
    Each variable item is aboard by itself: fresh and waste water may both be, since a tank can be
    filled before the other is emptied.  A mass loads the rear axle where x > 0 and the front axle
    where x < WB.  No item depends on another, so choosing each by its sign gives the extreme.
    """
    shares: dict[str, float] = {}
    for item in items:
        rear_frac = item.x_mm / wheelbase_mm
        lever_frac = rear_frac if axle == "rear" else 1 - rear_frac
        loads = item.mass_kg * lever_frac > 0
        fixed = item.group in ALWAYS or item.group is Group.DRIVER
        if fixed or loads is not least:
            shares[item.name] = 1.0
    return shares
