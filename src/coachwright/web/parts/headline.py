"""The column of figures that stays in view: bars, how each moved, and its working."""

from nicegui import ui

from coachwright.actions.benching import OnBench
from coachwright.actions.headlining import Bar, Line, PriceLine, lines, price_line
from coachwright.web.parts.finding import mark
from coachwright.web.parts.plain import box, words
from coachwright.web.parts.working import working
from coachwright.web.state import Here, on_change

_ARROWS = {"up": "▲", "down": "▼", "": ""}
_STATES = {
    "within": "within its limit",
    "at its bound": "over its limit at the 95 % bound",
    "over": "over its limit",
}


def create(here: Here) -> None:
    """Show the column."""
    _Column(here).create()


class _Column:
    """The column of one page; its elements stay, only what they say changes."""

    def __init__(self, here: Here) -> None:
        self._here = here
        self._open = ""

    def create(self) -> None:
        with box("headline card", tag="section", label="Headline figures"):
            self._verdict = box("verdict")
            self._lines = box("lines")
            self._price = box("line price")
        with ui.dialog() as self._dialog, box("sheet card workingsheet"):
            self._inside = box("stack")
        on_change(self._here, self._draw)

    def _draw(self, work: OnBench) -> None:
        before = work.before
        system = self._here.system
        with self._verdict.clear():
            self._counts(work)
        with self._lines.clear():
            for line in lines(work.assessment, before, system):
                self._line(line)
        with self._price.clear():
            _price(price_line(work.assessment, before))

    def _counts(self, work: OnBench) -> None:
        verdict = work.verdict
        for kind, count, one, many in (
            ("stop", verdict.stops, "stop", "stops"),
            ("caution", verdict.cautions, "caution", "cautions"),
            ("unknown", verdict.unknown, "unknown", "unknown"),
        ):
            with ui.link(target=f"/build/{work.build_id}/findings").classes(f"count {kind}"):
                mark(kind if count else "met", f"{count} {one if count == 1 else many}")

    def _line(self, line: Line) -> None:
        with box("line", tag="button") as shown:
            shown.props("type=button").on("click", lambda: self._show(line.name))
            with box("row", tag="span"):
                words(line.label, "label")
                words(line.value, "value strong")
            if line.bar is not None:
                _bar(line.bar)
            with box("row", tag="span"):
                if line.missing:
                    words(f"missing: {line.missing}", "small severity unknown")
                elif line.bounds:
                    words(f"95 %: {line.bounds}", "bounds quiet")
                _moved(line.direction, line.moved)
        shown.mark(f"figure {line.name}")

    def _show(self, name: str) -> None:
        work, system = self._here.work, self._here.system
        figure = work.assessment.figure(name)
        with self._inside.clear():
            found = next(x for x in lines(work.assessment, None, system) if x.name == name)
            words(found.label, tag="h2")
            words(found.value, "strong", tag="p")
            if figure.working is not None:
                working(work.build, figure.working, system)
            ui.button("Close", on_click=self._dialog.close, color=None).classes("tool").props(
                "flat no-caps"
            )
        self._dialog.open()


def _moved(direction: str, moved: str) -> None:
    if moved:
        with box(f"moved {direction}", tag="span"):
            words(_ARROWS[direction]).props('aria-hidden="true"')
            words(moved)
            words(" with the last edit", "hidden-words")


def _bar(bar: Bar) -> None:
    """Show a load under its limit: the load filled, its 95 % band hatched, the limit a tick."""
    with box(f"bar {bar.state.replace(' ', '-')}", tag="span").props('aria-hidden="true"'):
        _span("load", 0.0, bar.load_frac)
        _span("band", bar.low_frac, bar.high_frac)
        _span("limit", bar.limit_frac, bar.limit_frac)
    words(f"{bar.words}, {_STATES[bar.state]}", "quiet barwords")


def _span(name: str, from_frac: float, to_frac: float) -> None:
    """Show a part of a bar; the style sheet turns the two shares into lengths."""
    box(name, tag="span").style(f"--from:{from_frac:.4f};--to:{to_frac:.4f}")


def _price(line: PriceLine) -> None:
    with box("row"):
        words("Parts, known prices", "label")
        words(line.price, "value strong")
    beside = [f"budget {line.budget}"] if line.budget else []
    with box("row"):
        words(", ".join([*beside, *([line.missing] if line.missing else [])]), "bounds quiet")
        _moved("", line.moved)
