"""What the cards of the order book say."""

import pytest

from coachwright.actions.order_book import Beginning, Card, card_of_beginning, text_of
from coachwright.actions.order_book import _card_of_sheet as card_of_sheet
from coachwright.catalogue.loading import Catalogue
from coachwright.store.editing import read_sheet
from coachwright.store.edits import Take, edited


def _beginning(demo: str) -> Beginning:
    return Beginning(kind="demo", id=demo, name=demo)


def _facts(card: Card) -> dict[str, str]:
    return {fact.label: fact.value for fact in card.facts}


@pytest.mark.parametrize(
    ("demo", "label", "value"),
    [
        ("night-watch", "Off grid in summer", "2.2 to 9.7 days"),
        ("four-seats", "Off grid in summer", "29.8 days or more"),
        ("troubled", "Off grid in winter", "0.2 to 0.3 days"),
    ],
)
def test_a_card_promises_bounds_and_never_one_number_of_days(
    demo: str, label: str, value: str
) -> None:
    assert _facts(card_of_beginning(_beginning(demo), Catalogue(), "metric"))[label] == value


def test_an_unknown_caution_that_nobody_accepted_is_open() -> None:
    text = text_of(_beginning("four-seats"), Catalogue())
    assert read_sheet(text).decisions
    assert card_of_sheet(text, Catalogue(), "metric").worst_kind == ""
    bare = edited(text, (Take(path=("decisions",)),))
    assert card_of_sheet(bare, Catalogue(), "metric").worst_kind == "unknown"
