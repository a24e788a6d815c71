"""Turn a dial, and the year answers while it is dragged; nothing of it is kept."""

from dataclasses import dataclass, field

from nicegui import run, ui

from coachwright.actions.benching import OnBench
from coachwright.actions.seasons import Dial, all_words, dials, grounds
from coachwright.actions.trying import Answer, answer
from coachwright.errors import CoachwrightError
from coachwright.living.model import SiteYear
from coachwright.web.parts import sheet
from coachwright.web.parts.dial import dial
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.state import Here

_WORKING = "Running the year …"


@dataclass(kw_only=True, slots=True)
class WhatIf:
    """The dials of one page.

    Attributes
    ----------
    turned
        Where each dial stands, by name.
    busy, again
        A year is being run, and a dial was turned meanwhile.
    """

    here: Here
    year: SiteYear | None = None
    shown: tuple[Dial, ...] = ()
    turned: dict[str, int] = field(default_factory=dict)
    busy: bool = False
    again: bool = False
    row: ui.element | None = None
    said: ui.element | None = None

    def create(self) -> None:
        """Make room for dials and answer."""
        with sheet.section("What if …"):
            words(
                "Turn a dial: the year is run anew and answers below. Nothing is kept.",
                "quiet small",
                tag="p",
            )
            self.row = box("dials")
            with box("rowline"):
                tool("As the build is", self.set_back)
            self.said = box("stack").props('aria-live="polite"')

    def show(self, work: OnBench, year: SiteYear | None) -> None:
        """Offer the dials of a build at a site; those that somebody holds stay as they are."""
        offered = dials(work.assessment)
        if offered != self.shown or self.year is None or year is None:
            self.shown, self.turned = offered, {}
            self._dials()
        if year != self.year and self.said is not None:
            self.said.clear()
        self.year = year

    def set_back(self) -> None:
        """Turn every dial to where the build is."""
        self.turned = {}
        self._dials()
        if self.said is not None:
            self.said.clear()

    def _dials(self) -> None:
        assert self.row is not None
        self.row.clear()
        with self.row:
            for each in self.shown:
                self._dial(each)

    def _dial(self, each: Dial) -> None:
        async def turned(at: int) -> None:
            self.turned[each.name] = at
            await self._ask()

        dial(each.label, all_words(each, self.here.system), each.at, turned)

    async def _ask(self) -> None:
        if self.busy:
            self.again = True
            return
        self.busy = True
        try:
            await self._answer()
            while self.again:
                self.again = False
                await self._answer()
        finally:
            self.busy = False

    async def _answer(self) -> None:
        year, said = self.year, self.said
        if year is None or said is None:
            return
        if not said.default_slot.children:
            with said:
                words(_WORKING, "quiet", tag="p")
        work, system = self.here.work, self.here.system
        shown, turned, catalogue = self.shown, dict(self.turned), self.here.bench.catalogue

        def deed() -> Answer:
            return answer(
                build=work.build,
                living=work.assessment.living,
                year=year,
                ground=grounds(work.assessment, year.site, catalogue),
                shown_dials=shown,
                turned=turned,
                system=system,
            )

        try:
            found = await run.io_bound(deed)
        except CoachwrightError as error:
            said.clear()
            with said:
                words(str(error), "severity caution", tag="p")
            return
        if found is not None:
            _show(said, found)


def _show(said: ui.element, found: Answer) -> None:
    said.clear()
    with said:
        words(found.said, "strong", tag="p")
        sheet.rows_of(found.table)
        words(found.table.note, "quiet small", tag="p")
        sheet.drawing(found.drawing, "Days that stands would last, month by month")
