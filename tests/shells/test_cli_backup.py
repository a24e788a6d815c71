"""``coachwright backup`` and ``coachwright restore``: the shop's whole memory in one file."""

from pathlib import Path

import pytest

from coachwright.store.opening import open_store
from tests.shells.running import Runner
from tests.store.sheets import NOW, SHEET


@pytest.fixture
def store(run: Runner, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return the file of a store with one build, where the commands look for it."""
    monkeypatch.delenv("COACHWRIGHT_DATABASE", raising=False)
    file = tmp_path / "data" / "coachwright" / "builds.db"
    with open_store(file) as opened:
        opened.create_build(SHEET, actor="ann", at=NOW)
    return file


def test_a_backup_is_put_back_and_what_was_there_is_kept(run: Runner, store: Path) -> None:
    ran = run("backup", "monday.db")
    assert (ran.code, ran.err) == (0, "")
    assert "coachwright restore monday.db" in ran.out
    with open_store(store) as opened:
        opened.create_build(SHEET, actor="ann", at=NOW)
    ran = run("restore", "monday.db")
    assert (ran.code, ran.err) == (0, "")
    kept = store.with_name("builds.db.replaced-1")
    assert str(kept) in ran.out
    with open_store(store) as opened:
        assert len(opened.builds()) == 1
        assert opened.audit()[0].deed == "backup put back"
    with open_store(kept) as opened:
        assert len(opened.builds()) == 2


def test_the_address_may_name_another_store(
    run: Runner, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    other = tmp_path / "shop" / "all.db"
    with open_store(other) as opened:
        opened.create_build(SHEET, actor="ann", at=NOW)
    monkeypatch.setenv("COACHWRIGHT_DATABASE", str(other))
    assert run("backup", "monday.db").code == 0
    monkeypatch.setenv("COACHWRIGHT_DATABASE", str(tmp_path / "new.db"))
    ran = run("restore", "monday.db")
    assert ran.code == 0
    assert "What it held before" not in ran.out
    with open_store(tmp_path / "new.db") as opened:
        assert len(opened.builds()) == 1


def test_trouble_is_one_plain_line_and_changes_nothing(run: Runner, store: Path) -> None:
    ran = run("restore", "nothing.db")
    assert ran.code == 2
    assert ran.err == "nothing.db is not there; name a file that backup has written\n"
    Path("other.db").write_text("no store")
    ran = run("restore", "other.db")
    assert ran.code == 2
    assert "not a store of builds" in ran.err
    assert run("backup", "monday.db").code == 0
    ran = run("backup", "monday.db")
    assert ran.code == 2
    assert ran.err == "monday.db is there already; name another file\n"
    with open_store(store) as opened:
        assert run("restore", "monday.db").err.startswith(f"the store {store} is open in another")
        assert len(opened.builds()) == 1


def test_a_store_that_is_not_there_yet_has_no_backup(run: Runner, tmp_path: Path) -> None:
    ran = run("backup", "monday.db")
    assert ran.code == 2
    assert "is not there yet" in ran.err
    assert not (tmp_path / "monday.db").exists()
