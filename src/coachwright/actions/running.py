"""Ask how long something runs on a build's battery."""

from coachwright.assess import Assessment
from coachwright.electrics.asking import asked
from coachwright.electrics.model import RunTime, Supply
from coachwright.errors import BuildFileError, Fault
from coachwright.units import QuantityFault, parse


def how_long(assessment: Assessment, *, draw: str, duty: str, behind_inverter: bool) -> RunTime:
    """Return how long a full bank carries a draw.

    Parameters
    ----------
    assessment
        Of the build.
    draw
        As somebody says it: ``"45 W"``; a bare number is in watts.
    duty
        Share of the time that it draws: ``"30 %"``; a bare number is per cent.
    behind_inverter
        It plugs into a mains socket.

    Raises
    ------
    BadInput
        Where draw or duty cannot be read.
    CallError
        Where the build has no bank or no inverter that could answer, or a number is out of range.
    """
    read = {
        "draw": parse(_with_unit(draw, "W"), "power"),
        "duty": parse(_with_unit(duty, "%"), "fraction"),
    }
    faults = tuple(
        Fault(
            file="the question",
            field=field,
            found=found.found,
            allowed=found.allowed,
            action=found.action,
        )
        for field, found in read.items()
        if isinstance(found, QuantityFault)
    )
    draw_w, duty_frac = read["draw"], read["duty"]
    if isinstance(draw_w, QuantityFault) or isinstance(duty_frac, QuantityFault):
        raise BuildFileError(faults)
    return asked(
        assessment.build,
        assessment.electrics,
        draw_w=draw_w,
        duty_frac=duty_frac,
        supply=Supply.INVERTER if behind_inverter else Supply.DC,
    )


def _with_unit(text: str, unit: str) -> str:
    said = text.strip()
    return f"{said} {unit}" if said.replace(".", "", 1).isdigit() else said
