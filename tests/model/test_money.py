"""Money is whole minor units of one currency."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter
from pydantic_core import PydanticCustomError

from coachwright.model.money import CURRENCIES, Money, MoneyText, read_money


@pytest.mark.parametrize(
    ("text", "amount_minor", "currency"),
    [
        ("1250.00 EUR", 125000, "EUR"),
        ("1250 GBP", 125000, "GBP"),
        ("0.05 USD", 5, "USD"),
        (" 19.90  EUR ", 1990, "EUR"),
    ],
)
def test_an_amount_is_read(text: str, amount_minor: int, currency: str) -> None:
    money = read_money(text)
    assert (money.amount_minor, money.currency) == (amount_minor, currency)


@pytest.mark.parametrize(
    "text",
    ["1,250.00 EUR", "1250", "1250.5 EUR", "-5 EUR", "5 eur", "5 CHF", "EUR 5", "", 5, None],
)
def test_what_is_no_amount_is_refused_with_an_example(text: object) -> None:
    with pytest.raises(PydanticCustomError) as caught:
        read_money(text)
    assert 'write an amount, such as "1250.00 EUR"' in str(caught.value)
    assert "EUR, GBP, USD" in str(caught.value)


def test_an_amount_is_shown_with_its_thousands_parted() -> None:
    assert Money(amount_minor=123456705, currency="USD").shown() == "1,234,567.05 USD"


@given(st.integers(0, 10**12), st.sampled_from(CURRENCIES))
def test_what_is_written_is_read_back(amount_minor: int, currency: str) -> None:
    adapter: TypeAdapter[Money] = TypeAdapter(MoneyText)
    money = Money(amount_minor=amount_minor, currency=currency)
    assert adapter.validate_python(adapter.dump_python(money)) == money
    assert adapter.validate_python(money) is money


def test_the_schema_is_text() -> None:
    assert TypeAdapter(MoneyText).json_schema()["type"] == "string"
