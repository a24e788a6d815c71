"""The layout's figures with their workings."""

from collections.abc import Sequence

from coachwright.layout.model import Aisle
from coachwright.model.working import Figure, Given, Working


def layout_figures(*, aisles: Sequence[Aisle]) -> tuple[Figure, ...]:
    """Return the layout's figures: the narrowest place of each way."""
    ways = dict.fromkeys(aisle.way for aisle in aisles)
    return tuple(_way(way, [aisle for aisle in aisles if aisle.way == way]) for way in ways)


def _way(way: str, levels: Sequence[Aisle]) -> Figure:
    """Return the narrowest of the levels of one way."""
    worst = min(levels, key=lambda aisle: aisle.passage.width_mm)
    one, other = worst.passage.between
    return Figure(
        name="layout.aisle-" + way.replace(" ", "-"),
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
            note=f"widest round person who can pass; narrowest between {one} and {other}",
        ),
    )
