"""Does it fit, and can people live in it."""
