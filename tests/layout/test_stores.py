"""Storage and counters; by hand."""

from typing import Any

import pytest

from coachwright.layout.model import Layout
from coachwright.layout.stage import stage
from tests.support.builds import build
from tests.support.vans import Thing, Triple, holding, thing


def cabinet(
    name: str = "galley",
    at: Triple = (2000, -800, 0),
    *,
    size: Triple = (1200, 500, 900),
    storage: str = "200 L",
    **fields: Any,
) -> Thing:
    return thing(name, size, at, facets={"carcass": {"storage": storage}}, **fields)


def layout_of(*things: Thing) -> Layout:
    return stage(build(holding(*things)))


def free_mm(*things: Thing) -> float | None:
    return next(f.value for f in layout_of(*things).figures if f.name == "layout.counter-length")


def test_storage_counts_inside_only() -> None:
    trunk = cabinet("trunk", (5040, -300, 200), mounting="rear door left")
    layout = layout_of(cabinet(), cabinet("chest", (3300, -800, 0), storage="90 L"), trunk)
    assert [(store.name, store.storage_l) for store in layout.stores] == [
        ("galley", 200),
        ("chest", 90),
    ]
    figure = next(f for f in layout.figures if f.name == "layout.storage-volume")
    assert figure.value == 290


@pytest.mark.parametrize(
    ("height", "lengths"), [(799, []), (800, [1200]), (1000, [1200]), (1001, [])]
)
def test_a_counter_is_at_working_height(height: float, lengths: list[float]) -> None:
    found = layout_of(cabinet(size=(1200, 500, height))).counters
    assert [counter.length_mm for counter in found] == lengths


def test_the_longer_side_counts_however_it_stands() -> None:
    assert free_mm(cabinet()) == 1200
    assert free_mm(cabinet(at=(2000, -800, 0), turn="90 deg")) == 1200


def test_what_is_let_in_or_stands_on_it_takes_its_stretch_once() -> None:
    sink = thing("sink", (400, 350, 150), (2100, -750, 755), within="galley")
    tap = thing("tap", (60, 60, 300), (2300, -780, 890), within="galley")
    maker = thing("maker", (200, 250, 340), (2700, -700, 900), on="galley")
    pump = thing("pump", (200, 130, 110), (2900, -700, 100), within="galley")
    # sink 2100 to 2500 with the tap in it, coffee maker 2700 to 2900; the pump is below the top
    assert free_mm(cabinet(), sink, tap, maker, pump) == 1200 - 400 - 200


def test_what_stands_beside_takes_nothing() -> None:
    assert free_mm(cabinet(), thing("stool", (300, 300, 950), (2100, -290, 0))) == 1200
