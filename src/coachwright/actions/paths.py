"""Paths into a parsed file: names of tables and places in lists."""

import itertools
from typing import Any

from coachwright.model.reading import field_path

Steps = tuple[str | int, ...]
"""Such as ``("dc_load", "modes", 0, "draw")``."""


def dotted(steps: Steps) -> str:
    """Return a path as people write it.

    Examples
    --------
    >>> dotted(("dc_load", "modes", 0, "draw"))
    'dc_load.modes[0].draw'
    """
    return field_path(steps)


def got(data: Any, steps: Steps) -> Any:
    """Return what stands at a path; None where nothing does.

    Examples
    --------
    >>> got({"body": {"size": ["9 mm"]}}, ("body", "size", 0)), got({}, ("body",))
    ('9 mm', None)
    """
    here = data
    for step in steps:
        try:
            here = here[step]
        except (KeyError, IndexError, TypeError):
            return None
    return here


def put(data: dict[str, Any], steps: Steps, value: Any) -> None:
    """Set the value at a path; tables and lists that are not there yet are made.

    Examples
    --------
    >>> data = {}
    >>> put(data, ("dc_load", "modes", 0, "draw"), "60 W")
    >>> data
    {'dc_load': {'modes': [{'draw': '60 W'}]}}
    """
    here: Any = data
    for step, after in itertools.pairwise(steps):
        if isinstance(step, int):
            here.extend({} for _ in range(len(here), step + 1))
            here = here[step]
        else:
            here = here.setdefault(step, [] if isinstance(after, int) else {})
    last = steps[-1]
    if isinstance(last, int):
        here.extend("" for _ in range(len(here), last + 1))
    here[last] = value
