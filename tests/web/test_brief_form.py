"""The brief as a form: each answer drives what it says, and is kept as files spell it."""

from pathlib import Path

import pytest

from coachwright.actions.benching import Bench, OnBench, edit, lay_open
from coachwright.actions.brief_questions import CHAPTERS, MUST_HAVE, Question
from coachwright.actions.briefing import Answer, answer_edit, must_have_edit, sheaves
from coachwright.actions.plain_habits import (
    NewLoad,
    NewTraveller,
    device_edits,
    habit_edits,
    habit_words,
    load_edits,
    traveller_edits,
)
from coachwright.errors import BadInput, UnknownName
from coachwright.model.part import FACET_NAMES
from coachwright.reference import table
from coachwright.store.edits import Put
from coachwright.units import QuantityFault, parse
from tests.web.benches import NOW, bench_in, lay

OTHERWISE = {
    "brief.jurisdiction": "uk",
    "brief.budget": "10.00 USD",
    "brief.climate.cold_night": "-25 degC",
    "brief.climate.hot_day": "46 degC",
    "brief.climate.summer_sun": "0.5 h/day",
    "brief.climate.winter_sun": "0.1 h/day",
    "brief.stay.parked": "9 d",
    "brief.stay.drive": "8 h/day",
    "brief.stay.hookup": "95 %",
    "brief.independence_wanted": "20 d",
    "brief.reserve": "60 %",
    "brief.habits.water": "60 L/day",
    "brief.habits.hot_water": "0 L/day",
    "brief.habits.cooking": "5000 Wh/day",
    "brief.habits.night": "25 degC",
    "mass": "140 kg",
    "stature": "2.3 m",
    "seat": "",
    "luggage": "90 kg",
    "berth_wanted": "false",
    "count": "9",
    "draw": "900 W",
    "use": "20 h/day",
    "supply": "inverter",
    "centre.0": "1 m",
    "centre.1": "800 mm",
    "centre.2": "1900 mm",
    "tolerance": "90 %",
}
"""Question → an answer that is surely not the demonstration build's."""


@pytest.fixture
def work(tmp_path: Path) -> OnBench:
    bench = bench_in(tmp_path)
    return lay_open(bench, lay(bench))


def _questions() -> list[tuple[str, Question]]:
    return [
        (".".join(str(step) for step in question.steps), question)
        for chapter in CHAPTERS
        for question in chapter.questions
        if question.drives
    ]


def _found(work: OnBench, question: Question) -> Answer:
    """Return the last answer to a question: of the last entry where there are several."""
    return [
        answer
        for sheaf in sheaves(work, "metric")
        for answer in sheaf.answers
        if answer.question is question
    ][-1]


@pytest.mark.parametrize(("name", "question"), _questions())
def test_an_answer_drives_all_that_it_says(name: str, question: Question, tmp_path: Path) -> None:
    bench = bench_in(tmp_path)
    driven: set[str] = set()
    there: set[str] = set()
    for demo_id in ("night-watch", "four-seats"):
        before = lay_open(bench, lay(bench, demo_id))
        there |= _names(before)
        if any(question in sheaf.chapter.questions for sheaf in sheaves(before, "metric")):
            driven |= _driven(bench, before, question, OTHERWISE[name])
    assert set(question.drives) & there <= driven


def _driven(bench: Bench, before: OnBench, question: Question, otherwise: str) -> set[str]:
    """Return the figures and rules that move when a question is answered otherwise."""
    answer = _found(before, question)
    edits = answer_edit(question, answer.path, otherwise, before.text)
    after = edit(bench, before.build_id, before.event, edits, actor="test", at=NOW)
    assert isinstance(after, OnBench)
    moved = _figures(before) ^ _figures(after)
    judged = _judged(before) ^ _judged(after)
    return {str(name) for name, *_ in (*moved, *judged)}


def _names(work: OnBench) -> set[str]:
    return {str(name) for name, *_ in (*_figures(work), *_judged(work))}


def _figures(work: OnBench) -> set[tuple[object, ...]]:
    return {(each.name, each.value, each.low, each.high) for each in work.assessment.figures}


def _judged(work: OnBench) -> set[tuple[object, ...]]:
    return {
        (each.rule, each.subject, each.value, each.limit, each.outcome)
        for each in work.assessment.findings
    }


def test_every_driven_name_exists(work: OnBench) -> None:
    asked = {name for _, question in _questions() for name in question.drives}
    assert asked - _names(work) <= {"water.gas-days", "wishes.seat-evidence", "wishes.smoke-alarm"}


def test_every_answer_of_a_demonstration_build_can_be_given_again(work: OnBench) -> None:
    for sheaf in sheaves(work, "metric"):
        for answer in sheaf.answers:
            if answer.text:
                again = answer_edit(answer.question, answer.path, answer.text, work.text)
                assert not again or again == (Put(path=answer.path, value=again[0].value),)  # type: ignore[union-attr]


def test_another_system_is_read_beside_what_was_written(work: OnBench) -> None:
    first = next(sheaf for sheaf in sheaves(work, "metric") if sheaf.chapter.id == "people")
    mass = next(answer for answer in first.answers if answer.path[-1] == "mass")
    assert (mass.text, mass.reads) == ("178 lb", "80.7 kg")
    again = next(sheaf for sheaf in sheaves(work, "us") if sheaf.chapter.id == "people")
    assert next(each for each in again.answers if each.path[-1] == "mass").reads == ""


def _question(name: str) -> Question:
    return dict(_questions())[name]


@pytest.mark.parametrize(
    ("name", "typed", "kept"),
    [
        ("brief.stay.parked", "4 days", "4 d"),
        ("brief.stay.drive", "2 hours", "2 h/day"),
        ("brief.climate.cold_night", "-12 °C", "-12 degC"),
        ("brief.stay.hookup", "15 per cent", "15 %"),
        ("brief.habits.water", "12 litres", "12 L/day"),
        ("brief.habits.water", "12 L/day", "12 L/day"),
    ],
)
def test_units_may_be_written_as_customers_do(
    work: OnBench, name: str, typed: str, kept: str
) -> None:
    question = _question(name)
    assert answer_edit(question, question.steps, typed, work.text) == (
        Put(path=question.steps, value=kept),
    )


@pytest.mark.parametrize("typed", ["80", "80 kg", "tall", "1e999 m", ""])
def test_an_answer_without_its_unit_is_refused_with_an_example(work: OnBench, typed: str) -> None:
    path = ("brief", "travellers", "surveyor-one", "stature")
    with pytest.raises(BadInput) as caught:
        answer_edit(_question("stature"), path, typed, work.text)
    assert caught.value.faults[0].field == "Height"


def test_an_answer_that_may_stay_open_is_taken_out_when_emptied(work: OnBench) -> None:
    question = _question("brief.independence_wanted")
    assert len(answer_edit(question, question.steps, " ", work.text)) == 1


def test_a_must_is_added_and_let_go(work: OnBench) -> None:
    assert must_have_edit("bed", True, work.text) == ()
    added = must_have_edit("awning", True, work.text)
    assert added[0] == Put(
        path=("brief", "must_have"),
        value=["air_conditioner", "toilet", "battery", "bed", "awning"],
    )
    assert must_have_edit("bed", False, work.text) != ()


def test_musts_are_facets() -> None:
    assert {facet for facet, _ in MUST_HAVE} <= set(FACET_NAMES)


def test_habits_in_plain_words_become_figures(work: OnBench) -> None:
    laptops = device_edits(work, "laptop", "all day", 2)
    assert laptops[0] == Put(
        path=("brief", "habits", "devices", "laptop-2"),
        value={
            "name": "laptop-2",
            "draw": "55 W",
            "use": "9 h/day",
            "count": 2,
            "supply": "inverter",
        },
    )
    assert habit_edits(work, "cooking", "two warm meals") == (
        Put(path=("brief", "habits", "cooking"), value="700 Wh/day"),
    )
    assert habit_edits(work, "water", "a shower every day") == (
        Put(path=("brief", "habits", "water"), value="28 L/day"),
    )
    with pytest.raises(UnknownName):
        device_edits(work, "steam engine", "all day", 1)


def test_somebody_and_something_heavy_are_added(work: OnBench) -> None:
    new = traveller_edits(work, NewTraveller(name="Surveyor One", mass="70 kg", stature="1.7 m"))
    assert new[0].path == ("brief", "travellers", "surveyor-one-2")
    load = load_edits(
        work,
        NewLoad(name="kayak", mass="30 kg", behind_axle="3 m", right="0 mm", above_floor="1 m"),
    )
    assert load[0].path == ("brief", "cargo", "kayak")
    for name in ("", "***"):
        with pytest.raises(BadInput):
            traveller_edits(work, NewTraveller(name=name, mass="70 kg", stature="1.7 m"))
    with pytest.raises(BadInput):
        load_edits(work, NewLoad(name=" ", mass="1 kg", behind_axle="", right="", above_floor=""))


def test_the_plain_words_are_quantities() -> None:
    kinds = {
        "device": "power",
        "hours": "time_use",
        "cooking": "energy_use",
        "water": "water_use",
        "warm": "water_use",
    }
    for row in table("plain_habits"):
        found = parse(row["value"], kinds[row["group"]])
        assert not isinstance(found, QuantityFault), row
    assert habit_words("warm")[0] == "none"
