"""What the tests of the commands share."""

from pathlib import Path

import pytest

from tests.shells.running import Runner


@pytest.fixture
def run(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> Runner:
    """Return what runs a command, in an empty folder and with no shop of its own."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "kept"))
    monkeypatch.delenv("COACHWRIGHT_SHOP", raising=False)
    monkeypatch.delenv("COACHWRIGHT_DEBUG", raising=False)
    return Runner(capsys)
