"""What the shop floor has ticked off: appended, never changed, apart from the build's record."""

from datetime import datetime

from sqlalchemy import Connection, insert, select

from coachwright.store import auditing, tables
from coachwright.store.chain import head_of
from coachwright.store.engine import Database
from coachwright.store.records import Step, Tick

_tick = tables.tick.c


class Floor:
    """What the shop floor ticks off; `Store.floor` is one."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def tick(
        self,
        build_id: int,
        thing: str,
        step: Step,
        *,
        done: bool,
        part: str,
        place: str,
        actor: str,
        at: datetime,
    ) -> None:
        """Keep that somebody ticked something off, or took a tick back; the build stays as it is.

        Raises
        ------
        UnknownName
            Where there is no such build.
        """
        deed = f"ticked: {step}" if done else f"tick taken back: {step}"
        with self._database.writing() as connection:
            head_of(connection, build_id)
            connection.execute(
                insert(tables.tick).values(
                    build_id=build_id,
                    thing=thing,
                    step=step.value,
                    done=int(done),
                    part=part,
                    place=place,
                    at=at,
                    actor=actor,
                )
            )
            about = f"build {build_id}: {thing}"
            auditing.note(connection, actor=actor, deed=deed, about=about, at=at)

    def ticks(self, build_id: int) -> tuple[Tick, ...]:
        """Return everything that was ticked off of a build, the first first.

        Raises
        ------
        UnknownName
            Where there is no such build.
        """
        with self._database.reading() as connection:
            head_of(connection, build_id)
            return ticks(connection, build_id)


def ticks(connection: Connection, build_id: int) -> tuple[Tick, ...]:
    """Return every tick of a build, the first made first."""
    rows = connection.execute(
        select(tables.tick).where(_tick.build_id == build_id).order_by(_tick.id)
    )
    return tuple(
        Tick(
            number=row.id,
            thing=row.thing,
            step=Step(row.step),
            done=bool(row.done),
            part=row.part,
            place=row.place,
            at=row.at,
            actor=row.actor,
        )
        for row in rows
    )
