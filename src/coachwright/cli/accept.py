"""Accept a finding with a reason."""

import datetime
from typing import Annotated

import typer

from coachwright.cli.choices import BuildFile, almanac, catalogue


def accept(
    context: typer.Context,
    *,
    build: BuildFile,
    rule: Annotated[
        str, typer.Argument(metavar="RULE", help="The rule's id, as 'check' shows it.")
    ],
    role: Annotated[
        str, typer.Option(help="Who accepts, by role: workshop manager, customer, engineer.")
    ],
    reason: Annotated[str, typer.Option(help="Why.")],
    subject: Annotated[
        str, typer.Option(help="What it is about; every subject of the rule where not given.")
    ] = "",
    date: Annotated[
        datetime.datetime | None,
        typer.Option(formats=["%Y-%m-%d"], help="The day of the decision, such as 2027-04-15."),
    ] = None,
) -> None:
    """Add a decision to the build file: a broken or unknown rule that someone accepts.

    The file's comments stay. A stop can be explained, but it stays broken and is never hidden.

    Example: coachwright accept smith.toml road.spare-carried --role customer --reason cover
    """
    from coachwright.actions.accepting import accept as add_decision
    from coachwright.units import worded

    words: dict[str, object] = {"rule": rule, "subject": subject, "role": role, "reason": reason}
    if date is not None:
        words["date"] = date.date()
    where = catalogue(context)
    findings = add_decision(build, where, words, almanac(where))
    for finding in findings:
        title = worded(finding.title)
        typer.echo(f"accepted: {title} ({finding.subject}), by {role}: {reason}")
        if finding.severity == "stop":
            typer.echo("This is a stop: it is explained now, and it stays broken.")
    typer.echo(f"{build} holds the decision. Next: coachwright check {build}")
