"""Sites, their year of weather, the sun on every plane, and what shades the panels."""
