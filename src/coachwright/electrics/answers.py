"""Answers to "how long can I run it", for the loads of a build and for any other."""

from collections.abc import Iterator

from coachwright.electrics.loads import DAY_H
from coachwright.electrics.model import Bank, LoadLine, RunTime, Supply
from coachwright.electrics.runtime import Running, running
from coachwright.electrics.stage_loads import Loads


def how_long(
    *,
    bank: Bank,
    draw_w: float,
    duty_frac: float = 1.0,
    others_w: float = 0.0,
    capacity_factor: float = 1.0,
) -> Running:
    """Return how long a full bank carries a draw at its terminals.

    Parameters
    ----------
    bank
        Of a build's `Electrics`.
    draw_w
        At the bank: a load behind an inverter is divided by the inverter's efficiency first. [W]
    duty_frac
        Share of the time that it draws.
    others_w
        What else draws all the time. [W]
    capacity_factor
        Share of the capacity that is left at the bank's temperature.

    Returns
    -------
    Running
        Clock hours and hours of drawing, with the working.

    Notes
    -----
    `running` with the bank's capacity, depth, rating and exponent; currents at its nominal
    voltage.
    """
    return running(
        capacity_ah=bank.capacity_ah * capacity_factor,
        depth_frac=bank.depth_frac,
        draw_a=draw_w / bank.nominal_v,
        duty_frac=duty_frac,
        base_a=others_w / bank.nominal_v,
        rated_h=bank.rated_h,
        exponent=bank.exponent,
    )


def at_bank_w(line: LoadLine, efficiency_frac: float) -> float:
    """Return a line's draw at the bank's terminals while it draws [W]."""
    return line.draw_w / efficiency_frac if line.supply is Supply.INVERTER else line.draw_w


def always_on_w(found: Loads, but: str = "") -> float:
    """Return what is always on, at the bank, but for one load [W].

    Standby draws, and loads that are in use all day at their mean draw.
    """
    lines = (*found.lines, *found.inverter_lines)
    return sum(
        at_bank_w(line, found.efficiency_frac) * line.duty_frac
        for line in lines
        if line.supply is not Supply.SHORE
        and line.subject != but
        and max(line.summer_use_h_per_day, line.winter_use_h_per_day) >= DAY_H
    )


def run_times(bank: Bank, found: Loads) -> Iterator[RunTime]:
    """Yield the answer for each mode of each load that can run on the bank."""
    idle = sum(line.draw_w for line in found.inverter_lines)
    for line in found.lines:
        if line.standby or line.supply is Supply.SHORE or line.draw_w * line.duty_frac <= 0.0:
            continue
        draw = at_bank_w(line, found.efficiency_frac)
        awake = idle if line.supply is Supply.INVERTER else 0.0
        alone = how_long(bank=bank, draw_w=draw, duty_frac=line.duty_frac, others_w=awake)
        together = how_long(
            bank=bank,
            draw_w=draw,
            duty_frac=line.duty_frac,
            others_w=max(awake, always_on_w(found, but=line.subject)),
        )
        cold_h = 0.0
        if bank.cold_factor > 0.0:
            cold_h = how_long(
                bank=bank,
                draw_w=draw,
                duty_frac=line.duty_frac,
                others_w=awake,
                capacity_factor=bank.cold_factor,
            ).clock_h
        yield RunTime(
            subject=line.subject,
            mode=line.mode,
            supply=line.supply,
            draw_w=line.draw_w,
            duty_frac=line.duty_frac,
            alone_h=alone.clock_h,
            with_others_h=together.clock_h,
            cold_alone_h=cold_h,
            working=alone.working,
        )
