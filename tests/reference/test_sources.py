"""Sources have titles at run time, so that papers stand alone."""

import pytest

from coachwright.errors import UnknownName
from coachwright.reference.sources import Reference, reference, references


def test_every_source_gives_one_line() -> None:
    assert references()
    for key, found in references().items():
        assert found.key == key
        assert found.title in found.text()
        assert "\n" not in found.text()


def test_an_unknown_source_is_refused() -> None:
    with pytest.raises(UnknownName, match="no source 'nobody-wrote-this'"):
        reference("nobody-wrote-this")


def test_a_known_source_is_found() -> None:
    key = next(iter(references()))
    assert reference(key) is references()[key]


def test_the_line_does_not_repeat_the_year_of_the_title() -> None:
    found = Reference(key="a", title="Rules of 1986", author="An office", year="1986", page="12")
    assert found.text() == "An office: Rules of 1986. 12."


def test_a_source_without_an_author_starts_with_its_title() -> None:
    assert Reference(key="a", title="Rules", edition="3rd", year="2001").text() == (
        "Rules. 3rd, 2001."
    )
