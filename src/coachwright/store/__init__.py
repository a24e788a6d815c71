"""The store: builds as appended events and named revisions, in a database."""
