"""What a pump delivers through a pipe, and what power that takes."""

from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working
from coachwright.water.pipe import pipe_loss, static_kpa

_STEPS = 50


@dataclass(frozen=True, kw_only=True, slots=True)
class OperatingPoint:
    """Where the pump's line and the pipe's curve meet."""

    flow_l_per_min: float
    pressure_kpa: float
    static_kpa: float
    loss_kpa: float
    speed_m_per_s: float
    working: Working


def pump_pressure_kpa(
    *, flow_l_per_min: float, open_flow_l_per_min: float, cut_out_kpa: float
) -> float:
    """Return the pressure at a pump's outlet [kPa].

    Parameters
    ----------
    flow_l_per_min
        Flow. [L/min]
    open_flow_l_per_min
        Flow against no pressure. [L/min]
    cut_out_kpa
        Pressure at which it stops. [kPa]

    Returns
    -------
    float
        Pressure on the straight line between the two.

    Raises
    ------
    OutOfRange
        Where the open flow is not above 0.

    Notes
    -----
    p = p0 · (1 - Q/Q0).  A straight line is what two figures of a data sheet allow; a maker's
    curve is better where there is one.

    References
    ----------
    [shop-practice-water]

    Examples
    --------
    >>> pump_pressure_kpa(flow_l_per_min=5, open_flow_l_per_min=10, cut_out_kpa=240)
    120.0
    """
    if open_flow_l_per_min <= 0:
        raise OutOfRange("open_flow_l_per_min", open_flow_l_per_min, "more than 0 L/min")
    return cut_out_kpa * (1 - flow_l_per_min / open_flow_l_per_min)


def operating_point(
    *,
    open_flow_l_per_min: float,
    cut_out_kpa: float,
    rise_mm: float,
    length_mm: float,
    bore_mm: float,
) -> OperatingPoint:
    """Return the flow that a pump brings through one run of pipe.

    Parameters
    ----------
    open_flow_l_per_min
        Of the pump against no pressure. [L/min]
    cut_out_kpa
        Pressure at which the pump stops. [kPa]
    rise_mm
        Outlet above the pump. [mm]
    length_mm
        Of the run. [mm]
    bore_mm
        Of the run. [mm]

    Returns
    -------
    OperatingPoint
        Flow and pressures; no flow where the pump cannot lift the water that high.

    Notes
    -----
    p0 · (1 - Q/Q0) = ρ·g·h + f · (L/D) · ρ · v²/2, solved by halving.  One outlet open, the tap
    wide open and without loss of its own, no bends or valves: the real flow is smaller.  Where
    the outlet is below the pump the flow is held to the open flow.

    References
    ----------
    [colebrook-1939], [shop-practice-water]

    Examples
    --------
    >>> point = operating_point(
    ...     open_flow_l_per_min=10, cut_out_kpa=240, rise_mm=500, length_mm=6000, bore_mm=10
    ... )
    >>> round(point.flow_l_per_min, 1)
    8.7
    """
    lift_kpa = static_kpa(rise_mm=rise_mm)

    def spare_kpa(flow_l_per_min: float) -> float:
        pressure_kpa = pump_pressure_kpa(
            flow_l_per_min=flow_l_per_min,
            open_flow_l_per_min=open_flow_l_per_min,
            cut_out_kpa=cut_out_kpa,
        )
        loss = pipe_loss(flow_l_per_min=flow_l_per_min, bore_mm=bore_mm, length_mm=length_mm)
        return pressure_kpa - lift_kpa - loss.loss_kpa

    low, high = 0.0, open_flow_l_per_min
    if spare_kpa(high) >= 0:
        low = high
    for _ in range(_STEPS):
        middle = (low + high) / 2
        if spare_kpa(middle) > 0:
            low = middle
        else:
            high = middle
    return _point(
        flow_l_per_min=low,
        open_flow_l_per_min=open_flow_l_per_min,
        cut_out_kpa=cut_out_kpa,
        rise_mm=rise_mm,
        length_mm=length_mm,
        bore_mm=bore_mm,
    )


def _point(
    *,
    flow_l_per_min: float,
    open_flow_l_per_min: float,
    cut_out_kpa: float,
    rise_mm: float,
    length_mm: float,
    bore_mm: float,
) -> OperatingPoint:
    loss = pipe_loss(flow_l_per_min=flow_l_per_min, bore_mm=bore_mm, length_mm=length_mm)
    lift_kpa = static_kpa(rise_mm=rise_mm)
    working = Working(
        expression="Q where p0·(1 - Q/Q0) = ρ·g·h + f·(L/D)·ρ·v²/2",
        given=(
            Given(symbol="p0", meaning="pump's cut-out", value=cut_out_kpa, unit="kPa"),
            Given(
                symbol="Q0", meaning="pump's open flow", value=open_flow_l_per_min, unit="L/min"
            ),
            Given(symbol="h", meaning="outlet above the pump", value=rise_mm, unit="mm"),
            Given(symbol="L", meaning="length of the run", value=length_mm, unit="mm"),
            Given(symbol="D", meaning="bore of the run", value=bore_mm, unit="mm"),
            Given(
                symbol="f",
                meaning="friction factor by Colebrook",
                value=loss.friction_factor,
                unit="1",
            ),
            Given(symbol="v", meaning="speed in the run", value=loss.speed_m_per_s, unit="m/s"),
        ),
        result=flow_l_per_min,
        unit="L/min",
        references=("colebrook-1939", "shop-practice-water"),
        note="ρ 998.2 kg/m3; one outlet open; bends, valves and the tap itself not counted, "
        "so the real flow is smaller",
    )
    return OperatingPoint(
        flow_l_per_min=flow_l_per_min,
        pressure_kpa=lift_kpa + loss.loss_kpa,
        static_kpa=lift_kpa,
        loss_kpa=loss.loss_kpa,
        speed_m_per_s=loss.speed_m_per_s,
        working=working,
    )


def pump_power_w(*, flow_l_per_min: float, pressure_kpa: float, efficiency_frac: float) -> float:
    """Return the electrical power of a pump [W].

    Parameters
    ----------
    flow_l_per_min
        Flow. [L/min]
    pressure_kpa
        Pressure at its outlet. [kPa]
    efficiency_frac
        Hydraulic over electrical power.

    Returns
    -------
    float
        Q · Δp / η.

    Raises
    ------
    OutOfRange
        Where the efficiency is not within 0 to 1.

    Notes
    -----
    Pressure at the inlet taken as that of the air.

    References
    ----------
    [energy-balance]

    Examples
    --------
    >>> round(pump_power_w(flow_l_per_min=10, pressure_kpa=250, efficiency_frac=0.35))
    119
    """
    if not 0 < efficiency_frac <= 1:
        raise OutOfRange("efficiency_frac", efficiency_frac, "above 0, up to 1")
    return flow_l_per_min * pressure_kpa / 60 / efficiency_frac


def best_power_w(
    *, open_flow_l_per_min: float, cut_out_kpa: float, efficiency_frac: float
) -> float:
    """Return the electrical power at the best point of a pump's straight line [W].

    Parameters
    ----------
    open_flow_l_per_min
        Flow against no pressure. [L/min]
    cut_out_kpa
        Pressure at which it stops. [kPa]
    efficiency_frac
        Hydraulic over electrical power.

    Returns
    -------
    float
        Power at half the open flow and half the cut-out, where Q · Δp is largest.

    Notes
    -----
    P = Q0/2 · p0/2 / η on the straight line of `pump_pressure_kpa`.

    References
    ----------
    [energy-balance]

    Examples
    --------
    >>> best_power_w(open_flow_l_per_min=12, cut_out_kpa=250, efficiency_frac=0.5)
    25.0
    """
    return pump_power_w(
        flow_l_per_min=open_flow_l_per_min / 2,
        pressure_kpa=cut_out_kpa / 2,
        efficiency_frac=efficiency_frac,
    )
