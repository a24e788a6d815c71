"""The job pack of a demonstration build under the years of its sites: every paper is made."""

from functools import cache

import pytest

from coachwright.actions.demos import demo
from coachwright.actions.opening import complete
from coachwright.actions.year_shelf import almanac_of
from coachwright.assess import Assessment, assess
from coachwright.catalogue.loading import Catalogue
from coachwright.papers.pack import DOCUMENTS, VIEWS, documents
from coachwright.store.editing import read_sheet
from coachwright.units import SYSTEMS, shown

CATALOGUE = Catalogue()


@cache
def _assessed() -> Assessment:
    build = complete(read_sheet(demo("winter-kit").text), "the sheet", CATALOGUE)
    return assess(build, almanac=almanac_of(CATALOGUE, None))


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_paper_is_made(name: str) -> None:
    (made,) = documents(_assessed(), (name,))
    assert len(made.content) > 1000


@pytest.mark.parametrize("name", ["climate-sheet.pdf", "energy-through-the-year.pdf"])
def test_each_site_of_the_brief_has_its_part(name: str) -> None:
    view = VIEWS[name][1](_assessed())
    assert [each.site for each in view.sites] == list(_assessed().build.brief.climate.sites)
    assert all(each.promise.startswith("Five of ten ") for each in view.sites)
    assert view.missing == ""


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_number_put_into_a_working_can_be_shown(system: str) -> None:
    for figure in _assessed().figures:
        if figure.working is not None:
            for given in figure.working.given:
                assert shown(given.value, given.unit, system)
