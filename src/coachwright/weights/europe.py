"""Payload statements of the European Union and the United Kingdom."""

from dataclasses import dataclass

from coachwright.model.working import Given, Working
from coachwright.reference import limit
from coachwright.weights.assumptions import limit_kg

PER_M = 1000.0
"""Millimetres in a metre."""


@dataclass(frozen=True, kw_only=True, slots=True)
class PayMass:
    """The least pay-mass of a motor caravan."""

    least_kg: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class FrontLeast:
    """The front axle when vehicle and rear axle are at their maxima."""

    front_kg: float
    least_kg: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class DeclaredBand:
    """What a weighing may find for a declared mass."""

    lowest_kg: float
    highest_kg: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Effects:
    """Conventional load and personal effects after the older European standard."""

    effects_kg: float
    passengers_kg: float
    total_kg: float


@dataclass(frozen=True, kw_only=True, slots=True)
class ApprovalLoad:
    """What the UK individual approval adds to the kerbside mass."""

    occupants_kg: float
    luggage_kg: float
    seat_extra_kg: float
    length_extra_kg: float
    water_kg: float
    gas_kg: float
    total_kg: float


def minimum_pay_mass(*, people: int, length_mm: float) -> PayMass:
    """Return the least pay-mass of a motor caravan.

    Parameters
    ----------
    people
        Passengers and driver: the seats meant for use in motion.
    length_mm
        Overall length of the vehicle. [mm]

    Returns
    -------
    PayMass
        With working.

    Notes
    -----
    PM = 10 · (n + L), n counting the driver, L in metres.  A legal floor, not a usable payload.
    Quoted from the regulation of 2012; the wording of its successor was not read.

    References
    ----------
    [eu-1230-2012]

    Examples
    --------
    >>> round(minimum_pay_mass(people=4, length_mm=7450).least_kg, 1)
    114.5
    """
    person_kg = limit_kg("weights.eu-pay-mass-person")
    metre_kg = limit_kg("weights.eu-pay-mass-metre")
    length_m = length_mm / PER_M
    least_kg = person_kg * people + metre_kg * length_m
    return PayMass(
        least_kg=least_kg,
        working=Working(
            expression="PM = 10 · (n + L)",
            given=(
                Given(symbol="10", meaning="per person, per metre", value=person_kg, unit="kg"),
                Given(symbol="n", meaning="persons, driver included", value=people, unit="count"),
                Given(symbol="L", meaning="overall length", value=length_m, unit="m"),
            ),
            result=least_kg,
            unit="kg",
            references=("eu-1230-2012",),
            note="a legal floor, not a usable payload",
        ),
    )


def pay_mass_left_kg(*, gross_kg: float, actual_kg: float, passengers: int) -> float:
    """Return what is left for luggage when every seat is taken.

    Parameters
    ----------
    gross_kg
        Technically permissible maximum laden mass. [kg]
    actual_kg
        Running order with everything fitted, the driver included. [kg]
    passengers
        Besides the driver.

    Notes
    -----
    PM = M - actual - 75 kg · passengers; 75 kg = 68 kg at the seat and 7 kg of luggage.

    References
    ----------
    [eu-1230-2012], [iso-2416], [de-stvzo]

    Examples
    --------
    >>> pay_mass_left_kg(gross_kg=3500, actual_kg=3000, passengers=3)
    275.0
    """
    return gross_kg - actual_kg - passengers * limit_kg("weights.eu-driver")


def front_axle_least(
    *, gross_kg: float, rear_axle_kg: float, coupling_kg: float = 0.0, towing: bool = False
) -> FrontLeast:
    """Return the front axle's load with vehicle and rear axle at their maxima, and its least.

    Parameters
    ----------
    gross_kg
        Technically permissible maximum laden mass. [kg]
    rear_axle_kg
        Of the rear axle. [kg]
    coupling_kg
        Greatest load at the coupling point, added where `towing`. [kg]
    towing
        Judge with the coupling load: 20 % instead of 30 %.

    Returns
    -------
    FrontLeast
        With working.

    Notes
    -----
    F = M - R_max ≥ 0.30 · M; with the coupling load S: F = M + S - R_max ≥ 0.20 · M.  M1 and N1.
    The coupling's own mass is left out, which lowers F.

    References
    ----------
    [eu-1230-2012]

    Examples
    --------
    >>> found = front_axle_least(gross_kg=3500, rear_axle_kg=2100)
    >>> found.front_kg, found.least_kg
    (1400.0, 1050.0)
    """
    share = "weights.eu-front-share-towing" if towing else "weights.eu-front-share"
    share_frac = limit(share).value
    front_kg = gross_kg - rear_axle_kg + (coupling_kg if towing else 0.0)
    given = [
        Given(symbol="M", meaning="maximum laden mass", value=gross_kg, unit="kg"),
        Given(symbol="R", meaning="rear axle's maximum", value=rear_axle_kg, unit="kg"),
    ]
    if towing:
        given.append(Given(symbol="S", meaning="coupling load", value=coupling_kg, unit="kg"))
    return FrontLeast(
        front_kg=front_kg,
        least_kg=share_frac * gross_kg,
        working=Working(
            expression="F = M + S - R" if towing else "F = M - R",
            given=tuple(given),
            result=front_kg,
            unit="kg",
            references=("eu-1230-2012",),
            note=f"to be at least {share_frac:.0%} of M",
        ),
    )


def declared_band(*, declared_kg: float) -> DeclaredBand:
    """Return what a weighing may find for a declared mass.

    Parameters
    ----------
    declared_kg
        As stated in the papers. [kg]

    Returns
    -------
    DeclaredBand
        Lowest and highest mass accepted.

    Notes
    -----
    m · (1 ± 0.05).

    References
    ----------
    [eu-1230-2012]

    Examples
    --------
    >>> round(declared_band(declared_kg=3017).highest_kg, 2)
    3167.85
    """
    share_frac = limit("weights.eu-declared").value
    return DeclaredBand(
        lowest_kg=declared_kg * (1 - share_frac), highest_kg=declared_kg * (1 + share_frac)
    )


def older_effects(*, seats: int, passengers: int, length_mm: float) -> Effects:
    """Return passengers and personal effects after the older European standard.

    Parameters
    ----------
    seats
        Seats that the formula counts; the published example counts the passengers' alone.
    passengers
        Besides the driver.
    length_mm
        Overall length. [mm]

    Returns
    -------
    Effects
        Both and their sum.

    Notes
    -----
    effects = 10 · seats + 10 · L + 30 kg (older edition; later ones are cited without the 30);
    passengers = 75 kg each.  The published example with 3 passengers besides the driver and
    L = 6.0 m has 120 kg of effects, so its seats are the passengers'.

    References
    ----------
    [en-1646-2]

    Examples
    --------
    >>> older_effects(seats=3, passengers=3, length_mm=6000).total_kg
    345.0
    """
    effects_kg = (
        limit_kg("weights.en-effects-seat") * seats
        + limit_kg("weights.en-effects-metre") * length_mm / PER_M
        + limit_kg("weights.en-effects-fixed")
    )
    passengers_kg = limit_kg("weights.en-passenger") * passengers
    return Effects(
        effects_kg=effects_kg, passengers_kg=passengers_kg, total_kg=effects_kg + passengers_kg
    )


def approval_load(*, seats: int, length_mm: float, fresh_kg: float, gas_kg: float) -> ApprovalLoad:
    """Return what the UK individual approval adds to the kerbside mass of a motor caravan.

    Parameters
    ----------
    seats
        Travel seats, the driver's included.
    length_mm
        Overall length. [mm]
    fresh_kg
        Fresh tanks full. [kg]
    gas_kg
        Gas stores full, without their shells. [kg]

    Returns
    -------
    ApprovalLoad
        Each line and the sum.

    Notes
    -----
    68 kg and 7 kg a seat, 10 kg a seat and 10 kg a metre, 90 % of fresh water and of gas.

    References
    ----------
    [uk-individual-approval-manual]

    Examples
    --------
    >>> approval_load(seats=4, length_mm=6000, fresh_kg=100, gas_kg=20).total_kg
    508.0
    """
    lines = {
        "occupants_kg": seats * limit_kg("weights.uk-person"),
        "luggage_kg": seats * limit_kg("weights.uk-luggage"),
        "seat_extra_kg": seats * limit_kg("weights.uk-seat-extra"),
        "length_extra_kg": limit_kg("weights.uk-metre-extra") * length_mm / PER_M,
        "water_kg": fresh_kg * limit("weights.uk-water-share").value,
        "gas_kg": gas_kg * limit("weights.uk-gas-share").value,
    }
    return ApprovalLoad(**lines, total_kg=sum(lines.values()))
