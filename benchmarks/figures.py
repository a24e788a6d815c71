"""How a measured figure is shown: value, budget, and how busy the machine was."""

import math
import os
from collections.abc import Sequence
from dataclasses import dataclass

WIDTH = 62


@dataclass(frozen=True, kw_only=True, slots=True)
class Row:
    """One line of the report.

    Attributes
    ----------
    said
        The figure in words.
    budget
        In words; empty where there is none.
    """

    name: str
    said: str
    budget: str = ""

    def line(self) -> str:
        """Return the line, with the load of the machine in the last minute."""
        budget = f"budget {self.budget}" if self.budget else ""
        return f"{self.name:<{WIDTH}} {self.said:>34} {budget:>16}  load {os.getloadavg()[0]:.1f}"


def at_share(taken: Sequence[float], share_frac: float) -> float:
    """Return the value that a share of all do not exceed (nearest rank)."""
    ranked = sorted(taken)
    return ranked[max(math.ceil(share_frac * len(ranked)), 1) - 1]


def latency(name: str, taken_ms: Sequence[float], budget_ms: float | None = None) -> Row:
    """Return the row of many latencies."""
    half, most = at_share(taken_ms, 0.5), at_share(taken_ms, 0.95)
    return Row(
        name=f"{name}, {len(taken_ms)} times",
        said=f"half {half:.0f} ms, 95 % {most:.0f} ms",
        budget="" if budget_ms is None else f"{budget_ms:.0f} ms",
    )
