"""Bring together what two persons made of the same sheet, or say what they disagree about.

First line by line, which keeps every comment; where the lines touch although the paths do not,
path by path.  Nothing is taken for merged that does not read as both wanted it.
"""

import difflib
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from coachwright.catalogue.loading import parse_toml
from coachwright.errors import CannotEdit
from coachwright.store.blocks import comments
from coachwright.store.differences import Difference, changed, differences, disputed
from coachwright.store.edits import parsed, written

Hunk = tuple[int, int, list[str]]
"""From and to which line of the base, and what stands there instead."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Disputed:
    """What two persons disagree about.

    Attributes
    ----------
    pairs
        Mine and theirs at one place; empty where only words beside the values collide.
    """

    pairs: tuple[tuple[Difference, Difference], ...]


def merged(base: str, mine: str, theirs: str) -> str | Disputed:
    """Return a text with both persons' changes of a base, or what they disagree about.

    Parameters
    ----------
    base
        The text that both began with.
    mine
        What one made of it.
    theirs
        What the other made of it.
    """
    if theirs in (base, mine):
        return mine
    if base == mine:
        return theirs
    old, my_data, their_data = parsed(base), parsed(mine), parsed(theirs)
    my_part, their_part = differences(old, my_data), differences(old, their_data)
    pairs = disputed(my_part, their_part)
    if pairs:
        return Disputed(pairs=pairs)
    goal = changed(their_data, _not_done_yet(my_part, their_part))
    by_lines = _joined(base, mine, theirs)
    got = parse_toml(by_lines, "")[0] if by_lines is not None else None
    if by_lines is not None and got is not None and not differences(goal, got):
        return by_lines
    try:
        by_paths = written(theirs, their_data, goal, pattern=mine)
    except CannotEdit:
        return Disputed(pairs=())
    lost = _new_comments(base, mine) - Counter(comments(by_paths))
    return Disputed(pairs=()) if lost else by_paths


def undisputed(base: str, mine: str, theirs: str) -> str:
    """Return their text with as much of mine as nobody disputes, told by paths.

    Raises
    ------
    CannotEdit
        Where the form of their text does not take it.
    """
    my_part, their_part = _parts(base, mine, theirs)
    against = {one.path for one, _ in disputed(my_part, their_part)}
    clear = [each for each in _not_done_yet(my_part, their_part) if each.path not in against]
    return _over(theirs, clear, mine)


def overruling(base: str, mine: str, theirs: str) -> str:
    """Return their text with all of mine over it, told by paths: what only they changed stays.

    Raises
    ------
    CannotEdit
        Where what they took out leaves no place for it.
    """
    return _over(theirs, _not_done_yet(*_parts(base, mine, theirs)), mine)


def _parts(
    base: str, mine: str, theirs: str
) -> tuple[tuple[Difference, ...], tuple[Difference, ...]]:
    old = parsed(base)
    return differences(old, parsed(mine)), differences(old, parsed(theirs))


def _over(theirs: str, wanted: Sequence[Difference], mine: str) -> str:
    data = parsed(theirs)
    try:
        goal = changed(data, wanted)
    except LookupError as error:
        places = ", ".join(each.place for each in wanted)
        raise CannotEdit(
            f"{places}: what this stood in was taken out meanwhile; look at the sheet again"
        ) from error
    return written(theirs, data, goal, pattern=mine)


def _not_done_yet(
    mine: tuple[Difference, ...], theirs: tuple[Difference, ...]
) -> tuple[Difference, ...]:
    """Leave out what both did alike."""
    done = {
        one.path
        for one in mine
        for other in theirs
        if one.path == other.path and not differences({"": one.after}, {"": other.after})
    }
    return tuple(each for each in mine if each.path not in done)


def _new_comments(base: str, mine: str) -> Counter[str]:
    return Counter(comments(mine)) - Counter(comments(base))


def _joined(base: str, mine: str, theirs: str) -> str | None:
    """Return both persons' lines together; None where they touch."""
    lines = base.splitlines(keepends=True)
    mine_hunks, their_hunks = _hunks(lines, mine), _hunks(lines, theirs)
    for one in mine_hunks:
        if any(one[0] <= other[1] and other[0] <= one[1] for other in their_hunks):
            return None
    made: list[str] = []
    done = 0
    for start, stop, put in sorted([*mine_hunks, *their_hunks], key=lambda each: each[:2]):
        made += [*lines[done:start], *put]
        done = stop
    return "".join([*made, *lines[done:]])


def _hunks(lines: list[str], after: str) -> list[Hunk]:
    news = after.splitlines(keepends=True)
    matcher = difflib.SequenceMatcher(None, lines, news, autojunk=False)
    return [
        (a_from, a_to, news[b_from:b_to])
        for kind, a_from, a_to, b_from, b_to in matcher.get_opcodes()
        if kind != "equal"
    ]
