"""How the kernel is compiled: parts into the loop, and what is called from outside."""

from collections.abc import Callable
from typing import Any, TypeVar, cast

import numba

Function = TypeVar("Function", bound=Callable[..., Any])

_FAST = {"contract", "nsz", "arcp", "reassoc"}
"""Liberties with rounding; none with numbers that are not."""
_LIKE: dict[str, Any] = {"fastmath": _FAST, "error_model": "numpy", "_nrt": False}
"""Nothing is allocated, so nothing is counted either: counting would cost more than the rest."""


def compiled_in(function: Function) -> Function:
    """Compile a part of a step, always into what calls it."""
    return cast("Function", numba.njit(forceinline=True, **_LIKE)(function))


def callable_outside(function: Function) -> Function:
    """Compile what is called from outside: kept on disk, and other threads run meanwhile."""
    return cast("Function", numba.njit(cache=True, nogil=True, **_LIKE)(function))
