"""What the speedometer shows after a change of tyres, and the band that it must stay in."""

from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working
from coachwright.units import told

_SHOWN_AT_100 = f"shown at a true {told(100, 'km/h')} on the placard tyre"
_EXACT_UNLESS_STATED = (
    "the speedometer is taken as exact on the placard tyre where nothing is stated"
)


@dataclass(frozen=True, kw_only=True, slots=True)
class TrueSpeed:
    """The true speed at one reading, with its working."""

    shown_km_per_h: float
    true_km_per_h: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class ShownSpeed:
    """The reading at one true speed, with its working."""

    true_km_per_h: float
    shown_km_per_h: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class SpeedometerCheck:
    """A reading against the band.

    Attributes
    ----------
    excess_km_per_h
        Shown less true speed.
    most_excess_km_per_h
        The largest excess allowed at that true speed.
    most_shown_km_per_h
        The highest reading allowed at that true speed.
    """

    shown_km_per_h: float
    true_km_per_h: float
    excess_km_per_h: float
    most_excess_km_per_h: float
    most_shown_km_per_h: float
    reads_low: bool
    reads_high: bool
    working: Working

    @property
    def passes(self) -> bool:
        """Whether the reading lies in the band."""
        return not (self.reads_low or self.reads_high)


def true_speed(
    *, shown_km_per_h: float, diameter_ratio: float, shown_at_100_km_per_h: float = 100.0
) -> TrueSpeed:
    """Return the true speed at one reading after a change of tyres.

    Parameters
    ----------
    shown_km_per_h
        What the speedometer shows. [km/h]
    diameter_ratio
        New over old tyre diameter. [1]
    shown_at_100_km_per_h
        What it showed on the old tyre at a true 100 km/h; 100 where it was exact. [km/h]

    Returns
    -------
    TrueSpeed
        With its working.

    Raises
    ------
    OutOfRange
        Where the ratio or a speed is not positive.

    Notes
    -----
    V2 = V1 · q · 100 / V100.  The reading is taken as proportional to the wheel's turning.

    References
    ----------
    [un-r39]

    Examples
    --------
    >>> speed = true_speed(
    ...     shown_km_per_h=103, diameter_ratio=773.9 / 743.9, shown_at_100_km_per_h=103
    ... )
    >>> round(speed.true_km_per_h, 2)
    104.03
    """
    for name, value in (
        ("shown_km_per_h", shown_km_per_h),
        ("diameter_ratio", diameter_ratio),
        ("shown_at_100_km_per_h", shown_at_100_km_per_h),
    ):
        if value <= 0:
            raise OutOfRange(name, value, "more than 0")
    true = shown_km_per_h * diameter_ratio * (100.0 / shown_at_100_km_per_h)
    return TrueSpeed(
        shown_km_per_h=shown_km_per_h,
        true_km_per_h=true,
        working=Working(
            expression="V2 = V1·q·100/V100",
            given=(
                Given(symbol="V1", meaning="shown", value=shown_km_per_h, unit="km/h"),
                Given(symbol="q", meaning="new over old diameter", value=diameter_ratio, unit="1"),
                Given(
                    symbol="V100", meaning=_SHOWN_AT_100, value=shown_at_100_km_per_h, unit="km/h"
                ),
            ),
            result=true,
            unit="km/h",
            references=("un-r39",),
            note=_EXACT_UNLESS_STATED,
        ),
    )


def shown_speed(
    *, true_km_per_h: float, diameter_ratio: float, shown_at_100_km_per_h: float = 100.0
) -> ShownSpeed:
    """Return the reading at one true speed after a change of tyres; the inverse of `true_speed`.

    Parameters
    ----------
    true_km_per_h
        How fast the vehicle really goes. [km/h]
    diameter_ratio
        New over old tyre diameter. [1]
    shown_at_100_km_per_h
        What it showed on the old tyre at a true 100 km/h; 100 where it was exact. [km/h]

    Returns
    -------
    ShownSpeed
        With its working.

    Raises
    ------
    OutOfRange
        Where the ratio or a speed is not positive.

    Notes
    -----
    V1 = V2 / q · V100 / 100.  The reading is taken as proportional to the wheel's turning.

    References
    ----------
    [un-r39]

    Examples
    --------
    >>> shown_speed(true_km_per_h=100, diameter_ratio=1.25).shown_km_per_h
    80.0
    """
    for name, value in (
        ("true_km_per_h", true_km_per_h),
        ("diameter_ratio", diameter_ratio),
        ("shown_at_100_km_per_h", shown_at_100_km_per_h),
    ):
        if value <= 0:
            raise OutOfRange(name, value, "more than 0")
    shown = true_km_per_h / diameter_ratio * (shown_at_100_km_per_h / 100.0)
    return ShownSpeed(
        true_km_per_h=true_km_per_h,
        shown_km_per_h=shown,
        working=Working(
            expression="V1 = V2/q·V100/100",
            given=(
                Given(symbol="V2", meaning="true speed", value=true_km_per_h, unit="km/h"),
                Given(symbol="q", meaning="new over old diameter", value=diameter_ratio, unit="1"),
                Given(
                    symbol="V100", meaning=_SHOWN_AT_100, value=shown_at_100_km_per_h, unit="km/h"
                ),
            ),
            result=shown,
            unit="km/h",
            references=("un-r39",),
            note=_EXACT_UNLESS_STATED,
        ),
    )


def speedometer_check(
    *, shown_km_per_h: float, true_km_per_h: float, share_frac: float, constant_km_per_h: float
) -> SpeedometerCheck:
    """Return how a reading stands in the band between the true speed and its upper limit.

    Parameters
    ----------
    shown_km_per_h
        Shown speed V1. [km/h]
    true_km_per_h
        True speed V2. [km/h]
    share_frac
        Share of the true speed that may be shown too much. [frac]
    constant_km_per_h
        Speed that may be shown too much beside the share. [km/h]

    Returns
    -------
    SpeedometerCheck
        The excess, the largest excess allowed, and on which side it fails, with the working.

    Raises
    ------
    OutOfRange
        Where a speed is not positive.

    Notes
    -----
    0 <= V1 - V2 <= 0.1·V2 + 4 km/h.  A speedometer may never show less than the true speed.

    References
    ----------
    [un-r39]

    Examples
    --------
    >>> check = speedometer_check(
    ...     shown_km_per_h=93, true_km_per_h=80, share_frac=0.1, constant_km_per_h=4
    ... )
    >>> check.passes, check.most_shown_km_per_h
    (False, 92.0)
    """
    for name, value in (("shown_km_per_h", shown_km_per_h), ("true_km_per_h", true_km_per_h)):
        if value <= 0:
            raise OutOfRange(name, value, "more than 0")
    excess = shown_km_per_h - true_km_per_h
    most = share_frac * true_km_per_h + constant_km_per_h
    return SpeedometerCheck(
        shown_km_per_h=shown_km_per_h,
        true_km_per_h=true_km_per_h,
        excess_km_per_h=excess,
        most_excess_km_per_h=most,
        most_shown_km_per_h=true_km_per_h + most,
        reads_low=excess < 0,
        reads_high=excess > most,
        working=Working(
            expression="V1 - V2, to lie between 0 and p·V2 + c",
            given=(
                Given(symbol="V1", meaning="shown speed", value=shown_km_per_h, unit="km/h"),
                Given(symbol="V2", meaning="true speed", value=true_km_per_h, unit="km/h"),
                Given(symbol="p", meaning="share", value=share_frac, unit="frac"),
                Given(symbol="c", meaning="constant", value=constant_km_per_h, unit="km/h"),
            ),
            result=excess,
            unit="km/h",
            references=("un-r39",),
        ),
    )
