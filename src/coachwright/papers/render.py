"""From a view of ready strings to the bytes of a PDF."""

import dataclasses
import json
from pathlib import Path
from typing import Any, Literal

from coachwright.errors import CoachwrightError

_FOLDER = Path(__file__).parent
TEMPLATES = _FOLDER / "templates"
FONTS = _FOLDER / "fonts"
_PICTURE_PPI = 144
"""Of a page as a picture: sharp on a screen that shows it at its own size."""


class CannotRender(CoachwrightError):
    """A sheet could not be typeset; carries what the typesetter said."""


def view_json(view: Any) -> str:
    """Return a view as the JSON that its template reads: sorted keys, no spaces.

    Parameters
    ----------
    view
        A frozen dataclass of strings, tuples and other views.
    """
    return json.dumps(
        dataclasses.asdict(view), ensure_ascii=False, sort_keys=True, separators=(",", ":")
    )


class Press:
    """Typesets sheets; keep one for a whole job pack, so that the fonts are read once.

    The typesetter is imported here and not before: a command that prints nothing need not wait
    for it.
    """

    def __init__(self) -> None:
        import typst  # noqa: PLC0415  # heavy, and only needed to print

        self._error = typst.TypstError
        self._compiler = typst.Compiler(
            root=str(TEMPLATES), font_paths=[str(FONTS)], ignore_system_fonts=True
        )

    def pdf(self, template: str, view: Any) -> bytes:
        """Return one sheet.

        Parameters
        ----------
        template
            File name without ``.typ``.
        view
            What its template places.

        Raises
        ------
        CannotRender
            Where the typesetter refuses, with its own words.
        """
        made = self._made(template, view, "pdf")
        if not isinstance(made, bytes):
            raise CannotRender(f"{template}: the typesetter gave no single document")
        return made

    def pictures(self, template: str, view: Any) -> tuple[bytes, ...]:
        """Return each page of one sheet as a PNG.

        Parameters
        ----------
        template
            File name without ``.typ``.
        view
            What its template places.

        Raises
        ------
        CannotRender
            Where the typesetter refuses, with its own words.
        """
        made = self._made(template, view, "png")
        return (made,) if isinstance(made, bytes) else tuple(made or ())

    def _made(
        self, template: str, view: Any, kind: Literal["pdf", "png"]
    ) -> bytes | list[bytes] | None:
        try:
            made: bytes | list[bytes] | None = self._compiler.compile(
                input=str(TEMPLATES / f"{template}.typ"),
                format=kind,
                ppi=_PICTURE_PPI,
                sys_inputs={"view": view_json(view)},
                timestamp=0,
            )
        except self._error as error:
            raise CannotRender(f"{template}: {error.diagnostic or error.message}") from error
        return made
