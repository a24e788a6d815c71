"""Names of what the kernel reads for each step of a day and sums for each month."""

PROFILE = (
    "gain_air_w",
    "gain_radiant_w",
    "vapour_kg_per_s",
    "co2_m3_per_s",
    "occupied_frac",
    "asleep_frac",
    "heat_degc",
    "cool_degc",
    "blinds_frac",
    "dc_w",
    "ac_w",
    "inside_frac",
    "dark_w",
    "burner_w",
    "vent_m3_per_h",
    "spare",
)
"""Columns of a kind of day."""

USES = (
    "heater",
    "cooler",
    "fridge",
    "fans",
    "light",
    "direct",
    "alternating",
    "inverter",
    "standby",
    "pads",
    "bank",
    "frost",
    "charging",
)
"""What energy goes to: out of the bus, without `bank`, which is lost inside the bank."""

SUMS = (
    "in.sun_wh",
    "in.drive_wh",
    "in.hookup_wh",
    "in.grid_wh",
    "spilled_wh",
    *(f"out.{use}_wh" for use in USES),
    *(f"unmet.{use}_wh" for use in USES),
    "fuel_wh",
    "burner_wh",
    "starts_count",
    "heat_wh",
    "cool_wh",
    "cool_latent_wh",
    "heater_h",
    "cooler_h",
    "occupied_h",
    "cold_h",
    "hot_h",
    "asleep_h",
    "co2_asleep_ppm_h",
    "wet_glass_h",
    "wet_rib_h",
    "wet_lining_h",
    "condensed_kg",
    "locked_h",
    "air_degc_h",
    "fresh_m3",
    "charged_ah",
    "discharged_ah",
    "stored_wh",
    "hours_h",
    "vapour_in_kg",
    "vapour_came_kg",
    "vapour_dried_kg",
    "vapour_moved_kg",
    "carried_wh",
)
"""Summed over a month; 64 at most."""

EXTREMES = (
    "air_low_degc",
    "emptiest_frac",
    "bank_low_degc",
    "air_high_degc",
    "co2_most_ppm",
    "fullest_frac",
    "heat_most_w",
    "cool_most_w",
)
"""Lowest (the first three) or highest of a month."""

FLOWS = {
    "heat_w": "heat_wh",
    "cool_w": "cool_wh",
    "cool_latent_w": "cool_latent_wh",
    "sun_w": "in.sun_wh",
    "drive_w": "in.drive_wh",
    "hookup_w": "in.hookup_wh",
    "spilled_w": "spilled_wh",
    **{f"{use}_w": f"out.{use}_wh" for use in USES},
    "fuel_w": "fuel_wh",
    "heater_frac": "heater_h",
    "cooler_frac": "cooler_h",
    "fresh_m3_per_h": "fresh_m3",
}
"""What a series keeps of each step, and the sum that it goes into."""
