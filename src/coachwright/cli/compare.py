"""Compare two builds."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from coachwright.cli.choices import BuildFile, Json, System, Units, almanac, catalogue

if TYPE_CHECKING:
    from rich.console import Console

    from coachwright.actions.comparing import Comparison, FigureChange

_TELLING = frozenset({"broken", "unknown"})
_ALWAYS = frozenset(
    {
        "weights.total-as-delivered",
        "weights.total-travelling",
        "weights.front-axle-travelling",
        "weights.rear-axle-travelling",
    }
)
"""Figures that are shown besides the headline: masses and axle loads."""


def compare(
    context: typer.Context,
    *,
    build: BuildFile,
    other: Annotated[
        Path | None,
        typer.Argument(
            metavar="OTHER",
            help="The later build; without it, BUILD is compared with its standard build.",
            show_default=False,
        ),
    ] = None,
    json: Json = False,
    units: Units = None,
    every: Annotated[
        bool, typer.Option("--all", help="Show every figure and finding that changed.")
    ] = False,
) -> None:
    """Say what differs between two builds: parts, masses, axle loads, price, findings.

    Example: coachwright compare smith-a.toml smith-b.toml

    Example: coachwright compare smith.toml
    """
    from coachwright.actions.comparing import compare as compared
    from coachwright.cli.showing import console, print_json

    where = catalogue(context)
    found = compared(build, other, where, almanac(where))
    if json:
        print_json(found)
        return
    by_rules = System.US if found.after.jurisdiction == "us" else System.METRIC
    screen = console()
    system = units or by_rules
    _print_fittings(screen, found, system)
    _print_figures(screen, found, system, every=every)
    _print_findings(screen, found, system, every=every)
    screen.print("Next: coachwright check on the build that you keep")


def _print_fittings(screen: "Console", found: "Comparison", system: str) -> None:
    from rich.text import Text

    from coachwright.cli.showing import add, table
    from coachwright.units import worded

    for word, summary in (("From", found.before), ("to", found.after)):
        line = f"{word} {summary.name}, revision {summary.revision} ({summary.vehicle})"
        screen.print(Text(line, style="bold"))
    if not found.fittings:
        screen.print("No fitting differs.")
        return
    listed = table("fitting", "what", "before", "after")
    for change in found.fittings:
        before, after = worded(change.before, system), worded(change.after, system)
        add(listed, change.fitting, change.change, before, after)
    screen.print(listed)


def _print_figures(screen: "Console", found: "Comparison", system: str, *, every: bool) -> None:
    from rich.text import Text

    from coachwright.cli.showing import add, show, table
    from coachwright.units import worded

    listed = table("figure", "before", "after", "change", right=(1, 2, 3))
    shown = [figure for figure in found.figures if every or _is_asked_for(figure)]
    for figure in shown:
        add(
            listed,
            worded(figure.label, system),
            show(figure.before.value, figure.before.unit, system),
            show(figure.after.value, figure.after.unit, system),
            _difference(figure, system),
        )
    price = found.price
    add(listed, "Price of the parts", price.before, price.after, price.change)
    screen.print(listed)
    if len(shown) < len(found.figures):
        screen.print(Text("More figures changed (--all shows them)."))


def _is_asked_for(figure: "FigureChange") -> bool:
    return figure.headline or figure.name in _ALWAYS


def _difference(figure: "FigureChange", system: str) -> str:
    """Return the change with its sign."""
    from coachwright.cli.showing import show
    from coachwright.units import difference_unit

    value = figure.change.value
    if value is None:
        return "unknown"
    said = show(value, difference_unit(figure.change.unit), system)
    sign = "+" if value > 0 and any(digit in "123456789" for digit in said) else ""
    return f"{sign}{said}"


def _print_findings(screen: "Console", found: "Comparison", system: str, *, every: bool) -> None:
    from rich.text import Text

    from coachwright.cli.showing import add, table
    from coachwright.units import worded

    listed = table("finding", "severity", "before", "after")
    telling = [
        change for change in found.findings if every or {change.before, change.after} & _TELLING
    ]
    if not telling:
        screen.print("No finding became broken, unknown or mended.")
        return
    for change in telling:
        subject = f" ({change.subject})" if change.subject else ""
        after = Text(change.after, style=_STYLES.get(change.after, ""))
        title = worded(f"{change.title}{subject}", system)
        add(listed, title, change.severity, change.before, after)
    screen.print(listed)


_STYLES = {"broken": "bold red", "unknown": "magenta", "met": "green"}
