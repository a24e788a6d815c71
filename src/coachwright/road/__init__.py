"""Tyres, dimensions, angles, stability."""
