"""How wide a text is, held against the font of the papers itself."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachwright.drawing.lettering import CAP_RATIO, shortened, text_width_mm, wrapped
from coachwright.drawing.measure import length_text
from tests.drawing.written import cap_ratio, em_width

LETTERS = st.text(alphabet=st.characters(min_codepoint=32, max_codepoint=126), max_size=30)


@given(LETTERS, st.booleans())
def test_a_width_is_the_sum_of_the_fonts_own_advances(text: str, strong: bool) -> None:
    assert text_width_mm(text, 3.5, strong=strong) == pytest.approx(
        3.5 * em_width(text, strong=strong), abs=1e-9
    )


def test_capitals_are_as_high_as_the_font_says() -> None:
    assert pytest.approx(cap_ratio()) == CAP_RATIO


def test_a_letter_that_the_table_lacks_is_taken_wide() -> None:
    assert text_width_mm("\N{SNOWMAN}", 3.0) == 3.0


@given(LETTERS, st.floats(min_value=6.0, max_value=60.0))
def test_a_shortened_text_fits_and_begins_alike(text: str, room_mm: float) -> None:
    kept = shortened(text, 3.0, room_mm)
    assert text_width_mm(kept, 3.0) <= room_mm
    assert kept == text or text.startswith(kept.removesuffix("…"))


def test_broken_lines_lose_no_word() -> None:
    text = "check every dimension in the vehicle before cutting"
    lines = wrapped(text, 3.0, 40.0)
    assert " ".join(lines) == text
    assert all(text_width_mm(line, 3.0) <= 40.0 for line in lines)


@given(st.floats(min_value=0.0, max_value=9000.0))
def test_an_inch_is_never_off_by_more_than_half_a_sixteenth(length_mm: float) -> None:
    text = length_text(length_mm, "us")
    whole, _, fraction = text.rpartition(" ") if "/" in text else (text, "", "")
    above, below = fraction.split("/") if fraction else ("0", "1")
    inches = int(whole or 0) + int(above) / int(below)
    assert abs(inches * 25.4 - length_mm) <= 25.4 / 32 + 1e-9


@given(st.floats(min_value=-9000.0, max_value=9000.0))
def test_a_millimetre_is_rounded_to_the_nearest(length_mm: float) -> None:
    assert abs(float(length_text(length_mm, "metric").replace("−", "-")) - length_mm) <= 0.5 + 1e-9
