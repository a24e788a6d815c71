"""The two shapes that most sheets are made of: a table, and a list of labels and values."""

from dataclasses import dataclass

from coachwright.model.build import Build
from coachwright.model.working import Figure
from coachwright.papers.wording import bounds_of, show, spoken


@dataclass(frozen=True, kw_only=True, slots=True)
class Table:
    """A table of ready strings.

    Attributes
    ----------
    names
        Heads of the columns.
    rows
        As many strings in each as there are columns.
    note
        Stands under the table.
    """

    heading: str
    names: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Pair:
    """A label and its value."""

    label: str
    value: str
    note: str = ""


def figure_pairs(build: Build, figures: tuple[Figure, ...], discipline: str) -> tuple[Pair, ...]:
    """Return the figures of one discipline as labels and values.

    Parameters
    ----------
    build
        For names and units.
    figures
        Of any discipline.
    discipline
        Folder of the one that is wanted.
    """
    return tuple(
        pair_of(build, figure) for figure in figures if figure.name.startswith(f"{discipline}.")
    )


def pair_of(build: Build, figure: Figure) -> Pair:
    """Return one figure as label and value, with its bounds or what is missing under it."""
    system = build.brief.units
    return Pair(
        label=spoken(build, figure.label),
        value=show(figure.value, figure.unit, system),
        note=bounds_of(figure, system)
        or (f"missing: {spoken(build, figure.missing)}" if figure.missing else ""),
    )
