"""How the rate of discharge changes what a battery gives (Peukert)."""

from coachwright.errors import OutOfRange


def peukert_h(*, capacity_ah: float, draw_a: float, rated_h: float, exponent: float) -> float:
    """Return the hours until a battery is empty at a steady current [h].

    Parameters
    ----------
    capacity_ah
        As rated. [Ah]
    draw_a
        Steady current. [A]
    rated_h
        Discharge time at which the capacity is stated. [h]
    exponent
        Peukert's exponent, 1 for a battery whose capacity does not depend on the rate.

    Raises
    ------
    OutOfRange
        Where a number is not above 0, or the exponent below 1.

    Notes
    -----
    t = H · (C / (I · H))^k.  The popular form t = C / I^k takes the capacity as stated at one
    hour; with a capacity stated at 20 h it gives 14.5 h where 20 h is right (100 Ah, k 1.2, 5 A).

    References
    ----------
    [peukert-pages]

    Examples
    --------
    >>> round(peukert_h(capacity_ah=100, draw_a=10, rated_h=20, exponent=1.2), 3)
    8.706
    """
    for name, value in (("capacity_ah", capacity_ah), ("draw_a", draw_a), ("rated_h", rated_h)):
        if value <= 0.0:
            raise OutOfRange(name, value, "above 0")
    if exponent < 1.0:
        raise OutOfRange("exponent", exponent, "at least 1")
    return float(rated_h * (capacity_ah / (draw_a * rated_h)) ** exponent)


def depletion_ratio(
    *, draw_a: float, capacity_ah: float, rated_h: float, exponent: float
) -> float:
    """Return how fast a current empties a battery, over the rated current.

    Parameters
    ----------
    draw_a
        Current. [A]
    capacity_ah
        As rated. [Ah]
    rated_h
        Discharge time at which the capacity is stated. [h]
    exponent
        Peukert's exponent.

    Notes
    -----
    x = I · H / C; the ratio is x^k above the rated current and x below it: a slow discharge is
    given no credit for more than the rated capacity.

    References
    ----------
    [peukert-pages]

    Examples
    --------
    >>> round(depletion_ratio(draw_a=10, capacity_ah=100, rated_h=20, exponent=1.2), 4)
    2.2974
    """
    ratio = draw_a * rated_h / capacity_ah
    return float(max(ratio, ratio**exponent))


def rate_factor(*, draw_a: float, capacity_ah: float, rated_h: float, exponent: float) -> float:
    """Return the share of the rated capacity that is left at a steady current.

    Parameters
    ----------
    draw_a
        Current. [A]
    capacity_ah
        As rated. [Ah]
    rated_h
        Discharge time at which the capacity is stated. [h]
    exponent
        Peukert's exponent.

    Notes
    -----
    1 at or below the rated current, else (I · H / C)^(1 − k).

    References
    ----------
    [peukert-pages]

    Examples
    --------
    >>> rate_factor(draw_a=5, capacity_ah=100, rated_h=20, exponent=1.2)
    1.0
    """
    ratio = draw_a * rated_h / capacity_ah
    return float(ratio ** (1.0 - exponent)) if ratio > 1.0 else 1.0


def capacity_at_ah(
    *, capacity_ah: float, rated_h: float, exponent: float, wanted_h: float
) -> float:
    """Return the capacity of a battery as it would be stated at another discharge time [Ah].

    Parameters
    ----------
    capacity_ah
        As rated. [Ah]
    rated_h
        Discharge time at which it is stated. [h]
    exponent
        Peukert's exponent.
    wanted_h
        Discharge time at which it is wanted. [h]

    Notes
    -----
    C' = C · (H' / H)^(1 − 1/k), from t = H (C / (I H))^k with t = H'.

    References
    ----------
    [peukert-pages]

    Examples
    --------
    >>> capacity_at_ah(capacity_ah=100, rated_h=20, exponent=1.2, wanted_h=20)
    100.0
    """
    return float(capacity_ah * (wanted_h / rated_h) ** (1.0 - 1.0 / exponent))
