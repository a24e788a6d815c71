"""Coachwright: the working bench of a shop that converts panel vans into campers."""

__version__ = "0.1.0"
