"""The network as independent modes: each fades by itself, so a step costs one product for each."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from coachwright.living.network import Network

Grid = NDArray[np.float64]

_GONE = 3.0
"""A mode that fades to a twentieth in a step follows at once."""


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Modes:
    """A network in modes, for one length of step.

    Attributes
    ----------
    rate_per_s
        At which each mode fades; the slowest first.
    kept
        How many modes have a memory; the others follow at once.
    stay
        What is left of a mode after a step.
    drive
        Rows: the modes kept, then the outputs; columns: what drives, then what is let in (each
        room's air, then radiation in the thermostat's room).  Outputs follow the site at once,
        beside what the modes show; they follow what is let in altogether, modes and all.
    shown
        Outputs for each mode kept: each room's air, then glass, rib and lining of each room.
    held_j_per_k
        Heat in the body for each unit of a mode kept.
    into, out_of
        From nodes' temperatures to modes and back (heat-holding nodes).
    """

    rate_per_s: Grid
    kept: int
    stay: Grid
    gain: Grid
    drive: Grid
    shown: Grid
    held_j_per_k: Grid
    into: Grid
    out_of: Grid
    forced: Grid
    at_all: Grid
    at_once: Grid


def modes(*, network: Network, step_s: float, radiant_room: int) -> Modes:
    """Return the modes of a network.

    Parameters
    ----------
    network
        The nodes.
    step_s
        Length of a step. [s]
    radiant_room
        Room in which radiation is let in.

    Notes
    -----
    Nodes without heat are eliminated; C^(−1/2) G C^(−1/2) = Q μ Qᵀ gives modes z = Qᵀ C^(1/2) T
    with dz/dt = −μ z + b.  For a drive that is even over a step the solution is exact,
    z' = e^(−μΔt) z + (1 − e^(−μΔt)) b / μ.  A mode with μΔt > 3 is z = b / μ; so heat is neither
    made nor lost by it.
    """
    holds = network.heat_j_per_k > 0.0
    some, none = np.flatnonzero(holds), np.flatnonzero(~holds)
    links, rooms = network.links_w_per_k, len(network.air)
    driven = np.hstack((network.driven, _let_in(network, radiant_room)))
    at_once = np.linalg.solve(
        links[np.ix_(none, none)], np.hstack((links[np.ix_(none, some)], driven[none]))
    )
    follows, direct = -at_once[:, : len(some)], at_once[:, len(some) :]
    inner = links[np.ix_(some, some)] + links[np.ix_(some, none)] @ follows
    forced = driven[some] - links[np.ix_(some, none)] @ direct
    root = np.sqrt(network.heat_j_per_k[some])
    rate, shape = np.linalg.eigh((inner + inner.T) / 2.0 / np.outer(root, root))
    rate = np.maximum(rate, 1e-14)
    into, out_of = shape.T * root, shape / root[:, None]
    kept = int(np.count_nonzero(rate * step_s <= _GONE))
    stay = np.exp(-rate * step_s)
    gain = -np.expm1(-rate * step_s) / rate
    modal = out_of.T @ forced
    at_all, immediate = np.empty((len(holds), len(some))), np.zeros((len(holds), driven.shape[1]))
    at_all[some], at_all[none], immediate[none] = out_of, follows @ out_of, direct
    immediate += at_all[:, kept:] @ (modal[kept:] / rate[kept:, None])
    look = _looks(network)
    moved, shown = gain[:kept, None] * modal[:kept], look @ at_all[:, :kept]
    at_outputs = look @ immediate
    at_outputs[:, -rooms - 1 :] += shown @ moved[:, -rooms - 1 :]
    return Modes(
        rate_per_s=rate,
        kept=kept,
        stay=stay[:kept],
        gain=gain[:kept],
        drive=np.vstack((moved, at_outputs)),
        shown=shown,
        held_j_per_k=(network.heat_j_per_k[some] @ out_of)[:kept],
        into=into[:kept],
        out_of=out_of[:, :kept],
        forced=modal[:kept],
        at_all=at_all[:, :kept],
        at_once=immediate,
    )


def _let_in(network: Network, radiant_room: int) -> Grid:
    """Return what nodes get of heat let into each room's air, and of radiation in one room."""
    rooms = len(network.air)
    let_in = np.zeros((len(network.names), rooms + 1))
    for room, node in enumerate(network.air):
        let_in[node, room] = 1.0
    let_in[network.star[radiant_room], rooms] = 1.0
    return let_in


def _looks(network: Network) -> Grid:
    """Return the outputs' shares of the nodes: each room's air, then the faces judged in it."""
    rooms = len(network.air)
    look = np.zeros((4 * rooms, len(network.names)))
    for room, node in enumerate(network.air):
        look[room, node] = 1.0
        look[rooms + 3 * room : rooms + 3 * room + 3] = network.seen[room]
    return look
