"""The catalogue: looked through, the shop's own kept, price lists taken over row by row."""

import io
import zipfile
from collections.abc import Iterator
from pathlib import Path

import openpyxl
import pytest
from nicegui import ui
from nicegui.testing import User

from coachwright.actions.benching import Bench, lay_open, look_again, set_up
from coachwright.actions.shopkeeping import (
    entry,
    new_entry,
    remove_entry,
    save_entry,
    uses,
    with_value,
)
from coachwright.actions.taking_over import HandedIn, preview, take_over
from coachwright.catalogue.loading import Catalogue
from coachwright.errors import CatalogueError, CoachwrightError, NotAllowed, UnknownName
from tests.web.benches import lay

MAP = """\
format = 1
id = "north-{Article}"
currency = "EUR"

[[columns]]
column = "Description"
field = "name"

[[columns]]
column = "Weight"
field = "body.mass"
unit = "kg"

[defaults.body]
size = ["100 mm", "100 mm", "100 mm"]
"""


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Bench]:
    """Return a bench whose shop has a folder of its own."""
    shop = tmp_path / "shop"
    shop.mkdir()
    made = set_up(tmp_path / "builds.db", Catalogue(shop))
    with made.store:
        yield made


def test_a_copy_is_the_shops_own_and_changes_what_is_computed(bench: Bench) -> None:
    build_id = lay(bench)
    before = lay_open(bench, build_id).assessment.figure("weights.payload-left").value or 0.0
    assert new_entry(bench, "parts", "galley-1200", "galley-1200") == "galley-1200"
    mine = entry(bench.catalogue, "parts", "galley-1200")
    assert mine.own
    mass = next(line for line in mine.lines if line.label == "body.mass")
    save_entry(bench, "parts", with_value(mine.text, mass, "200 kg"), expected_id=mine.id)
    (seen,) = look_again(bench)
    after = seen.assessment.figure("weights.payload-left").value or 0.0
    assert after < before
    assert seen.before is not None
    remove_entry(bench, "parts", "galley-1200")
    look_again(bench)
    again = lay_open(bench, build_id).assessment.figure("weights.payload-left").value
    assert again == before


def test_uses_are_told_and_a_used_part_of_the_shop_stays(bench: Bench) -> None:
    build_id = lay(bench)
    found = uses(bench, "parts", "galley-1200")
    assert [(each.build_id, each.fittings) for each in found] == [(build_id, ("galley",))]
    assert uses(bench, "vehicles", "us-170-high-ext-11030")[0].fittings == ("base vehicle",)
    with pytest.raises(NotAllowed, match="comes with the program"):
        remove_entry(bench, "parts", "galley-1200")
    new_entry(bench, "parts", "galley-1200", "own-galley")
    assert uses(bench, "parts", "own-galley") == ()
    remove_entry(bench, "parts", "own-galley")
    with pytest.raises(UnknownName):
        entry(bench.catalogue, "parts", "own-galley")


def test_a_vehicle_of_the_shop_is_kept(bench: Bench) -> None:
    new_entry(bench, "vehicles", "eu-l3h2-3500", "own-van")
    assert "own-van" in bench.catalogue.vehicle_ids()


@pytest.mark.parametrize(
    "new_id",
    ["../../etc/passwd", "a/b", "", "A B", "x\0y", "..", "con.toml", "ü", "a" * 300, "-"],
)
def test_an_id_never_becomes_a_path(bench: Bench, tmp_path: Path, new_id: str) -> None:
    before = {path for path in tmp_path.rglob("*") if path.suffix == ".toml"}
    with pytest.raises(CoachwrightError):
        new_entry(bench, "parts", "galley-1200", new_id)
    text = entry(bench.catalogue, "parts", "galley-1200").text
    with pytest.raises(CoachwrightError):
        save_entry(bench, "parts", text.replace("galley-1200", new_id))
    with pytest.raises(CoachwrightError):
        remove_entry(bench, "parts", new_id)
    assert {path for path in tmp_path.rglob("*") if path.suffix == ".toml"} == before


@pytest.mark.parametrize(
    ("label", "typed"), [("body.mass", "heavy"), ("id", "another"), ("body.mass", "-3 kg")]
)
def test_a_value_that_is_none_is_said(bench: Bench, label: str, typed: str) -> None:
    new_entry(bench, "parts", "galley-1200", "own-galley")
    mine = entry(bench.catalogue, "parts", "own-galley")
    line = next(line for line in mine.lines if line.label == label)
    text = with_value(mine.text, line, typed)
    with pytest.raises(CatalogueError):
        save_entry(bench, "parts", text, expected_id=mine.id)
    assert entry(bench.catalogue, "parts", "own-galley").text == mine.text


def test_an_id_that_is_taken_stays(bench: Bench) -> None:
    with pytest.raises(NotAllowed, match="already"):
        new_entry(bench, "parts", "galley-1200", "galley-900")


def _csv(*rows: str) -> HandedIn:
    text = "Article,Description,Weight\n" + "\n".join(rows) + "\n"
    return HandedIn(name="../../evil/prices.csv", content=text.encode())


def test_a_list_is_looked_at_row_by_row_and_good_rows_are_kept(bench: Bench) -> None:
    found = preview(bench, _csv("7,A fan,2.5", "8,A pump,heavy", "9,A lamp,0.4"), MAP)
    assert [part.id for part in found.parts] == ["north-7", "north-9"]
    assert [fault.field for fault in found.faults] == ['row 3, column "Weight" (body.mass)']
    assert {fault.file for fault in found.faults} == {"the list"}
    assert not any(part.id in bench.catalogue.part_ids() for part in found.parts)
    assert take_over(bench, found) == ("north-7", "north-9")
    assert bench.catalogue.part("north-9").body.mass_kg == 0.4
    text = entry(bench.catalogue, "parts", "north-9").text
    assert text.startswith("# From the price list prices.csv, row 4.")


def test_trouble_with_the_map_or_the_list_is_part_of_the_preview(bench: Bench) -> None:
    assert preview(bench, _csv("7,A fan,2"), "format = 2").faults[0].file == "the map"
    wrong = preview(bench, HandedIn(name="a.csv", content=b"one,two\n1,2\n"), MAP)
    assert all(fault.file == "the list" for fault in wrong.faults)
    assert wrong.faults


@pytest.mark.parametrize(
    ("name", "content"),
    [
        ("a.exe", b"MZ"),
        ("a.html", b"<script>"),
        ("a.csv", b""),
        ("a", b"x"),
        ("a.csv", b"x" * 20_000_001),
    ],
    ids=["program", "page", "empty", "no ending", "too large"],
)
def test_what_is_no_list_is_refused(bench: Bench, name: str, content: bytes) -> None:
    with pytest.raises(NotAllowed):
        preview(bench, HandedIn(name=name, content=content), MAP)
    with pytest.raises(NotAllowed):
        preview(bench, _csv("7,A fan,2"), "#" * 300_000)


def _book() -> bytes:
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    for row in (("Article", "Description", "Weight"), ("7", "A fan", 2.5)):
        sheet.append(row)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def _with(content: bytes, name: str, inner: bytes) -> bytes:
    """Return a workbook with one of its inner files exchanged."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(content)) as old, zipfile.ZipFile(out, "w") as new:
        for each in old.namelist():
            data = inner if each == name else old.read(each)
            new.writestr(each, data, compress_type=zipfile.ZIP_DEFLATED)
    return out.getvalue()


def _laughs() -> bytes:
    entities = '<!ENTITY l0 "ha">'
    for n in range(1, 12):
        entities += f'<!ENTITY l{n} "{f"&l{n - 1};" * 10}">'
    return (
        f'<?xml version="1.0"?><!DOCTYPE x [{entities}]><worksheet xmlns="http://schemas.'
        'openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1"><c r="A1" '
        't="inlineStr"><is><t>&l11;</t></is></c></row></sheetData></worksheet>'
    ).encode()


def test_a_workbook_is_read(bench: Bench) -> None:
    found = preview(bench, HandedIn(name="a.xlsx", content=_book()), MAP)
    assert [part.id for part in found.parts] == ["north-7"]


def test_a_workbook_that_unpacks_to_too_much_is_refused(bench: Bench) -> None:
    bomb = _with(_book(), "xl/worksheets/sheet1.xml", b" " * 210_000_000)
    found = preview(bench, HandedIn(name="a.xlsx", content=bomb), MAP)
    assert "unpacks to" in found.faults[0].found


def test_entities_that_multiply_are_refused(bench: Bench) -> None:
    bomb = _with(_book(), "xl/worksheets/sheet1.xml", _laughs())
    found = preview(bench, HandedIn(name="a.xlsx", content=bomb), MAP)
    assert found.parts == ()
    assert "cannot be read" in found.faults[0].found


def test_entities_that_read_files_are_refused(bench: Bench, tmp_path: Path) -> None:
    secret = tmp_path / "secret.txt"
    secret.write_text("confidential", encoding="utf-8")
    inner = (
        f'<?xml version="1.0"?><!DOCTYPE x [<!ENTITY s SYSTEM "{secret.as_uri()}">]>'
        '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>'
        '<row r="1"><c r="A1" t="inlineStr"><is><t>&s;</t></is></c></row></sheetData></worksheet>'
    ).encode()
    found = preview(
        bench,
        HandedIn(name="a.xlsx", content=_with(_book(), "xl/worksheets/sheet1.xml", inner)),
        MAP,
    )
    assert found.parts == ()
    assert "confidential" not in repr(found)


async def test_parts_are_looked_for_and_opened(user: User, bench: Bench) -> None:
    lay(bench)
    await user.open("/catalogue")
    await user.should_see("Show all")
    user.find(marker="search").type("galley-1200")
    await user.should_see("1 parts", retries=60)
    user.find(marker="galley-1200").click()
    await user.should_see("Make it the shop's own", retries=60)
    await user.should_see("Night watch", retries=60)
    user.find("Make it the shop's own").click()
    await user.should_see("the shop's own, in place of a shipped one", retries=60)
    assert entry(bench.catalogue, "parts", "galley-1200").own


async def test_nothing_is_looked_at_before_a_list_is_handed_in(user: User) -> None:
    await user.open("/catalogue")
    user.find(kind=ui.button, content="Price list").click()
    await user.should_see("A supplier's price list")
    user.find(marker="look").click()
    await user.should_see("hand in a list first")
