"""Papers: print the job pack, look at its pages, take one or all."""

from base64 import b64encode
from dataclasses import dataclass, field

from nicegui import run, ui

from coachwright.actions.benching import OnBench
from coachwright.actions.packing import (
    Paper,
    archive,
    file_name,
    pages,
    papers,
    printing,
)
from coachwright.errors import CoachwrightError
from coachwright.papers.pack import Document
from coachwright.web.parts import sheet
from coachwright.web.parts.drawings import drawings
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.state import Here, on_change

_UNITS = {"metric": "metric units", "us": "US customary units"}


def create(here: Here) -> None:
    """Fill the page."""
    sheet.styled()
    with box("stack"):
        sheet.heading("Papers", "The job pack of this build, printed here and taken from here.")
        desk = _Desk(here=here)
        desk.create()
        drawings(here)
    on_change(here, desk.changed)


@dataclass(kw_only=True)
class _Desk:
    """What is printed, and what was printed before.

    Attributes
    ----------
    ready
        Papers by file name, all from the edit `printed`.
    stopped
        Somebody asked to print no more.
    """

    here: Here
    ready: dict[str, bytes] = field(default_factory=dict)
    printed: int = 0
    running: bool = False
    stopped: bool = False

    def create(self) -> None:
        """Show the desk."""
        with sheet.section("Job pack"):
            self._basis = words("", "quiet", tag="p")
            with box("rowline"):
                self._print = tool("Print the job pack", self._print_all, classes="main")
                self._stop = tool("Stop printing", self._stop_it)
                self._all = tool("Download all as one archive", self._take_all)
            with box("rowline"):
                self._bar = ui.element("progress").props("aria-label='Papers printed'")
                self._said = words("", tag="p").props('aria-live="polite"')
            with box("paperlist", tag="ul"):
                for paper in papers():
                    self._row(paper)
        self._look = box("stack")
        self._show("Nothing is printed yet.")

    def changed(self, work: OnBench) -> None:
        """Say from which edit papers are printed, and whether those at hand are older."""
        units = _UNITS[work.build.brief.units]
        self._basis.set_text(
            f"Revision {work.build.revision}, edit {work.event}, in the brief's {units}."
        )
        if self.ready and self.printed != work.event and not self.running:
            self.ready.clear()
            self._show("The build has changed since; print the papers again.")

    def _row(self, paper: Paper) -> None:
        with box("paper", tag="li"):
            with box("grow"):
                words(paper.title, "strong")
                words(paper.about, "quiet small about")
            with box("rowline"):
                if paper.pages:
                    tool("Look", lambda: self._look_at(paper), label=f"Look at: {paper.title}")
                take = tool("Download", lambda: self._take(paper))
                take.props["aria-label"] = f"Download: {paper.title}"

    def _show(self, text: str) -> None:
        self._said.set_text(text)
        self._bar.props["max"] = len(papers())
        self._bar.props["value"] = len(self.ready)
        self._bar.update()
        self._bar.set_visibility(self.running)
        self._print.set_enabled(not self.running)
        self._stop.set_enabled(self.running)
        self._all.set_enabled(bool(self.ready) and not self.running)

    def _stop_it(self) -> None:
        self.stopped = True

    async def _print_all(self) -> None:
        work = self.here.work
        self.ready.clear()
        self.printed, self.running, self.stopped = work.event, True, False
        names = tuple(paper.name for paper in papers())
        waiting = printing(work, names)
        said = ""
        try:
            for number, name in enumerate(names, start=1):
                self._show(f"Printing {number} of {len(names)}: {name}")
                made = await run.io_bound(next, waiting)
                if made is None or self.stopped:
                    break
                self.ready[made.name] = made.content
            said = self._outcome(names)
        except CoachwrightError as error:
            said = str(error)
        finally:
            self.running = False
            self._show(said)

    def _outcome(self, names: tuple[str, ...]) -> str:
        if len(self.ready) == len(names):
            return f"All {len(names)} papers are printed."
        return f"Stopped; {len(self.ready)} of {len(names)} papers are printed."

    def _take_all(self) -> None:
        content = archive(self.ready)
        ui.download.content(content, file_name(self.here.work, "zip", "job pack"))

    async def _take(self, paper: Paper) -> None:
        content = self.ready.get(paper.name)
        if content is None:
            made = await self._one(paper)
            if made is None:
                return
            content = made.content
        stem, _, ending = paper.name.rpartition(".")
        ui.download.content(content, file_name(self.here.work, ending, stem))

    async def _one(self, paper: Paper) -> Document | None:
        work = self.here.work
        try:
            return await run.io_bound(next, printing(work, (paper.name,)))
        except CoachwrightError as error:
            self._show(str(error))
            return None

    async def _look_at(self, paper: Paper) -> None:
        self._look.clear()
        with self._look:
            waiting = words(f"Setting {paper.title.lower()} …", "card", tag="p")
        try:
            found = await run.io_bound(pages, self.here.work, paper.name)
        except CoachwrightError as error:
            waiting.set_text(str(error))
            return
        self._look.clear()
        with self._look:
            self._pages(paper, found or ())

    def _pages(self, paper: Paper, found: tuple[bytes, ...]) -> None:
        with sheet.section(f"{paper.title}: {len(found)} pages"):
            with box("rowline"):
                closing = tool("Close", self._look.clear, label=f"Close {paper.title}")
            with box("pages"):
                for number, picture in enumerate(found, start=1):
                    shown = ui.element("img").classes("page")
                    shown.props["src"] = f"data:image/png;base64,{b64encode(picture).decode()}"
                    shown.props["alt"] = f"Page {number} of {len(found)} of the {paper.title}"
        sheet.bring_into_view(closing)
