"""The drawing set: every sheet drawn ready, to be put on its paper."""

from collections.abc import Iterable
from dataclasses import dataclass

from coachwright import __version__
from coachwright.assess import Assessment
from coachwright.drawing.atlas import sheets
from coachwright.drawing.content import Content
from coachwright.drawing.scene import Sheet
from coachwright.drawing.svg import svg_sheet
from coachwright.papers.wording import positions


@dataclass(frozen=True, kw_only=True, slots=True)
class SheetImage:
    """One sheet: its size as the typesetter reads it, and what is drawn on it."""

    title: str
    width: str
    height: str
    svg: str


@dataclass(frozen=True, kw_only=True, slots=True)
class DrawingsView:
    """Sheets in their order."""

    title: str
    sheets: tuple[SheetImage, ...]


def content_of(assessment: Assessment, *, date: str = "") -> Content:
    """Return what the drawings of a build are made from.

    Parameters
    ----------
    assessment
        Of the build.
    date
        For the title block, as it is to be shown.
    """
    return Content(
        build=assessment.build,
        layout=assessment.layout,
        findings=assessment.findings,
        numbers=positions(assessment.build),
        tyre_diameter_mm=assessment.road.tyres.dimensions.diameter_mm,
        lift_mm=assessment.road.tyres.change.ride_change_mm,
        program=f"Coachwright {__version__}",
        date=date,
    )


def drawings_view(assessment: Assessment) -> DrawingsView:
    """Return the drawing set of a build."""
    return sheets_view(assessment.build.name, sheets(content_of(assessment)))


def sheets_view(name: str, drawn: Iterable[Sheet]) -> DrawingsView:
    """Return sheets for the typesetter.

    Parameters
    ----------
    name
        Of the build.
    drawn
        Sheets in their order.
    """
    return DrawingsView(
        title=f"Drawings – {name}",
        sheets=tuple(
            SheetImage(
                title=sheet.title,
                width=f"{sheet.size_mm[0]}mm",
                height=f"{sheet.size_mm[1]}mm",
                svg=svg_sheet(sheet),
            )
            for sheet in drawn
        ),
    )
