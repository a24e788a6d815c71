"""The sources that rules, workings and papers name by key, with their full titles."""

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib import resources
from importlib.resources.abc import Traversable
from pathlib import Path

from coachwright.errors import UnknownName


@dataclass(frozen=True, kw_only=True, slots=True)
class Reference:
    """One published source."""

    key: str
    title: str
    author: str = ""
    edition: str = ""
    year: str = ""
    page: str = ""

    def text(self) -> str:
        """Return the source as one line, such as ``"Author: Title. Edition. Page"``.

        Examples
        --------
        >>> Reference(key="a", title="Loads", author="An Office", edition="2nd").text()
        'An Office: Loads. 2nd.'
        """
        issued = ", ".join(
            word for word in (self.edition, self.year) if word and word not in self.title
        )
        head = f"{self.author}: {self.title}" if self.author else self.title
        parts = (head, issued, self.page)
        return " ".join(f"{part[:1].upper()}{part[1:].rstrip('.')}." for part in parts if part)


def reference(key: str) -> Reference:
    """Return one source.

    Raises
    ------
    UnknownName
        Where no source has that key.
    """
    try:
        return references()[key]
    except KeyError:
        raise UnknownName("source", key, sorted(references())) from None


@cache
def references() -> dict[str, Reference]:
    """Return every source by key."""
    data = tomllib.loads(_file().read_text(encoding="utf-8"))
    return {key: _reference(key, row) for key, row in data.items()}


def _file() -> Traversable:
    """Return the copy inside the installed package; in a checkout, the manual's own."""
    packaged = resources.files("coachwright") / "references.toml"
    if packaged.is_file():
        return packaged
    return Path(__file__).parents[3] / "docs" / "references.toml"


def _reference(key: str, row: dict[str, object]) -> Reference:
    return Reference(
        key=key,
        title=str(row["title"]),
        author=str(row.get("author", "")),
        edition=str(row.get("edition", "")),
        year=str(row.get("year", "")),
        page=str(row.get("page", "")),
    )
