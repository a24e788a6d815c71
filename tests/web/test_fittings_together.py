"""Several fittings moved, turned, mirrored and taken out as one: what stands together stays so."""

from collections.abc import Callable

import pytest

from coachwright.actions.following import built_into
from coachwright.actions.stocking import remove
from coachwright.actions.together import leading, mirror, pin, shift, turn
from coachwright.errors import CannotEdit, UnknownName
from coachwright.model.build import Build, BuildSheet
from coachwright.model.placement import placed
from coachwright.model.position import Relation
from tests.web.test_edits_of_fittings import SAME_MM, Edits, laid, places

NAMES = ("bench", "galley", "stall")
STANDS_BY_BENCH = "behind bench 0.75 in"


def place_text(build: Build, name: str, axis: int) -> str:
    fitted = build.fitted(name)
    assert fitted is not None
    place = fitted.fitting.at_mm[axis]
    return place.text if isinstance(place, Relation) else ""


def box(build: Build, name: str) -> tuple[tuple[float, ...], tuple[float, ...]]:
    fitted = build.fitted(name)
    assert fitted is not None
    here = placed(fitted)
    return here.low_mm, here.high_mm


def middle(build: Build, name: str) -> tuple[float, float]:
    low, high = box(build, name)
    return ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2)


@pytest.mark.parametrize("demo_id", ["night-watch", "four-seats"])
def test_everything_together_moves_by_the_same(demo_id: str) -> None:
    here = laid(demo_id)
    inside = [f.name for f in here.build.fittings if f.fitting.mounting == "floor"]
    after = here.after(shift(here.sheet, here.build, inside, (40.0, -10.0, 5.0)))
    for name in inside:
        old, new = places(here.build, name), places(after, name)
        expected = (old[0] + 40, old[1] - 10, old[2] + 5)
        assert new == pytest.approx(expected, abs=SAME_MM), name


def test_a_relation_between_two_that_are_moved_is_kept() -> None:
    here = laid("night-watch")
    assert place_text(here.build, "galley", 0) == STANDS_BY_BENCH
    after = here.after(shift(here.sheet, here.build, ("galley", "bench"), (40.0, 0.0, 0.0)))
    assert place_text(after, "galley", 0) == STANDS_BY_BENCH
    assert place_text(after, "bench", 0) == ""
    assert places(after, "galley")[0] - places(here.build, "galley")[0] == pytest.approx(40)


def test_a_relation_towards_what_stays_becomes_a_length() -> None:
    here = laid("night-watch")
    after = here.after(shift(here.sheet, here.build, ("galley", "stall"), (40.0, 0.0, 0.0)))
    assert place_text(after, "galley", 0) == ""
    assert places(after, "bench") == places(here.build, "bench")


def test_those_that_follow_another_do_not_lead() -> None:
    build = laid("night-watch").build
    assert leading(build, ("galley", "bench", "stall"), 0) == ("bench", "stall")
    assert set(leading(build, ("galley", "bench"), 1)) == {"galley", "bench"}


def test_several_turn_about_their_common_middle_as_one_body() -> None:
    here = laid("night-watch")
    after = here.after(turn(here.sheet, here.build, NAMES))
    lows, highs = zip(*(box(here.build, name) for name in NAMES), strict=True)
    centre = [(min(p[a] for p in lows) + max(p[a] for p in highs)) / 2 for a in (0, 1)]
    moved = {each for name in NAMES for each in (name, *built_into(here.build, name))}
    for name in moved:
        old, new = middle(here.build, name), middle(after, name)
        # a quarter anticlockwise, x rearwards and y to the right seen from above
        expected = (centre[0] - (old[1] - centre[1]), centre[1] + (old[0] - centre[0]))
        assert new == pytest.approx(expected, abs=2 * SAME_MM), name
    assert place_text(after, "galley", 1) == "right of bench 0.75 in"


@pytest.mark.parametrize("name", ["galley", "stall", "bench", "bed"])
@pytest.mark.parametrize("deed", [turn, mirror])
def test_what_is_built_in_goes_along(
    name: str, deed: Callable[[BuildSheet, Build, tuple[str, ...]], Edits]
) -> None:
    here = laid("night-watch")
    after = here.after(deed(here.sheet, here.build, (name,)))
    low, high = box(here.build, name)
    new_low, _ = box(after, name)
    fitted = here.build.fitted(name)
    assert fitted is not None
    lengthways = fitted.fitting.turn_deg in (90.0, 270.0)
    for each in built_into(here.build, name):
        in_low, in_high = box(here.build, each)
        got = [box(after, each)[0][axis] - new_low[axis] for axis in (0, 1)]
        if deed is turn:
            expected = [high[1] - in_high[1], in_low[0] - low[0]]
        else:
            expected = [in_low[0] - low[0], in_low[1] - low[1]]
            swapped = 0 if lengthways else 1
            expected[swapped] = high[swapped] - in_high[swapped]
        assert got == pytest.approx(expected, abs=2 * SAME_MM), each


@pytest.mark.parametrize("names", [("galley",), NAMES, ("stall",)])
def test_four_quarters_and_two_swaps_bring_everything_back(names: tuple[str, ...]) -> None:
    here = laid("night-watch")
    moved = [each for name in names for each in (name, *built_into(here.build, name))]
    for deed, times in ((turn, 4), (mirror, 2)):
        now = here
        for _ in range(times):
            now = now.then(deed(now.sheet, now.build, names))
        for name in moved:
            assert places(now.build, name) == pytest.approx(
                places(here.build, name), abs=8 * SAME_MM
            ), (deed, name)
            old, new = here.build.fitted(name), now.build.fitted(name)
            assert old is not None
            assert new is not None
            assert old.fitting.turn_deg == new.fitting.turn_deg
            assert old.fitting.mirror == new.fitting.mirror


def test_one_against_the_right_wall_stays_against_it_when_turned() -> None:
    here = laid("night-watch")
    stall = box(here.build, "stall")
    after = here.after(turn(here.sheet, here.build, ("stall",)))
    assert place_text(after, "stall", 1) == place_text(here.build, "stall", 1)
    assert box(after, "stall")[1][1] == pytest.approx(stall[1][1], abs=SAME_MM)


def test_several_are_taken_out_at_once() -> None:
    here = laid("night-watch")
    gone = {each for name in ("galley", "stall") for each in (name, *built_into(here.build, name))}
    after = here.after(remove(here.sheet, here.build, ("galley", "stall")))
    assert {f.name for f in here.build.fittings} - {f.name for f in after.fittings} == gone


def test_a_pinned_fitting_is_not_moved_turned_or_mirrored() -> None:
    here = laid("night-watch")
    pinned = here.then(pin(here.sheet, here.build, ("galley",), pinned=True))
    galley = pinned.build.fitted("galley")
    assert galley is not None
    assert galley.fitting.pinned
    for deed in (turn, mirror):
        with pytest.raises(CannotEdit, match="galley is pinned; unpin it"):
            deed(pinned.sheet, pinned.build, ("galley",))
    with pytest.raises(CannotEdit, match="galley is pinned; unpin it"):
        shift(pinned.sheet, pinned.build, ("stall", "galley"), (10.0, 0.0, 0.0))
    with pytest.raises(CannotEdit, match="galley is pinned and would go along with bench"):
        shift(pinned.sheet, pinned.build, ("bench",), (10.0, 0.0, 0.0))
    free = pinned.then(pin(pinned.sheet, pinned.build, ("galley", "bench"), pinned=False))
    assert shift(free.sheet, free.build, ("galley",), (10.0, 0.0, 0.0))


@pytest.mark.parametrize("demo_id", ["night-watch", "four-seats"])
def test_a_fitting_of_any_sheet_can_be_pinned_and_let_go(demo_id: str) -> None:
    here = laid(demo_id)
    for fitted in here.build.fittings:
        pinned = here.then(pin(here.sheet, here.build, (fitted.name,), pinned=True))
        found = pinned.build.fitted(fitted.name)
        assert found is not None
        assert found.fitting.pinned
        assert found.at_mm == pytest.approx(fitted.at_mm, abs=SAME_MM)


def test_pinning_what_is_pinned_changes_nothing() -> None:
    here = laid("night-watch")
    assert pin(here.sheet, here.build, ("galley",), pinned=False) == ()


def test_what_is_not_there_is_told() -> None:
    here = laid("night-watch")
    with pytest.raises(UnknownName, match="sofa"):
        turn(here.sheet, here.build, ("sofa",))
