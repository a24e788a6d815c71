"""Measures the commands against their budgets; `make bench` runs it."""
