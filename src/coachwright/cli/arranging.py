"""Show proposals for a roof and a floor."""

from pathlib import Path
from typing import TYPE_CHECKING

import typer

from coachwright.cli.showing import add, console, show, table

if TYPE_CHECKING:
    from coachwright.arrange.model import RoofPlan
    from coachwright.arrange.solving import Proof


def print_roof(plan: "RoofPlan", system: str, written: Path | None) -> None:
    """Print a roof proposal.

    Parameters
    ----------
    plan
        The proposal.
    system
        ``"metric"`` or ``"us"``.
    written
        File that it was written to.
    """
    from coachwright.actions.arranging import fittings_text

    screen = console()
    if plan.panels:
        rows = table("panel", "part", "turned", "x", "y", "power", right=(3, 4, 5), whole=(1,))
        for panel in plan.panels:
            add(
                rows,
                panel.name,
                panel.part,
                "90 deg" if panel.turned else "",
                show(panel.low_mm[0], "mm", system),
                show(panel.low_mm[1], "mm", system),
                show(panel.rated_w, "W", system),
            )
        screen.print(rows)
    typer.echo(
        f"{show(plan.total_w, 'W', system)} of panels, {show(plan.mass_kg, 'kg', system)} with "
        f"mountings; there are {show(plan.present_w, 'W', system)} now."
    )
    typer.echo(said(plan.proof))
    _print_obstacles(plan, system)
    for fault in plan.faults:
        typer.echo(f"It failed the check and may not be used: {fault}.")
    for caution in plan.cautions:
        typer.echo(f"Caution: {caution}.")
    for note in plan.notes:
        typer.echo(f"Note: {note}.")
    if written is not None:
        typer.echo(f"{written} is written. Next: coachwright check {written}")
    elif plan.fittings and not plan.faults:
        typer.echo(f"\nTo paste instead of {', '.join(plan.removed) or 'none'}:\n")
        typer.echo(fittings_text(plan.fittings))


def _print_obstacles(plan: "RoofPlan", system: str) -> None:
    if not plan.obstacles:
        return
    rows = table("without", "best", "it costs", "", right=(1, 2))
    for cost in sorted(plan.obstacles, key=lambda each: -each.cost_w):
        add(
            rows,
            cost.name,
            show(cost.without_w, "W", system),
            show(cost.cost_w, "W", system),
            "" if cost.proven else "at least",
        )
    console().print(rows)


def said(proof: "Proof") -> str:
    """Return in words how good a result is."""
    if proof.impossible:
        return "Proven: nothing fits."
    if not proof.found:
        return "Nothing was found in the time given; give it more with --seconds."
    if proof.proven:
        took = show(proof.took_s, "s", "metric") if proof.took_s >= 1 else "less than a second"
        return f"Proven: nothing is better. It took {took}."
    why = "stopped by you" if proof.stopped else "out of time"
    return (
        f"Best so far, {why} after {show(proof.took_s, 's', 'metric')}: "
        f"within {show(proof.gap_frac, 'frac', 'metric')} of the best possible."
    )
