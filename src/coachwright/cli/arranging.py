"""Show proposals for a roof and a floor."""

from pathlib import Path
from textwrap import fill
from typing import TYPE_CHECKING

import typer

from coachwright.cli.showing import add, console, show, table
from coachwright.units import worded

if TYPE_CHECKING:
    from coachwright.arrange.model import FloorPlan, FloorProposal, RoofPlan
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
    _print_energy(plan, system)
    typer.echo(said(plan.proof))
    _print_obstacles(plan, system)
    for fault in plan.faults:
        typer.echo(f"It failed the check and may not be used: {fault}.")
    for caution in plan.cautions:
        typer.echo(f"Caution: {caution}.")
    for note in plan.notes:
        typer.echo(f"Note: {worded(note, system)}.")
    if written is not None:
        typer.echo(f"{written} is written. Next: coachwright check {written}")
    elif plan.fittings and not plan.faults:
        typer.echo(f"\nTo paste instead of {', '.join(plan.removed) or 'none'}:\n")
        typer.echo(fittings_text(plan.fittings))


def _print_energy(plan: "RoofPlan", system: str) -> None:
    energy = plan.energy
    if energy is None:
        return
    year, free, now = (
        show(each, "Wh/year", system)
        for each in (energy.year_wh, energy.free_wh, energy.present_wh)
    )
    typer.echo(
        f"At {energy.site} the roof gives {year} a year before the controller, {free} without any "
        f"shade; with the panels that are there now {now}."
    )
    counted = f"the energy of {energy.month}" if energy.month else "the energy of the year"
    typer.echo(f"The search counted {counted}, shade by area, for the mean of all headings.")
    for words in (energy.caution, energy.attribution):
        if words:
            typer.echo(words)


def _print_obstacles(plan: "RoofPlan", system: str) -> None:
    if not plan.obstacles:
        return
    heads = ["without", "best", "it costs"]
    if plan.energy is not None:
        heads.append(f"in {plan.energy.month}" if plan.energy.month else "a year")
    rows = table(*heads, "", right=range(1, len(heads)))
    for cost in sorted(plan.obstacles, key=lambda each: (-each.cost_value, -each.cost_w)):
        cells = [cost.name, show(cost.without_w, "W", system), show(cost.cost_w, "W", system)]
        if cost.cost_wh is not None:
            cells.append(show(cost.cost_wh, "Wh/year", system))
        add(rows, *cells, "" if cost.proven else "at least")
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


def print_floor(proposal: "FloorProposal", system: str | None, written: Path | None) -> None:
    """Print floor plans, or which wishes collide.

    Parameters
    ----------
    proposal
        The plans.
    system
        ``"metric"`` or ``"us"``; the build's own where None.
    written
        File that one of them was written to.
    """
    if proposal.conflict:
        typer.echo(
            "There is no plan. These wishes collide; give up any one and the others can be met:"
        )
        for words in proposal.conflict:
            typer.echo(f"- {words}")
    elif not proposal.plans:
        typer.echo("No plan was found in the time given; give it more with --seconds.")
    if proposal.plans:
        shown = system or proposal.plans[0].build.brief.units
        _print_measures(proposal, shown)
        for number, plan in enumerate(proposal.plans, 1):
            _print_plan(plan, number, shown)
    for faults in proposal.dropped:
        typer.echo(f"One more plan was dropped because it failed its check: {faults[0]}.")
    for note in proposal.notes:
        typer.echo(f"Note: {note}")
    _say_end(proposal)
    if written is not None:
        typer.echo(f"{written} is written. Next: coachwright check {written}")
    elif proposal.plans:
        typer.echo("Next: the same command with --plan N --write FILE.toml")


def _say_end(proposal: "FloorProposal") -> None:
    took = show(proposal.took_s, "s", "metric")
    if proposal.first_s is not None:
        first = show(proposal.first_s, "s", "metric")
        typer.echo(f"The first plan came after {first}, all of them after {took}.")
    if proposal.plans and proposal.complete:
        typer.echo("Proven: no other plan differs clearly from these.")


def _print_measures(proposal: "FloorProposal", system: str) -> None:
    plans = proposal.plans
    measures = [plan.measures for plan in plans]
    lines = {
        "points": [f"{plan.points_count:.0f}" for plan in plans],
        "narrowest": [show(found.aisle_mm, "mm", system) for found in measures],
        "axle spare": [show(found.axle_spare_kg, "kg", system) for found in measures],
        "water runs": [show(found.plumbing_mm, "mm", system) for found in measures],
        "cable runs": [show(found.cable_mm, "mm", system) for found in measures],
        "storage": [show(found.storage_l, "L", system) for found in measures],
        "worktop": [show(found.counter_mm, "mm", system) for found in measures],
        "free wall": [show(found.room_mm, "mm", system) for found in measures],
    }
    heads = [f"plan {number}" for number, _ in enumerate(plans, 1)]
    rows = table("", *heads, right=range(1, 6), whole=(0,))
    alike = []
    for label, values in lines.items():
        if len(values) > 1 and len(set(values)) == 1:
            alike.append(f"{label} {values[0]}")
        else:
            add(rows, label, *values)
    console().print(rows)
    if alike:
        typer.echo(f"The same in all: {', '.join(alike)}.")


def _print_plan(plan: "FloorPlan", number: int, system: str) -> None:
    now = "as it stands now; " if plan.present else ""
    rank = "proven best of those left"
    if not plan.proof.proven:
        rank = f"not proven: another may be up to {plan.missing_points} points better"
    typer.echo(f"Plan {number}: {now}{rank}.")
    for wall in ("left", "middle", "right"):
        row = [
            f"{place.name} {show(place.from_mm, 'mm', system)} to "
            f"{show(place.to_mm, 'mm', system)}{_turned(place.turned)}"
            for place in plan.places
            if place.wall == wall
        ]
        if row:
            typer.echo(
                fill(
                    f"{wall}: {'; '.join(row)}",
                    console().width,
                    initial_indent="  ",
                    subsequent_indent="    ",
                )
            )
    for caution in plan.cautions:
        typer.echo(f"  Caution: {caution}.")


def _turned(words: str) -> str:
    return f" ({words})" if words else ""
