"""Trouble says what, where and what is allowed."""

import pytest

from coachwright.errors import (
    BadInput,
    BuildFileError,
    CallError,
    CannotWrite,
    CatalogueError,
    CoachwrightError,
    Fault,
    OutOfRange,
    PriceListError,
    UnknownName,
)

FAULTS = (
    Fault(file="a.toml", field="x", found="1", allowed="2", action="mend it"),
    Fault(file="a.toml", field="y", found="3", allowed="4", action="take it out"),
)


@pytest.mark.parametrize("kind", [BuildFileError, CatalogueError, PriceListError])
def test_what_is_wrong_with_a_file_carries_every_fault(kind: type[BadInput]) -> None:
    error = kind(iter(FAULTS))
    assert error.faults == FAULTS
    assert str(error).splitlines() == [fault.sentence() for fault in FAULTS]
    assert isinstance(error, CoachwrightError)


def test_a_value_out_of_range_is_named_with_what_is_allowed() -> None:
    error = OutOfRange("length_mm", -1.0, "0 mm or more")
    assert str(error) == "length_mm is -1.0; allowed: 0 mm or more"
    assert (error.name, error.value, error.allowed) == ("length_mm", -1.0, "0 mm or more")
    assert isinstance(error, CallError)


def test_an_unknown_name_says_which_names_there_are() -> None:
    error = UnknownName("table", "tyres", ["arches", "boxes"])
    assert str(error) == "there is no table 'tyres'; there are: arches, boxes"
    assert str(UnknownName("table", "tyres", [])) == "there is no table 'tyres'; there are: none"


def test_what_cannot_be_written_is_a_fault_of_the_call() -> None:
    assert issubclass(CannotWrite, CallError)
