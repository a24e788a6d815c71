"""The command line: its commands, and the one place where trouble is turned into words.

Exit codes: 0 fine, 1 a stop is broken, 2 something could not be read, written or used.
"""

import io
import json
import os
import signal
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Annotated

import typer

from coachwright import __version__
from coachwright.cli import (
    accept,
    arrange,
    backup,
    check,
    compare,
    draw,
    live,
    new,
    parts,
    people,
    printing,
    schema,
    serve,
    standards,
    vehicles,
    weather,
)
from coachwright.cli.choices import SHOP_VARIABLE
from coachwright.errors import BadInput, CoachwrightError, Fault

UNREADABLE = 2
DEBUG_VARIABLE = "COACHWRIGHT_DEBUG"
ISSUE_HINT = "this is a fault of Coachwright, not of your file; please report it with this line"

app = typer.Typer(
    name="coachwright",
    help="The working bench of a shop that converts panel vans into campers.\n\n"
    "Write a build file, ask whether it is all right, print its papers.",
    epilog="Begin with: coachwright new my-build.toml",
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode="rich",
    context_settings={"help_option_names": ["-h", "--help"]},
)
app.command("new")(new.new)
app.command("check")(check.check)
app.command("compare")(compare.compare)
app.command("live")(live.live)
app.command("print")(printing.print_papers)
app.command("draw")(draw.draw)
app.command("accept")(accept.accept)
app.command("serve")(serve.serve)
app.command("backup")(backup.backup)
app.command("restore")(backup.restore)
app.add_typer(arrange.app, name="arrange")
app.add_typer(parts.app, name="parts")
app.add_typer(people.app, name="people")
app.add_typer(vehicles.app, name="vehicles")
app.add_typer(weather.app, name="weather")
app.add_typer(standards.app, name="standards")
app.command("schema")(schema.schema)


def _show_version(wanted: bool) -> None:
    if wanted:
        typer.echo(f"coachwright {__version__}")
        raise typer.Exit


@app.callback()
def group(
    context: typer.Context,
    shop: Annotated[
        Path | None,
        typer.Option(
            envvar=SHOP_VARIABLE,
            help="The shop's own folder of parts, vehicles and standards.",
            show_default="the user's data folder, where there is one",
        ),
    ] = None,
    version: Annotated[  # noqa: ARG001  # its callback has done all
        bool,
        typer.Option(
            "--version", callback=_show_version, is_eager=True, help="Show the version and leave."
        ),
    ] = False,
) -> None:
    """Keep what every command needs to know."""
    context.obj = shop


def main(arguments: Sequence[str] | None = None) -> None:
    """Run one command and leave with its exit code.

    Parameters
    ----------
    arguments
        What stands behind ``coachwright``; the process's own where not given.
    """
    given = list(sys.argv[1:] if arguments is None else arguments)
    if arguments is None:
        _suit_the_terminal()
    try:
        app(args=given, prog_name="coachwright")
    except BadInput as error:
        _say_faults(error.faults, as_json="--json" in given)
    except CoachwrightError as error:
        _say(f"{error}")
    except Exception as error:
        if os.environ.get(DEBUG_VARIABLE):
            raise
        _say(f"{ISSUE_HINT}: {type(error).__name__}: {' '.join(str(error).split())}")
    sys.exit(UNREADABLE)


def _suit_the_terminal() -> None:
    """Let no sign stop a command that the terminal cannot show, nor a reader who has had enough.

    A command whose reader is gone (``coachwright check ... | head``) ends by the signal that says
    so, and not with the code of a broken stop.
    """
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")
    if hasattr(signal, "SIGPIPE"):
        signal.signal(signal.SIGPIPE, signal.SIG_DFL)


def _say_faults(faults: Sequence[Fault], *, as_json: bool) -> None:
    """Print each fault as a plain line, never wrapped, so that a path stays whole."""
    for fault in faults:
        _say(fault.sentence())
    if as_json:
        listed = [
            {
                "file": fault.file,
                "field": fault.field,
                "found": fault.found,
                "allowed": fault.allowed,
                "action": fault.action,
            }
            for fault in faults
        ]
        typer.echo(json.dumps({"faults": listed}, ensure_ascii=False, indent=2))
    elif len(faults) > 1:
        _say(f"{len(faults)} faults")


def _say(line: str) -> None:
    typer.echo(line, err=True)
