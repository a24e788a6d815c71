"""The layout's figures with their workings."""

import re
from collections.abc import Iterator, Sequence

from coachwright.layout.model import Aisle, Counter, FreeFloor, Store
from coachwright.model.working import Figure, Given, Working


def layout_figures(
    *,
    aisles: Sequence[Aisle],
    free_floor: FreeFloor,
    stores: Sequence[Store],
    counters: Sequence[Counter],
) -> tuple[Figure, ...]:
    """Return the layout's figures.

    Parameters
    ----------
    aisles
        Every way at every level.
    free_floor
        At floor level.
    stores, counters
        The cabinets.
    """
    return (
        *_ways(aisles),
        _floor(free_floor),
        _storage(stores),
        _counters(counters),
    )


def _ways(aisles: Sequence[Aisle]) -> Iterator[Figure]:
    for way in dict.fromkeys(aisle.way for aisle in aisles):
        yield _way(way, [aisle for aisle in aisles if aisle.way == way])


def _way(way: str, levels: Sequence[Aisle]) -> Figure:
    """Return the narrowest of the levels of one way."""
    worst = min(levels, key=lambda aisle: aisle.passage.width_mm)
    one, other = worst.passage.between
    return Figure(
        name="layout.aisle-" + "-".join(re.findall(r"[a-z0-9]+", way.lower())),
        label=f"Narrowest place from {way}",
        value=worst.passage.width_mm,
        unit="mm",
        working=Working(
            expression="w = min over levels of min over chains of max gap",
            given=tuple(
                Given(
                    symbol=aisle.level,
                    meaning=f"at {aisle.level} height, between "
                    f"{aisle.passage.between[0]} and {aisle.passage.between[1]}",
                    value=aisle.passage.width_mm,
                    unit="mm",
                    source="positions of the build",
                )
                for aisle in levels
            ),
            result=worst.passage.width_mm,
            unit="mm",
            references=("build-geometry",),
            note=f"widest round person who can pass; narrowest between {one} and {other}",
        ),
    )


def _floor(floor: FreeFloor) -> Figure:
    whole_m2 = floor.length_mm * floor.width_mm / 1e6
    return Figure(
        name="layout.free-floor-area",
        label="Floor on which nothing stands",
        value=floor.free_m2,
        unit="m2",
        working=Working(
            expression="A = L · W - taken",
            given=(
                _length("L", "from the cab line to the rear doors", floor.length_mm),
                _length("W", "between the walls at floor level", floor.width_mm),
                Given(
                    symbol="taken",
                    meaning="where something stands at floor level, wheel arches too",
                    value=whole_m2 - floor.free_m2,
                    unit="m2",
                    source="positions of the build",
                ),
            ),
            result=floor.free_m2,
            unit="m2",
            references=("build-geometry",),
            note="what is less high than the lower edge of that level does not count",
        ),
    )


def _length(symbol: str, meaning: str, length_mm: float) -> Given:
    return Given(
        symbol=symbol, meaning=meaning, value=length_mm, unit="mm", source="shell and finishes"
    )


def _storage(stores: Sequence[Store]) -> Figure:
    total_l = sum(store.storage_l for store in stores)
    return Figure(
        name="layout.storage-volume",
        label="Storage in the cabinets",
        value=total_l,
        unit="L",
        working=Working(
            expression="V = Σ V_i",
            given=tuple(
                Given(
                    symbol="V_i",
                    meaning=store.name,
                    value=store.storage_l,
                    unit="L",
                    source="storage of the part",
                )
                for store in stores
            ),
            result=total_l,
            unit="L",
            references=("part-maker-data",),
            note="inside the van; as the parts state it, less nothing for what is built in",
        ),
    )


def _counters(counters: Sequence[Counter]) -> Figure:
    free_mm = sum(counter.length_mm - counter.taken_mm for counter in counters)
    given = []
    for counter in counters:
        given.append(_part("L_i", f"length of {counter.name}", counter.length_mm))
        given.append(_part("t_i", f"let into {counter.name} or on it", counter.taken_mm))
    return Figure(
        name="layout.counter-length",
        label="Free counter length",
        value=free_mm,
        unit="mm",
        working=Working(
            expression="L = Σ (L_i - t_i)",
            given=tuple(given),
            result=free_mm,
            unit="mm",
            references=("build-geometry",),
            note="cabinets with their top at working height; lids and flaps are not counted",
        ),
    )


def _part(symbol: str, meaning: str, length_mm: float) -> Given:
    return Given(
        symbol=symbol,
        meaning=meaning,
        value=length_mm,
        unit="mm",
        source="parts and positions of the build",
    )
