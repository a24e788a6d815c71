"""Write files so that nothing half-written is ever left.

Everything is written beside its place first; only when all of it is on the disk does each file
take its name.
"""

import os
import tempfile
from collections.abc import Mapping
from pathlib import Path

from coachwright.errors import CannotWrite


def write_all(files: Mapping[Path, bytes], *, new_only: bool = False) -> None:
    """Write several files together.

    Parameters
    ----------
    files
        What goes where; folders are made as needed.
    new_only
        Refuse where one of the files is there already.

    Raises
    ------
    CannotWrite
        Where one of them cannot be written; then none is.
    """
    if new_only:
        for path in files:
            if path.exists():
                raise CannotWrite(f"{path} is there already; name another file or remove it")
    beside: dict[Path, Path] = {}
    try:
        for path, content in files.items():
            beside[path] = _beside(path, content)
        for path in list(beside):
            _take_place(beside[path], path)
            del beside[path]
    finally:
        for temporary in beside.values():
            temporary.unlink(missing_ok=True)


def write_text(path: Path, text: str, *, new_only: bool = False) -> None:
    """Write one file of text in UTF-8.

    Raises
    ------
    CannotWrite
        Where it cannot be written.
    """
    write_all({path: text.encode()}, new_only=new_only)


def _beside(path: Path, content: bytes) -> Path:
    """Write the content to a file without its name yet, in the same folder."""
    temporary: Path | None = None
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
        temporary = Path(name)
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        temporary.chmod(_rights(path))
    except OSError as error:
        if temporary is not None:
            temporary.unlink(missing_ok=True)
        raise _cannot(path, error) from error
    return temporary


def _take_place(temporary: Path, path: Path) -> None:
    try:
        temporary.replace(path)
    except OSError as error:
        raise _cannot(path, error) from error


def _rights(path: Path) -> int:
    """Return the rights of the file that is replaced, or the usual ones of a new file."""
    if path.exists():
        return path.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask


def _cannot(path: Path, error: OSError) -> CannotWrite:
    reason = (error.strerror or str(error)).lower()
    return CannotWrite(
        f"{path} cannot be written: {reason}; nothing was changed, "
        "choose another folder or make room and try again"
    )
