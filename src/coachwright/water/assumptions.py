"""What a water sheet has to assume where no build says it: common practice, no source.

They are shown in the workings, and in the manual as one table.
"""

COLD_INLET_DEGC = 10.0
"""Water as it comes from the tank on a cool day."""

TAP_DEGC = 38.0
"""Warm water at the tap, mixed."""

NIGHTFALL_DEGC = 5.0
"""Water in a tank outside when a cold night begins."""

WASTE_L_PER_DAY = 1.7
"""What one person leaves in the toilet in a day, without flush water."""

FLUSHES = 5
"""Flushes of one person in a day."""

HOB_FRAC = 0.55
"""Share of a gas hob's heat that reaches the pot."""
