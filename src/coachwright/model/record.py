"""The base of every record that is read from a file, and the types of its fields.

A field that holds a quantity carries its unit in its name (``mass_kg``); in a file it is spelt
without the unit (``mass = "24 kg"``).  Programs may give the internal name and a float.
"""

import ast
import inspect
import math
import textwrap
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise
from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from coachwright import units
from coachwright.unit_table import KINDS

FROM_FILE: Mapping[str, bool] = {"file": True}
"""The validation context that marks data read from a file: bare numbers are refused."""


class Record(BaseModel):
    """A frozen record; unknown fields are faults; files spell fields without their unit.

    The text under a field is its description.  It is read from the source when a schema is asked
    for, not at every start of the program (`field_texts`).
    """

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        alias_generator=units.strip_unit,
        validate_by_name=True,
        validate_by_alias=True,
        serialize_by_alias=True,
        ser_json_inf_nan="constants",
    )

    @classmethod
    def __get_pydantic_json_schema__(
        cls, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        """Return the JSON schema: fields described by the text under them, defaults as written."""
        made = handler(schema)
        properties = handler.resolve_ref_schema(made).get("properties", {})
        texts = field_texts(cls)
        for name, field in cls.model_fields.items():
            entry = properties.get(field.alias or name)
            if entry is None:
                continue
            if name in texts:
                kind = entry.get("description", "")
                entry["description"] = f"{texts[name]} ({kind})" if kind else texts[name]
            for mark in field.metadata:
                if isinstance(mark, Quantity) and isinstance(field.default, float):
                    entry["default"] = units.written(field.default, mark.kind)
        return made


def field_texts(record: type[BaseModel]) -> dict[str, str]:
    """Return the text under each field of a record that has one, by the field's name."""
    texts: dict[str, str] = {}
    for owner in reversed(record.__mro__):
        if not issubclass(owner, Record) or owner is Record:
            continue
        body = ast.parse(textwrap.dedent(inspect.getsource(owner))).body[0]
        statements = body.body if isinstance(body, ast.ClassDef) else []
        for field, text in pairwise(statements):
            if (
                isinstance(field, ast.AnnAssign)
                and isinstance(field.target, ast.Name)
                and isinstance(text, ast.Expr)
                and isinstance(text.value, ast.Constant)
                and isinstance(text.value.value, str)
            ):
                texts[field.target.id] = inspect.cleandoc(text.value.value)
    return {name: text for name, text in texts.items() if name in record.model_fields}


@dataclass(frozen=True, slots=True)
class Quantity:
    """Marks a float as a quantity of one kind, within limits given in the internal unit.

    Parameters
    ----------
    kind
        A key of `unit_table.KINDS`.
    least, most
        Smallest and largest value allowed, in the kind's internal unit.
    above
        The value must be larger than this.
    """

    kind: str
    least: float | None = None
    most: float | None = None
    above: float | None = None

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        """Return a schema that reads text with a unit and writes it back."""
        return core_schema.with_info_plain_validator_function(
            self._read,
            serialization=core_schema.plain_serializer_function_ser_schema(
                lambda value: units.written(value, self.kind), when_used="always"
            ),
        )

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        """Return the JSON schema: a string with a unit."""
        return {
            "type": "string",
            "pattern": r"^\s*[+-]?[0-9].*[A-Za-z%]+.*$",
            "examples": [KINDS[self.kind].example],
            "description": f"{self.kind.replace('_', ' ')} with its unit; one of "
            + ", ".join(units.allowed_units(self.kind)),
        }

    def _read(self, value: object, info: core_schema.ValidationInfo) -> float:
        if isinstance(value, (int, float)) and not isinstance(value, bool) and not info.context:
            number = float(value)
        else:
            parsed = units.parse(value, self.kind)
            if isinstance(parsed, units.QuantityFault):
                raise fault(parsed.found, parsed.allowed, parsed.action)
            number = parsed
        if not math.isfinite(number):
            raise fault(f"{number}", "a finite number", "give a value that can be measured")
        self._within(value, number)
        return number

    def _within(self, value: object, number: float) -> None:
        low = (self.least is not None and number < self.least) or (
            self.above is not None and number <= self.above
        )
        if low or (self.most is not None and number > self.most):
            raise fault(repr(value).replace("'", '"'), self._range(), "give a value within it")

    def _range(self) -> str:
        bounds = []
        if self.least is not None:
            bounds.append(f"at least {units.written(self.least, self.kind)}")
        if self.above is not None:
            bounds.append(f"more than {units.written(self.above, self.kind)}")
        if self.most is not None:
            bounds.append(f"at most {units.written(self.most, self.kind)}")
        return " and ".join(bounds)


def fault(found: str, allowed: str, action: str) -> PydanticCustomError:
    """Return a validation error that carries the three parts of a `Fault`."""
    return PydanticCustomError(
        "coachwright",
        "{found}; allowed: {allowed}; {action}",
        {"found": found, "allowed": allowed, "action": action},
    )


Length = Annotated[float, Quantity("length")]
LengthPos = Annotated[float, Quantity("length", above=0.0)]
LengthNonNeg = Annotated[float, Quantity("length", least=0.0)]
Mass = Annotated[float, Quantity("mass", least=0.0)]
MassPos = Annotated[float, Quantity("mass", above=0.0)]
Area = Annotated[float, Quantity("area", above=0.0)]
Volume = Annotated[float, Quantity("volume", least=0.0)]
VolumePos = Annotated[float, Quantity("volume", above=0.0)]
Flow = Annotated[float, Quantity("flow", above=0.0)]
WaterUse = Annotated[float, Quantity("water_use", least=0.0)]
FuelUse = Annotated[float, Quantity("fuel_use", least=0.0)]
GasUse = Annotated[float, Quantity("gas_use", least=0.0)]
Power = Annotated[float, Quantity("power", least=0.0)]
PowerPos = Annotated[float, Quantity("power", above=0.0)]
Energy = Annotated[float, Quantity("energy", least=0.0)]
EnergyUse = Annotated[float, Quantity("energy_use", least=0.0)]
TimeUse = Annotated[float, Quantity("time_use", least=0.0, most=24.0)]
Voltage = Annotated[float, Quantity("voltage", above=0.0)]
Current = Annotated[float, Quantity("current", least=0.0)]
CurrentPos = Annotated[float, Quantity("current", above=0.0)]
Charge = Annotated[float, Quantity("charge", above=0.0)]
Resistance = Annotated[float, Quantity("resistance", above=0.0)]
Time = Annotated[float, Quantity("time", least=0.0)]
Days = Annotated[float, Quantity("days", least=0.0)]
Temperature = Annotated[float, Quantity("temperature", least=-90.0, most=200.0)]
Fraction = Annotated[float, Quantity("fraction", least=0.0, most=1.0)]
TemperatureCoefficient = Annotated[
    float, Quantity("temperature_coefficient", least=-0.02, most=0.02)
]
Pressure = Annotated[float, Quantity("pressure", above=0.0)]
Speed = Annotated[float, Quantity("speed", above=0.0)]
Angle = Annotated[float, Quantity("angle", least=-360.0, most=360.0)]
Force = Annotated[float, Quantity("force", least=0.0)]
Moment = Annotated[float, Quantity("moment", above=0.0)]
Conductance = Annotated[float, Quantity("conductance", above=0.0)]
Conductivity = Annotated[float, Quantity("conductivity", above=0.0)]
Insulance = Annotated[float, Quantity("insulance", least=0.0)]
Density = Annotated[float, Quantity("density", above=0.0)]
