"""Moist air: saturation, humidity ratio, dew point, wet bulb, enthalpy, latent heat."""

from math import exp, log

from coachwright.errors import OutOfRange

SEA_LEVEL_PA = 101_325.0
RATIO = 0.621945
"""Molar mass of water over that of dry air. [ashrae-psychrometrics]"""
ZERO_K = 273.15
LOWEST_DEGC, HIGHEST_DEGC = -100.0, 200.0
_OVER_ICE = (
    -5.6745359e3,
    6.3925247,
    -9.677843e-3,
    6.2215701e-7,
    2.0747825e-9,
    -9.484024e-13,
    4.1635019,
)
_OVER_WATER = (
    -5.8002206e3,
    1.3914993,
    -4.8640239e-2,
    4.1764768e-5,
    -1.4452093e-8,
    0.0,
    6.5459673,
)
"""Of the saturation pressure of Hyland and Wexler. [ashrae-psychrometrics]"""
_TRIPLE_DEGC = 0.01
_CLOSE_K = 1e-6
_MOST_STEPS = 100


def saturation_pa(*, air_degc: float) -> float:
    """Return the pressure of saturated vapour, over ice below the triple point [Pa].

    Parameters
    ----------
    air_degc
        From −100 to 200. [degC]

    Raises
    ------
    OutOfRange
        Where the temperature is outside that.

    Notes
    -----
    ln p = C1/T + C2 + C3 T + C4 T² + C5 T³ + C6 T⁴ + C7 ln T, T in kelvin.

    References
    ----------
    [ashrae-psychrometrics]

    Examples
    --------
    >>> round(saturation_pa(air_degc=20), 2)
    2338.8
    """
    if not LOWEST_DEGC <= air_degc <= HIGHEST_DEGC:
        raise OutOfRange("air_degc", air_degc, f"from {LOWEST_DEGC:g} to {HIGHEST_DEGC:g}")
    kelvin = air_degc + ZERO_K
    c1, c2, c3, c4, c5, c6, c7 = _OVER_ICE if air_degc <= _TRIPLE_DEGC else _OVER_WATER
    power = c2 + kelvin * (c3 + kelvin * (c4 + kelvin * (c5 + kelvin * c6)))
    return exp(c1 / kelvin + power + c7 * log(kelvin))


def humidity_ratio(*, vapour_pa: float, pressure_pa: float = SEA_LEVEL_PA) -> float:
    """Return kilograms of vapour for each kilogram of dry air.

    Parameters
    ----------
    vapour_pa
        Of the vapour alone. [Pa]
    pressure_pa
        Of the air. [Pa]

    Raises
    ------
    OutOfRange
        Where the vapour's pressure is not from 0 to below that of the air.

    Notes
    -----
    W = 0.621945 p_w / (p − p_w).

    References
    ----------
    [ashrae-psychrometrics]

    Examples
    --------
    >>> round(humidity_ratio(vapour_pa=0.5 * saturation_pa(air_degc=20)), 6)
    0.007262
    """
    if not 0.0 <= vapour_pa < pressure_pa:
        raise OutOfRange("vapour_pa", vapour_pa, f"from 0 to below {pressure_pa:g}")
    return RATIO * vapour_pa / (pressure_pa - vapour_pa)


def vapour_pa(*, moisture_ratio: float, pressure_pa: float = SEA_LEVEL_PA) -> float:
    """Return the pressure of the vapour in moist air [Pa].

    Parameters
    ----------
    moisture_ratio
        Kilograms of vapour for each of dry air.
    pressure_pa
        Of the air. [Pa]

    Notes
    -----
    p_w = p W / (0.621945 + W).

    References
    ----------
    [ashrae-psychrometrics]

    Examples
    --------
    >>> round(vapour_pa(moisture_ratio=0.007262), 1)
    1169.4
    """
    return pressure_pa * moisture_ratio / (RATIO + moisture_ratio)


def dew_degc(*, vapour_pa: float) -> float:
    """Return the dew point, or the frost point below the triple point [degC].

    Parameters
    ----------
    vapour_pa
        Of the vapour. [Pa]

    Raises
    ------
    OutOfRange
        Where there is no vapour, or more than saturates air of 200 °C.

    Notes
    -----
    The temperature at which it saturates, by bisection to a millionth of a kelvin.

    References
    ----------
    [ashrae-psychrometrics]

    Examples
    --------
    >>> round(dew_degc(vapour_pa=0.5 * saturation_pa(air_degc=20)), 3)
    9.272
    """
    low, high = LOWEST_DEGC, HIGHEST_DEGC
    least, most = saturation_pa(air_degc=low), saturation_pa(air_degc=high)
    if not least <= vapour_pa <= most:
        raise OutOfRange("vapour_pa", vapour_pa, f"from {least:g} to {most:g}")
    for _ in range(_MOST_STEPS):
        middle = (low + high) / 2.0
        if saturation_pa(air_degc=middle) < vapour_pa:
            low = middle
        else:
            high = middle
        if high - low < _CLOSE_K:
            break
    return (low + high) / 2.0


def wet_bulb_degc(
    *, air_degc: float, moisture_ratio: float, pressure_pa: float = SEA_LEVEL_PA
) -> float:
    """Return the wet-bulb temperature [degC].

    Parameters
    ----------
    air_degc
        Dry bulb. [degC]
    moisture_ratio
        Kilograms of vapour for each of dry air; not above saturation.
    pressure_pa
        Of the air. [Pa]

    Notes
    -----
    The t* at which W = ((2501 − 2.326 t*) W_s* − 1.006 (t − t*)) / (2501 + 1.86 t − 4.186 t*),
    over ice with 2830 − 0.24 t* and 2830 + 1.86 t − 2.1 t*, by bisection.

    References
    ----------
    [ashrae-psychrometrics]

    Examples
    --------
    >>> round(wet_bulb_degc(air_degc=20, moisture_ratio=0.0072620), 2)
    13.78
    """
    low, high = air_degc - 60.0, air_degc
    low = max(low, LOWEST_DEGC)
    while high - low > _CLOSE_K:
        middle = (low + high) / 2.0
        if _wet_bulb_ratio(air_degc, middle, pressure_pa) > moisture_ratio:
            high = middle
        else:
            low = middle
    return (low + high) / 2.0


def _wet_bulb_ratio(air_degc: float, wet_degc: float, pressure_pa: float) -> float:
    soaked = humidity_ratio(vapour_pa=saturation_pa(air_degc=wet_degc), pressure_pa=pressure_pa)
    drop = 1.006 * (air_degc - wet_degc)
    if wet_degc >= 0.0:
        return ((2501.0 - 2.326 * wet_degc) * soaked - drop) / (
            2501.0 + 1.86 * air_degc - 4.186 * wet_degc
        )
    return ((2830.0 - 0.24 * wet_degc) * soaked - drop) / (
        2830.0 + 1.86 * air_degc - 2.1 * wet_degc
    )


def latent_j_per_kg(*, water_degc: float) -> float:
    """Return the heat that evaporates a kilogram of water [J/kg].

    Parameters
    ----------
    water_degc
        From 0 to 100. [degC]

    Notes
    -----
    2.501 − 0.00237 t MJ/kg: within 0.1 % of IAPWS-95 up to 40 °C, 0.4 % high at 100 °C.

    References
    ----------
    [ashrae-psychrometrics], [coolprop-water]

    Examples
    --------
    >>> round(latent_j_per_kg(water_degc=20))
    2453600
    """
    return 2.501e6 - 2370.0 * water_degc


def balanced_ratio(
    *,
    outside_ratio: float,
    vapour_g_per_h: float,
    air_m3_per_h: float,
    density_kg_per_m3: float = 1.2,
) -> float:
    """Return the moisture of a room whose sources and fresh air are steady.

    Parameters
    ----------
    outside_ratio
        Moisture of the fresh air.
    vapour_g_per_h
        Of people and pots. [g/h]
    air_m3_per_h
        Fresh air. [m3/h]
    density_kg_per_m3
        Of the air. [kg/m3]

    Raises
    ------
    OutOfRange
        Where there is no fresh air.

    Notes
    -----
    W = W_out + G / (ρ q).  Steady; nothing condenses.

    References
    ----------
    [iso-13788]

    Examples
    --------
    >>> round(balanced_ratio(outside_ratio=0.003395, vapour_g_per_h=80, air_m3_per_h=20), 6)
    0.006728
    """
    if air_m3_per_h <= 0.0:
        raise OutOfRange("air_m3_per_h", air_m3_per_h, "above 0")
    return outside_ratio + vapour_g_per_h / 1000.0 / (density_kg_per_m3 * air_m3_per_h)
