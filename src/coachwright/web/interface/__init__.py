"""The interface for the shop's other programs: JSON over the same actions as the pages."""
