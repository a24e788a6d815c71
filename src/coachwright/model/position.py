"""A coordinate as written: a length, or where the fitting stands against something else."""

import re
from typing import Annotated, Any, Literal

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, core_schema

from coachwright import units
from coachwright.model.record import Record, fault

Kind = Literal[
    "behind",
    "ahead of",
    "right of",
    "left of",
    "above",
    "under",
    "flush front",
    "flush rear",
    "flush left",
    "flush right",
    "flush bottom",
    "flush top",
    "centred on",
    "against",
]

AXIS_WORDS: tuple[tuple[str, ...], ...] = (
    ("behind", "ahead of", "flush front", "flush rear", "centred on", "against"),
    ("right of", "left of", "flush left", "flush right", "centred on", "against"),
    ("above", "under", "flush bottom", "flush top", "centred on", "against"),
)
"""The words that may stand on each axis."""
AXIS_FACES: tuple[tuple[str, ...], ...] = (
    ("cab line", "rear doors", "outside front", "outside rear"),
    ("left wall", "right wall", "centreline", "outside left", "outside right"),
    ("floor", "ceiling", "roof", "ground"),
)
"""The faces that a fitting can stand against on each axis."""

_WORDS = "|".join(dict.fromkeys(word for words in AXIS_WORDS for word in words))
_FORM = re.compile(
    rf"^(?P<kind>{_WORDS})\s+(?P<target>[a-z][a-z0-9 -]*?)(?:\s+(?P<gap>[+-]?\d.*))?$"
)
EXAMPLES = ('"650 mm"', '"behind galley 20 mm"', '"against left wall"')


class Relation(Record):
    """Where a fitting stands along one axis, told by something else.

    The gap is counted away from what it stands against (``behind galley 20 mm``), inwards from a
    face of the shell or of a fitting it is flush with, or rearwards, to the right and upwards from
    a centre.
    """

    kind: Kind
    target: str
    gap_mm: float
    text: str
    """As written."""


def read_position(text: object, *, from_file: bool) -> float | Relation:
    """Read one coordinate.

    Raises
    ------
    pydantic_core.PydanticCustomError
        Where it is neither a length nor a relation.
    """
    if isinstance(text, Relation):
        return text
    if isinstance(text, (int, float)) and not isinstance(text, bool) and not from_file:
        return float(text)
    match = _FORM.match(" ".join(text.split())) if isinstance(text, str) else None
    if match is None:
        parsed = units.parse(text, "length")
        if isinstance(parsed, units.QuantityFault):
            raise _form_fault(parsed.found)
        return parsed
    gap_mm = units.parse(match["gap"], "length") if match["gap"] else 0.0
    if isinstance(gap_mm, units.QuantityFault):
        raise fault(f'"{text}"', gap_mm.allowed, f"give the gap as a length: {gap_mm.action}")
    kind: Any = match["kind"]
    return Relation(kind=kind, target=match["target"], gap_mm=gap_mm, text=str(text))


def _form_fault(found: str) -> Exception:
    return fault(
        found,
        "a length, or a word such as behind, right of, above, flush front, centred on, against "
        "with the name of a fitting or a face of the shell, and a gap where one is wanted",
        f"write it such as {', '.join(EXAMPLES)}",
    )


class _PositionField:
    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        return core_schema.with_info_plain_validator_function(
            lambda value, info: read_position(value, from_file=bool(info.context)),
            serialization=core_schema.plain_serializer_function_ser_schema(
                _written, when_used="always"
            ),
        )

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return {
            "type": "string",
            "examples": [example.strip('"') for example in EXAMPLES],
            "description": "a length, or where it stands against a fitting or the shell",
        }


def _written(position: float | Relation) -> str:
    return position.text if isinstance(position, Relation) else units.written(position, "length")


Position = Annotated[float | Relation, _PositionField()]
