"""The records: base vehicle, part and facets, brief, build, finding, working."""
