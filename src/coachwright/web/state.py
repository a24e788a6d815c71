"""What a page knows of who looks at it and of the build that lies open, and how it acts."""

import asyncio
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime

from nicegui import Client, app, background_tasks, run, ui

from coachwright.actions.admitting import ALONE, Who
from coachwright.actions.awaiting import with_years
from coachwright.actions.benching import Bench, OnBench, edit, redo, return_to, undo
from coachwright.errors import BadInput, CoachwrightError
from coachwright.store.records import Change, Conflict

Draw = Callable[[OnBench], None]
"""Shows a build anew."""

_UNITS, _NAME, _DARK = "units", "name", "dark"
_SOMEBODY = "designer"
_LEAD_S = 0.002
_watching: dict[int, list["Here"]] = {}
"""Open pages by the build that they show."""


@dataclass(kw_only=True, slots=True)
class Here:
    """One open page: the bench, the build that lies open, who looks, and what is picked.

    Attributes
    ----------
    now
        None on pages that show no build.
    picked
        Reference name of the fitting that is picked; empty for none.
    also
        Those that are picked besides, in the order in which they were.
    first_draws, draws
        What shows the build anew whenever anybody has edited it; the first are sent first.
    picks
        What shows which fitting is picked.
    """

    bench: Bench
    client: Client
    now: OnBench | None = None
    picked: str = ""
    also: tuple[str, ...] = ()
    first_draws: list[Draw] = field(default_factory=list)
    draws: list[Draw] = field(default_factory=list)
    picks: list[Callable[[str], None]] = field(default_factory=list)
    who: Who = ALONE
    settle: Callable[[Conflict], None] | None = None

    @property
    def work(self) -> OnBench:
        """The build that lies open; only on pages that show one."""
        assert self.now is not None
        return self.now

    @property
    def all_picked(self) -> tuple[str, ...]:
        """All fittings that are picked, the leading one last."""
        return (*self.also, self.picked) if self.picked else ()

    @property
    def actor(self) -> str:
        """Who edits."""
        return self.who.name or str(app.storage.user.get(_NAME) or _SOMEBODY)

    @property
    def system(self) -> str:
        """Units that this person reads: their own choice, else the brief's."""
        chosen = str(app.storage.user.get(_UNITS) or "")
        return chosen or (self.now.build.brief.units if self.now else "metric")

    @property
    def dark(self) -> bool | None:
        """Night colours; None follows the system."""
        return app.storage.user.get(_DARK)


def on_change(here: Here, draw: Draw, *, first: bool = False) -> None:
    """Show something now, and again whenever anybody has edited the build.

    Parameters
    ----------
    here
        The page.
    draw
        Shows a build.
    first
        Sent to the browser before everything else: the figures that a person waits for.
    """
    (here.first_draws if first else here.draws).append(draw)
    draw(here.work)


def on_pick(here: Here, show: Callable[[str], None]) -> None:
    """Show which fitting is picked, now and whenever another is."""
    here.picks.append(show)
    show(here.picked)


def pick(here: Here, name: str, also: Sequence[str] = ()) -> None:
    """Pick a fitting, perhaps with others besides, or none."""
    here.picked, here.also = name, tuple(also)
    for show in here.picks:
        show(name)


def watch(here: Here) -> None:
    """Let a page hear of every edit of its build, until it is closed."""
    listed = _watching.setdefault(here.work.build_id, [])
    listed.append(here)
    here.client.on_delete(lambda: listed.remove(here))
    _see_to_years(here.bench, here.work)


def watchers(build_id: int) -> tuple[Here, ...]:
    """Return the open pages that show a build."""
    return tuple(_watching.get(build_id, ()))


async def change(here: Here, made: Change, *, began_with: int | None = None) -> bool:
    """Keep an edit and show everybody the build after it; say whether it was kept.

    Parameters
    ----------
    here
        The page.
    made
        The edit.
    began_with
        Event that the person saw when beginning it; what lies open where not given.
    """
    work, actor = here.work, here.actor
    base = work.event if began_with is None else began_with
    return await _act(
        here,
        lambda: edit(here.bench, work.build_id, base, made, actor=actor, at=_now()),
    )


async def take_back(here: Here) -> bool:
    """Undo this person's last edit."""
    work, actor = here.work, here.actor
    return await _act(here, lambda: undo(here.bench, work.build_id, actor=actor, at=_now()))


async def do_again(here: Here) -> bool:
    """Redo what this person undid last."""
    work, actor = here.work, here.actor
    return await _act(here, lambda: redo(here.bench, work.build_id, actor=actor, at=_now()))


async def go_back(here: Here, event: int) -> bool:
    """Make the build again what it was after an earlier event; say whether it was done."""
    work, actor = here.work, here.actor
    return await _act(
        here,
        lambda: return_to(here.bench, work.build_id, work.event, event, actor=actor, at=_now()),
    )


async def _act(here: Here, deed: Callable[[], OnBench | Conflict]) -> bool:
    try:
        made = await run.io_bound(deed)
    except BadInput as error:
        refuse(here, " ".join(fault.sentence() for fault in error.faults))
        return False
    except CoachwrightError as error:
        refuse(here, str(error))
        return False
    if isinstance(made, Conflict) and here.settle is not None:
        with here.client:
            here.settle(made)
        return False
    if isinstance(made, Conflict):
        refuse(here, f"not kept: {', '.join(made.actors)} changed the same place meanwhile")
        return False
    if made is not None:
        show_everybody(made)
        _see_to_years(here.bench, made)
    return True


def show_everybody(made: OnBench) -> None:
    """Show a build on every page that shows it: first its figures, then the rest."""
    for each in watchers(made.build_id):
        each.now = made
        with each.client:
            for draw in tuple(each.first_draws):
                draw(made)
    background_tasks.create(_show_the_rest(made), name=f"show build {made.build_id}")


def _see_to_years(bench: Bench, made: OnBench) -> None:
    """Have the years computed where they are awaited, beside everything else."""
    if made.assessment.living.is_awaited:
        background_tasks.create(_show_years(bench, made), name=f"years of build {made.build_id}")


async def _show_years(bench: Bench, made: OnBench) -> None:
    await asyncio.sleep(_LEAD_S)  # the figures that are quick go first
    whole = await run.io_bound(with_years, bench, made)
    if whole is not None and any(each.now is made for each in watchers(made.build_id)):
        show_everybody(whole)


async def _show_the_rest(made: OnBench) -> None:
    await asyncio.sleep(_LEAD_S)  # lets the figures out before the drawing is made
    for each in watchers(made.build_id):
        if each.now is made:
            with each.client:
                for draw in tuple(each.draws):
                    draw(made)


def remember(
    *, units: str | None = None, name: str | None = None, dark: bool | None = None
) -> None:
    """Keep what a person has chosen."""
    chosen = {_UNITS: units, _NAME: name, _DARK: dark}
    app.storage.user.update({key: value for key, value in chosen.items() if value is not None})


def refuse(here: Here, words: str) -> None:
    """Tell a person why something was not done."""
    with here.client:
        ui.notify(words, type="warning", multi_line=True, timeout=8000, close_button="Close")


def _now() -> datetime:
    return datetime.now(UTC)
