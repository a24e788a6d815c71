"""Who may use the bench: accounts, their passwords and roles, tokens, and the log."""

import datetime
import getpass
import secrets
from enum import StrEnum
from typing import TYPE_CHECKING, Annotated

import typer

from coachwright.cli.choices import Json, catalogue, database

if TYPE_CHECKING:
    from coachwright.actions.benching import Bench

app = typer.Typer(
    help="Say who may use the bench when it listens to other machines.", no_args_is_help=True
)
_SALT_BYTES = 16
_TOKEN_BYTES = 32
Name = Annotated[str, typer.Argument(metavar="NAME", help="Of the account.", show_default=False)]


class RoleName(StrEnum):
    """What a person may do."""

    OWNER = "owner"
    DESIGNER = "designer"
    FLOOR = "floor"


@app.command("list")
def list_people(context: typer.Context, *, json: Json = False) -> None:
    """List the accounts, and the sessions and tokens that are valid.

    Example: coachwright people list
    """
    from coachwright.actions.admitting import accounts, tokens
    from coachwright.cli.showing import add, console, print_json, table

    bench = _bench(context)
    found, valid = accounts(bench), tokens(bench, at=_now())
    if json:
        print_json({"accounts": found, "tokens": valid})
        return
    screen = console()
    if not found:
        screen.print("There are no accounts: the bench listens to this machine alone.")
        screen.print("Next: coachwright people add NAME --role owner")
        return
    people = table("name", "role", "since", "closed")
    for each in found:
        closed = f"{each.closed_at:%Y-%m-%d}" if each.closed_at else ""
        add(people, each.name, each.role, f"{each.created_at:%Y-%m-%d}", closed)
    screen.print(people)
    listed = table("token", "of", "for", "label", "until", whole=(0,))
    for token in valid:
        until = f"{token.expires_at:%Y-%m-%d %H:%M}"
        add(listed, token.digest[:12], token.account, token.purpose, token.label, until)
    screen.print(listed)


@app.command("add")
def add_person(
    context: typer.Context,
    *,
    name: Name,
    role: Annotated[RoleName, typer.Option(help="What they may do.")] = RoleName.DESIGNER,
) -> None:
    """Make an account; asks for its password. The first is an owner's.

    Example: coachwright people add anna --role owner
    """
    from coachwright.actions.admitting import make_account
    from coachwright.store.records import Role

    bench = _bench(context)
    made = make_account(
        bench,
        name,
        Role(role.value),
        _password(),
        salt=secrets.token_bytes(_SALT_BYTES),
        actor=getpass.getuser(),
        at=_now(),
    )
    typer.echo(f"{made.name} may use the bench as {made.role}; start it anew to ask for names.")


@app.command("password")
def set_password(context: typer.Context, *, name: Name) -> None:
    """Give an account another password; its sessions and tokens end.

    Example: coachwright people password anna
    """
    bench = _bench(context)
    bench.store.people.set_password(
        name,
        _password(),
        salt=secrets.token_bytes(_SALT_BYTES),
        actor=getpass.getuser(),
        at=_now(),
    )
    typer.echo(f"{name} has another password; every session and token of it has ended.")


@app.command("role")
def set_role(
    context: typer.Context,
    *,
    name: Name,
    role: Annotated[RoleName, typer.Argument(metavar="ROLE", help="owner, designer or floor.")],
) -> None:
    """Give an account another role.

    Example: coachwright people role anna designer
    """
    from coachwright.store.records import Role

    bench = _bench(context)
    made = bench.store.people.set_role(name, Role(role.value), actor=getpass.getuser(), at=_now())
    typer.echo(f"{made.name} is {made.role} from now on.")


@app.command("close")
def close(context: typer.Context, *, name: Name) -> None:
    """Close an account; its sessions and tokens end, what it did stays under its name.

    Example: coachwright people close anna
    """
    _bench(context).store.people.close(name, actor=getpass.getuser(), at=_now())
    typer.echo(f"{name} may use the bench no more.")


@app.command("token")
def token(
    context: typer.Context,
    *,
    name: Name,
    label: Annotated[str, typer.Option(help="Which program it is for.")] = "",
    days: Annotated[int, typer.Option(min=1, max=365, help="How long it is good.")] = 90,
) -> None:
    """Print a token by which another program of the shop acts for an account.

    It is shown this once; send it as the header "Authorization: Bearer TOKEN".

    Example: coachwright people token anna --label stock --days 30
    """
    from coachwright.actions.admitting import issue_token

    made = secrets.token_urlsafe(_TOKEN_BYTES)
    until = issue_token(
        _bench(context),
        name,
        made,
        label=label,
        days=days,
        actor=getpass.getuser(),
        at=_now(),
    )
    typer.echo(made)
    typer.echo(f"good until {until:%Y-%m-%d}; end it with coachwright people end", err=True)


@app.command("end")
def end(
    context: typer.Context,
    *,
    beginning: Annotated[
        str,
        typer.Argument(metavar="TOKEN", help="As people list shows it.", show_default=False),
    ],
) -> None:
    """End a session or token.

    Example: coachwright people end 3f9a0c1b22d7
    """
    from coachwright.actions.admitting import end_token

    ended = end_token(_bench(context), beginning, actor=getpass.getuser(), at=_now())
    typer.echo(f"A token of {ended.account} has ended.")


@app.command("log")
def log(
    context: typer.Context,
    *,
    most: Annotated[int, typer.Option(min=1, max=10_000, help="How many lines.")] = 50,
    json: Json = False,
) -> None:
    """Show what was done to accounts and to the store, the newest first.

    Example: coachwright people log --most 20
    """
    from coachwright.actions.admitting import log as lines
    from coachwright.cli.showing import add, console, print_json, table

    found = lines(_bench(context), most=most)
    if json:
        print_json(found)
        return
    listed = table("at", "by", "what", "about", "from")
    for each in found:
        add(listed, f"{each.at:%Y-%m-%d %H:%M:%S}", each.actor, each.deed, each.about, each.place)
    console().print(listed)


def _bench(context: typer.Context) -> "Bench":
    from coachwright.actions.benching import set_up

    return set_up(database(), catalogue(context))


def _password() -> str:
    asked: str = typer.prompt("Password", hide_input=True, confirmation_prompt=True)
    return asked


def _now() -> datetime.datetime:
    return datetime.datetime.now(datetime.UTC)
