"""Efficiency of an inverter over its load: two published curves."""

from dataclasses import dataclass
from math import sqrt

from coachwright.errors import OutOfRange

PVWATTS_REFERENCE_FRAC = 0.9637
"""Efficiency of the inverter that the PVWatts curve was fitted to. [nrel-pvwatts]"""


@dataclass(frozen=True, kw_only=True, slots=True)
class SandiaCurve:
    """Coefficients of the Sandia inverter model, as its library spells them.

    Attributes
    ----------
    output_w, input_w, input_v, start_w
        Paco, Pdco, Vdco, Pso: rated output, the input and voltage for it, self-consumption.
    c0_per_w, c1_per_v, c2_per_v, c3_per_v
        Curvature, and how input, self-consumption and curvature move with voltage.
    night_w
        Pnt: taken from the mains when there is nothing to convert.
    """

    output_w: float
    input_w: float
    input_v: float
    start_w: float
    c0_per_w: float
    c1_per_v: float
    c2_per_v: float
    c3_per_v: float
    night_w: float

    def at_v(self, battery_v: float) -> tuple[float, float, float]:
        """Return A [W], B [W] and C [1/W] of the model at a battery voltage."""
        over = battery_v - self.input_v
        return (
            self.input_w * (1.0 + self.c1_per_v * over),
            self.start_w * (1.0 + self.c2_per_v * over),
            self.c0_per_w * (1.0 + self.c3_per_v * over),
        )


def sandia_output_w(*, curve: SandiaCurve, battery_v: float, input_w: float) -> float:
    """Return the alternating power from a direct power [W].

    Parameters
    ----------
    curve
        The inverter's coefficients.
    battery_v
        At its input. [V]
    input_w
        At its input. [W]

    Notes
    -----
    P_ac = (Paco / (A − B) − C (A − B)) (P − B) + C (P − B)², at most Paco; below Pso, −Pnt.

    References
    ----------
    [sandia-inverter]

    Examples
    --------
    >>> curve = SandiaCurve(output_w=2560, input_w=2809.780029, input_v=52, start_w=61.762074,
    ...     c0_per_w=-2e-05, c1_per_v=0.000462, c2_per_v=0.017864, c3_per_v=-0.020719,
    ...     night_w=0.768)
    >>> round(sandia_output_w(curve=curve, battery_v=52, input_w=1000), 3)
    908.004
    """
    if input_w < curve.start_w:
        return -curve.night_w
    full, start, bend = curve.at_v(battery_v)
    span = full - start
    over = input_w - start
    return min(curve.output_w, (curve.output_w / span - bend * span) * over + bend * over**2)


def sandia_input_w(*, curve: SandiaCurve, battery_v: float, output_w: float) -> float:
    """Return the direct power that an alternating power takes [W].

    Parameters
    ----------
    curve
        The inverter's coefficients.
    battery_v
        At its input. [V]
    output_w
        Wanted at its output. [W]

    Raises
    ------
    OutOfRange
        Where the output is below 0 or above the rated output.

    Notes
    -----
    The Sandia curve solved for its input: the smaller positive root of
    C x² + (Paco / (A − B) − C (A − B)) x − P_ac = 0, P = B + x; never below Pso.

    References
    ----------
    [sandia-inverter]
    """
    if not 0.0 <= output_w <= curve.output_w:
        raise OutOfRange("output_w", output_w, f"from 0 to {curve.output_w:g}")
    full, start, bend = curve.at_v(battery_v)
    span = full - start
    slope = curve.output_w / span - bend * span
    root = sqrt(max(0.0, slope**2 + 4.0 * bend * output_w))
    return max(curve.start_w, start + 2.0 * output_w / (slope + root))


def pvwatts_output_w(*, input_w: float, rated_input_w: float, nominal_frac: float = 0.96) -> float:
    """Return the alternating power from a direct power by the PVWatts curve [W].

    Parameters
    ----------
    input_w
        At its input. [W]
    rated_input_w
        Input for the rated output. [W]
    nominal_frac
        Nominal efficiency.

    Notes
    -----
    η = η_nom / 0.9637 · (−0.0162 z − 0.0059 / z + 0.9858), z = P / P_rated; at most
    η_nom · P_rated, and nothing from nothing.

    References
    ----------
    [nrel-pvwatts]

    Examples
    --------
    >>> round(pvwatts_output_w(input_w=90, rated_input_w=100, nominal_frac=0.95), 4)
    85.5856
    """
    if input_w <= 0.0:
        return 0.0
    share = input_w / rated_input_w
    efficiency = (
        nominal_frac / PVWATTS_REFERENCE_FRAC * (-0.0162 * share - 0.0059 / share + 0.9858)
    )
    return max(0.0, min(efficiency * input_w, nominal_frac * rated_input_w))
