"""Draw one view of a build into a file."""

import datetime
from pathlib import Path

from coachwright.actions.checking import check
from coachwright.actions.files import write_all
from coachwright.catalogue.loading import Catalogue
from coachwright.drawing.atlas import ALL, known_view, sheet, sheets
from coachwright.drawing.content import Content
from coachwright.drawing.dxf import dxf
from coachwright.drawing.glb import glb
from coachwright.drawing.svg import svg_sheet
from coachwright.errors import CallError, UnknownName
from coachwright.papers.render import Press
from coachwright.papers.view_drawings import content_of, sheets_view

ENDINGS = ("svg", "dxf", "pdf", "glb")
"""What a drawing can be written as."""
_WHOLE = "glb"


def draw(
    path: Path,
    catalogue: Catalogue,
    out: Path,
    *,
    view: str = "plan",
    date: datetime.date | None = None,
) -> Path:
    """Draw one view of a build into a file; return the file.

    Parameters
    ----------
    path
        The build file.
    catalogue
        Where its vehicle and parts are.
    out
        The file; its ending says what it is written as.
    view
        One of the atlas's views, or ``"all"`` for the whole set as a PDF.
    date
        For the title block.

    Raises
    ------
    UnknownName
        Where there is no such view, or nothing is written with such an ending.
    BuildFileError
        Where the build has faults.
    CallError
        Where the build has nothing to show in the view.
    CannotWrite
        Where the file cannot be written; what was there stays.
    """
    ending = out.suffix.lower().removeprefix(".")
    if ending not in ENDINGS:
        raise UnknownName("kind of drawing with the ending", f".{ending}", _dotted(ENDINGS))
    if ending != _WHOLE:
        known_view(view)
    if view == ALL and ending in ("svg", "dxf"):
        raise CallError("the whole set is many sheets; write it as a .pdf, or name one view")
    content = content_of(check(path, catalogue), date=date.isoformat() if date else "")
    write_all({out: drawn(content, view, ending)})
    return out


def drawn(content: Content, view: str, ending: str) -> bytes:
    """Return one view as the bytes of a file.

    Parameters
    ----------
    content
        The build.
    view
        A view of the atlas.
    ending
        One of `ENDINGS`.
    """
    if ending == _WHOLE:
        return glb(content)
    if ending == "pdf":
        wanted = sheets(content) if view == ALL else (sheet(content, view),)
        return Press().pdf("drawings", sheets_view(content.build.name, wanted))
    one = sheet(content, view)
    return dxf(one, content.system) if ending == "dxf" else svg_sheet(one).encode()


def _dotted(endings: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(f".{ending}" for ending in endings)
