"""Pressure lost along a pipe or hose."""

import math
from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.water.properties import (
    DENSITY_KG_PER_L,
    GRAVITY_M_PER_S2,
    PIPE_ROUGHNESS_MM,
    VISCOSITY_M2_PER_S,
)

LAMINAR_TO_RATIO = 2300.0
"""Reynolds number up to which the flow is taken as laminar [moody-1944]."""

_ENOUGH = 1e-12
_MOST_STEPS = 50


@dataclass(frozen=True, kw_only=True, slots=True)
class PipeLoss:
    """What a flow loses along a pipe."""

    speed_m_per_s: float
    reynolds_ratio: float
    friction_factor: float
    loss_kpa: float


@dataclass(frozen=True, kw_only=True, slots=True)
class HeadLoss:
    """Head and pressure lost along a pipe."""

    loss_m_head: float
    loss_kpa: float


def colebrook_friction_factor(*, reynolds_ratio: float, roughness_ratio: float) -> float:
    """Return the Darcy friction factor of a round pipe.

    Parameters
    ----------
    reynolds_ratio
        Reynolds number.
    roughness_ratio
        Roughness over bore.

    Returns
    -------
    float
        Darcy's f (four times Fanning's).

    Raises
    ------
    OutOfRange
        Where the Reynolds number is not above 0 or the roughness is not within 0 to 0.05.

    Notes
    -----
    Laminar up to Re 2300: f = 64 / Re.  Above: 1/√f = -2 · log10(ε/3.7 + 2.51/(Re·√f))
    (Colebrook 1939), solved by Newton's method.  Between 2300 and 4000 no formula is sure; this
    one is the larger, so the flow comes out on the small side.

    References
    ----------
    [colebrook-1939], [moody-1944]

    Examples
    --------
    >>> round(colebrook_friction_factor(reynolds_ratio=20722, roughness_ratio=1.47e-4), 5)
    0.02599
    """
    if reynolds_ratio <= 0:
        raise OutOfRange("reynolds_ratio", reynolds_ratio, "more than 0")
    if not 0 <= roughness_ratio <= 0.05:  # noqa: PLR2004 - range of Colebrook's experiments
        raise OutOfRange("roughness_ratio", roughness_ratio, "0 to 0.05")
    if reynolds_ratio <= LAMINAR_TO_RATIO:
        return 64.0 / reynolds_ratio
    x = -1.8 * math.log10((roughness_ratio / 3.7) ** 1.11 + 6.9 / reynolds_ratio)
    slope = 2.51 / reynolds_ratio
    for _ in range(_MOST_STEPS):
        inner = roughness_ratio / 3.7 + slope * x
        step = (x + 2 * math.log10(inner)) / (1 + 2 * slope / (inner * math.log(10)))
        x -= step
        if abs(step) < _ENOUGH:
            break
    return 1 / x**2


def pipe_loss(
    *,
    flow_l_per_min: float,
    bore_mm: float,
    length_mm: float,
    roughness_mm: float = PIPE_ROUGHNESS_MM,
) -> PipeLoss:
    """Return the pressure that water loses along a straight round pipe.

    Parameters
    ----------
    flow_l_per_min
        Flow. [L/min]
    bore_mm
        Inner diameter. [mm]
    length_mm
        Length. [mm]
    roughness_mm
        Of the wall. [mm]

    Returns
    -------
    PipeLoss
        Speed, Reynolds number, friction factor and loss.

    Raises
    ------
    OutOfRange
        Where bore or length is not above 0, or the flow is negative.

    Notes
    -----
    Δp = f · (L/D) · ρ · v²/2 (Darcy and Weisbach), f by `colebrook_friction_factor`.  Water at
    20 degC; straight pipe: bends, valves, filters and the tap itself are not counted.

    References
    ----------
    [colebrook-1939], [moody-1944], [coolprop-water]

    Examples
    --------
    >>> round(pipe_loss(flow_l_per_min=10, bore_mm=10.2, length_mm=8000).loss_kpa, 1)
    42.3
    """
    if bore_mm <= 0:
        raise OutOfRange("bore_mm", bore_mm, "more than 0 mm")
    if length_mm <= 0:
        raise OutOfRange("length_mm", length_mm, "more than 0 mm")
    if flow_l_per_min < 0:
        raise OutOfRange("flow_l_per_min", flow_l_per_min, "0 L/min or more")
    if flow_l_per_min == 0:
        return PipeLoss(speed_m_per_s=0.0, reynolds_ratio=0.0, friction_factor=0.0, loss_kpa=0.0)
    bore_m = bore_mm / 1000
    speed_m_per_s = flow_l_per_min / 60_000 / (math.pi / 4 * bore_m**2)
    reynolds_ratio = speed_m_per_s * bore_m / VISCOSITY_M2_PER_S
    friction_factor = colebrook_friction_factor(
        reynolds_ratio=reynolds_ratio, roughness_ratio=roughness_mm / bore_mm
    )
    # density in kg/L equals Mg/m3, which makes the pressure kPa
    loss_kpa = friction_factor * length_mm / bore_mm * DENSITY_KG_PER_L * speed_m_per_s**2 / 2
    return PipeLoss(
        speed_m_per_s=speed_m_per_s,
        reynolds_ratio=reynolds_ratio,
        friction_factor=friction_factor,
        loss_kpa=loss_kpa,
    )


def static_kpa(*, rise_mm: float) -> float:
    """Return the pressure that lifting water takes [kPa].

    Parameters
    ----------
    rise_mm
        Outlet above the pump; negative below it. [mm]

    Returns
    -------
    float
        ρ · g · h.

    Notes
    -----
    Water at 20 degC.

    References
    ----------
    [coolprop-water]

    Examples
    --------
    >>> round(static_kpa(rise_mm=1000), 2)
    9.79
    """
    return DENSITY_KG_PER_L * GRAVITY_M_PER_S2 * rise_mm / 1000


def hazen_williams(
    *, flow_l_per_min: float, bore_mm: float, length_mm: float, smoothness_factor: float = 150.0
) -> HeadLoss:
    """Return the head lost along a pipe by the formula of the pipe trades.

    Parameters
    ----------
    flow_l_per_min
        Flow. [L/min]
    bore_mm
        Inner diameter. [mm]
    length_mm
        Length. [mm]
    smoothness_factor
        The C of the formula: 150 for smooth plastic.

    Returns
    -------
    HeadLoss
        Head and pressure.

    Raises
    ------
    OutOfRange
        Where bore or smoothness is not above 0.

    Notes
    -----
    h = 10.67 · L · Q^1.852 / (C^1.852 · D^4.8704), SI.  Water near 15 degC, turbulent, made for
    pipes of 50 mm and more: here only a second opinion on `pipe_loss`.

    References
    ----------
    [hazen-williams]

    Examples
    --------
    >>> round(hazen_williams(flow_l_per_min=10, bore_mm=10.2, length_mm=8000).loss_m_head, 2)
    4.01
    """
    if bore_mm <= 0:
        raise OutOfRange("bore_mm", bore_mm, "more than 0 mm")
    if smoothness_factor <= 0:
        raise OutOfRange("smoothness_factor", smoothness_factor, "more than 0")
    flow_m3_per_s = flow_l_per_min / 60_000
    head = 10.67 * (length_mm / 1000) * flow_m3_per_s**1.852
    head /= smoothness_factor**1.852 * (bore_mm / 1000) ** 4.8704
    return HeadLoss(loss_m_head=head, loss_kpa=static_kpa(rise_mm=head * 1000))
