"""Every fault of a proposal is found by the layout, without the solver."""

from dataclasses import replace

import pytest

from coachwright.arrange.checking import checked, judge_of
from coachwright.arrange.rebuilding import let_go, rebuilt
from coachwright.model.build import Build, Fitting
from coachwright.model.position import read_position
from tests.arrange.floors import cabinet_data, floor_build, kitchen, stands
from tests.support import builds


def _moved(build: Build, name: str, *at: str) -> Build:
    fitted = build.fitted(name)
    assert fitted is not None
    place = tuple(read_position(text, from_file=True) for text in at)
    return rebuilt(build, changed={name: fitted.fitting.model_copy(update={"at_mm": place})})


def _together(one: str, other: str) -> bool:
    return {one, other} <= {"galley", "sink", "lamp"}


@pytest.mark.parametrize(
    ("name", "at", "fault"),
    [
        ("bench", ("1500 mm", "against left wall", "against floor"), "stand in one place"),
        ("bench", ("900 mm", "against right wall", "against floor"), "through the cab line"),
        ("bench", ("1700 mm", "-300 mm", "against floor"), "drawer of galley is blocked by bench"),
        ("lamp", ("3000 mm", "0 mm", "1300 mm"), "lamp is not held by"),
    ],
)
def test_what_the_layout_finds_is_a_fault(name: str, at: tuple[str, str, str], fault: str) -> None:
    build = kitchen()
    judged = checked(judge_of(build), _moved(build, name, *at), [name], _together)
    assert any(fault in found for found in judged.faults)


def test_what_did_not_move_is_no_fault_of_the_proposal() -> None:
    build = _moved(kitchen(), "bench", "1500 mm", "against left wall", "against floor")
    judged = checked(judge_of(build), build, ["chest"], _together)
    assert judged.faults == ()


def test_the_build_itself_has_no_faults() -> None:
    build = kitchen()
    names = [fitted.name for fitted in build.fittings]
    judged = checked(judge_of(build), build, names, _together)
    assert (judged.faults, judged.cautions) == ((), ())


def test_zones_that_keep_to_themselves_may_not_overlap() -> None:
    def facing(name: str) -> dict[str, object]:
        part = cabinet_data(name, 500, zone_mm=1000)
        part["access"]["zones"][0]["shares_with"] = ["standing"]
        return part

    build = floor_build(
        [stands("one", "one", "1500 mm"), stands("two", "two", "3000 mm", "right")],
        [facing("one"), facing("two")],
    )
    moved = _moved(build, "two", "1600 mm", "against right wall", "against floor")
    judged = checked(judge_of(build), moved, ["two"], lambda _one, _other: False)
    assert any("overlap" in fault for fault in judged.faults)


def test_a_zone_that_was_given_up_is_no_fault() -> None:
    waiver = {"fitting": "galley", "purpose": "drawer", "role": "customer", "reason": "so"}
    build = kitchen(waivers=[waiver])
    moved = _moved(build, "bench", "1700 mm", "-300 mm", "against floor")
    judged = checked(judge_of(build), moved, ["bench"], _together)
    assert not any("drawer" in fault for fault in judged.faults)


def test_a_new_caution_is_said() -> None:
    build = kitchen()
    judge = judge_of(build)
    moved = _moved(build, "bench", "1500 mm", "against left wall", "against floor")
    before = replace(judge, broken=judge.broken)
    judged = checked(before, moved, ["bench"], _together)
    assert isinstance(judged.cautions, tuple)


def test_a_removed_fitting_takes_its_waivers_along() -> None:
    waiver = {"fitting": "galley", "purpose": "drawer", "role": "customer", "reason": "so"}
    build = kitchen(waivers=[waiver])
    gone = ["galley", "sink"]
    new = rebuilt(build, changed=let_go(build, gone), removed=gone)
    assert new.waivers == ()
    lamp = new.fitted("lamp")
    assert lamp is not None
    assert lamp.at_mm == build.fitted("lamp").at_mm  # type: ignore[union-attr]


def test_what_is_added_is_placed_with_the_rest() -> None:
    build = kitchen()
    part = builds.sheet({"own_parts": [builds.part("cube")]}).own_parts[0]
    told = read_position("behind galley 10 mm", from_file=True)
    new = rebuilt(build, added=[(Fitting(name="cube", part="cube", at_mm=(told, 0.0, 0.0)), part)])
    assert new.fittings[-1].at_mm == (2510, 0, 0)
