"""What the picked fitting is fixed to, built into and carried by, to be chosen."""

from collections.abc import Callable

from nicegui import ui

from coachwright.actions.benching import OnBench
from coachwright.actions.fixing import MOUNTINGS, build_into, carriers, fix_to, stand_on
from coachwright.model.build import Build, BuildSheet, Mounting
from coachwright.store.edits import Edit
from coachwright.web.parts.deeds import done
from coachwright.web.state import Here

_NOTHING = {"": "nothing"}
Told = Callable[[BuildSheet, Build, str, str], tuple[Edit, ...]]


class FixedTo:
    """Three lists of one fitting.

    Parameters
    ----------
    here
        The page.
    name
        The fitting's.
    """

    def __init__(self, here: Here, name: str) -> None:
        self._here, self._name = here, name
        self._filling = True
        self._mounting = self._list("Fixed to", _fix)
        self._within = self._list("Built into", build_into)
        self._on = self._list("Stands on", stand_on)
        self.renew(here.work)

    def renew(self, work: OnBench) -> None:
        """Show what it is fixed to now."""
        fitted = work.build.fitted(self._name)
        if fitted is None:
            return
        fitting = fitted.fitting
        offered = _NOTHING | carriers(work.build, self._name)
        self._filling = True
        _show(self._mounting, MOUNTINGS, str(fitting.mounting))
        for made, now in ((self._within, fitting.within), (self._on, fitting.on)):
            _show(made, offered | {now: offered.get(now, now)}, now)
        self._filling = False

    def _list(self, label: str, told: Told) -> ui.select:
        made = ui.select({}, label=label).props("outlined dense options-dense")

        async def chosen(value: str | None) -> None:
            if self._filling or value is None:
                return
            seen = self._here.work
            kept = await done(
                self._here,
                lambda work: told(work.sheet, work.build, self._name, value),
                seen=seen,
            )
            if not kept:
                self.renew(self._here.work)

        made.on_value_change(lambda event: chosen(event.value))
        return made


def _show(made: ui.select, offered: dict[str, str], now: str) -> None:
    """Show what is chosen; the list is sent again only where it is another."""
    if made.options != offered:
        made.set_options(offered, value=now)
    elif made.value != now:
        made.value = now


def _fix(sheet: BuildSheet, build: Build, name: str, mounting: str) -> tuple[Edit, ...]:
    return fix_to(sheet, build, name, Mounting(mounting))
