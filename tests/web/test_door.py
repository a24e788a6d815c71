"""The door: who comes in, from where, with how much; what role may do what."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from fastapi import FastAPI
from fastapi.responses import JSONResponse

from coachwright.actions.admitting import (
    FREE_TRIES,
    SESSION,
    Tries,
    Who,
    as_seen_by,
    end_token,
    has_owner,
    issue_token,
    known_by,
    log,
    make_account,
    sign_in,
    tokens,
)
from coachwright.actions.benching import Bench, edit, lay_open, set_up
from coachwright.actions.shopkeeping import new_entry
from coachwright.catalogue.loading import Catalogue
from coachwright.errors import NotAllowed, UnknownName
from coachwright.store.edits import Put
from coachwright.store.records import Role
from coachwright.web.door.rules import SESSION_COOKIE, House, landing
from coachwright.web.door.seating import open_door
from coachwright.web.door.signing import STRICT
from tests.web.benches import NOW, lay
from tests.web.calling import Program

PASSWORD = "correct horse battery"  # noqa: S105  # of accounts in tests
CHANGE = (Put(path=("brief", "stay", "parked"), value="5 d"),)
EDITS = {
    "base_event": 1,
    "edits": [{"do": "put", "path": ["brief", "stay", "parked"], "value": "5 d"}],
}


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Bench]:
    shop = tmp_path / "shop"
    shop.mkdir()
    made = set_up(tmp_path / "builds.db", Catalogue(shop))
    with made.store:
        lay(made)
        for name, role in (("olga", Role.OWNER), ("dora", Role.DESIGNER), ("finn", Role.FLOOR)):
            make_account(
                made, name, role, PASSWORD, salt=b"s" * 16, actor="test", at=datetime.now(UTC)
            )
        yield made


def _program(bench: Bench, *, guarded: bool = True, encrypted: bool = False) -> Program:
    app = FastAPI()

    @app.get("/page")
    def page() -> JSONResponse:
        return JSONResponse({"here": "a page"})

    open_door(app, bench, House(guarded=guarded, encrypted=encrypted))
    scheme = "https" if encrypted else "http"
    return Program(app=app, base=f"{scheme}://localhost/")


def _signed_in(bench: Bench, name: str) -> Program:
    program = _program(bench)
    answer = program.post("sign-in", data={"name": name, "password": PASSWORD, "next": "/page"})
    assert answer.status_code == 303
    return program


# --------------------------------------------------------------------------- hosts and origins


@pytest.mark.parametrize("host", ["elsewhere.example", "127.0.0.1.elsewhere.example", "", "["])
def test_a_name_that_the_server_does_not_go_by_is_refused(bench: Bench, host: str) -> None:
    program = _program(bench, guarded=False)
    assert program.get("page", headers={"Host": host}).status_code == 421


@pytest.mark.parametrize(
    "headers",
    [
        {"Origin": "https://elsewhere.example"},
        {"Origin": "null"},
        {"Origin": "http://localhost:1"},
        {"Origin": "http://localhost.elsewhere.example"},
    ],
)
def test_a_page_of_another_site_gets_nothing(bench: Bench, headers: dict[str, str]) -> None:
    program = _program(bench, guarded=False)
    for method, path in (("GET", "page"), ("POST", "api/v1/builds/1/undo")):
        assert program.ask(method, path, headers=headers).status_code == 403


def test_a_form_of_another_site_without_an_origin_is_refused(bench: Bench) -> None:
    program = _program(bench, guarded=False)
    cross = {"Sec-Fetch-Site": "cross-site"}
    assert program.post("api/v1/builds/1/undo", headers=cross).status_code == 403
    same = {"Origin": "http://localhost"}
    assert program.get("page", headers=same).status_code == 200


def test_a_server_without_accounts_asks_nobody(bench: Bench) -> None:
    program = _program(bench, guarded=False)
    assert program.get("page").status_code == 200
    assert program.get("api/v1/builds").status_code == 200


# ------------------------------------------------------------------------------------ signing in


def test_who_has_not_signed_in_is_asked_to(bench: Bench) -> None:
    program = _program(bench)
    asked = program.get("page", headers={"Accept": "text/html"})
    assert (asked.status_code, asked.headers["location"]) == (303, "/sign-in?next=/page")
    assert program.get("page").status_code == 401
    assert program.get("api/v1/builds").status_code == 401
    assert program.get("_nicegui/client/1/upload/2").status_code == 401
    assert program.get("api/v1/openapi.json").status_code == 200


def test_a_person_signs_in_works_and_signs_out(bench: Bench) -> None:
    program = _signed_in(bench, "dora")
    assert program.get("page").status_code == 200
    token = program.cookies[SESSION_COOKIE]
    gone = program.post("sign-out")
    assert gone.headers["location"] == "/sign-in"
    program.cookies.set(SESSION_COOKIE, token, domain="localhost.local", path="/")
    assert program.get("page").status_code == 401
    assert {each.deed for each in log(bench, most=10)} >= {"session begun", "token ended"}


@pytest.mark.parametrize("encrypted", [False, True])
def test_the_cookie_is_kept_from_scripts_and_other_sites(bench: Bench, encrypted: bool) -> None:
    program = _program(bench, encrypted=encrypted)
    answer = program.post("sign-in", data={"name": "dora", "password": PASSWORD})
    cookie = answer.headers["set-cookie"].lower()
    assert "httponly" in cookie
    assert "samesite=lax" in cookie
    assert ("secure" in cookie.replace(" ", "").split(";")) is encrypted
    assert ("strict-transport-security" in answer.headers) is encrypted


@pytest.mark.parametrize(
    ("name", "password"),
    [("dora", "wrong"), ("nobody", PASSWORD), ("", ""), ("dora", ""), ("dora\0", PASSWORD)],
)
def test_a_wrong_name_and_a_wrong_password_are_not_told_apart(
    bench: Bench, name: str, password: str
) -> None:
    answer = _program(bench).post("sign-in", data={"name": name, "password": password})
    assert answer.status_code == 401
    assert "do not belong together" in answer.text
    assert "set-cookie" not in answer.headers


def test_guessing_is_slowed_down_and_logged(bench: Bench) -> None:
    program = _program(bench)
    for _ in range(FREE_TRIES):
        assert program.post("sign-in", data={"name": "dora", "password": "x"}).status_code == 401
    slowed = program.post("sign-in", data={"name": "dora", "password": PASSWORD})
    assert slowed.status_code == 429
    assert 0 < int(slowed.headers["retry-after"]) <= 30
    refused = [each for each in log(bench, most=20) if each.deed == "sign-in refused"]
    assert len(refused) == FREE_TRIES


def test_waiting_doubles_and_ends() -> None:
    tries = Tries()
    now = NOW
    for _ in range(FREE_TRIES + 2):
        tries.failed(("name:a",), now)
    assert tries.wait(("name:a", "place:b"), now) == timedelta(seconds=120)
    for _ in range(20):
        tries.failed(("name:a",), now)
    assert tries.wait(("name:a",), now) == timedelta(minutes=15)
    assert tries.wait(("name:a",), now + timedelta(minutes=15)) == timedelta()
    tries.succeeded(("name:a",))
    assert tries.wait(("name:a",), now) == timedelta()


def test_a_session_ends_after_a_working_day(bench: Bench) -> None:
    found = sign_in(
        bench, Tries(), name="dora", password=PASSWORD, token="t" * 32, place="here", at=NOW
    )
    assert found == Who(name="dora", role=Role.DESIGNER)
    assert known_by(bench, "t" * 32, program=False, at=NOW) is not None
    assert known_by(bench, "t" * 32, program=False, at=NOW + SESSION) is None
    assert known_by(bench, "t" * 32, program=True, at=NOW) is None


def test_the_sign_in_page_has_no_script_and_shows_names_as_words(bench: Bench) -> None:
    program = _program(bench)
    page = program.get("sign-in", params={"next": '"><script>alert(1)</script>'})
    assert page.headers["content-security-policy"] == STRICT
    assert "<script" not in page.text
    wrong = program.post("sign-in", data={"name": '"><script>x', "password": "y"})
    assert "<script" not in wrong.text


@pytest.mark.parametrize(
    "elsewhere",
    ["//elsewhere.example", "https://elsewhere.example", "/\\elsewhere", "javascript:x", "", "x"],
)
def test_nobody_is_sent_elsewhere(bench: Bench, elsewhere: str) -> None:
    assert landing(elsewhere) == "/"
    given = {"name": "dora", "password": PASSWORD, "next": elsewhere}
    assert _program(bench).post("sign-in", data=given).headers["location"] == "/"


# ------------------------------------------------------------------------------- roles and tokens


@pytest.mark.parametrize(("name", "status"), [("olga", 200), ("dora", 200), ("finn", 409)])
def test_a_token_may_do_what_its_account_may(bench: Bench, name: str, status: int) -> None:
    now = datetime.now(UTC)
    issue_token(bench, name, "k" * 40, label="stock", days=1, actor="olga", at=now)
    program = _program(bench)
    program.headers["Authorization"] = f"Bearer {'k' * 40}"
    assert program.get("api/v1/builds").status_code == 200
    assert program.post("api/v1/builds/1/edits", json=EDITS).status_code == status
    assert lay_open(bench, 1).event == (2 if status == 200 else 1)
    if status == 200:
        assert program.get("api/v1/builds/1/history").json()[0]["actor"] == name
    end_token(bench, tokens(bench, at=now)[0].digest[:12], actor="olga", at=now)
    assert program.get("api/v1/builds").status_code == 401


def test_a_session_is_no_token(bench: Bench) -> None:
    program = _signed_in(bench, "olga")
    assert program.get("api/v1/builds").status_code == 401
    program.headers["Authorization"] = f"Bearer {program.cookies[SESSION_COOKIE]}"
    assert program.get("api/v1/builds").status_code == 401


def test_an_edit_is_looked_at_by_the_role_of_the_moment(bench: Bench) -> None:
    role = [Role.DESIGNER]
    seen = as_seen_by(bench, lambda: Who(name="dora", role=role[0]))
    edit(seen, 1, 1, CHANGE, actor="dora", at=NOW)
    role[0] = Role.FLOOR
    with pytest.raises(NotAllowed, match="change nothing"):
        edit(seen, 1, 2, CHANGE, actor="dora", at=NOW)
    with pytest.raises(NotAllowed):
        new_entry(seen, "parts", "galley-1200", "own-galley")
    with pytest.raises(NotAllowed):
        seen.store.archive(1, actor="dora", at=NOW)
    ended = as_seen_by(bench, lambda: None)
    with pytest.raises(NotAllowed, match="sign in again"):
        edit(ended, 1, 2, CHANGE, actor="dora", at=NOW)
    assert lay_open(seen, 1).event == 2


def test_the_first_account_is_an_owner(tmp_path: Path) -> None:
    with set_up(tmp_path / "builds.db", Catalogue()).store as store:
        bench = Bench(catalogue=Catalogue(), store=store)
        assert not has_owner(bench)
        with pytest.raises(NotAllowed, match="owner"):
            make_account(
                bench, "dora", Role.DESIGNER, PASSWORD, salt=b"s" * 16, actor="test", at=NOW
            )


def test_a_token_lasts_a_year_at_most_and_ends_by_its_beginning(bench: Bench) -> None:
    for days in (0, 366):
        with pytest.raises(NotAllowed):
            issue_token(bench, "olga", "k" * 40, label="", days=days, actor="olga", at=NOW)
    for beginning in ("", "zz"):
        with pytest.raises(UnknownName):
            end_token(bench, beginning, actor="olga", at=NOW)
