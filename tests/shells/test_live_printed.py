"""What `coachwright live` prints, whole: golden, on a year made by hand that no physics moves.

Run once with ``COACHWRIGHT_UPDATE_GOLDEN=1`` to write it anew, then read the difference.
"""

import os
from pathlib import Path

import pytest

from coachwright.actions.living_aboard import Lived
from coachwright.assess import assess
from coachwright.cli.live import print_lived
from coachwright.cli.showing import console
from coachwright.living.figures import figures, sentence
from coachwright.living.model import Change
from tests.support.builds import build
from tests.support.living import drying, living, year

GOLDEN = Path(__file__).parent / "golden"
UPDATE = os.environ.get("COACHWRIGHT_UPDATE_GOLDEN") == "1"


def lived() -> Lived:
    at = year(origin="synthetic", caution="sun 13 % high at most", drying=drying(), fuel="diesel")
    made = figures(living(at))
    assert made.promise is not None
    return Lived(
        assessment=assess(build()),
        living=made,
        year=at,
        changes=(
            Change(
                name="one more panel",
                nine_of_ten_d=4.5,
                was_nine_of_ten_d=3.0,
                fuel_l=239.0,
                was_fuel_l=240.0,
                comfort_frac=0.99,
                was_comfort_frac=0.985,
            ),
        ),
        promise=sentence(made.promise, at.title),
    )


@pytest.mark.parametrize("system", ["metric", "us"])
def test_everything_is_printed_as_it_was(system: str, capsys: pytest.CaptureFixture[str]) -> None:
    print_lived(console(), lived(), system)
    out = capsys.readouterr().out
    assert all(len(line) <= 80 for line in out.splitlines())
    path = GOLDEN / f"live-{system}.txt"
    if UPDATE:
        path.parent.mkdir(exist_ok=True)
        path.write_text(out, encoding="utf-8")
    assert out == path.read_text(encoding="utf-8")
