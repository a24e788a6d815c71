"""Any record at all, by hypothesis: made from the record's own fields and their limits."""

import datetime
import re
from collections.abc import Callable
from enum import Enum
from typing import Annotated, Any, Literal, TypeVar, Union, get_args, get_origin

from hypothesis import strategies as st
from pydantic import BaseModel
from pydantic.fields import FieldInfo

from coachwright.model.build import TURNS_DEG
from coachwright.model.money import CURRENCIES, Money
from coachwright.model.position import AXIS_FACES, AXIS_WORDS
from coachwright.model.record import Quantity
from coachwright.model.tyre_size import TyreSize, read_tyre_size

R = TypeVar("R", bound=BaseModel)

LARGEST = 1e9
"""Beyond anything that goes into a van, in any unit."""
LONGEST_LIST = 2


def records(record: type[R]) -> st.SearchStrategy[R]:
    """Return a strategy for a record with any fields that may be left out left out or given."""
    fields = record.model_fields
    required = {name: _field(field) for name, field in fields.items() if field.is_required()}
    optional = {name: _field(field) for name, field in fields.items() if not field.is_required()}
    return st.fixed_dictionaries(required, optional=optional).map(record.model_validate)


def _field(field: FieldInfo) -> st.SearchStrategy[Any]:
    return _values(field.annotation, tuple(field.metadata))


def _values(annotation: Any, metadata: tuple[Any, ...] = ()) -> st.SearchStrategy[Any]:
    origin, arguments = get_origin(annotation), get_args(annotation)
    if origin is Annotated:
        return _values(arguments[0], (*arguments[1:], *metadata))
    marked = _marked(metadata)
    if marked is not None:
        return marked
    if origin is Literal:
        return st.sampled_from(arguments)
    if origin is tuple:
        return _tuple(arguments, metadata)
    if origin is Union or type(annotation).__name__ == "UnionType":
        return st.one_of([_values(argument, metadata) for argument in reversed(arguments)])
    return _plain(annotation, metadata)


def _marked(metadata: tuple[Any, ...]) -> st.SearchStrategy[Any] | None:
    for each in metadata:
        if isinstance(each, Quantity):
            return _quantity(each, metadata)
        if type(each).__name__ in _MARKERS:
            return _MARKERS[type(each).__name__]()
    return None


def _tuple(arguments: tuple[Any, ...], metadata: tuple[Any, ...]) -> st.SearchStrategy[Any]:
    if arguments[-1] is not Ellipsis:
        return st.tuples(*(_values(argument) for argument in arguments))
    least = int(_bound(metadata, "min_length", 0))
    entries = st.lists(_values(arguments[0]), min_size=least, max_size=least + LONGEST_LIST)
    return entries.map(tuple)


def _plain(annotation: Any, metadata: tuple[Any, ...]) -> st.SearchStrategy[Any]:
    least, most = _bound(metadata, "ge", 0), _bound(metadata, "le", LARGEST)
    plain: dict[Any, Callable[[], st.SearchStrategy[Any]]] = {
        type(None): st.none,
        bool: st.booleans,
        int: lambda: st.integers(int(least), int(most)),
        float: lambda: st.floats(least, most),
        str: lambda: _text(metadata),
        datetime.date: st.dates,
    }
    if annotation in plain:
        return plain[annotation]()
    if issubclass(annotation, Enum):
        return st.sampled_from(annotation)
    return st.deferred(lambda: records(annotation))


def _text(metadata: tuple[Any, ...]) -> st.SearchStrategy[str]:
    pattern = _bound(metadata, "pattern", None)
    if pattern is not None:
        return st.from_regex(re.compile(pattern, re.ASCII), fullmatch=True)
    least = int(_bound(metadata, "min_length", 0))
    letters = st.characters(codec="utf-8", exclude_categories=("Cs", "Cc"))
    return st.text(letters, min_size=least, max_size=20)


def _bound(metadata: tuple[Any, ...], name: str, otherwise: Any) -> Any:
    for each in metadata:
        found = getattr(each, name, None)
        if found is not None:
            return found
    return otherwise


def _quantity(quantity: Quantity, metadata: tuple[Any, ...]) -> st.SearchStrategy[float]:
    if len(metadata) > 1:  # a turn is the one quantity that is checked further
        return st.sampled_from(TURNS_DEG)
    low = quantity.least if quantity.above is None else quantity.above
    return st.floats(
        -LARGEST if low is None else low,
        LARGEST if quantity.most is None else quantity.most,
        exclude_min=quantity.above is not None,
        allow_subnormal=False,
    )


def _positions() -> st.SearchStrategy[Any]:
    words = sorted({word for words in AXIS_WORDS for word in words})
    faces = sorted({face for faces in AXIS_FACES for face in faces})
    phrase = st.tuples(st.sampled_from(words), st.sampled_from(faces)).map(" ".join)
    with_gap = st.tuples(phrase, st.sampled_from(["20 mm", "-1 in", "2 ft 6 in"])).map(" ".join)
    lengths = st.floats(-LARGEST, LARGEST, allow_subnormal=False)
    return st.one_of(lengths, phrase, with_gap)


def _sizes() -> st.SearchStrategy[TyreSize]:
    return st.sampled_from(["225/75R16C", "LT245/75R16", "205/55 R16"]).map(read_tyre_size)


def _money() -> st.SearchStrategy[Money]:
    return st.builds(
        Money,
        amount_minor=st.integers(0, 10**9),
        currency=st.sampled_from(CURRENCIES),
    )


_MARKERS: dict[str, Callable[[], st.SearchStrategy[Any]]] = {
    "_PositionField": _positions,
    "_TyreSizeField": _sizes,
    "_MoneyField": _money,
}
"""What a field is marked with where its text is neither a quantity nor plain."""
