"""``coachwright print``: all papers or none."""

import errno
import json
from pathlib import Path

import pytest

from coachwright.actions.writing import record_text
from coachwright.papers.pack import DOCUMENTS
from tests.shells.running import Runner
from tests.support.builds import sheet


@pytest.fixture
def build(tmp_path: Path) -> Path:
    """Return a build."""
    path = tmp_path / "build.toml"
    path.write_text(record_text(sheet()), encoding="utf-8")
    return path


def _names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_the_whole_pack_is_written_and_nothing_else(run: Runner, build: Path) -> None:
    ran = run("print", build, "-o", "out")
    assert (ran.code, ran.err) == (0, "")
    assert _names(Path("out")) == sorted(DOCUMENTS)
    assert all(path.stat().st_size > 1000 for path in Path("out").iterdir())
    assert "Next: open the papers in out" in ran.out


def test_single_documents_can_be_asked_for(run: Runner, build: Path) -> None:
    ran = run(
        "print",
        build,
        "--out",
        "out",
        "--only",
        "water-sheet",
        "--only",
        "parts-list.pdf",
        "--json",
    )
    assert json.loads(ran.out) == {"written": ["out/water-sheet.pdf", "out/parts-list.pdf"]}
    assert _names(Path("out")) == ["parts-list.pdf", "water-sheet.pdf"]


def test_an_unknown_document_says_which_there_are(run: Runner, build: Path) -> None:
    ran = run("print", build, "-o", "out", "--only", "weight-sheet")
    assert ran.code == 2
    assert "there is no document 'weight-sheet'" in ran.err
    assert "weight-statement" in ran.err
    assert not Path("out").exists()


def test_the_same_build_gives_the_same_bytes(run: Runner, build: Path) -> None:
    for folder in ("one", "two"):
        run("print", build, "-o", folder)
    for name in DOCUMENTS:
        assert (Path("one") / name).read_bytes() == (Path("two") / name).read_bytes(), name


def test_a_full_disk_leaves_what_was_there(
    run: Runner, build: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    run("print", build, "-o", "out")
    before = {path.name: path.read_bytes() for path in Path("out").iterdir()}
    written = []

    def full(handle: int) -> None:
        written.append(handle)
        if len(written) > 2:
            raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr("coachwright.actions.files.os.fsync", full)
    ran = run("print", build, "-o", "out")
    assert ran.code == 2
    assert "cannot be written: no space left on device; nothing was changed" in ran.err
    assert {path.name: path.read_bytes() for path in Path("out").iterdir()} == before


def test_a_file_in_place_of_the_folder_is_said(run: Runner, build: Path) -> None:
    Path("out").write_text("in the way", encoding="utf-8")
    ran = run("print", build, "-o", "out")
    assert ran.code == 2
    assert "cannot be written" in ran.err
    assert Path("out").read_text(encoding="utf-8") == "in the way"


def test_a_bad_build_prints_nothing(run: Runner, tmp_path: Path) -> None:
    bad = tmp_path / "bad.toml"
    bad.write_text("format = 2\n", encoding="utf-8")
    assert run("print", bad, "-o", "out").code == 2
    assert not Path("out").exists()
