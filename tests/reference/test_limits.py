"""Limits and tables are found by name, with their source."""

import datetime

import pytest

from coachwright.errors import UnknownName
from coachwright.reference import limit, limits, table
from coachwright.reference.limits import Limit
from coachwright.reference.tables import table_names
from coachwright.unit_table import KINDS
from coachwright.units import SUFFIXES

WRITTEN = {
    *SUFFIXES,
    *SUFFIXES.values(),
    *(unit.symbol for kind in KINDS.values() for unit in kind.units),
}
"""Units in which a source may print its limit."""

ALL = tuple(limits().values())
each_limit = pytest.mark.parametrize("row", ALL, ids=[row.id for row in ALL])


@each_limit
def test_a_limit_is_found_by_its_id(row: Limit) -> None:
    assert limit(row.id) is row


@each_limit
def test_a_limit_says_what_it_is_in_a_unit_that_is_known(row: Limit) -> None:
    assert row.title
    assert row.unit in WRITTEN


@each_limit
def test_a_limit_is_valid_from_a_day_that_can_be(row: Limit) -> None:
    assert row.valid_from is None or row.valid_from > datetime.date(1950, 1, 1)


def test_a_limit_that_is_not_there_says_which_are() -> None:
    with pytest.raises(UnknownName, match=r"there is no limit 'nothing'; there are: "):
        limit("nothing")


def test_a_table_that_is_not_there_says_which_are() -> None:
    with pytest.raises(UnknownName, match="limits_road"):
        table("nothing")


@pytest.mark.parametrize("name", table_names())
def test_every_row_of_a_table_has_every_column(name: str) -> None:
    for row in table(name):
        assert None not in row, "too many cells"
        assert None not in row.values(), "too few cells"


@pytest.mark.parametrize("name", table_names())
def test_no_table_is_empty(name: str) -> None:
    assert table(name)
