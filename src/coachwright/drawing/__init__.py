"""One scene of primitives in mm, and its backends."""
