"""Every page of the bench.  A new page is a file in `pages` and a line here."""

from collections.abc import Callable
from dataclasses import dataclass

from coachwright.web.pages import (
    brief,
    build,
    catalogue,
    energy,
    findings,
    home,
    papers,
    people,
    revisions,
    road,
    seasons,
    shop_floor,
    space,
    water,
    weights,
)
from coachwright.web.state import Here


@dataclass(frozen=True, kw_only=True, slots=True)
class Page:
    """One page.

    Attributes
    ----------
    slug
        Last word of its address.
    title
        In the list of pages and at the top of the browser.
    create
        Fills the page; the build that lies open is `here.work` on pages of a build.
    of_build
        Shows one build; its address is ``/build/NUMBER/slug``.
    owners
        Only owners see it.
    """

    slug: str
    title: str
    create: Callable[[Here], None]
    of_build: bool = True
    owners: bool = False

    def address(self, build_id: int = 0) -> str:
        """Return where the page is."""
        return f"/build/{build_id}/{self.slug}" if self.of_build else f"/{self.slug}"


PAGES: tuple[Page, ...] = (
    Page(slug="", title="Order book", create=home.create, of_build=False),
    Page(slug="brief", title="Brief", create=brief.create),
    Page(slug="board", title="Drawing board", create=build.create),
    Page(slug="findings", title="Findings", create=findings.create),
    Page(slug="weights", title="Weights", create=weights.create),
    Page(slug="energy", title="Energy", create=energy.create),
    Page(slug="seasons", title="Seasons", create=seasons.create),
    Page(slug="water", title="Water", create=water.create),
    Page(slug="road", title="Road", create=road.create),
    Page(slug="room", title="Fit and room", create=space.create),
    Page(slug="floor", title="Shop floor", create=shop_floor.create),
    Page(slug="papers", title="Papers", create=papers.create),
    Page(slug="revisions", title="Revisions", create=revisions.create),
    Page(slug="catalogue", title="Catalogue", create=catalogue.create, of_build=False),
    Page(
        slug="people",
        title="People and log",
        create=people.create,
        of_build=False,
        owners=True,
    ),
)
"""In the order of the list on the left."""
