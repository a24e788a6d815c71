"""A weighbridge ticket: predicted in its own state, tested, applied."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from coachwright.weights.cases import Axles, load_case
from coachwright.weights.model import Group, LoadCase, TicketCheck, Weights
from coachwright.weights.stage import stage
from tests.support.builds import Data
from tests.support.builds import build as build_with
from tests.weights.test_stage import CAMPER, camper

STATE: Data = {"date": "2026-05-04", "fuel": "50 %", "aboard": ["ada"]}


def weighed(**reading: object) -> Weights:
    return camper({"ticket": STATE | reading})


def check_of(weights: Weights) -> TicketCheck:
    assert weights.ticket is not None
    return weights.ticket


def again(weights: Weights) -> LoadCase:
    """Return the ticket's own state, weighed with the corrections aboard."""
    check = check_of(weights)
    shares = {load.item: load.share_frac for load in check.predicted.loads}
    shares |= {item.name: 1.0 for item in check.corrections}
    return load_case(
        name="again",
        label="again",
        items=weights.items,
        shares_frac=shares,
        axles=Axles(wheelbase_mm=4000, track_front_mm=1800, track_rear_mm=1780),
    )


def test_the_model_predicts_exactly_the_ticket_s_state() -> None:
    check = check_of(
        weighed(total="2300 kg", fresh="25 %", grey="50 %", gas="0 %", cargo_aboard=True)
    )
    loads = {load.item: load.mass_kg for load in check.predicted.loads}
    assert loads["vehicle.fuel"] == pytest.approx(37.8)
    assert loads["tank.water"] == pytest.approx(25)
    assert loads["waste.water"] == pytest.approx(40)
    assert loads["toilet.waste"] == pytest.approx(9)
    assert loads["boiler.hot-water"] == pytest.approx(10), "full while fresh water is aboard"
    assert {"traveller.ada", "cargo.kayak", "luggage.ada", "locker.contents"} <= set(loads)
    assert not {"traveller.ben", "bottle.gas"} & set(loads)


def test_nothing_of_the_luggage_is_aboard_without_the_cargo() -> None:
    loads = {load.item for load in check_of(weighed(total="2200 kg")).predicted.loads}
    assert not {"cargo.kayak", "luggage.ada", "locker.contents", "boiler.hot-water"} & loads


@settings(max_examples=25, deadline=None)
@given(
    st.floats(min_value=900, max_value=1500),
    st.floats(min_value=700, max_value=1500),
)
def test_axle_readings_are_reproduced(front: float, rear: float) -> None:
    weights = weighed(
        total=f"{front + rear:.3f} kg", front=f"{front:.3f} kg", rear=f"{rear:.3f} kg"
    )
    found = again(weights)
    assert found.front.nominal_kg == pytest.approx(front, abs=1e-3)
    assert found.rear.nominal_kg == pytest.approx(rear, abs=1e-3)
    predicted = check_of(weights).predicted
    assert found.cg_y.nominal_mm == pytest.approx(predicted.cg_y.nominal_mm, abs=3), (
        "without wheel readings the sides stay as the model has them, but for unlike tracks"
    )
    assert found.cg_height.nominal_mm == pytest.approx(predicted.cg_height.nominal_mm)


@pytest.mark.parametrize(
    "reading",
    [
        {"total": "2200 kg", "front": "1300 kg"},
        {"total": "2200 kg", "rear": "900 kg"},
    ],
)
def test_one_axle_and_the_total_give_the_other(reading: Data) -> None:
    found = again(weighed(**reading))
    assert found.front.nominal_kg == pytest.approx(1300)
    assert found.rear.nominal_kg == pytest.approx(900)


WHEELS: Data = {
    "front_left": "660 kg",
    "front_right": "640 kg",
    "rear_left": "430 kg",
    "rear_right": "480 kg",
}


def test_wheel_readings_give_axles_and_the_lateral_moment() -> None:
    weights = weighed(total="2210 kg", wheels=WHEELS)
    found = again(weights)
    assert found.front.nominal_kg == pytest.approx(1300)
    assert found.rear.nominal_kg == pytest.approx(910)
    moment = (-20 * 1800 + 50 * 1780) / 2
    assert found.total.nominal_kg * found.cg_y.nominal_mm == pytest.approx(moment)
    rows = [row.subject for row in check_of(weights).rows]
    assert rows[3:] == [
        "front left wheel",
        "front right wheel",
        "rear left wheel",
        "rear right wheel",
    ]


def test_a_total_alone_corrects_the_total_and_keeps_the_axle_split() -> None:
    weights = weighed(total="2200 kg")
    check = check_of(weights)
    found = again(weights)
    assert found.total.nominal_kg == pytest.approx(2200)
    assert found.cg_x.nominal_mm == pytest.approx(check.predicted.cg_x.nominal_mm)
    assert [row.subject for row in check.rows] == ["vehicle"]
    assert "unproven" in check.applied


def test_the_difference_is_tested_against_model_and_scale_together() -> None:
    """Half-widths of model and scale in quadrature; the model's is (high - nominal) 1.96/1.645."""
    check = check_of(weighed(total="2200 kg", scale_error="40 kg"))
    predicted = check.predicted.total
    half = (predicted.high_kg - predicted.nominal_kg) * 1.95996 / 1.64485
    row = check.rows[0]
    assert row.bound_kg == pytest.approx(math.hypot(half, 40), rel=1e-4)
    assert row.difference_kg == pytest.approx(2200 - predicted.nominal_kg)
    assert row.within is (abs(row.difference_kg) <= row.bound_kg)


def test_the_correction_stands_in_every_load_case_and_statement() -> None:
    before, after = camper(), weighed(total="2300 kg", front="1350 kg", rear="950 kg")
    extra = sum(item.mass_kg for item in check_of(after).corrections)
    for case in before.cases:
        corrected = after.case(case.name)
        assert corrected.total.nominal_kg - case.total.nominal_kg == pytest.approx(extra)
        assert any(load.group is Group.CORRECTION for load in corrected.loads)
    parts = {part.name for part in after.statement("us-uvw").components}
    assert "weighbridge correction" in parts


def test_a_weighing_narrows_the_bounds() -> None:
    before = camper().case("travelling")
    axles = weighed(total="2200 kg", front="1300 kg", rear="900 kg").case("travelling")
    alone = weighed(total="2200 kg").case("travelling")

    def spread(case: LoadCase, what: str) -> float:
        band = getattr(case, what)
        return float(band.high_kg - band.nominal_kg)

    assert spread(axles, "total") < spread(before, "total") / 2
    assert spread(axles, "rear") < spread(before, "rear")
    assert spread(alone, "total") < spread(before, "total") / 2
    assert spread(alone, "rear") > spread(axles, "rear"), "the axle split stays unproven"


def test_weighed_in_the_same_state_only_the_scale_is_uncertain() -> None:
    """As delivered has the ticket's own state: 10 kg · 1.645 / 1.960 = 8.39 kg; by hand."""
    changes = CAMPER | {"ticket": {"date": "2026-05-04", "total": "2150 kg", "fuel": "90 %"}}
    case = stage(build_with(changes)).case("as-delivered")
    assert case.total.nominal_kg == pytest.approx(2150)
    assert case.total.high_kg - 2150 == pytest.approx(8.39, abs=0.01)


def test_the_ticket_is_told_where_luggage_is_left_out() -> None:
    assert any("weighbridge" in note for note in weighed(total="2200 kg").notes)
