"""The shipped parts, read once, and markers that run a test for each that has a facet."""

import tomllib
from pathlib import Path

import pytest

import coachwright
from coachwright.model.part import Part
from coachwright.model.reading import read_record

FOLDER = Path(coachwright.__file__).parent / "catalogue" / "parts"


def _read(file: Path) -> Part:
    part, faults = read_record(Part, tomllib.loads(file.read_text(encoding="utf-8")), file.name)
    assert part is not None, faults
    return part


PARTS = {file.stem: _read(file) for file in sorted(FOLDER.glob("*.toml"))}
"""Every shipped part by the name of its file."""

each = pytest.mark.parametrize("part", PARTS.values(), ids=PARTS.keys())
"""Runs a test for every part."""


def having(facet: str) -> pytest.MarkDecorator:
    """Return the marker that runs a test for every part that has a facet."""
    found = [part for part in PARTS.values() if getattr(part, facet) is not None]
    return pytest.mark.parametrize("part", found, ids=lambda part: part.id)
