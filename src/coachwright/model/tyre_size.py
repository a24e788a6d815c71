"""The tyre size as printed on the sidewall."""

import re
from typing import Annotated, Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, core_schema

from coachwright.model.record import Record, fault

SPEED_SYMBOL_PATTERN = "^[J-NP-UHVWY]$"
"""The speed symbols that a tyre of such a vehicle can bear."""
_SIZE = re.compile(
    r"^(?P<kind>LT|P)?(?P<width>\d{3})/(?P<aspect>\d{2})\s?R(?P<rim>\d{2})(?P<c>C|CP)?$"
)


class TyreSize(Record):
    """A tyre size such as ``225/75R16C``.

    The letters before the width or after the rim mark the kind of tyre: ``LT`` light truck, ``C``
    or ``CP`` commercial, ``P`` or none passenger car.
    """

    width_mm: float
    aspect_frac: float
    rim_mm: float
    marking: str
    """``"LT"``, ``"P"``, ``"C"``, ``"CP"`` or empty."""
    text: str
    """As written."""


def read_tyre_size(text: object) -> TyreSize:
    """Read a tyre size.

    Parameters
    ----------
    text
        Such as ``"225/75R16C"`` or ``"LT245/75R16"``.

    Raises
    ------
    pydantic_core.PydanticCustomError
        Where the text is not a tyre size.
    """
    if isinstance(text, TyreSize):
        return text
    match = _SIZE.match(text.strip().upper()) if isinstance(text, str) else None
    if match is None:
        raise fault(
            f"{text!r}".replace("'", '"'),
            "width in mm / aspect in % R rim in in, with LT, P, C or CP where it is marked",
            'write the size as on the sidewall, such as "225/75R16C"',
        )
    return TyreSize(
        width_mm=float(match["width"]),
        aspect_frac=int(match["aspect"]) / 100,
        rim_mm=int(match["rim"]) * 25.4,
        marking=(match["kind"] or "") + (match["c"] or ""),
        text=str(text).strip(),
    )


class _TyreSizeField:
    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(
            read_tyre_size,
            serialization=core_schema.plain_serializer_function_ser_schema(
                lambda size: size.text, when_used="always"
            ),
        )

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return {"type": "string", "examples": ["225/75R16C"], "description": "tyre size"}


TyreSizeText = Annotated[TyreSize, _TyreSizeField()]
