"""The interface as an application of its own, to be put under its path."""

from collections.abc import Callable
from typing import Any

from fastapi import FastAPI

from coachwright import __version__
from coachwright.actions.benching import Bench, OnBench
from coachwright.web.interface import building, floor, shelf
from coachwright.web.interface.answering import tell_trouble
from coachwright.web.interface.bodies import TroubleAnswer

_TROUBLE: dict[int | str, dict[str, Any]] = {
    400: {"model": TroubleAnswer, "description": "It cannot be used."},
    401: {"description": "No token, or one that has ended."},
    403: {"description": "A page of another site asked for it."},
    404: {"model": TroubleAnswer, "description": "There is no such thing."},
    409: {"model": TroubleAnswer, "description": "It may not be done now."},
    413: {"description": "It is too large."},
    422: {"model": TroubleAnswer, "description": "What was sent has faults."},
    503: {"model": TroubleAnswer, "description": "The store cannot do it now."},
}
_ABOUT = """\
Builds, their sheets, assessment, edits, revisions and papers.  An edit names the event that it
began with; where others have changed the same since, it comes back with status 409 and what
differs.  Every quantity in a sheet is text with its unit; every figure of an assessment is in the
unit beside it.  Where the bench has accounts, give a token: `Authorization: Bearer TOKEN`.
"""


def interface(
    bench: Bench,
    *,
    guarded: bool,
    shown: Callable[[OnBench], object] = bool,
    ticked: Callable[[int], object] = bool,
) -> FastAPI:
    """Return the interface.

    Parameters
    ----------
    bench
        What it shows and changes.
    guarded
        A token is wanted.
    shown
        Told of every build that was changed.
    ticked
        Told of every build of which the shop floor has ticked something.
    """
    made = FastAPI(
        title="Coachwright",
        version=__version__,
        description=_ABOUT,
        openapi_url="/openapi.json",
        docs_url=None,
        redoc_url=None,
        responses=_TROUBLE,
        servers=[{"url": "/api/v1"}],
        root_path_in_servers=False,
        redirect_slashes=False,
    )
    made.include_router(building.routes(bench, shown))
    made.include_router(floor.routes(bench, ticked))
    made.include_router(shelf.routes(bench))
    tell_trouble(made)
    if guarded:
        _say_token(made)
    return made


def _say_token(made: FastAPI) -> None:
    """Say in the description that a token is wanted."""
    described = made.openapi

    def with_token() -> dict[str, Any]:
        schema = described()
        schema.setdefault("components", {})["securitySchemes"] = {
            "token": {"type": "http", "scheme": "bearer"}
        }
        schema["security"] = [{"token": []}]
        return schema

    made.openapi = with_token  # type: ignore[method-assign]  # as the library advises
