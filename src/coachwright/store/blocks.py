"""Where in a TOML text each table stands, found without building a document of it.

A text is cut into blocks: the keys before the first header, then one block for each header with
the keys under it.  Comments directly above a header belong to it; what stands apart belongs to
nobody and stays where it is when a block is taken out.
"""

import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from coachwright.store.differences import Steps

_TOKEN = re.compile(
    r'"""(?:[^\\]|\\.)*?"""(?:"{0,2})'
    r"|'''.*?'''(?:'{0,2})"
    r'|"(?:[^"\\\n]|\\.)*"'
    r"|'[^'\n]*'"
    r"|\#[^\n]*"
    r"|[\[{]"
    r"|[\]}]"
    r"|\n"
    r"|[^\"'\#\[\]{}\n]+"
    r"|.",
    re.DOTALL,
)
"""What must be told apart to know where a value ends; strings first, so that their signs do not
count."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Block:
    """One table of a text.

    Attributes
    ----------
    path
        Where it is in the parsed file, with places instead of names in lists; empty for the keys
        before the first header.
    keys
        The words of its header.
    of_list
        It is an entry of a list of tables.
    start
        Where its comments begin.
    head
        Where its header begins.
    stop
        Where its last key ends.
    """

    path: Steps
    keys: tuple[str, ...]
    of_list: bool
    start: int
    head: int
    stop: int


@dataclass(slots=True)
class _Open:
    """A block whose end has not been found yet."""

    path: Steps
    keys: tuple[str, ...]
    of_list: bool
    start: int
    head: int


def blocks(text: str) -> tuple[Block, ...]:
    r"""Return the blocks of a TOML text, in their order; the keys before the first header first.

    Examples
    --------
    >>> text = 'format = 1\n\n# served from the aisle\n[[fittings]]\nname = "galley"\n'
    >>> for each in blocks(text):
    ...     print(each.path, repr(text[each.start : each.stop]))
    () 'format = 1\n'
    ('fittings', 0) '# served from the aisle\n[[fittings]]\nname = "galley"\n'
    """
    found: list[Block] = []
    counts: dict[Steps, int] = {}
    here = _Open(path=(), keys=(), of_list=False, start=0, head=0)
    stop = 0
    comments: int | None = None
    for start, end in _lines(text):
        line = text[start:end].strip()
        if not line:
            comments = None
        elif line.startswith("#"):
            comments = start if comments is None else comments
        elif line.startswith("["):
            found.append(_closed(here, stop))
            here = _opened(line, start, start if comments is None else comments, counts)
            stop = end
            comments = None
        else:
            stop = end
            comments = None
    found.append(_closed(here, stop))
    return tuple(found)


def comments(text: str) -> tuple[str, ...]:
    """Return the comments of a TOML text, in their order."""
    found = (token[0] for token in _TOKEN.finditer(text))
    return tuple(each.strip() for each in found if each.startswith("#"))


def below(all_blocks: tuple[Block, ...], path: Steps) -> tuple[Block, ...]:
    """Return the blocks of a table and of everything inside it."""
    return tuple(each for each in all_blocks if each.path[: len(path)] == path)


def _closed(block: _Open, stop: int) -> Block:
    return Block(
        path=block.path,
        keys=block.keys,
        of_list=block.of_list,
        start=block.start,
        head=block.head,
        stop=stop,
    )


def _lines(text: str) -> Iterator[tuple[int, int]]:
    """Yield start and end of each line; a value in brackets or long quotes is one line."""
    depth = 0
    start = 0
    for token in _TOKEN.finditer(text):
        sign = token[0]
        if sign in "[{":
            depth += 1
        elif sign in "]}":
            depth -= 1
        elif sign == "\n" and depth <= 0:
            depth = 0
            yield start, token.end()
            start = token.end()
    if start < len(text):
        yield start, len(text)


def _opened(line: str, head: int, start: int, counts: dict[Steps, int]) -> _Open:
    keys = _header(line)
    of_list = line.startswith("[[")
    path: Steps = ()
    for key in keys[:-1]:
        path = (*path, key)
        if path in counts:
            path = (*path, counts[path] - 1)
    path = (*path, keys[-1])
    if of_list:
        index = counts.get(path, 0)
        counts[path] = index + 1
        path = (*path, index)
    return _Open(path=path, keys=keys, of_list=of_list, start=start, head=head)


@lru_cache(maxsize=1024)
def _header(line: str) -> tuple[str, ...]:
    """Return the words of a header; the reader of TOML knows how they may be quoted."""
    keys: list[str] = []
    here: Any = tomllib.loads(line)
    while here:
        if isinstance(here, list):
            here = here[0]
            continue
        key = next(iter(here))
        keys.append(key)
        here = here[key]
    return tuple(keys)
