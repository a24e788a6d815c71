"""The brief as a form: what is asked, what stands there, what it drives, and how it changes."""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from pydantic import BaseModel

from coachwright import units
from coachwright.actions.benching import OnBench
from coachwright.actions.brief_questions import CHAPTERS, Chapter, Question
from coachwright.actions.paths import Steps
from coachwright.assess import Assessment
from coachwright.errors import BadInput, Fault
from coachwright.model.finding import Finding
from coachwright.store.differences import entry_name, place_of
from coachwright.store.edits import Edit, Put, Take, parsed
from coachwright.unit_table import KINDS

_SPELLINGS: Mapping[str, Mapping[str, str]] = {
    "days": {"days": "d", "day": "d", "week": "weeks"},
    "time_use": {"h": "h/day", "hours": "h/day", "min": "min/day", "minutes": "min/day"},
    "temperature": {"°C": "degC", "°F": "degF", "C": "degC", "F": "degF"},
    "fraction": {"per cent": "%", "percent": "%"},
    "water_use": {"L": "L/day", "litres": "L/day", "US gal": "US gal/day"},
    "energy_use": {"Wh": "Wh/day", "kWh": "kWh/day"},
}
"""Units as customers write them → as files do; only where nothing else can be meant."""
_SYMBOLS = {"degC": "°C", "degF": "°F", "d": "days"}
"""Units as files write them → as they are shown, where that is not the same."""
_YES = "true"


@dataclass(frozen=True, kw_only=True, slots=True)
class Driven:
    """Something that follows from an answer: a figure or a rule, and how it stands."""

    name: str
    label: str
    said: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Answer:
    """One question and what is answered now.

    Attributes
    ----------
    path
        Where the answer stands in the sheet.
    text
        As the sheet holds it, or the usual where it holds none; empty for left open.
    reads
        The same in the units of who looks, where the sheet has others.
    """

    question: Question
    path: Steps
    text: str
    reads: str
    choices: tuple[tuple[str, str], ...]
    drives: tuple[Driven, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Sheaf:
    """The answers of one chapter, or of one entry of its list.

    Attributes
    ----------
    name
        Of the entry; empty where the questions are asked once.
    path
        Of the entry.
    """

    chapter: Chapter
    name: str
    path: Steps
    answers: tuple[Answer, ...]


def sheaves(work: OnBench, system: str) -> tuple[Sheaf, ...]:
    """Return every question with its answer.

    Parameters
    ----------
    work
        The build that lies open.
    system
        Units of who looks: ``"metric"`` or ``"us"``.
    """
    reading = _Reading(data=parsed(work.text), work=work, system=system)
    return tuple(sheaf for chapter in CHAPTERS for sheaf in _sheaves(chapter, reading))


def answer_edit(question: Question, path: Steps, typed: str, text: str) -> tuple[Edit, ...]:
    """Return the edits that an answer comes down to; none where nothing changes.

    Parameters
    ----------
    question
        Which.
    path
        Where its answer stands.
    typed
        What was answered.
    text
        The sheet's text.

    Raises
    ------
    BadInput
        Where it is no answer to the question; says what would be.
    """
    stood = _at(parsed(text), path)
    if not typed.strip():
        if not question.optional:
            raise BadInput([_fault(question, "nothing", "an answer", "write one")])
        return () if stood is None else (Take(path=path),)
    value = _value(question, typed)
    if value == stood and type(value) is type(stood):
        return ()
    if isinstance(path[-1], int):
        whole = list(_at(parsed(text), path[:-1]))
        whole[path[-1]] = value
        return (Put(path=path[:-1], value=whole),)
    return (Put(path=path, value=value),)


def must_have_edit(facet: str, wanted: bool, text: str) -> tuple[Edit, ...]:
    """Return the edit that makes a facet a must, or lets go of it."""
    path = ("brief", "must_have")
    stood = [str(each) for each in _at(parsed(text), path) or ()]
    others = [each for each in stood if each != facet]
    now = [*others, facet] if wanted else others
    return () if sorted(now) == sorted(stood) else (Put(path=path, value=now),)


@dataclass(frozen=True, kw_only=True, slots=True)
class _Reading:
    data: Mapping[str, Any]
    work: OnBench
    system: str


def _sheaves(chapter: Chapter, reading: _Reading) -> Iterator[Sheaf]:
    if not chapter.each:
        yield _sheaf(chapter, "", (), reading)
        return
    entries = _at(reading.data, chapter.each) or ()
    for index in range(len(entries)):
        name = entry_name(entries, index)
        yield _sheaf(chapter, name or f"{index + 1}", (*chapter.each, name or index), reading)


def _sheaf(chapter: Chapter, name: str, path: Steps, reading: _Reading) -> Sheaf:
    return Sheaf(
        chapter=chapter,
        name=name,
        path=path,
        answers=tuple(
            _answer(question, (*path, *question.steps), reading) for question in chapter.questions
        ),
    )


def _answer(question: Question, path: Steps, reading: _Reading) -> Answer:
    stood = _at(reading.data, path)
    held, field = _held(reading.work.sheet, path)
    text = _text(stood if stood is not None else held, question)
    assessment = reading.work.assessment
    return Answer(
        question=question,
        path=path,
        text=text,
        reads=_reads(held, field, text, reading.system) if question.kind == "quantity" else "",
        choices=_seats(reading.work) if question.kind == "seat" else question.choices,
        drives=tuple(_driven(question, assessment, reading.system)),
    )


def _driven(question: Question, assessment: Assessment, system: str) -> Iterator[Driven]:
    for name in question.drives:
        for figure in assessment.figures:
            if figure.name == name:
                label = units.worded(figure.label, system)
                yield Driven(
                    name=name, label=label, said=units.shown(figure.value, figure.unit, system)
                )
        about = [finding for finding in assessment.findings if finding.rule == name]
        if about:
            yield _rule(about[0], system)


def _rule(worst: Finding, system: str) -> Driven:
    """Return a rule as something driven; findings stand worst first."""
    title = units.worded(worst.title, system)
    return Driven(name=worst.rule, label=title, said=str(worst.outcome))


def _seats(work: OnBench) -> tuple[tuple[str, str], ...]:
    places = tuple(
        (place.name, f"{place.name} ({place.belt} belt)")
        for place in work.assessment.wishes.places
        if place.usable
    )
    return (("", "no seat with a belt"), *places)


def _reads(held: Any, field: str, text: str, system: str) -> str:
    unit = units.unit_of(field)
    if not isinstance(held, float) or unit is None or not text:
        return ""
    said = units.shown(held, unit, system)
    return "" if _same(said, text) else said


def _same(said: str, text: str) -> bool:
    """Say whether two texts have the same unit, so that one of them is enough."""
    written = text.split(" ", 1)[-1]
    return said.split(" ", 1)[-1] == _SYMBOLS.get(written, written)


def _text(value: Any, question: Question) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return _YES if value else ""
    if isinstance(value, list | tuple):
        return "\n".join(str(each) for each in value)
    if isinstance(value, float) and question.quantity:
        return units.written(value, question.quantity)
    return value.strip() if isinstance(value, str) else str(value)


def _held(sheet: BaseModel, path: Steps) -> tuple[Any, str]:
    """Return what the record holds at a path, and the field's name with its unit."""
    here: Any = sheet
    field = ""
    for step in path:
        if isinstance(here, BaseModel):
            names = {info.alias or name: name for name, info in type(here).model_fields.items()}
            field = names[str(step)]
            here = getattr(here, field)
        elif isinstance(step, int):
            here = here[step]
        else:
            here = next(each for each in here if each.name == step)
    return here, field


def _at(data: Any, path: Steps) -> Any:
    here = data
    for step in path:
        found: Any = place_of(here, step) if isinstance(here, list) else step
        try:
            here = here[found]
        except (LookupError, TypeError):
            return None
    return here


def _value(question: Question, typed: str) -> Any:
    plain = typed.strip()
    if question.kind == "quantity":
        return _quantity(question, plain)
    if question.kind == "truth":
        return plain == _YES
    if question.kind == "texts":
        return [line.strip() for line in plain.splitlines() if line.strip()]
    if question.kind == "whole":
        if not plain.isdecimal():
            raise BadInput([_fault(question, plain, "a whole number", "count them")])
        return int(plain)
    if question.kind == "date":
        try:
            return datetime.date.fromisoformat(plain)
        except ValueError:
            shape = "a day as 2027-04-15"
            raise BadInput([_fault(question, plain, shape, "write year, month, day")]) from None
    return plain


def _quantity(question: Question, plain: str) -> str:
    spelt = plain
    for told, meant in _SPELLINGS.get(question.quantity, {}).items():
        head = plain.removesuffix(told)
        if head != plain and head.rstrip()[-1:].isdecimal():
            spelt = f"{head.strip()} {meant}"
    found = units.parse(spelt, question.quantity)
    if isinstance(found, units.QuantityFault):
        example = KINDS[question.quantity].example
        fault = _fault(question, found.found, found.allowed, f'{found.action}, as "{example}"')
        raise BadInput([fault])
    return spelt


def _fault(question: Question, found: str, allowed: str, action: str) -> Fault:
    return Fault(
        file="the brief", field=question.asks, found=found, allowed=allowed, action=action
    )
