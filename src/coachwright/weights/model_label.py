"""What the labels of the weights say beside masses: seats and water."""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True, slots=True)
class Seating:
    """Seats as the statements count them, the driver's included.

    Attributes
    ----------
    belted
        Seats with a belt.
    travel
        Seats meant for use in motion.
    occupant_kg
        Mass of a person in the statements of the jurisdiction.
    """

    belted: int
    travel: int
    occupant_kg: float


@dataclass(frozen=True, kw_only=True, slots=True)
class WaterLine:
    """The full water load as the label of a motor home prints it.

    Attributes
    ----------
    fresh_l
        Fresh tanks full.
    label_kg
        At 1 kg/L.
    label_lb_kg
        At 8.3 lb/US gal, turned into kilograms; not the same as `label_kg`.
    """

    fresh_l: float
    label_kg: float
    label_lb_kg: float
