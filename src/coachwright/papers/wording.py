"""Words that the papers put in place of the program's own names."""

import dataclasses
import re
from collections.abc import Iterable
from typing import Any, TypeVar

from coachwright.model.brief import Jurisdiction
from coachwright.model.build import Build, Mounting
from coachwright.model.finding import Finding, Outcome, Severity, Source, Status
from coachwright.model.working import Figure
from coachwright.units import shown, shown_number, worded

V = TypeVar("V")

JURISDICTION_WORDS = {
    Jurisdiction.US: "United States",
    Jurisdiction.EU: "European Union",
    Jurisdiction.UK: "United Kingdom",
}
STATUS_WORDS = {
    Status.READ: "read",
    Status.MEMORY: "from memory",
    Status.PRACTICE: "common practice",
}
RELATION_SIGNS = {"<=": "≤", ">=": "≥", "<": "<", ">": ">", "==": "="}
PAPER_OF = {Jurisdiction.US: "us-letter", Jurisdiction.EU: "a4", Jurisdiction.UK: "a4"}
MOUNTING_WORDS = {mounting: mounting.value for mounting in Mounting} | {
    Mounting.REAR_DOOR_LEFT: "left rear door",
    Mounting.REAR_DOOR_RIGHT: "right rear door",
}
DISCIPLINE_WORDS = {
    "layout": "Layout",
    "weights": "Weights",
    "road": "On the road",
    "electrics": "Electricity",
    "water": "Water",
    "wishes": "Wishes",
    "living": "Living aboard",
}
_DOTTED = re.compile(r"\b[a-z][a-z_-]+(?:\[\d*\])?(?:\.[a-z][a-z0-9_-]+(?:\[\d*\])?)+")
_JOINED = re.compile(r"\b[a-z0-9]+(?:_[a-z0-9]+)+\b")
_BEGINS_WITH_WORD = re.compile(r"[a-z]{2}|a [a-z]{2}")
"""And not with a symbol, such as "g = 9.81 m/s2"."""
_JOINTS = re.compile(r"[;,\s]+")

HARD_SPACE = "\N{NO-BREAK SPACE}"

NONE = "–"
"""Stands where there is nothing to show."""


def show(value: float | None, unit: str, system: str) -> str:
    """Return a value with its unit, with a true minus sign and spaces that do not break.

    Examples
    --------
    >>> show(-12.25, "kg", "metric").split(), show(None, "kg", "metric")
    (['−12.2', 'kg'], 'unknown')
    """
    return hard(shown(value, unit, system))


def hard(text: str) -> str:
    """Return a shown value with a true minus sign and spaces that do not break."""
    text = text.replace(" ", HARD_SPACE)
    return f"−{text[1:]}" if text.startswith("-") else text


def in_words(view: V, system: str) -> V:
    """Return a view in which every quantity told in a sentence is said in one system of units.

    Parameters
    ----------
    view
        A frozen dataclass of strings, tuples and other views.
    system
        ``"metric"`` or ``"us"``.
    """
    said: Any = view
    if isinstance(view, str):
        said = worded(view, system, space=HARD_SPACE)
    elif isinstance(view, tuple):
        said = tuple(in_words(each, system) for each in view)
    elif dataclasses.is_dataclass(view) and not isinstance(view, type):
        fields = {
            field.name: in_words(getattr(view, field.name), system)
            for field in dataclasses.fields(view)
        }
        said = dataclasses.replace(view, **fields)
    return said  # type: ignore[no-any-return]


def digits(value: float, unit: str, system: str) -> str:
    """Return a value without its unit, with a true minus sign."""
    number, _ = shown_number(value, unit, system)
    return f"−{number[1:]}" if number.startswith("-") else number


def words_of(name: str) -> str:
    """Return text with the program's own names in it turned into words.

    Examples
    --------
    >>> words_of("fresh-tank"), words_of("rear axle, grey-full")
    ('fresh tank', 'rear axle, grey-full')
    >>> words_of("the build: brief.habits.hot_water")
    'the build: brief › habits › hot water'
    """
    text = _DOTTED.sub(lambda match: match[0].replace(".", " › ").replace("-", " "), name)
    text = _JOINED.sub(lambda match: match[0].replace("_", " "), text)
    return text if " " in name else text.replace("-", " ")


def positions(build: Build) -> dict[str, str]:
    """Return the position number of each fitting on every paper, by reference name."""
    return {fitted.name: str(number) for number, fitted in enumerate(build.fittings, start=1)}


def position_of(build: Build, subject: str) -> str:
    """Return the position number of a subject that is a fitting; else nothing."""
    return positions(build).get(subject, "")


def part_of(build: Build, subject: str) -> str:
    """Return what a customer calls a subject: its part's name where it is a fitting."""
    for fitted in build.fittings:
        if fitted.name == subject:
            return fitted.part.name
    return subject_of(build, subject)


def part_and_position(build: Build, subject: str) -> str:
    """Return a subject by its part's name, with its position number where it is a fitting."""
    number = position_of(build, subject)
    return f"{part_of(build, subject)} (pos. {number})" if number else part_of(build, subject)


def subject_of(build: Build, subject: str) -> str:
    """Return what a finding judges, in words, with its position number where it is a fitting."""
    number = positions(build).get(subject)
    words = spoken(build, subject) if " " in subject else words_of(subject)
    return words if number is None else f"{words} (pos. {number})"


def symbol_of(build: Build, symbol: str) -> str:
    """Return a symbol of a formula; where it is a reference name of the build, as words."""
    names = _joined_names(build)
    if names is None:
        return symbol
    return names.sub(lambda match: match[0].replace("-", " "), symbol)


def spoken(build: Build, text: str) -> str:
    """Return text with the reference names of the build, and the program's names, as words."""
    text = symbol_of(build, text)
    text = _DOTTED.sub(lambda match: match[0].replace(".", " › ").replace("-", " "), text)
    return _JOINED.sub(lambda match: match[0].replace("_", " "), text)


def _joined_names(build: Build) -> re.Pattern[str] | None:
    names = {
        *(fitted.name for fitted in build.fittings),
        *(layer.part.id for layer in build.finishes),
        *(run.name for run in build.water_runs),
        *(traveller.name for traveller in build.brief.travellers),
        *(name.replace("_", "-") for name in build.brief.must_have),
    }
    joined = sorted((name for name in names if "-" in name), key=len, reverse=True)
    if not joined:
        return None
    return re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, joined))})(?![\w-])")


def bounds_of(figure: Figure, system: str) -> str:
    """Return a figure's one-sided 95 % bounds in words; empty where it has none or is exact."""
    if figure.low is not None and figure.low == figure.high:
        return ""
    if figure.low is not None and figure.high is not None:
        return both_bounds(figure.low, figure.high, figure.unit, system)
    for word, bound in (("at least", figure.low), ("at most", figure.high)):
        if bound is not None:
            return f"{word} {show(bound, figure.unit, system)} (95 %)"
    return ""


def both_bounds(low: float, high: float, unit: str, system: str) -> str:
    """Return two one-sided 95 % bounds in words.

    Examples
    --------
    >>> both_bounds(2783.2, 2811.4, "kg", "metric").split("(")[0].split()
    ['at', 'least', '2,783,', 'at', 'most', '2,811', 'kg']
    """
    return f"at least {digits(low, unit, system)}, at most {show(high, unit, system)} (95 % each)"


def span(low: float | None, high: float | None, unit: str, system: str) -> str:
    """Return a range.

    Examples
    --------
    >>> span(-20.0, 35.0, "Wh/day", "metric").split(), span(None, 35.0, "d", "metric")
    (['−20', 'to', '35', 'Wh/day'], 'unknown')
    """
    if low is None or high is None:
        return "unknown"
    return f"{digits(low, unit, system)} to {show(high, unit, system)}"


def sentence(text: str) -> str:
    """Return a note as a sentence: a capital in front, a full stop behind.

    Examples
    --------
    >>> sentence("waste and fresh water empty"), sentence("")
    ('Waste and fresh water empty.', '')
    """
    if not text:
        return ""
    return ended(f"{text[:1].upper()}{text[1:]}" if _BEGINS_WITH_WORD.match(text) else text)


def ended(text: str) -> str:
    """Return text with one full stop behind it."""
    return f"{text.rstrip('.')}."


def mark_of(finding: Finding) -> str:
    """Return which mark the templates put before an outcome."""
    if finding.outcome is Outcome.BROKEN:
        return "broken" if finding.severity is Severity.STOP else f"broken-{finding.severity}"
    return "none" if finding.outcome is Outcome.NOT_APPLICABLE else str(finding.outcome)


def clause_of(source: Source) -> str:
    """Return where in its source a rule stands, and how well that is known.

    Examples
    --------
    >>> clause_of(Source(key="a", clause="S4.3", edition="2023"))
    'S4.3, edition 2023; read'
    """
    status = STATUS_WORDS[source.status]
    edition = f"edition {source.edition}" if source.edition[:1].isdigit() else source.edition
    place = ", ".join(word for word in (source.clause, edition) if word and word != status)
    return "; ".join(word for word in (place, status) if word)


class SourceNumbers:
    """Numbers the sources of one sheet in the order of their first use."""

    def __init__(self) -> None:
        self._keys: dict[str, None] = {}

    def of(self, key: str) -> str:
        """Return the number that stands for a source on this sheet, such as ``"[3]"``.

        A key may join several, as the tables' ``source`` column does; each has its own number.
        """
        return self.of_all(word for word in _JOINTS.split(key) if word)

    def of_all(self, keys: Iterable[str]) -> str:
        """Return the numbers of several sources."""
        wanted = tuple(keys)
        for key in wanted:
            self._keys.setdefault(key)
        numbers = {key: number for number, key in enumerate(self._keys, start=1)}
        return " ".join(f"[{numbers[key]}]" for key in wanted)

    def listed(self) -> tuple[tuple[str, str], ...]:
        """Return number and key of each source that was used."""
        return tuple((f"[{number}]", key) for number, key in enumerate(self._keys, start=1))
