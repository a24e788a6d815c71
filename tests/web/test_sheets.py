"""The sheets of a build at the bench: what they say, in whose units, and what can be done."""

from collections import Counter
from datetime import UTC, datetime

import pytest
from nicegui.testing import User

from coachwright.actions.benching import Bench, OnBench, edit, lay_open
from coachwright.actions.deciding import acceptance, open_to_accept, withdrawal
from coachwright.errors import BuildFileError, CallError
from coachwright.model.finding import Finding, Outcome
from coachwright.units import shown, worded
from tests.web.benches import lay

NOW = datetime(2026, 5, 5, 10, 0, tzinfo=UTC)


def _laid(bench: Bench, demo_id: str = "night-watch") -> OnBench:
    return lay_open(bench, lay(bench, demo_id))


def _first(work: OnBench, outcome: Outcome) -> Finding:
    return next(each for each in work.assessment.findings if each.outcome is outcome)


async def test_findings_show_what_is_broken_and_hide_what_is_met(user: User, bench: Bench) -> None:
    work = _laid(bench)
    await user.open(f"/build/{work.build_id}/findings")
    await user.should_see(worded(_first(work, Outcome.BROKEN).title, "us"))
    met = next(
        each
        for each in work.assessment.findings
        if each.outcome is Outcome.MET
        and not any(other.title == each.title for other in _shown(work))
    )
    await user.should_not_see(worded(met.title, "us"))
    user.find(content="✓ met").click()
    await user.should_see(worded(met.title, "us"))


def _shown(work: OnBench) -> list[Finding]:
    wanted = (Outcome.BROKEN, Outcome.UNKNOWN)
    return [each for each in work.assessment.findings if each.outcome in wanted]


async def test_an_acceptance_is_kept_in_the_sheet_and_shown(user: User, bench: Bench) -> None:
    work = _laid(bench)
    await user.open(f"/build/{work.build_id}/findings")
    rules = Counter(each.rule for each in work.assessment.findings if open_to_accept(each))
    user.find(marker=f"accept-{next(rule for rule, count in rules.items() if count == 1)}").click()
    user.find("Your role in the shop").type("workshop master")
    user.find("Why it may stay so").type("agreed with the customer")
    user.find(marker="accept-it").click()
    await user.should_see("Accepted by the workshop master: agreed with the customer.")
    kept = lay_open(bench, work.build_id)
    assert [each.role for each in kept.sheet.decisions][-1] == "workshop master"


@pytest.mark.parametrize(
    ("slug", "seen"),
    [
        ("weights", "What is left under each rating"),
        ("weights", "Weighbridge"),
        ("energy", "The day, in and out"),
        ("energy", "How long can I run"),
        ("water", "Hot water"),
        ("road", "Size and angles"),
        ("room", "Headroom on the ways"),
        ("papers", "Print the job pack"),
    ],
)
async def test_a_sheet_shows_its_parts(user: User, bench: Bench, slug: str, seen: str) -> None:
    work = _laid(bench)
    await user.open(f"/build/{work.build_id}/{slug}")
    await user.should_see(seen)


async def test_weights_are_shown_in_the_reader_s_units(user: User, bench: Bench) -> None:
    work = _laid(bench)
    total = work.assessment.figure("weights.total-travelling")
    await user.open(f"/build/{work.build_id}/weights")
    await user.should_see(shown(total.value, "kg", "us").replace(" ", "\N{NO-BREAK SPACE}"))
    await user.open(f"/build/{lay(bench, 'winter-kit')}/weights")
    await user.should_see("kg")


async def test_how_long_is_answered_as_for_the_loads_of_the_build(
    user: User, bench: Bench
) -> None:
    work = _laid(bench)
    await user.open(f"/build/{work.build_id}/energy")
    user.find(marker="draw").clear().type("100 W")
    user.find(marker="duty").clear().type("25")
    user.find(content="Answer").click()
    await user.should_see("drawing 25.0")
    user.find(marker="draw").clear().type("a lot")
    user.find(content="Answer").click()
    await user.should_see("draw: write a power")


def test_a_decision_and_its_withdrawal_are_edits_like_any_other(bench: Bench) -> None:
    work = _laid(bench)
    finding = next(each for each in work.assessment.findings if open_to_accept(each))
    with pytest.raises(BuildFileError, match="your role"):
        acceptance(work, finding, role=" ", reason="x", date=NOW.date())
    made = acceptance(work, finding, role="master", reason="agreed", date=NOW.date())
    after = edit(bench, work.build_id, work.event, made, actor="designer", at=NOW)
    assert isinstance(after, OnBench)
    same = [
        each
        for each in after.assessment.findings
        if (each.rule, each.subject) == (finding.rule, finding.subject)
    ]
    assert all(each.accepted is not None and each.accepted.role == "master" for each in same)
    assert all(each.outcome is finding.outcome for each in same)
    back = withdrawal(after, finding)
    last = edit(bench, work.build_id, after.event, back, actor="designer", at=NOW)
    assert isinstance(last, OnBench)
    assert last.sheet.decisions == work.sheet.decisions
    with pytest.raises(CallError, match="not accepted"):
        withdrawal(last, finding)
