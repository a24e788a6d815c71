"""The demo builds as contents of drawings, and every view of them."""

from functools import cache

from coachwright.actions.opening import open_build
from coachwright.assess import assess
from coachwright.catalogue.loading import Catalogue
from coachwright.drawing.content import Content
from coachwright.papers.view_drawings import content_of
from tests.support.source import ROOT

NAMES = tuple(sorted(path.stem for path in (ROOT / "demos").glob("*.toml")))


@cache
def demo(name: str) -> Content:
    """Return a demo build, drawn on a given day."""
    build = open_build(ROOT / "demos" / f"{name}.toml", Catalogue(None)).build
    return content_of(assess(build), date="2027-04-15")
