"""Accounts by the command line, and what serve wants of them."""

from pathlib import Path

import pytest
import typer

from tests.shells.running import Runner

PASSWORD = "correct horse battery"  # noqa: S105  # of an account in a test


@pytest.fixture(autouse=True)
def _typed(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let the password be typed."""

    def prompt(_text: str, **_given: object) -> str:
        return PASSWORD

    monkeypatch.setattr(typer, "prompt", prompt)


def test_people_come_change_and_go(run: Runner) -> None:
    assert "no accounts" in run("people", "list").out
    first = run("people", "add", "dora")
    assert (first.code, "owner" in first.err) == (2, True)
    assert run("people", "add", "olga", "--role", "owner").code == 0
    assert "designer" in run("people", "add", "dora").out
    assert run("people", "role", "dora", "floor").out == "dora is floor from now on.\n"
    assert run("people", "password", "dora").code == 0
    assert run("people", "close", "dora").code == 0
    assert "only owner" in run("people", "close", "olga").err
    assert "floor" in run("people", "list").out
    log = run("people", "log", "--most", "3").out
    assert "account closed" in log
    assert '"deed"' in run("people", "log", "--json").out


def test_a_token_is_shown_once_and_ends(run: Runner) -> None:
    run("people", "add", "olga", "--role", "owner")
    made = run("people", "token", "olga", "--label", "stock", "--days", "2")
    token = made.out.strip()
    assert len(token) > 40
    listed = run("people", "list").out
    assert "stock" in listed
    assert token not in listed
    digest = next(line.split()[0] for line in listed.splitlines() if "stock" in line)
    assert run("people", "end", digest).code == 0
    assert "stock" not in run("people", "list", "--json").out
    assert run("people", "end", "zzz").code == 2


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (("--listen", "192.0.2.10"), "people add"),
        (("--certificate", "nothing.pem"), "go together"),
        (("--certificate", "nothing.pem", "--key", "nothing.key"), "not there"),
    ],
)
def test_serve_says_what_is_missing(run: Runner, options: tuple[str, ...], said: str) -> None:
    refused = run("serve", *options)
    assert refused.code == 2
    assert said in refused.err


def test_every_address_wants_a_name(run: Runner, tmp_path: Path) -> None:
    run("people", "add", "olga", "--role", "owner")
    refused = run("serve", "--listen", "0.0.0.0")  # noqa: S104  # refused
    assert "--name HOST" in refused.err
