"""The bay of the inverter: the heat lost in it, and the vents through which that rises away."""

import math
from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.living.steady import AIR_HEAT_WH_PER_M3_K
from coachwright.model.working import Given, Working
from coachwright.reference import limit

_GRAVITY_M_PER_S2 = 9.81
_DISCHARGE_FRAC = 0.6
"""Of a sharp-edged opening; from memory. [stack-ventilation]"""
_MEAN_K = 303.0
"""Air round an inverter, 30 degC."""
_S_PER_H = 3600.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Vents:
    """What carries the heat of a bay away.

    Attributes
    ----------
    flow_m3_per_h
        Of air.
    vent_m2
        Low and high openings together, equally large.
    """

    loss_w: float
    flow_m3_per_h: float
    vent_m2: float
    working: Working


def bay_vents(*, continuous_w: float, efficiency_frac: float, rise_mm: float) -> Vents:
    """Return the loss of an inverter at its continuous power, and the vents that carry it away.

    Parameters
    ----------
    continuous_w
        Of the inverters in the bay together. [W]
    efficiency_frac
        At that power.
    rise_mm
        From the middle of the low opening to the middle of the high one. [mm]

    Raises
    ------
    OutOfRange
        Where efficiency or rise is not more than 0.

    Notes
    -----
    P = P_o (1 / η − 1); V = P / (c ΔT) with ΔT the rise allowed; by its own lift through two equal
    openings, V = C_d A / √2 · √(2 g h ΔT / T), so that both together have 2 A.  No fan, no heat
    through the cabinet's walls, so more than is needed.

    References
    ----------
    [energy-balance], [stack-ventilation]

    Examples
    --------
    >>> made = bay_vents(continuous_w=1800, efficiency_frac=0.9, rise_mm=500)
    >>> round(made.loss_w), round(made.flow_m3_per_h, 1), round(made.vent_m2, 3)
    (200, 59.7, 0.137)
    """
    if not 0.0 < efficiency_frac <= 1.0:
        raise OutOfRange("efficiency_frac", efficiency_frac, "more than 0, at most 1")
    if rise_mm <= 0.0:
        raise OutOfRange("rise_mm", rise_mm, "more than 0 mm")
    allowed_k = limit("living.bay-rise").value
    loss_w = continuous_w * (1.0 / efficiency_frac - 1.0)
    flow_m3_per_h = loss_w / (AIR_HEAT_WH_PER_M3_K * allowed_k)
    lift_m2_per_s2 = 2.0 * _GRAVITY_M_PER_S2 * rise_mm / 1000.0 * allowed_k / _MEAN_K
    each_m2 = flow_m3_per_h / _S_PER_H * math.sqrt(2.0)
    each_m2 /= _DISCHARGE_FRAC * math.sqrt(lift_m2_per_s2)
    return Vents(
        loss_w=loss_w,
        flow_m3_per_h=flow_m3_per_h,
        vent_m2=2.0 * each_m2,
        working=_working(continuous_w, efficiency_frac, rise_mm, allowed_k, 2.0 * each_m2),
    )


def _working(
    continuous_w: float, efficiency_frac: float, rise_mm: float, allowed_k: float, vent_m2: float
) -> Working:
    return Working(
        expression="A = 2 · √2 · V / (C · √(2 · g · h · ΔT / T)), V = P · (1 / η − 1) / (c · ΔT)",
        given=(
            _given("P", "continuous power of the inverters", continuous_w, "W"),
            _given("η", "efficiency", efficiency_frac, "frac"),
            _given("c", "heat of air", AIR_HEAT_WH_PER_M3_K, "Wh/m3/K"),
            _given("ΔT", "rise allowed", allowed_k, "K"),
            _given("h", "from the low opening to the high one", rise_mm, "mm"),
            _given("C", "share of a jet that fills an opening", _DISCHARGE_FRAC, "frac"),
            _given("g", "gravity, m/s2", _GRAVITY_M_PER_S2, "1"),
            _given("T", "air, in kelvin", _MEAN_K, "1"),
        ),
        result=vent_m2,
        unit="m2",
        references=("energy-balance", "stack-ventilation"),
        note="by its own lift, without a fan; V in m3/s",
    )


def _given(symbol: str, meaning: str, value: float, unit: str) -> Given:
    return Given(symbol=symbol, meaning=meaning, value=value, unit=unit)
