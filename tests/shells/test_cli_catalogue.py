"""``parts``, ``vehicles``, ``standards`` and ``schema``: look through the catalogue."""

import json
import tomllib
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from coachwright.actions.schemas import RECORDS, schema
from coachwright.catalogue.loading import SHIPPED
from tests.shells.running import Runner

PART = """
id = "oak-shelf"
name = "Oak shelf"
body = { size = ["600 mm", "200 mm", "18 mm"], mass = "1.9 kg" }
price = { price = ["38.00 EUR"] }
carcass = { storage = "10 L" }
"""


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Return a shop's folder with one part of its own and one that overrides."""
    folder = tmp_path / "shop"
    (folder / "parts").mkdir(parents=True)
    (folder / "parts" / "oak-shelf.toml").write_text(PART, encoding="utf-8")
    shipped = (SHIPPED / "parts" / "lfp-12v-100ah.toml").read_text(encoding="utf-8")
    (folder / "parts" / "lfp-12v-100ah.toml").write_text(shipped, encoding="utf-8")
    return folder


def test_parts_are_listed_by_facet(run: Runner) -> None:
    rows = json.loads(run("parts", "list", "--facet", "battery", "--json").out)
    assert len(rows) > 3
    assert all("battery" in row["facets"] for row in rows)


def test_parts_are_found_by_words(run: Runner, shop: Path) -> None:
    ran = run("--shop", shop, "parts", "list", "--search", "SHELF oak")
    assert "oak-shelf (the shop's own)" in " ".join(ran.out.split())
    assert "1 parts" in ran.out


def test_no_part_is_no_fault(run: Runner) -> None:
    ran = run("parts", "list", "--search", "zeppelin")
    assert ran.code == 0
    assert "No part is like that" in ran.out


def test_an_unknown_facet_says_which_there_are(run: Runner) -> None:
    ran = run("parts", "list", "--facet", "batery")
    assert ran.code == 2
    assert "did you mean 'battery'?" in ran.err


def test_prices_are_shown_in_the_currency_asked_for(run: Runner) -> None:
    out = run("parts", "list", "--facet", "battery", "--currency", "GBP").out
    assert " GBP " in out
    assert " EUR " not in out


def test_a_list_fits_eighty_columns(run: Runner) -> None:
    for noun in ("parts", "vehicles", "standards"):
        assert max(map(len, run(noun, "list").out.splitlines())) <= 80


def test_a_part_is_shown_facet_by_facet(run: Runner, shop: Path) -> None:
    out = run("--shop", shop, "parts", "show", "oak-shelf", "--units", "us").out
    assert "oak-shelf (the shop's own)" in out
    assert "  size: 23.6 in × 7.9 in × 0.7 in" in out
    assert "  storage: 2.6 US gal" in out
    assert "  price: 38.00 EUR" in out


def test_an_override_is_shown_as_one(run: Runner, shop: Path) -> None:
    part = json.loads(run("--shop", shop, "parts", "show", "lfp-12v-100ah", "--json").out)
    assert part["origin"] == "the shop's own, in place of a shipped one"
    assert json.loads(run("parts", "show", "lfp-12v-100ah", "--json").out)["origin"] == "shipped"


def test_every_shipped_part_can_be_shown(run: Runner) -> None:
    for path in sorted((SHIPPED / "parts").glob("*.toml"))[::10]:
        assert run("parts", "show", path.stem).code == 0


def test_a_part_with_a_fault_is_named(run: Runner, shop: Path) -> None:
    path = shop / "parts" / "oak-shelf.toml"
    path.write_text(PART.replace('"1.9 kg"', "1.9"), encoding="utf-8")
    ran = run("--shop", shop, "parts", "list")
    assert ran.code == 2
    assert ran.err.startswith(f"{path}: body.mass: found the bare number 1.9; allowed: ")


def test_vehicles_are_listed_and_shown(run: Runner) -> None:
    rows = json.loads(run("vehicles", "list", "--json").out)
    assert {row["market"] for row in rows} == {"us", "eu", "uk"}
    for row in rows:
        assert row["id"] in run("vehicles", "list").out
        shown = run("vehicles", "show", row["id"]).out
        assert "ratings" in shown
        assert "nan" not in shown.split()


def test_a_vehicle_comes_as_json(run: Runner) -> None:
    data = json.loads(run("vehicles", "show", "eu-l3h2-3500", "--json").out)
    assert data["origin"] == "shipped"
    assert data["ratings"]["gross"] == "3500 kg"


def test_standards_are_listed_and_shown(run: Runner, shop: Path) -> None:
    assert run("standards", "list").code == 0
    (shop / "standards").mkdir()
    (shop / "standards" / "weekender.toml").write_text(STANDARD, encoding="utf-8")
    rows = json.loads(run("--shop", shop, "standards", "list", "--json").out)
    assert {"weekender"} <= {row["id"] for row in rows}
    assert "weekender" in run("--shop", shop, "standards", "list").out
    shown = run("--shop", shop, "standards", "show", "weekender").out
    assert "excludes shelf: no room for both" in shown
    assert "needs shelf" in shown
    data = json.loads(run("--shop", shop, "standards", "show", "weekender", "--json").out)
    assert data["origin"] == "the shop's own"


STANDARD = """
format = 1
name = "Weekender"
vehicle = "eu-l3h2-3500"
story = "For two nights."
fittings = [{ name = "shelf-low", part = "oak-shelf", at = ["2 m", "0 m", "0 m"] }]

[[offers]]
name = "shelf"
title = "Second shelf"

[[offers]]
name = "bench"
title = "Bench"
excludes = [{ option = "shelf", cause = "no room for both" }]

[[offers]]
name = "lamp"
title = "Lamp"
requires = ["shelf"]

[brief]
jurisdiction = "eu"
travellers = [{ name = "ida", mass = "70 kg", stature = "1700 mm" }]
climate = { cold_night = "0 degC", hot_day = "30 degC" }
stay = { parked = "2 d" }
habits = { water = "10 L/day" }
"""


def test_every_schema_is_one(run: Runner, tmp_path: Path) -> None:
    assert set(RECORDS) == {"part", "vehicle", "build", "assessment", "price-map"}
    for record in RECORDS:
        made = json.loads(run("schema", record).out)
        jsonschema.Draft202012Validator.check_schema(made)
    assert run("schema", "--out", tmp_path / "s").code == 0
    assert len(list((tmp_path / "s").iterdir())) == len(RECORDS)


def test_the_schemas_are_listed(run: Runner) -> None:
    assert set(RECORDS) <= set(run("schema").out.split())
    assert "did you mean 'part'?" in run("schema", "parts").err


@pytest.mark.parametrize(("kind", "record"), [("parts", "part"), ("vehicles", "vehicle")])
def test_the_shipped_files_validate_against_their_schema(kind: str, record: str) -> None:
    checker = jsonschema.Draft202012Validator(schema(record))
    for path in sorted((SHIPPED / kind).glob("*.toml")):
        data: Any = tomllib.loads(path.read_text(encoding="utf-8"))
        assert [error.message for error in checker.iter_errors(data)] == [], path.name
