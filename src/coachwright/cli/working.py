"""How a figure was reached, on the screen."""

from typing import TYPE_CHECKING

from rich.text import Text

from coachwright.cli.showing import add, console, plain, print_json, show, table
from coachwright.reference.sources import reference
from coachwright.units import worded

if TYPE_CHECKING:
    from coachwright.assess import Assessment
    from coachwright.model.working import Figure, Working

_BARE = frozenset({"1", "frac", "count"})


def print_figures(assessment: "Assessment", system: str) -> None:
    """List every figure whose working can be asked for."""
    listed = table("name", "figure", "value", right=(2,), whole=(0,))
    for figure in assessment.figures:
        label = worded(figure.label, system)
        add(listed, figure.name, label, show(figure.value, figure.unit, system))
    screen = console()
    screen.print(listed)
    screen.print("Next: coachwright check BUILD --working NAME")


def print_working(figure: "Figure", system: str, *, as_json: bool) -> None:
    """Print a figure's working: expression, numbers put in, result, sources.

    Parameters
    ----------
    figure
        With or without a working.
    system
        ``"metric"`` or ``"us"``: in which the result is repeated; the numbers put in stay in the
        units that the expression is worked in.
    as_json
        Print JSON instead.
    """
    if as_json:
        print_json(figure)
        return
    screen = console()
    label, value = worded(figure.label, system), show(figure.value, figure.unit, system)
    screen.print(Text(f"{label}: {value}", style="bold"))
    screen.print(Text(figure.name, style="dim"))
    if figure.missing:
        screen.print(Text(f"missing: {worded(figure.missing, system)}"))
    if figure.low is not None or figure.high is not None:
        low, high = show(figure.low, figure.unit, system), show(figure.high, figure.unit, system)
        screen.print(Text(f"95 % bounds, each one-sided: {low} and {high}"))
    if figure.working is None:
        screen.print(Text("No working is kept for this figure."))
        return
    _print(figure.working, system)


def _print(working: "Working", system: str) -> None:
    screen = console()
    screen.print(Text(f"\n{working.expression}", style="bold cyan"))
    given = table("", "value", "unit", "meaning", "from", right=(1,))
    for number in working.given:
        unit = "" if number.unit in _BARE else number.unit
        add(
            given,
            number.symbol,
            plain(number.value),
            unit,
            worded(number.meaning, system),
            worded(number.source, system),
        )
    screen.print(given)
    unit = "" if working.unit in _BARE else f" {working.unit}"
    screen.print(Text(f"= {plain(working.result)}{unit}", style="bold"))
    if working.note:
        screen.print(Text(worded(working.note, system)))
    for key in working.references:
        screen.print(Text(f"[{key}] {reference(key).text()}"))
