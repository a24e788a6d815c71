"""Where a finding stands in the vehicle, and which of them a view shows."""

from collections.abc import Collection
from dataclasses import dataclass
from functools import lru_cache

from coachwright.drawing.content import Content
from coachwright.drawing.drafting import Mark
from coachwright.drawing.gaze import Gaze
from coachwright.drawing.scene import Point
from coachwright.drawing.shell_walls import rear_mm
from coachwright.drawing.things import Corner
from coachwright.model.finding import Finding, Outcome, Severity

REAR_DOORS = "rear doors"
"""Stands in a view's names for lamps, plate, camera and handle."""
_DISCIPLINE = "layout"


@dataclass(frozen=True, kw_only=True, slots=True)
class Located:
    """A broken finding with its number and its place.

    Attributes
    ----------
    names
        Fittings that it is about.
    at_mm
        Where it is; None where it has no one place.
    """

    number: str
    finding: Finding
    names: tuple[str, ...]
    at_mm: Corner | None
    along_aisle: bool


@lru_cache(maxsize=4)
def located(content: Content) -> tuple[Located, ...]:
    """Return the broken stops and cautions of the layout, numbered worst first.

    Parameters
    ----------
    content
        The build with its findings.

    Notes
    -----
    Findings of the other disciplines have no place in a drawing; they are on their own sheets.
    """
    found: list[Located] = []
    for finding in content.findings:
        broken = finding.outcome is Outcome.BROKEN and finding.discipline == _DISCIPLINE
        if not broken or finding.severity is Severity.NOTE:
            continue
        names, at_mm, along = _place(content, finding) or ((), None, False)
        found.append(
            Located(
                number=str(len(found) + 1),
                finding=finding,
                names=names,
                at_mm=at_mm,
                along_aisle=along,
            )
        )
    return tuple(found)


def marks_in(
    content: Content, gaze: Gaze, names: Collection[str], *, along_aisle: bool = False
) -> tuple[Mark, ...]:
    """Return the marks of the findings about what a view shows.

    Parameters
    ----------
    content
        The build with its findings.
    gaze
        From where it is looked at.
    names
        What the view shows.
    along_aisle
        With those about the ways through the living space.
    """
    return tuple(
        Mark(
            number=item.number,
            stop=item.finding.severity is Severity.STOP,
            at_mm=gaze.flat(item.at_mm),
        )
        for item in located(content)
        if item.at_mm is not None
        and ((item.along_aisle and along_aisle) or any(name in names for name in item.names))
    )


def _place(content: Content, finding: Finding) -> tuple[tuple[str, ...], Corner, bool] | None:
    subject = finding.subject
    aisle = _aisle(content, subject)
    if aisle is not None:
        return (), aisle, True
    names = _named(content, subject)
    if not names:
        return _on_the_doors(content, subject)
    for clash in content.layout.clashes:
        both = {clash.one, clash.other}
        if both <= set(names) or (names[0] in both and f"{clash.other}" in finding.detail):
            where = clash.overlap.where
            return names, _middle(where.low_mm, where.high_mm), False
    for fit in content.layout.shell_fits:
        if fit.name == names[0] and fit.spare_mm < 0 and "shell" in finding.rule:
            return names, fit.corner_mm, False
    for zone in content.layout.zones:
        if zone.fitting == names[0] and finding.detail.startswith(zone.purpose):
            return names, _middle(zone.space.low_mm, zone.space.high_mm), False
    thing = content.thing(names[0])
    return names, _middle(thing.low_mm, thing.high_mm), False


def _aisle(content: Content, subject: str) -> Corner | None:
    """Return the narrowest place of a way, where the subject is one."""
    found = [
        aisle
        for aisle in content.layout.aisles
        if subject in (aisle.way, f"{aisle.way}, {aisle.level}")
    ]
    if not found:
        return None
    aisle = min(found, key=lambda aisle: aisle.passage.width_mm)
    middle = _between(aisle.passage.from_mm, aisle.passage.to_mm)
    return (*middle, (aisle.from_mm + aisle.to_mm) / 2)


def _on_the_doors(content: Content, subject: str) -> tuple[tuple[str, ...], Corner, bool] | None:
    """Return the place of a lamp, plate, camera or handle on the closed rear doors."""
    vehicle = content.build.vehicle
    for zone in vehicle.rear_end.zones:
        if zone.name == subject or zone.kind in subject.split():
            middle = _between(zone.from_mm, zone.to_mm)
            return (REAR_DOORS,), (rear_mm(vehicle), *middle), False
    return None


def _named(content: Content, subject: str) -> tuple[str, ...]:
    """Return the fittings named in a subject, in the order in which they stand there."""
    if content.has_thing(subject):
        return (subject,)
    words = subject.replace(",", " ").replace(":", " ").replace(".", " ").split()
    return tuple(word for word in words if content.has_thing(word))


def _between(one: Point, other: Point) -> Point:
    return ((one[0] + other[0]) / 2, (one[1] + other[1]) / 2)


def _middle(low: Corner, high: Corner) -> Corner:
    return ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2)
