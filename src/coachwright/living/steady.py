"""Steady heat: what the body needs at a temperature, and what a heater reaches for good."""

from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working

AIR_HEAT_WH_PER_M3_K = 1.2 * 1005 / 3600
"""Of air at sea level and 20 degC. [energy-balance]"""


@dataclass(frozen=True, kw_only=True, slots=True)
class Need:
    """Heat that keeps a body warm.

    Attributes
    ----------
    need_w, need_high_w
        With the mean loss, and with the greatest that the ribs may cause.
    """

    need_w: float
    need_high_w: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class Reached:
    """Where it stays in the end with the heater at full."""

    inside_degc: float
    inside_low_degc: float
    working: Working


def heat_need(
    *,
    ua_w_per_k: float,
    ua_high_w_per_k: float,
    fresh_m3_per_h: float,
    inside_degc: float,
    outside_degc: float,
) -> Need:
    """Return the heat that a body takes at steady temperatures, with nobody inside.

    Parameters
    ----------
    ua_w_per_k, ua_high_w_per_k
        Loss through the body and its leaks, and its upper bound. [W/K]
    fresh_m3_per_h
        Fresh air kept open besides the leaks. [m3/h]
    inside_degc, outside_degc
        Temperatures; no heat is needed where it is warmer outside. [degC]

    Notes
    -----
    Q = (UA + c V) (T_i − T_e), c = 0.335 Wh/(m3 K).  Gains from people, sun and appliances are
    not counted: on the coldest night they may all be missing.

    References
    ----------
    [energy-balance]

    Examples
    --------
    >>> made = heat_need(
    ...     ua_w_per_k=50, ua_high_w_per_k=60, fresh_m3_per_h=30, inside_degc=20, outside_degc=-12
    ... )
    >>> round(made.need_w), round(made.need_high_w)
    (1922, 2242)
    """
    rise_k = max(inside_degc - outside_degc, 0.0)
    air_w_per_k = AIR_HEAT_WH_PER_M3_K * fresh_m3_per_h
    need_w = (ua_w_per_k + air_w_per_k) * rise_k
    return Need(
        need_w=need_w,
        need_high_w=(ua_high_w_per_k + air_w_per_k) * rise_k,
        working=Working(
            expression="Q = (UA + c · V) · (T_i − T_e)",
            given=(
                _given("UA", "loss through the body and its leaks", ua_w_per_k, "W/K"),
                _given("c", "heat of air", AIR_HEAT_WH_PER_M3_K, "Wh/m3/K"),
                _given("V", "fresh air kept open", fresh_m3_per_h, "m3/h"),
                _given("T_i", "inside, as wanted", inside_degc, "degC"),
                _given("T_e", "outside", outside_degc, "degC"),
            ),
            result=need_w,
            unit="W",
            references=("energy-balance",),
            note="steady, nobody inside and no sun; the ribs make the loss a range",
        ),
    )


def reached(
    *,
    ua_w_per_k: float,
    ua_high_w_per_k: float,
    fresh_m3_per_h: float,
    heater_w: float,
    outside_degc: float,
) -> Reached:
    """Return where the temperature inside stays with the heater at full.

    Parameters
    ----------
    ua_w_per_k, ua_high_w_per_k
        Loss through the body and its leaks, and its upper bound. [W/K]
    fresh_m3_per_h
        Fresh air kept open besides the leaks. [m3/h]
    heater_w
        Heat into the air. [W]
    outside_degc
        Temperature. [degC]

    Raises
    ------
    OutOfRange
        Where nothing is lost, so that it would never end.

    Notes
    -----
    T_i = T_e + P / (UA + c V).  A thermostat would end it earlier.

    References
    ----------
    [energy-balance]

    Examples
    --------
    >>> made = reached(
    ...     ua_w_per_k=50, ua_high_w_per_k=60, fresh_m3_per_h=0, heater_w=2000, outside_degc=-15
    ... )
    >>> made.inside_degc, round(made.inside_low_degc, 1)
    (25.0, 18.3)
    """
    air_w_per_k = AIR_HEAT_WH_PER_M3_K * fresh_m3_per_h
    if ua_w_per_k + air_w_per_k <= 0.0:
        raise OutOfRange("ua_w_per_k", ua_w_per_k, "more than 0")
    inside_degc = outside_degc + heater_w / (ua_w_per_k + air_w_per_k)
    return Reached(
        inside_degc=inside_degc,
        inside_low_degc=outside_degc + heater_w / (ua_high_w_per_k + air_w_per_k),
        working=Working(
            expression="T_i = T_e + P / (UA + c · V)",
            given=(
                _given("T_e", "outside", outside_degc, "degC"),
                _given("P", "heat of the heater at full", heater_w, "W"),
                _given("UA", "loss through the body and its leaks", ua_w_per_k, "W/K"),
                _given("c", "heat of air", AIR_HEAT_WH_PER_M3_K, "Wh/m3/K"),
                _given("V", "fresh air kept open", fresh_m3_per_h, "m3/h"),
            ),
            result=inside_degc,
            unit="degC",
            references=("energy-balance", "en-1646-1-heating"),
            note="steady, computed; the standard's grade is told by a measured test",
        ),
    )


def _given(symbol: str, meaning: str, value: float, unit: str) -> Given:
    return Given(symbol=symbol, meaning=meaning, value=value, unit=unit)
