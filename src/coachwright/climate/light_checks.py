"""Hold the light of a file against a clear sky: wrong units, wrong clocks, wrong stamps."""

import numpy as np

from coachwright.climate.model import DAYS, Hours, SunPath
from coachwright.climate.raw import refused

LEAST_OF_CLEAR_FRAC, MOST_OF_CLEAR_FRAC = 0.3, 1.15
"""A year's light over that of clear skies, anywhere. [shop-practice-climate]"""
MOST_NIGHT_FRAC = 0.005
"""Share of the light that may fall while the sun is 6° under the horizon."""
NIGHT_DEG = -6.0
_SURELY_BETTER = 1.02
_HALF_DAY_H = 12


def check_light(*, ghi: Hours, clear: Hours, path: SunPath, file: str) -> None:
    """Refuse light that no sky gives at this place and hour.

    Parameters
    ----------
    ghi
        On a flat roof. [W/m2]
    clear
        The same under a clear sky. [W/m2]
    path
        Of the sun.
    file
        Name of the file, for faults.

    Raises
    ------
    WeatherFileError
        Where the yearly sum cannot be, or the day stands at another hour.

    Notes
    -----
    The clock is judged by the mean day: the shift at which it and the mean clear day overlap
    most must be none, or no better than none by a fiftieth of the correlation.
    """
    share = float(ghi.sum() / max(clear.sum(), 1.0))
    if not LEAST_OF_CLEAR_FRAC <= share <= MOST_OF_CLEAR_FRAC:
        raise refused(
            file,
            "light on the flat, the year's sum",
            f"{share:.3g} of what clear skies give",
            f"{LEAST_OF_CLEAR_FRAC:g} to {MOST_OF_CLEAR_FRAC:g} of it",
            "the unit or the latitude is another: correct it, or say the unit in a map",
        )
    day, clear_day = (each.reshape(DAYS, 24).mean(axis=0) for each in (ghi, clear))
    fit = {
        shift: float((np.roll(day, -shift) * clear_day).sum())
        for shift in range(1 - _HALF_DAY_H, _HALF_DAY_H + 1)
    }
    best = max(fit, key=lambda shift: fit[shift])
    night = float(ghi[path.altitude_deg < NIGHT_DEG].sum() / max(ghi.sum(), 1.0))
    if fit[best] > _SURELY_BETTER * fit[0] or (best != 0 and night > MOST_NIGHT_FRAC):
        late = "late" if best > 0 else "early"
        raise refused(
            file,
            "light on the flat, the mean day",
            f"{abs(best)} h {late}",
            "the day where the sun stands",
            "correct the zone, or say whether stamps begin or end the hour",
        )
