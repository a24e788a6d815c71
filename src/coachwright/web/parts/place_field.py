"""One coordinate of the picked fitting, to be typed; what others do meanwhile is not lost."""

from nicegui import ui

from coachwright.actions.benching import OnBench
from coachwright.actions.placing import fitted_of, move_as_written, place_texts
from coachwright.web.parts.deeds import done
from coachwright.web.parts.plain import box, words
from coachwright.web.state import Here

AXES = (
    ("x", "Rearwards (x)"),
    ("y", "To the right (y)"),
    ("z", "Up (z)"),
)


class PlaceField:
    """The field of one axis.

    Parameters
    ----------
    here
        The page.
    name
        The fitting's.
    axis
        0, 1 or 2 for x, y and z.
    """

    def __init__(self, here: Here, name: str, axis: int) -> None:
        self._here, self._name, self._axis = here, name, axis
        self._seen = here.work
        self._text = self._now()
        self._busy = False
        with box("placefield"):
            self._field = ui.input(AXES[axis][1], value=self._text)
            self._field.props("outlined dense autocomplete=off")
            self._field.mark(f"place {AXES[axis][0]}")
            self._hint = words("", "small quiet")
        self._field.on("keydown.enter", self._typed)
        self._field.on("blur", self._typed)

    def renew(self, work: OnBench) -> None:
        """Show where the fitting stands now; what somebody is typing stays."""
        now = self._now()
        typing = self._value() != self._text and not self._busy
        if typing and now != self._text:
            self._hint.set_text(f"meanwhile: {now}")
        elif not typing:
            self._show(work, now)

    async def _typed(self) -> None:
        wanted = self._value()
        if wanted == self._text or self._busy:
            return
        self._busy = True
        await done(
            self._here,
            lambda work: move_as_written(work.sheet, work.build, self._name, self._axis, wanted),
            seen=self._seen,
        )
        self._busy = False
        if self._here.work.build.fitted(self._name) is not None:
            self._show(self._here.work, self._now())

    def _show(self, work: OnBench, text: str) -> None:
        self._seen, self._text = work, text
        self._field.value = text
        self._hint.set_text("")

    def _value(self) -> str:
        return (self._field.value or "").strip()

    def _now(self) -> str:
        fitted = fitted_of(self._here.work.build, self._name)
        return place_texts(fitted, self._here.system)[self._axis]
