"""The bench: builds kept in the store, each open one with its assessment at hand."""

import threading
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import datetime
from pathlib import Path

from coachwright.actions.checking import Verdict, verdict
from coachwright.actions.opening import complete
from coachwright.assess import Almanac, Assessment, Stages, assess
from coachwright.catalogue.loading import Catalogue
from coachwright.errors import BuildFileError, Fault
from coachwright.model.build import Build, BuildSheet
from coachwright.store.editing import read_sheet
from coachwright.store.opening import open_store
from coachwright.store.records import (
    Appended,
    BuildEntry,
    Change,
    Conflict,
    Judge,
    Reach,
    Sheet,
    WholeSheet,
)
from coachwright.store.store import Store

_FILE = "the sheet"
_MOST_JUDGED = 32
_MOST_STAGES = 64
"""Results of stages kept of one build, so that undoing computes nothing anew."""


@dataclass(frozen=True, kw_only=True, slots=True)
class OnBench:
    """One build as it lies on the bench, with everything computed from it.

    Attributes
    ----------
    event
        Number of the event after which the sheet was so.
    sheet, build
        As written, and with everything found.
    before
        What was computed before the last edit; None where the build was only just opened.
    """

    build_id: int
    event: int
    text: str
    sheet: BuildSheet
    build: Build
    assessment: Assessment
    verdict: Verdict
    before: Assessment | None = None


@dataclass(slots=True)
class _Lying:
    """What the bench remembers of one build."""

    lock: threading.RLock = field(default_factory=threading.RLock)
    stages: Stages = field(default_factory=lambda: Stages(most=_MOST_STAGES))
    now: OnBench | None = None


@dataclass(slots=True)
class _Judged:
    """Builds that the store's judge has just completed; each is given out once."""

    _kept: dict[int, tuple[BuildSheet, Build]] = field(default_factory=dict)

    def remember(self, sheet: BuildSheet, build: Build) -> None:
        if len(self._kept) >= _MOST_JUDGED:
            self._kept.clear()
        self._kept[id(sheet)] = (sheet, build)

    def take(self, sheet: BuildSheet) -> Build | None:
        """Return the build of this very sheet, and forget it: the catalogue may change."""
        _, build = self._kept.pop(id(sheet), (None, None))
        return build


@dataclass(slots=True)
class Bench:
    """The catalogue, the store and what lies open; one for the whole program.

    Attributes
    ----------
    check
        Called before anything is changed; raises where it may not be.
    owner
        Called before accounts and the log are read; raises where they may not be.
    almanac
        Of the weather; without one there are no years.
    """

    catalogue: Catalogue
    store: Store
    almanac: Almanac | None = None
    check: Callable[[], None] = lambda: None
    owner: Callable[[], None] = lambda: None
    _judged: _Judged = field(default_factory=_Judged)
    _lying: dict[int, _Lying] = field(default_factory=dict)
    _lock: threading.Lock = field(default_factory=threading.Lock)

    def lying(self, build_id: int) -> _Lying:
        """Return what is remembered of a build."""
        with self._lock:
            return self._lying.setdefault(build_id, _Lying())

    def just_judged(self, sheet: BuildSheet) -> Build | None:
        """Return the build of a sheet that the store has just approved; None for any other."""
        return self._judged.take(sheet)

    def checked(
        self,
        check: Callable[[], None],
        *,
        floor: Callable[[], None],
        owner: Callable[[], None],
        place: str = "",
    ) -> "Bench":
        """Return the same bench, with a check before anything is changed.

        Parameters
        ----------
        check
            Before every change.
        floor, owner
            In its place, before what the shop floor ticks off, and before accounts are changed
            and the log is read.
        place
            From where it is used, for the log.
        """
        store = self.store.checked(check, floor=floor, owner=owner, place=place)
        return replace(self, store=store, check=check, owner=owner)

    def all_lying(self) -> tuple[tuple[int, _Lying], ...]:
        """Return what is remembered of every build that was open."""
        with self._lock:
            return tuple(self._lying.items())


def set_up(address: str | Path, catalogue: Catalogue, almanac: Almanac | None = None) -> Bench:
    """Return a bench over the store at an address.

    Parameters
    ----------
    address
        Of the store: a file's path, or that of a server.
    catalogue
        Of the shop.
    almanac
        Of the weather; without one there are no years.

    Raises
    ------
    StoreError
        Where the store cannot be opened.
    """
    judged = _Judged()
    store = open_store(address, judge=judge_of(catalogue, judged))
    return Bench(catalogue=catalogue, store=store, almanac=almanac, _judged=judged)


def judge_of(catalogue: Catalogue, judged: "_Judged | None" = None) -> Judge:
    """Return what says of a sheet which of its parts and names lead nowhere.

    Parameters
    ----------
    catalogue
        Where its parts are.
    judged
        Remembers what was found on the way, for whoever assesses the sheet next.
    """

    def judge(sheet: BuildSheet) -> tuple[Fault, ...]:
        try:
            build = complete(sheet, _FILE, catalogue)
        except BuildFileError as error:
            return error.faults
        if judged is not None:
            judged.remember(sheet, build)
        return ()

    return judge


def builds(bench: Bench, *, archived: bool = False) -> tuple[BuildEntry, ...]:
    """Return the builds in work, or those put away; the last changed first."""
    return bench.store.builds(archived=archived)


def begin(bench: Bench, text: str, *, actor: str, at: datetime) -> int:
    """Keep a new build and return its number.

    Raises
    ------
    BuildFileError
        With every fault of the sheet.
    """
    return bench.store.create_build(text, actor=actor, at=at).build_id


def copy_of(bench: Bench, build_id: int, *, actor: str, at: datetime) -> int:
    """Keep a new build that begins with the current sheet of another; return its number."""
    return begin(bench, bench.store.sheet(build_id).text, actor=actor, at=at)


def put_away(bench: Bench, build_id: int, *, actor: str, at: datetime) -> None:
    """Put a build away; nothing of it is lost."""
    bench.store.archive(build_id, actor=actor, at=at)


def take_out(bench: Bench, build_id: int, *, actor: str, at: datetime) -> None:
    """Take a build out again that was put away."""
    bench.store.unarchive(build_id, actor=actor, at=at)


def lay_open(bench: Bench, build_id: int) -> OnBench:
    """Return a build as it is now, assessed.

    Raises
    ------
    UnknownName
        Where there is no such build.
    BuildFileError
        Where the catalogue no longer has what it names.
    """
    lying = bench.lying(build_id)
    with lying.lock:
        if lying.now is None:
            lying.now = _assessed(bench, lying, bench.store.sheet(build_id))
        return lying.now


def edit(
    bench: Bench, build_id: int, base_event: int, change: Change, *, actor: str, at: datetime
) -> OnBench | Conflict:
    """Keep an edit and return the build after it, assessed; or what it collides with.

    Raises
    ------
    BuildFileError, CannotEdit
        Where the edit makes no sheet that can be read.
    """
    return _keep(
        bench,
        build_id,
        lambda: bench.store.append(build_id, base_event, change, actor=actor, at=at),
    )


def undo(bench: Bench, build_id: int, *, actor: str, at: datetime) -> OnBench | Conflict:
    """Undo the actor's last edit.

    Raises
    ------
    NothingToUndo
        Where there is none.
    """
    return _keep(bench, build_id, lambda: bench.store.undo(build_id, actor=actor, at=at))


def redo(bench: Bench, build_id: int, *, actor: str, at: datetime) -> OnBench | Conflict:
    """Redo what the actor undid last.

    Raises
    ------
    NothingToUndo
        Where nothing was undone since the last edit.
    """
    return _keep(bench, build_id, lambda: bench.store.redo(build_id, actor=actor, at=at))


def return_to(
    bench: Bench, build_id: int, base_event: int, to_event: int, *, actor: str, at: datetime
) -> OnBench | Conflict:
    """Make a build again what it was after an earlier event; this too can be undone.

    Raises
    ------
    UnknownName
        Where there is no such event.
    """
    return _keep(
        bench,
        build_id,
        lambda: bench.store.go_back(build_id, base_event, to_event, actor=actor, at=at),
    )


def look_again(bench: Bench) -> tuple[OnBench, ...]:
    """Assess everything that lies open anew, because the catalogue has changed; return it.

    A build that the catalogue no longer has everything of is closed.
    """
    found: list[OnBench] = []
    for build_id, lying in bench.all_lying():
        with lying.lock:
            if lying.now is None:
                continue
            before, lying.now = lying.now, None
            try:
                made = _assessed(bench, lying, bench.store.sheet(build_id))
            except BuildFileError:
                continue
            lying.now = replace(made, before=before.assessment)
            found.append(lying.now)
    return tuple(found)


def assessed_at(bench: Bench, build_id: int, event: int) -> Assessment:
    """Return what was computed of a build after an earlier event.

    Raises
    ------
    UnknownName
        Where there is no such build or event.
    BuildFileError
        Where the catalogue no longer has what it names.
    """
    lying = bench.lying(build_id)
    with lying.lock:
        if lying.now is not None and lying.now.event == event:
            return lying.now.assessment
        sheet = bench.store.sheet(build_id, event)
        build = complete(read_sheet(sheet.text), _FILE, bench.catalogue)
        return assess(build, lying.stages, _at_once(bench))


def reach(bench: Bench, build_id: int, *, actor: str) -> Reach:
    """Return what the actor's next undo and redo would take back."""
    return bench.store.reach(build_id, actor=actor)


def _at_once(bench: Bench) -> Almanac | None:
    """Return the almanac, which hands in years that are kept and computes none."""
    return None if bench.almanac is None else replace(bench.almanac, wait=False)


def rewrite(
    bench: Bench, build_id: int, base_event: int, text: str, *, actor: str, at: datetime
) -> OnBench | Conflict:
    """Keep a sheet whose text was edited as a whole.

    Raises
    ------
    BuildFileError
        With every fault of the text.
    """
    return edit(bench, build_id, base_event, WholeSheet(text=text), actor=actor, at=at)


def _keep(
    bench: Bench, build_id: int, keeping: Callable[[], Appended | Conflict]
) -> OnBench | Conflict:
    lying = bench.lying(build_id)
    with lying.lock:
        kept = keeping()
        if isinstance(kept, Conflict):
            return kept
        lying.now = _assessed(bench, lying, kept.sheet)
        return lying.now


def _assessed(bench: Bench, lying: _Lying, sheet: Sheet) -> OnBench:
    if lying.now is not None and lying.now.event == sheet.event:
        return lying.now
    record = read_sheet(sheet.text)
    build = bench.just_judged(record) or complete(record, _FILE, bench.catalogue)
    assessment = assess(build, lying.stages, _at_once(bench))
    return OnBench(
        build_id=sheet.build_id,
        event=sheet.event,
        text=sheet.text,
        sheet=record,
        build=build,
        assessment=assessment,
        verdict=verdict(assessment),
        before=lying.now.assessment if lying.now else None,
    )
