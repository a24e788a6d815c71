"""Differences made in a sheet's text, each in the one block that it is about."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import tomlkit
from tomlkit import items

from coachwright.store.blocks import Block, below, blocks
from coachwright.store.differences import (
    Difference,
    Steps,
    changed,
    differences,
    place_after,
    place_of,
)
from coachwright.store.rendering import inline, is_tables, section


@dataclass(frozen=True, kw_only=True, slots=True)
class Wanted:
    """A difference to be made.

    Attributes
    ----------
    difference
        What shall differ.
    written
        Of a new entry of a list: its own text with its comments, where someone wrote it already.
    """

    difference: Difference
    written: str = ""


def made(text: str, data: Mapping[str, Any], wanted: Sequence[Wanted]) -> str:
    """Return the text with the differences made block by block.

    Raises
    ------
    LookupError, TypeError, ValueError
        Where the text has no place for one.
    """
    for number, each in enumerate(wanted, 1):
        text = _make(text, data, each)
        if number < len(wanted):
            data = changed(data, [each.difference])
    return text


def made_in_whole(text: str, data: Mapping[str, Any], wanted: Sequence[Wanted]) -> str:
    """Return the text with the differences made in a document of the whole.

    Slower, and for forms that no block holds: dotted keys, tables in an unusual order.

    Raises
    ------
    LookupError, TypeError, ValueError
        Where the document has no place for one.
    """
    for each in wanted:
        wish = each.difference
        document = tomlkit.parse(text)
        place = _place(data, wish.path)
        _set(document, place, wish, new=wish.before is None)
        text = tomlkit.dumps(document)
        data = changed(data, [wish])
    return text


def written_by(text: str, data: Mapping[str, Any], wish: Difference) -> str:
    """Return how a text writes a new entry of a list, with comments; empty where it does not."""
    if wish.after is None or wish.follows is None or not text:
        return ""
    place = _place(data, wish.path)
    if differences({"": _value(data, place)}, {"": wish.after}):
        return ""
    all_blocks = blocks(text)
    inside = below(all_blocks, place)
    if not inside or not inside[0].of_list or inside[0].path != place:
        return ""
    first = all_blocks.index(inside[0])
    if all_blocks[first : first + len(inside)] != inside:
        return ""
    return text[inside[0].start : inside[-1].stop]


def _make(text: str, data: Mapping[str, Any], wanted: Wanted) -> str:
    wish = wanted.difference
    all_blocks = blocks(text)
    place = _place(data, wish.path)
    if wish.after is None:
        return _taken(text, all_blocks, place, wish)
    if wish.before is None:
        return _added(text, data, all_blocks, place, wanted)
    if _is_block_like(wish.after) or below(all_blocks, place):
        return _exchanged(text, data, wanted)
    return _set_in_block(text, all_blocks, place, wish)


def _exchanged(text: str, data: Mapping[str, Any], wanted: Wanted) -> str:
    """Take the old out and put the new in: one of them is a table or a list of tables."""
    wish = wanted.difference
    old = Difference(path=wish.path, before=wish.before, after=None)
    new = Difference(path=wish.path, before=None, after=wish.after)
    text = _make(text, data, Wanted(difference=old))
    return _make(text, changed(data, [old]), Wanted(difference=new))


def _is_block_like(value: Any) -> bool:
    return isinstance(value, Mapping) or is_tables(value)


def _place(data: Mapping[str, Any], path: Steps) -> Steps:
    """Return a path with places instead of names in lists; a new entry keeps its name."""
    place: list[str | int] = []
    here: Any = data
    for step in path:
        index = place_of(here, step) if isinstance(here, list) else None
        found = step if index is None else index
        place.append(found)
        here = _at(here, found)
    return tuple(place)


def _at(here: Any, step: str | int) -> Any:
    try:
        return here[step]
    except (LookupError, TypeError):
        return None


def _value(data: Mapping[str, Any], place: Steps) -> Any:
    here: Any = data
    for step in place:
        here = _at(here, step)
    return here


def _keys(place: Steps) -> list[str]:
    return [step for step in place if isinstance(step, str)]


def _taken(text: str, all_blocks: tuple[Block, ...], place: Steps, wish: Difference) -> str:
    inside = below(all_blocks, place)
    if not inside:
        return _set_in_block(text, all_blocks, place, wish)
    for block in reversed(inside):
        text = text[: block.start].rstrip(" \t") + _without_gap(text, block)
    return text


def _without_gap(text: str, block: Block) -> str:
    """Return what stands behind a block, less one of the gaps that it stood between."""
    rest = text[block.stop :]
    for gap in ("\r\n", "\n"):
        if rest.startswith(gap):
            return rest.removeprefix(gap)
    return rest


def _added(
    text: str,
    data: Mapping[str, Any],
    all_blocks: tuple[Block, ...],
    place: Steps,
    wanted: Wanted,
) -> str:
    wish = wanted.difference
    parent = place[:-1]
    entries = _value(data, parent)
    if isinstance(entries, list) and entries:
        inside = [each for each in all_blocks if each.of_list and each.path[:-1] == parent]
        if inside:
            return _with_entry(text, all_blocks, inside, entries, wanted)
        return _set_in_block(text, all_blocks, place, wish)
    if isinstance(entries, list) or wish.follows is not None:
        return _with_first_entry(text, all_blocks, parent, wanted)
    if _is_block_like(wish.after) and _stands_in_blocks(all_blocks, parent):
        return _with_section(text, all_blocks, parent, _sections(_keys(place), wish.after))
    if _is_implied(text, all_blocks, parent):
        new = section(_keys(parent), {str(place[-1]): wish.after}, of_list=False)
        return _with_section(text, all_blocks, parent, new)
    return _set_in_block(text, all_blocks, place, wish)


def _with_entry(
    text: str,
    all_blocks: tuple[Block, ...],
    inside: list[Block],
    entries: list[Any],
    wanted: Wanted,
) -> str:
    wish = wanted.difference
    index = place_after(entries, wish.follows)
    new = wanted.written or section(inside[0].keys, wish.after, of_list=True)
    if index == 0:
        return _spliced(text, inside[0].start, f"{new.rstrip()}\n\n")
    last = below(all_blocks, inside[index - 1].path)[-1]
    return _spliced(text, last.stop, f"\n{new.rstrip()}\n")


def _with_first_entry(
    text: str, all_blocks: tuple[Block, ...], parent: Steps, wanted: Wanted
) -> str:
    """Begin a list that is missing, or empty and perhaps written so."""
    emptied = text
    holder = _holder(all_blocks, parent)
    if _has_key(text, holder, parent):
        gone = Difference(path=parent, before=[], after=None)
        emptied = _set_in_block(text, all_blocks, parent, gone)
        all_blocks = blocks(emptied)
    entry = wanted.difference.after
    if not _stands_in_blocks(all_blocks, parent[:-1]):
        listed = Difference(path=parent, before=None, after=[entry])
        return _set_in_block(emptied, all_blocks, parent, listed)
    new = wanted.written or section(_keys(parent), entry, of_list=True)
    return _with_section(emptied, all_blocks, parent[:-1], new)


def _sections(keys: list[str], value: Any) -> str:
    if isinstance(value, Mapping):
        return section(keys, value, of_list=False)
    return "\n".join(section(keys, each, of_list=True) for each in value)


def _is_implied(text: str, all_blocks: tuple[Block, ...], path: Steps) -> bool:
    """Say whether a table has no header of its own, only tables below it."""
    if not path or any(each.path == path for each in all_blocks):
        return False
    return bool(below(all_blocks, path)) and not _has_key(text, _holder(all_blocks, path), path)


def _stands_in_blocks(all_blocks: tuple[Block, ...], path: Steps) -> bool:
    return not path or bool(below(all_blocks, path))


def _with_section(text: str, all_blocks: tuple[Block, ...], parent: Steps, new: str) -> str:
    last = below(all_blocks, parent)[-1]
    if last.stop == 0:
        return f"{new.rstrip()}\n\n{text}" if text.strip() else f"{new.rstrip()}\n"
    gap = "" if text[: last.stop].endswith("\n") else "\n"
    return _spliced(text, last.stop, f"{gap}\n{new.rstrip()}\n")


def _spliced(text: str, at: int, new: str) -> str:
    return text[:at] + new + text[at:]


def _holder(all_blocks: tuple[Block, ...], place: Steps) -> Block:
    """Return the innermost block whose keys can hold a place."""
    holding = [each for each in all_blocks if each.path == place[: len(each.path)]]
    return max(holding, key=lambda each: len(each.path))


def _inside(document: Any, block: Block) -> Any:
    """Return the table of a block in a document of this block alone."""
    here = document
    for key in block.keys:
        here = here[key]
    return here[0] if block.of_list else here


def _has_key(text: str, block: Block, place: Steps) -> bool:
    data = tomlkit.parse(text[block.head : block.stop]).unwrap()
    return _value(_inside(data, block), place[len(block.path) :]) is not None


def _set_in_block(text: str, all_blocks: tuple[Block, ...], place: Steps, wish: Difference) -> str:
    block = _holder(all_blocks, place[:-1])
    document = tomlkit.parse(text[block.head : block.stop])
    _set(_inside(document, block), place[len(block.path) :], wish, new=wish.before is None)
    return text[: block.head] + tomlkit.dumps(document) + text[block.stop :]


def _set(table: Any, place: Steps, wish: Difference, *, new: bool) -> None:
    """Make a difference in a document, at a place below one of its tables."""
    here = table
    for step in place[:-1]:
        here = here[step]
    last = place[-1]
    if wish.after is None:
        del here[last]
    elif new and isinstance(here, items.Array):
        here.insert(place_after(here.unwrap(), wish.follows), inline(wish.after))
    elif new and isinstance(here, items.AoT):
        here.insert(place_after(here.unwrap(), wish.follows), wish.after)
    else:
        here[last] = inline(wish.after)
