"""Every view of every demo: on its sheet at a usual scale, legible, nothing over anything."""

from itertools import combinations

import pytest

from coachwright.drawing.atlas import DRAFTS, TABLES, section_places_mm, sheet, sheets
from coachwright.drawing.composing import SCALES
from coachwright.drawing.paper import MARGIN_MM
from coachwright.drawing.placing_findings import located
from coachwright.drawing.scene import Dimension, Layer, Polyline, Sheet, Span, Text
from tests.drawing.demos import NAMES, demo
from tests.drawing.written import cap_ratio, overlaps, rings_on, written_on

LEAST_FIGURES_MM = 2.5
"""Figures of a dimension on the paper: the smallest nominal size of lettering in ISO 3098."""
LEAST_LETTERS_MM = 1.7
"""Anything else that is written."""

CASES = [(name, view) for name in NAMES for view in (*DRAFTS, *TABLES, "section@2000")]
each_case = pytest.mark.parametrize(("name", "view"), CASES)
each_demo = pytest.mark.parametrize("name", NAMES)


@each_case
def test_nothing_written_stands_on_anything_written(name: str, view: str) -> None:
    made = sheet(demo(name), view)
    texts = list(written_on(made))
    clashing = [
        (one.text, other.text)
        for one, other in combinations(texts, 2)
        if overlaps(one.patch, other.patch)
    ]
    assert not clashing
    rings = list(rings_on(made))
    assert not [pair for pair in combinations(rings, 2) if overlaps(*pair)]


@each_case
def test_everything_written_lies_inside_the_frame(name: str, view: str) -> None:
    made = sheet(demo(name), view)
    width, height = made.size_mm
    outside = [
        item.text
        for item in written_on(made)
        if item.patch[0] < MARGIN_MM
        or item.patch[1] < MARGIN_MM
        or item.patch[2] > width - MARGIN_MM
        or item.patch[3] > height - MARGIN_MM
    ]
    assert not outside


@each_case
def test_lettering_is_legible_on_the_paper(name: str, view: str) -> None:
    for item in written_on(sheet(demo(name), view)):
        least = LEAST_FIGURES_MM if item.kind == "dimension" else LEAST_LETTERS_MM
        assert item.height_mm * cap_ratio() >= least, item.text


@each_case
def test_a_drawing_has_a_usual_scale(name: str, view: str) -> None:
    made = sheet(demo(name), view)
    assert all(pane.scene.scale_ratio in SCALES for pane in made.panes)
    assert bool(made.panes) == (view not in TABLES)


@each_demo
def test_the_set_is_numbered_through(name: str) -> None:
    made = list(sheets(demo(name)))
    numbers = [
        item.text
        for each in made
        for item in written_on(each)
        if item.text.endswith(f" of {len(made)}")
    ]
    assert numbers == [f"{number} of {len(made)}" for number in range(1, len(made) + 1)]


@each_demo
def test_every_sheet_of_the_set_is_clear(name: str) -> None:
    for made in sheets(demo(name)):
        texts = list(written_on(made))
        assert not [
            (one.text, other.text)
            for one, other in combinations(texts, 2)
            if overlaps(one.patch, other.patch)
        ]


@each_demo
def test_every_fitting_has_its_number_on_a_drawing_of_the_set(name: str) -> None:
    content = demo(name)
    drawn: set[str] = set()
    for made in sheets(content):
        if made.panes:
            drawn |= _ringed(made)
    assert not {t.name for t in content.things if t.number and t.number not in drawn}


def _ringed(made: Sheet) -> set[str]:
    return {
        primitive.text
        for pane in made.panes
        for primitive in pane.scene.primitives
        if isinstance(primitive, Text) and primitive.layer is Layer.LABEL and primitive.strong
    }


@each_demo
def test_a_label_says_the_number_of_the_parts_list(name: str) -> None:
    content = demo(name)
    order = [fitted.name for fitted in content.build.fittings]
    for thing in content.things:
        if thing.number:
            assert order[int(thing.number) - 1] == thing.name


@each_demo
def test_every_finding_with_a_place_is_marked_somewhere(name: str) -> None:
    content = demo(name)
    marked: set[str] = set()
    for made in sheets(content):
        for pane in made.panes:
            marked |= {
                primitive.text
                for primitive in pane.scene.primitives
                if isinstance(primitive, Text) and primitive.layer is Layer.FINDING
            }
    placed = {item.number for item in located(content) if item.at_mm is not None}
    assert placed <= marked
    assert marked <= {item.number for item in located(content)}


def test_a_stop_is_a_triangle_and_a_caution_a_diamond() -> None:
    content = demo("troubled")
    made = sheet(content, "plan")
    corners = {
        len(primitive.points_mm)
        for pane in made.panes
        for primitive in pane.scene.primitives
        if isinstance(primitive, Polyline) and primitive.layer is Layer.FINDING
    }
    assert corners == {3, 4}


@each_demo
def test_a_dimension_says_what_it_measures(name: str) -> None:
    """The words of a dimension against its own two points, read back from the text."""
    content = demo(name)
    inch = 25.4 if content.system == "us" else 1.0
    for view in ("plan", "left", "roof", "rear"):
        for pane in sheet(content, view).panes:
            for p in pane.scene.primitives:
                if isinstance(p, Dimension):
                    axis = 1 if p.upright else 0
                    length = abs(p.end_mm[axis] - p.start_mm[axis])
                    assert abs(_number(p.text) * inch - length) <= inch / 32 + 0.5
                elif isinstance(p, Span):
                    assert "aisle" in p.text


def _number(text: str) -> float:
    """Return the number at the end of a text such as ``"overall 17 1/8"``."""
    total = 0.0
    for word in text.split():
        if "/" in word:
            above, below = word.split("/")
            total += int(above) / int(below)
        elif word.isdigit():
            total += int(word)
    return total


@each_demo
def test_the_set_cuts_inside_the_living_space(name: str) -> None:
    content = demo(name)
    shell = content.build.vehicle.shell
    places = section_places_mm(content)
    assert len(places) == 4
    assert list(places) == sorted(places)
    assert all(shell.cab_line_mm < x < shell.rear_mm for x in places)


@each_demo
def test_the_title_block_has_what_a_shop_asks_for(name: str) -> None:
    content = demo(name)
    said = " | ".join(item.text for item in written_on(sheet(content, "plan")))
    build = content.build
    for word in (build.name, build.revision, "2027-04-15", "1:20", "checked by", "Coachwright"):
        assert word in said
    assert ("inches" if content.system == "us" else "millimetres") in said
    assert "no certificate" in said
    assert "front of the vehicle" in said
