"""Open-circuit voltage of lithium iron phosphate cells."""

from bisect import bisect_right
from functools import cache

from coachwright import reference
from coachwright.errors import OutOfRange


def open_circuit_v(*, charge_frac: float, cell_degc: float, cells: int = 1) -> float:
    """Return the open-circuit voltage of lithium iron phosphate cells in series [V].

    Parameters
    ----------
    charge_frac
        State of charge.
    cell_degc
        Temperature, from −10 to 45. [degC]
    cells
        In series.

    Raises
    ------
    OutOfRange
        Where charge or temperature is outside the table.

    Notes
    -----
    Bilinear in a table by 5 % and seven temperatures.  Between 20 and 90 % the voltage moves by
    75 mV a cell: it says little about the charge.

    References
    ----------
    [lfp-cell-ocv]

    Examples
    --------
    >>> round(open_circuit_v(charge_frac=0.525, cell_degc=20), 5)
    3.29025
    """
    temperatures, rows = _open_circuit_v()
    if not 0.0 <= charge_frac <= 1.0:
        raise OutOfRange("charge_frac", charge_frac, "from 0 to 1")
    if not temperatures[0] <= cell_degc <= temperatures[-1]:
        raise OutOfRange("cell_degc", cell_degc, f"{temperatures[0]:g} to {temperatures[-1]:g}")
    shares = [share for share, _ in rows]
    row = min(max(bisect_right(shares, charge_frac), 1), len(rows) - 1)
    column = min(max(bisect_right(temperatures, cell_degc), 1), len(temperatures) - 1)
    (low, low_row), (high, high_row) = rows[row - 1], rows[row]
    part = (charge_frac - low) / (high - low)
    cold, warm = temperatures[column - 1], temperatures[column]
    across = (cell_degc - cold) / (warm - cold)
    at_cold = low_row[column - 1] + part * (high_row[column - 1] - low_row[column - 1])
    at_warm = low_row[column] + part * (high_row[column] - low_row[column])
    return cells * (at_cold + across * (at_warm - at_cold))


@cache
def _open_circuit_v() -> tuple[list[float], list[tuple[float, list[float]]]]:
    table = reference.table("lfp_ocv")
    head, tail = "cell_v_at_", "degc"
    columns = [name for name in table[0] if name.startswith(head)]
    temperatures = [float(name.removeprefix(head).removesuffix(tail)) for name in columns]
    rows = [
        (float(row["soc_percent"]) / 100.0, [float(row[name]) for name in columns])
        for row in table
    ]
    return temperatures, sorted(rows)
