"""Masses, load cases, axle loads, payload."""
