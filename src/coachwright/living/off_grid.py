"""Stands off the grid: the bank alone walks along a year's draw and sun, from every day."""

from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from coachwright.errors import OutOfRange
from coachwright.living import handed
from coachwright.living.given import Bank
from coachwright.living.simulate import Run

Grid = NDArray[np.float64]


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Walked:
    """Stands, one for each day of the series on which one began.

    Attributes
    ----------
    days_d
        Until the reserve, or as long as they were followed.
    lowest_frac
        Emptiest that the bank was.
    still
        Not at the reserve when following ended.
    """

    days_d: Grid
    lowest_frac: Grid
    still: NDArray[np.bool_]


def stands(
    run: Run,
    *,
    bank: Bank | None = None,
    sun_factor: float = 1.0,
    begin_h: float = 12.0,
    longest_d: float = 21.0,
    start_charge_frac: float = 1.0,
    threads: int = 1,
) -> Walked:
    """Return how long a stand lasts that begins on each day.

    Parameters
    ----------
    run
        Of a whole year, `off_grid`.
    bank
        Another than the design's; None for that.
    sun_factor
        Times as much sun.
    begin_h
        Hour of the day at which each begins. [h]
    longest_d
        Days for which each is followed. [d]
    start_charge_frac
        Of the bank at the beginning.
    threads
        Among which the days are divided.

    Notes
    -----
    Before a stand ends every load is met, so the draw does not depend on the day it began; the
    bank alone walks along it, as warm as its room when it begins.
    """
    from coachwright.living import kernel  # noqa: PLC0415  # it takes long to load

    bank = run.given.bank if bank is None else bank
    if not run.off_grid or bank is None:
        raise OutOfRange("run", "without a bank or on the grid", "a run off the grid with a bank")
    per_day = round(1440.0 / run.step_min)
    most_steps = round(longest_d * per_day)
    begins = np.arange(run.days, dtype=np.int64) * per_day + round(begin_h / 24.0 * per_day)
    lasted, lowest = np.zeros(run.days, dtype=np.int64), np.zeros(run.days)
    numbers = handed.bank_numbers(bank, step_s=60.0 * run.step_min)
    tables = handed.bank_tables(bank)
    series = (run.sun_w * sun_factor, run.draw_w, run.around_degc)
    edges = np.linspace(0, run.days, max(threads, 1) + 1).astype(np.int64)

    def part(place: int) -> None:
        rows = (*tables, *series, begins, edges[place], edges[place + 1])
        arguments: tuple[Any, ...] = (*rows, most_steps, start_charge_frac, lasted, lowest)
        kernel.walk(numbers, *arguments)

    with ThreadPoolExecutor(max(threads, 1)) as pool:
        list(pool.map(part, range(max(threads, 1))))
    return Walked(
        days_d=np.minimum(lasted, most_steps) / per_day,
        lowest_frac=lowest,
        still=lasted > most_steps,
    )
