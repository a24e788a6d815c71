"""Loads, energy budget, battery, inverter, charging, sun."""
