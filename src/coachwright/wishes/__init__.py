"""Does the build give what the brief asks for."""
