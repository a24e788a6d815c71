"""Where a run keeps its state, its sums and its series."""

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from coachwright.climate.model import DAYS
from coachwright.living import kernel_model as c
from coachwright.living.columns import EXTREMES, FLOWS, SUMS

if TYPE_CHECKING:
    from coachwright.living.simulate import Prepared

Grid = NDArray[np.float64]

_LOWEST = 3
"""The first extremes are lowest values, the others highest."""
_WARM_DEGC = 10.0


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Space:
    """State, sums, series and vectors of one run."""

    state: c.State
    sums: c.Sums
    kept: c.Series
    work: c.Work

    @classmethod
    def of(cls, ready: "Prepared", *, from_day: int, start_degc: float | None) -> "Space":
        """Return the space of a run that is about to begin."""
        return cls(
            state=_state(ready, from_day, start_degc),
            sums=_sums(ready),
            kept=_series(ready, 0),
            work=_work(ready),
        )

    def again(self, ready: "Prepared", *, steps: int) -> "Space":
        """Return the same state with new sums, and a series of some steps."""
        return replace(self, sums=_sums(ready), kept=_series(ready, steps))

    def copied(self) -> c.State:
        """Return the state as it is now."""
        return c.State(*(each.copy() for each in self.state))

    def nodes(self, ready: "Prepared") -> dict[str, Grid]:
        """Return the temperatures of the series by name."""
        rooms = [room.name for room in ready.given.body.rooms]
        names = ["outside", "bank", *rooms]
        for room in rooms:
            names += [f"{room} glass", f"{room} rib", f"{room} lining"]
        names += [each.name for each in ready.given.frost]
        return dict(zip(names, self.kept.nodes.T, strict=True))

    def rooms(self, ready: "Prepared") -> dict[str, Grid]:
        """Return vapour, carbon dioxide and water of the series by name."""
        rooms = [room.name for room in ready.given.body.rooms]
        kinds = ("vapour", "co2_ppm", "water_kg")
        names = [f"{room} {kind}" for room in rooms for kind in kinds]
        return dict(zip(names, self.kept.rooms.T, strict=True))

    def flows(self) -> dict[str, Grid]:
        """Return the flows of the series by name."""
        return {name: self.kept.flows[:, SUMS.index(summed)] for name, summed in FLOWS.items()}


def _state(ready: "Prepared", from_day: int, start_degc: float | None) -> c.State:
    given, first = ready.given, ready.modes[0]
    rooms = [room.name for room in given.body.rooms]
    hour = (from_day % DAYS) * 24
    outside = float(ready.site.driving[hour, 0])
    inside = max(outside, _WARM_DEGC) if start_degc is None else start_degc
    amounts = np.zeros(ready.matrices.stay.shape[1])
    amounts[: first.kept] = first.into @ np.full(first.into.shape[1], inside)
    misc = np.zeros(c.MISC_SIZE)
    misc[c.BANK_DEGC] = inside
    if given.bank is not None and given.bank.room not in rooms:
        misc[c.BANK_DEGC] = outside
    frost = [inside if each.place in rooms else outside for each in given.frost]
    return c.State(
        modes=amounts,
        air=np.full(len(rooms), inside),
        faces=np.full((len(rooms), 3), inside),
        vapour=np.full(len(rooms), float(ready.site.humidity[hour])),
        co2=np.full(len(rooms), c.OUTSIDE_PPM),
        water=np.zeros((len(rooms), 3)),
        frost=np.array(frost, dtype=np.float64),
        misc=misc,
    )


def _work(ready: "Prepared") -> c.Work:
    height, rooms = ready.matrices.drive.shape[2], len(ready.given.body.rooms)
    return c.Work(
        before=np.zeros(height),
        now=np.zeros(height),
        after=np.zeros(height),
        light=np.zeros(height),
        base=np.zeros(height),
        slope=np.zeros(height),
        shown=np.zeros(ready.matrices.shown.shape[1]),
        let_in=np.zeros(rooms + 1),
        small=np.zeros((rooms, rooms)),
        right=np.zeros(rooms),
        rates=np.zeros((rooms, 6)),
        spare=np.zeros(height),
        step=np.zeros(c.STEP_SIZE),
        halves=np.zeros(4),
    )


def _sums(ready: "Prepared") -> c.Sums:
    rooms = len(ready.given.body.rooms)
    extreme = np.full((12, len(EXTREMES)), -np.inf)
    extreme[:, :_LOWEST] = np.inf
    return c.Sums(
        month=np.zeros((12, c.SUMMED)),
        extreme=extreme,
        frost_h=np.zeros((12, len(ready.given.frost))),
        modes=np.zeros((2, ready.matrices.stay.shape[1])),
        driven=np.zeros((2, ready.site.driving.shape[1])),
        let_in=np.zeros((2, rooms + 1)),
    )


def _series(ready: "Prepared", steps: int) -> c.Series:
    rooms, frosts = len(ready.given.body.rooms), len(ready.given.frost)
    return c.Series(
        nodes=np.zeros((steps, 2 + 4 * rooms + frosts)),
        rooms=np.zeros((steps, 3 * rooms)),
        flows=np.zeros((steps, c.SUMMED + 5)),
    )
