"""The paths of the shop floor: what is to be fitted, and ticks."""

import asyncio
from collections.abc import Callable
from dataclasses import asdict
from datetime import UTC, datetime
from functools import partial

from fastapi import APIRouter

from coachwright.actions import benching
from coachwright.actions.benching import Bench
from coachwright.actions.shop_floor import FloorList, floor_list, tick
from coachwright.units import worded
from coachwright.web.interface.bodies import (
    BuildId,
    FloorAnswer,
    MarkAnswer,
    ThingAnswer,
    TickAnswer,
    TickBody,
)
from coachwright.web.interface.building import Caller, actor_of, allowed


def routes(bench: Bench, ticked: Callable[[int], object]) -> APIRouter:
    """Return the paths of the shop floor.

    Parameters
    ----------
    bench
        What they show and change.
    ticked
        Told of every build of which something was ticked, so that pages show it.
    """
    router = APIRouter(prefix="/builds")

    @router.get("/{build_id}/floor", summary="What is to be fitted, and what was ticked")
    def floor(build_id: BuildId) -> FloorAnswer:
        return _answer(floor_list(bench, benching.lay_open(bench, build_id)))

    @router.post("/{build_id}/ticks", status_code=201, summary="Tick something off")
    async def ticks(build_id: BuildId, body: TickBody, who: Caller) -> FloorAnswer:
        work = await asyncio.to_thread(benching.lay_open, bench, build_id)
        keep = partial(tick, allowed(bench, who), work, body.thing, body.step)
        now = datetime.now(UTC)
        await asyncio.to_thread(keep, done=body.done, actor=actor_of(who), at=now)
        ticked(build_id)
        return _answer(await asyncio.to_thread(floor_list, bench, work))

    return router


def _answer(found: FloorList) -> FloorAnswer:
    return FloorAnswer(
        things=tuple(
            ThingAnswer(
                thing=each.key,
                name=each.name,
                part=each.part,
                group=each.group,
                where=tuple(worded(sentence) for sentence in each.where),
                here=MarkAnswer(**asdict(each.here)),
                fitted=MarkAnswer(**asdict(each.fitted)),
            )
            for each in found.things
        ),
        ticks=tuple(TickAnswer(**asdict(each)) for each in found.ticks),
    )
