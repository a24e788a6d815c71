"""Air conditioners: capacity and input beside the rating point, and the duty that a load takes."""

from dataclasses import dataclass
from functools import cache

from coachwright import reference
from coachwright.errors import OutOfRange, UnknownName

Six = tuple[float, float, float, float, float, float]


@dataclass(frozen=True, kw_only=True, slots=True)
class DxCurve:
    """Two curves of six coefficients, their range and the loss of cycling.

    Attributes
    ----------
    capacity_factor, input_factor
        Of indoor wet bulb x and outdoor dry bulb y in degC: c0 + c1 x + c2 x² + c3 y + c4 y² +
        c5 x y; the second is input over capacity, as a share of that at the rating point.
    """

    capacity_factor: Six
    input_factor: Six
    wet_low_degc: float
    wet_high_degc: float
    dry_low_degc: float
    dry_high_degc: float
    cycling_frac: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Duty:
    """What holding a load takes.

    Attributes
    ----------
    load_ratio
        Load over capacity, at most 1.
    running_frac
        Share of the time that it runs; a cycling unit loses a little at each start.
    """

    load_ratio: float
    part_load_frac: float
    running_frac: float


@cache
def dx_curve(name: str) -> DxCurve:
    """Return the curves of one kind of unit.

    Raises
    ------
    UnknownName
        Where the table has no such curve.

    Notes
    -----
    Published fits of laboratory tests; each is 1.00 ± 0.01 at 19.4 °C wet bulb and 35 °C.

    References
    ----------
    [dx-room-unit], [dx-split], [dx-central]

    Examples
    --------
    >>> dx_curve("room unit").cycling_frac
    0.22
    """
    rows = {row["kind"]: row for row in reference.table("dx_curves") if row["curve"] == name}
    if not rows:
        known = sorted({row["curve"] for row in reference.table("dx_curves")})
        raise UnknownName("curve", name, known)
    capacity, energy = rows["capacity"], rows["input"]
    return DxCurve(
        capacity_factor=_six(capacity),
        input_factor=_six(energy),
        wet_low_degc=float(capacity["wet_low_degc"]),
        wet_high_degc=float(capacity["wet_high_degc"]),
        dry_low_degc=float(capacity["dry_low_degc"]),
        dry_high_degc=float(capacity["dry_high_degc"]),
        cycling_frac=float(capacity["cycling_frac"]),
    )


def _six(row: dict[str, str]) -> Six:
    return (
        float(row["c0"]),
        float(row["c1_x"]),
        float(row["c2_x2"]),
        float(row["c3_y"]),
        float(row["c4_y2"]),
        float(row["c5_xy"]),
    )


def curve_factor(*, six_factor: Six, wet_degc: float, dry_degc: float) -> float:
    """Return a curve's value.

    Parameters
    ----------
    six_factor
        Its coefficients.
    wet_degc
        Wet bulb inside. [degC]
    dry_degc
        Dry bulb outside. [degC]

    Notes
    -----
    c0 + c1 x + c2 x² + c3 y + c4 y² + c5 x y.  The caller keeps it within the curve's range.

    References
    ----------
    [energyplus-coils]

    Examples
    --------
    >>> curve = dx_curve("room unit")
    >>> round(curve_factor(six_factor=curve.capacity_factor, wet_degc=19.444, dry_degc=35.0), 5)
    0.99466
    """
    c0, c1, c2, c3, c4, c5 = six_factor
    x, y = wet_degc, dry_degc
    return c0 + c1 * x + c2 * x**2 + c3 * y + c4 * y**2 + c5 * x * y


def within_degc(*, curve: DxCurve, wet_degc: float, dry_degc: float) -> tuple[float, float]:
    """Return wet and dry bulb [degC] moved into a curve's range.

    Parameters
    ----------
    curve
        The unit's.
    wet_degc
        Wet bulb inside. [degC]
    dry_degc
        Dry bulb outside. [degC]
    """
    return (
        min(max(wet_degc, curve.wet_low_degc), curve.wet_high_degc),
        min(max(dry_degc, curve.dry_low_degc), curve.dry_high_degc),
    )


def duty(*, load_w: float, capacity_w: float, cycling_frac: float) -> Duty:
    """Return the share of the time that a unit runs to hold a load.

    Parameters
    ----------
    load_w
        Sensible and latent. [W]
    capacity_w
        At the temperatures of the moment. [W]
    cycling_frac
        Lost by cycling at the smallest load.

    Raises
    ------
    OutOfRange
        Where there is no capacity.

    Notes
    -----
    PLR = load / capacity, at most 1; PLF = 1 − C_d (1 − PLR); running = PLR / PLF.

    References
    ----------
    [energyplus-coils], [dx-room-unit]

    Examples
    --------
    >>> held = duty(load_w=1200, capacity_w=3600, cycling_frac=0.22)
    >>> round(held.load_ratio, 4), round(held.part_load_frac, 4), round(held.running_frac, 4)
    (0.3333, 0.8533, 0.3906)
    """
    if capacity_w <= 0.0:
        raise OutOfRange("capacity_w", capacity_w, "above 0")
    ratio = min(1.0, max(0.0, load_w / capacity_w))
    part = 1.0 - cycling_frac * (1.0 - ratio)
    return Duty(load_ratio=ratio, part_load_frac=part, running_frac=ratio / part)
