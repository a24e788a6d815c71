"""How long a full bank carries a load."""

from dataclasses import dataclass

from coachwright.electrics.rate import depletion_ratio
from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working


@dataclass(frozen=True, kw_only=True, slots=True)
class Running:
    """How long it runs.

    Attributes
    ----------
    clock_h
        Until the bank is at its reserve.
    drawing_h
        Of that, the time that the load really draws.
    """

    clock_h: float
    drawing_h: float
    working: Working


def running(
    *,
    capacity_ah: float,
    depth_frac: float,
    draw_a: float,
    duty_frac: float = 1.0,
    base_a: float = 0.0,
    rated_h: float = 20.0,
    exponent: float = 1.0,
) -> Running:
    """Return how long a full bank carries one load that draws for a share of the time.

    Parameters
    ----------
    capacity_ah
        Of the bank, at its temperature. [Ah]
    depth_frac
        Share of the capacity that may be used.
    draw_a
        From the bank while the load draws. [A]
    duty_frac
        Share of the time that it draws.
    base_a
        What else draws all the time. [A]
    rated_h
        Discharge time at which the capacity is stated. [h]
    exponent
        Peukert's exponent.

    Returns
    -------
    Running
        Clock hours and hours of drawing, with the working.

    Raises
    ------
    OutOfRange
        Where nothing draws, or a number is outside its range.

    Notes
    -----
    t = D · H / (d · r(I + I0) + (1 − d) · r(I0)) with r the depletion over the rated current
    C / H: r(I) = max(x, x^k), x = I · H / C.  With k = 1, D = 1, I0 = 0 that is C / (I · d):
    200 Ah at 100 A is 2 h, at 25 % duty 8 h (common practice, no source).  Recovery in the pauses
    is not counted.

    References
    ----------
    [peukert-pages]

    Examples
    --------
    >>> running(capacity_ah=200, depth_frac=1.0, draw_a=100).clock_h
    2.0
    >>> running(capacity_ah=200, depth_frac=1.0, draw_a=100, duty_frac=0.25).clock_h
    8.0
    """
    for name, value in (("capacity_ah", capacity_ah), ("rated_h", rated_h)):
        if value <= 0.0:
            raise OutOfRange(name, value, "above 0")
    for name, value in (("depth_frac", depth_frac), ("duty_frac", duty_frac)):
        if not 0.0 <= value <= 1.0:
            raise OutOfRange(name, value, "from 0 to 1")
    if draw_a * duty_frac + base_a <= 0.0 or min(draw_a, base_a) < 0.0:
        raise OutOfRange("draw_a", draw_a, "above 0, or something else that draws")

    def speed_ratio(current_a: float) -> float:
        return depletion_ratio(
            draw_a=current_a, capacity_ah=capacity_ah, rated_h=rated_h, exponent=exponent
        )

    speed = duty_frac * speed_ratio(draw_a + base_a) + (1.0 - duty_frac) * speed_ratio(base_a)
    clock = depth_frac * rated_h / speed
    return Running(
        clock_h=clock,
        drawing_h=clock * duty_frac,
        working=Working(
            expression="t = D·H / (d·r(I + I0) + (1 − d)·r(I0));  r(I) = max(x, x^k), x = I·H/C",
            given=(
                Given(symbol="C", meaning="capacity of the bank", value=capacity_ah, unit="Ah"),
                Given(symbol="H", meaning="hours it is stated at", value=rated_h, unit="h"),
                Given(symbol="D", meaning="share that may be used", value=depth_frac, unit="frac"),
                Given(symbol="I", meaning="draw while it draws", value=draw_a, unit="A"),
                Given(symbol="d", meaning="share of the time", value=duty_frac, unit="frac"),
                Given(symbol="I0", meaning="always on besides", value=base_a, unit="A"),
                Given(symbol="k", meaning="Peukert's exponent", value=exponent, unit="1"),
            ),
            result=clock,
            unit="h",
            references=("peukert-pages",),
            note="From a full bank, with nothing charging; recovery in the pauses not counted.",
        ),
    )
