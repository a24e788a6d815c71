"""Tanks, pump, hot water, frost."""
