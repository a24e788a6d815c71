"""Some days out of a run that was walked through a whole year."""

from dataclasses import replace
from typing import Any

from numpy.typing import NDArray

from coachwright.errors import OutOfRange
from coachwright.living.simulate import Run

_MIN_PER_DAY = 1440


def stretch(run: Run, *, from_day: int, days: int) -> Run:
    """Return the series of some days of a run; its sums by month stay those of the whole.

    Parameters
    ----------
    run
        With series.
    from_day, days
        First day of the year, from 0, and how many.

    Raises
    ------
    OutOfRange
        Where the run does not hold these days.
    """
    first = from_day - run.from_day
    if not 0 <= first <= first + days <= run.days:
        raise OutOfRange("from_day", str(from_day), f"{run.from_day} to {run.days - days}")
    per_day = round(_MIN_PER_DAY / run.step_min)
    begin, end = first * per_day, (first + days) * per_day

    def cut(series: dict[str, NDArray[Any]]) -> dict[str, NDArray[Any]]:
        return {name: values[begin:end] for name, values in series.items()}

    return replace(
        run,
        from_day=from_day,
        days=days,
        nodes_degc=cut(run.nodes_degc),
        rooms=cut(run.rooms),
        flows_w=cut(run.flows_w),
    )
