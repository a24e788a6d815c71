"""Payload statements of the United States."""

from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.model.working import Given, Working
from coachwright.reference import limit
from coachwright.weights.assumptions import limit_kg
from coachwright.weights.model import WaterLine


@dataclass(frozen=True, kw_only=True, slots=True)
class Occc:
    """Occupant and cargo carrying capacity.

    Attributes
    ----------
    occupants_kg
        150 lb for each belted seat.
    covers_belts
        The capacity is at least that.
    """

    occc_kg: float
    occupants_kg: float
    covers_belts: bool
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class LeastGross:
    """The lower bound of the gross rating."""

    least_kg: float
    occupants_kg: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class RelabelThreshold:
    """Mass that may be added before first retail sale without correcting the label."""

    threshold_kg: float
    working: Working


@dataclass(frozen=True, kw_only=True, slots=True)
class NormalOccupants:
    """Occupants of the normal load, by row of seats from the front."""

    rows: tuple[int, ...]

    @property
    def total(self) -> int:
        """Number of occupants."""
        return sum(self.rows)


NORMAL_ROWS: tuple[tuple[int, tuple[int, ...]], ...] = (
    (4, (2,)),
    (10, (2, 1)),
    (15, (2, 1, 1, 1)),
    (22, (2, 2, 2, 1)),
)
"""Greatest seating capacity → occupants by row: 49 CFR 571.110, Table I."""


def occc(*, gross_kg: float, unloaded_kg: float, belts: int) -> Occc:
    """Return the occupant and cargo carrying capacity and whether it covers the belts.

    Parameters
    ----------
    gross_kg
        Gross vehicle weight rating. [kg]
    unloaded_kg
        Unloaded vehicle weight with full LP gas. [kg]
    belts
        Seats with a belt, the driver's included.

    Returns
    -------
    Occc
        With working.

    Notes
    -----
    OCCC = GVWR - UVW; it must be at least 150 lb for each belted seat.  Water, occupants, cargo
    and the tongue load of a trailer all use it up; LP gas does not.

    References
    ----------
    [us-49cfr571-110], [us-49cfr571-120], [nhtsa-08-003469]

    Examples
    --------
    >>> found = occc(gross_kg=4105.01, unloaded_kg=3447.30, belts=4)
    >>> round(found.occc_kg, 2), found.covers_belts
    (657.71, True)
    """
    capacity_kg = gross_kg - unloaded_kg
    occupants_kg = belts * limit_kg("weights.us-occupant")
    return Occc(
        occc_kg=capacity_kg,
        occupants_kg=occupants_kg,
        covers_belts=capacity_kg >= occupants_kg,
        working=Working(
            expression="OCCC = GVWR - UVW",
            given=(
                Given(symbol="GVWR", meaning="gross rating", value=gross_kg, unit="kg"),
                Given(
                    symbol="UVW",
                    meaning="unloaded vehicle weight, LP gas full",
                    value=unloaded_kg,
                    unit="kg",
                    source="weights.uvw",
                ),
            ),
            result=capacity_kg,
            unit="kg",
            references=(label_standard(gross_kg=gross_kg), "nhtsa-08-003469"),
            note=f"must cover {belts} belted seats at 150 lb; water counts against it",
        ),
    )


def least_gross(*, unloaded_kg: float, cargo_kg: float, seats: int) -> LeastGross:
    """Return the least gross rating that the vehicle may be given.

    Parameters
    ----------
    unloaded_kg
        Unloaded vehicle weight. [kg]
    cargo_kg
        Rated cargo and luggage load, full fresh water included. [kg]
    seats
        Designated seating capacity, the driver's seat included.

    Returns
    -------
    LeastGross
        With working.

    Notes
    -----
    GVWR_min = UVW + cargo + 150 lb · DSC.

    References
    ----------
    [us-49cfr567], [nhtsa-aiam2225], [nhtsa-aiam1610]

    Examples
    --------
    >>> from coachwright.unit_table import LB
    >>> round(least_gross(unloaded_kg=9180 * LB, cargo_kg=0, seats=6).least_kg / LB)
    10080
    """
    occupant_kg = limit_kg("weights.us-occupant")
    least_kg = unloaded_kg + cargo_kg + seats * occupant_kg
    return LeastGross(
        least_kg=least_kg,
        occupants_kg=seats * occupant_kg,
        working=Working(
            expression="GVWR_min = UVW + cargo + DSC · 150 lb",
            given=(
                Given(
                    symbol="UVW",
                    meaning="unloaded vehicle weight",
                    value=unloaded_kg,
                    unit="kg",
                    source="weights.uvw",
                ),
                Given(
                    symbol="cargo",
                    meaning="cargo, contents, luggage and full fresh water",
                    value=cargo_kg,
                    unit="kg",
                ),
                Given(
                    symbol="DSC", meaning="designated seating capacity", value=seats, unit="count"
                ),
                Given(symbol="150 lb", meaning="an occupant", value=occupant_kg, unit="kg"),
            ),
            result=least_kg,
            unit="kg",
            references=("us-49cfr567", "nhtsa-aiam2225", "nhtsa-aiam1610"),
        ),
    )


def relabel_threshold(*, gross_kg: float) -> RelabelThreshold:
    """Return the added mass above which the load label must be corrected.

    Parameters
    ----------
    gross_kg
        Gross vehicle weight rating. [kg]

    Returns
    -------
    RelabelThreshold
        With working.

    Notes
    -----
    threshold = min(0.015 · GVWR, 100 lb); the break-even is at 6,667 lb.  Weight added between
    the labelling and the first retail sale.

    References
    ----------
    [us-72fr68442]

    Examples
    --------
    >>> round(relabel_threshold(gross_kg=4105.0).threshold_kg, 1)
    45.4
    """
    share_frac = limit("weights.us-relabel-share").value
    most_kg = limit_kg("weights.us-relabel-mass")
    threshold_kg = min(share_frac * gross_kg, most_kg)
    return RelabelThreshold(
        threshold_kg=threshold_kg,
        working=Working(
            expression="threshold = min(s · GVWR, 100 lb)",
            given=(
                Given(symbol="s", meaning="share", value=share_frac, unit="frac"),
                Given(symbol="GVWR", meaning="gross rating", value=gross_kg, unit="kg"),
                Given(symbol="100 lb", meaning="greatest", value=most_kg, unit="kg"),
            ),
            result=threshold_kg,
            unit="kg",
            references=("us-72fr68442",),
        ),
    )


def water_line(*, fresh_l: float) -> WaterLine:
    """Return the water line of the label.

    Parameters
    ----------
    fresh_l
        Fresh tanks and what else holds fresh water, full. [L]

    Returns
    -------
    WaterLine
        In both ways the label counts.

    Notes
    -----
    1 kg/L and 8.3 lb/US gal; the two are not exact conversions of each other.

    References
    ----------
    [nhtsa-08-003469]

    Examples
    --------
    >>> round(water_line(fresh_l=113.562).label_lb_kg / 0.45359237, 1)
    249.0
    """
    return WaterLine(
        fresh_l=fresh_l,
        label_kg=fresh_l * limit("weights.label-water").value,
        label_lb_kg=fresh_l * limit("weights.us-label-water").value,
    )


def capacity_weight_kg(*, cargo_kg: float, seats: int) -> float:
    """Return the vehicle capacity weight.

    Parameters
    ----------
    cargo_kg
        Rated cargo and luggage load. [kg]
    seats
        Designated seating capacity, the driver's seat included.

    Notes
    -----
    VCW = cargo + 68 kg · DSC.

    References
    ----------
    [us-49cfr571-110]

    Examples
    --------
    >>> capacity_weight_kg(cargo_kg=400, seats=4)
    672.0
    """
    return cargo_kg + seats * limit_kg("weights.us-occupant-metric")


def normal_occupants(*, seats: int) -> NormalOccupants:
    """Return the occupants of the normal load.

    Parameters
    ----------
    seats
        Designated seating capacity, from 2 to 22.

    Returns
    -------
    NormalOccupants
        By row.

    Raises
    ------
    OutOfRange
        Outside the table.

    Notes
    -----
    Table I of the standard: 2-4 seats: 2; 5-10: 2 + 1; 11-15: 2 + 1 + 1 + 1; 16-22: 2 + 2 + 2 + 1.

    References
    ----------
    [us-49cfr571-110]

    Examples
    --------
    >>> normal_occupants(seats=6).rows
    (2, 1)
    """
    for most, rows in NORMAL_ROWS:
        if NORMAL_ROWS[0][1][0] <= seats <= most:
            return NormalOccupants(rows=rows)
    raise OutOfRange("seats", seats, "2 to 22")


def label_standard(*, gross_kg: float) -> str:
    """Return which standard governs tyres and label: a key of ``docs/references.toml``.

    Parameters
    ----------
    gross_kg
        Gross vehicle weight rating. [kg]

    Notes
    -----
    Up to 4,536 kg (10,000 lb) 49 CFR 571.110, above 571.120.

    References
    ----------
    [nhtsa-08-003469]

    Examples
    --------
    >>> label_standard(gross_kg=4105.0)
    'us-49cfr571-110'
    """
    light = gross_kg <= limit_kg("weights.us-label-standard")
    return "us-49cfr571-110" if light else "us-49cfr571-120"
