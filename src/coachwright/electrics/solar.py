"""What the sun brings in a day: losses, cell temperature, power, energy."""

from dataclasses import dataclass
from math import prod

from coachwright import reference
from coachwright.electrics.cell_temperature import FULL_SUN_W_PER_M2, RackName, cell_degc
from coachwright.model.working import Given, Working

TEST_DEGC = 25.0
"""Cell temperature of standard test conditions. [degC] [nrel-pvwatts]"""


_STEADY = "Steady estimate; shade of neighbours and of other things on the roof left out"


@dataclass(frozen=True, kw_only=True, slots=True)
class ArrayOutput:
    """The panels on one controller in full sun.

    Attributes
    ----------
    clipped_frac
        Share of what is offered that the controller does not give.
    """

    offered_w: float
    power_w: float
    clipped_frac: float


@dataclass(frozen=True, kw_only=True, slots=True)
class SunDay:
    """A day's sun, into the bank."""

    power_w: float
    energy_wh_per_day: float
    working: Working


def combined_loss_frac(*, losses_frac: tuple[float, ...]) -> float:
    """Return several losses as one.

    Parameters
    ----------
    losses_frac
        Each as a share.

    Notes
    -----
    L = 1 − Π (1 − L_i): not their sum.

    References
    ----------
    [nrel-pvwatts]

    Examples
    --------
    >>> round(combined_loss_frac(losses_frac=(0.02, 0.02, 0.02, 0.005, 0.015, 0.01)), 8)
    0.08678564
    """
    return 1.0 - prod(1.0 - loss for loss in losses_frac)


def vehicle_loss_frac() -> float:
    """Return the losses of a flat array on a vehicle.

    Notes
    -----
    The chain of the PVWatts model without its 3 % for shading and 3 % for availability, which
    belong to buildings and to the public grid: 8.68 % instead of 14.08 %.  Shading of the panels
    by each other and by what stands near is left out.

    References
    ----------
    [nrel-pvwatts]

    Examples
    --------
    >>> round(vehicle_loss_frac(), 8)
    0.08678564
    """
    rows = reference.table("pv_losses")
    return combined_loss_frac(losses_frac=tuple(float(row["flat_vehicle_frac"]) for row in rows))


def panel_power_w(
    *,
    rated_w: float,
    irradiance_w_per_m2: float,
    panel_degc: float,
    coefficient_frac_per_k: float,
) -> float:
    """Return the power of a panel [W].

    Parameters
    ----------
    rated_w
        At standard test conditions. [W]
    irradiance_w_per_m2
        On the panel. [W/m2]
    panel_degc
        Of its cells. [degC]
    coefficient_frac_per_k
        Change of power with temperature; negative. [frac/K]

    Notes
    -----
    P = P0 · G / 1000 · (1 + γ (T − 25)), before losses.

    References
    ----------
    [nrel-pvwatts]

    Examples
    --------
    >>> round(panel_power_w(rated_w=100, irradiance_w_per_m2=900, panel_degc=30,
    ...     coefficient_frac_per_k=-0.003), 2)
    88.65
    """
    warm = 1.0 + coefficient_frac_per_k * (panel_degc - TEST_DEGC)
    return rated_w * irradiance_w_per_m2 / FULL_SUN_W_PER_M2 * max(0.0, warm)


def flat_power_w(
    *,
    rated_w: float,
    air_degc: float,
    wind_m_per_s: float,
    bonded: bool,
    coefficient_frac_per_k: float,
) -> float:
    """Return the power of a flat panel in full sun, warm as it lies on the roof [W].

    Parameters
    ----------
    rated_w
        At standard test conditions. [W]
    air_degc
        By day. [degC]
    wind_m_per_s
        Over the roof. [m/s]
    bonded
        Glued to the roof, without air behind it.
    coefficient_frac_per_k
        Change of power with temperature; negative. [frac/K]

    Notes
    -----
    Cell temperature at 1000 W/m2; no credit is given for cells colder than 25 °C.  Weaker light
    warms less, so a real hour brings a little more than this.

    References
    ----------
    [sandia-sapm], [nrel-pvwatts]

    Examples
    --------
    >>> round(flat_power_w(rated_w=100, air_degc=30, wind_m_per_s=1, bonded=True,
    ...     coefficient_frac_per_k=-0.0035), 2)
    78.12
    """
    rack: RackName = "insulated back glass-polymer" if bonded else "open rack glass-polymer"
    cells = cell_degc(
        irradiance_w_per_m2=FULL_SUN_W_PER_M2,
        air_degc=air_degc,
        wind_m_per_s=wind_m_per_s,
        rack=rack,
    )
    return panel_power_w(
        rated_w=rated_w,
        irradiance_w_per_m2=FULL_SUN_W_PER_M2,
        panel_degc=max(TEST_DEGC, cells),
        coefficient_frac_per_k=coefficient_frac_per_k,
    )


def winter_day_degc(*, cold_night_degc: float, hot_day_degc: float) -> float:
    """Return the air temperature taken for a day of the cold half-year [degC].

    Parameters
    ----------
    cold_night_degc
        Design cold night. [degC]
    hot_day_degc
        Design hot day. [degC]

    Notes
    -----
    Midway between the two: warmer than most winter days, so the panels are taken as a little
    weaker than they will be.

    References
    ----------
    [shop-practice-electrics]

    Examples
    --------
    >>> winter_day_degc(cold_night_degc=-8, hot_day_degc=34)
    13.0
    """
    return (cold_night_degc + hot_day_degc) / 2.0


def array_output(
    *, warm_power_w: float, loss_frac: float, efficiency_frac: float, limit_w: float
) -> ArrayOutput:
    """Return what the panels on one controller give in full sun.

    Parameters
    ----------
    warm_power_w
        Of its panels in full sun, warm. [W]
    loss_frac
        All losses before the controller, combined.
    efficiency_frac
        Of the controller.
    limit_w
        The most that the controller gives. [W]

    Returns
    -------
    ArrayOutput
        Offered, given, and the share that is lost between.

    Notes
    -----
    P = min(P_warm (1 − L) η, P_limit).

    References
    ----------
    [nrel-pvwatts], [off-grid-examples]

    Examples
    --------
    >>> array_output(warm_power_w=1800, loss_frac=0, efficiency_frac=1, limit_w=1680).power_w
    1680
    """
    offered = warm_power_w * (1.0 - loss_frac) * efficiency_frac
    power = min(offered, limit_w)
    lost = 1.0 - power / offered if offered > 0.0 else 0.0
    return ArrayOutput(offered_w=offered, power_w=power, clipped_frac=lost)


def sun_day(
    *,
    powers_w: dict[str, float],
    limit_w: float,
    sun_h_per_day: float,
    sun_source: str = "brief.climate",
    caution: str = "",
) -> SunDay:
    """Return what a day's sun puts into the bank.

    Parameters
    ----------
    powers_w
        What each controller gives in full sun, by its name. [W]
    limit_w
        The most that the bank takes. [W]
    sun_h_per_day
        Peak-sun hours on a flat roof. [h/day]
    sun_source
        Where these come from.
    caution
        How far they may be off.

    Returns
    -------
    SunDay
        Power and energy, with the working.

    Notes
    -----
    E = min(ΣP, P_limit) · h.  Limits are applied to the whole day, though they bind only in the
    strongest hours: the estimate is low there, never high.

    References
    ----------
    [nrel-pvwatts]

    Examples
    --------
    >>> sun_day(powers_w={"roof": 400.0}, limit_w=300.0, sun_h_per_day=5.0).energy_wh_per_day
    1500.0
    """
    power = min(sum(powers_w.values()), limit_w)
    energy = power * sun_h_per_day
    arrays = tuple(
        Given(
            symbol=f"P{number}",
            meaning=f"full sun through {name}: rated, warm, losses, controller",
            value=one,
            unit="W",
            source="panels, controller, table pv_losses",
        )
        for number, (name, one) in enumerate(powers_w.items(), start=1)
    )
    terms = " + ".join(given.symbol for given in arrays) or "0"
    return SunDay(
        power_w=power,
        energy_wh_per_day=energy,
        working=Working(
            expression=f"E = min({terms}, P_bank)·h",
            given=(
                *arrays,
                Given(
                    symbol="P_bank",
                    meaning="the most that the bank takes",
                    value=limit_w,
                    unit="W",
                ),
                Given(
                    symbol="h",
                    meaning="peak-sun hours on a flat roof",
                    value=sun_h_per_day,
                    unit="h/day",
                    source=sun_source,
                ),
            ),
            result=energy,
            unit="Wh/day",
            references=("nrel-pvwatts", "sandia-sapm"),
            note=f"{_STEADY}. {caution}" if caution else f"{_STEADY}.",
        ),
    )
