"""An entry of the catalogue."""

from pydantic import Field

from coachwright.model import facets
from coachwright.model.record import Record

ID_PATTERN = "^[a-z0-9]+(-[a-z0-9]+)*$"
"""How ids and reference names are spelt: lower-case words joined by hyphens."""


class Part(Record):
    """A part: what it does is given by its facets."""

    id: str = Field(pattern=ID_PATTERN)
    name: str = Field(min_length=1)
    description: str = ""
    maker: str = ""
    """Left to the shop."""
    supplier: str = ""
    """Left to the shop."""
    body: facets.Body
    access: facets.Access | None = None
    price: facets.Price | None = None
    labour: facets.Labour | None = None
    dc_load: facets.DcLoad | None = None
    ac_load: facets.AcLoad | None = None
    battery: facets.Battery | None = None
    solar_panel: facets.SolarPanel | None = None
    solar_controller: facets.SolarController | None = None
    dcdc_charger: facets.DcdcCharger | None = None
    shore_charger: facets.ShoreCharger | None = None
    inverter: facets.Inverter | None = None
    outlet: facets.Outlet | None = None
    tank: facets.Tank | None = None
    pump: facets.Pump | None = None
    water_heater: facets.WaterHeater | None = None
    water_outlet: facets.WaterOutlet | None = None
    toilet: facets.Toilet | None = None
    heater: facets.Heater | None = None
    warm_air_outlet: facets.WarmAirOutlet | None = None
    air_conditioner: facets.AirConditioner | None = None
    fan: facets.Fan | None = None
    fridge: facets.Fridge | None = None
    gas_appliance: facets.GasAppliance | None = None
    gas_store: facets.GasStore | None = None
    bed: facets.Bed | None = None
    seat: facets.Seat | None = None
    carcass: facets.Carcass | None = None
    opening: facets.Opening | None = None
    blind: facets.Blind | None = None
    cab_divider: facets.CabDivider | None = None
    enclosure: facets.Enclosure | None = None
    detector: facets.Detector | None = None
    extinguisher: facets.Extinguisher | None = None
    light: facets.Light | None = None
    table: facets.Table | None = None
    tyre: facets.Tyre | None = None
    spare: facets.Spare | None = None
    rear_door_carrier: facets.RearDoorCarrier | None = None
    hitch_carrier: facets.HitchCarrier | None = None
    roof_rack: facets.RoofRack | None = None
    ladder: facets.Ladder | None = None
    slide_out: facets.SlideOut | None = None
    awning: facets.Awning | None = None
    outside_device: facets.OutsideDevice | None = None
    insulation: facets.Insulation | None = None
    lining: facets.Lining | None = None

    def facet_names(self) -> tuple[str, ...]:
        """Return the names of the facets that the part has, in the order they are declared."""
        return tuple(name for name in FACET_NAMES if getattr(self, name) is not None)


_IDENTITY = ("id", "name", "description", "maker", "supplier")
FACET_NAMES: tuple[str, ...] = tuple(name for name in Part.model_fields if name not in _IDENTITY)
"""Every facet that there is."""
