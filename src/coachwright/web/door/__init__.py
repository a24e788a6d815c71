"""The door of the server: who comes in, from where, and with how much."""
