"""Chains: their texts never meet, whatever they measure."""

from itertools import combinations, pairwise

from hypothesis import given
from hypothesis import strategies as st

from coachwright.drawing.board import Board, Over
from coachwright.drawing.dimensioning import (
    Chain,
    Dimensioner,
    Side,
    Width,
    stops_of_mm,
)
from coachwright.drawing.scene import Dimension, Line, Span

AROUND = (0.0, 0.0, 250.0, 100.0)
STOPS = st.lists(st.floats(min_value=0.0, max_value=5000.0), min_size=2, max_size=14)
SIDES: list[Side] = ["above", "below", "left", "right"]


def _overlap(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


@given(STOPS, st.sampled_from(SIDES), st.sampled_from(["metric", "us"]))
def test_texts_of_a_chain_never_meet(values: list[float], side: Side, system: str) -> None:
    stops = stops_of_mm(values, 8.0)
    if len(stops) < 2:
        return
    board = Board()
    pen = Dimensioner(board, AROUND, 20.0, system)
    made = list(pen.chain(Chain(side=side, stops_mm=stops, foot_mm=0.0)))
    again = list(pen.chain(Chain(side=side, stops_mm=(stops[0], stops[-1]), foot_mm=0.0)))
    assert sum(isinstance(p, Dimension) for p in made) == len(stops) - 1
    assert len(again) >= 1
    assert not [pair for pair in combinations(board.taken_mm, 2) if _overlap(*pair)]


@given(STOPS)
def test_a_chain_measures_from_each_stop_to_the_next(values: list[float]) -> None:
    stops = stops_of_mm(values)
    pen = Dimensioner(Board(), AROUND, 20.0, "metric")
    made = [
        p
        for p in pen.chain(Chain(side="below", stops_mm=stops, foot_mm=0.0))
        if isinstance(p, Dimension)
    ]
    assert [(p.start_mm[0], p.end_mm[0]) for p in made] == list(pairwise(stops))


def test_a_text_that_has_no_room_stands_further_out_with_a_line_to_it() -> None:
    pen = Dimensioner(Board(), AROUND, 20.0, "metric")
    made = list(pen.chain(Chain(side="below", stops_mm=(0.0, 15.0, 1000.0), foot_mm=0.0)))
    assert sum(isinstance(p, Line) for p in made) == 1


def test_words_stand_before_the_length() -> None:
    pen = Dimensioner(Board(), AROUND, 20.0, "metric")
    chain = Chain(side="above", stops_mm=(0.0, 3670.0), foot_mm=0.0, words="living space")
    assert [p.text for p in pen.chain(chain) if isinstance(p, Dimension)] == ["living space 3670"]


def test_a_clear_width_keeps_off_what_is_written() -> None:
    board = Board()
    pen = Dimensioner(board, AROUND, 20.0, "metric")
    width = Width(
        start_mm=(1000.0, 500.0), end_mm=(1000.0, 1200.0), words="aisle", length_mm=700.0
    )
    first = [p for p in pen.width(width, AROUND) if isinstance(p, Span)]
    second = [p for p in pen.width(width, AROUND) if isinstance(p, Span)]
    assert [p.text for p in (*first, *second)] == ["aisle 700", "aisle 700"]
    assert not _overlap(*board.taken_mm)


def test_a_clear_width_in_a_crowd_has_its_text_elsewhere_and_a_line_to_it() -> None:
    board = Board()
    board.take((-500.0, -500.0, 150.0, 900.0))
    pen = Dimensioner(board, AROUND, 20.0, "metric")
    width = Width(start_mm=(0.0, 0.0), end_mm=(0.0, 700.0), words="aisle", length_mm=700.0)
    span, line = pen.width(width, AROUND)
    assert isinstance(span, Span)
    assert isinstance(line, Line)
    assert span.text_at_mm[0] / 20.0 > 150.0


def test_a_leader_may_pass_behind_what_stands_on_cleared_paper() -> None:
    board = Board()
    board.take((0.0, 0.0, 10.0, 10.0), soft=True)
    board.take((20.0, 0.0, 30.0, 10.0))
    here, there = (5.0, 5.0, 5.1, 5.1), (25.0, 5.0, 25.1, 5.1)
    assert [board.free(here, over) for over in Over] == [False, True, True]
    assert [board.free(there, over) for over in Over] == [False, False, True]
