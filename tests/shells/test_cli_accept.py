"""``coachwright accept``: a decision goes into the file and nothing else changes."""

import json
from pathlib import Path

import pytest

from coachwright.actions.writing import record_text
from tests.shells.running import Runner
from tests.support.builds import sheet

WHO = ("--role", "customer", "--reason", 'sleeps "elsewhere"')


@pytest.fixture
def build(tmp_path: Path) -> Path:
    """Return a build with comments, in which a berth is missing: a stop."""
    path = tmp_path / "build.toml"
    text = record_text(sheet()).replace("[brief]", "# what they want\n[brief]  # really")
    path.write_text(text, encoding="utf-8")
    return path


def _decisions(run: Runner, build: Path, rule: str) -> list[object]:
    findings = json.loads(run("check", build, "--json").out)["findings"]
    return [finding["accepted"] for finding in findings if finding["rule"] == rule]


def test_a_decision_is_added_and_comments_stay(run: Runner, build: Path) -> None:
    before = build.read_text(encoding="utf-8")
    ran = run("accept", build, "wishes.enough-berths", *WHO, "--date", "2027-02-01")
    assert (ran.code, ran.err) == (0, "")
    after = build.read_text(encoding="utf-8")
    assert after.startswith(before.rstrip())
    assert "[brief]  # really" in after
    assert _decisions(run, build, "wishes.enough-berths") == [
        {"role": "customer", "reason": 'sleeps "elsewhere"'}
    ]


def test_a_stop_stays_broken(run: Runner, build: Path) -> None:
    said = run("accept", build, "wishes.enough-berths", *WHO).out
    assert "it stays broken" in said
    assert run("check", build).code == 1


def test_a_second_decision_joins_the_first(run: Runner, build: Path) -> None:
    run("accept", build, "wishes.enough-berths", *WHO)
    findings = json.loads(run("check", build, "--json").out)["findings"]
    other = next(
        finding
        for finding in findings
        if finding["outcome"] == "broken" and finding["accepted"] is None
    )
    ran = run("accept", build, other["rule"], "--subject", other["subject"], *WHO)
    assert ran.code == 0
    assert build.read_text(encoding="utf-8").count("[[decisions]]") == 2
    assert json.loads(run("check", build, "--json").out)["verdict"]["accepted"] == 2


def test_decisions_in_an_inline_list_are_joined(run: Runner, build: Path) -> None:
    text = build.read_text(encoding="utf-8")
    inline = 'decisions = [\n  { rule = "x.y", role = "customer", reason = "so" },  # why\n]\n'
    build.write_text(text.replace("\n\n", f"\n{inline}\n", 1), encoding="utf-8")
    assert run("accept", build, "wishes.enough-berths", *WHO).code == 0
    assert "},  # why" in build.read_text(encoding="utf-8")
    assert _decisions(run, build, "wishes.enough-berths") != [None]


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("wishes.enough-berth", *WHO), "did you mean 'wishes.enough-berths'?"),
        (
            ("wishes.enough-berths", "--subject", "attic", *WHO),
            "there is no subject of wishes.enough-berths",
        ),
        (("weights.gross", *WHO), "there is no rule 'weights.gross'"),
        (("wishes.enough-berths", "--role", "", "--reason", "so"), 'the decision: role: found ""'),
    ],
)
def test_what_cannot_be_accepted_leaves_the_file_alone(
    run: Runner, build: Path, arguments: tuple[str, ...], said: str
) -> None:
    before = build.read_bytes()
    ran = run("accept", build, *arguments)
    assert ran.code == 2
    assert said in ran.err
    assert build.read_bytes() == before


def test_nothing_is_accepted_twice(run: Runner, build: Path) -> None:
    run("accept", build, "wishes.enough-berths", *WHO)
    ran = run("accept", build, "wishes.enough-berths", *WHO)
    assert ran.code == 2
    assert "accepted already" in ran.err


def test_what_is_met_needs_no_acceptance(run: Runner, build: Path) -> None:
    findings = json.loads(run("check", build, "--json").out)["findings"]
    met = next(f for f in findings if f["outcome"] == "met")
    ran = run("accept", build, met["rule"], "--subject", met["subject"], *WHO)
    assert ran.code == 2
    assert "neither broken nor unknown" in ran.err


def test_an_accepted_unknown_is_shown_with_its_reason(run: Runner, build: Path) -> None:
    findings = json.loads(run("check", build, "--json").out)["findings"]
    unknown = next(f for f in findings if f["outcome"] == "unknown")
    assert run("accept", build, unknown["rule"], *WHO).code == 0
    out = " ".join(run("check", build).out.split())
    assert 'accepted by customer: sleeps "elsewhere"' in out
