"""The layout sheet: ways, headroom, beds and exits, zones given up, order of the big parts."""

from dataclasses import replace
from functools import cache

from coachwright.assess import Assessment, assess
from coachwright.layout.model_interior import LoadingStep
from coachwright.papers.view_layout import LayoutView, layout_view
from tests.support.builds import Data, build, fitting, part
from tests.support.vans import DOORS

PARTS: list[Data] = [
    part(
        "wide-bed",
        name="Fixed bed 1400",
        body={"size": ["1950 mm", "1400 mm", "600 mm"], "mass": "40 kg"},
        bed={"length": "1950 mm", "width": "1400 mm", "berths": 2},
    ),
    part(
        "stove",
        name="Stove",
        body={"size": ["400 mm", "400 mm", "600 mm"], "mass": "20 kg"},
        access={
            "zones": [
                {
                    "purpose": "service",
                    "from": ["0 mm", "400 mm", "0 mm"],
                    "to": ["400 mm", "900 mm", "600 mm"],
                }
            ]
        },
    ),
]
CAMPER: Data = DOORS | {
    "own_parts": PARTS,
    "fittings": [
        fitting("bed", "wide-bed", at=["2700 mm", "-700 mm", "0 mm"]),
        fitting("stove", "stove", at=["1600 mm", "-800 mm", "0 mm"]),
    ],
    "waivers": [
        {
            "fitting": "stove",
            "purpose": "service",
            "role": "designer",
            "reason": "the stove is drawn out for its yearly service",
        }
    ],
}


@cache
def _assessment(*, waived: bool = True) -> Assessment:
    return assess(build(CAMPER if waived else CAMPER | {"waivers": []}))


def _view() -> LayoutView:
    return layout_view(_assessment())


def test_each_way_is_told_with_its_widths_and_what_makes_it_narrow() -> None:
    layout = _assessment().layout
    ways = {row[0]: row for row in _view().ways.rows}
    assert set(ways) == {aisle.way for aisle in layout.aisles} != set()
    for aisle in layout.aisles:
        place = ("floor", "hip", "shoulder").index(aisle.level)
        width_mm = aisle.passage.width_mm
        said = f"{width_mm:,.0f}\N{NO-BREAK SPACE}mm" if width_mm else "closed"
        assert ways[aisle.way][1 + place] == said


def test_the_headroom_says_whom_it_suits() -> None:
    headroom = _view().headline[0]
    assert headroom.label.startswith("Clear height on the best way")
    assert "% of men" in headroom.note
    assert "% of women" in headroom.note


def test_a_bed_is_told_with_its_sleepers_and_its_ways_out() -> None:
    (bed,) = _view().beds.rows
    assert bed[0] == "Fixed bed 1400 (pos. 1)"
    asleep = [s.traveller for s in _assessment().layout.interior.sleepers]
    assert asleep
    assert all(name.replace("-", " ") in bed[5] for name in asleep)
    (ways,) = _assessment().layout.interior.ways_out
    assert bed[6] == (", ".join(ways.exits) or "none")
    assert "lie straight" in _view().beds.note


def test_who_has_no_bed_is_named() -> None:
    made = layout_view(assess(build({})))
    names = [t.name for t in _assessment().build.brief.travellers if t.berth_wanted]
    assert names
    assert not made.beds.rows
    assert made.no_bed == f"No bed for: {', '.join(name.replace('-', ' ') for name in names)}."


def test_a_zone_that_was_given_up_is_told_with_role_and_reason() -> None:
    view = _view()
    (row,) = view.waived.rows
    assert row[:3] == ("2", "Stove", "service")
    assert row[4:] == ("designer", "the stove is drawn out for its yearly service")
    assert view.nothing_waived == ""


def test_a_sheet_without_waivers_says_so() -> None:
    view = layout_view(_assessment(waived=False))
    assert not view.waived.rows
    assert view.nothing_waived == "No access zone was given up."


def test_the_big_parts_come_in_order_and_what_is_stuck_is_named() -> None:
    assessment = _assessment()
    interior = assessment.layout.interior
    steps = (
        LoadingStep(name="stove", door="rear doors", before=()),
        LoadingStep(name="bed", door="rear doors", before=("stove",)),
    )
    loading = replace(interior.loading, steps=steps, stuck=("bed",))
    layout = replace(assessment.layout, interior=replace(interior, loading=loading))
    view = layout_view(replace(assessment, layout=layout))
    assert view.loading.names[-1] == "Not yet in place"
    assert view.loading.rows == (
        ("1.", "2", "Stove", "rear doors", "–"),
        ("2.", "1", "Fixed bed 1400", "rear doors", "Stove (pos. 2)"),
    )
    assert view.stuck == "No way in was found for: Fixed bed 1400 (pos. 1)."


def test_the_entry_is_told_with_its_rises() -> None:
    entry = _assessment().layout.interior.entry
    assert entry is not None
    told = next(pair for pair in _view().headline if pair.label.startswith("Floor at the"))
    assert told.value == f"{entry.height_mm:,.0f}\N{NO-BREAK SPACE}mm"
    assert told.note == "no step fitted"
