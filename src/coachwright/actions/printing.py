"""Print the job pack of a build into a folder."""

from collections.abc import Callable
from pathlib import Path

from coachwright.actions.checking import check
from coachwright.actions.files import write_all
from coachwright.assess import Almanac
from coachwright.catalogue.loading import Catalogue
from coachwright.errors import UnknownName
from coachwright.papers.pack import DOCUMENTS, documents


def document_names(asked: tuple[str, ...]) -> tuple[str, ...]:
    """Return the documents that were asked for by name, with or without ending; else all.

    Raises
    ------
    UnknownName
        Where there is no such document.
    """
    by_name = {Path(name).stem: name for name in DOCUMENTS}
    found: list[str] = []
    for name in asked:
        document = by_name.get(name.rpartition(".")[0] or name)
        if document is None:
            raise UnknownName("document", name, by_name)
        found.append(document)
    return tuple(dict.fromkeys(found)) or DOCUMENTS


def print_pack(
    path: Path,
    catalogue: Catalogue,
    folder: Path,
    *,
    names: tuple[str, ...] = DOCUMENTS,
    on_document: Callable[[str], object] = str,
    almanac: Almanac | None = None,
) -> tuple[Path, ...]:
    """Print documents of a build; return the files.

    Parameters
    ----------
    path
        The build file.
    catalogue
        Where its vehicle and parts are.
    folder
        Where the documents go.
    names
        Which documents.
    on_document
        Told the name of each document that is ready.
    almanac
        Of the weather; without one there are no years.

    Raises
    ------
    BuildFileError
        Where the build has faults.
    CannotWrite
        Where one of them cannot be written; then none is.
    """
    files: dict[Path, bytes] = {}
    for document in documents(check(path, catalogue, almanac), names):
        on_document(document.name)
        files[folder / document.name] = document.content
    write_all(files)
    return tuple(files)
