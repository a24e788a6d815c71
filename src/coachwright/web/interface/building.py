"""The paths of builds: list, sheets, edits, assessment, revisions, papers."""

import asyncio
from collections.abc import Awaitable, Callable
from dataclasses import asdict
from datetime import UTC, datetime
from functools import partial
from typing import Annotated, Any

from fastapi import APIRouter, Depends, Query, Request, Response
from fastapi.responses import JSONResponse

from coachwright.actions import benching, packing, revising
from coachwright.actions.admitting import Who, as_seen_by
from coachwright.actions.benching import Bench, OnBench
from coachwright.actions.checking import report_data
from coachwright.errors import UnknownName
from coachwright.store.edits import Edit, Put, Take
from coachwright.store.records import Conflict
from coachwright.web.door.guard import who_is
from coachwright.web.interface.answering import build_answer, dispute, kept_answer
from coachwright.web.interface.bodies import (
    AtEvent,
    BuildAnswer,
    BuildId,
    DisputeAnswer,
    EditsBody,
    EventAnswer,
    EventNumber,
    KeptAnswer,
    NewBuildBody,
    PaperAnswer,
    PutBody,
    ReturnBody,
    RevisionAnswer,
    RevisionBody,
    SheetAnswer,
    SheetBody,
    TakeBody,
    TroubleAnswer,
)

_PROGRAM = "a program"
_DISPUTED: dict[int | str, dict[str, Any]] = {
    409: {"model": DisputeAnswer | TroubleAnswer, "description": "Others changed the same."}
}
_KEPT: dict[str, Any] = {"response_model": KeptAnswer, "responses": _DISPUTED}
"""Of every path that changes a build."""
_MEDIA = {"pdf": "application/pdf", "xlsx": "application/vnd.ms-excel", "csv": "text/csv"}


def routes(bench: Bench, shown: Callable[[OnBench], object]) -> APIRouter:
    """Return the paths of builds.

    Parameters
    ----------
    bench
        What they show and change.
    shown
        Told of every build that was changed, so that pages show it.
    """
    router = APIRouter(prefix="/builds")
    keep = partial(_kept, shown)
    for add in (_lists, _states, _papers):
        add(router, bench)
    for change in (_edits, _steps):
        change(router, bench, keep)
    return router


def caller(request: Request) -> Who:
    """Return who calls; the door has let nobody else in."""
    who = who_is(request.state)
    assert who is not None
    return who


Caller = Annotated[Who, Depends(caller)]
Kept = KeptAnswer | JSONResponse
"""What came of an edit, or a dispute."""
Keep = Callable[[Callable[[], OnBench | Conflict]], Awaitable[Kept]]


def allowed(bench: Bench, who: Who) -> Bench:
    """Return the bench as somebody may use it."""
    return as_seen_by(bench, lambda: who, who.place)


async def _kept(
    shown: Callable[[OnBench], object], deed: Callable[[], OnBench | Conflict]
) -> Kept:
    made = await asyncio.to_thread(deed)
    if isinstance(made, Conflict):
        return dispute(made)
    shown(made)
    return kept_answer(made)


def actor_of(who: Who) -> str:
    """Return under which name somebody acts."""
    return who.name or _PROGRAM


def _lists(router: APIRouter, bench: Bench) -> None:
    @router.get("", summary="Builds in work, or those put away")
    def builds(*, archived: bool = False) -> tuple[BuildAnswer, ...]:
        return tuple(build_answer(each) for each in benching.builds(bench, archived=archived))

    @router.post("", status_code=201, summary="Keep a new build")
    def new_build(body: NewBuildBody, who: Caller) -> BuildAnswer:
        made = benching.begin(
            allowed(bench, who), body.text, actor=actor_of(who), at=datetime.now(UTC)
        )
        return build_answer(bench.store.build(made))

    @router.get("/{build_id}", summary="One build")
    def build(build_id: BuildId) -> BuildAnswer:
        return build_answer(bench.store.build(build_id))

    @router.get("/{build_id}/sheet", summary="Its sheet, now or after an event")
    def sheet(build_id: BuildId, event: AtEvent = None) -> SheetAnswer:
        return SheetAnswer(**asdict(bench.store.sheet(build_id, event)))

    @router.get("/{build_id}/assessment", summary="Everything computed of it")
    def assessment(build_id: BuildId, event: AtEvent = None) -> dict[str, Any]:
        if event is None:
            return report_data(benching.lay_open(bench, build_id).assessment)
        return report_data(benching.assessed_at(bench, build_id, event))


def _edits(router: APIRouter, bench: Bench, keep: Keep) -> None:
    @router.post("/{build_id}/edits", **_KEPT, summary="Edit it")
    async def edits(build_id: BuildId, body: EditsBody, who: Caller) -> Kept:
        change = tuple(_edit(each) for each in body.edits)
        return await keep(
            partial(
                benching.edit,
                allowed(bench, who),
                build_id,
                body.base_event,
                change,
                actor=actor_of(who),
                at=datetime.now(UTC),
            )
        )

    @router.put(
        "/{build_id}/sheet",
        **_KEPT,
        summary="Keep a whole sheet",
    )
    async def rewrite(build_id: BuildId, body: SheetBody, who: Caller) -> Kept:
        return await keep(
            partial(
                benching.rewrite,
                allowed(bench, who),
                build_id,
                body.base_event,
                body.text,
                actor=actor_of(who),
                at=datetime.now(UTC),
            )
        )


def _steps(router: APIRouter, bench: Bench, keep: Keep) -> None:
    @router.post(
        "/{build_id}/undo",
        **_KEPT,
        summary="Undo one's last edit",
    )
    async def undo(build_id: BuildId, who: Caller) -> Kept:
        bench_, actor = allowed(bench, who), actor_of(who)
        deed = partial(benching.undo, bench_, build_id, actor=actor, at=datetime.now(UTC))
        return await keep(deed)

    @router.post(
        "/{build_id}/redo",
        **_KEPT,
        summary="Redo what was undone last",
    )
    async def redo(build_id: BuildId, who: Caller) -> Kept:
        bench_, actor = allowed(bench, who), actor_of(who)
        deed = partial(benching.redo, bench_, build_id, actor=actor, at=datetime.now(UTC))
        return await keep(deed)

    @router.post(
        "/{build_id}/return",
        **_KEPT,
        summary="Go back to a state",
    )
    async def go_back(build_id: BuildId, body: ReturnBody, who: Caller) -> Kept:
        return await keep(
            partial(
                benching.return_to,
                allowed(bench, who),
                build_id,
                body.base_event,
                body.to_event,
                actor=actor_of(who),
                at=datetime.now(UTC),
            )
        )


def _edit(body: PutBody | TakeBody) -> Edit:
    if isinstance(body, TakeBody):
        return Take(path=body.path)
    return Put(path=body.path, value=body.value, follows=body.follows)


def _states(router: APIRouter, bench: Bench) -> None:
    @router.get("/{build_id}/history", summary="Its events, the newest first")
    def history(
        build_id: BuildId, most: Annotated[int, Query(ge=1, le=1000)] = 100
    ) -> tuple[EventAnswer, ...]:
        return tuple(
            EventAnswer(**asdict(each)) for each in bench.store.history(build_id, most=most)
        )

    @router.get("/{build_id}/revisions", summary="Its named revisions")
    def revisions(build_id: BuildId) -> tuple[RevisionAnswer, ...]:
        found = bench.store.revisions(build_id)
        return tuple(RevisionAnswer(**asdict(each)) for each in found)

    @router.post(
        "/{build_id}/revisions",
        status_code=201,
        responses={409: {"model": TroubleAnswer, "description": "The name is taken."}},
        summary="Name a state",
    )
    def name_revision(build_id: BuildId, body: RevisionBody, who: Caller) -> RevisionAnswer:
        made = revising.name_revision(
            allowed(bench, who),
            build_id,
            body.event,
            body.name,
            note=body.note,
            actor=actor_of(who),
            at=datetime.now(UTC),
        )
        return RevisionAnswer(**asdict(made))

    @router.get("/{build_id}/comparison", summary="Two states side by side")
    def comparison(build_id: BuildId, before: EventNumber, after: EventNumber) -> dict[str, Any]:
        return revising.comparison_data(bench, build_id, before, after)


def _papers(router: APIRouter, bench: Bench) -> None:
    @router.get("/{build_id}/papers", summary="The papers that can be printed")
    def papers(build_id: BuildId) -> tuple[PaperAnswer, ...]:
        bench.store.build(build_id)
        return tuple(
            PaperAnswer(name=each.name, title=each.title, about=each.about)
            for each in packing.papers()
        )

    @router.get(
        "/{build_id}/papers/{name}",
        summary="One paper, printed",
        response_class=Response,
        responses={200: {"content": {kind: {} for kind in _MEDIA.values()}}},
    )
    def paper(build_id: BuildId, name: str) -> Response:
        known = [each.name for each in packing.papers()]
        if name not in known:
            raise UnknownName("paper", name, known)
        work = benching.lay_open(bench, build_id)
        (document,) = packing.printing(work, (name,))
        kind = _MEDIA.get(name.rpartition(".")[2], "application/octet-stream")
        return Response(
            document.content,
            media_type=kind,
            headers={"Content-Disposition": f'attachment; filename="{name}"'},
        )
