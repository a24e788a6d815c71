"""Check a build: open it, assess it, and lay the result out for other programs."""

from collections import Counter
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

from pydantic import TypeAdapter

from coachwright.actions.opening import open_build
from coachwright.assess import Almanac, Assessment, BuildSummary, assess
from coachwright.catalogue.loading import Catalogue
from coachwright.electrics.model import Electrics
from coachwright.layout.model import Layout
from coachwright.living.model import Living
from coachwright.model.finding import Finding, Outcome, broken_stops
from coachwright.model.working import Figure
from coachwright.road.model import Road
from coachwright.water.model import Water
from coachwright.weights.model import Weights
from coachwright.wishes.model import Wishes


@dataclass(frozen=True, kw_only=True, slots=True)
class Verdict:
    """How many findings there are of each kind.

    Attributes
    ----------
    stops
        Broken stops; accepted ones are counted too, for a stop stays broken.
    cautions, notes
        Broken cautions and notes, accepted ones too.
    accepted
        Broken findings that someone accepted with a reason.
    """

    stops: int
    cautions: int
    notes: int
    unknown: int
    met: int
    not_applicable: int
    accepted: int


@dataclass(frozen=True, kw_only=True, slots=True)
class CheckReport:
    """What ``coachwright check --json`` prints.

    Attributes
    ----------
    format
        Version of this form; it changes when a key is taken away or gets another meaning.
    headline
        The figures that a designer keeps in view.
    findings
        Worst first.
    """

    format: Literal[1]
    build: BuildSummary
    verdict: Verdict
    headline: tuple[Figure, ...]
    findings: tuple[Finding, ...]
    layout: Layout
    weights: Weights
    road: Road
    electrics: Electrics
    water: Water
    wishes: Wishes
    living: Living


def check(path: Path, catalogue: Catalogue, almanac: Almanac | None = None) -> Assessment:
    """Open a build file and assess it.

    Parameters
    ----------
    path
        The build file.
    catalogue
        Where its vehicle and parts are.
    almanac
        Of the weather; without one there are no years.

    Raises
    ------
    BuildFileError
        With every fault of the file and of what it names.
    """
    return assess(open_build(path, catalogue).build, almanac=almanac)


def verdict(assessment: Assessment) -> Verdict:
    """Count the findings of an assessment."""
    broken = [f for f in assessment.findings if f.outcome is Outcome.BROKEN]
    severities = Counter(str(finding.severity) for finding in broken)
    outcomes = Counter(finding.outcome for finding in assessment.findings)
    return Verdict(
        stops=severities["stop"],
        cautions=severities["caution"],
        notes=severities["note"],
        unknown=outcomes[Outcome.UNKNOWN],
        met=outcomes[Outcome.MET],
        not_applicable=outcomes[Outcome.NOT_APPLICABLE],
        accepted=sum(finding.accepted is not None for finding in broken),
    )


def is_stopped(assessment: Assessment) -> bool:
    """Return whether a stop is broken."""
    return any(True for _ in broken_stops(assessment.findings))


def report(assessment: Assessment) -> CheckReport:
    """Return what other programs get of an assessment."""
    return CheckReport(
        format=1,
        build=assessment.summary,
        verdict=verdict(assessment),
        headline=assessment.headline,
        findings=assessment.findings,
        layout=assessment.layout,
        weights=assessment.weights,
        road=assessment.road,
        electrics=assessment.electrics,
        water=assessment.water,
        wishes=assessment.wishes,
        living=assessment.living,
    )


def report_data(assessment: Assessment) -> dict[str, Any]:
    """Return the report as JSON's own kinds of values."""
    data: dict[str, Any] = TypeAdapter(CheckReport).dump_python(report(assessment), mode="json")
    return data


def report_schema() -> dict[str, Any]:
    """Return the JSON schema of the report."""
    return TypeAdapter(CheckReport).json_schema(mode="serialization")
