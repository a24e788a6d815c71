"""The manual's page of the facets says what is declared."""

from coachwright.model.part import FACET_NAMES
from tests.support.facets_page import PAGE, page


def test_the_page_is_rendered_from_the_facets() -> None:
    written = PAGE.read_text(encoding="utf-8")
    assert written == page(), "run 'make facets' and read the difference"


def test_every_facet_has_its_heading() -> None:
    headings = {line[3:] for line in page().splitlines() if line.startswith("## ")}
    assert set(FACET_NAMES) <= headings
