"""The small build with a little of everything that a paper can show."""

from typing import Any

from tests.support.builds import Data, fitting, part

_PRICE = {
    "price": ["1250.00 EUR", "1290.00 USD"],
    "cost": ["900.00 EUR", "940.00 USD"],
    "lead_time": "10 d",
}


def _body(*size_mm: int, mass_kg: float) -> Data:
    return {"size": [f"{side} mm" for side in size_mm], "mass": f"{mass_kg} kg"}


def _load(draw_w: int, summer_h: float, winter_h: float, **more: Any) -> Data:
    use = {"summer_use": f"{summer_h} h/day", "winter_use": f"{winter_h} h/day"}
    return {"modes": [{"name": "running", "draw": f"{draw_w} W", **use}], **more}


PARTS: list[Data] = [
    part(
        "lfp-bank",
        name="LFP battery 200 Ah",
        description="=HYPERLINK(1)",
        supplier="-North store",
        price=_PRICE,
        body=_body(520, 270, 220, mass_kg=24),
        battery={
            "chemistry": "LFP",
            "nominal": "12.8 V",
            "capacity": "200 Ah",
            "charge_limit": "100 A",
            "discharge_limit": "150 A",
            "most_parallel": 4,
        },
    ),
    part(
        "inverter",
        name="Inverter 2,000 W",
        price=_PRICE | {"lead_time": "21 d"},
        body=_body(360, 240, 110, mass_kg=7),
        inverter={"continuous": "2000 W", "surge": "4000 W", "standby": "12 W"},
    ),
    part(
        "panel",
        name="Solar panel 175 W",
        body=_body(1480, 680, 35, mass_kg=11),
        solar_panel={
            "rated": "175 W",
            "open_circuit": "24.3 V",
            "rated_voltage": "20.4 V",
            "short_circuit": "9.2 A",
            "rated_current": "8.6 A",
        },
    ),
    part(
        "fridge",
        name="Compressor fridge 85 L",
        price=_PRICE,
        body=_body(550, 480, 780, mass_kg=24),
        dc_load=_load(55, 9, 6),
    ),
    part(
        "hob",
        name="Induction hob",
        body=_body(300, 380, 60, mass_kg=5),
        ac_load=_load(1800, 0.4, 0.5),
    ),
    part(
        "fresh",
        name="Fresh water tank 100 L",
        price=_PRICE,
        body=_body(900, 400, 320, mass_kg=9),
        tank={"contents": "fresh", "volume": "100 L", "unusable": "3 L"},
    ),
    part(
        "grey",
        name="Grey water tank 70 L",
        body=_body(700, 420, 260, mass_kg=7),
        tank={"contents": "grey", "volume": "70 L"},
    ),
    part(
        "water-heater",
        name="Water heater 10 L",
        body=_body(420, 330, 330, mass_kg=8),
        water_heater={"volume": "10 L", "electric": "800 W"},
        ac_load=_load(800, 0.3, 0.5, supply="shore only"),
    ),
    part(
        "tap",
        name="Kitchen tap",
        water_outlet={"kind": "tap", "flow": "6 L/min", "hot": True},
    ),
    part(
        "pump",
        name="Pressure pump",
        body=_body(220, 120, 110, mass_kg=2),
        pump={"open_flow": "11 L/min", "cut_out": "280 kPa"},
        dc_load=_load(60, 0.2, 0.2),
    ),
    part(
        "carrier",
        name="Rear door carrier with cargo box",
        body=_body(450, 700, 600, mass_kg=26),
        rear_door_carrier={"load_limit": "40 kg"},
    ),
    part(
        "wool",
        name="Sheep's wool batt 60 mm",
        body=_body(1200, 600, 60, mass_kg=1),
        insulation={"conductivity": "0.036 W/m/K", "density": "0.02 kg/L", "thickness": "60 mm"},
    ),
]

FITTINGS: list[Data] = [
    fitting("house-battery", "lfp-bank", at=["3300 mm", "-850 mm", "0 mm"]),
    fitting("second-battery", "lfp-bank", at=["3300 mm", "-560 mm", "0 mm"]),
    fitting("inverter", "inverter", at=["3900 mm", "-850 mm", "100 mm"], mounting="wall"),
    fitting("roof-panel", "panel", at=["1500 mm", "-340 mm", "2110 mm"], mounting="roof"),
    fitting("fridge", "fridge", at=["1500 mm", "400 mm", "0 mm"]),
    fitting("hob", "hob", at=["2100 mm", "450 mm", "840 mm"]),
    fitting("fresh-tank", "fresh", at=["2500 mm", "400 mm", "0 mm"]),
    fitting("grey-tank", "grey", at=["2100 mm", "-300 mm", "-330 mm"], mounting="underbody"),
    fitting("boiler", "water-heater", at=["2600 mm", "450 mm", "400 mm"]),
    fitting("kitchen-tap", "tap", at=["2400 mm", "700 mm", "900 mm"]),
    fitting("pump", "pump", at=["3450 mm", "500 mm", "0 mm"]),
    fitting(
        "door-box",
        "carrier",
        at=["4800 mm", "0 mm", "500 mm"],
        mounting="rear door right",
        contents="15 kg",
        measured_mass="27.5 kg",
    ),
]

PAPERS: Data = {
    "name": "Paper build #2 [draft] *stars* $x$",
    "customer": "A. Customer & Daughter",
    "revision": "B",
    "own_parts": PARTS,
    "fittings": FITTINGS,
    "finishes": [{"part": "wool", "surface": "walls", "area": "9 m2"}],
    "water_runs": [
        {
            "name": "kitchen-run",
            "length": "3 m",
            "bore": "10 mm",
            "place": "inside",
            "serves": "kitchen-tap",
            "rise": "900 mm",
        }
    ],
    "ticket": {"date": "2026-04-02", "total": "2480 kg", "front": "1380 kg", "rear": "1100 kg"},
    "brief.cargo": [
        {"name": "climbing kit", "mass": "40 kg", "centre": ["4200 mm", "0 mm", "400 mm"]}
    ],
    "brief.budget": "9000.00 EUR",
    "decisions": [
        {
            "rule": "road.rear-door-load",
            "role": "workshop manager",
            "reason": "the box stays empty until the hinge plate is fitted",
            "date": "2026-03-01",
        }
    ],
}
"""Changes to the small build; metric and for the European Union."""

PAPERS_US: Data = PAPERS | {
    "brief.jurisdiction": "us",
    "brief.units": "us",
    "brief.budget": "12000.00 USD",
}
