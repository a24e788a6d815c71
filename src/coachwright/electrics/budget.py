"""The day's budget, and how many days the bank lasts: steady estimates."""

from dataclasses import dataclass, replace

from coachwright.electrics.model import Independence
from coachwright.model.working import Given, Working

UNKNOWN = Independence(
    days_d=None,
    low_d=None,
    high_d=None,
    without_sun_d=None,
    ends_at_season=False,
    working=None,
    without_sun_working=None,
)
"""Where nothing can be said."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Balance:
    """What comes in against what goes out on a typical day."""

    storage_loss_wh_per_day: float
    balance_wh_per_day: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class Stretch:
    """How long a full bank lasts against a steady drain."""

    days_d: float
    ends_at_season: bool


def driving_days_frac(*, parked_d: float) -> float:
    """Return the share of days with driving.

    Parameters
    ----------
    parked_d
        Days parked between two driving days. [d]

    Notes
    -----
    1 / (parked + 1): so many days parked, then one that is driven.

    Examples
    --------
    >>> driving_days_frac(parked_d=3)
    0.25
    """
    return 1.0 / (parked_d + 1.0)


def event_energy_wh_per_day(
    *, power_w: float, hours_h: float, room_wh: float, share_frac: float
) -> float:
    """Return what charging on some of the days brings, averaged over all [Wh/day].

    Parameters
    ----------
    power_w
        Into the bank. [W]
    hours_h
        On a day when it happens. [h]
    room_wh
        The most that the bank and that day's use can take. [Wh]
    share_frac
        Share of the days when it happens.

    Notes
    -----
    E = s · min(P · h, room).

    Examples
    --------
    >>> event_energy_wh_per_day(power_w=500, hours_h=2, room_wh=5000, share_frac=0.25)
    250.0
    """
    return share_frac * min(power_w * hours_h, room_wh)


def balance(
    *,
    sun_wh_per_day: float,
    driving_wh_per_day: float,
    hookup_wh_per_day: float,
    round_trip_frac: float,
    use_wh_per_day: float,
) -> Balance:
    """Return the day's balance.

    Parameters
    ----------
    sun_wh_per_day
        Into the bank. [Wh/day]
    driving_wh_per_day
        Into the bank. [Wh/day]
    hookup_wh_per_day
        Into the bank. [Wh/day]
    round_trip_frac
        Energy out of the bank over energy in.
    use_wh_per_day
        Out of the bank. [Wh/day]

    Returns
    -------
    Balance
        Loss in storage and balance, with the working.

    Notes
    -----
    B = (E_sun + E_drive + E_shore) · ζ − E_use.  All that is charged is counted as stored first,
    though some is used at once: a little low, never high.

    References
    ----------
    [battery-voltages]

    Examples
    --------
    >>> balance(sun_wh_per_day=1000, driving_wh_per_day=200, hookup_wh_per_day=0,
    ...     round_trip_frac=0.95, use_wh_per_day=1500).balance_wh_per_day
    -360.0
    """
    charged = sun_wh_per_day + driving_wh_per_day + hookup_wh_per_day
    loss = charged * (1.0 - round_trip_frac)
    result = charged - loss - use_wh_per_day
    return Balance(
        storage_loss_wh_per_day=loss,
        balance_wh_per_day=result,
        working=Working(
            expression="B = (E_sun + E_drive + E_shore)·ζ − E_use",
            given=(
                _energy("E_sun", "sun, averaged over the stay pattern", sun_wh_per_day),
                _energy("E_drive", "driving, averaged over the stay pattern", driving_wh_per_day),
                _energy("E_shore", "hook-up, averaged over the stay pattern", hookup_wh_per_day),
                Given(
                    symbol="ζ",
                    meaning="energy out of the bank over energy in",
                    value=round_trip_frac,
                    unit="frac",
                    source="battery",
                ),
                _energy("E_use", "out of the bank", use_wh_per_day),
            ),
            result=result,
            unit="Wh/day",
            references=("battery-voltages",),
            note="Steady estimate: the most that each source can bring on a typical day.",
        ),
    )


def _energy(symbol: str, meaning: str, energy_wh_per_day: float) -> Given:
    return Given(symbol=symbol, meaning=meaning, value=energy_wh_per_day, unit="Wh/day")


def stretch(*, usable_wh: float, drain_wh_per_day: float, season_d: float) -> Stretch:
    """Return how long a full bank lasts against a steady drain.

    Parameters
    ----------
    usable_wh
        Of the full bank. [Wh]
    drain_wh_per_day
        Use less what comes in; none or below where the sun covers the use. [Wh/day]
    season_d
        Where the answer ends. [d]

    Returns
    -------
    Stretch
        Days, and whether the season ended them.

    Notes
    -----
    N = E_usable / drain, at most the half-year that the sun figure holds for.

    References
    ----------
    [off-grid-examples]

    Examples
    --------
    >>> round(stretch(usable_wh=1843.2, drain_wh_per_day=1500, season_d=182).days_d, 4)
    1.2288
    """
    if drain_wh_per_day * season_d <= usable_wh:
        return Stretch(days_d=season_d, ends_at_season=True)
    return Stretch(days_d=usable_wh / drain_wh_per_day, ends_at_season=False)


def independence(
    *,
    usable_wh: float,
    use_wh_per_day: float,
    sun_wh_per_day: float | None,
    round_trip_frac: float,
    sun_tolerance_frac: float,
    load_tolerance_frac: float,
    season_d: float,
) -> Independence:
    """Return the days parked without shore power or driving.

    Parameters
    ----------
    usable_wh
        Of the full bank at its temperature. [Wh]
    use_wh_per_day
        Out of the bank. [Wh/day]
    sun_wh_per_day
        Into the bank on a parked day; None where it is not known. [Wh/day]
    round_trip_frac
        Energy out of the bank over energy in.
    sun_tolerance_frac
        Half-width of the sun's tolerance.
    load_tolerance_frac
        Half-width of the use's tolerance.
    season_d
        Where the answer ends. [d]

    Returns
    -------
    Independence
        With and without sun, with bounds and the working.

    Notes
    -----
    N = E_usable / (E_use − E_sun ζ).  The bounds take both tolerances at their worst together:
    use high and sun low, and the other way round.  A steady estimate: a run of dull days is
    inside the tolerance only as far as that goes.

    References
    ----------
    [off-grid-examples], [shop-practice-electrics]

    Examples
    --------
    >>> found = independence(usable_wh=2048, use_wh_per_day=1500, sun_wh_per_day=1000,
    ...     round_trip_frac=1.0, sun_tolerance_frac=0.25, load_tolerance_frac=0.15, season_d=182)
    >>> round(found.days_d, 3), round(found.low_d, 3), round(found.without_sun_d, 3)
    (4.096, 2.101, 1.365)
    """

    def days(use_factor: float, sun_factor: float) -> Stretch:
        sun = 0.0 if sun_wh_per_day is None else sun_wh_per_day
        drain = use_wh_per_day * use_factor - sun * sun_factor * round_trip_frac
        return stretch(usable_wh=usable_wh, drain_wh_per_day=drain, season_d=season_d)

    def working(sun_wh_per_day: float, days_d: float) -> Working:
        return _days_working(
            usable_wh=usable_wh,
            use_wh_per_day=use_wh_per_day,
            sun_wh_per_day=sun_wh_per_day,
            round_trip_frac=round_trip_frac,
            season_d=season_d,
            days_d=days_d,
        )

    without = days(1.0, 0.0)
    dark = working(0.0, without.days_d)
    if sun_wh_per_day is None:
        return replace(UNKNOWN, without_sun_d=without.days_d, without_sun_working=dark)
    best = days(1.0, 1.0)
    return Independence(
        days_d=best.days_d,
        low_d=days(1.0 + load_tolerance_frac, 1.0 - sun_tolerance_frac).days_d,
        high_d=days(1.0 - load_tolerance_frac, 1.0 + sun_tolerance_frac).days_d,
        without_sun_d=without.days_d,
        ends_at_season=best.ends_at_season,
        without_sun_working=dark,
        working=replace(
            working(sun_wh_per_day, best.days_d),
            note=(
                f"Steady estimate; bounds for sun ±{sun_tolerance_frac:.0%} and use "
                f"±{load_tolerance_frac:.0%} at their worst together (practice)."
            ),
        ),
    )


def _days_working(
    *,
    usable_wh: float,
    use_wh_per_day: float,
    sun_wh_per_day: float,
    round_trip_frac: float,
    season_d: float,
    days_d: float,
) -> Working:
    return Working(
        expression="N = E_usable / (E_use − E_sun·ζ), at most N_season",
        given=(
            Given(symbol="E_usable", meaning="full bank", value=usable_wh, unit="Wh"),
            _energy("E_use", "out of the bank", use_wh_per_day),
            _energy("E_sun", "into the bank on a parked day", sun_wh_per_day),
            Given(
                symbol="ζ",
                meaning="energy out of the bank over energy in",
                value=round_trip_frac,
                unit="frac",
                source="battery",
            ),
            Given(
                symbol="N_season",
                meaning="half-year that the sun figure holds for",
                value=season_d,
                unit="d",
                source="common practice",
            ),
        ),
        result=days_d,
        unit="d",
        references=("off-grid-examples", "shop-practice-electrics"),
        note="Steady estimate.",
    )
