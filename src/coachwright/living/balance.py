"""How well a run's heat, vapour and electricity close."""

from dataclasses import dataclass
from typing import Any

import numpy as np

from coachwright.living import kernel_model as c
from coachwright.living.columns import SUMS, USES


@dataclass(frozen=True, kw_only=True, slots=True)
class Balance:
    """What lacks, as a share of what went through; 0 is perfect.

    Attributes
    ----------
    heat_ratio
        Heat let in and out against heat held, by the nodes' own links.
    vapour_ratio
        Sources and fresh air against what air and faces hold.
    electric_ratio
        Into the bus against out of it.
    charge_ratio
        Ampere hours in and out against the charge.
    """

    heat_ratio: float
    vapour_ratio: float
    electric_ratio: float
    charge_ratio: float

    @property
    def worst_ratio(self) -> float:
        """The worst of them."""
        return max(self.heat_ratio, self.vapour_ratio, self.electric_ratio, self.charge_ratio)


def balance(*, ready: Any, months: Any, started: Any, ended: Any, sums: Any) -> Balance:
    """Return the balances of a run.

    Parameters
    ----------
    ready
        The prepared design.
    months
        Its sums by month.
    started, ended
        The kernel's state before and after.
    sums
        What else it summed.

    Notes
    -----
    The mean of a mode over a step is (φ z₀ + (Δt − φ) b / μ) / Δt, φ = (1 − e^(−μΔt)) / μ; nodes
    follow from the modes, and what crosses the bounds from the nodes, so a step that was taken
    wrongly does not close.
    """
    column = dict(zip(SUMS, months.sum(axis=0).tolist(), strict=True))
    came = sum(column[f"in.{name}_wh"] for name in ("sun", "drive", "hookup", "grid"))
    went = sum(column[f"out.{use}_wh"] for use in USES) + column["stored_wh"]
    bank, charge = ready.given.bank, 0.0
    if bank is not None:
        stored = float(ended.misc[c.CHARGE] - started.misc[c.CHARGE]) * bank.capacity_ah
        moved = column["charged_ah"] - column["discharged_ah"]
        through = column["charged_ah"] + column["discharged_ah"] + bank.capacity_ah
        charge = abs(moved - stored) / through
    return Balance(
        heat_ratio=_heat_ratio(ready, started, ended, sums, column["carried_wh"]),
        vapour_ratio=_vapour_ratio(ready, started, ended, column),
        electric_ratio=abs(came - went) / max(came + abs(went), 1.0),
        charge_ratio=charge,
    )


def _heat_ratio(ready: Any, started: Any, ended: Any, sums: Any, carried_wh: float) -> float:
    step_s = ready.step_min * 60.0
    first, last = int(started.misc[c.SHUT]), int(ended.misc[c.SHUT])
    held = float(ready.matrices.held[last] @ ended.modes)
    held -= float(ready.matrices.held[first] @ started.modes)
    held += float(ended.misc[c.CARRY_W] - started.misc[c.CARRY_W]) * step_s
    crossed, through = -carried_wh * 3600.0, 0.0
    for place, modes in enumerate(ready.modes):
        network, kept = ready.networks[place], modes.kept
        drive = np.concatenate((sums.driven[place], sums.let_in[place]))
        inputs = network.driven @ sums.driven[place]
        crossed += step_s * float(inputs.sum() + sums.let_in[place].sum())
        through += step_s * float(np.abs(inputs).sum() + np.abs(sums.let_in[place]).sum())
        forced = modes.forced @ drive
        rate, gain = modes.rate_per_s[:kept], modes.gain
        begun = sums.modes[place, :kept]
        mean = (gain * begun + (step_s - gain) * forced / rate) / step_s
        nodes = modes.at_all @ mean + modes.at_once @ drive
        crossed -= step_s * float(network.bounds_w_per_k @ nodes)
        through += step_s * float(np.abs(network.bounds_w_per_k * nodes).sum())
    return float(abs(held - crossed) / max(through, 1.0))


def _vapour_ratio(ready: Any, started: Any, ended: Any, column: Any) -> float:
    held = float(ready.tables.room_kg @ (ended.vapour - started.vapour))
    held += float(ended.water.sum() - started.water.sum())
    came = column["vapour_in_kg"] + column["vapour_came_kg"] - column["vapour_dried_kg"]
    return float(abs(held - came * 3600.0) / max(column["vapour_moved_kg"] * 3600.0, 1e-9))
