"""The shipped parts: every facet is there, and every body, price and size agrees with it."""

import math

import pytest

from coachwright.model.money import CURRENCIES
from coachwright.model.part import FACET_NAMES, Part
from coachwright.model.tyre_size import TyreSize
from tests.catalogue.shipped import PARTS, each, having

CONDUCTIVITY_W_PER_M_K = {
    "insulation-spray-foam-40": 0.026,
    "insulation-polyiso-25": 0.019,
    "insulation-polyiso-40": 0.019,
    "insulation-extruded-polystyrene-30": 0.026,
    "insulation-mineral-wool-40": 0.036,
}
"""ASHRAE Handbook Fundamentals, ch. 26, table 1."""


def test_there_are_enough_parts() -> None:
    assert len(PARTS) >= 165


@pytest.mark.parametrize("facet", FACET_NAMES)
def test_every_facet_is_used(facet: str) -> None:
    assert any(getattr(part, facet) is not None for part in PARTS.values())


@each
def test_the_id_is_the_name_of_the_file(part: Part) -> None:
    assert PARTS[part.id] is part


def test_names_tell_parts_apart() -> None:
    names = [part.name for part in PARTS.values()]
    assert len(set(names)) == len(names)


@each
def test_maker_and_supplier_are_left_to_the_shop(part: Part) -> None:
    assert (part.maker, part.supplier) == ("", "")
    assert part.description


@each
def test_its_body_is_a_thing(part: Part) -> None:
    body = part.body
    assert body.mass_kg > 0.0
    assert min(body.size_mm) > 0.0
    assert 0.01 <= body.mass_tolerance_frac <= 0.15
    assert body.source in ("weighed", "declared", "estimated")
    for centre_mm, size_mm in zip(body.centre_of_mass_mm(), body.size_mm, strict=True):
        assert 0.0 <= centre_mm <= size_mm
    for step in body.steps:
        for low_mm, high_mm, size_mm in zip(step.from_mm, step.to_mm, body.size_mm, strict=True):
            assert 0.0 <= low_mm < high_mm <= size_mm
    assert (body.shape == "steps") is bool(body.steps)


@each
def test_it_is_not_heavier_than_lead_or_lighter_than_foam(part: Part) -> None:
    """Lead 11,340 kg/m3; the lightest insulation of the catalogue 18 kg/m3."""
    volume_m3 = math.prod(part.body.size_mm) * 1e-9
    assert 2.0 < part.body.mass_kg / volume_m3 < 6000.0


@each
def test_it_has_a_price_in_every_currency_above_its_cost(part: Part) -> None:
    assert part.price is not None
    price = {money.currency: money.amount_minor for money in part.price.price}
    cost = {money.currency: money.amount_minor for money in part.price.cost}
    assert set(price) == set(cost) == set(CURRENCIES)
    for currency in CURRENCIES:
        assert 0 < cost[currency] < price[currency]
    assert part.price.lead_time_d > 0.0


def test_most_parts_say_the_work_of_fitting_them() -> None:
    with_labour = [part for part in PARTS.values() if part.labour is not None]
    assert len(with_labour) > 0.9 * len(PARTS)
    trades = {step.trade for part in with_labour if part.labour for step in part.labour.steps}
    assert trades == {"electrician", "fitter", "gas fitter", "joiner", "plumber", "upholsterer"}


@having("bed")
def test_a_bed_is_long_and_wide_enough_to_lie_in(part: Part) -> None:
    """Single 600 mm at least, double 1000: European leisure practice, no standard."""
    bed = part.bed
    assert bed is not None
    assert bed.length_mm >= 1600.0
    assert bed.width_mm >= (1000.0 if bed.berths == 2 and "pair" not in part.id else 600.0)
    assert bed.limit_kg is not None
    assert bed.limit_kg >= 65.0 * bed.berths


@having("seat")
def test_a_travel_seat_has_belts_and_evidence(part: Part) -> None:
    seat = part.seat
    assert seat is not None
    assert seat.travel_seat is (seat.belt != "none")
    assert bool(seat.anchorage_evidence) is seat.travel_seat
    assert len({place.name for place in seat.places}) == len(seat.places)
    for place in seat.places:
        for at_mm, size_mm in zip(place.reference_mm[:2], part.body.size_mm[:2], strict=True):
            assert 0.0 < at_mm < size_mm


@having("carcass")
def test_a_cabinet_stores_less_than_its_box(part: Part) -> None:
    carcass = part.carcass
    assert carcass is not None
    assert carcass.contents_limit_kg is not None
    assert 0.2 < carcass.storage_l / (math.prod(part.body.size_mm) * 1e-6) < 1.0


def _diameter_mm(size: TyreSize) -> float:
    return size.rim_mm + 2 * size.width_mm * size.aspect_frac


@having("tyre")
def test_a_tyre_is_as_large_as_its_size_says(part: Part) -> None:
    """Overall diameter d + 2 H, UN R54."""
    assert part.tyre is not None
    assert part.body.size_mm[2] == pytest.approx(_diameter_mm(part.tyre.size), abs=1.0)
    assert part.body.size_mm[1] == part.tyre.size.width_mm
    assert 20.0 < part.body.mass_kg < 40.0


@having("spare")
def test_a_spare_is_as_large_as_its_size_says(part: Part) -> None:
    assert part.spare is not None
    assert part.body.size_mm[2] == pytest.approx(_diameter_mm(part.spare.size), abs=1.0)


@having("ladder")
def test_a_ladder_carries_a_person(part: Part) -> None:
    """Rungs 254 to 356 mm apart: WAC 296-876-60030, 29 CFR 1910.23(b)."""
    ladder = part.ladder
    assert ladder is not None
    assert ladder.limit_kg is not None
    assert ladder.limit_kg >= 100.0
    if ladder.rung_spacing_mm is not None:
        assert 254.0 <= ladder.rung_spacing_mm <= 356.0


@having("insulation")
def test_insulation_weighs_and_insulates_as_published(part: Part) -> None:
    insulation = part.insulation
    assert insulation is not None
    assert insulation.thickness_mm == part.body.size_mm[2]
    mass_kg = math.prod(part.body.size_mm) * 1e-6 * insulation.density_kg_per_l
    assert part.body.mass_kg == pytest.approx(mass_kg, rel=0.02)
    if part.id in CONDUCTIVITY_W_PER_M_K:
        assert insulation.conductivity_w_per_m_k == CONDUCTIVITY_W_PER_M_K[part.id]
    assert 0.015 < insulation.conductivity_w_per_m_k < 0.05


@having("lining")
def test_a_lining_weighs_what_its_density_says(part: Part) -> None:
    assert part.lining is not None
    mass_kg = math.prod(part.body.size_mm) * 1e-6 * part.lining.density_kg_per_l
    assert part.body.mass_kg == pytest.approx(mass_kg, rel=0.02)


@having("opening")
def test_an_opening_is_clear_within_its_frame(part: Part) -> None:
    opening = part.opening
    assert opening is not None
    across_mm = sorted(part.body.size_mm)[1:]
    clear_mm = sorted((opening.clear_width_mm, opening.clear_height_mm))
    assert clear_mm[0] < across_mm[0]
    assert clear_mm[1] < across_mm[1]


@having("light")
def test_a_lamp_has_its_draw(part: Part) -> None:
    assert part.dc_load is not None


@having("access")
def test_an_access_zone_touches_its_part(part: Part) -> None:
    assert part.access is not None
    for zone in part.access.zones:
        for low_mm, high_mm, size_mm in zip(
            zone.from_mm, zone.to_mm, part.body.size_mm, strict=True
        ):
            assert low_mm < high_mm
            assert low_mm <= size_mm + 0.1
            assert high_mm >= 0.0
