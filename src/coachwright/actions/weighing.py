"""A weighbridge ticket: entered, changed, taken away; and where it says the model is wrong."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from coachwright.actions.benching import Bench, OnBench
from coachwright.errors import BuildFileError, Fault
from coachwright.store.edits import Put, Take, parsed
from coachwright.store.records import Attachment, Change
from coachwright.units import told

_TICKET = "ticket"
_WHEELS = "wheels"
NOTE = "weighbridge ticket"
"""What is written beside a photograph of one."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Question:
    """One line of the form.

    Attributes
    ----------
    path
        Where the answer stands within the ticket.
    hint
        The form of an answer, metric and US customary.
    usual
        What an empty line is taken for; empty where it is taken for nothing.
    """

    path: tuple[str, ...]
    label: str
    hint: tuple[str, str]
    usual: str = ""

    @property
    def id(self) -> str:
        """The question's name."""
        return ".".join(self.path)


_MASS = ("such as 2440 kg", "such as 5380 lb")
_WHEEL = ("such as 655 kg", "such as 1444 lb")
_SHARE = ("such as 40 %", "such as 40 %")

READINGS = (
    Question(path=("total",), label="Whole vehicle", hint=_MASS),
    Question(path=("front",), label="Front axle", hint=_WHEEL),
    Question(path=("rear",), label="Rear axle", hint=_WHEEL),
    Question(
        path=("scale_error",),
        label="One reading is right within ±",
        hint=("such as 10 kg", "such as 20 lb"),
        usual="10 kg",
    ),
)
WHEELS = tuple(
    Question(
        path=(_WHEELS, f"{axle}_{side}"), label=f"{axle.capitalize()} {side} wheel", hint=_WHEEL
    )
    for axle in ("front", "rear")
    for side in ("left", "right")
)
TANKS = (
    Question(path=("fuel",), label="Fuel tank filled", hint=_SHARE, usual="100 %"),
    Question(path=("fresh",), label="Fresh water filled", hint=_SHARE, usual="0 %"),
    Question(path=("grey",), label="Grey water filled", hint=_SHARE, usual="0 %"),
    Question(path=("gas",), label="Gas filled", hint=_SHARE, usual="100 %"),
)
QUESTIONS = (*READINGS, *WHEELS, *TANKS)


@dataclass(frozen=True, kw_only=True, slots=True)
class Answers:
    """A ticket as somebody has typed it.

    Attributes
    ----------
    day
        Of the weighing, such as 2026-11-12.
    texts
        By the id of the question; an empty one was not answered.
    aboard
        Names of the travellers who sat in it.
    cargo
        Cargo and luggage were aboard.
    """

    day: str
    texts: Mapping[str, str]
    aboard: tuple[str, ...]
    cargo: bool


def answers(work: OnBench, *, today: date) -> Answers:
    """Return what the form begins with: the ticket as the sheet has it, or nothing yet.

    Parameters
    ----------
    work
        The build.
    today
        Day of a new ticket.
    """
    kept: Mapping[str, Any] = parsed(work.text).get(_TICKET, {})
    texts = {}
    for question in QUESTIONS:
        value: Any = kept
        for step in question.path:
            value = value.get(step, {}) if isinstance(value, Mapping) else {}
        texts[question.id] = value if isinstance(value, str) else ""
    ticket = work.build.ticket
    return Answers(
        day=(ticket.date if ticket else today).isoformat(),
        texts=texts,
        aboard=ticket.aboard if ticket else (),
        cargo=bool(ticket and ticket.cargo_aboard),
    )


def travellers(work: OnBench) -> tuple[str, ...]:
    """Return who may have sat in it."""
    return tuple(each.name for each in work.build.brief.travellers)


def entered(given: Answers) -> Change:
    """Return the edit that keeps a ticket in the sheet, in place of the one before.

    Parameters
    ----------
    given
        What was typed; quantities with their units, which the sheet's own check reads.

    Raises
    ------
    BuildFileError
        Where there is no day or no reading of the whole vehicle, or only some of the wheels.
    """
    faults = tuple(_faults(given))
    if faults:
        raise BuildFileError(faults)
    table: dict[str, Any] = {"date": date.fromisoformat(given.day.strip())}
    for question in QUESTIONS:
        text = given.texts.get(question.id, "").strip()
        if text and question.path[0] == _WHEELS:
            table.setdefault(_WHEELS, {})[question.path[1]] = text
        elif text:
            table[question.path[0]] = text
    if given.aboard:
        table["aboard"] = list(given.aboard)
    if given.cargo:
        table["cargo_aboard"] = True
    return (Put(path=(_TICKET,), value=table),)


def taken_away() -> Change:
    """Return the edit that takes the ticket out of the sheet."""
    return (Take(path=(_TICKET,)),)


def _faults(given: Answers) -> Iterator[Fault]:
    try:
        date.fromisoformat(given.day.strip())
    except ValueError:
        yield _fault("ticket.date", given.day, "a day, such as 2026-11-12", "give the day")
    if not given.texts.get("total", "").strip():
        yield _fault(
            "ticket.total", "", "a mass, such as 2440 kg", "weigh the whole vehicle at once"
        )
    wheels = [given.texts.get(each.id, "").strip() for each in WHEELS]
    if any(wheels) and not all(wheels):
        yield _fault(
            "ticket.wheels",
            f"{sum(map(bool, wheels))} of 4",
            "all four wheels or none",
            "weigh the other wheels too, or leave all four empty",
        )


def _fault(field: str, found: str, allowed: str, action: str) -> Fault:
    return Fault(
        file="the sheet", field=field, found=found or "nothing", allowed=allowed, action=action
    )


# ------------------------------------------------------------------------ what the scales said


def told_by_the_scales(work: OnBench) -> tuple[str, ...]:
    """Return in sentences where the scales say that the model is wrong; quantities are told.

    Parameters
    ----------
    work
        The build; without a ticket there is nothing to say.
    """
    check, ticket = work.assessment.weights.ticket, work.build.ticket
    if check is None or ticket is None:
        return ()
    outside = [row for row in check.rows if not row.within]
    found = [
        f"{row.subject.capitalize()}: {told(abs(row.difference_kg), 'kg')} "
        f"{'heavier' if row.difference_kg > 0.0 else 'lighter'} on the scales than computed, and "
        f"tolerances and scale allow {told(row.bound_kg, 'kg')}. Something is aboard or missing "
        "that the build does not know, weighs otherwise, or stands elsewhere."
        for row in outside
    ]
    if not outside:
        found.append(
            "Every reading is as near to the computed one as tolerances and the scale allow."
        )
    if ticket.front_kg is not None and ticket.rear_kg is not None:
        apart_kg = ticket.front_kg + ticket.rear_kg - ticket.total_kg
        allowed_kg = math.sqrt(3) * ticket.scale_error_kg
        if abs(apart_kg) > allowed_kg:
            found.append(
                f"The axles together are {told(abs(apart_kg), 'kg')} "
                f"{'more' if apart_kg > 0.0 else 'less'} than the whole vehicle, and three "
                f"readings of this scale may be {told(allowed_kg, 'kg')} apart: weigh again, on "
                "level ground."
            )
    return tuple(found)


# -------------------------------------------------------------------------------- photographs


def photographs(bench: Bench, build_id: int) -> tuple[Attachment, ...]:
    """Return the photographs and scans of tickets that are kept with a build."""
    return tuple(each for each in bench.store.attachments(build_id) if each.note.startswith(NOTE))


def attach_photograph(
    bench: Bench, work: OnBench, content: bytes, *, name: str, actor: str, at: datetime
) -> Attachment:
    """Keep a photograph or scan of a ticket with the build.

    Raises
    ------
    NotAllowed
        Where it is empty, too large, or neither JPEG, PNG, WebP nor PDF by its first bytes.
    """
    ticket = work.build.ticket
    note = f"{NOTE} of {ticket.date.isoformat()}" if ticket else NOTE
    return bench.store.attach(work.build_id, content, name=name, note=note, actor=actor, at=at)


def photograph(bench: Bench, build_id: int, digest: str) -> tuple[Attachment, bytes]:
    """Return a file that is kept with a build, and its bytes.

    Raises
    ------
    UnknownName
        Where nothing of that digest is kept with this build.
    """
    content = bench.store.attachment(build_id, digest)
    kept = {each.digest: each for each in bench.store.attachments(build_id)}
    return kept[digest], content
