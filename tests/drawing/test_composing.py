"""A crowded drawing still comes on its sheet: with fewer words, and the sheet says so."""

import random
from itertools import combinations

import pytest

from coachwright.assess import assess
from coachwright.drawing.atlas import sheet
from coachwright.drawing.board import Board
from coachwright.drawing.composing import Care, at_scale
from coachwright.drawing.content import Content
from coachwright.drawing.dimensioning import Chain, thinned
from coachwright.drawing.drafting import Draft, Mark, Note
from coachwright.drawing.marking import placed_marks
from coachwright.papers.view_drawings import content_of
from tests.drawing.written import overlaps, written_on
from tests.support.builds import build, fitting, part


def _crowd(count: int) -> Content:
    chance = random.Random(7)  # noqa: S311  # the same crowd each time
    boxes = [
        fitting(
            f"thing-number-{number}",
            "crate",
            at=[f"{chance.randint(1200, 4500)} mm", f"{chance.randint(-850, 750)} mm", "0 mm"],
        )
        for number in range(count)
    ]
    crate = part("crate", carcass={"storage": "1 L"})
    return content_of(assess(build({"own_parts": [crate], "fittings": boxes})))


def test_a_crowd_is_drawn_with_fewer_labels_and_the_sheet_says_so() -> None:
    made = sheet(_crowd(70), "plan@hip")
    texts = list(written_on(made))
    assert any("found no room: see sheet “Setting out”" in item.text for item in texts)
    assert not [
        (one.text, other.text)
        for one, other in combinations(texts, 2)
        if overlaps(one.patch, other.patch)
    ]


def test_a_chain_is_thinned_from_its_start_and_keeps_its_ends() -> None:
    chain = Chain(side="above", stops_mm=(0.0, 10.0, 200.0, 260.0, 990.0, 1000.0), foot_mm=0.0)
    assert thinned(chain, 100.0).stops_mm == (0.0, 200.0, 1000.0)
    assert thinned(chain, 0.0) == chain
    assert thinned(Chain(side="above", stops_mm=(0.0, 5.0), foot_mm=0.0), 100.0).stops_mm == (
        0.0,
        5.0,
    )


def test_a_mark_without_room_is_left_to_the_key_only_as_a_last_resort() -> None:
    board = Board()
    board.take((-200.0, -200.0, 200.0, 200.0))
    marks = (Mark(number="1", stop=True, at_mm=(0.0, 0.0)),)
    assert placed_marks(marks, board, 20.0) is None
    assert list(placed_marks(marks, board, 20.0, whole=False) or ()) == []


def test_marks_at_one_place_stand_beside_each_other() -> None:
    board = Board()
    marks = tuple(Mark(number=f"{n}", stop=bool(n % 2), at_mm=(0.0, 0.0)) for n in range(12))
    assert placed_marks(marks, board, 20.0) is not None
    assert not [pair for pair in combinations(board.taken_mm, 2) if overlaps(*pair)]


@pytest.mark.parametrize("care", Care)
def test_a_label_beside_the_drawing_needs_paper(care: Care) -> None:
    draft = Draft(
        title="Small",
        subtitle="",
        primitives=(),
        low_mm=(0.0, 0.0),
        high_mm=(100.0, 100.0),
        front="none",
        notes=(Note(words="a long name for a small thing", place_mm=(40.0, 40.0, 60.0, 60.0)),),
    )
    made = at_scale(draft, scale_ratio=10.0, room_mm=(20.0, 60.0), system="metric", care=care)
    if care is Care.FEWER_LABELS:
        assert made is not None
        assert made.left_out == 1
    else:
        assert made is None
