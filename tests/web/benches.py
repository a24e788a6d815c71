"""A bench over an empty store, and a build laid on it."""

from datetime import UTC, datetime
from pathlib import Path

from coachwright.actions.benching import Bench, begin, set_up
from coachwright.actions.demos import demo
from coachwright.catalogue.loading import Catalogue

NOW = datetime(2026, 5, 4, 9, 0, tzinfo=UTC)


def bench_in(folder: Path) -> Bench:
    """Return a bench whose store stands in a folder."""
    return set_up(folder / "builds.db", Catalogue())


def lay(bench: Bench, demo_id: str = "night-watch") -> int:
    """Keep a copy of a demonstration build and return its number."""
    return begin(bench, demo(demo_id).text, actor="designer", at=NOW)
