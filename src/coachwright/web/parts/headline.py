"""The column of figures that stays in view: bars, how each moved, and its working."""

from collections.abc import Callable

from nicegui import ui

from coachwright.actions.benching import OnBench
from coachwright.actions.headlining import Bar, Line, PriceLine, lines, price_line
from coachwright.web.parts.finding import mark
from coachwright.web.parts.plain import box, tool, words
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
        self._shown: dict[str, _Shown] = {}

    def create(self) -> None:
        with box("headline card", tag="section", label="Headline figures"):
            self._verdict = box("verdict")
            self._lines = box("lines")
            self._price = box("line price")
        with ui.dialog() as self._dialog, box("sheet card workingsheet"):
            self._inside = box("stack")
        on_change(self._here, self._draw, first=True)

    def _draw(self, work: OnBench) -> None:
        before = work.before
        found = lines(work.assessment, before, self._here.system)
        if [line.name for line in found] != list(self._shown):
            with self._lines.clear():
                self._shown = {line.name: _Shown(line, self._open) for line in found}
        for line in found:
            self._shown[line.name].say(line)
        with self._verdict.clear():
            _counts(work)
        with self._price.clear():
            _price(price_line(work.assessment, before))

    def _open(self, name: str) -> None:
        work, system = self._here.work, self._here.system
        figure = work.assessment.figure(name)
        with self._inside.clear():
            found = next(x for x in lines(work.assessment, None, system) if x.name == name)
            words(found.label, tag="h2")
            words(found.value, "strong", tag="p")
            if figure.working is not None:
                working(work.build, figure.working, system)
            tool("Close", self._dialog.close)
        self._dialog.open()


class _Shown:
    """One figure in the column."""

    def __init__(self, line: Line, show: Callable[[str], None]) -> None:
        with box("line", tag="button") as made:
            made.props("type=button").on("click", lambda: show(line.name))
            made.mark(f"figure {line.name}")
            with box("row", tag="span"):
                self._label = words("", "label")
                self._value = words("", "value strong")
            self._bar = _ShownBar() if line.bar is not None else None
            with box("row", tag="span"):
                self._beside = words("")
                with box("moved", tag="span") as self._moved:
                    self._arrow = words("").props('aria-hidden="true"')
                    self._by = words("")
                    words(" with the last edit", "hidden-words")

    def say(self, line: Line) -> None:
        self._label.set_text(line.label)
        self._value.set_text(line.value)
        missing = f"missing: {line.missing}" if line.missing else ""
        self._beside.set_text(missing or (f"95 %: {line.bounds}" if line.bounds else ""))
        self._beside.classes(replace="small severity unknown" if missing else "bounds quiet")
        self._arrow.set_text(_ARROWS[line.direction])
        self._by.set_text(line.moved)
        self._moved.set_visibility(bool(line.moved))
        if self._bar is not None and line.bar is not None:
            self._bar.say(line.bar)


class _ShownBar:
    """A load under its limit: the load filled, its 95 % band hatched, the limit a tick."""

    def __init__(self) -> None:
        with box("bar", tag="span").props('aria-hidden="true"') as self._bar:
            self._spans = {name: box(name, tag="span") for name in ("load", "band", "limit")}
        self._words = words("", "quiet barwords")

    def say(self, bar: Bar) -> None:
        self._bar.classes(replace=f"bar {bar.state.replace(' ', '-')}")
        self._words.set_text(f"{bar.words}, {_STATES[bar.state]}")
        for name, from_frac, to_frac in (
            ("load", 0.0, bar.load_frac),
            ("band", bar.low_frac, bar.high_frac),
            ("limit", bar.limit_frac, bar.limit_frac),
        ):
            # the style sheet turns the two shares into lengths
            self._spans[name].style(f"--from:{from_frac:.4f};--to:{to_frac:.4f}")


def _counts(work: OnBench) -> None:
    verdict = work.verdict
    for kind, count, one, many in (
        ("stop", verdict.stops, "stop", "stops"),
        ("caution", verdict.cautions, "caution", "cautions"),
        ("unknown", verdict.unknown, "unknown", "unknown"),
    ):
        with ui.link(target=f"/build/{work.build_id}/findings").classes(f"count {kind}"):
            mark(kind if count else "met", f"{count} {one if count == 1 else many}")


def _price(line: PriceLine) -> None:
    with box("row"):
        words("Parts, known prices", "label")
        words(line.price, "value strong")
    beside = [f"budget {line.budget}"] if line.budget else []
    with box("row"):
        words(", ".join([*beside, *([line.missing] if line.missing else [])]), "bounds quiet")
        if line.moved:
            words(line.moved, "moved")
