"""In a file a field is spelt without its unit: no two fields of a record may then look alike."""

import pkgutil
from collections import Counter
from importlib import import_module

import pytest

from coachwright import model
from coachwright.model.record import Record


def _records() -> list[type[Record]]:
    for module in pkgutil.walk_packages(model.__path__, "coachwright.model."):
        import_module(module.name)
    found: list[type[Record]] = []
    waiting = [Record]
    while waiting:
        for record in waiting.pop().__subclasses__():
            found.append(record)
            waiting.append(record)
    return [record for record in found if record.__module__.startswith("coachwright.")]


@pytest.mark.parametrize("record", _records(), ids=lambda record: record.__name__)
def test_no_two_fields_are_spelt_alike_in_a_file(record: type[Record]) -> None:
    spelt = Counter(field.alias or name for name, field in record.model_fields.items())
    assert [name for name, times in spelt.items() if times > 1] == []
