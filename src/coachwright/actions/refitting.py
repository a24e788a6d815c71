"""Take fittings out of a build file, move some and put others in; every comment stays."""

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import Any

from coachwright.actions.paths import Steps
from coachwright.actions.writing import record_text, text_with_values
from coachwright.errors import CannotWrite
from coachwright.model.build import BuildSheet, Fitting, Move

_HEADER = re.compile(r"^\s*\[")
_OWN, _ADDED, _MOVED = "fittings", "changes.added", "changes.moved"


def text_refitted(
    text: str,
    sheet: BuildSheet,
    *,
    removed: Collection[str] = (),
    added: Sequence[Fitting] = (),
    changed: Mapping[str, Fitting] | None = None,
) -> str:
    """Return a build file's text with other fittings; comments and all else stay.

    Parameters
    ----------
    text
        Of the file.
    sheet
        What stands in it.
    removed
        Names of fittings that go.
    added
        Fittings that come.
    changed
        Reference name → the fitting with its new place, turn and mirror.

    Raises
    ------
    BuildFileError
        Where the text is not TOML.
    CannotWrite
        Where the fittings do not stand in tables of their own.
    """
    new = dict(changed or {})
    lists = {_OWN: _names(sheet.fittings)}
    if sheet.standard:
        lists = {
            _ADDED: _names(sheet.changes.added),
            _MOVED: tuple(move.fitting for move in sheet.changes.moved),
        }
    turns = {f.name: f.turn_deg for f in (*sheet.fittings, *sheet.changes.added)}
    values = dict(_new_values(lists, new, turns))
    listed = {name for names in lists.values() for name in names}
    if sheet.standard:
        gone = [name for name in removed if name not in lists[_ADDED]]
        if gone:
            values["changes", "removed"] = [*sheet.changes.removed, *gone]
    moves = [_move(fitting) for name, fitting in new.items() if name not in listed]
    edited = text_with_values(text, values)
    for table, names in lists.items():
        places = [place for place, name in enumerate(names) if name in removed]
        edited = _without(edited, table, places, len(names))
    if moves:
        edited = _with_blocks(edited, _MOVED, [record_text(move) for move in moves])
    blocks = [record_text(fitting) for fitting in added]
    return _with_blocks(edited, _ADDED if sheet.standard else _OWN, blocks)


def _names(fittings: Sequence[Fitting]) -> tuple[str, ...]:
    return tuple(fitting.name for fitting in fittings)


def _new_values(
    lists: Mapping[str, Sequence[str]], new: Mapping[str, Fitting], turns_deg: Mapping[str, float]
) -> Iterator[tuple[Steps, Any]]:
    for table, names in lists.items():
        for place, name in enumerate(names):
            if name in new:
                data = new[name].model_dump(by_alias=True)
                where: Steps = (*table.split("."), place)
                yield (*where, "at"), list(data["at"])
                if turns_deg.get(name) != new[name].turn_deg:
                    yield (*where, "turn"), data["turn"]
                if table == _MOVED or new[name].mirror:
                    yield (*where, "mirror"), new[name].mirror


def _move(fitting: Fitting) -> Move:
    return Move(
        fitting=fitting.name,
        at_mm=fitting.at_mm,
        turn_deg=fitting.turn_deg,
        mirror=fitting.mirror,
    )


def _blocks(lines: Sequence[str], table: str) -> list[tuple[int, int]]:
    """Return first and last line of each table of a list, without what follows its values."""
    found = []
    starts = [n for n, line in enumerate(lines) if line.strip() == f"[[{table}]]"]
    for start in starts:
        end = next(
            (
                number
                for number in range(start + 1, len(lines))
                if _HEADER.match(lines[number])
                and not lines[number].strip().startswith((f"[[{table}.", f"[{table}."))
                and not _in_list(lines[start + 1 : number])
            ),
            len(lines),
        )
        last = max(n for n in range(start, end) if lines[n].strip() and not _comment(lines[n]))
        found.append((start, last))
    return found


def _in_list(lines: Sequence[str]) -> bool:
    """Say whether a list that was begun is still open after some lines of one table."""
    depth = 0
    for line in lines:
        bare = re.sub(r'"(?:[^"\\]|\\.)*"|\'[^\']*\'|#.*', "", line)
        depth += bare.count("[") - bare.count("]")
    return depth > 0


def _comment(line: str) -> bool:
    return line.lstrip().startswith("#")


def _without(text: str, table: str, places: Sequence[int], count: int) -> str:
    """Return a text without some tables of a list; comments before and after them stay."""
    if not places:
        return text
    lines = text.splitlines(keepends=True)
    blocks = _blocks(lines, table)
    if len(blocks) != count:
        raise CannotWrite(f"{table} is not written as tables [[{table}]]; edit it by hand")
    gone: set[int] = set()
    for place in places:
        start, last = blocks[place]
        end = last + 1
        while end < len(lines) and not lines[end].strip():
            end += 1
        gone |= set(range(start, end))
    return "".join(line for number, line in enumerate(lines) if number not in gone)


def _with_blocks(text: str, table: str, blocks: Sequence[str]) -> str:
    """Return a text with more tables of a list behind the last of them."""
    if not blocks:
        return text
    lines = text.splitlines(keepends=True)
    there = _blocks(lines, table)
    place = there[-1][1] + 1 if there else len(lines)
    written = "".join(f"\n[[{table}]]\n{block}" for block in blocks)
    before = "".join(lines[:place])
    if before and not before.endswith("\n"):
        before += "\n"
    return before + written + "".join(lines[place:])
