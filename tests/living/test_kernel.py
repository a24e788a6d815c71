"""The compiled kernel does what its own source says when it is run as it stands."""

import importlib
import sys
from dataclasses import replace
from types import ModuleType
from typing import Any

import numba
import numpy as np
import pytest
from benchmarks.twin.running import handed_over, source_of_run

from coachwright.actions.site_shelf import arrays_of_site
from coachwright.catalogue.loading import Catalogue
from coachwright.living import handed, kernel
from coachwright.living.given import Air, Given, Pattern
from coachwright.living.given_body import Passage
from coachwright.living.simulate import Prepared, prepare
from coachwright.living.space import Space
from tests.support.boxes import COOLER, van, van_body

SITE = arrays_of_site(Catalogue(), "greensboro-nc", None)
PARTS = (
    "compiling",
    "kernel_physics",
    "kernel_flow",
    "kernel_power",
    "kernel_heat",
    "kernel_damp",
)
JANUARY, JULY = 5, 190


@pytest.fixture(scope="module", name="as_it_stands")
def _as_it_stands() -> ModuleType:
    """Load the kernel once more with its compiler off, and leave the compiled one in its place."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(numba.config, "DISABLE_JIT", 1)
        for part in (*PARTS, "kernel"):
            patch.delitem(sys.modules, f"coachwright.living.{part}", raising=False)
            patch.delattr(f"coachwright.living.{part}", raising=False)
        return importlib.import_module("coachwright.living.kernel")


def _usual(**told: Any) -> Given:
    supply = replace(van().supply, sun_w=SITE.roof.whole_w_per_m2 * 0.6)
    door = Passage(name="door", rooms=("cabin", "stall"), conductance_w_per_k=1.0, flow_m3_per_h=9)
    return van(**({"supply": supply, "body": replace(van_body(), passages=(door,))} | told))


def _designs() -> dict[str, tuple[Given, int]]:
    usual = van()
    assert usual.bank is not None
    assert usual.heater is not None
    electric = replace(usual.heater, electric_ac=True, second_room="", efficiency_frac=1.0)
    small = replace(usual.bank, capacity_ah=15.0, room="cabin")
    always = Pattern(hookup_frac=1.0, hookup_w=500.0)
    cold = replace(usual.bank, room="outside")
    fridges = tuple(replace(each, ac=True) for each in usual.fridges)
    return {
        "usual, cold": (_usual(), JANUARY),
        "usual, hot": (_usual(), JULY),
        "electric heat, small bank": (_usual(heater=electric, bank=small), JANUARY),
        "electric heat on hook-up": (_usual(heater=electric, pattern=always), JANUARY),
        "cooler on direct current": (_usual(cooler=replace(COOLER, ac=False)), JULY),
        "cooler on hook-up": (_usual(pattern=always, fridges=fridges), JULY),
        "cold bank, open body": (_usual(bank=cold, air=Air(least_m3_per_h=60.0)), JANUARY),
        "one room, mains": (_one_room(), JULY),
        "driving": (_usual(pattern=Pattern(parked_d=1.0, drive_h=5.0), bank=small), JANUARY),
    }


def _one_room() -> Given:
    body = van_body()
    surfaces = tuple(s for s in body.surfaces if "stall" not in (s.outside, s.room))
    body = replace(body, rooms=body.rooms[:1], surfaces=surfaces)
    return van(body=body, heater=None, bank=None, cooler=replace(COOLER, sensible_frac=1.0))


def _walked(module: Any, ready: Prepared, day: int, days: int = 3) -> Space:
    space = Space.of(ready, from_day=day, start_degc=12.0).again(ready, steps=144 * days)
    space.state.misc[0] = 0.6
    calendar = handed.calendar(
        given=ready.given, step_min=10.0, from_day=day, days=days, off_grid=False
    )
    told = (ready.numbers, ready.tables, ready.matrices, ready.hours, calendar)
    unlimited = int(ready.given.bank is None)
    module.run(*told, space.state, space.sums, space.kept, space.work, unlimited, 2)
    return space


@pytest.mark.parametrize("name", sorted(_designs()))
def test_compiled_and_as_it_stands_are_the_same(as_it_stands: ModuleType, name: str) -> None:
    design, day = _designs()[name]
    ready = prepare(design, SITE)
    compiled, plain = _walked(kernel, ready, day), _walked(as_it_stands, ready, day)
    assert compiled.sums.month == pytest.approx(plain.sums.month, rel=1e-9, abs=1e-6)
    assert compiled.kept.nodes == pytest.approx(plain.kept.nodes, rel=1e-9, abs=1e-9)
    assert compiled.kept.flows == pytest.approx(plain.kept.flows, rel=1e-9, abs=1e-6)


def test_a_stand_compiled_and_as_it_stands_is_the_same(as_it_stands: ModuleType) -> None:
    bank = van().bank
    numbers = handed.bank_numbers(bank, step_s=600.0)
    tables = handed.bank_tables(bank)
    clock = np.arange(144 * 4)
    sun_w = np.maximum(np.sin(clock / 144.0 * 2.0 * np.pi), 0.0) * 200.0
    draw_w = np.full(len(clock), 180.0)
    around = np.full(len(clock), 8.0)
    found = []
    for module in (kernel, as_it_stands):
        lasted, lowest = np.zeros(4, dtype=np.int64), np.zeros(4)
        begins = np.arange(4, dtype=np.int64) * 144
        module.walk(
            numbers, *tables, sun_w, draw_w, around, begins, 0, 4, 600, 1.0, lasted, lowest
        )
        found.append((lasted, lowest))
    assert (found[0][0] == found[1][0]).all()
    assert found[0][1] == pytest.approx(found[1][1], rel=1e-12)
    assert 0 < found[0][0][0] < 600


def test_the_kernel_can_be_written_out_in_c_for_the_benchmark() -> None:
    told = source_of_run(handed_over(prepare(van(), SITE)))
    assert "void twin(" in told
    assert "kernel_heat_fresh_air(" in told
