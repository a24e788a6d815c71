"""The figures of the outside with their workings."""

from collections.abc import Sequence

from coachwright.layout.model_outside import Hung, Tray
from coachwright.model.build import Build
from coachwright.model.shell import BuildUp
from coachwright.model.working import Figure, Given, Working


def outside_figures(
    *,
    build: Build,
    hung: Sequence[Hung],
    trays: Sequence[Tray],
    doors_mm: float,
    build_up: BuildUp,
) -> tuple[Figure, ...]:
    """Return the figures: what hangs behind, the free depth behind, the height of the floor."""
    return (
        _added_length(hung),
        _free_behind([tray for tray in trays if tray.way == "rear"], doors_mm),
        _load_floor(build, build_up),
    )


def _added_length(hung: Sequence[Hung]) -> Figure:
    value = max((each.added_length_mm for each in hung), default=0.0)
    return Figure(
        name="layout.added-length-behind",
        label="Length added by what hangs behind",
        value=value,
        unit="mm",
        working=Working(
            expression="ΔL = max(x of rear edge) - x of closed doors",
            given=tuple(
                Given(
                    symbol=each.name,
                    meaning=f"how far it stands out, on the {each.place}",
                    value=each.added_length_mm,
                    unit="mm",
                    source="positions of the build",
                )
                for each in hung
            ),
            result=value,
            unit="mm",
            note="the doors closed",
        ),
    )


def _free_behind(trays: Sequence[Tray], doors_mm: float) -> Figure:
    value = max(doors_mm, *(tray.beyond_mm for tray in trays), 0.0)
    doors = Given(
        symbol="doors",
        meaning="the rear doors' reach, with what hangs on them",
        value=doors_mm,
        unit="mm",
        source="base vehicle and positions of the build",
    )
    return Figure(
        name="layout.free-behind",
        label="Free depth behind the vehicle for doors and trays",
        value=value,
        unit="mm",
        working=Working(
            expression="d = max over doors and trays of reach behind the closed doors",
            given=(
                doors,
                *(
                    Given(
                        symbol=tray.name,
                        meaning="edge of the tray when it is out",
                        value=tray.beyond_mm,
                        unit="mm",
                        source="positions of the build",
                    )
                    for tray in trays
                ),
            ),
            result=value,
            unit="mm",
            note="room to walk there not counted",
        ),
    )


def _load_floor(build: Build, build_up: BuildUp) -> Figure:
    floor_mm = build.vehicle.outside.floor_height_mm
    return Figure(
        name="layout.load-floor-height",
        label="Finished floor above the ground, unladen",
        value=floor_mm + build_up.floor_mm,
        unit="mm",
        working=Working(
            expression="h = h_floor + t",
            given=(
                Given(
                    symbol="h_floor",
                    meaning="load floor above the ground, unladen",
                    value=floor_mm,
                    unit="mm",
                    source="base vehicle",
                ),
                Given(
                    symbol="t",
                    meaning="floor covering and insulation",
                    value=build_up.floor_mm,
                    unit="mm",
                    source="finishes of the build",
                ),
            ),
            result=floor_mm + build_up.floor_mm,
            unit="mm",
            note="standard tyres; a laden vehicle stands lower",
        ),
    )
