"""Cold boxes: the draw that follows the temperature around them."""

from coachwright.errors import OutOfRange


def duty_frac(
    *, around_degc: float, inside_degc: float, stated_frac: float, stated_degc: float
) -> float:
    """Return the share of the time that a compressor runs.

    Parameters
    ----------
    around_degc
        Air round the box. [degC]
    inside_degc
        Kept. [degC]
    stated_frac
        Share that is stated ...
    stated_degc
        ... around this temperature. [degC]

    Raises
    ------
    OutOfRange
        Where the stated temperature is not above the inside.

    Notes
    -----
    d = d_0 (T − T_in) / (T_0 − T_in), from 0 to 1: heat comes in with the difference, and the
    compressor's own efficiency is taken as the same.  A real one gains a little in the cold and
    loses in the heat; doors and warm food are in the stated duty.

    References
    ----------
    [energy-balance]

    Examples
    --------
    >>> round(duty_frac(around_degc=19, inside_degc=5, stated_frac=0.42, stated_degc=32), 3)
    0.218
    """
    if stated_degc <= inside_degc:
        raise OutOfRange("stated_degc", stated_degc, f"above {inside_degc:g}")
    return min(
        1.0, max(0.0, stated_frac * (around_degc - inside_degc) / (stated_degc - inside_degc))
    )
