"""The size on the sidewall."""

import pytest
from pydantic import TypeAdapter
from pydantic_core import PydanticCustomError

from coachwright.model.tyre_size import TyreSize, TyreSizeText, read_tyre_size

READ = (
    ("225/75R16C", 225.0, 0.75, 406.4, "C"),
    ("215/70R15CP", 215.0, 0.70, 381.0, "CP"),
    ("LT245/75R16", 245.0, 0.75, 406.4, "LT"),
    ("P235/65R17", 235.0, 0.65, 431.8, "P"),
    ("205/55 R16", 205.0, 0.55, 406.4, ""),
    (" lt265/70r17 ", 265.0, 0.70, 431.8, "LT"),
)


@pytest.mark.parametrize(("text", "width_mm", "aspect_frac", "rim_mm", "marking"), READ)
def test_a_size_is_read(
    text: str, width_mm: float, aspect_frac: float, rim_mm: float, marking: str
) -> None:
    size = read_tyre_size(text)
    assert size.width_mm == width_mm
    assert size.aspect_frac == pytest.approx(aspect_frac)
    assert size.rim_mm == pytest.approx(rim_mm)
    assert size.marking == marking
    assert size.text == text.strip()


@pytest.mark.parametrize("text", ["225/75", "225-75R16", "31x10.5R15", "22/75R16", "", 225, None])
def test_what_is_no_size_is_refused_with_an_example(text: object) -> None:
    with pytest.raises(PydanticCustomError) as caught:
        read_tyre_size(text)
    assert 'such as "225/75R16C"' in str(caught.value)


def test_a_size_is_written_as_it_stood() -> None:
    adapter: TypeAdapter[TyreSize] = TypeAdapter(TyreSizeText)
    size = adapter.validate_python("225/75R16C")
    assert adapter.dump_python(size) == "225/75R16C"
    assert adapter.validate_python(size) is size
    assert adapter.json_schema()["type"] == "string"
