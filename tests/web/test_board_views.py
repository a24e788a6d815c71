"""Beside the views of the board: offers of an exchange, the view that turns, what is seen."""

import pytest

from coachwright.actions.boarding import board, view_named, view_showing, views_of
from coachwright.actions.exchanging import belong_together, of_one_part, offers, others_alike
from coachwright.actions.together import pin
from coachwright.actions.turning import solids
from coachwright.assess import Assessment, assess
from coachwright.model.build import Mounting
from tests.web.test_edits_of_fittings import CATALOGUE, laid


@pytest.fixture(scope="module")
def night() -> Assessment:
    return assess(laid("night-watch").build)


def test_offers_begin_with_the_same_voltage_and_the_most_capacity() -> None:
    battery = laid("night-watch").build.fitted("battery-left")
    assert battery is not None
    found = offers(CATALOGUE, battery, "metric", "EUR")
    ids = [offer.part.id for offer in found]
    assert battery.part.id not in ids
    volts = [part.battery.nominal_v for i in ids if (part := CATALOGUE.part(i)).battery]
    same = [v == battery.part.battery.nominal_v for v in volts] if battery.part.battery else []
    assert same == sorted(same, reverse=True)
    assert ids[0] == "lfp-12v-460ah-heated"


def test_an_offer_says_what_it_weighs_and_costs_more() -> None:
    battery = laid("night-watch").build.fitted("battery-left")
    assert battery is not None
    by_id = {o.part.id: o for o in offers(CATALOGUE, battery, "metric", "EUR")}
    bigger, smaller = by_id["lfp-12v-460ah-heated"], by_id["lfp-12v-100ah"]
    # 45 kg and 2480 EUR against 34 kg and 1850 EUR
    assert (bigger.heavier, bigger.dearer) == ("+11.0 kg", "+630.00 EUR")
    assert smaller.heavier.startswith("−")
    assert smaller.dearer.startswith("−")


def test_a_price_that_nobody_knows_is_not_compared() -> None:
    battery = laid("night-watch").build.fitted("battery-left")
    assert battery is not None
    assert {o.dearer for o in offers(CATALOGUE, battery, "metric", "CHF")} == {""}


@pytest.mark.parametrize("name", ["solar-front", "fresh-tank", "galley"])
def test_everything_offered_serves_the_same_purpose(name: str) -> None:
    fitted = laid("night-watch").build.fitted(name)
    assert fitted is not None
    found = offers(CATALOGUE, fitted, "us", "USD")
    assert found
    assert fitted.part.id not in {offer.part.id for offer in found}


def test_a_bank_is_found_by_its_part() -> None:
    build = laid("night-watch").build
    assert others_alike(build, ("battery-left",)) == ("battery-middle", "battery-right")
    assert others_alike(build, ("battery-left", "battery-right")) == ("battery-middle",)
    assert others_alike(build, ()) == ()
    assert of_one_part(build, ("battery-left", "battery-right"))
    assert not of_one_part(build, ("battery-left", "galley"))
    parts = {f.name: f.part for f in build.fittings}
    assert belong_together(parts["battery-left"])
    assert not belong_together(parts["galley"])


def test_the_view_that_turns_has_everything_with_the_boxes_of_the_layout(
    night: Assessment,
) -> None:
    found = solids(night)
    by_name = {each.name: each for each in found.solids if each.name}
    stands = {f.name for f in night.build.fittings if f.fitting.mounting is not Mounting.WHEELS}
    assert set(by_name) == stands
    assert by_name["sink"].within == "galley"
    layout = {body.name: body for body in night.layout.solids}
    for name, each in by_name.items():
        if each.round_axis is None:
            assert each.boxes_mm == tuple((b.low_mm, b.high_mm) for b in layout[name].boxes)
    assert sum(each.words == "wheel" for each in found.solids) == 4


def test_its_walls_face_inwards_and_its_sides_stand_at_the_overall_width(
    night: Assessment,
) -> None:
    found = solids(night)
    for corners, sense in found.walls_mm:
        assert all(corner[1] * sense < 0 for corner in corners if sense)
    half_mm = night.build.vehicle.outside.width_mm / 2
    left, right = found.sides_mm
    assert {corner[1] for corner in left} == {-half_mm}
    assert {corner[1] for corner in right} == {half_mm}


def test_a_view_is_found_that_draws_a_fitting(night: Assessment) -> None:
    hip = view_named("plan@hip")
    shown = {piece.name for piece in board(night, hip, "metric").pieces if piece.shown}
    assert "battery-left" not in shown
    view = view_showing(night, "battery-left")
    assert view is not None
    assert view in views_of(night.build)
    assert any(
        piece.name == "battery-left" and piece.shown
        for piece in board(night, view, "metric").pieces
    )
    assert view_showing(night, "sofa") is None


def test_the_board_says_what_is_pinned() -> None:
    here = laid("night-watch")
    pinned = here.then(pin(here.sheet, here.build, ("galley",), pinned=True)).build
    found = board(assess(pinned), view_named("plan@hip"), "metric")
    assert [piece.name for piece in found.pieces if piece.pinned] == ["galley"]
