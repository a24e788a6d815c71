"""Where a finding stands in the vehicle, and which of them a view shows."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass

from coachwright.drawing.content import Content
from coachwright.drawing.drafting import Mark
from coachwright.drawing.gaze import Gaze
from coachwright.drawing.scene import Point
from coachwright.drawing.things import Corner
from coachwright.model.finding import Finding, Outcome, Severity


@dataclass(frozen=True, kw_only=True, slots=True)
class Located:
    """A broken finding with its number and its place.

    Attributes
    ----------
    names
        Fittings that it is about.
    at_mm
        Where it is.
    """

    number: str
    finding: Finding
    names: tuple[str, ...]
    at_mm: Corner
    along_aisle: bool


def located(content: Content) -> tuple[Located, ...]:
    """Return the broken stops and cautions that have a place, numbered worst first.

    Parameters
    ----------
    content
        The build with its findings.
    """
    found: list[Located] = []
    for finding in content.findings:
        if finding.outcome is not Outcome.BROKEN or finding.severity is Severity.NOTE:
            continue
        place = _place(content, finding)
        if place is not None:
            names, at_mm, along = place
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
        if (item.along_aisle and along_aisle) or any(name in names for name in item.names)
    )


def _place(content: Content, finding: Finding) -> tuple[tuple[str, ...], Corner, bool] | None:
    subject = finding.subject
    for aisle in content.layout.aisles:
        if subject.startswith(aisle.way):
            middle = _between(aisle.passage.from_mm, aisle.passage.to_mm)
            return (), (*middle, (aisle.from_mm + aisle.to_mm) / 2), True
    names = tuple(_named(content, subject))
    if not names:
        return None
    for clash in content.layout.clashes:
        if set(names) >= {clash.one, clash.other} or {clash.one, clash.other} == set(names):
            where = clash.overlap.where
            return names, _middle(where.low_mm, where.high_mm), False
    for fit in content.layout.shell_fits:
        if fit.name == names[0] and fit.spare_mm < 0 and "shell" in finding.rule:
            return names, fit.corner_mm, False
    for zone in content.layout.zones:
        if zone.fitting == names[0] and zone.purpose in f"{subject} {finding.detail}":
            return names, _middle(zone.space.low_mm, zone.space.high_mm), False
    thing = next(thing for thing in content.things if thing.name == names[0])
    return names, _middle(thing.low_mm, thing.high_mm), False


def _named(content: Content, subject: str) -> Iterator[str]:
    """Yield the fittings named in a subject, in the order in which they stand there."""
    words = subject.replace(",", " ").replace(":", " ").split()
    known = {thing.name for thing in content.things}
    for word in words:
        if word in known:
            yield word
    if subject in known and subject not in words:
        yield subject


def _between(one: Point, other: Point) -> Point:
    return ((one[0] + other[0]) / 2, (one[1] + other[1]) / 2)


def _middle(low: Corner, high: Corner) -> Corner:
    return ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2)
