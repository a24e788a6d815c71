"""Pages of a sheet as pictures, to look at before it is printed."""

from coachwright.assess import Assessment
from coachwright.errors import UnknownName
from coachwright.papers.pack import VIEWS
from coachwright.papers.render import Press


def page_pictures(assessment: Assessment, name: str) -> tuple[bytes, ...]:
    """Return each page of a typeset document as a PNG.

    Parameters
    ----------
    assessment
        Of the build.
    name
        One of `VIEWS`.

    Raises
    ------
    UnknownName
        Where there is no such document, or it has no pages.
    """
    if name not in VIEWS:
        raise UnknownName("document with pages", name, VIEWS)
    template, view = VIEWS[name]
    return Press().pictures(template, view(assessment))
