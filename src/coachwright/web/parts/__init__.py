"""What pages are made of, each a `create(...)`."""
