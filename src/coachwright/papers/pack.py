"""The job pack: every document of one assessment, as bytes."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from coachwright.assess import Assessment
from coachwright.errors import UnknownName
from coachwright.papers.purchase import purchase_list
from coachwright.papers.render import Press
from coachwright.papers.view_appendix import appendix_view
from coachwright.papers.view_climate import climate_view
from coachwright.papers.view_compliance import compliance_view
from coachwright.papers.view_drawings import drawings_view
from coachwright.papers.view_energy import energy_view
from coachwright.papers.view_layout import layout_view
from coachwright.papers.view_parts import parts_view
from coachwright.papers.view_water import water_view
from coachwright.papers.view_weights import weight_view
from coachwright.papers.view_year import year_view
from coachwright.papers.wording import in_words


@dataclass(frozen=True, kw_only=True, slots=True)
class Document:
    """One file of the job pack."""

    name: str
    content: bytes


def _said(view: Callable[[Assessment], Any]) -> Callable[[Assessment], Any]:
    """Return what makes a view whose sentences are in the units of the brief."""
    return lambda assessment: in_words(view(assessment), assessment.build.brief.units)


VIEWS: dict[str, tuple[str, Callable[[Assessment], Any]]] = {
    "compliance-sheet.pdf": (
        "compliance",
        _said(lambda assessment: compliance_view(assessment.build, assessment.findings)),
    ),
    "layout-sheet.pdf": ("layout", _said(layout_view)),
    "weight-statement.pdf": ("weights", _said(weight_view)),
    "energy-sheet.pdf": ("energy", _said(energy_view)),
    "energy-through-the-year.pdf": ("year", _said(year_view)),
    "climate-sheet.pdf": ("climate", _said(climate_view)),
    "water-sheet.pdf": ("water", _said(water_view)),
    "parts-list.pdf": ("parts", _said(parts_view)),
    "calculation-appendix.pdf": (
        "appendix",
        _said(lambda assessment: appendix_view(assessment.build, assessment.figures_here)),
    ),
}
"""File name → template, and what makes its view."""

DRAWINGS = "drawings.pdf"
"""Drawn on paper of its own size."""

_TYPESET = VIEWS | {DRAWINGS: ("drawings", drawings_view)}

WORKBOOK = "purchase-list.xlsx"

DOCUMENTS: tuple[str, ...] = (*VIEWS, DRAWINGS, WORKBOOK)
"""Names of every document, in the order they are made."""


def documents(assessment: Assessment, names: tuple[str, ...] = DOCUMENTS) -> Iterator[Document]:
    """Yield the documents one by one, so that a shell can show how far it is.

    Parameters
    ----------
    assessment
        Of the build.
    names
        Which of `DOCUMENTS`.

    Raises
    ------
    UnknownName
        Where there is no such document.
    """
    for name in names:
        if name not in DOCUMENTS:
            raise UnknownName("document", name, DOCUMENTS)
    press = Press() if any(name in _TYPESET for name in names) else None
    for name in names:
        if press is None or name == WORKBOOK:
            yield Document(name=name, content=purchase_list(assessment))
            continue
        template, view = _TYPESET[name]
        yield Document(name=name, content=press.pdf(template, view(assessment)))


def job_pack(assessment: Assessment) -> tuple[Document, ...]:
    """Return every document; the same assessment gives the same bytes.

    Parameters
    ----------
    assessment
        Of the build.
    """
    return tuple(documents(assessment))
