"""The masses that rule books define, each with its components."""

from collections.abc import Iterator, Mapping, Sequence

from coachwright.model.vehicle import Ratings
from coachwright.model.working import Given, Working
from coachwright.reference import limit, table
from coachwright.units import told
from coachwright.weights import europe, us
from coachwright.weights.assumptions import limit_kg
from coachwright.weights.model import (
    Component,
    Group,
    LoadCase,
    MassBand,
    Statement,
)
from coachwright.weights.scales import Scales, statutory_item
from coachwright.weights.seats import driver_reference
from coachwright.weights.states import WATER, group_shares_frac

EU_UK = ("eu", "uk")
CARGO_GROUPS = frozenset({Group.CONTENTS, Group.LUGGAGE, Group.CARGO}) | WATER
"""What the rated cargo of a US vehicle is taken to be."""
ADDED_GROUPS = frozenset({Group.FITTING, Group.FINISH, Group.WHEELS})
"""What the conversion adds to the base vehicle."""


def statements(scales: Scales) -> tuple[Statement, ...]:
    """Return every statement; all of them, whatever the jurisdiction."""
    empties = {empty.name: empty for empty in _empties(scales)}
    return (
        *empties.values(),
        *_us_statements(scales, empties["us-uvw"]),
        *_eu_statements(scales, empties["eu-running-order"]),
        *_uk_statements(scales, empties["uk-kerbside"]),
    )


def _empties(scales: Scales) -> Iterator[Statement]:
    fresh_kg = scales.group_kg(frozenset({Group.FRESH}))
    for row in table("weights_empty"):
        fresh_frac = float(row["fresh_frac"])
        if fresh_kg and float(row["fresh_l"]):
            fresh_frac = min(1.0, float(row["fresh_l"]) / fresh_kg)
        shares_frac = group_shares_frac(
            scales.items,
            {
                Group.FUEL: float(row["fuel_frac"]),
                Group.GAS: float(row["gas_frac"]),
                Group.FRESH: fresh_frac,
                Group.HOT_WATER: float(row["other_water_frac"]),
                Group.FLUSH_WATER: float(row["other_water_frac"]),
            },
        )
        driver_kg = float(row["driver_kg"])
        seat_mm = driver_reference(scales.build.vehicle)
        driver = statutory_item(scales, "statement.driver", driver_kg, seat_mm)
        case = scales.case(
            row["id"], row["title"], shares_frac, extra=(driver,) if driver_kg else ()
        )
        yield _state_statement(row, case)


def _state_statement(row: Mapping[str, str], case: LoadCase) -> Statement:
    components = tuple(_components(case))
    return Statement(
        name=row["id"],
        title=row["title"],
        jurisdictions=tuple(row["jurisdictions"].split()),
        mass=case.total,
        components=components,
        working=_sum_working(components, tuple(row["source"].split()), row["note"]),
        status=row["status"],
        front=case.front,
        rear=case.rear,
        note=row["note"],
    )


def _components(case: LoadCase) -> Iterator[Component]:
    by_group: dict[str, float] = {}
    for load in case.loads:
        name = "driver" if load.item == "statement.driver" else load.group.words
        by_group[name] = by_group.get(name, 0.0) + load.mass_kg
    for name, mass_kg in by_group.items():
        yield Component(name=name, mass_kg=mass_kg)


def _sum_working(
    components: Sequence[Component], references: tuple[str, ...], note: str = ""
) -> Working:
    return Working(
        expression="m = Σ mᵢ",
        given=tuple(
            Given(symbol="mᵢ", meaning=part.name, value=part.mass_kg, unit="kg")
            for part in components
        ),
        result=sum(part.mass_kg for part in components),
        unit="kg",
        references=references,
        note=note,
    )


def _statement(
    name: str,
    title: str,
    jurisdictions: tuple[str, ...],
    components: Sequence[Component],
    working: Working,
    *,
    spread: MassBand | None = None,
    status: str = "read",
) -> Statement:
    """Return a statement whose bounds stand as far off as those of `spread`."""
    mass_kg = sum(part.mass_kg for part in components)
    below_kg = spread.nominal_kg - spread.low_kg if spread else 0.0
    above_kg = spread.high_kg - spread.nominal_kg if spread else 0.0
    return Statement(
        name=name,
        title=title,
        jurisdictions=jurisdictions,
        mass=MassBand(nominal_kg=mass_kg, low_kg=mass_kg - below_kg, high_kg=mass_kg + above_kg),
        components=tuple(components),
        working=working,
        status=status,
        note=working.note,
    )


def _us_statements(scales: Scales, unloaded: Statement) -> Iterator[Statement]:
    gross_kg = scales.build.vehicle.ratings.gross_kg
    seating = scales.seating
    only = ("us",)
    capacity = us.occc(
        gross_kg=gross_kg, unloaded_kg=unloaded.mass.nominal_kg, belts=seating.belted
    )
    yield _statement(
        "us-occc",
        "Occupant and cargo carrying capacity (OCCC)",
        only,
        (
            Component(name="gross rating", mass_kg=gross_kg),
            Component(name="unloaded vehicle weight", mass_kg=-unloaded.mass.nominal_kg),
        ),
        capacity.working,
        spread=unloaded.mass,
    )
    occupants = (Component(name="150 lb for each belted seat", mass_kg=capacity.occupants_kg),)
    belts = ("nhtsa-08-003469",)
    yield _statement(
        "us-occupants", "Belted seats at 150 lb", only, occupants, _sum_working(occupants, belts)
    )
    cargo_kg = scales.group_kg(CARGO_GROUPS)
    least = us.least_gross(
        unloaded_kg=unloaded.mass.nominal_kg, cargo_kg=cargo_kg, seats=seating.travel
    )
    yield _statement(
        "us-least-gross",
        "Lower bound of the gross rating",
        only,
        (
            Component(name="unloaded vehicle weight", mass_kg=unloaded.mass.nominal_kg),
            Component(name="cargo and full fresh water", mass_kg=cargo_kg),
            Component(name="150 lb for each seat", mass_kg=least.occupants_kg),
        ),
        least.working,
        spread=unloaded.mass,
    )
    yield from _us_label(scales, cargo_kg)


def _us_label(scales: Scales, cargo_kg: float) -> Iterator[Statement]:
    ratings = scales.build.vehicle.ratings
    only = ("us",)
    capacity_kg = us.capacity_weight_kg(cargo_kg=cargo_kg, seats=scales.seating.travel)
    occupant = told(limit_kg("weights.us-occupant-metric"), "kg")
    capacity = (
        Component(name="cargo and full fresh water", mass_kg=cargo_kg),
        Component(name=f"{occupant} for each seat", mass_kg=capacity_kg - cargo_kg),
    )
    standard = us.label_standard(gross_kg=ratings.gross_kg)
    yield _statement(
        "us-capacity-weight",
        "Vehicle capacity weight",
        only,
        capacity,
        _sum_working(capacity, (standard,)),
    )
    yield from _us_limits(ratings)


def _us_limits(ratings: Ratings) -> Iterator[Statement]:
    only = ("us",)
    sums = (
        Component(name="front axle rating", mass_kg=ratings.front_axle_kg),
        Component(name="rear axle rating", mass_kg=ratings.rear_axle_kg),
    )
    yield _statement(
        "us-axle-sum",
        "Sum of the axle ratings",
        only,
        sums,
        _sum_working(sums, ("nhtsa-aiam0613",)),
    )
    threshold = us.relabel_threshold(gross_kg=ratings.gross_kg)
    share = told(limit("weights.us-relabel-share").value, "frac")
    most = told(limit_kg("weights.us-relabel-mass"), "kg")
    yield _statement(
        "us-relabel-threshold",
        "Added mass above which the label is corrected",
        only,
        (
            Component(
                name=f"the lesser of {share} of the gross rating and {most}",
                mass_kg=threshold.threshold_kg,
            ),
        ),
        threshold.working,
    )


def _eu_statements(scales: Scales, running: Statement) -> Iterator[Statement]:
    build, travel = scales.build, scales.seating.travel
    gross_kg = build.vehicle.ratings.gross_kg
    yield _statement(
        "eu-actual-mass",
        "Actual mass",
        EU_UK,
        running.components,
        _sum_working(
            running.components,
            ("eu-1230-2012",),
            "a one-off conversion: everything fitted is counted, so no optional equipment is left",
        ),
        spread=running.mass,
    )
    pay_kg = europe.pay_mass_left_kg(
        gross_kg=gross_kg, actual_kg=running.mass.nominal_kg, passengers=max(0, travel - 1)
    )
    seats_kg = gross_kg - running.mass.nominal_kg - pay_kg
    left = (
        Component(name="maximum laden mass", mass_kg=gross_kg),
        Component(name="actual mass", mass_kg=-running.mass.nominal_kg),
        Component(name="75 kg (68 + 7) for each passenger seat", mass_kg=-seats_kg),
    )
    yield _statement(
        "eu-pay-mass-left",
        "Pay-mass left with every seat taken",
        EU_UK,
        left,
        _sum_working(left, ("eu-1230-2012", "de-stvzo")),
        spread=running.mass,
    )
    yield from _eu_loads(scales)


def _eu_loads(scales: Scales) -> Iterator[Statement]:
    travel = scales.seating.travel
    length_mm = scales.build.vehicle.outside.length_mm
    pay = europe.minimum_pay_mass(people=travel, length_mm=length_mm)
    yield _statement(
        "eu-minimum-pay-mass",
        "Least pay-mass of a motor caravan",
        EU_UK,
        (Component(name="10 (n + L)", mass_kg=pay.least_kg),),
        pay.working,
    )
    passengers = max(0, travel - 1)
    effects = europe.older_effects(seats=passengers, passengers=passengers, length_mm=length_mm)
    older = (
        Component(name="personal effects", mass_kg=effects.effects_kg),
        Component(name="passengers", mass_kg=effects.passengers_kg),
    )
    yield _statement(
        "eu-older-effects",
        "Passengers and personal effects, older European standard",
        EU_UK,
        older,
        _sum_working(older, ("en-1646-2",), "later editions are cited without the fixed 30 kg"),
    )


def _uk_statements(scales: Scales, kerbside: Statement) -> Iterator[Statement]:
    build = scales.build
    load = europe.approval_load(
        seats=scales.seating.travel,
        length_mm=build.vehicle.outside.length_mm,
        fresh_kg=scales.group_kg(frozenset({Group.FRESH})),
        gas_kg=scales.group_kg(frozenset({Group.GAS})),
    )
    sheet = (
        Component(name="68 kg for each travel seat", mass_kg=load.occupants_kg),
        Component(name="7 kg of luggage for each", mass_kg=load.luggage_kg),
        Component(name="10 kg more for each", mass_kg=load.seat_extra_kg),
        Component(name="10 kg for each metre", mass_kg=load.length_extra_kg),
        Component(name="90 % of the fresh water", mass_kg=load.water_kg),
        Component(name="90 % of the gas", mass_kg=load.gas_kg),
    )
    source = ("uk-individual-approval-manual",)
    yield _statement(
        "uk-approval-load",
        "Load added to the kerbside mass",
        ("uk",),
        sheet,
        _sum_working(sheet, source),
    )
    laden = (Component(name="kerbside mass", mass_kg=kerbside.mass.nominal_kg), *sheet)
    yield _statement(
        "uk-approval-laden",
        "Kerbside mass with the added load",
        ("uk",),
        laden,
        _sum_working(laden, source),
        spread=kerbside.mass,
    )
