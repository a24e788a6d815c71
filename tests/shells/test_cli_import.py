"""``coachwright parts import``: a supplier's price list, faults row by row, nothing half done."""

import io
import json
import tomllib
import zipfile
from pathlib import Path
from typing import Any, NamedTuple

import openpyxl
import pytest

from coachwright.actions import price_list
from coachwright.catalogue.loading import Catalogue
from tests.shells.running import Ran, Runner

MAP = """
format = 1
id = "north-{Article}"
currency = "EUR"
facet = "battery"

[[columns]]
column = "Name"
field = "name"

[[columns]]
column = "Weight"
field = "body.mass"
unit = "kg"

[[columns]]
column = "Size"
field = "body.size"
unit = "mm"

[[columns]]
column = "Capacity"
field = "capacity"
unit = "Ah"

[[columns]]
column = "Price"
field = "price.price"

[[columns]]
column = "Heated"
field = "heated"
words = { ja = "true", nein = "false" }

[defaults.battery]
chemistry = "LFP"
nominal = "12.8 V"
charge_limit = "50 A"
discharge_limit = "100 A"
"""
HEADING = "Article;Name;Weight;Size;Capacity;Price;Heated"
GOOD = f"""{HEADING}
A-100;Block 100;11.5;330 x 172 x 220;100;560.00;ja
A 200;Block 200;22.5 kg;52 x 27 x 22 cm;200 Ah;1040;nein
"""
COMMENTED = """# measured by us
id = "north-a-100"
name = "Block 100"

[body]
size = ["330 mm", "172 mm", "220 mm"]
mass = "11.43 kg"  # on our own scales
source = "weighed"

[battery]
chemistry = "LFP"
nominal = "12.8 V"
capacity = "100 Ah"
charge_limit = "50 A"
discharge_limit = "100 A"

[price]
price = ["555.00 EUR", "480.00 GBP"]  # till June
lead_time = "12 d"
"""


def _with_commas(text: str) -> str:
    for number in ("22.5", "11.5", "560.00"):
        text = text.replace(number, number.replace(".", ","))
    return text


class Shop:
    """A shop's folder, a map and a price list, and the command over them."""

    def __init__(self, run: Runner, folder: Path) -> None:
        self._run = run
        self.folder = folder / "shop"
        self.map = folder / "map.toml"
        self.prices = folder / "prices.csv"
        self.map.write_text(MAP, encoding="utf-8")
        self.prices.write_text(GOOD, encoding="utf-8")

    def load(self, *options: str) -> Ran:
        """Run the import."""
        return self._run(
            "--shop", self.folder, "parts", "import", self.prices, "--map", self.map, *options
        )

    def part(self, part_id: str) -> dict[str, Any]:
        """Return a part of the shop as its file holds it."""
        path = self.folder / "parts" / f"{part_id}.toml"
        return tomllib.loads(path.read_text(encoding="utf-8"))

    def files(self) -> list[str]:
        """Return the names of all files in the shop's folder."""
        return sorted(path.name for path in self.folder.rglob("*") if path.is_file())


@pytest.fixture
def shop(run: Runner, tmp_path: Path) -> Shop:
    """Return a shop without parts of its own."""
    return Shop(run, tmp_path)


def test_a_good_list_becomes_parts(shop: Shop) -> None:
    ran = shop.load()
    assert (ran.code, ran.err) == (0, "")
    assert "2 rows, 2 parts new or changed, 0 faults" in ran.out
    assert shop.files() == ["north-a-100.toml", "north-a-200.toml"]
    part = Catalogue(shop.folder).part("north-a-200")
    assert part.body.size_mm == (520, 270, 220)
    assert part.body.mass_kg == 22.5
    assert part.battery is not None
    assert (part.battery.capacity_ah, part.battery.heated) == (200, False)
    assert part.price is not None
    assert part.price.price[0].text() == "1040.00 EUR"
    text = (shop.folder / "parts" / "north-a-100.toml").read_text(encoding="utf-8")
    assert text.startswith("# From the price list prices.csv, row 2.\n")


def test_the_same_list_again_changes_nothing(shop: Shop) -> None:
    shop.load()
    report = json.loads(shop.load("--json").out)
    assert [part["action"] for part in report["parts"]] == ["unchanged", "unchanged"]
    assert report["written"] == []


def test_a_dry_run_writes_nothing(shop: Shop) -> None:
    ran = shop.load("--dry-run")
    assert "nothing was written (dry run)" in ran.out
    assert shop.files() == []


def test_a_new_price_keeps_comments_and_other_fields(shop: Shop) -> None:
    path = shop.folder / "parts" / "north-a-100.toml"
    path.parent.mkdir(parents=True)
    path.write_text(COMMENTED, encoding="utf-8")
    shop.map.write_text(MAP.replace('"Weight"', '"Weight"'), encoding="utf-8")
    _only_price(shop)
    ran = shop.load("--json")
    assert ran.code == 0
    changed = COMMENTED.replace('["555.00 EUR", "480.00 GBP"]', '["480.00 GBP", "560.00 EUR"]')
    assert path.read_text(encoding="utf-8") == changed
    (planned,) = json.loads(ran.out)["parts"]
    assert planned["action"] == "changed"
    assert planned["changes"] == [
        {
            "field": "price.price",
            "before": "555.00 EUR, 480.00 GBP",
            "after": "480.00 GBP, 560.00 EUR",
        }
    ]


def _only_price(shop: Shop, article: str = "A-100", prefix: str = "north-") -> None:
    shop.map.write_text(
        f'format = 1\nid = "{prefix}{{Article}}"\ncurrency = "EUR"\n\n'
        '[[columns]]\ncolumn = "Price"\nfield = "price.price"\n',
        encoding="utf-8",
    )
    shop.prices.write_text(f"Article,Price\n{article},560.00\n", encoding="utf-8")


def test_a_shipped_part_is_overridden_openly(shop: Shop) -> None:
    _only_price(shop, article="lfp-12v-100ah", prefix="")
    shipped = Catalogue().part("lfp-12v-100ah")
    shop.prices.write_text("Article,Price\nLFP 12V 100Ah,599.90\n", encoding="utf-8")
    ran = shop.load()
    assert ran.code == 0
    assert "lfp-12v-100ah takes the place of the shipped part with this id" in ran.out
    own = Catalogue(shop.folder).part("lfp-12v-100ah")
    assert own.body == shipped.body
    assert own.battery == shipped.battery
    assert own.price is not None
    assert "599.90 EUR" in [price.text() for price in own.price.price]


class Bad(NamedTuple):
    """A row that cannot be used, and what must be said of it."""

    name: str
    row: str
    field: str
    found: str
    allowed: str


BAD = (
    Bad(
        "letters for a weight",
        "B1;Block;heavy;330 x 172 x 220;100;560;ja",
        'row 4, column "Weight" (body.mass)',
        '"heavy"',
        "a number with",
    ),
    Bad(
        "decimal comma",
        "B2;Block;11,5;330 x 172 x 220;100;560;ja",
        'row 4, column "Weight" (body.mass)',
        '"11,5"',
        '"." before the decimals',
    ),
    Bad(
        "thousands that were not declared",
        'B3;Block;11.5;330 x 172 x 220;100;"1,040.00";ja',
        'row 4, column "Price" (price.price)',
        '"1,040.00"',
        '"." before the decimals',
    ),
    Bad(
        "unit of something else",
        "B4;Block;11.5 mm;330 x 172 x 220;100;560;ja",
        'row 4, column "Weight" (body.mass)',
        '"11.5 mm"',
        "kg, g, t, lb, oz",
    ),
    Bad(
        "two sizes",
        "B5;Block;11.5;330 x 172;100;560;ja",
        'row 4, column "Size" (body.size)',
        '"330 x 172"',
        "length x width x height",
    ),
    Bad(
        "three decimals of money",
        "B6;Block;11.5;330 x 172 x 220;100;560.005;ja",
        'row 4, column "Price" (price.price)',
        '"560.005"',
        "two decimals at most",
    ),
    Bad(
        "negative price",
        "B7;Block;11.5;330 x 172 x 220;100;-5;ja",
        'row 4, column "Price" (price.price)',
        '"-5"',
        "not negative",
    ),
    Bad(
        "another currency",
        "B8;Block;11.5;330 x 172 x 220;100;560 USD;ja",
        'row 4, column "Price" (price.price)',
        '"560 USD"',
        "an amount of EUR",
    ),
    Bad(
        "neither yes nor no",
        "B9;Block;11.5;330 x 172 x 220;100;560;vielleicht",
        'row 4, column "Heated" (battery.heated)',
        '"vielleicht"',
        "true, false, yes, no",
    ),
    Bad(
        "out of range",
        "B10;Block;-3;330 x 172 x 220;100;560;ja",
        'row 4, column "Weight" (body.mass)',
        '"-3"',
        "at least 0 kg",
    ),
    Bad(
        "empty where something is needed",
        "B11;Block;;330 x 172 x 220;100;560;ja",
        'row 4, column "Weight" (body.mass)',
        "nothing",
        "this field is required",
    ),
    Bad(
        "no article",
        ";Block;11.5;330 x 172 x 220;100;560;ja",
        "row 4 (id)",
        '"north"',
        "letters and digits",
    ),
    Bad(
        "the same article again",
        "a-100;Block;11.5;330 x 172 x 220;100;560;ja",
        "row 4 (id)",
        '"north-a-100", as in row 2',
        "each part once",
    ),
    Bad(
        "a row that has slipped",
        "B12;Block; large;11.5;330 x 172 x 220;100;560;ja",
        "row 4",
        "cells beyond the last heading: ja",
        "no more cells than headings",
    ),
)


@pytest.mark.parametrize("bad", BAD, ids=lambda bad: bad.name.replace(" ", "-"))
def test_a_bad_row_is_named_and_nothing_is_written(shop: Shop, bad: Bad) -> None:
    if bad.name == "no article":
        shop.map.write_text(MAP.replace("north-{Article}", "{Article}"), encoding="utf-8")
        bad = bad._replace(found='""')
    shop.prices.write_text(f"{GOOD}{bad.row}\n", encoding="utf-8")
    ran = shop.load()
    assert (ran.code, ran.out) == (2, "")
    start = f"{shop.prices}: {bad.field}: found {bad.found}; allowed: "
    lines = [line for line in ran.err.splitlines() if line.startswith(start)]
    assert lines, ran.err
    assert bad.allowed in lines[0]
    assert shop.files() == []


def test_every_fault_of_every_row_is_said(shop: Shop) -> None:
    rows = "\n".join(bad.row for bad in BAD if bad.name != "no article")
    shop.prices.write_text(f"{GOOD}{rows}\n", encoding="utf-8")
    report = json.loads(shop.load("--json").out)
    assert len({fault["field"].split(",")[0].split(" (")[0] for fault in report["faults"]}) == 13
    assert shop.files() == []


def test_good_rows_can_be_taken_although_some_are_not(shop: Shop) -> None:
    shop.prices.write_text(f"{GOOD}{BAD[0].row}\n", encoding="utf-8")
    ran = shop.load("--accept-good-rows")
    assert ran.code == 0
    assert "row 4" in ran.err
    assert "3 rows, 2 parts new or changed, 1 faults" in ran.out
    assert shop.files() == ["north-a-100.toml", "north-a-200.toml"]


@pytest.mark.parametrize(
    ("content", "settings"),
    [
        (b"\xef\xbb\xbf" + GOOD.encode(), ""),
        (GOOD.replace(";", ",").encode(), ""),
        (GOOD.replace(";", "\t").encode(), ""),
        (GOOD.replace("Block", "Bl\u00f6ck").encode("latin-1"), 'encoding = "latin-1"\n'),
        (GOOD.encode("utf-16"), ""),
        (_with_commas(GOOD).encode(), 'decimal = ","\n'),
        (
            _with_commas(GOOD.replace(";1040", ";1.040,00")).encode(),
            'decimal = ","\nthousands = "."\n',
        ),
        (f"Price list\n\n{GOOD}".encode(), "heading_row = 3\n"),
        (GOOD.replace("\n", "\r\n").encode(), ""),
        (GOOD.replace("\nA 200", "\n;;;;;;\nA 200").encode(), ""),
    ],
    ids=[
        "mark at the beginning",
        "commas",
        "tabs",
        "latin-1",
        "utf-16",
        "decimal comma",
        "thousands",
        "title above",
        "other line ends",
        "empty row",
    ],
)
def test_lists_as_they_really_come(shop: Shop, content: bytes, settings: str) -> None:
    shop.prices.write_bytes(content)
    shop.map.write_text(MAP.replace("facet =", f"{settings}facet ="), encoding="utf-8")
    ran = shop.load()
    assert (ran.code, ran.err) == (0, "")
    assert shop.part("north-a-200")["price"]["price"] == ["1040.00 EUR"]
    assert shop.part("north-a-100")["body"]["mass"] == "11.5 kg"


@pytest.mark.parametrize(
    ("name", "content", "said"),
    [
        ("prices.csv", GOOD.replace("Block", "Bl\u00f6ck").encode("latin-1"), "not utf-8"),
        ("prices.csv", GOOD.replace("Weight", "Mass").encode(), 'no heading "Weight"'),
        ("prices.csv", GOOD.replace("Name", "Price").encode(), '"Price" 2 times'),
        ("prices.csv", b"", "no heading"),
        ("prices.csv", GOOD.replace("560.00", '"560').encode(), "complete quotes"),
        ("prices.csv", GOOD.encode() + b"\0", "zero bytes"),
        ("prices.xlsx", GOOD.encode(), "no XLSX workbook"),
        ("prices.xlsx", b"PK\x05\x06" + bytes(18), "cannot be read"),
        ("prices.ods", GOOD.encode(), ".csv or .xlsx"),
    ],
)
def test_a_list_that_cannot_be_read_is_refused(
    shop: Shop, name: str, content: bytes, said: str
) -> None:
    shop.prices = shop.prices.with_name(name)
    shop.prices.write_bytes(content)
    ran = shop.load()
    assert ran.code == 2
    assert ran.err.startswith(f"{shop.prices}: ")
    assert said in ran.err
    assert "Traceback" not in ran.err
    assert shop.files() == []


def test_a_list_that_is_not_there_is_said(shop: Shop) -> None:
    shop.prices.unlink()
    assert "no such file" in shop.load().err
    shop.prices.mkdir()
    assert "a folder" in shop.load().err


def _workbook(path: Path, rows: list[list[Any]], title: str = "Prices") -> None:
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    sheet.title = title
    for row in rows:
        sheet.append(row)
    book.save(path)


ROWS: list[list[Any]] = [
    HEADING.split(";"),
    ["A-100", "Block 100", 11.5, "330 x 172 x 220", 100, 560.0, "ja"],
    ["A 200", "Block 200", "22.5 kg", "52 x 27 x 22 cm", "200 Ah", 1040, "nein"],
]


def test_a_workbook_is_read(shop: Shop) -> None:
    shop.prices = shop.prices.with_name("prices.xlsx")
    _workbook(shop.prices, ROWS)
    ran = shop.load()
    assert (ran.code, ran.err) == (0, "")
    assert shop.part("north-a-100")["body"]["mass"] == "11.5 kg"
    assert shop.part("north-a-200")["price"]["price"] == ["1040.00 EUR"]


def test_a_number_as_article_has_no_decimals(shop: Shop) -> None:
    shop.prices = shop.prices.with_name("prices.xlsx")
    _workbook(shop.prices, [ROWS[0], [4711.0, *ROWS[1][1:]]])
    assert shop.load().code == 0
    assert shop.files() == ["north-4711.toml"]


def test_a_sheet_is_asked_for_by_name(shop: Shop) -> None:
    shop.prices = shop.prices.with_name("prices.xlsx")
    _workbook(shop.prices, ROWS)
    shop.map.write_text(MAP.replace("facet =", 'sheet = "Summer"\nfacet ='), encoding="utf-8")
    assert 'no sheet "Summer"; allowed: one of the sheets: Prices' in shop.load().err


def test_a_workbook_that_unpacks_without_end_is_refused(
    shop: Shop, monkeypatch: pytest.MonkeyPatch
) -> None:
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("xl/worksheets/sheet1.xml", bytes(3_000_000))
    monkeypatch.setattr(price_list, "MOST_UNPACKED_BYTES", 2_000_000)
    shop.prices = shop.prices.with_name("prices.xlsx")
    shop.prices.write_bytes(packed.getvalue())
    assert "unpacks to 3000000 bytes; allowed: at most 2000000 bytes" in shop.load().err


@pytest.mark.parametrize("name", ["prices.csv", "prices.xlsx"])
def test_too_many_rows_are_refused(shop: Shop, monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    monkeypatch.setattr(price_list, "MOST_ROWS", 1)
    shop.prices = shop.prices.with_name(name)
    if name.endswith("csv"):
        shop.prices.write_text(GOOD, encoding="utf-8")
    else:
        _workbook(shop.prices, ROWS)
    assert "more than 1 rows" in shop.load().err


def test_too_large_a_file_is_refused(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(price_list, "MOST_BYTES", 10)
    assert "allowed: at most 10 bytes" in shop.load().err


@pytest.mark.parametrize(
    ("old", "new", "field", "said"),
    [
        ('"body.mass"', '"body.mas"', "columns[1].field (Weight)", "did you mean 'body.mass'?"),
        ('field = "capacity"', 'field = "id"', "columns[3].field (Capacity)", "a field of a part"),
        ('unit = "kg"', 'unit = "mm"', "columns[1].unit (Weight)", "one of: kg, g, t, lb, oz"),
        ('field = "name"', 'field = "name"\nunit = "kg"', "columns[0].unit (Name)", "no unit"),
        ('"battery"', '"batery"', "facet", "did you mean 'battery'?"),
        ("north-{Article}", "north", "id", "at least one column in braces"),
        ('currency = "EUR"', 'currency = "XYZ"', "currency", "one of 'EUR', 'GBP' or 'USD'"),
        ("facet =", 'thousands = "."\nfacet =', "thousands", "another sign than decimal"),
        ("[[columns]]", "[[colums]]", "columns", "this field is required"),
        ("format = 1", "format = = 1", "line 2", "TOML"),
    ],
)
def test_a_fault_of_the_map_is_said(shop: Shop, old: str, new: str, field: str, said: str) -> None:
    shop.map.write_text(MAP.replace(old, new), encoding="utf-8")
    ran = shop.load()
    assert ran.code == 2
    lines = [line for line in ran.err.splitlines() if line.startswith(f"{shop.map}: {field}: ")]
    assert lines, ran.err
    assert said in lines[0]
    assert shop.files() == []


def test_fields_of_lists_and_whole_numbers_can_be_mapped(shop: Shop) -> None:
    shop.map.write_text(
        'format = 1\nid = "{Code}"\ncurrency = "GBP"\n'
        + "".join(
            f'[[columns]]\ncolumn = "{column}"\nfield = "{field}"\n{more}'
            for column, field, more in (
                ("Code", "name", ""),
                ("kg", "body.mass", 'unit = "kg"\n'),
                ("L", "body.size[0]", 'unit = "mm"\n'),
                ("B", "body.size[1]", 'unit = "mm"\n'),
                ("H", "body.size[2]", 'unit = "mm"\n'),
                ("Draw", "dc_load.modes[0].draw", 'unit = "W"\n'),
                ("Berths", "bed.berths", ""),
                ("Cost", "price.cost", ""),
            )
        )
        + '[defaults]\ndc_load = { modes = [{ name = "on" }] }\n'
        'bed = { length = "1.9 m", width = "1.3 m" }\n',
        encoding="utf-8",
    )
    shop.prices.write_text("Code,kg,L,B,H,Draw,Berths,Cost\nLift,9,1,2,3,40,2,7\n", "utf-8")
    ran = shop.load()
    assert (ran.code, ran.err) == (0, "")
    part = shop.part("lift")
    assert part["body"]["size"] == ["1 mm", "2 mm", "3 mm"]
    assert part["dc_load"]["modes"] == [{"name": "on", "draw": "40 W"}]
    assert part["bed"]["berths"] == 2
    assert part["price"]["cost"] == ["7.00 GBP"]
    shop.prices.write_text("Code,kg,L,B,H,Draw,Berths,Cost\nLift,9,1,2,3,40,2.5,7\n", "utf-8")
    assert 'found "2.5"; allowed: a whole number' in shop.load().err


def test_where_the_folder_cannot_be_written_nothing_is(shop: Shop) -> None:
    shop.folder.parent.mkdir(exist_ok=True)
    shop.folder.write_text("in the way", encoding="utf-8")
    ran = shop.load()
    assert ran.code == 2
    assert "cannot be written" in ran.err


def test_what_a_hand_has_broken_in_the_shop_is_said(shop: Shop) -> None:
    path = shop.folder / "parts" / "north-a-100.toml"
    path.parent.mkdir(parents=True)
    path.write_text("id = = 3\n", encoding="utf-8")
    ran = shop.load()
    assert ran.code == 2
    assert ran.err.startswith(f"{path}: line 1: ")
