"""How the form of the database came to be, step by step."""
