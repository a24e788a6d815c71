"""What charges the bank, and what holds each source back."""

from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working


@dataclass(frozen=True, kw_only=True, slots=True)
class Limited:
    """The smallest of several currents, and whose it is."""

    current_a: float
    limited_by: str


@dataclass(frozen=True, kw_only=True, slots=True)
class ChargeTime:
    """How long charging takes."""

    time_h: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class ShoreSupply:
    """A shore supply; volt-amperes counted as watts.

    Attributes
    ----------
    continuous_w
        What it carries for long: the device at 125 % of a continuous load.
    """

    supply_w: float
    continuous_w: float
    working: Working


def alternator_share_a(
    *, rated_a: float, share_frac: float, cruise_frac: float, vehicle_load_a: float
) -> float:
    """Return what a vehicle's alternator can spare for the house [A].

    Parameters
    ----------
    rated_a
        Of the alternator. [A]
    share_frac
        Ceiling on what is asked of it for long.
    cruise_frac
        Share of the rating that it gives at cruise.
    vehicle_load_a
        What the vehicle takes itself. [A]

    Notes
    -----
    I = max(0, min(s, c) · I_rated − I_vehicle).  The ceiling of 50 % is common practice recalled
    from memory; no standard was found.

    References
    ----------
    [shop-practice-electrics]

    Examples
    --------
    >>> alternator_share_a(rated_a=220, share_frac=0.5, cruise_frac=0.9, vehicle_load_a=70)
    40.0
    """
    return max(0.0, min(share_frac, cruise_frac) * rated_a - vehicle_load_a)


def converter_input_a(
    *, output_a: float, output_v: float, input_v: float, efficiency_frac: float
) -> float:
    """Return what a DC-DC charger takes at its input [A].

    Parameters
    ----------
    output_a
        Into the bank. [A]
    output_v
        Of the bank. [V]
    input_v
        Of the vehicle. [V]
    efficiency_frac
        Of the charger.

    Raises
    ------
    OutOfRange
        Where the efficiency is not above 0 and at most 1.

    Notes
    -----
    I_in = I_out · U_out / (η · U_in).

    References
    ----------
    [part-maker-data]

    Examples
    --------
    >>> round(converter_input_a(output_a=30, output_v=12.8, input_v=12, efficiency_frac=0.9), 2)
    35.56
    """
    if not 0.0 < efficiency_frac <= 1.0:
        raise OutOfRange("efficiency_frac", efficiency_frac, "above 0 and at most 1")
    return output_a * output_v / (efficiency_frac * input_v)


def converter_output_a(
    *, input_a: float, output_v: float, input_v: float, efficiency_frac: float
) -> float:
    """Return what a DC-DC charger can give from an input current [A].

    Parameters
    ----------
    input_a
        From the vehicle. [A]
    output_v
        Of the bank. [V]
    input_v
        Of the vehicle. [V]
    efficiency_frac
        Of the charger.

    Notes
    -----
    I_out = I_in · U_in · η / U_out.

    References
    ----------
    [part-maker-data]

    Examples
    --------
    >>> converter_output_a(input_a=40, output_v=12, input_v=12, efficiency_frac=0.9)
    36.0
    """
    return input_a * input_v * efficiency_frac / output_v


def limited(*, offers_a: dict[str, float]) -> Limited:
    """Return the smallest of several limits and its name.

    Parameters
    ----------
    offers_a
        What each can give or take, by its name in words. [A]

    Raises
    ------
    OutOfRange
        Where there is none.

    Notes
    -----
    Of equal limits the first is named.

    Examples
    --------
    >>> limited(offers_a={"alternator": 36.0, "charger": 30.0, "battery": 100.0})
    Limited(current_a=30.0, limited_by='charger')
    """
    if not offers_a:
        raise OutOfRange("offers_a", "empty", "at least one limit")
    name = min(offers_a, key=lambda name: offers_a[name])
    return Limited(current_a=offers_a[name], limited_by=name)


def charge_time(
    *,
    capacity_ah: float,
    from_frac: float,
    to_frac: float,
    charge_a: float,
    efficiency_frac: float,
) -> ChargeTime:
    """Return how long charging takes at a steady current.

    Parameters
    ----------
    capacity_ah
        Of the bank. [Ah]
    from_frac
        State of charge at the start.
    to_frac
        State of charge at the end.
    charge_a
        Steady current. [A]
    efficiency_frac
        Charge out over charge in.

    Returns
    -------
    ChargeTime
        Hours, with the working.

    Raises
    ------
    OutOfRange
        Where the current is not above 0.

    Notes
    -----
    t = (to − from) · C / (I · η).  The taper near full is left out: the last tenth takes longer.

    References
    ----------
    [shop-practice-electrics]

    Examples
    --------
    >>> round(charge_time(capacity_ah=200, from_frac=0.2, to_frac=1.0, charge_a=40,
    ...     efficiency_frac=0.99).time_h, 4)
    4.0404
    """
    if charge_a <= 0.0:
        raise OutOfRange("charge_a", charge_a, "above 0")
    time = max(0.0, to_frac - from_frac) * capacity_ah / (charge_a * efficiency_frac)
    return ChargeTime(
        time_h=time,
        working=Working(
            expression="t = (z1 − z0)·C / (I·η)",
            given=(
                Given(symbol="z0", meaning="charge at the start", value=from_frac, unit="frac"),
                Given(symbol="z1", meaning="charge at the end", value=to_frac, unit="frac"),
                Given(symbol="C", meaning="capacity of the bank", value=capacity_ah, unit="Ah"),
                Given(symbol="I", meaning="steady current", value=charge_a, unit="A"),
                Given(
                    symbol="η",
                    meaning="charge out over charge in",
                    value=efficiency_frac,
                    unit="frac",
                    source="battery",
                ),
            ),
            result=time,
            unit="h",
            references=("shop-practice-electrics",),
            note="The taper near full is left out: the last tenth takes longer.",
        ),
    )


def direct_charge_a(*, capacity_ah: float, share_ratio: float) -> float:
    """Return what a lithium bank takes straight from an alternator [A].

    Parameters
    ----------
    capacity_ah
        Of the bank. [Ah]
    share_ratio
        Measured current over capacity: 0.33 at low charge, 0.2 in the middle.

    Notes
    -----
    Logged installations: the bank does not take all that an alternator gives.

    References
    ----------
    [direct-charging-notes]

    Examples
    --------
    >>> direct_charge_a(capacity_ah=200, share_ratio=0.33)
    66.0
    """
    return capacity_ah * share_ratio


def shore_supply(
    *, current_a: float, voltage_v: float, legs: int = 1, continuous_factor: float
) -> ShoreSupply:
    """Return what a shore supply gives.

    Parameters
    ----------
    current_a
        Rating of its device. [A]
    voltage_v
        Of one leg. [V]
    legs
        Live conductors against neutral: 2 for a split 120/240 V supply.
    continuous_factor
        Device over continuous load: 1.25.

    Returns
    -------
    ShoreSupply
        For a short time and for long, with the working.

    Notes
    -----
    S = n · U · I; for long, S / 1.25.  Volt-amperes counted as watts (power factor 1).

    References
    ----------
    [nec-210]

    Examples
    --------
    >>> found = shore_supply(current_a=30, voltage_v=120, continuous_factor=1.25)
    >>> found.supply_w, found.continuous_w
    (3600, 2880.0)
    """
    supply = legs * voltage_v * current_a
    continuous = supply / continuous_factor
    return ShoreSupply(
        supply_w=supply,
        continuous_w=continuous,
        working=Working(
            expression="S = n·U·I / f",
            given=(
                Given(symbol="n", meaning="live conductors", value=legs, unit="count"),
                Given(symbol="U", meaning="voltage of one", value=voltage_v, unit="V"),
                Given(symbol="I", meaning="rating of the supply", value=current_a, unit="A"),
                Given(
                    symbol="f",
                    meaning="device over continuous load",
                    value=continuous_factor,
                    unit="1",
                ),
            ),
            result=continuous,
            unit="W",
            references=("nec-210",),
            note="Volt-amperes counted as watts: the power factor is taken as 1.",
        ),
    )
