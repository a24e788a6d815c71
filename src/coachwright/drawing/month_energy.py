"""Energy in by source and out by use, month by month: in above the line, out below it."""

from collections.abc import Callable, Iterable, Iterator

from coachwright.drawing.axis import axis, ruled
from coachwright.drawing.chart import (
    LEFT_MM,
    Columns,
    Fill,
    block,
    key,
    key_height_mm,
    month_names,
    small,
)
from coachwright.drawing.energy_fills import SOURCES, SPILLED, UNMET, USES, gathered_wh
from coachwright.drawing.scene import Anchor, Primitive, Scene
from coachwright.living.model import MonthOfYear

_PLOT_MM = 78.0
_OVER_MM = 5.0
_NAMES_MM = 5.0
_BAR_RATIO = 0.66
_LEAST_WH = 1.0


def month_energy(months: tuple[MonthOfYear, ...], *, system: str, paper_width_mm: float) -> Scene:
    """Return the months' energy, all to one scale.

    Parameters
    ----------
    months
        In any order.
    system
        ``"metric"`` or ``"us"``.
    paper_width_mm
        Room on the sheet. [mm]
    """
    stacks = {each.month: (_into_wh(each), _out_of_wh(each)) for each in months}
    used = {fill for pair in stacks.values() for stack in pair for fill in stack}
    order = [*dict.fromkeys((*SOURCES.values(), SPILLED, *USES.values(), UNMET))]
    shown_fills = [fill for fill in order if fill in used]
    foot = key_height_mm(shown_fills, paper_width_mm) + 3.0 + _NAMES_MM
    energy = axis(
        low=-max((sum(out.values()) for _, out in stacks.values()), default=1.0),
        high=max((sum(into.values()) for into, _ in stacks.values()), default=1.0),
        unit="Wh/month",
        system=system,
        foot_mm=foot,
        head_mm=foot + _PLOT_MM,
        most_ticks=8,
    )
    columns = Columns(left_mm=LEFT_MM, right_mm=paper_width_mm)
    zero = energy.place_mm(0.0)
    primitives: list[Primitive] = [
        *ruled(energy, left_mm=columns.left_mm, right_mm=columns.right_mm),
        *month_names(columns, foot - 4.0),
        *key(shown_fills, (0.0, foot - _NAMES_MM - 0.5), paper_width_mm),
        small("in", (0.0, zero + 1.2), Anchor.START, strong=True),
        small("out", (0.0, zero - 3.0), Anchor.START, strong=True),
    ]
    for month, (into, out) in stacks.items():
        half = columns.step_mm * _BAR_RATIO / 2
        ends = (columns.middle_mm(month) - half, columns.middle_mm(month) + half)
        primitives += _stack(into.items(), ends, energy.place_mm, 1)
        primitives += _stack(out.items(), ends, energy.place_mm, -1)
    return Scene(
        primitives=tuple(primitives),
        low_mm=(0.0, 0.0),
        high_mm=(paper_width_mm, foot + _PLOT_MM + _OVER_MM),
        scale_ratio=1.0,
    )


def _into_wh(month: MonthOfYear) -> dict[Fill, float]:
    made = gathered_wh(month.in_wh, SOURCES)
    return made | ({SPILLED: month.spilled_wh} if month.spilled_wh > _LEAST_WH else {})


def _out_of_wh(month: MonthOfYear) -> dict[Fill, float]:
    unmet = sum(month.unmet_wh.values())
    return gathered_wh(month.out_wh, USES) | ({UNMET: unmet} if unmet > _LEAST_WH else {})


def _stack(
    parts: Iterable[tuple[Fill, float]],
    ends_mm: tuple[float, float],
    place: Callable[[float], float],
    sign: int,
) -> Iterator[Primitive]:
    reached = 0.0
    for fill, energy in parts:
        low, high = sorted((place(sign * reached), place(sign * (reached + energy))))
        yield from block((ends_mm[0], low), (ends_mm[1], high), fill)
        reached += energy
