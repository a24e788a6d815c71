"""Clean water: disinfecting a tank, and the air gap above a basin."""

from coachwright.errors import OutOfRange


def bleach_ml(*, volume_l: float, dose_mg_per_l: float, strength_g_per_l: float) -> float:
    """Return the household bleach that gives a dose [mL].

    Parameters
    ----------
    volume_l
        Water to be dosed. [L]
    dose_mg_per_l
        Chlorine wanted. [mg/L]
    strength_g_per_l
        Hypochlorite in the bleach. [g/L]

    Returns
    -------
    float
        V · D / S.

    Raises
    ------
    OutOfRange
        Where the bleach has no strength.

    Notes
    -----
    Hypochlorite counted as chlorine, weight for volume; plain bleach without scent or thickener.
    Old bleach is weaker.

    References
    ----------
    [ansi-a119-2]

    Examples
    --------
    >>> round(bleach_ml(volume_l=75, dose_mg_per_l=100, strength_g_per_l=52.5), 1)
    142.9
    """
    if strength_g_per_l <= 0:
        raise OutOfRange("strength_g_per_l", strength_g_per_l, "more than 0 g/L")
    return volume_l * dose_mg_per_l / strength_g_per_l


def chlorine_mg_per_l(*, volume_l: float, bleach_ml: float, strength_g_per_l: float) -> float:
    """Return the chlorine that a measure of bleach gives [mg/L].

    Parameters
    ----------
    volume_l
        Water that is dosed. [L]
    bleach_ml
        Bleach put in. [mL]
    strength_g_per_l
        Hypochlorite in the bleach. [g/L]

    Returns
    -------
    float
        B · S / V.

    Raises
    ------
    OutOfRange
        Where there is no water.

    Notes
    -----
    The other way round from `bleach_ml`.

    References
    ----------
    [ansi-a119-2]

    Examples
    --------
    >>> round(chlorine_mg_per_l(volume_l=57, bleach_ml=60, strength_g_per_l=52.5), 1)
    55.3
    """
    if volume_l <= 0:
        raise OutOfRange("volume_l", volume_l, "more than 0 L")
    return bleach_ml * strength_g_per_l / volume_l


def air_gap_mm(*, bore_mm: float, bores_factor: float, least_mm: float) -> float:
    """Return the height that a spout must stand above the rim it could dip into [mm].

    Parameters
    ----------
    bore_mm
        Of the spout. [mm]
    bores_factor
        How many bores high.
    least_mm
        Smallest gap. [mm]

    Returns
    -------
    float
        The larger of the two.

    Notes
    -----
    Plumbing codes ask for two bores and not less than one inch; a spout near a wall needs more.

    References
    ----------
    [us-municipal-plumbing]

    Examples
    --------
    >>> air_gap_mm(bore_mm=19, bores_factor=2, least_mm=25)
    38
    """
    return max(bores_factor * bore_mm, least_mm)
