"""From what actions return to what other programs get; and trouble as status and words."""

import math
from typing import Any

from fastapi import FastAPI, Request
from fastapi.exceptions import RequestValidationError
from fastapi.responses import JSONResponse
from starlette.routing import Match, Route

from coachwright.actions.benching import OnBench
from coachwright.errors import (
    BadInput,
    CannotEdit,
    CoachwrightError,
    NotAllowed,
    NothingToUndo,
    StoreError,
    UnknownName,
)
from coachwright.store.differences import Difference
from coachwright.store.records import BuildEntry, Conflict
from coachwright.units import worded
from coachwright.web.interface.bodies import (
    BuildAnswer,
    DifferenceAnswer,
    DisputeAnswer,
    FaultAnswer,
    FigureAnswer,
    KeptAnswer,
    TroubleAnswer,
)

_STATUS: tuple[tuple[type[CoachwrightError], int], ...] = (
    (BadInput, 422),
    (UnknownName, 404),
    (NothingToUndo, 409),
    (CannotEdit, 422),
    (NotAllowed, 409),
    (StoreError, 503),
)
_UNUSABLE = 400


def build_answer(entry: BuildEntry) -> BuildAnswer:
    """Return one build of the list."""
    return BuildAnswer(
        build_id=entry.build_id,
        name=entry.name,
        customer=entry.customer,
        created_at=entry.created_at,
        created_by=entry.created_by,
        changed_at=entry.changed_at,
        archived_at=entry.archived_at,
        event=entry.head,
        revision=entry.revision,
    )


def kept_answer(work: OnBench) -> KeptAnswer:
    """Return a build after an edit."""
    return KeptAnswer(
        build_id=work.build_id,
        event=work.event,
        stops=work.verdict.stops,
        cautions=work.verdict.cautions,
        unknown=work.verdict.unknown,
        headline=tuple(
            FigureAnswer(
                name=each.name,
                label=worded(each.label),
                value=each.value,
                unit=each.unit,
                low=each.low,
                high=each.high,
                missing=worded(each.missing),
            )
            for each in work.assessment.headline
        ),
    )


def dispute(found: Conflict) -> JSONResponse:
    """Return an edit that was not kept, with what stands in its way."""
    told = DisputeAnswer(
        detail="others have changed the same since; look at it and send the edit again",
        event=found.theirs.event,
        actors=found.actors,
        mine=tuple(_difference(each) for each in found.my_differences),
        theirs=tuple(_difference(each) for each in found.their_differences),
        disputed=tuple(mine.place for mine, _ in found.disputed),
        faults=tuple(worded(fault.sentence()) for fault in found.faults),
    )
    return JSONResponse(told.model_dump(mode="json"), status_code=409)


def _difference(found: Difference) -> DifferenceAnswer:
    return DifferenceAnswer(
        place=found.place, before=_sayable(found.before), after=_sayable(found.after)
    )


def _sayable(value: Any) -> Any:
    """Return a value of a sheet as JSON can hold it: a sheet may hold numbers that are none."""
    if isinstance(value, float) and not math.isfinite(value):
        return str(value)
    if isinstance(value, dict):
        return {key: _sayable(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [_sayable(inner) for inner in value]
    return value


def tell_trouble(app: FastAPI) -> None:
    """Let every error of ours, and every fault of a request, become words with a status."""

    @app.exception_handler(CoachwrightError)
    async def _ours(_request: Request, error: Exception) -> JSONResponse:
        assert isinstance(error, CoachwrightError)
        return trouble(error)

    @app.exception_handler(405)
    async def _method(request: Request, _error: Exception) -> JSONResponse:
        told = TroubleAnswer(detail="it takes no such method")
        allow = ", ".join(_methods(app, request))
        return JSONResponse(told.model_dump(), status_code=405, headers={"Allow": allow})

    @app.exception_handler(RequestValidationError)
    async def _form(_request: Request, error: Exception) -> JSONResponse:
        assert isinstance(error, RequestValidationError)
        faults = tuple(
            FaultAnswer(
                file="the request",
                field=_shown(".".join(str(step) for step in each["loc"])),
                found="what cannot be taken",
                allowed=_shown(str(each["msg"])),
                action="look at /api/v1/openapi.json",
            )
            for each in error.errors()
        )
        told = TroubleAnswer(detail="the request has faults", faults=faults)
        return JSONResponse(told.model_dump(), status_code=422)


def _methods(app: FastAPI, request: Request) -> list[str]:
    """Return every method that a path takes, of all its routes."""
    found: set[str] = set()
    for route in app.routes:
        matched, _ = route.matches(request.scope)
        if matched is not Match.NONE and isinstance(route, Route):
            found |= route.methods or set()
    return sorted(found)


def trouble(error: CoachwrightError) -> JSONResponse:
    """Return an error of ours as status and words."""
    status = next((code for kind, code in _STATUS if isinstance(error, kind)), _UNUSABLE)
    faults: tuple[FaultAnswer, ...] = ()
    if isinstance(error, BadInput):
        faults = tuple(
            FaultAnswer(
                file=_shown(fault.file),
                field=_shown(fault.field),
                found=_shown(worded(fault.found)),
                allowed=_shown(worded(fault.allowed)),
                action=_shown(worded(fault.action)),
            )
            for fault in error.faults
        )
    detail = "what was sent has faults" if faults else _shown(worded(str(error)))
    told = TroubleAnswer(detail=detail, faults=faults)
    return JSONResponse(told.model_dump(), status_code=status)


def _shown(words: str) -> str:
    """Return words that can be sent: half signs are shown as such."""
    return words.encode("utf-8", "backslashreplace").decode("utf-8")
