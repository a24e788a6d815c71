"""Weights as the road discipline gets them, with figures chosen here: no masses are summed."""

from coachwright.weights.model import (
    AxleSides,
    LengthBand,
    LoadCase,
    MassBand,
    Seating,
    WaterLine,
    Weights,
)


def band(nominal_kg: float, bound_kg: float = 40.0) -> MassBand:
    return MassBand(
        nominal_kg=nominal_kg, low_kg=nominal_kg - bound_kg, high_kg=nominal_kg + bound_kg
    )


def case(name: str, front_kg: float, rear_kg: float, cg_height_mm: float = 800.0) -> LoadCase:
    sides = AxleSides(left_kg=0.0, right_kg=0.0, right_frac=0.5)
    nothing = LengthBand(nominal_mm=0.0, low_mm=0.0, high_mm=0.0)
    return LoadCase(
        name=name,
        label=name,
        loads=(),
        total=band(front_kg + rear_kg),
        front=band(front_kg),
        rear=band(rear_kg),
        front_sides=sides,
        rear_sides=sides,
        cg_x=nothing,
        cg_y=nothing,
        cg_height=LengthBand(
            nominal_mm=cg_height_mm, low_mm=cg_height_mm - 20, high_mm=cg_height_mm + 20
        ),
    )


def weights(
    *, front_kg: float = 1500.0, rear_kg: float = 1700.0, cg_height_mm: float = 800.0
) -> Weights:
    """Return weights whose worst cases are 50 kg above travelling on each axle."""
    return Weights(
        items=(),
        cases=(
            case("travelling", front_kg, rear_kg, cg_height_mm),
            case("front-axle-worst", front_kg + 50, rear_kg),
            case("rear-axle-worst", front_kg, rear_kg + 50),
        ),
        left=(),
        statements=(),
        seating=Seating(belted=2, travel=2, occupant_kg=75.0),
        water_line=WaterLine(fresh_l=0.0, label_kg=0.0, label_lb_kg=0.0),
        added_kg=0.0,
        ticket=None,
        figures=(),
        notes=(),
    )
