"""The interface for other programs: the same actions, as JSON."""

import json
from collections.abc import AsyncIterator, Iterator
from pathlib import Path
from typing import Any

import pytest
from fastapi import FastAPI

from coachwright.actions.benching import Bench, lay_open
from coachwright.actions.checking import report_data
from coachwright.actions.demos import demo
from coachwright.web.door.rules import House
from coachwright.web.door.seating import open_door
from tests.web.benches import bench_in, lay
from tests.web.calling import Program

MASS = ["brief", "travellers", "surveyor-one", "mass"]


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Bench]:
    made = bench_in(tmp_path)
    with made.store:
        lay(made)
        yield made


@pytest.fixture
def client(bench: Bench) -> Program:
    app = FastAPI()
    open_door(app, bench, House())
    return Program(app=app)


def _put(path: list[str], value: object, base: int = 1) -> dict[str, Any]:
    return {"base_event": base, "edits": [{"do": "put", "path": path, "value": value}]}


def test_builds_are_listed_made_and_read(client: Program) -> None:
    made = client.post("builds", json={"text": demo("four-seats").text})
    assert made.status_code == 201
    listed = client.get("builds").json()
    assert {each["name"] for each in listed} == {"Night watch", made.json()["name"]}
    sheet = client.get(f"builds/{made.json()['build_id']}/sheet").json()
    assert sheet["text"] == demo("four-seats").text
    assert client.get("builds", params={"archived": True}).json() == []


def test_the_assessment_is_the_one_that_the_commands_print(client: Program, bench: Bench) -> None:
    found = client.get("builds/1/assessment").json()
    assert found["build"] == report_data(lay_open(bench, 1).assessment)["build"]
    assert found["verdict"]["stops"] == lay_open(bench, 1).verdict.stops


def test_an_edit_is_kept_and_its_figures_come_back(client: Program, bench: Bench) -> None:
    before = {each["name"]: each for each in client.get("builds/1/assessment").json()["headline"]}
    kept = client.post("builds/1/edits", json=_put(MASS, "130 kg"))
    assert kept.status_code == 200
    after = {each["name"]: each for each in kept.json()["headline"]}
    name = "weights.payload-left"
    assert after[name]["value"] < before[name]["value"]
    assert kept.json()["event"] == 2
    assert lay_open(bench, 1).event == 2


def test_an_edit_that_collides_is_not_kept_and_says_with_what(client: Program) -> None:
    client.post("builds/1/edits", json=_put(MASS, "130 kg"))
    lost = client.post("builds/1/edits", json=_put(MASS, "90 kg"))
    assert lost.status_code == 409
    told = lost.json()
    assert told["disputed"] == ["brief.travellers.surveyor-one.mass"]
    assert (told["mine"][0]["after"], told["theirs"][0]["after"]) == ("90 kg", "130 kg")
    again = client.post("builds/1/edits", json=_put(MASS, "90 kg", base=told["event"]))
    assert again.status_code == 200


def test_edits_of_different_places_are_merged(client: Program) -> None:
    client.post("builds/1/edits", json=_put(MASS, "130 kg"))
    other = client.post("builds/1/edits", json=_put(["brief", "stay", "parked"], "5 d"))
    assert other.status_code == 200
    text = client.get("builds/1/sheet").json()["text"]
    assert 'mass = "130 kg"' in text
    assert 'parked = "5 d"' in text


@pytest.mark.parametrize(
    "value",
    ["heavy", 80, None, {"a": None}, "\ud800", "x\0", [[[[[[[[[["deep"]]]]]]]]]]],
    ids=["words", "bare", "nothing", "nothing inside", "half a sign", "zero byte", "deep"],
)
def test_a_value_that_no_sheet_can_hold_is_told_with_its_fault(
    client: Program, value: object
) -> None:
    sent = json.dumps(_put(MASS, value))
    kind = {"Content-Type": "application/json"}
    refused = client.post("builds/1/edits", content=sent, headers=kind)
    assert refused.status_code == 422
    assert refused.json()["faults"]
    assert client.get("builds/1").json()["event"] == 1


def test_undo_redo_and_return(client: Program) -> None:
    client.post("builds/1/edits", json=_put(MASS, "130 kg"))
    assert client.post("builds/1/undo").json()["event"] == 3
    assert client.post("builds/1/redo").json()["event"] == 4
    assert client.post("builds/1/redo").status_code == 409
    gone = client.post("builds/1/return", json={"base_event": 4, "to_event": 1})
    assert gone.json()["event"] == 5
    deeds = [each["deed"] for each in client.get("builds/1/history").json()]
    assert deeds == ["returned", "redone", "undone", "edited", "created"]


def test_revisions_are_named_and_compared(client: Program) -> None:
    client.post("builds/1/edits", json=_put(MASS, "130 kg"))
    assert client.post("builds/1/revisions", json={"event": 1, "name": "B"}).status_code == 201
    assert client.post("builds/1/revisions", json={"event": 2, "name": "B"}).status_code == 409
    assert [each["name"] for each in client.get("builds/1/revisions").json()] == ["B"]
    found = client.get("builds/1/comparison", params={"before": 1, "after": 2}).json()
    assert any(each["name"] == "weights.payload-left" for each in found["figures"])
    assert "⟦" not in str(found)


def test_papers_are_printed(client: Program) -> None:
    names = [each["name"] for each in client.get("builds/1/papers").json()]
    paper = client.get(f"builds/1/papers/{names[0]}")
    assert paper.status_code == 200
    assert paper.content.startswith(b"%PDF-")
    for name in ("nothing.pdf", "..%2F..%2Fetc%2Fpasswd", "%00"):
        assert client.get(f"builds/1/papers/{name}").status_code == 404


def test_the_catalogue_is_read(client: Program) -> None:
    assert any(each["id"] == "galley-1200" for each in client.get("parts").json())
    assert client.get("parts/galley-1200").json()["body"]["mass"] == "35 kg"
    assert client.get("parts", params={"facet": "nothing"}).status_code == 404
    assert "eu-l3h2-3500" in client.get("vehicles").json()
    assert client.get("vehicles/eu-l3h2-3500").status_code == 200
    for name in ("..%2F..%2Fsecret", "a" * 5000, "%2e%2e"):
        assert client.get(f"parts/{name}").status_code in (404, 405)


def test_a_whole_sheet_takes_the_place_of_another(client: Program) -> None:
    text = client.get("builds/1/sheet").json()["text"].replace('"Night watch"', '"Day watch"')
    kept = client.put("builds/1/sheet", json={"base_event": 1, "text": text})
    assert kept.status_code == 200
    assert client.get("builds/1").json()["name"] == "Day watch"
    wrong = client.put("builds/1/sheet", json={"base_event": 2, "text": "format = 1"})
    assert wrong.status_code == 422


def test_what_is_too_large_is_refused(client: Program) -> None:
    large = client.post("builds", content=b"x" * 4_000_001)
    assert large.status_code == 413
    pieces = client.post("builds", content=_pieces())
    assert pieces.status_code == 413


async def _pieces() -> AsyncIterator[bytes]:
    for _ in range(5):
        yield b"x" * 1_000_000


def test_it_describes_itself(client: Program) -> None:
    found = client.get("openapi.json").json()
    assert found["openapi"].startswith("3.")
    assert "/builds/{build_id}/edits" in found["paths"]
    assert all("summary" in each for path in found["paths"].values() for each in path.values())
