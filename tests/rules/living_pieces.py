"""Parts and changes that the rule cases of the coupled year are made from."""

from tests.rules.water_pieces import Piece, with_parts
from tests.support.builds import Data

__all__ = ["with_parts"]

BATTERY: Piece = (
    {
        "battery": {
            "chemistry": "LFP",
            "nominal": "12.8 V",
            "capacity": "100 Ah",
            "charge_limit": "50 A",
            "discharge_limit": "100 A",
        }
    },
    {},
)
COOLER: Piece = ({"air_conditioner": {"cooling": "2 kW"}}, {})
HEATER: Piece = ({"heater": {"output": "2 kW", "fuel": "diesel"}}, {})
ELECTRIC: Piece = ({"heater": {"output": "1 kW", "fuel": "electric"}}, {})
OPEN_FLAME: Piece = ({"heater": {"output": "3 kW", "fuel": "wood", "room_sealed": False}}, {})
INVERTER: Piece = (
    {
        "inverter": {
            "continuous": "2000 W",
            "surge": "4000 W",
            "standby": "10 W",
        }
    },
    {},
)
GRADE_TWO: Data = {"brief.climate.heating_grade": 2}
GRADE_THREE: Data = {"brief.climate.heating_grade": 3}
GRADE_ONE: Data = {"brief.climate.heating_grade": 1}
WET_KIT: Data = {"brief.habits.dry_within": "8 h"}
US: Data = {"brief.jurisdiction": "us"}


def hidden_inverter(free_vent: str = "") -> Data:
    """Return changes that build an inverter into a cupboard with vents, or with none stated."""
    carcass = {"free_vent": free_vent} if free_vent else {}
    return with_parts(({"carcass": carcass}, {}), (INVERTER[0], {"within": "piece-a"}))
