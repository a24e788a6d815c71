"""Draw from the shell: each kind of file, and words for what cannot be drawn."""

import json
from pathlib import Path

import pytest
from ezdxf import recover

from tests.shells.running import Runner
from tests.support.source import ROOT

DEMO = ROOT / "demos" / "night-watch.toml"
BEGINS = {"svg": b"<svg ", "pdf": b"%PDF-", "glb": b"glTF", "dxf": b"  0"}


@pytest.mark.parametrize("ending", BEGINS)
def test_the_ending_says_what_is_written(run: Runner, tmp_path: Path, ending: str) -> None:
    out = tmp_path / f"drawing.{ending}"
    ran = run("draw", DEMO, "-o", out)
    assert (ran.code, ran.out) == (0, f"{out}\n")
    assert out.read_bytes().startswith(BEGINS[ending])
    assert [path.name for path in tmp_path.iterdir() if path.is_file()] == [out.name]


@pytest.mark.parametrize(
    "view",
    [
        "plan",
        "plan@hip",
        "plan@bed",
        "left",
        "right",
        "rear",
        "rear-open",
        "roof",
        "under",
        "side",
        "iso",
        "section@2400",
        "section@94 in",
    ],
)
def test_every_view_that_is_promised_can_be_drawn(run: Runner, tmp_path: Path, view: str) -> None:
    out = tmp_path / "view.svg"
    assert run("draw", DEMO, "--view", view, "-o", out).code == 0
    assert out.stat().st_size > 10_000


def test_the_set_is_one_pdf(run: Runner, tmp_path: Path) -> None:
    out = tmp_path / "set.pdf"
    assert run("draw", DEMO, "--view", "all", "-o", out).code == 0
    assert out.stat().st_size > 100_000


def test_a_dxf_opens_clean(run: Runner, tmp_path: Path) -> None:
    out = tmp_path / "plan.dxf"
    run("draw", DEMO, "-o", out)
    _, auditor = recover.readfile(out)
    assert not auditor.errors


def test_the_date_stands_in_the_title_block(run: Runner, tmp_path: Path) -> None:
    out = tmp_path / "plan.svg"
    run("draw", DEMO, "-o", out, "--date", "2027-04-15")
    assert ">2027-04-15<" in out.read_text(encoding="utf-8")


def test_json_names_the_file(run: Runner, tmp_path: Path) -> None:
    out = tmp_path / "plan.svg"
    assert json.loads(run("draw", DEMO, "-o", out, "--json").out) == {"written": [f"{out}"]}


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--view", "plam", "-o", "a.svg"), "there is no view 'plam'; did you mean 'plan'?"),
        (("-o", "a.png"), "there is no kind of drawing with the ending '.png'"),
        (("-o", "a"), "there is no kind of drawing with the ending '.'"),
        (("--view", "section@9000", "-o", "a.svg"), "choose a place between"),
        (("--view", "section@far", "-o", "a.svg"), "there is no view 'section@far'"),
        (("--view", "all", "-o", "a.dxf"), "write it as a .pdf, or name one view"),
    ],
)
def test_what_cannot_be_drawn_is_said_and_nothing_is_written(
    run: Runner, tmp_path: Path, words: tuple[str, ...], said: str
) -> None:
    ran = run("draw", DEMO, *words)
    assert ran.code == 2
    assert said in ran.err
    assert not [path for path in tmp_path.iterdir() if path.is_file()]


def test_what_is_there_stays_where_the_drawing_fails(run: Runner, tmp_path: Path) -> None:
    out = tmp_path / "plan.svg"
    out.write_text("kept")
    run("draw", DEMO, "--view", "section@9000", "-o", out)
    assert out.read_text() == "kept"


def test_a_faulty_build_is_told_with_its_faults(run: Runner, tmp_path: Path) -> None:
    (tmp_path / "bad.toml").write_text('format = 1\nname = ""\n')
    ran = run("draw", "bad.toml", "-o", "plan.svg")
    assert ran.code == 2
    assert "bad.toml" in ran.err
