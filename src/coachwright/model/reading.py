"""From a parsed file to a record, with every fault as data."""

from collections.abc import Mapping, Sequence
from difflib import get_close_matches
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from coachwright.errors import Fault
from coachwright.model.part import ID_PATTERN
from coachwright.model.record import FROM_FILE
from coachwright.model.tyre_size import SPEED_SYMBOL_PATTERN

R = TypeVar("R", bound=BaseModel)


def read_record(
    record: type[R], data: Mapping[str, Any], file: str, prefix: str = ""
) -> tuple[R | None, tuple[Fault, ...]]:
    """Read one record from parsed TOML.

    Parameters
    ----------
    record
        The record's class.
    data
        As the TOML reader gave it.
    file
        Name for the faults.
    prefix
        Path put before every field.

    Returns
    -------
    tuple
        The record and no faults, or None and every fault.
    """
    try:
        found = record.model_validate(data, context=FROM_FILE, by_alias=True, by_name=False)
    except ValidationError as error:
        return None, tuple(
            _fault(record, detail, data, file, prefix)
            for detail in error.errors(include_url=False)
            if not _counts_only_good_entries(detail)
        )
    return found, ()


def _counts_only_good_entries(detail: ErrorDetails) -> bool:
    """Say whether a list is called too short only because its entries have faults themselves."""
    given = detail["input"]
    return (
        detail["type"] == "too_short"
        and isinstance(given, (list, tuple))
        and len(given) >= detail.get("ctx", {})["min_length"]
    )


def field_path(location: Sequence[str | int], prefix: str = "") -> str:
    """Return a field's path as people write it.

    Examples
    --------
    >>> field_path(("brief", "travellers", 1, "mass"))
    'brief.travellers[1].mass'
    """
    path = prefix
    for step in location:
        if isinstance(step, int):
            path += f"[{step}]"
        else:
            path += f".{step}" if path else step
    return path or "the whole file"


def _fault(
    record: type[BaseModel],
    detail: ErrorDetails,
    data: Mapping[str, Any],
    file: str,
    prefix: str,
) -> Fault:
    location = detail["loc"]
    found, allowed, action = _words(record, detail)
    name = _name_beside(location, data)
    path = field_path(location, prefix)
    return Fault(
        file=file,
        field=f"{path} ({name})" if name else path,
        found=found,
        allowed=allowed,
        action=action,
    )


def _name_beside(location: Sequence[str | int], data: Any) -> str:
    """Return the name of the list entry that a fault is in, to find it without counting."""
    name = ""
    here = data
    for step in location:
        try:
            here = here[step]
        except (KeyError, IndexError, TypeError):
            break
        if isinstance(step, int) and isinstance(here, Mapping):
            name = str(here.get("name", here.get("id", here.get("fitting", ""))))
    return name


def _words(record: type[BaseModel], detail: ErrorDetails) -> tuple[str, str, str]:
    kind = detail["type"]
    context = detail.get("ctx", {})
    given = _shown_input(detail["input"])
    if kind == "coachwright":
        return context["found"], context["allowed"], context["action"]
    if kind == "missing":
        return "nothing", "this field is required", "add it"
    if kind == "extra_forbidden":
        return _unknown_field(record, detail)
    if kind == "string_pattern_mismatch" and context["pattern"] in _PATTERNS:
        return given, *_PATTERNS[context["pattern"]]
    if kind in _TYPES:
        allowed, action = _TYPES[kind]
        return given, allowed.format(**context), action
    return given, detail["msg"], "correct it"


_PATTERNS: dict[str, tuple[str, str]] = {
    ID_PATTERN: (
        "lower-case words and numbers joined by hyphens",
        "spell it in that form, such as fresh-tank-2",
    ),
    SPEED_SYMBOL_PATTERN: (
        "a speed symbol: J, K, L, M, N, P, Q, R, S, T, U, H, V, W or Y",
        "write the letter as on the sidewall",
    ),
}
_TYPES: dict[str, tuple[str, str]] = {
    "literal_error": ("one of {expected}", "choose one of these"),
    "enum": ("one of {expected}", "choose one of these"),
    "string_pattern_mismatch": ("text of the form {pattern}", "spell it in that form"),
    "string_type": ("text in quotes", "write it in quotes"),
    "int_type": ("a whole number", "write a whole number without quotes"),
    "int_parsing": ("a whole number", "write a whole number without quotes"),
    "int_from_float": ("a whole number", "write a whole number"),
    "bool_type": ("true or false", "write true or false without quotes"),
    "bool_parsing": ("true or false", "write true or false without quotes"),
    "float_type": ("a number", "write a number without quotes"),
    "float_parsing": ("a number", "write a number without quotes"),
    "tuple_type": ("a list", "write a list in square brackets"),
    "model_type": ("a table", "write a table with its fields"),
    "model_attributes_type": ("a table", "write a table with its fields"),
    "date_type": ("a date", "write a date without quotes, such as 2027-04-15"),
    "date_parsing": ("a date", "write a date without quotes, such as 2027-04-15"),
    "date_from_datetime_parsing": ("a date", "write a date without quotes, such as 2027-04-15"),
    "date_from_datetime_inexact": ("a date without a time", "leave the time out"),
    "string_too_short": ("text that is not empty", "write something here"),
    "greater_than_equal": ("at least {ge}", "give a value within it"),
    "less_than_equal": ("at most {le}", "give a value within it"),
    "too_short": ("a list of at least {min_length}", "add what is missing"),
    "too_long": ("a list of at most {max_length}", "take out what is too much"),
}


def _unknown_field(record: type[BaseModel], detail: ErrorDetails) -> tuple[str, str, str]:
    name = str(detail["loc"][-1])
    known = _fields_at(record, detail["loc"][:-1])
    close = get_close_matches(name, known, n=1, cutoff=0.6)
    action = f"did you mean {close[0]!r}?" if close else "take it out"
    allowed = f"the fields {', '.join(known)}" if known else "no such field"
    return f"the unknown field {name!r}", allowed, action


def _fields_at(record: type[BaseModel], location: Sequence[str | int]) -> tuple[str, ...]:
    here: type[BaseModel] | None = record
    for step in location:
        if isinstance(step, int) or here is None:
            continue
        here = _record_in(here, step)
    if here is None:
        return ()
    return tuple(str(field.alias or name) for name, field in here.model_fields.items())


def _record_in(record: type[BaseModel], alias: str) -> type[BaseModel] | None:
    for name, field in record.model_fields.items():
        if alias in (field.alias, name):
            return _first_record(field.annotation)
    return None


def _first_record(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for argument in getattr(annotation, "__args__", ()):
        found = _first_record(argument)
        if found is not None:
            return found
    return None


def _shown_input(value: Any) -> str:
    if isinstance(value, str):
        return f'"{value}"'
    if isinstance(value, bool):
        return f"the truth value {str(value).lower()}"
    if isinstance(value, Mapping):
        return "a table"
    if isinstance(value, (list, tuple)):
        return "an empty list" if not value else f"a list of {len(value)}"
    return f"{value}"
