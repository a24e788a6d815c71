"""The order book: what stands on the card of each build, and what a new one starts from."""

from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path

from coachwright.actions.benching import Bench, lay_open
from coachwright.actions.boarding import thumbnail
from coachwright.actions.checking import Verdict, verdict
from coachwright.actions.demos import demo, demos
from coachwright.actions.opening import complete
from coachwright.actions.starting import starter
from coachwright.assess import Assessment, assess
from coachwright.catalogue.loading import Catalogue
from coachwright.electrics.model import Independence
from coachwright.model.finding import Finding, Outcome, Severity
from coachwright.store.editing import read_sheet
from coachwright.store.edits import Put, edited
from coachwright.store.records import BuildEntry
from coachwright.units import shown, shown_number, worded

_YEARS = "living"
"""Whose findings are not open while nobody has waited for the years."""
_PROMISE = "living.nine-of-ten-days"
_FACTS = (
    ("weights.payload-left", "Payload left"),
    ("weights.rear-axle-left", "Left on the rear axle"),
    ("electrics.independence-summer", "Off grid in summer"),
    ("electrics.independence-winter", "Off grid in winter"),
    (_PROMISE, "Nine of ten stays"),
    ("water.days", "On water"),
)
_MOST_CARDS = 256


@dataclass(frozen=True, kw_only=True, slots=True)
class Fact:
    """One headline figure on a card."""

    label: str
    value: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Card:
    """One build, as it stands in the order book.

    Attributes
    ----------
    picture
        Small plan, as SVG.
    worst
        The worst finding that nobody has accepted: its severity or outcome, and its title; both
        empty where there is none.
    """

    name: str
    customer: str
    vehicle: str
    revision: str
    story: str
    picture: str
    facts: tuple[Fact, ...]
    verdict: Verdict
    worst_kind: str
    worst: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Beginning:
    """Something that a new build can start from: ``"demo"`` or ``"standard"``, and its id."""

    kind: str
    id: str
    name: str


def beginnings(catalogue: Catalogue) -> tuple[Beginning, ...]:
    """Return what a new build can start from: demonstration and standard builds."""
    return (
        *(Beginning(kind="demo", id=each.id, name=each.name) for each in demos()),
        *(
            Beginning(kind="standard", id=each, name=catalogue.standard(each).name)
            for each in catalogue.standard_ids()
        ),
    )


def text_of(beginning: Beginning, catalogue: Catalogue) -> str:
    """Return the sheet that a new build starts with."""
    if beginning.kind == "demo":
        return demo(beginning.id).text
    text = starter(Path(f"{beginning.id}.toml"), catalogue, "", "", beginning.id)
    return edited(text, (Put(path=("name",), value=beginning.name),))


def card_of(bench: Bench, entry: BuildEntry, system: str) -> Card:
    """Return the card of a build in the store.

    Raises
    ------
    CoachwrightError
        Where the catalogue no longer has what it names.
    """
    work = lay_open(bench, entry.build_id)
    card = _card_of_sheet(work.text, bench.catalogue, system)
    kind, worst = _worst(work.assessment, system)
    return replace(
        card,
        facts=_facts(work.assessment, system),
        verdict=work.verdict,
        worst_kind=kind,
        worst=worst,
    )


def card_of_beginning(beginning: Beginning, catalogue: Catalogue, system: str) -> Card:
    """Return the card of something that a new build can start from."""
    return _card_of_sheet(text_of(beginning, catalogue), catalogue, system)


def matches(entry: BuildEntry, search: str) -> bool:
    """Say whether a build's name or customer holds all words of a search."""
    text = f"{entry.name} {entry.customer} {entry.revision}".lower()
    return all(word in text for word in search.lower().split())


@lru_cache(maxsize=_MOST_CARDS)
def _card_of_sheet(text: str, catalogue: Catalogue, system: str) -> Card:
    build = complete(read_sheet(text), "the sheet", catalogue)
    assessment = assess(build)
    kind, worst = _worst(assessment, system)
    summary = assessment.summary
    return Card(
        name=summary.name,
        customer=summary.customer,
        vehicle=summary.vehicle_name,
        revision=summary.revision,
        story=" ".join(build.story.split()),
        picture=thumbnail(assessment, system),
        facts=_facts(assessment, system),
        verdict=verdict(assessment),
        worst_kind=kind,
        worst=worst,
    )


def _facts(assessment: Assessment, system: str) -> tuple[Fact, ...]:
    known = {
        figure.name: figure
        for figure in assessment.figures
        if figure.name != _PROMISE or figure.value is not None
    }
    days = {
        "electrics.independence-summer": assessment.electrics.summer.independence,
        "electrics.independence-winter": assessment.electrics.winter.independence,
    }
    return tuple(
        Fact(
            label=label,
            value=_days(days[name], system)
            if name in days
            else _minus(shown(known[name].value, known[name].unit, system)),
        )
        for name, label in _FACTS
        if name in known and not (name in days and _PROMISE in known)
    )


def _days(found: Independence, system: str) -> str:
    """Return days of independence as their bounds: a card that names one number promises it."""
    if found.low_d is None or found.high_d is None:
        return shown(found.days_d, "d", system)
    low = shown(found.low_d, "d", system)
    if found.ends_at_season:
        return f"{low} or more"
    return f"{shown_number(found.low_d, 'd', system)[0]} to {shown(found.high_d, 'd', system)}"


def _worst(assessment: Assessment, system: str) -> tuple[str, str]:
    told = assessment.living.is_told
    for finding in assessment.findings:
        if _open(finding) and (told or finding.discipline != _YEARS):
            broken = finding.outcome is Outcome.BROKEN
            kind = str(finding.severity if broken else finding.outcome)
            return kind, worded(finding.title, system)
    return "", ""


def _open(finding: Finding) -> bool:
    if finding.outcome is Outcome.UNKNOWN:
        return finding.severity is not Severity.NOTE and finding.accepted is None
    return finding.outcome is Outcome.BROKEN and (
        finding.severity is Severity.STOP
        or (finding.severity is Severity.CAUTION and finding.accepted is None)
    )


def _minus(text: str) -> str:
    return f"−{text[1:]}" if text.startswith("-") else text
