"""Tables of words that are filled anew whenever something changes."""

from collections.abc import Callable, Iterable, Sequence

from coachwright.web.parts.plain import box, words

Cell = str | Callable[[], object]
"""Words, or what fills the cell."""


def create(
    names: Sequence[str],
    rows: Iterable[Sequence[Cell]],
    *,
    label: str,
    right: frozenset[int] = frozenset(),
) -> None:
    """Show a table; on a narrow screen each row stands for itself, with its labels.

    Parameters
    ----------
    names
        Heads of the columns; an empty one is for screen readers alone.
    rows
        As many cells in each.
    label
        What the table is about.
    right
        Places of the columns that hold figures.
    """
    with box("plain grid", tag="table", label=label):
        with box(tag="thead"), box(tag="tr"):
            for place, name in enumerate(names):
                head = words(name, "right" if place in right else "", tag="th")
                head.props["scope"] = "col"
        with box(tag="tbody"):
            for row in rows:
                _row(names, row, right)


def _row(names: Sequence[str], row: Sequence[Cell], right: frozenset[int]) -> None:
    with box(tag="tr"):
        for place, cell in enumerate(row):
            with box("right" if place in right else "", tag="td") as made:
                made.props["data-name"] = names[place]
                if callable(cell):
                    cell()
                else:
                    words(cell)
