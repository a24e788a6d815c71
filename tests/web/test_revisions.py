"""Revisions: named, compared, gone back to; nothing is lost by it."""

from nicegui import ui
from nicegui.testing import User

from coachwright.actions.benching import Bench, OnBench, assessed_at, edit, lay_open, return_to
from coachwright.actions.comparing import Reading
from coachwright.actions.revising import (
    difference_text,
    history,
    name_revision,
    points,
    revisions,
    side_by_side,
)
from coachwright.store.edits import Put
from tests.web.benches import NOW, lay

LONGER = (Put(path=("fittings", "galley", "part"), value="galley-1500"),)


def _edited(bench: Bench, build_id: int) -> OnBench:
    work = lay_open(bench, build_id)
    made = edit(bench, build_id, work.event, LONGER, actor="designer", at=NOW)
    assert isinstance(made, OnBench)
    return made


def test_two_states_stand_side_by_side(bench: Bench) -> None:
    build_id = lay(bench, "four-seats")
    work = lay_open(bench, build_id)
    names = [each.name for each in work.sheet.brief.travellers]
    heavier = (Put(path=("brief", "travellers", names[0], "mass"), value="140 kg"),)
    edit(bench, build_id, 1, heavier, actor="designer", at=NOW)
    side = side_by_side(bench, build_id, 1, 2, "metric")
    labels = {row.label: row for row in side.figures}
    assert labels["Payload left, travelling"].change.startswith("−")
    assert labels["Rear axle, travelling"].before.endswith(" kg")
    assert labels["Price of the parts"].change.startswith("+0.00")
    assert side.found.fittings == ()
    assert side.picture.startswith("<svg")


def test_states_that_are_the_same_differ_in_nothing(bench: Bench) -> None:
    build_id = lay(bench)
    side = side_by_side(bench, build_id, 1, 1, "us")
    assert (side.found.figures, side.found.fittings, side.found.findings) == ((), (), ())


def test_a_rule_that_judges_one_subject_twice_changes_only_where_it_does(bench: Bench) -> None:
    build_id = lay(bench)
    wanted = (Put(path=("brief", "wanted"), value=NOW.date()),)
    edit(bench, build_id, 1, wanted, actor="designer", at=NOW)
    assert side_by_side(bench, build_id, 1, 2, "us").found.findings == ()


def test_history_is_told_in_words(bench: Bench) -> None:
    build_id = lay(bench)
    for mass in ("60 kg", "70 kg"):
        work = lay_open(bench, build_id)
        change = (Put(path=("brief", "travellers", "surveyor-one", "mass"), value=mass),)
        edit(bench, build_id, work.event, change, actor="anna", at=NOW)
    return_to(bench, build_id, 3, 1, actor="anna", at=NOW)
    lines = history(bench, build_id, most=10)
    assert [line.said.partition(":")[0] for line in lines] == [
        "went back to edit 1",
        "edited",
        "edited",
        "began",
    ]
    assert lay_open(bench, build_id).text == bench.store.sheet(build_id, 1).text
    assert points(bench, build_id, most=2) == {4: "now: edit 4", 3: "edit 3", 1: "edit 1"}


def test_what_was_computed_of_an_earlier_state_is_that_state(bench: Bench) -> None:
    build_id = lay(bench)
    first = lay_open(bench, build_id).assessment
    change = (Put(path=("brief", "travellers", "surveyor-one", "mass"), value="60 kg"),)
    edit(bench, build_id, 1, change, actor="anna", at=NOW)
    name = "weights.payload-left"
    assert assessed_at(bench, build_id, 1).figure(name) == first.figure(name)
    assert assessed_at(bench, build_id, 2).figure(name) != first.figure(name)


def test_differences_have_their_sign() -> None:
    assert difference_text(Reading(value=12.0, unit="mm"), "metric") == "+12 mm"
    assert difference_text(Reading(value=-12.0, unit="mm"), "metric") == "−12 mm"
    assert difference_text(Reading(value=0.01, unit="mm"), "metric") == "0 mm"
    assert difference_text(Reading(value=None, unit="mm"), "metric") == "unknown"


async def test_a_state_is_named_compared_and_gone_back_to(user: User, bench: Bench) -> None:
    build_id = lay(bench)
    name_revision(bench, build_id, 1, "<b>B</b>", note="as shown", actor="anna", at=NOW)
    change = (Put(path=("brief", "travellers", "surveyor-one", "mass"), value="120 kg"),)
    edit(bench, build_id, 1, change, actor="anna", at=NOW)
    await user.open(f"/build/{build_id}/revisions")
    await user.should_see("<b>B</b>")
    user.find(marker="compare").click()
    await user.should_see("Payload left, travelling", retries=60)
    await user.should_see("No fitting differs.")
    user.find(marker="name-state").click()
    await user.should_see("Name it")
    user.find(kind=ui.input, content="Name").type("C")
    user.find(marker="do-it").click()
    await user.should_see("C (edit 2)", retries=60)
    assert next(each.name for each in revisions(bench, build_id)) == "C"
    user.find(content="Go back", kind=ui.button).click()
    await user.should_see("edit 3", retries=60)
