"""Compile the twin with gcc -O3, hand it what the kernel is handed, and compare."""

import ctypes
import subprocess
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np

from benchmarks.twin.writing import RECORDS, name_of, written_out
from coachwright.living import kernel
from coachwright.living.handed import calendar
from coachwright.living.simulate import Prepared
from coachwright.living.space import Space

FLAGS = ("-O3", "-march=native", "-ffast-math", "-std=gnu11", "-shared", "-fPIC", "-lm")
_HEAD = """#include <math.h>
typedef struct { double *p; long n0; } Grid1;
typedef struct { double *p; long n0, n1; } Grid2;
typedef struct { double *p; long n0, n1, n2; } Grid3;
typedef struct { long *p; long n0; } Places1;
typedef struct { double v[4]; } Values4;
typedef struct { double v[7]; } Values7;
static inline double least(double a, double b) { return a < b ? a : b; }
static inline double most(double a, double b) { return a > b ? a : b; }
"""


def source_of_run(arguments: tuple[Any, ...]) -> str:
    """Return the text of the kernel's `run` in C, for arguments of these shapes."""
    RECORDS.clear()
    declared = "".join(_declared(each) for each in arguments if hasattr(each, "_fields"))
    run = kernel.run.py_func  # type: ignore[attr-defined]
    text = written_out(run)
    names = [type(each).__name__ if hasattr(each, "_fields") else "long" for each in arguments]
    given = ", ".join(f"{name} *a{place}" for place, name in enumerate(names))
    handed = ", ".join(f"*a{place}" for place in range(len(names)))
    entry = f"void twin({given}) {{ {name_of(run)}({handed}); }}"
    return f"{_HEAD}\n{declared}\n{text}\n{entry}"


def twin_of_run(arguments: tuple[Any, ...], folder: Path) -> Callable[..., None]:
    """Return the kernel's `run` in C, for arguments of these shapes."""
    source, library = folder / "twin.c", folder / "twin.so"
    source.write_text(source_of_run(arguments), encoding="utf-8")
    words = ["gcc", *FLAGS[:-1], str(source), "-o", str(library), FLAGS[-1]]
    done = subprocess.run(words, capture_output=True, text=True, check=False)  # noqa: S603
    if done.returncode:
        raise SystemExit(done.stderr)
    entered = ctypes.CDLL(str(library)).twin

    def call(*handed_now: Any) -> None:
        entered(*(ctypes.byref(_handed(each)) for each in handed_now))

    return call


def _kind(value: Any) -> str:
    if hasattr(value, "_fields"):
        return type(value).__name__
    if isinstance(value, np.ndarray):
        return f"{'Places' if value.dtype == np.int64 else 'Grid'}{value.ndim}"
    return "long" if isinstance(value, int) else "double"


def _declared(record: Any) -> str:
    name = type(record).__name__
    if name in RECORDS:
        return ""
    inner = "".join(_declared(each) for each in record if hasattr(each, "_fields"))
    RECORDS[name] = {field: _kind(getattr(record, field)) for field in record._fields}
    fields = " ".join(f"{kind} {field};" for field, kind in RECORDS[name].items())
    return f"{inner}typedef struct {{ {fields} }} {name};\n"


def _handed(value: Any) -> Any:
    if hasattr(value, "_fields"):
        parts = [(field, _handed(getattr(value, field))) for field in value._fields]
        kind = type("Held", (ctypes.Structure,), {"_fields_": [(n, type(p)) for n, p in parts]})
        return kind(*(part for _, part in parts))
    if isinstance(value, np.ndarray):
        lengths = [(f"n{place}", ctypes.c_long) for place in range(value.ndim)]
        kind = type("Held", (ctypes.Structure,), {"_fields_": [("p", ctypes.c_void_p), *lengths]})
        return kind(value.ctypes.data, *value.shape)
    return ctypes.c_long(value) if isinstance(value, int) else ctypes.c_double(value)


def side_by_side(ready: Prepared, folder: Path, calls: int) -> tuple[float, float, float]:
    """Return how far the twin's year is off, and the milliseconds of kernel and twin, turn about.

    Both walk the same year from the same state; of each the quickest of `calls` is told.
    """
    both = handed_over(ready), handed_over(ready)
    twin = twin_of_run(both[1], folder)
    walks: tuple[Callable[..., Any], ...] = (kernel.run, twin)
    for walk, handed in zip(walks, both, strict=True):
        walk(*handed)
    here, there = (handed[6].month for handed in both)
    off = float(np.max(np.abs(here - there) / (1.0 + np.abs(here))))
    taken: tuple[list[float], list[float]] = ([], [])
    for _ in range(calls):
        for walk, handed, times in zip(walks, both, taken, strict=True):
            begun_s = time.process_time()
            walk(*handed)
            times.append((time.process_time() - begun_s) * 1e3)
    return off, min(taken[0]), min(taken[1])


def handed_over(ready: Prepared) -> tuple[Any, ...]:
    """Return what `run` is handed for a year of a design, which sums and keeps no series."""
    space = Space.of(ready, from_day=0, start_degc=10.0)
    days = calendar(
        given=ready.given, step_min=ready.step_min, from_day=0, days=365, off_grid=False
    )
    told = (ready.numbers, ready.tables, ready.matrices, ready.hours, days)
    return (*told, space.state, space.sums, space.kept, space.work, 0, 1)
