"""Money: whole minor units of one currency."""

import re
from typing import Annotated, Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, core_schema

from coachwright.model.record import Record, fault

CURRENCIES = ("EUR", "GBP", "USD")
_MONEY = re.compile(r"^(?P<units>\d+)(?:\.(?P<minor>\d{2}))?\s+(?P<currency>[A-Z]{3})$")


class Money(Record):
    """An amount in minor units (cents, pence) of one currency."""

    amount_minor: int
    currency: str

    def text(self) -> str:
        """Return the amount as files hold it, such as ``"1250.00 EUR"``."""
        return f"{self._digits('')} {self.currency}"

    def shown(self) -> str:
        """Return the amount for people, such as ``"1,250.00 EUR"``."""
        return f"{self._digits(',')} {self.currency}"

    def _digits(self, separator: str) -> str:
        whole, minor = divmod(abs(self.amount_minor), 100)
        sign = "-" if self.amount_minor < 0 else ""
        return f"{sign}{whole:{separator}}.{minor:02d}"


def read_money(text: object) -> Money:
    """Read an amount such as ``"1250.00 EUR"``.

    Raises
    ------
    pydantic_core.PydanticCustomError
        Where the text is not an amount in a known currency.
    """
    if isinstance(text, Money):
        return text
    match = _MONEY.match(text.strip()) if isinstance(text, str) else None
    if match is None or match["currency"] not in CURRENCIES:
        raise fault(
            f"{text!r}".replace("'", '"'),
            f"an amount with two decimals or none and one of: {', '.join(CURRENCIES)}",
            'write an amount, such as "1250.00 EUR"',
        )
    minor = int(match["units"]) * 100 + int(match["minor"] or 0)
    return Money(amount_minor=minor, currency=match["currency"])


class _MoneyField:
    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(
            read_money,
            serialization=core_schema.plain_serializer_function_ser_schema(
                lambda money: money.text(), when_used="always"
            ),
        )

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return {"type": "string", "examples": ["1250.00 EUR"], "description": "money"}


MoneyText = Annotated[Money, _MoneyField()]
