"""The manual's table of assumptions is the one that is computed with."""

from coachwright.reference import table
from tests.support.source import text


def test_every_assumption_stands_in_the_manual_as_it_is() -> None:
    page = text("docs/living.md")
    for row in table("living_assumptions"):
        title = f"{row['title']} ({row['note']})" if row["note"] else row["title"]
        cells = (title, row["value"], row["low"], row["high"], row["unit"], row["status"])
        assert f"| {' | '.join(cells)} |" in page
