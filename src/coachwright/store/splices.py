"""The exact difference of two texts, which leads forwards and back again."""

import difflib
import json
from dataclasses import dataclass

from coachwright.errors import StoreDamaged


@dataclass(frozen=True, kw_only=True, slots=True)
class Splice:
    """One place at which a text was exchanged.

    Attributes
    ----------
    at
        Place in the text before, in characters.
    out
        What was taken out there.
    put
        What was put in instead.
    """

    at: int
    out: str
    put: str


def splices(before: str, after: str) -> tuple[Splice, ...]:
    """Return what leads from one text to another, line by line and no wider than needed.

    Examples
    --------
    >>> splices("a = 1; b = 2", "a = 1; b = 3")
    (Splice(at=11, out='2', put='3'),)
    """
    head = _shared(before, after)
    tail = _shared(before[head:][::-1], after[head:][::-1])
    old = before[head : len(before) - tail]
    new = after[head : len(after) - tail]
    if not old and not new:
        return ()
    if not old or not new or "\n" not in old:
        return (Splice(at=head, out=old, put=new),)
    return tuple(_by_lines(old, new, head))


def spliced(text: str, wanted: tuple[Splice, ...]) -> str:
    """Return the text after.

    Raises
    ------
    StoreDamaged
        Where the text is not the one before.
    """
    for each in reversed(wanted):
        text = _exchanged(text, each.at, each.out, each.put)
    return text


def reversed_splices(wanted: tuple[Splice, ...]) -> tuple[Splice, ...]:
    """Return what leads back from the text after to the text before.

    Examples
    --------
    >>> there = splices("one, two", "one, three, two")
    >>> spliced(spliced("one, two", there), reversed_splices(there))
    'one, two'
    """
    back: list[Splice] = []
    moved = 0
    for each in wanted:
        back.append(Splice(at=each.at + moved, out=each.put, put=each.out))
        moved += len(each.put) - len(each.out)
    return tuple(back)


def as_text(wanted: tuple[Splice, ...]) -> str:
    """Return splices as they are kept."""
    return json.dumps([[each.at, each.out, each.put] for each in wanted], ensure_ascii=False)


def from_text(kept: str) -> tuple[Splice, ...]:
    """Return splices from what is kept."""
    return tuple(Splice(at=at, out=out, put=put) for at, out, put in json.loads(kept))


def _shared(one: str, other: str) -> int:
    """Return how many characters two texts have in common at their beginning."""
    low, high = 0, min(len(one), len(other))
    while low < high:
        middle = (low + high + 1) // 2
        if one[:middle] == other[:middle]:
            low = middle
        else:
            high = middle - 1
    return low


def _by_lines(old: str, new: str, start: int) -> list[Splice]:
    olds, news = old.splitlines(keepends=True), new.splitlines(keepends=True)
    found: list[Splice] = []
    matcher = difflib.SequenceMatcher(None, olds, news, autojunk=False)
    ends = [0]
    for line in olds:
        ends.append(ends[-1] + len(line))
    for kind, a_from, a_to, b_from, b_to in matcher.get_opcodes():
        if kind != "equal":
            out, put = "".join(olds[a_from:a_to]), "".join(news[b_from:b_to])
            found.append(Splice(at=start + ends[a_from], out=out, put=put))
    return found


def _exchanged(text: str, at: int, out: str, put: str) -> str:
    end = at + len(out)
    if text[at:end] != out:
        raise StoreDamaged("an edit does not fit the sheet that it was made in")
    return text[:at] + put + text[end:]
