"""The brief's page: answers are kept at once, and everybody sees what they drive."""

from nicegui import ui
from nicegui.testing import User

from coachwright.actions.benching import Bench, lay_open
from tests.web.benches import lay


async def test_an_answer_is_kept_and_what_it_drives_moves(user: User, bench: Bench) -> None:
    build_id = lay(bench)
    await user.open(f"/build/{build_id}/brief")
    await user.should_see("Who travels")
    before = lay_open(bench, build_id).assessment.figure("weights.payload-left").value
    field = user.find(kind=ui.input, content="Weight, dressed").elements
    mass = min(field, key=lambda each: each.id)
    with user:
        mass.value = "250 lb"
    user.find(kind=ui.input, content="Weight, dressed").trigger("blur")
    await user.should_see("edit 2", retries=60)
    after = lay_open(bench, build_id)
    assert 'mass = "250 lb"' in after.text
    assert before is not None
    assert (after.assessment.figure("weights.payload-left").value or 0) < before


async def test_what_is_no_answer_is_said_at_the_field(user: User, bench: Bench) -> None:
    build_id = lay(bench)
    await user.open(f"/build/{build_id}/brief")
    field = next(iter(user.find(kind=ui.input, content="Days in one place").elements))
    with user:
        field.value = "four"
    user.find(kind=ui.input, content="Days in one place").trigger("blur")
    await user.should_see("four")
    await user.should_see('"four" does not do')
    assert lay_open(bench, build_id).event == 1


async def test_a_must_that_is_not_there_is_marked(user: User, bench: Bench) -> None:
    build_id = lay(bench)
    await user.open(f"/build/{build_id}/brief")
    user.find(kind=ui.checkbox, content="A carrier on the hitch").click()
    await user.should_see("A carrier on the hitch ✗ not there yet", retries=60)


async def test_devices_are_added_in_plain_words(user: User, bench: Bench) -> None:
    build_id = lay(bench)
    await user.open(f"/build/{build_id}/brief")
    user.find("Add a device").click()
    await user.should_see("Something that draws power")
    user.find(marker="do-it").click()
    await user.should_see("laptop-2", retries=60)
    user.find("Add somebody").click()
    await user.should_see("Somebody who travels")
