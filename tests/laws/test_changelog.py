"""Fragments of the changelog have the form that their README gives."""

import re

import pytest

from tests.support.source import ROOT

HEADINGS = ("### Added", "### Changed", "### Fixed", "### Figures")
FOLDER = ROOT / "changelog.d"
FRAGMENTS = sorted(path.name for path in FOLDER.glob("*") if path.name != "README.md")


@pytest.mark.parametrize("name", FRAGMENTS)
def test_a_fragment_is_headings_with_points_under_them(name: str) -> None:
    assert re.fullmatch(r"[a-z]+(-[a-z]+)*\.md", name), "words joined by hyphens"
    lines = [line for line in (FOLDER / name).read_text(encoding="utf-8").splitlines() if line]
    headings = [line for line in lines if line.startswith("#")]
    assert headings, "say under which heading it belongs"
    assert headings == [heading for heading in HEADINGS if heading in headings]
    for line, after in zip(lines, [*lines[1:], "- "], strict=True):
        assert line.startswith(("### ", "- ", "  "))
        assert after.startswith("- ") or not line.startswith("#")
