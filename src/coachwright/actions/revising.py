"""Named revisions of a build: their list, what differs between two, and a picture of both."""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from pydantic import TypeAdapter

from coachwright.actions.benching import Bench, assessed_at
from coachwright.actions.comparing import (
    Comparison,
    FigureChange,
    FindingChange,
    Reading,
    compared,
)
from coachwright.drawing.overlay import overlay
from coachwright.drawing.svg import svg
from coachwright.papers.view_drawings import content_of
from coachwright.store.records import Deed, Event, Revision
from coachwright.units import difference_unit, shown, worded

_PAPER_MM = 300.0
_MOST_PLACES = 3
"""A line of the history names no more places than this."""
_TELLING = frozenset({"broken", "unknown"})
ALWAYS = frozenset(
    {
        "weights.total-as-delivered",
        "weights.total-travelling",
        "weights.front-axle-travelling",
        "weights.rear-axle-travelling",
    }
)
"""Figures that are compared besides the headline: masses and axle loads."""

_DEEDS = {
    Deed.CREATED: "began",
    Deed.EDITED: "edited",
    Deed.UNDONE: "undid edit",
    Deed.REDONE: "redid edit",
    Deed.RETURNED: "went back to edit",
    Deed.IMPORTED: "took over from a file",
}


@dataclass(frozen=True, kw_only=True, slots=True)
class HistoryLine:
    """One edit in words."""

    event: int
    at: datetime
    actor: str
    said: str


@dataclass(frozen=True, kw_only=True, slots=True)
class ChangeRow:
    """One figure in both states, in words."""

    label: str
    before: str
    after: str
    change: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Side:
    """Two states of a build side by side, ready to be shown."""

    found: Comparison
    figures: tuple[ChangeRow, ...]
    more_figures: tuple[ChangeRow, ...]
    findings: tuple[FindingChange, ...]
    picture: str


def revisions(bench: Bench, build_id: int) -> tuple[Revision, ...]:
    """Return the named revisions of a build, the newest first."""
    return tuple(reversed(bench.store.revisions(build_id)))


def name_revision(
    bench: Bench, build_id: int, event: int, name: str, *, note: str, actor: str, at: datetime
) -> Revision:
    """Name a state of a build.

    Raises
    ------
    NotAllowed
        Where the name is taken, empty or too long.
    """
    return bench.store.name_revision(build_id, event, name, note=note, actor=actor, at=at)


def history(bench: Bench, build_id: int, *, most: int) -> tuple[HistoryLine, ...]:
    """Return the last edits of a build in words, the newest first."""
    return tuple(
        HistoryLine(event=event.number, at=event.at, actor=event.actor, said=_said(event))
        for event in bench.store.history(build_id, most=most)
    )


def points(bench: Bench, build_id: int, *, most: int) -> dict[int, str]:
    """Return the states that may be compared: revisions by name, and the last edits."""
    named = {each.event: each.name for each in bench.store.revisions(build_id)}
    edits = [event.number for event in bench.store.history(build_id, most=most)]
    events = sorted({*edits, *named, 1}, reverse=True)
    newest = events[0]
    return {event: _point(event, named.get(event, ""), now=event == newest) for event in events}


def side_by_side(bench: Bench, build_id: int, before: int, after: int, system: str) -> Side:
    """Return two states of a build side by side.

    Parameters
    ----------
    bench
        Where the build lies.
    build_id
        Which.
    before, after
        Numbers of events.
    system
        Units of who looks.

    Raises
    ------
    UnknownName
        Where there is no such event.
    """
    old, new = assessed_at(bench, build_id, before), assessed_at(bench, build_id, after)
    found = compared(old, new)
    shown_first = [each for each in found.figures if each.headline or each.name in ALWAYS]
    others = [each for each in found.figures if each not in shown_first]
    price = found.price
    rows = [_row(each, system) for each in shown_first]
    rows.append(
        ChangeRow(
            label="Price of the parts",
            before=price.before,
            after=price.after,
            change=price.change,
        )
    )
    return Side(
        found=found,
        figures=tuple(rows),
        more_figures=tuple(_row(each, system) for each in others),
        findings=tuple(_telling(found)),
        picture=svg(overlay(content_of(old), content_of(new), paper_width_mm=_PAPER_MM)),
    )


def comparison_data(bench: Bench, build_id: int, before: int, after: int) -> dict[str, Any]:
    """Return what differs between two states as JSON's own kinds of values, in metric units.

    Raises
    ------
    UnknownName
        Where there is no such event.
    """
    found = compared(assessed_at(bench, build_id, before), assessed_at(bench, build_id, after))
    data: dict[str, Any] = json.loads(worded(TypeAdapter(Comparison).dump_json(found).decode()))
    return data


def _telling(found: Comparison) -> Iterator[FindingChange]:
    for each in found.findings:
        if {each.before, each.after} & _TELLING:
            yield each


def _point(event: int, name: str, *, now: bool) -> str:
    said = f"{name} (edit {event})" if name else f"edit {event}"
    return f"now: {said}" if now else said


def _said(event: Event) -> str:
    deed = _DEEDS[event.deed]
    if event.about is not None:
        deed = f"{deed} {event.about}"
    places = event.places[:_MOST_PLACES]
    more = len(event.places) - len(places)
    listed = ", ".join(places)
    rest = f" and {more} more" if more > 0 else ""
    return f"{deed}: {listed}{rest}" if listed else deed


def _row(figure: FigureChange, system: str) -> ChangeRow:
    return ChangeRow(
        label=worded(figure.label, system),
        before=shown(figure.before.value, figure.before.unit, system),
        after=shown(figure.after.value, figure.after.unit, system),
        change=difference_text(figure.change, system),
    )


def difference_text(change: Reading, system: str) -> str:
    """Return a difference with its sign; a true minus."""
    if change.value is None:
        return "unknown"
    said = shown(change.value, difference_unit(change.unit), system)
    if said.startswith("-"):
        return f"−{said[1:]}"
    is_nought = not any(digit in "123456789" for digit in said)
    return said if is_nought else f"+{said}"
