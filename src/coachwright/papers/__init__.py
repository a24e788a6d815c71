"""The documents of the job pack."""
