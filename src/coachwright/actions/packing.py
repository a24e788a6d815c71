"""The job pack of a build on the bench: printed paper by paper, looked at, taken away."""

import io
import re
import zipfile
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from coachwright.actions.benching import OnBench
from coachwright.papers.pack import DOCUMENTS, VIEWS, Document, documents
from coachwright.papers.preview import page_pictures

_OLDEST = (1980, 1, 1, 0, 0, 0)
"""A fixed date in the archive, so that the same papers make the same bytes."""
_WORDS = {
    "compliance-sheet.pdf": "every rule with its outcome, clause, value and limit",
    "layout-sheet.pdf": "ways, headroom, beds, seats, in which order the parts come in",
    "weight-statement.pdf": "load cases, axle loads, payload statements, weighbridge",
    "energy-sheet.pdf": "the day's budget, charging, how long anything runs",
    "energy-through-the-year.pdf": "energy in and out by month, fuel, what a change would do",
    "climate-sheet.pdf": "how long, how warm, how cool, how dry, in which month",
    "water-sheet.pdf": "tanks, hot water, flow, frost, disinfection, gas",
    "parts-list.pdf": "every part with its position number, mass and price",
    "calculation-appendix.pdf": "every figure with formula, numbers put in and sources",
    "purchase-list.xlsx": "what to buy, as a workbook",
    "drawings.pdf": "every sheet of the drawing set",
}


@dataclass(frozen=True, kw_only=True, slots=True)
class Paper:
    """One paper that can be printed.

    Attributes
    ----------
    title
        For people.
    about
        What stands in it.
    pages
        It has pages that can be looked at.
    """

    name: str
    title: str
    about: str
    pages: bool


def papers() -> tuple[Paper, ...]:
    """Return every paper of the job pack, in the order in which they are printed."""
    return tuple(
        Paper(
            name=name,
            title=name.rpartition(".")[0].replace("-", " ").capitalize(),
            about=_WORDS.get(name, ""),
            pages=name in VIEWS,
        )
        for name in DOCUMENTS
    )


def printing(work: OnBench, names: tuple[str, ...] = DOCUMENTS) -> Iterator[Document]:
    """Yield papers of a build as they are ready; whoever asks for no more stops the printing.

    Parameters
    ----------
    work
        The build.
    names
        Which papers.
    """
    yield from documents(work.assessment, names)


def pages(work: OnBench, name: str) -> tuple[bytes, ...]:
    """Return the pages of a paper as pictures.

    Raises
    ------
    UnknownName
        Where there is no such paper, or it has no pages.
    """
    return page_pictures(work.assessment, name)


def archive(files: Mapping[str, bytes]) -> bytes:
    """Return files in one archive; the same files make the same bytes."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as packed:
        for name, content in files.items():
            entry = zipfile.ZipInfo(name, date_time=_OLDEST)
            entry.compress_type = zipfile.ZIP_DEFLATED
            packed.writestr(entry, content)
    return made.getvalue()


def file_name(work: OnBench, ending: str, word: str = "") -> str:
    """Return a plain file name that tells build, revision and what it is."""
    build = work.build
    said = f"{build.name} {build.revision} {word}".lower()
    return f"{'-'.join(re.findall(r'[a-z0-9]+', said)) or 'build'}.{ending}"
