"""The same jobs done by NREL-PySAM: PVWatts, and a battery step by step."""

from typing import Any

import numpy as np
from numpy.typing import NDArray
from PySAM import BatteryStateful, Pvwattsv8

from coachwright.climate.model import MONTH_DAYS, MONTH_OF_HOUR, Weather
from coachwright.living.given import Bank

PREMIUM, OPEN_RACK = 1, 0


def pvwatts(weather: Weather, rated_kw: float = 1.0) -> dict[str, NDArray[np.float64]]:
    """Return the hours of Pvwattsv8: flat, premium module, open rack, no losses."""
    place, hours = weather.place, len(weather.air_degc)
    days = np.concatenate([np.arange(1, length + 1) for length in MONTH_DAYS])
    model = Pvwattsv8.new()
    model.SolarResource.solar_resource_data = {
        "lat": place.latitude_deg,
        "lon": place.longitude_deg,
        "tz": place.zone_h,
        "elev": place.altitude_m,
        "year": [2001] * hours,
        "month": (MONTH_OF_HOUR + 1).tolist(),
        "day": np.repeat(days, 24).tolist(),
        "hour": np.tile(np.arange(24), 365).tolist(),
        "minute": [round(weather.sun_min)] * hours,
        "gh": weather.ghi_w_per_m2.tolist(),
        "dn": weather.dni_w_per_m2.tolist(),
        "df": weather.dhi_w_per_m2.tolist(),
        "tdry": weather.air_degc.tolist(),
        "tdew": weather.dew_degc.tolist(),
        "wspd": weather.wind_m_per_s.tolist(),
        "pres": (weather.pressure_pa / 100.0).tolist(),
    }
    for name, value in {
        "system_capacity": rated_kw,
        "module_type": PREMIUM,
        "array_type": OPEN_RACK,
        "tilt": 0.0,
        "azimuth": 180.0,
        "gcr": 0.01,
        "dc_ac_ratio": 1.0,
        "inv_eff": 99.5,
        "losses": 0.0,
    }.items():
        setattr(model.SystemDesign, name, value)
    model.AdjustmentFactors.adjust_constant = 0.0
    model.execute(0)
    found = model.Outputs.export()
    return {name: np.array(found[name]) for name in ("dc", "tcell", "poa")}


def battery(bank: Bank) -> Any:
    """Return a full BatteryStateful like a bank, to be walked by the hour and told its power."""
    model = BatteryStateful.default("LFPGraphite")
    volts = [each for _, each in bank.charge_v]
    low_v, high_v = volts[0], volts[-1]
    middle_v, cells = (low_v + high_v) / 2.0, 4.0
    for name, value in {
        "control_mode": 1.0,
        "dt_hr": 1.0,
        "minimum_SOC": 100.0 * bank.cut_off_frac,
        "maximum_SOC": 100.0,
        "initial_SOC": 100.0,
        "input_power": 0.0,
        "nominal_energy": bank.capacity_ah * middle_v / 1000.0,
        "nominal_voltage": middle_v,
        "Vnom_default": middle_v / cells,
        "voltage_choice": 1,
        "voltage_matrix": [
            [0.0, high_v / cells],
            [50.0, middle_v / cells],
            [100.0, low_v / cells],
        ],
        "Qfull": bank.capacity_ah,
        "Qnom": 0.9 * bank.capacity_ah,
        "Qexp": 0.05 * bank.capacity_ah,
        "resistance": bank.resistance_ohm / cells,
        "cap_vs_temp": [[-20.0, 100.0], [60.0, 100.0]],
        "calendar_choice": 0,
        "loss_choice": 0,
        "monthly_charge_loss": [0.0] * 12,
        "monthly_discharge_loss": [0.0] * 12,
        "monthly_idle_loss": [0.0] * 12,
        "schedule_loss": [0.0],
    }.items():
        model.value(name, value)
    model.setup()
    return model


def charge_frac(bank: Bank, surplus_w: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return the charge at the end of each hour as BatteryStateful walks through it."""
    model = battery(bank)
    found = np.empty(len(surplus_w))
    for hour, power_w in enumerate(surplus_w):
        model.Controls.input_power = -power_w / 1000.0
        model.execute(0)
        found[hour] = model.StatePack.SOC / 100.0
    return found
