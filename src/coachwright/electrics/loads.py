"""Loads: what a day takes out of the battery."""

from coachwright.electrics.model import DailyUse
from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working

DAY_H = 24.0
"""Hours of a day. [h]"""


def mode_energy_wh_per_day(*, draw_w: float, duty_frac: float, use_h_per_day: float) -> float:
    """Return the energy of one mode of a load [Wh/day].

    Parameters
    ----------
    draw_w
        Power while it draws. [W]
    duty_frac
        Share of the time in use that it really draws.
    use_h_per_day
        Hours in use. [h/day]

    Notes
    -----
    E = P · d · h, at the load's own terminals.

    References
    ----------
    [off-grid-examples]

    Examples
    --------
    >>> mode_energy_wh_per_day(draw_w=75, duty_frac=1.0, use_h_per_day=12)
    900.0
    """
    return draw_w * duty_frac * use_h_per_day


def daily_use(
    *,
    dc_wh_per_day: float,
    ac_wh_per_day: float,
    shore_only_wh_per_day: float,
    efficiency_frac: float,
    inverter_standby_wh_per_day: float,
) -> DailyUse:
    """Return what a day takes out of the battery.

    Parameters
    ----------
    dc_wh_per_day
        Direct-current loads, standby included. [Wh/day]
    ac_wh_per_day
        Loads behind the inverter, at their own terminals. [Wh/day]
    shore_only_wh_per_day
        Loads that run on shore power alone; carried along, not added. [Wh/day]
    efficiency_frac
        Of the inverter at the usual load.
    inverter_standby_wh_per_day
        Of inverters that are on with nothing connected. [Wh/day]

    Returns
    -------
    DailyUse
        The shares and their sum, with its working.

    Raises
    ------
    OutOfRange
        Where the efficiency is not above 0 and at most 1.

    Notes
    -----
    E = E_dc + E_ac / η + E_standby.  The energy behind the inverter is divided by the efficiency,
    not multiplied by one plus the loss.  Losses in the wiring are not counted.

    References
    ----------
    [off-grid-examples], [stand-alone-article]

    Examples
    --------
    >>> day = daily_use(dc_wh_per_day=400, ac_wh_per_day=900, shore_only_wh_per_day=0,
    ...     efficiency_frac=0.9, inverter_standby_wh_per_day=240)
    >>> round(day.total_wh_per_day), round(day.inverter_loss_wh_per_day)
    (1640, 100)
    """
    if not 0.0 < efficiency_frac <= 1.0:
        raise OutOfRange("efficiency_frac", efficiency_frac, "above 0 and at most 1")
    loss = ac_wh_per_day / efficiency_frac - ac_wh_per_day
    total = dc_wh_per_day + ac_wh_per_day + loss + inverter_standby_wh_per_day
    return DailyUse(
        dc_wh_per_day=dc_wh_per_day,
        ac_wh_per_day=ac_wh_per_day,
        inverter_loss_wh_per_day=loss,
        inverter_standby_wh_per_day=inverter_standby_wh_per_day,
        total_wh_per_day=total,
        shore_only_wh_per_day=shore_only_wh_per_day,
        working=_use_working(
            dc_wh_per_day=dc_wh_per_day,
            ac_wh_per_day=ac_wh_per_day,
            efficiency_frac=efficiency_frac,
            standby_wh_per_day=inverter_standby_wh_per_day,
            total_wh_per_day=total,
        ),
    )


def _use_working(
    *,
    dc_wh_per_day: float,
    ac_wh_per_day: float,
    efficiency_frac: float,
    standby_wh_per_day: float,
    total_wh_per_day: float,
) -> Working:
    return Working(
        expression="E = E_dc + E_ac / η + E_standby",
        given=(
            Given(
                symbol="E_dc",
                meaning="direct-current loads: Σ draw × duty × hours",
                value=dc_wh_per_day,
                unit="Wh/day",
                source="parts' modes, habits",
            ),
            Given(
                symbol="E_ac",
                meaning="loads behind the inverter: Σ draw × duty × hours",
                value=ac_wh_per_day,
                unit="Wh/day",
                source="parts' modes, habits",
            ),
            Given(
                symbol="η",
                meaning="efficiency of the inverter at the usual load",
                value=efficiency_frac,
                unit="frac",
                source="inverter; 90 % where there is none",
            ),
            Given(
                symbol="E_standby",
                meaning="inverter on with nothing connected",
                value=standby_wh_per_day,
                unit="Wh/day",
                source="inverter",
            ),
        ),
        result=total_wh_per_day,
        unit="Wh/day",
        references=("off-grid-examples", "stand-alone-article"),
        note="Cable losses are not counted; loads that run on shore power alone are left out.",
    )
