"""What the stage hands to its subjects."""

import pytest

from coachwright.wishes.stage import stage
from tests.rules.test_wishes_rules import EXTINGUISHER, SMOKE, bed, priced, seat
from tests.rules.water_pieces import US, with_parts
from tests.support.builds import Data, build, part


def test_seats_are_the_vehicles_and_the_fitted_ones() -> None:
    changes = with_parts((seat("lap"), {"turn": "180 deg"})) | {
        "brief.travellers.1.seat": "piece-a.left"
    }
    made = stage(build(changes))
    assert [(p.name, p.facing, p.taken_by) for p in made.places] == [
        ("driver", "forward", "ada"),
        ("passenger", "forward", ""),
        ("piece-a.left", "rearward", "ben"),
    ]
    assert made.belted == 3
    assert made.belted_wanted == 2


def test_figures_are_counts_with_workings() -> None:
    made = stage(build(with_parts((bed(), {}), (bed(berths=1), {}))))
    assert [(f.name, f.value) for f in made.figures] == [
        ("wishes.belted-seats", 2),
        ("wishes.berths", 3),
    ]
    for figure in made.figures:
        assert figure.working is not None
        assert figure.working.result == figure.value


def test_the_longest_sleeper_lies_in_the_longest_bed() -> None:
    made = stage(build(with_parts((bed("1700 mm", 1), {}), (bed("1950 mm", 1), {}))))
    assert [b.longest_stature_mm for b in made.beds] == [1700, 1810]


@pytest.mark.parametrize(
    ("place", "budget", "currency"),
    [
        ({}, None, "EUR"),
        (US, None, "USD"),
        ({"brief.jurisdiction": "uk"}, None, "GBP"),
        (US, "900.00 GBP", "GBP"),
    ],
)
def test_the_currency_is_the_budgets_or_the_places(
    place: Data, budget: str | None, currency: str
) -> None:
    made = stage(build(place | {"brief.budget": budget}))
    assert made.price.currency == currency
    assert made.price.price_minor == 0


def test_sheet_goods_are_bought_whole_for_all_surfaces_together() -> None:
    board = part(
        "board",
        body={"size": ["2000 mm", "1000 mm", "9 mm"], "mass": "9 kg"},
        lining={"density": "500 kg/m3", "thickness": "9 mm"},
        **priced("40.00 EUR"),
    )
    finishes = [
        {"part": "board", "surface": "walls", "area": "3 m2"},
        {"part": "board", "surface": "ceiling", "area": "2 m2"},
    ]
    made = stage(build({"own_parts": [board], "finishes": finishes}))
    assert made.price.price_minor == 12_000
    flat = board | {"body": {"size": ["0 mm", "1000 mm", "9 mm"], "mass": "9 kg"}}
    made = stage(build({"own_parts": [flat], "finishes": finishes}))
    assert made.price.price_minor is None
    assert made.price.without_price == ("board",)


def test_alarms_extinguishers_and_musts_are_found() -> None:
    pieces: tuple[tuple[Data, Data], ...] = (
        (SMOKE, {}),
        (EXTINGUISHER, {}),
        ({"detector": {"senses": ["CO"]}}, {}),
    )
    made = stage(build(with_parts(*pieces) | {"brief.must_have": ["detector", "bed"]}))
    assert made.smoke_alarms == ("piece-a",)
    assert made.extinguishers == ("piece-b",)
    assert [(w.facet, w.count) for w in made.must_have] == [("detector", 2), ("bed", 0)]
