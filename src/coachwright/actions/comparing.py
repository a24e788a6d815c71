"""Compare two builds: what was exchanged, and what it changed."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Literal

from coachwright.actions.opening import open_build, open_standard
from coachwright.assess import HEADLINE, Almanac, Assessment, BuildSummary, Stages, assess
from coachwright.catalogue.loading import Catalogue
from coachwright.errors import CallError
from coachwright.model.build import Build, FinishLayer, Fitted
from coachwright.model.finding import Finding
from coachwright.model.money import Money
from coachwright.model.working import Figure
from coachwright.units import told
from coachwright.wishes.model import PartsPrice

_SAME_MM = 0.5
"""Two corners closer than this on every axis are the same place."""
ABSENT = "not there"


@dataclass(frozen=True, kw_only=True, slots=True)
class FittingChange:
    """One fitting or finish that is not the same in both builds.

    Attributes
    ----------
    change
        ``added``, ``removed``, ``exchanged`` (another part), ``moved``, or ``altered`` (mounting,
        contents, use and the like).
    before, after
        The part's id, the place, or which fields differ.
    """

    fitting: str
    change: Literal["added", "removed", "exchanged", "moved", "altered"]
    before: str
    after: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Reading:
    """A value in `unit`; None where it is unknown."""

    value: float | None
    unit: str


@dataclass(frozen=True, kw_only=True, slots=True)
class FigureChange:
    """One figure in both builds; `change` is after less before.

    Attributes
    ----------
    headline
        One of the figures that a designer keeps in view.
    """

    name: str
    label: str
    before: Reading
    after: Reading
    change: Reading
    headline: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class FindingChange:
    """One rule on one subject with another outcome: met, broken, unknown, not there."""

    rule: str
    title: str
    subject: str
    severity: str
    before: str
    after: str


@dataclass(frozen=True, kw_only=True, slots=True)
class PriceChange:
    """What the parts cost together, in words; unknown where a price is missing."""

    before: str
    after: str
    change: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Comparison:
    """Two builds and what differs, from the first to the second."""

    before: BuildSummary
    after: BuildSummary
    fittings: tuple[FittingChange, ...]
    figures: tuple[FigureChange, ...]
    price: PriceChange
    findings: tuple[FindingChange, ...]


def compare(
    first: Path, second: Path | None, catalogue: Catalogue, almanac: Almanac | None = None
) -> Comparison:
    """Compare two builds, or one with the standard build that it names.

    Parameters
    ----------
    first, second
        Build files; without a second, the first is compared with its standard.
    catalogue
        Where their vehicles and parts are.
    almanac
        Of the weather; without one there are no years.

    Raises
    ------
    BuildFileError
        Where one of them has faults.
    CallError
        Where the only build names no standard.
    """
    opened = open_build(first, catalogue)
    stages = Stages()
    if second is not None:
        after = open_build(second, catalogue).build
        return compared(assess(opened.build, stages, almanac), assess(after, stages, almanac))
    standard = open_standard(opened.sheet, catalogue)
    if standard is None:
        raise CallError(
            f"{first} names no standard build to compare with; name a second build file"
        )
    found = compared(assess(standard, stages, almanac), assess(opened.build, stages, almanac))
    written = catalogue.standard(opened.sheet.standard)
    before = replace(found.before, name=written.name, revision=written.revision)
    return replace(found, before=before)


def compared(before: Assessment, after: Assessment) -> Comparison:
    """Return what differs between two assessments."""
    return Comparison(
        before=before.summary,
        after=after.summary,
        fittings=(
            *_fitting_changes(before.build, after.build),
            *_finish_changes(before.build, after.build),
            *_spare_changes(before.build, after.build),
        ),
        figures=tuple(_figure_changes(before, after)),
        price=_price_change(before.wishes.price, after.wishes.price),
        findings=tuple(_finding_changes(before.findings, after.findings)),
    )


def _fitting_changes(before: Build, after: Build) -> Iterator[FittingChange]:
    there = {fitted.name: fitted for fitted in before.fittings}
    for fitted in after.fittings:
        old = there.pop(fitted.name, None)
        if old is None:
            yield _change(fitted.name, "added", "", fitted.part.id)
        else:
            yield from _one_fitting(old, fitted)
    for name, fitted in there.items():
        yield _change(name, "removed", fitted.part.id, "")


def _one_fitting(old: Fitted, new: Fitted) -> Iterator[FittingChange]:
    if old.part.id != new.part.id:
        yield _change(new.name, "exchanged", old.part.id, new.part.id)
    elif old.part != new.part:
        yield _change(new.name, "altered", old.part.id, f"{new.part.id}, with other figures")
    turned = old.fitting.turn_deg != new.fitting.turn_deg
    mirrored = old.fitting.mirror != new.fitting.mirror
    apart = any(abs(a - b) > _SAME_MM for a, b in zip(old.at_mm, new.at_mm, strict=True))
    if apart or turned or mirrored:
        yield _change(new.name, "moved", _place(old), _place(new))
    same = {"name", "part", "at_mm", "turn_deg", "mirror", "note"}
    other = [
        name
        for name in type(new.fitting).model_fields
        if name not in same and getattr(old.fitting, name) != getattr(new.fitting, name)
    ]
    if other:
        fields = type(new.fitting).model_fields
        yield _change(new.name, "altered", "", ", ".join(fields[n].alias or n for n in other))


def _finish_changes(before: Build, after: Build) -> Iterator[FittingChange]:
    old, new = _layers(before.finishes), _layers(after.finishes)
    for layer in sorted(new - old):
        yield _change(layer[0], "added", "", layer[1])
    for layer in sorted(old - new):
        yield _change(layer[0], "removed", layer[1], "")


def _spare_changes(before: Build, after: Build) -> Iterator[FittingChange]:
    if before.vehicle_spare_removed != after.vehicle_spare_removed:
        change: Literal["added", "removed"] = "removed" if after.vehicle_spare_removed else "added"
        yield _change("the vehicle's own spare wheel", change, "", "")


def _layers(layers: tuple[FinishLayer, ...]) -> set[tuple[str, str]]:
    return {
        (
            f"finish on {layer.finish.surface}",
            f"{layer.part.id}, {told(layer.finish.area_m2, 'm2')}",
        )
        for layer in layers
    }


def _change(
    fitting: str,
    change: Literal["added", "removed", "exchanged", "moved", "altered"],
    before: str,
    after: str,
) -> FittingChange:
    return FittingChange(fitting=fitting, change=change, before=before, after=after)


def _place(fitted: Fitted) -> str:
    corner = ", ".join(told(place, "mm") for place in fitted.at_mm)
    turn = f", turned {fitted.fitting.turn_deg:g} deg" if fitted.fitting.turn_deg else ""
    return f"at {corner}{turn}{', mirrored' if fitted.fitting.mirror else ''}"


def _figure_changes(before: Assessment, after: Assessment) -> Iterator[FigureChange]:
    there = {figure.name: figure for figure in before.figures}
    for figure in after.figures:
        old = there.pop(figure.name, None)
        if old is None or old.value != figure.value:
            yield _figure_change(figure, old, figure)
    for figure in there.values():
        yield _figure_change(figure, figure, None)


def _figure_change(named: Figure, old: Figure | None, new: Figure | None) -> FigureChange:
    before = old.value if old is not None else None
    after = new.value if new is not None else None
    change = None if before is None or after is None else after - before
    return FigureChange(
        name=named.name,
        label=named.label,
        before=Reading(value=before, unit=named.unit),
        after=Reading(value=after, unit=named.unit),
        change=Reading(value=change, unit=named.unit),
        headline=named.name in HEADLINE,
    )


def _price_change(before: PartsPrice, after: PartsPrice) -> PriceChange:
    old, new = before.price_minor, after.price_minor
    if old is None or new is None or before.currency != after.currency:
        change = "unknown"
    else:
        sign = "-" if new < old else "+"
        change = f"{sign}{_amount(abs(new - old), after.currency)}"
    return PriceChange(
        before=_amount(old, before.currency), after=_amount(new, after.currency), change=change
    )


def _amount(amount_minor: int | None, currency: str) -> str:
    if amount_minor is None:
        return "unknown"
    return Money(amount_minor=amount_minor, currency=currency).shown()


def _finding_changes(
    before: tuple[Finding, ...], after: tuple[Finding, ...]
) -> Iterator[FindingChange]:
    there = _told_apart(before)
    for key, finding in _told_apart(after).items():
        old = there.pop(key, None)
        if old is None or old.outcome is not finding.outcome:
            old_outcome = ABSENT if old is None else str(old.outcome)
            yield _finding_change(finding, old_outcome, str(finding.outcome))
    for finding in there.values():
        yield _finding_change(finding, str(finding.outcome), ABSENT)


def _told_apart(findings: tuple[Finding, ...]) -> dict[tuple[str, str, int], Finding]:
    """Return findings by rule, subject and place: a rule may judge one subject repeatedly."""
    times: Counter[tuple[str, str]] = Counter()
    found: dict[tuple[str, str, int], Finding] = {}
    for finding in findings:
        key = (finding.rule, finding.subject)
        found[(*key, times[key])] = finding
        times[key] += 1
    return found


def _finding_change(finding: Finding, before: str, after: str) -> FindingChange:
    return FindingChange(
        rule=finding.rule,
        title=finding.title,
        subject=finding.subject,
        severity=str(finding.severity),
        before=before,
        after=after,
    )
