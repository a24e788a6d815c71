"""Days of the typical year by their dates."""

from coachwright.climate.model import DAYS, MONTH_DAYS, MONTH_OF_DAY
from coachwright.drawing.chart import MONTHS


def date_words(day: int) -> str:
    """Return a day of the year, from 0, as a date; days beyond the year begin it again.

    Examples
    --------
    >>> date_words(0), date_words(31), date_words(365)
    ('1 Jan', '1 Feb', '1 Jan')
    """
    within = day % DAYS
    month = int(MONTH_OF_DAY[within])
    return f"{within - sum(MONTH_DAYS[:month]) + 1} {MONTHS[month]}"
