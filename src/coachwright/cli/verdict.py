"""The verdict on the screen: headline figures, and the findings from the worst on."""

from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

from rich.text import Text

from coachwright.actions.checking import Verdict, verdict
from coachwright.cli.showing import add, console, show, signed, table, table_of_rules
from coachwright.model.finding import Finding, Outcome, Severity, Source, Status
from coachwright.model.grouping import FindingGroup, grouped
from coachwright.model.telling import compared
from coachwright.units import worded

if TYPE_CHECKING:
    from rich.console import Console
    from rich.table import Table

    from coachwright.assess import Assessment
    from coachwright.model.working import Figure

CAUTION = (
    "Computed from the build as written. This is no certificate, approval or inspection: local "
    "codes and licensed practice govern electricity, gas, seats, structure and loads, and only a "
    "weighbridge shows the true axle loads."
)
_DIGITS = 10
"""Digits of the digest that tell one record from another on paper and screen."""
_SIGNS = {"<=": "≤", ">=": "≥", "<": "<", ">": ">", "==": "="}
_STATUS = {Status.READ: "read", Status.MEMORY: "from memory", Status.PRACTICE: "common practice"}
_HEADINGS = (
    (Severity.STOP, "Broken stops", "bold red"),
    (Severity.CAUTION, "Broken cautions", "bold yellow"),
    (Severity.NOTE, "Broken notes", "bold cyan"),
)


def print_verdict(assessment: "Assessment", path: Path, system: str, *, every: bool) -> None:
    """Print the verdict on a build.

    Parameters
    ----------
    assessment
        Of the build.
    path
        The build file, for the line that says what to do next.
    system
        ``"metric"`` or ``"us"``.
    every
        Show the rules that are met or not applicable, too.
    """
    screen = console()
    summary = assessment.summary
    screen.print(Text(f"{summary.name}, revision {summary.revision}", style="bold"))
    screen.print(Text(summary.vehicle_name))
    screen.print(Text(f"rules: {summary.jurisdiction}; record {summary.digest[:_DIGITS]}"))
    screen.print(_headline(assessment.headline, system))
    broken = [f for f in assessment.findings if f.outcome is Outcome.BROKEN]
    for severity, heading, style in _HEADINGS:
        of_kind = [finding for finding in broken if finding.severity is severity]
        if of_kind:
            screen.print(Text(f"{heading}: {len(of_kind)}", style=style))
            screen.print(_broken(of_kind, system))
    unknown = [f for f in assessment.findings if f.outcome is Outcome.UNKNOWN]
    if unknown:
        screen.print(Text(f"Unknown, not shown to be met: {len(unknown)}", style="bold magenta"))
        screen.print(_unknown(unknown, system))
    if every:
        _print_rest(screen, assessment.findings, system)
    _print_close(screen, verdict(assessment), [*broken, *unknown], path, system, every=every)


def _headline(figures: "Iterable[Figure]", system: str) -> "Table":
    made = table("figure", "value", "95 % from", "95 % to", right=(1, 2, 3))
    for figure in figures:
        label = Text(worded(figure.label, system))
        if figure.missing:
            label.append(f"\nmissing: {worded(figure.missing, system)}", style="dim")
        bounds = (
            "" if bound is None else show(bound, figure.unit, system)
            for bound in (figure.low, figure.high)
        )
        add(made, label, show(figure.value, figure.unit, system), *bounds)
    return made


def _broken(findings: Iterable[Finding], system: str) -> "Table":
    made = table_of_rules("rule", "value", "limit", "margin", right=(1, 2, 3))
    for finding in findings:
        add(made, _said(finding, system), *_compared(finding, system))
    return made


def _compared(finding: Finding, system: str) -> tuple[str, str, str]:
    """Return value, limit and margin."""
    figures = compared(finding, system)
    return (
        signed(figures.value),
        f"{_SIGNS[finding.holds]} {signed(figures.limit)}",
        signed(figures.margin),
    )


def _said(finding: Finding, system: str) -> Text:
    """Return what a broken rule says: title, subject, source, remedy and who accepted it."""
    said = Text(_titled(finding, system), style="bold")
    lines = [worded(finding.detail, system), _clause(finding.source), finding.rule]
    for line in lines:
        if line:
            said.append(f"\n{line}", style="not bold dim")
    if finding.remedy:
        said.append(f"\n→ {worded(finding.remedy, system)}", style="not bold green")
    said.append(_accepted(finding), style="not bold italic")
    return said


def _accepted(finding: Finding) -> str:
    if finding.accepted is None:
        return ""
    return f"\naccepted by {finding.accepted.role}: {finding.accepted.reason}"


def _clause(source: Source) -> str:
    """Return where a rule stands, and how well that is known."""
    place = " ".join(word for word in (source.key, source.clause) if word)
    edition = f"edition {source.edition}" if source.edition else ""
    return ", ".join(word for word in (place, edition, _STATUS[source.status]) if word)


def _titled(finding: Finding, system: str) -> str:
    subject = f" ({finding.subject})" if finding.subject else ""
    return worded(f"{finding.title}{subject}", system)


def _unknown(findings: Iterable[Finding], system: str) -> "Table":
    made = table_of_rules("rule", "severity", "what is missing")
    for finding in findings:
        title = Text(_titled(finding, system)).append(f"\n{finding.rule}", style="dim")
        title.append(_accepted(finding), style="italic")
        add(made, title, finding.severity, worded(finding.missing, system))
    return made


def _print_rest(screen: "Console", findings: Iterable[Finding], system: str) -> None:
    """Print what is met and what is not applicable: of each rule the case nearest its limit."""
    met = table_of_rules("met", "value", "limit", "margin", right=(1, 2, 3), leading=0)
    idle = table_of_rules("not applicable", leading=0)
    for group in grouped(findings):
        finding = group.nearest
        if finding.outcome is Outcome.MET:
            add(met, _told(group, system, "all met"), *_compared(finding, system))
        elif finding.outcome is Outcome.NOT_APPLICABLE:
            add(idle, _told(group, system, "none judged"))
    screen.print(met)
    screen.print(idle)


def _told(group: FindingGroup, system: str, others: str) -> Text:
    """Return what one case says for all of its group; why it is not judged, where it is not."""
    finding = group.nearest
    said = Text(_titled(finding, system))
    if finding.outcome is Outcome.NOT_APPLICABLE and finding.detail:
        said.append(f"\n{worded(finding.detail, system)}", style="dim")
    said.append(f"\n{finding.rule}", style="dim")
    if group.more:
        said.append(f"\nand {group.more} more, {others}", style="dim")
    return said


def _print_close(
    screen: "Console",
    counts: Verdict,
    unmet: list[Finding],
    path: Path,
    system: str,
    *,
    every: bool,
) -> None:
    listed = "" if every else " (--all lists them)"
    screen.print(Text(f"{counts.met} met, {counts.not_applicable} not applicable{listed}."))
    if counts.stops:
        said = "One stop is broken." if counts.stops == 1 else f"{counts.stops} stops are broken."
        screen.print(Text(said, style="bold red"))
    else:
        screen.print(Text("No stop is broken.", style="bold green"))
    screen.print(Text(CAUTION, style="italic"))
    screen.print(Text(f"Next: {worded(_next(counts, unmet, path), system)}", style="bold"))


def _next(counts: Verdict, unmet: list[Finding], path: Path) -> str:
    if counts.stops:
        first = unmet[0]
        remedy = first.remedy.rstrip(".") or f"see why with --all: {first.title}"
        return f"{remedy}; then check again."
    if any(finding.accepted is None for finding in unmet):
        return (
            "settle the cautions and what is unknown, or accept them with a reason "
            f"(coachwright accept {path} RULE); coachwright print {path} -o out for the papers."
        )
    return f"coachwright print {path} -o out for the papers."
