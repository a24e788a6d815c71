"""The pages of the bench, each a `create(here)`."""
