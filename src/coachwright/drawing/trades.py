"""Which trade builds a part: the layer that it is drawn on."""

from coachwright.drawing.scene import Layer
from coachwright.model.build import Fitted, Mounting

_BY_MOUNTING = {
    Mounting.ROOF: Layer.ROOF,
    Mounting.REAR_DOOR_LEFT: Layer.OUTSIDE,
    Mounting.REAR_DOOR_RIGHT: Layer.OUTSIDE,
    Mounting.HITCH: Layer.OUTSIDE,
    Mounting.WHEELS: Layer.OUTSIDE,
}
_BY_FACET: tuple[tuple[Layer, tuple[str, ...]], ...] = (
    (Layer.FURNITURE, ("carcass", "bed", "seat", "table", "slide_out")),
    (Layer.GAS, ("gas_store", "gas_appliance")),
    (Layer.PLUMBING, ("tank", "pump", "water_heater", "water_outlet", "toilet")),
    (Layer.AIR, ("heater", "air_conditioner", "fan")),
    (Layer.OUTSIDE, ("ladder", "awning", "spare", "rear_door_carrier", "hitch_carrier")),
    (
        Layer.ELECTRICAL,
        (
            "battery",
            "inverter",
            "dcdc_charger",
            "shore_charger",
            "solar_controller",
            "solar_panel",
            "outlet",
            "light",
            "dc_load",
            "ac_load",
        ),
    ),
)
_WORDS = (
    (Layer.PLUMBING, ("plumbing", "hose", "pipe", "shower", "sink", "basin", "drain")),
    (Layer.ELECTRICAL, ("fuse", "bus-bar", "switch", "wiring", "shore", "display", "panel-12")),
    (Layer.FURNITURE, ("shelf", "cabinet", "locker", "bench", "box", "drawer", "partition")),
)
"""Words of a part's id that tell its trade where no facet does."""


def trade_of(fitted: Fitted) -> Layer:
    """Return the layer of a fitting: its mounting decides outside, its facets inside.

    Parameters
    ----------
    fitted
        A fitting with its part.

    Notes
    -----
    The first trade in the order furniture, gas, plumbing, air, outside, electrical that owns one
    of the part's facets: a galley with a lamp is furniture, a gas heater is gas.
    """
    mounting = fitted.fitting.mounting
    if mounting in _BY_MOUNTING:
        return _BY_MOUNTING[mounting]
    for layer, names in _BY_FACET:
        if any(getattr(fitted.part, name) is not None for name in names):
            return layer
    for layer, words in _WORDS:
        if any(word in fitted.part.id for word in words):
            return layer
    return Layer.OUTSIDE if mounting in (Mounting.SIDE, Mounting.UNDERBODY) else Layer.INTERIOR
