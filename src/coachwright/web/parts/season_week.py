"""A week of the typical year, anywhere in it: temperatures, charge, flows."""

from dataclasses import dataclass

from nicegui import run, ui

from coachwright.actions.seasons import (
    every_week,
    grounds,
    week_beside,
    week_drawing,
    week_words,
)
from coachwright.errors import CoachwrightError
from coachwright.web.parts import sheet
from coachwright.web.parts.dial import Turned, dial
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.state import Here

_WORKING = "Running the year …"


@dataclass(kw_only=True, slots=True)
class SeasonWeek:
    """The week of one page.

    Attributes
    ----------
    busy, again
        A week is being drawn, and another was asked for meanwhile.
    """

    here: Here
    site: str = ""
    day: int = 14
    busy: bool = False
    again: bool = False
    picture: ui.element | None = None
    dial: Turned | None = None

    def create(self) -> None:
        """Make room for the dial and the picture."""
        with sheet.section("A week of the year"):
            with box("weekrow"):
                tool("◀ Week", lambda: self._move(forwards=False), label="A week earlier")
                self.dial = dial("First day of the week", every_week(), self.day, self._turned)
                tool("Week ▶", lambda: self._move(forwards=True), label="A week later")
            self.picture = box("stack")

    async def _turned(self, day: int) -> None:
        self.day = day
        await self.draw()

    async def _move(self, *, forwards: bool) -> None:
        assert self.dial is not None
        self.day = week_beside(self.day, forwards=forwards)
        self.dial.set(self.day)
        await self.draw()

    async def draw(self) -> None:
        """Draw the week that the slider stands at."""
        if self.busy:
            self.again = True
            return
        self.busy = True
        try:
            await self._draw()
            while self.again:
                self.again = False
                await self._draw()
        finally:
            self.busy = False

    async def _draw(self) -> None:
        room, site, day = self.picture, self.site, self.day
        if room is None:
            return
        if not site:
            room.clear()
            return
        if not room.default_slot.children:
            with room:
                words(_WORKING, "quiet", tag="p")
        work, catalogue, system = self.here.work, self.here.bench.catalogue, self.here.system
        try:
            drawn = await run.io_bound(
                lambda: week_drawing(grounds(work.assessment, site, catalogue), day, system)
            )
        except CoachwrightError as error:
            room.clear()
            with room:
                words(str(error), "severity caution", tag="p")
            return
        if drawn is not None:
            room.clear()
            with room:
                sheet.drawing(drawn, f"Temperatures, charge and flows: {week_words(day)}")
