"""A weighbridge ticket on the page Weights: entered, photographed, held against the model."""

import base64
from datetime import date

import pytest
from nicegui.testing import User

from coachwright.actions import weighing
from coachwright.actions.admitting import Who, as_seen_by
from coachwright.actions.benching import Bench, OnBench, edit, lay_open
from coachwright.actions.weighing import Answers
from coachwright.errors import BadInput, NotAllowed
from coachwright.store.records import Role
from coachwright.units import worded
from tests.web.benches import NOW, lay

TODAY = date(2026, 11, 12)
PNG = base64.b64decode(
    "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk"
    "+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=="
)


def _given(**texts: str) -> Answers:
    return Answers(day="2026-11-12", texts=texts, aboard=(), cargo=False)


def _weighed(bench: Bench, work: OnBench, given: Answers) -> OnBench:
    made = edit(bench, work.build_id, work.event, weighing.entered(given), actor="dora", at=NOW)
    assert isinstance(made, OnBench)
    return made


@pytest.fixture
def work(bench: Bench) -> OnBench:
    return lay_open(bench, lay(bench))


def test_a_ticket_is_kept_as_it_was_typed(bench: Bench, work: OnBench) -> None:
    name = weighing.travellers(work)[0]
    texts = {"total": "8120 lb", "front": "3600 lb", "rear": "4520 lb", "fuel": "75 %"}
    given = Answers(day="2026-11-12", texts=texts, aboard=(name,), cargo=True)
    made = _weighed(bench, work, given)
    ticket = made.build.ticket
    assert ticket is not None
    assert ticket.total_kg == pytest.approx(8120 * 0.45359237)  # NIST SP 811: 1 lb exactly
    assert (ticket.date, ticket.fuel_frac, ticket.aboard) == (TODAY, 0.75, (name,))
    assert ticket.cargo_aboard
    assert 'total = "8120 lb"' in made.text
    again = weighing.answers(made, today=date(2030, 1, 1))
    assert (again.day, again.aboard, again.cargo) == ("2026-11-12", (name,), True)
    assert {key: text for key, text in again.texts.items() if text} == texts


def test_wheels_and_their_axles_are_kept(bench: Bench, work: OnBench) -> None:
    wheels = {each.id: f"{900 + number} kg" for number, each in enumerate(weighing.WHEELS)}
    made = _weighed(bench, work, _given(total="3606 kg", **wheels))
    check = made.assessment.weights.ticket
    assert check is not None
    assert {row.subject for row in check.rows} >= {"front left wheel", "rear right wheel"}


@pytest.mark.parametrize(
    ("given", "said"),
    [
        (_given(total=""), "weigh the whole vehicle at once"),
        (_given(total="3600 kg", **{"wheels.front_left": "900 kg"}), "all four wheels or none"),
        (Answers(day="soon", texts={"total": "1 kg"}, aboard=(), cargo=False), "give the day"),
    ],
)
def test_a_ticket_that_cannot_be_says_what_to_do(given: Answers, said: str) -> None:
    with pytest.raises(BadInput) as caught:
        weighing.entered(given)
    assert said in caught.value.faults[0].sentence()


def test_a_reading_without_its_unit_is_refused_by_the_sheet(bench: Bench, work: OnBench) -> None:
    with pytest.raises(BadInput) as caught:
        _weighed(bench, work, _given(total="3600"))
    assert caught.value.faults[0].field.startswith("ticket.total")


def test_the_scales_say_where_the_model_is_wrong(bench: Bench, work: OnBench) -> None:
    """The sentence is held against the difference worked out by hand from the two readings."""
    plain = _weighed(bench, work, _given(total="3600 kg"))
    check = plain.assessment.weights.ticket
    assert check is not None
    predicted_kg = check.predicted.total.nominal_kg
    front_kg = check.predicted.front.nominal_kg
    heavy = _given(
        total=f"{predicted_kg + 200:.1f} kg",
        front=f"{front_kg:.1f} kg",
        rear=f"{predicted_kg - front_kg + 200:.1f} kg",
    )
    made = _weighed(bench, plain, heavy)
    said = [worded(each) for each in weighing.told_by_the_scales(made)]
    assert said[0].startswith("Vehicle: 200 kg heavier on the scales than computed")
    assert any(each.startswith("Rear axle: 200 kg heavier") for each in said)
    assert not any(each.startswith("Front axle") for each in said)
    good = _given(
        total=f"{predicted_kg:.1f} kg",
        front=f"{front_kg:.1f} kg",
        rear=f"{predicted_kg - front_kg:.1f} kg",
    )
    (fine,) = weighing.told_by_the_scales(_weighed(bench, made, good))
    assert fine.startswith("Every reading is as near")


def test_axles_that_contradict_the_total_are_told(bench: Bench, work: OnBench) -> None:
    """Three readings of ±10 kg, each apart: together √3·10 = 17.3 kg (JCGM 100, 5.1)."""
    texts = {"total": "3600 kg", "front": "1700 kg", "rear": "1930 kg"}
    said = weighing.told_by_the_scales(_weighed(bench, work, _given(**texts)))
    assert "30 kg more than the whole vehicle" in worded(said[-1])
    assert "may be 17.3 kg apart" in worded(said[-1])


def test_a_ticket_is_taken_away(bench: Bench, work: OnBench) -> None:
    made = _weighed(bench, work, _given(total="3600 kg"))
    back = edit(bench, made.build_id, made.event, weighing.taken_away(), actor="dora", at=NOW)
    assert isinstance(back, OnBench)
    assert back.build.ticket is None
    assert weighing.told_by_the_scales(back) == ()


def test_a_photograph_is_kept_with_the_build_and_told_by_its_bytes(
    bench: Bench, work: OnBench
) -> None:
    kept = weighing.attach_photograph(
        bench, work, PNG, name="a/../scale.png", actor="dora", at=NOW
    )
    assert (kept.name, kept.media_type, kept.note) == (
        "scale.png",
        "image/png",
        "weighbridge ticket",
    )
    assert weighing.photographs(bench, work.build_id) == (kept,)
    assert weighing.photograph(bench, work.build_id, kept.digest) == (kept, PNG)
    for content in (b"", b"<svg onload=x>", b"GIF89a", b"\x89PNG\r\n\x1a\n" + bytes(10_000_000)):
        with pytest.raises(NotAllowed):
            weighing.attach_photograph(bench, work, content, name="x.png", actor="dora", at=NOW)


def test_the_floor_attaches_nothing(bench: Bench, work: OnBench) -> None:
    seen = as_seen_by(bench, lambda: Who(name="finn", role=Role.FLOOR))
    with pytest.raises(NotAllowed):
        weighing.attach_photograph(seen, work, PNG, name="x.png", actor="finn", at=NOW)


# ------------------------------------------------------------------------------------- the page


async def test_somebody_enters_a_ticket_and_sees_what_the_scales_say(
    user: User, bench: Bench
) -> None:
    number = lay(bench)
    await user.open(f"/build/{number}/weights")
    await user.should_see("no weighbridge ticket yet")
    user.find(marker="ticket").click()
    user.find(marker="weighed-on").clear().type("2026-11-12")
    user.find(marker="total").type("4100 kg")
    user.find(marker="front").type("1700")
    user.find(marker="keep-ticket").click()
    await user.should_see("ticket.front", retries=50)
    user.find(marker="front").clear().type("1700 kg")
    user.find(marker="keep-ticket").click()
    await user.should_see("on the scales than computed", retries=50)
    await user.should_see("Weighbridge of 2026-11-12")
    await user.should_see("Change the ticket", retries=20)
    user.find(marker="ticket-away").click()
    await user.should_see("no weighbridge ticket yet", retries=50)


async def test_a_photograph_is_shown_with_its_ticket(user: User, bench: Bench) -> None:
    number = lay(bench)
    kept = weighing.attach_photograph(
        bench, lay_open(bench, number), PNG, name="scale.png", actor="dora", at=NOW
    )
    await user.open(f"/build/{number}/weights")
    await user.should_see("scale.png")
    answer = await user.http_client.get(f"/build/{number}/attached/{kept.digest}")
    assert (answer.status_code, answer.content) == (200, PNG)
    assert answer.headers["content-type"] == "image/png"
    assert answer.headers["x-content-type-options"] == "nosniff"
    assert answer.headers["content-security-policy"].startswith("default-src 'none'")
    for path in (f"/build/{number}/attached/{'0' * 64}", f"/build/9/attached/{kept.digest}"):
        assert (await user.http_client.get(path)).status_code == 404
    assert (await user.http_client.get(f"/build/{number}/attached/../x")).status_code == 404
