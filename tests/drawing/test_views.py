"""What each view shows, on a small build whose measures are known by hand."""

import pytest

from coachwright.assess import assess
from coachwright.drawing.atlas import DRAFTS, VIEWS, draft_of, known_view, sheet, sheets
from coachwright.drawing.composing import NoRoom, composed
from coachwright.drawing.content import Content
from coachwright.drawing.drafting import Draft
from coachwright.drawing.placing_findings import located
from coachwright.drawing.scene import Arc, Dimension, Layer, Line, Sheet, Text
from coachwright.drawing.shifting import shifted
from coachwright.drawing.view_plan import NoBed
from coachwright.drawing.view_section import OutsideTheLivingSpace
from coachwright.errors import CallError, UnknownName
from coachwright.papers.view_drawings import content_of
from tests.drawing.demos import NAMES, demo
from tests.support.builds import Data, build, fitting, part

BED = part(
    "low-bed",
    body={"size": ["1900 mm", "1300 mm", "200 mm"], "mass": "40 kg"},
    bed={"length": "1900 mm", "width": "1300 mm", "berths": 2},
)
CABINET = part(
    "cabinet",
    body={"size": ["1200 mm", "500 mm", "900 mm"], "mass": "40 kg"},
    carcass={"storage": "100 L"},
)
CHANGES: Data = {
    "own_vehicle.apertures": [
        {
            "name": "sliding door",
            "wall": "right",
            "from": "1300 mm",
            "clear_width": "1200 mm",
            "clear_height": "1700 mm",
            "sill": "0 mm",
        },
        {
            "name": "rear doors",
            "wall": "rear",
            "from": "-700 mm",
            "clear_width": "1400 mm",
            "clear_height": "1750 mm",
            "sill": "0 mm",
        },
    ],
    "own_parts": [BED, CABINET, part("box"), part("drawer-box")],
    "fittings": [
        fitting("galley", "cabinet", at=["1500 mm", "-890 mm", "0 mm"]),
        fitting("tank", "box", at=["1600 mm", "-800 mm", "0 mm"], within="galley"),
        fitting("bed", "low-bed", at=["2800 mm", "-650 mm", "400 mm"]),
        fitting("roof-box", "box", at=["2000 mm", "0 mm", "2090 mm"], mounting="roof"),
        fitting("door-box", "box", at=["5040 mm", "-300 mm", "500 mm"], mounting="rear door left"),
        fitting("under-box", "box", at=["2000 mm", "0 mm", "-300 mm"], mounting="underbody"),
        fitting("lamp", "box", at=["2500 mm", "1000 mm", "1500 mm"], mounting="side"),
    ],
}


def _content(changes: Data | None = None) -> Content:
    return content_of(assess(build(CHANGES | (changes or {}))))


CONTENT = _content()


def _texts(made: Sheet) -> set[str]:
    return {
        p.text
        for pane in made.panes
        for p in pane.scene.primitives
        if isinstance(p, Text | Dimension)
    }


def _shown(draft: Draft) -> set[str]:
    return {tag.thing.name for tag in draft.tags}


def test_a_plan_measures_along_the_wall() -> None:
    said = _texts(sheet(CONTENT, "plan"))
    # cab line 1150, galley from 1500 to 2700, rear doors 4750
    assert {"350", "1200", "living space 3600", "vehicle 5990", "2050"} <= said


def test_a_plan_at_the_floor_looks_into_cut_cabinets_and_higher_up_onto_them() -> None:
    assert "tank" in _shown(draft_of(CONTENT, "plan@floor"))
    assert "tank" not in _shown(draft_of(CONTENT, "plan@hip"))
    assert {"galley", "bed"} <= _shown(draft_of(CONTENT, "plan@hip"))


def test_a_plan_names_the_doors() -> None:
    assert {"sliding door", "rear doors"} <= _texts(sheet(CONTENT, "plan"))


def test_rear_doors_are_drawn_with_their_swing() -> None:
    arcs = [p for p in draft_of(CONTENT, "plan").primitives if isinstance(p, Arc)]
    assert [arc.radius_mm for arc in arcs] == [780.0, 780.0]


def test_an_elevation_shows_its_side_and_what_crosses_the_middle() -> None:
    assert _shown(draft_of(CONTENT, "left")) == {"galley", "tank", "bed"}
    assert _shown(draft_of(CONTENT, "right")) == {"bed", "sliding door"}


def test_an_elevation_has_the_front_where_it_lies() -> None:
    assert draft_of(CONTENT, "left").front == "right"
    assert draft_of(CONTENT, "right").front == "left"


def test_heights_are_measured_from_the_finished_floor() -> None:
    assert {"900", "clear 1900"} <= _texts(sheet(CONTENT, "left"))


def test_a_section_shows_what_it_cuts_and_what_is_ahead() -> None:
    assert _shown(draft_of(CONTENT, "section@1650")) == {"galley", "tank"}
    ahead = draft_of(CONTENT, "section@3000")
    assert {tag.thing.name for tag in ahead.tags if tag.cut} == {"bed"}


@pytest.mark.parametrize("where", ["3000", "3 m", "118.11 in", "9 ft 10.11 in"])
def test_a_section_may_be_asked_for_in_any_unit(where: str) -> None:
    assert draft_of(CONTENT, f"section@{where}").title == ("Section 3000 mm behind the front axle")


def test_a_section_gives_the_wall_at_each_height() -> None:
    said = _texts(sheet(CONTENT, "section@3000"))
    # half width 900 at the floor, 920 at 1000, 780 at 1800 and above
    assert {"900 at 0", "920 at 1000", "780 at 1800"} <= said


def test_the_roof_shows_what_is_outside_and_above() -> None:
    assert _shown(draft_of(CONTENT, "roof")) == {"roof-box", "door-box", "lamp"}


def test_the_underbody_shows_what_hangs_there() -> None:
    assert "under-box" in _shown(draft_of(CONTENT, "under"))


def test_a_side_shows_what_hangs_on_it_and_not_on_the_other() -> None:
    assert "lamp" in _shown(draft_of(CONTENT, "side@right"))
    assert "lamp" not in _shown(draft_of(CONTENT, "side"))


@pytest.mark.parametrize("name", NAMES)
def test_overall_size_is_that_of_the_road_sheet(name: str) -> None:
    """The same measure from two disciplines: drawn from solids, computed from what is carried."""
    content = demo(name)
    size = assess(content.build).road.size
    for view in ("side", "side@right"):
        overall = [chain for chain in draft_of(content, view).chains if chain.words == "overall"]
        lengths = [chain.stops_mm[-1] - chain.stops_mm[0] for chain in overall]
        assert lengths == pytest.approx([size.length_mm, size.height_mm])


def test_an_open_door_takes_its_box_along_and_shows_the_inside() -> None:
    closed, opened = draft_of(CONTENT, "rear"), draft_of(CONTENT, "rear-open")
    assert "bed" not in _shown(closed)
    assert {"bed", "door-box"} <= _shown(opened)
    swung = next(tag.thing for tag in opened.tags if tag.thing.name == "door-box")
    # square to the body, outside the hinge at y = -780, by the door's own thickness of 60
    assert swung.high_mm[1] == pytest.approx(-840.0)
    assert swung.size_mm == pytest.approx((100.0, 100.0, 100.0))


def test_the_isometric_is_no_drawing_to_measure() -> None:
    draft = draft_of(CONTENT, "iso")
    assert draft.front == "none"
    assert not draft.chains
    assert _shown(draft) == {"galley", "bed"}


def test_a_build_without_a_bed_has_no_plan_at_its_height() -> None:
    bare = content_of(assess(build()))
    with pytest.raises(NoBed, match=r"draw plan@floor or plan@hip"):
        draft_of(bare, "plan@bed")
    assert "plan@bed" not in {made.name for made in sheets(bare)}


@pytest.mark.parametrize(
    "view", ["plan", "left", "rear", "rear-open", "roof", "under", "side", "iso"]
)
def test_an_empty_van_can_be_drawn(view: str) -> None:
    assert sheet(content_of(assess(build())), view).panes


def test_a_section_outside_the_living_space_is_refused() -> None:
    with pytest.raises(OutsideTheLivingSpace, match=r"from 1150 to 4750 mm"):
        draft_of(CONTENT, "section@900")


@pytest.mark.parametrize("view", ["plam", "section", "section@", "section@here", "plan@roof"])
def test_a_view_that_does_not_exist_is_refused(view: str) -> None:
    with pytest.raises(UnknownName, match="there is no view"):
        known_view(view)


def test_every_name_of_a_view_is_known() -> None:
    for view in (*VIEWS, "all"):
        if view != "section@x":
            known_view(view)


def test_what_fits_no_sheet_is_said() -> None:
    with pytest.raises(NoRoom, match="Plan at floor height"):
        composed(DRAFTS["plan"](CONTENT), room_mm=(40.0, 40.0), system="metric")


def test_a_draft_that_fits_is_as_large_as_can_be() -> None:
    large = composed(DRAFTS["plan"](CONTENT), room_mm=(900.0, 700.0), system="metric")
    small = composed(DRAFTS["plan"](CONTENT), room_mm=(404.0, 235.0), system="metric")
    assert (large.scene.scale_ratio, small.scene.scale_ratio) == (10.0, 20.0)
    assert not small.left_out


def test_the_same_build_gives_the_same_sheet() -> None:
    assert sheet(_content(), "plan") == sheet(CONTENT, "plan")


def test_a_cabinet_out_of_the_shell_is_marked_at_the_corner_that_sticks_out() -> None:
    content = _content({"fittings.0.at": ["1500 mm", "-1000 mm", "0 mm"]})
    found = [item for item in located(content) if item.finding.rule == "layout.inside-shell"]
    assert found[0].names == ("galley",)
    assert found[0].at_mm is not None
    assert found[0].at_mm[1] == -1000.0
    numbers = {
        p.text
        for pane in sheet(content, "plan").panes
        for p in pane.scene.primitives
        if isinstance(p, Text) and p.layer is Layer.FINDING
    }
    assert found[0].number in numbers


def test_mirrored_arcs_keep_their_place() -> None:
    arc = Arc(centre_mm=(100.0, 0.0), radius_mm=10.0, from_deg=0.0, to_deg=90.0, layer=Layer.BODY)
    (mirrored,) = shifted([arc], up_mm=5.0, across_factor=-1.0)
    assert isinstance(mirrored, Arc)
    assert (mirrored.centre_mm, mirrored.from_deg, mirrored.to_deg) == ((-100.0, 5.0), 90.0, 180.0)
    text = Text(at_mm=(0.0, 0.0), text="gone", layer=Layer.BODY)
    assert list(shifted([text], up_mm=0.0)) == []


def test_the_errors_are_faults_of_the_call() -> None:
    assert issubclass(NoBed, CallError)
    assert issubclass(OutsideTheLivingSpace, CallError)


def test_hidden_edges_are_broken_lines() -> None:
    styles = {str(p.style) for p in draft_of(CONTENT, "left").primitives if isinstance(p, Line)}
    assert {"solid", "dashed"} <= styles
